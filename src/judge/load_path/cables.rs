//! What cables do to the post at which they end: their pull is permanent, and acts
//! with every other load. It can show a shortfall, and never that there is none.

use crate::items::InfillWord;
use crate::items::Item;
use crate::items::NotchedPostWord;
use crate::items::PostMaterialWord;
use crate::judge::load_path::bend;
use crate::judge::load_path::bend::Cut;
use crate::judge::load_path::bend::Share;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::wood::LumberPiece;
use crate::judge::load_path::wood::permanent_moment;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::Moment;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::cable::CableRun;
use crate::statics::cable::USUAL_TENSION;

const KIND: LinkKind = LinkKind::Post;
const CASE: LinkCase = LinkCase::EndPostPulled;
const REASON: LinkReason = LinkReason::EndPostsOfCables;

/// Whether the guard is filled with level cables.
pub(super) fn has_cables(seen: &Seen<'_, '_>) -> bool {
    seen.mentions(InfillWord::Cables) || seen.count(Item::CableCount).is_some()
}

/// The end post; none where there are no cables.
pub(super) fn end_post(seen: &Seen<'_, '_>, wood: &Wood) -> Option<Link> {
    if !has_cables(seen) {
        return None;
    }
    let without =
        |asks: &[Item]| Some(Link::hidden(KIND, CASE, REASON, asks).mending(Mend::EndPosts));
    let Some(count) = seen
        .count(Item::CableCount)
        .filter(|count| (1..=100).contains(count))
    else {
        return without(&[Item::CableCount]);
    };
    let Some(height) = seen.height() else {
        return without(&[Item::Height]);
    };
    let measured = seen.forces(Item::CableTension);
    let tension = measured.unwrap_or(Ends {
        low: USUAL_TENSION[0],
        high: USUAL_TENSION[1],
    });
    let least = moment(count, tension.low, height.low, Top::Held);
    let most = moment(
        count,
        tension.high,
        height.high,
        Top::Free(seen.covering().high + seen.depth().high),
    );
    let demand = Ends {
        low: least,
        high: most,
    };
    let mut taken = vec![Taken::EvenCables];
    if measured.is_none() {
        taken.push(Taken::Tension);
    }
    let weighed = match capacity(seen, wood) {
        Some(capacity) => Link::weighed(KIND, CASE, &demand, &capacity),
        None => Link::hidden(KIND, CASE, REASON, &[Item::PostSection]).with_demand(&demand),
    };
    Some(
        weighed
            .taking(&taken)
            .mending(Mend::EndPosts)
            .only_short(REASON),
    )
}

/// How the post is held at its top.
enum Top {
    /// By nothing; its foot this far below the lowest cable's floor.
    Free(Distance),
    /// By a rail that works as a strut.
    Held,
}

fn moment(count: u32, tension: Force, height: Distance, top: Top) -> Worked<Moment> {
    let step = height / f64::from(count + 1);
    let heights: Vec<Distance> = (1..=count).map(|one| step * f64::from(one)).collect();
    let run = CableRun {
        heights: &heights,
        tension,
    };
    match top {
        Top::Free(below) => run.cantilever(below),
        Top::Held => run.simple_span(height),
    }
}

/// What the post takes of a load that never goes.
fn capacity(seen: &Seen<'_, '_>, wood: &Wood) -> Option<Ends<Worked<Moment>>> {
    let (a, b) = seen.section(Item::PostSection)?;
    let cut = Cut {
        notch: if seen.mentions(NotchedPostWord::Yes) {
            Share::Half
        } else {
            Share::Whole
        },
        holes: Ends {
            low: Distance::default(),
            high: a.min(b) / 4.0,
        },
    };
    if seen.word::<PostMaterialWord>()? != PostMaterialWord::Wood {
        return bend::post(seen, wood, cut).ok().map(|bends| bends.ends);
    }
    let of = |across, along| {
        permanent_moment(
            wood,
            LumberPiece { across, along },
            &cut.left(across, along),
        )
    };
    let (one, other) = (of(a, b)?, of(b, a)?);
    Ends::of_worked([one.low, one.high, other.low, other.high])
}
