//! The top rail and its ends: how an end is loaded follows from where the rail
//! sits (elementary statics; NDS 2018 §12.2 and §12.5.2, read second-hand).

use crate::items::Item;
use crate::items::PostMaterialWord;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::WrittenLength;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::wood;
use crate::judge::load_path::wood::HAIR;
use crate::judge::load_path::wood::LumberPiece;
use crate::judge::load_path::wood::Takes;
use crate::quantities::Distance;
use crate::quantities::Moment;
use crate::quantities::inches;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::beam::Case;
use crate::statics::factors::LoadDuration;
use crate::statics::grade::BEST_LUMBER;
use crate::statics::section::Profile;

const KIND: LinkKind = LinkKind::TopRail;

/// Which way a rail is bent.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Down,
    Level,
}

impl Way {
    const fn case(self) -> LinkCase {
        match self {
            Way::Down => LinkCase::BendingDown,
            Way::Level => LinkCase::BendingLevel,
        }
    }
}

/// The rail between two posts.
pub(super) fn links(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let Some(span) = loads.spacing else {
        let reason = LinkReason::PostSpacingNotWritten;
        return vec![Link::hidden(
            KIND,
            LinkCase::Bending,
            reason,
            &[Item::PostSpacing],
        )];
    };
    let down = loads.rail_moment_down(span);
    let level = loads.rail_moment_level(span);
    let mut links = Vec::new();
    links.extend(down.map(|moment| bending(seen, wood, Way::Down, (moment, loads, span))));
    links.extend(level.map(|moment| bending(seen, wood, Way::Level, (moment, loads, span))));
    links
}

fn bending(
    seen: &Seen<'_, '_>,
    wood: &Wood,
    way: Way,
    (moment, loads, span): (Worked<Moment>, Loads<'_>, Distance),
) -> Link {
    let demand = Ends::exactly(moment);
    let without =
        |reason, asks: &[Item]| Link::hidden(KIND, way.case(), reason, asks).with_demand(&demand);
    match seen.word::<PostMaterialWord>() {
        Some(PostMaterialWord::Wood) => {}
        Some(_) => {
            return without(LinkReason::RailNotWood, &[]);
        }
        None => return without(LinkReason::MaterialNotWritten, &[Item::PostMaterial]),
    }
    let Some((width, height)) = seen.section(Item::RailSection) else {
        return without(LinkReason::RailSectionNotWritten, &[Item::RailSection]);
    };
    let piece = match way {
        Way::Down => LumberPiece {
            across: width,
            along: height,
        },
        Way::Level => LumberPiece {
            across: height,
            along: width,
        },
    };
    if width.min(height) < inches(1.5) - HAIR {
        return thin_board(piece, way, &demand, (loads, span));
    }
    let capacity = match (way, lower_rail(seen)) {
        (Way::Level, _) | (Way::Down, LowerRail::NoneThere) => {
            wood::moment(wood, piece.across, piece.along)
        }
        (Way::Down, LowerRail::There(lower)) => wood::moment_together(wood, piece, lower),
        (Way::Down, LowerRail::NotWritten) => with_or_without(wood, piece),
    };
    let Some(Takes { ends, lowest }) = capacity else {
        return without(LinkReason::NoFactorsForSize, &[]);
    };
    let link = Link::weighed(KIND, way.case(), &demand, &ends)
        .taking(&wood.taken_in_bending())
        .taking(&[Taken::OneSpan, Taken::SameMaterial])
        .asking(&wood.narrows_bending())
        .lowest(lowest)
        .mending(match way {
            Way::Down => Mend::SecondRail,
            Way::Level => Mend::CloserPosts,
        });
    match (way, lower_rail(seen)) {
        (Way::Down, LowerRail::NotWritten) => {
            let asks = [Item::LowerRailSection];
            link.taking(&[Taken::LowerRail]).asking(&asks)
        }
        (Way::Down, LowerRail::There(_) | LowerRail::NoneThere) | (Way::Level, _) => link,
    }
}

/// A rail on which the top rail lies and that reaches both posts.
#[derive(Clone, Copy)]
enum LowerRail {
    NotWritten,
    NoneThere,
    There(LumberPiece),
}

fn lower_rail(seen: &Seen<'_, '_>) -> LowerRail {
    if let WrittenLength::ThereIsNone = seen.length(Item::LowerRailSection) {
        return LowerRail::NoneThere;
    }
    match seen.section(Item::LowerRailSection) {
        Some((across, along)) => LowerRail::There(LumberPiece { across, along }),
        None => LowerRail::NotWritten,
    }
}

/// The largest second rail that is usual beneath a cap: a 2x6 on edge.
/// (common practice, no source)
const LARGEST_LOWER_RAIL: LumberPiece = LumberPiece {
    across: inches(1.5),
    along: inches(5.5),
};

/// The cap alone at the low end, on a second rail at the high end.
fn with_or_without(wood: &Wood, cap: LumberPiece) -> Option<Takes<Moment>> {
    let alone = wood::moment(wood, cap.across, cap.along)?;
    let with = wood::moment_together(wood, cap, LARGEST_LOWER_RAIL)?;
    let high = if with.ends.high.value > alone.ends.high.value {
        with.ends.high
    } else {
        alone.ends.high
    };
    Some(Takes {
        ends: Ends {
            low: alone.ends.low,
            high,
        },
        lowest: alone.lowest,
    })
}

/// The tables start at 2 in nominal: of a 5/4 board only a bound can be told, at
/// the best value of lumber that was read and the least moment of several spans.
fn thin_board(
    piece: LumberPiece,
    way: Way,
    demand: &Ends<Worked<Moment>>,
    (loads, span): (Loads<'_>, Distance),
) -> Link {
    let reason = LinkReason::ThinBoardRail;
    let profile = Profile::Rectangle {
        across: piece.across,
        along: piece.along,
    };
    let alone = Link::hidden(KIND, way.case(), reason, &[]).with_demand(demand);
    let Ok(modulus) = profile.elastic() else {
        return alone;
    };
    let flat = if way == Way::Down { 1.15 } else { 1.0 };
    let duration = LoadDuration::TEN_MINUTES.factor();
    let stress = BEST_LUMBER.value * flat * duration;
    let inputs = [
        ("F_b", BEST_LUMBER.value.into()),
        ("C_fu", flat.into()),
        ("C_D", duration.into()),
        ("S", modulus.value.into()),
    ];
    let most = stress * modulus.value;
    let most = Worked::new("M_most", "F_b·C_fu·C_D·S", &inputs, most, BEST_LUMBER.basis);
    let most = most.after(modulus);
    let least = Ends {
        low: over_several_spans(demand.low.clone(), loads, span),
        high: demand.high.clone(),
    };
    let bound = Link::weighed(KIND, way.case(), &least, &Ends::exactly(most));
    bound
        .taking(&[Taken::SameMaterial, Taken::BestBoard])
        .mending(Mend::SecondRail)
        .only_short(reason)
}

/// The moment of a rail that runs over three equal spans, the load at its worst
/// place, where that is less.
fn over_several_spans(alone: Worked<Moment>, loads: Loads<'_>, span: Distance) -> Worked<Moment> {
    let Some(point) = &loads.demand.concentrated else {
        return alone;
    };
    let several = Case::ThreeSpansWorst(point.value).moments(span);
    let several = several.map(|moments| moments.sagging);
    if several.value < alone.value {
        several
    } else {
        alone
    }
}

/// The moment that an example may state: the rail pressed down.
pub(super) fn moment(loads: Loads<'_>) -> Option<Worked<Moment>> {
    loads.rail_moment_down(loads.spacing?)
}
