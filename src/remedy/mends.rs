//! What the load path calls for, in words; an engineer confirms it.

use crate::judge::Chain;
use crate::judge::Link;
use crate::judge::LinkCase;
use crate::judge::LinkFinding;
use crate::judge::Mend;
use crate::quantities::Distance;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::quantities::inches;
use crate::quantities::millimetres;
use crate::statics::Units;

/// The joint at the post's foot, where nobody looked and nothing written would tell.
#[must_use]
pub fn unseen_foot(chain: &Chain) -> Option<&Link> {
    let foot = |link: &&Link| {
        let open = matches!(link.finding, LinkFinding::NotMeasured(_));
        open && link.case == LinkCase::HoldsThePost && link.asks.is_empty()
    };
    chain.links.iter().find(foot)
}

/// What a tradesman would fit, the worst joint first.
#[must_use]
pub fn mends_of(chain: &Chain) -> Vec<String> {
    let ruled = chain.ruled_out();
    // nobody rebuilds what may be sound before its foot was looked at
    let hides = unseen_foot(chain).is_some();
    let weakest = chain.weakest().filter(|link| {
        let ratio = link.ratio;
        ratio.is_some_and(|ratio| ratio.low.0 > 1.0 || (ratio.high.0 > 1.0 && !hides))
    });
    // a joint that works loose after what may give way
    let loose = chain.links.iter().filter(|link| {
        let loosens = matches!(link.mend, Some(Mend::Washers(_)));
        loosens && matches!(link.finding, LinkFinding::NotMeasured(_))
    });
    let tight = chain.links.iter().filter(|link| {
        let ends = link.mend == Some(Mend::EndPosts);
        ends && link.finding != LinkFinding::NoShortfall
    });
    let first = ruled.chain(tight).chain(weakest).chain(loose);
    let mut says: Vec<String> = Vec::new();
    for mend in first.filter_map(|link| link.mend) {
        let mend = mended(mend, chain.units);
        if !says.contains(&mend) {
            says.push(mend);
        }
    }
    says
}

/// `3 1/8 in`, or whole millimetres.
fn in_eighths(size: Distance, units: Units) -> String {
    match units {
        Units::Metric => format!("{:.0} mm", (size / millimetres(1.0)).value.ceil()),
        Units::Customary => {
            let eighths = (size / inches(0.125)).value.ceil();
            let all = (0..=48).find(|count| f64::from(*count) >= eighths);
            let length = Length::sixty_fourths(all.unwrap_or(48) * 8);
            length.exact(LengthUnit::Inch)
        }
    }
}

/// What is fitted at a joint, in words. (common practice, no source)
#[must_use]
pub fn mended(mend: Mend, units: Units) -> String {
    let says = match mend {
        Mend::Anchors => "anchors that somebody who knows concrete has chosen",
        Mend::Bolts => "bolts through post and framing, with washers, in place of screws or nails",
        Mend::CloserPosts => "posts closer together, or a stouter rail",
        Mend::EndPosts => "end posts and a rail between their tops that an engineer has sized",
        Mend::IntoTheFraming => "solid blocking behind it, and bolts or screws into that",
        Mend::NewPost => "a new post, sound, without a notch or a thin neck",
        Mend::RailEnd => "brackets with a load on their label, or more and longer screws",
        Mend::SecondRail => "a second rail on edge below the top rail, from post to post",
        Mend::Socket => "a deeper socket farther from the edge, which an engineer has sized",
        Mend::ThickerPlate => "a thicker plate below the post, which an engineer has sized",
        Mend::ThickerPost => "a stouter post, or bolts farther apart on a deeper rim",
        Mend::Tie => "a tension tie from the upper bolt to a joist",
        Mend::Washers(Some(size)) => {
            let size = in_eighths(size, units);
            return format!("stiff washers at least {size} wide, on both faces");
        }
        Mend::Washers(None) => "a steel plate under head and nut that an engineer has sized",
    };
    says.to_owned()
}
