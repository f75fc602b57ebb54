//! A plate screwed down beneath a post: the worst of its screws pulled out, and the
//! plate itself bent (elastic shares; a plate that bends presses at the post's face).

use crate::items::FastenedToWord;
use crate::items::Item;
use crate::items::PostMaterialWord;
use crate::judge::load_path::concrete;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::prying::NoPull;
use crate::judge::load_path::prying::PlatePull;
use crate::judge::load_path::prying::plate_pull;
use crate::judge::load_path::screws::Layers;
use crate::judge::load_path::screws::NO_NUMBERS;
use crate::judge::load_path::screws::NO_THREAD;
use crate::judge::load_path::screws::held;
use crate::judge::load_path::screws::lightest_and_heaviest;
use crate::judge::load_path::screws::one_of;
use crate::judge::load_path::screws::positive;
use crate::judge::load_path::screws::pulled_out;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::WrittenLength;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::woods::Woods;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::inches;
use crate::quantities::psi;
use crate::reading::Fasteners;
use crate::statics::Ends;
use crate::statics::Provenance;
use crate::statics::Worked;
use crate::statics::factors::Grain;
use crate::statics::panel::PANEL_GRAVITY;
use crate::statics::panel::STRUCTURAL_PANEL_GRAVITY;
use crate::statics::panel::USUAL_SUBFLOOR;
use crate::statics::plate::plate_allowable;
use crate::statics::plate::plate_moment;

const KIND: LinkKind = LinkKind::PostFixing;
const CASE: LinkCase = LinkCase::WorstPlateScrew;
const BENT: LinkCase = LinkCase::PlateBent;

/// The links of a plate.
pub(super) fn links(seen: &Seen<'_, '_>, woods: Woods<'_>, loads: Loads<'_>) -> Vec<Link> {
    let Some(fasteners) = seen.fasteners(Item::PostFasteners) else {
        return vec![Link::hidden(KIND, CASE, NO_NUMBERS, &[Item::PostFasteners])];
    };
    let pulled = match plate_pull(seen, loads, fasteners.count) {
        Ok(pulled) => pulled,
        Err(NoPull(asks)) => {
            let reason = LinkReason::PullOnPlateScrewsUnknown;
            return vec![Link::hidden(KIND, CASE, reason, &asks)];
        }
    };
    let first = if seen.word() == Some(FastenedToWord::Concrete) {
        concrete::breakout(seen, loads)
    } else {
        screwed_down(seen, woods, fasteners, &pulled.on_one)
    };
    vec![first, bent(seen, &pulled)]
}

fn screwed_down(
    seen: &Seen<'_, '_>,
    woods: Woods<'_>,
    fasteners: Fasteners,
    demand: &Ends<Worked<Force>>,
) -> Link {
    let without =
        |reason, asks: &[Item]| Link::hidden(KIND, CASE, reason, asks).with_demand(demand);
    let boards = [FastenedToWord::Subfloor, FastenedToWord::Decking];
    let on = boards
        .into_iter()
        .find(|word| seen.mentions(*word))
        .or(seen.word::<FastenedToWord>());
    let panel = || in_the_panel(seen, woods, fasteners);
    let framing = |layers| held(woods.framing, one_of(fasteners), layers, Grain::Side);
    let capacity = match (on, in_the_floor(seen, fasteners)) {
        (Some(FastenedToWord::Subfloor), _) => panel(),
        (Some(FastenedToWord::Decking), _) => in_the_boards(seen, woods, fasteners),
        (
            Some(FastenedToWord::Joist | FastenedToWord::Blocking | FastenedToWord::RimBoard),
            None,
        ) => {
            return without(NO_THREAD, &[Item::ThreadInFraming]);
        }
        (
            Some(FastenedToWord::Joist | FastenedToWord::Blocking | FastenedToWord::RimBoard),
            Some(layers),
        ) => match bite(seen) {
            Bite::Framing => framing(layers),
            Bite::FloorOnly => panel(),
            Bite::Either => panel().and_then(|panel| {
                let framing = framing(layers)?;
                let ends = [panel.low, panel.high, framing.low, framing.high];
                Ends::of_worked(ends).ok_or(LinkReason::OutsideTables)
            }),
        },
        (Some(_), _) => {
            return without(LinkReason::NoValueForPlateGround, &[]);
        }
        (None, _) => {
            return without(LinkReason::PlateGroundNotWritten, &[Item::FastenedTo]);
        }
    };
    match capacity {
        Ok(capacity) => Link::weighed(KIND, CASE, demand, &capacity)
            .taking(woods.framing.taken())
            .taking(match on {
                Some(FastenedToWord::Subfloor) => &[Taken::Subfloor],
                Some(FastenedToWord::Decking) => &[],
                _ => &[Taken::Thread],
            })
            .asking(&asked(seen, on))
            .mending(Mend::IntoTheFraming),
        Err(reason) => without(reason, &[]),
    }
}

fn asked(seen: &Seen<'_, '_>, on: Option<FastenedToWord>) -> Vec<Item> {
    if matches!(on, Some(FastenedToWord::Subfloor | FastenedToWord::Decking))
        || bite(seen) != Bite::Either
    {
        Vec::new()
    } else {
        vec![Item::FramingThickness]
    }
}

/// What the screws of a plate really sit in.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Bite {
    Either,
    FloorOnly,
    Framing,
}

/// Wood beside a screw that is needed for it to count as in the framing. From memory.
const BESIDE_A_SCREW: Distance = inches(0.5);

