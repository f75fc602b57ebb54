//! Where the fixing holds a post, and what a push at the top pulls there
//! (elementary statics).

use crate::items::Item;
use crate::items::PostFasteningWord;
use crate::items::PostPositionWord;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::WrittenLength;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::inches;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::couple::PushWay;
use crate::statics::couple::Stands;
use crate::statics::couple::couple;
use crate::statics::couple::stretched;
use crate::statics::demand::lever_arm;

/// How a post is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fixed {
    /// Flat on the side of a joist that runs out to the edge: the couple pushes the
    /// bolts sideways.
    FlatOnAJoist,
    /// On the face of a rim or joist: the couple pulls a fastener.
    OnTheSide,
    /// On the floor or in it.
    OnTop,
}

/// How the post is held; a plate or a pocket is always below it.
pub(super) fn fixed(seen: &Seen<'_, '_>) -> Option<Fixed> {
    let fastening = seen.word::<PostFasteningWord>();
    if matches!(
        fastening,
        Some(
            PostFasteningWord::Plate
                | PostFasteningWord::Embedded
                | PostFasteningWord::CentralRod
                | PostFasteningWord::HalfWall
        )
    ) {
        return Some(Fixed::OnTop);
    }
    match seen.word::<PostPositionWord>() {
        Some(
            PostPositionWord::OutsideTheRim
            | PostPositionWord::InsideTheRim
            | PostPositionWord::ThroughTheFloor,
        ) => {
            return Some(Fixed::OnTheSide);
        }
        Some(PostPositionWord::SideOfAJoist) => return Some(Fixed::FlatOnAJoist),
        Some(PostPositionWord::OnTopOfTheFloor) => return Some(Fixed::OnTop),
        Some(PostPositionWord::Hidden) | None => {}
    }
    match fastening? {
        PostFasteningWord::ThroughBolts
        | PostFasteningWord::LagScrews
        | PostFasteningWord::WoodScrews
        | PostFasteningWord::Nails => Some(Fixed::OnTheSide),
        PostFasteningWord::Bracket
        | PostFasteningWord::CentralRod
        | PostFasteningWord::Embedded
        | PostFasteningWord::HalfWall
        | PostFasteningWord::Hidden
        | PostFasteningWord::MasonryAnchors
        | PostFasteningWord::Missing
        | PostFasteningWord::Other
        | PostFasteningWord::Plate
        | PostFasteningWord::Welded => None,
    }
}

/// On which side of the rim the post stands; none where nobody looked.
pub(super) fn stands(seen: &Seen<'_, '_>) -> Option<Stands> {
    match seen.word::<PostPositionWord>()? {
        PostPositionWord::OutsideTheRim => Some(Stands::Outside),
        PostPositionWord::InsideTheRim | PostPositionWord::ThroughTheFloor => Some(Stands::Inside),
        PostPositionWord::Hidden
        | PostPositionWord::OnTopOfTheFloor
        | PostPositionWord::SideOfAJoist => None,
    }
}

/// The deepest rim of usual lumber, a 2x12: no lever below the bolt is longer.
const DEEPEST_RIM: Distance = inches(11.25);

/// What a force at the top makes at the fixing, at either end of what is not known.
///
/// The pivot is the lower fastener at the high end, and at the low end the bottom
/// edge of the rim, where the post may press.
fn at_the_fixing(
    seen: &Seen<'_, '_>,
    loads: Loads<'_>,
    of: impl Fn(Force, Distance, Distance) -> Worked<Force>,
) -> Option<Ends<Worked<Force>>> {
    let load = loads.top_force()?;
    let apart = seen.known_length(Item::FastenerSpacing)?;
    let height = seen.height()?;
    let (covering, depth) = (seen.covering(), seen.depth());
    let rim = seen.known_length(Item::RimDepth).unwrap_or(DEEPEST_RIM);
    let edge = (rim - depth.low).max(apart);
    let end = |height, covering, depth, apart| {
        let arm = lever_arm(height, covering, depth);
        of(load.value, arm.value, apart)
            .after(arm)
            .after(load.clone())
    };
    Some(Ends {
        low: end(height.low, covering.low, depth.low, edge),
        high: end(height.high, covering.high, depth.high, apart),
    })
}

