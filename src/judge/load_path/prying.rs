//! What a push at the top pulls on the screws or anchors of a plate.

use crate::items::Item;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::screws::positive;
use crate::judge::load_path::seen::Seen;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Moment;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::demand::lever_arm;
use crate::statics::plate::ScrewRow;
use crate::statics::plate::greatest_pull;
use crate::statics::plate::with_pivot_moved;

/// What to write down so that the pull is known.
pub(super) struct NoPull(pub(super) Vec<Item>);

/// The pull on a plate's screws.
pub(super) struct PlatePull {
    /// On the worst one.
    pub(super) on_one: Ends<Worked<Force>>,
    /// How many share the far row, at most.
    pub(super) far_screws: u32,
    /// B, the width of the plate.
    pub(super) width: Distance,
    /// From the far row to the face of the post, where that is known.
    pub(super) to_the_post: Option<Distance>,
}

/// Elastic shares of the rows, with the pivot at the plate's edge; at most with
/// the pivot at the face of the post, where the plate bends.
pub(super) fn plate_pull(
    seen: &Seen<'_, '_>,
    loads: Loads<'_>,
    screws: u32,
) -> Result<PlatePull, NoPull> {
    let missing = |items: &[Item]| Err(NoPull(items.to_vec()));
    let Some(height) = seen.height() else {
        return missing(&[Item::Height]);
    };
    let lengths = seen
        .known_length(Item::EdgeDistance)
        .zip(seen.known_length(Item::FastenerSpacing));
    let Some((edge, apart)) = lengths else {
        return missing(&[Item::EdgeDistance, Item::FastenerSpacing]);
    };
    let foot = |height| lever_arm(height, Distance::default(), Distance::default());
    let moments = (
        loads.post_moment(foot(height.low), height.low),
        loads.post_moment(foot(height.high), height.high),
    );
    let (Some(least), Some(most)) = moments else {
        return missing(&[Item::PostSpacing]);
    };
    // a post of unknown thickness may press as near as at the middle of the plate
    let post = seen.section(Item::PostSection).map(|(a, b)| a.min(b));
    let width = edge * 2.0 + apart;
    let inward = positive(width - post.unwrap_or_default()) / 2.0;
    let pull = |moment: &Worked<Moment>, rows: &[ScrewRow]| {
        greatest_pull(moment.value, rows).map(|pull| pull.after(moment.clone()))
    };
    let half = screws / 2;
    // of an odd number the fuller row may be the near one or the far one
    let mut all = Vec::new();
    for near in [half, screws - half] {
        let row = |distance, count| ScrewRow { distance, count };
        let rows = [row(edge, near), row(edge + apart, screws - near)];
        for moment in [&least, &most] {
            let stiff = pull(moment, &rows);
            all.push(stiff.map_err(|_| NoPull(vec![Item::EdgeDistance]))?);
            all.extend(pull(moment, &with_pivot_moved(&rows, inward)).ok());
        }
    }
    let on_one = Ends::of_worked(all).ok_or(NoPull(Vec::new()))?;
    Ok(PlatePull {
        on_one,
        far_screws: screws - half,
        width,
        to_the_post: post.map(|post| positive(apart - post) / 2.0),
    })
}