/// Screws farther apart than the wood below is thick miss it: a plate centred on one
/// joist bites the floor alone.
fn bite(seen: &Seen<'_, '_>) -> Bite {
    let thick = seen.known_length(Item::FramingThickness);
    let apart = seen.known_length(Item::FastenerSpacing);
    match thick.zip(apart) {
        Some((thick, apart)) if thick >= apart + BESIDE_A_SCREW * 2.0 - inches(1e-6) => {
            Bite::Framing
        }
        Some(_) => Bite::FloorOnly,
        None => Bite::Either,
    }
}

fn in_the_panel(
    seen: &Seen<'_, '_>,
    woods: Woods<'_>,
    fasteners: Fasteners,
) -> Result<Ends<Worked<Force>>, LinkReason> {
    // nobody sees how thick the panel is beneath; the thread fills it
    let layers = in_the_floor(seen, fasteners);
    let reach = seen.known_length(Item::ThreadInFraming).or_else(|| {
        let length: Distance = fasteners.length?.to_uom();
        layers.map(|layers| positive(length - layers.before.low))
    });
    let reach = reach.map_or(USUAL_SUBFLOOR, |reach| reach.min(USUAL_SUBFLOOR));
    let inputs = [("t_panel", reach.into())];
    let thread = Worked::new("p_t", "t_panel", &inputs, reach, Provenance::MECHANICS);
    let gravities = [PANEL_GRAVITY.value, STRUCTURAL_PANEL_GRAVITY.value];
    let thread = Ends::exactly(thread);
    pulled_out(
        woods.framing,
        one_of(fasteners),
        &thread,
        gravities,
        Grain::Side,
    )
}

/// Solid boards are no panel: the thread is as long as the board is thick.
fn in_the_boards(
    seen: &Seen<'_, '_>,
    woods: Woods<'_>,
    fasteners: Fasteners,
) -> Result<Ends<Worked<Force>>, LinkReason> {
    let boards = match seen.length(Item::DeckingThickness) {
        WrittenLength::There(thick) => Ends::exactly(thick),
        WrittenLength::Nothing | WrittenLength::ThereIsNone => Ends {
            low: inches(0.75),
            high: inches(1.5),
        },
    };
    let thread = |thick: Distance| {
        let inputs = [("t_board", thick.into())];
        Worked::new("p_t", "t_board", &inputs, thick, Provenance::MECHANICS)
    };
    let thread = Ends {
        low: thread(boards.low),
        high: thread(boards.high),
    };
    let gravities = lightest_and_heaviest(woods.framing);
    pulled_out(
        woods.framing,
        one_of(fasteners),
        &thread,
        gravities,
        Grain::Side,
    )
}

/// A plate's own thickness. (common practice, no source)
const PLATE: Ends<Distance> = Ends {
    low: inches(0.0),
    high: inches(0.25),
};

/// The plate and the floor's covering, and wood that is deeper than a screw.
fn in_the_floor(seen: &Seen<'_, '_>, fasteners: Fasteners) -> Option<Layers> {
    let length: Option<Distance> = fasteners.length.map(|length| length.to_uom());
    let covering = seen.covering();
    let before = Ends {
        low: covering.low + PLATE.low,
        high: covering.high + PLATE.high,
    };
    if let WrittenLength::There(into) = seen.length(Item::ThreadInFraming) {
        return Some(Layers::written(length, before, into));
    }
    let main = Ends::exactly(length?);
    Some(Layers { before, main })
}

/// Plates of A36, and the weakest mild steel that one may be.
const STEEL: [crate::quantities::Pressure; 2] = [psi(30_000.0), psi(36_000.0)];

/// The strip of the plate between the pulled screws and the post.
fn bent(seen: &Seen<'_, '_>, pulled: &PlatePull) -> Link {
    let far = pulled.far_screws;
    let demand = pulled.to_the_post.map(|lever| {
        let on = |force: &Worked<Force>| plate_moment(force.value, far, lever).after(force.clone());
        Ends {
            low: on(&pulled.on_one.low),
            high: on(&pulled.on_one.high),
        }
    });
    let Some(demand) = demand else {
        let reason = LinkReason::ScrewsToPostUnknown;
        return Link::hidden(KIND, BENT, reason, &[Item::PostSection]);
    };
    let without =
        |reason, asks: &[Item]| Link::hidden(KIND, BENT, reason, asks).with_demand(&demand);
    match seen.word::<PostMaterialWord>() {
        Some(
            PostMaterialWord::Wood
            | PostMaterialWord::SteelPipe
            | PostMaterialWord::SteelTube
            | PostMaterialWord::StainlessPipe
            | PostMaterialWord::StainlessTube,
        ) => {}
        Some(_) => {
            return without(LinkReason::PlateMetalBrittle, &[]);
        }
        None => {
            return without(LinkReason::MaterialOfPostsNotWritten, &[Item::PostMaterial]);
        }
    }
    let Some(thick) = seen.known_length(Item::PlateThickness) else {
        let reason = LinkReason::PlateThicknessNotWritten;
        return without(reason, &[Item::PlateThickness]);
    };
    let takes = STEEL.map(|strength| plate_allowable(strength, pulled.width, thick));
    match Ends::of_worked(takes) {
        Some(capacity) => Link::weighed(KIND, BENT, &demand, &capacity).mending(Mend::ThickerPlate),
        None => without(LinkReason::NoPublishedValue, &[]),
    }
}