/// The pull on the fasteners that are stretched, all of one level together.
pub(super) fn stretch(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Option<Ends<Worked<Force>>> {
    let greatest = |stands| {
        at_the_fixing(seen, loads, move |force, arm, apart| {
            let outward = stretched(stands, PushWay::Outward, force, arm, apart);
            if !loads.pulls_inward() {
                return outward;
            }
            let inward = stretched(stands, PushWay::Inward, force, arm, apart);
            if inward.value > outward.value {
                inward
            } else {
                outward
            }
        })
    };
    let (outside, mut inside) = (greatest(Stands::Outside)?, greatest(Stands::Inside)?);
    if !loads.pulls_inward()
        && let Some(least) = pressing_at_the_top_edge(seen, loads)
        && least.value < inside.low.value
    {
        inside.low = least;
    }
    Some(match stands(seen) {
        Some(Stands::Outside) => outside,
        Some(Stands::Inside) => inside,
        None => Ends {
            low: if inside.low.value < outside.low.value {
                inside.low
            } else {
                outside.low
            },
            high: outside.high,
        },
    })
}

/// The pull on the lower fastener of a post inside the rim, where the post presses
/// at the rim's top edge: F·a₀/d₀, both to that edge.
fn pressing_at_the_top_edge(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Option<Worked<Force>> {
    let load = loads.top_force()?;
    let apart = seen.known_length(Item::FastenerSpacing)?;
    let arm = lever_arm(seen.height()?.low, seen.covering().low, Distance::default());
    let to_the_edge = seen.depth().high + apart;
    let pull = stretched(
        Stands::Inside,
        PushWay::Outward,
        load.value,
        arm.value,
        to_the_edge,
    );
    Some(pull.after(arm).after(load))
}

/// How hard the top of the rim is driven off the joists under a push outward, on
/// whichever side of it the post stands.
pub(super) fn off_the_joists(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Option<Ends<Worked<Force>>> {
    at_the_fixing(seen, loads, |force, arm, apart| {
        couple(PushWay::Outward, force, arm, apart).map(|couple| couple.tension)
    })
}

/// The shear in the post between its fasteners: F·a/d, and not F.
pub(super) fn between_the_fasteners(
    seen: &Seen<'_, '_>,
    loads: Loads<'_>,
) -> Option<Ends<Worked<Force>>> {
    at_the_fixing(seen, loads, |force, arm, apart| {
        couple(PushWay::Outward, force, arm, apart).map(|couple| couple.bearing)
    })
}

/// What was taken as given in the lever arm.
pub(super) fn arm_taken(seen: &Seen<'_, '_>) -> Vec<Taken> {
    let open = |item| seen.length(item) == WrittenLength::Nothing;
    let mut taken = Vec::new();
    if open(Item::DeckingThickness) {
        taken.push(Taken::Covering);
    }
    if open(Item::FastenerDepth) {
        taken.push(Taken::Depth);
    }
    if open(Item::RimDepth) {
        taken.push(Taken::Pivot);
    }
    taken
}

/// What a couple lacks.
pub(super) fn couple_asks(seen: &Seen<'_, '_>) -> Vec<Item> {
    let mut asks = Vec::new();
    if seen.known_length(Item::FastenerSpacing).is_none() {
        asks.push(Item::FastenerSpacing);
    }
    if seen.height().is_none() {
        asks.push(Item::Height);
    }
    asks
}

/// The link with what pulls at the fixing, where that is known.
pub(super) fn with_stretch(link: Link, seen: &Seen<'_, '_>, loads: Loads<'_>) -> Link {
    match stretch(seen, loads).filter(|_| fixed(seen) == Some(Fixed::OnTheSide)) {
        Some(demand) => link.with_demand(&demand).taking(&arm_taken(seen)),
        None => link,
    }
}
