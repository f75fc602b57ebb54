//! Remedies at stairs: the triangle at the steps, the gap between treads, gates.

use crate::geometry::usual_drying;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::PlaceWord;
use crate::items::TopOfStairsGateWord;
use crate::quantities::DoubtEffect;
use crate::quantities::Length;
use crate::quantities::Term;
use crate::quantities::TermKind;
use crate::reading::Graduation;
use crate::reading::Reading;
use crate::reading::StairReading;
use crate::reading::Value;
use crate::reading::print;
use crate::remedy::change::GuardChange;
use crate::remedy::demands::Demands;
use crate::remedy::drawn::Drawn;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::along;
use crate::remedy::quantity::measured;
use crate::remedy::topics::says;

/// The triangle between riser, tread and bottom rail.
pub(super) fn triangle(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let mut all = Vec::new();
    all.extend(less_lift(drawn).into_iter().flatten());
    let joint = m.either(Length::sixty_fourths(16), 6);
    let fill = format!(
        "Close each triangle at the steps with a filler cut to the step or a saw-tooth board under the \
         rail; joints of {} at most. Make a template of one step and try it at three.",
        m.text(joint)
    );
    let change = GuardChange::default()
        .instead(
            drawn.guard,
            Item::StairTriangle,
            "none",
            "as drawn: closed by fillers",
        )
        .instead(
            drawn.guard,
            Item::BottomGap,
            &m.drawn(joint, m.gaps),
            "as drawn: the joint under the rail",
        );
    all.push(
        Offered::new(RemedyKind::TriangleFillers, fill, change)
            .of(along(drawn.guard, "filler board".to_owned()))
            .taking(20, 30, LabourPer::Step),
    );
    all
}

/// Less lift, by a strip under the rail or by the rail itself, where that suffices at every
/// step that was measured.
fn less_lift(drawn: &Drawn<'_, '_>) -> Option<[Offered; 2]> {
    let m = &drawn.measuring;
    let limit = Demands::of(drawn.judged, Item::StairTriangle).most?;
    let mut change = GuardChange::default().without(drawn.guard, Item::StairTriangle);
    let mut thickest = Length::ZERO;
    let mut room: Option<Length> = None;
    for (_, observation) in drawn.guard.of(Item::StairTriangle) {
        let Value::StairTriangle(stair) = observation.reading.as_ref()?.value else {
            return None;
        };
        let lift = stair.lift?;
        let less = largest_lift(drawn, stair, limit)?.min(lift);
        thickest = thickest.max(m.up(lift - less));
        room = Some(room.map_or(lift, |room| room.min(lift)));
        let drawn_step = StairReading {
            lift: Some(less),
            graduation: Graduation::PlusMinus(m.gaps),
            ..stair
        };
        let reading = Reading {
            value: Value::StairTriangle(drawn_step),
            at: None,
        };
        change = change.also(
            Item::StairTriangle,
            &print(&reading),
            "as drawn: with the strip under the rail",
        );
    }
    // no deeper than the rail lies above the noses anywhere
    if thickest <= Length::ZERO || room.is_some_and(|room| thickest > room) {
        return None;
    }
    let says = format!(
        "Screw a strip under the bottom rail the whole flight; a strip {} deep, measured plumb, and the \
         ball tried at every step.",
        m.text(thickest)
    );
    let lower = format!(
        "Have the bottom rail lowered by {}, measured plumb, and the balusters lengthened; the ball tried at \
         every step.",
        m.text(thickest)
    );
    let lowered = Offered::new(RemedyKind::LowerStairRail, lower, change.clone());
    Some([
        Offered::new(RemedyKind::StripUnderStairRail, says, change)
            .of(along(
                drawn.guard,
                format!("strip {} deep, plumb", m.text(thickest)),
            ))
            .taking(30, 60, LabourPer::Flight),
        lowered.taking(120, 240, LabourPer::Flight),
    ])
}

/// The largest lift on the marks whose ball stays below the limit by the builder's doubt
/// and a graduation.
fn largest_lift(drawn: &Drawn<'_, '_>, stair: StairReading, limit: Length) -> Option<Length> {
    let m = &drawn.measuring;
    let builder = Term {
        effect: DoubtEffect::Builder,
        size: m.gaps,
        kind: TermKind::Within,
    };
    let open = stair.lift?;
    let fits = |lift: Length| {
        // the strip that leaves this dries and leaves a little more
        let dried = lift + usual_drying(open - lift);
        stair.triangle(dried).is_ok_and(|step| {
            let doubt = step.clear_opening_uncertainty(builder.standard()).doubled();
            let ball = step.clear_opening();
            ball.upper
                .is_some_and(|upper| upper + doubt + m.step <= limit)
        })
    };
    let marks = open.nanometres() / m.step.nanometres().max(1);
    // the ball grows with the lift: halve the marks between what fits and what does not
    if !fits(Length::ZERO) {
        return None;
    }
    let (mut fit, mut not) = (0, marks + 1);
    while not - fit > 1 {
        let middle = i64::midpoint(fit, not);
        if fits(Length::from_nanometres(middle * m.step.nanometres())) {
            fit = middle;
        } else {
            not = middle;
        }
    }
    Some(Length::from_nanometres(fit * m.step.nanometres()))
}

/// The gap between two treads.
pub(super) fn riser(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let clear = measured(drawn.guard, Item::RiserOpening);
    let Some(target) = drawn.filled_target(Item::RiserOpening, clear) else {
        return Vec::new();
    };
    let mut all = Vec::new();
    if let Some(clear) = clear.filter(|clear| *clear > target) {
        let bar = m.either(Length::inches(1), 25);
        let left = m.up(Length::from_nanometres((clear - bar).nanometres() / 2));
        let says = format!(
            "Screw a bar into the middle of each opening between two treads, to both strings; a bar {} high, \
             so that {} stay below and above it.",
            m.text(bar),
            m.text(left)
        );
        let narrowed = |to: &str| {
            GuardChange::default().instead(drawn.guard, Item::RiserOpening, to, "as drawn")
        };
        if left > Length::ZERO {
            all.push(
                Offered::new(
                    RemedyKind::RiserBar,
                    says,
                    narrowed(&drawn.dried(left, bar)),
                )
                .aiming(format!("{} or less", m.text(left)))
                .taking(12, 24, LabourPer::Step),
            );
        }
        let strip = m.up(clear - target);
        let under = format!(
            "Screw a strip under each tread; a strip {} high, so that {} or less stays open.",
            m.text(strip),
            m.text(target)
        );
        all.push(
            Offered::new(
                RemedyKind::RiserStrip,
                under,
                narrowed(&m.drawn(target, m.gaps)),
            )
            .aiming(format!("{} or less", m.text(target)))
            .taking(12, 24, LabourPer::Step),
        );
    }
    let full =
        "Close each opening with a board between the treads; how deep a foot goes in gets less by \
                its thickness if it is set behind the nose."
            .to_owned();
    let change =
        GuardChange::default().instead(drawn.guard, Item::RiserOpening, "none", "as drawn");
    all.push(Offered::new(RemedyKind::FullRisers, full, change).taking(20, 30, LabourPer::Step));
    all
}

/// A gate that is missing or only pressed, at the top or at the foot of a stair.
pub(super) fn gate(drawn: &Drawn<'_, '_>, item: Item) -> Vec<Offered> {
    let m = &drawn.measuring;
    if item == Item::BottomOfStairsGate {
        let says = "Put a gate at the foot of the stair; there a pressed one will do.".to_owned();
        let change = GuardChange::default().instead(drawn.guard, item, "screwed", "as drawn");
        return vec![Offered::new(RemedyKind::ScrewedGate, says, change).taking(
            40,
            90,
            LabourPer::Gate,
        )];
    }
    let below = m.either(Length::inches(2), 50);
    let says = format!(
        "Screw a gate to wood that does not move on both sides at the top of the stair, {} or less above the floor, opening \
         over the landing and never over the stairs; each adult opens it and nobody steps over it.",
        m.text(below)
    );
    let screwed = TopOfStairsGateWord::Screwed.name();
    let change = GuardChange::default()
        .instead(drawn.guard, Item::TopOfStairsGate, screwed, "as drawn")
        .instead(
            drawn.guard,
            Item::GateBottomGap,
            &m.drawn(below, m.gaps),
            "as drawn",
        );
    vec![Offered::new(RemedyKind::ScrewedGate, says, change).taking(40, 90, LabourPer::Gate)]
}

/// Gates of pools, and gaps of a gate at a stair.
pub(super) fn gate_part(drawn: &Drawn<'_, '_>, item: Item) -> Vec<Offered> {
    let m = &drawn.measuring;
    let demands = Demands::of(drawn.judged, item);
    let change =
        |written: &str| GuardChange::default().instead(drawn.guard, item, written, "as drawn");
    let pool = says(drawn.guard, PlaceWord::Pool);
    let offered =
        |kind, says: String, written: &str| vec![Offered::new(kind, says, change(written))];
    let new_gate = RemedyKind::NewPoolGate;
    let all = match (item, demands.least, demands.most) {
        (Item::GateClosesItself, _, _) => offered(
            RemedyKind::HingeSet,
            "Set or replace hinge and closer until the gate shuts and latches by itself from wide open and \
             from a hand's width, ten times; nothing props it open."
                .to_owned(),
            "yes",
        ),
        (Item::GateOpens, _, _) => offered(
            RemedyKind::GateRehung,
            "Hang the gate so that it opens away from the water or over the landing.".to_owned(),
            "away",
        ),
        (Item::LatchHeight, Some(least), _) => {
            let height = m.least(least, m.heights);
            let says = format!("Set the release of the latch at {} or higher.", m.text(height));
            offered(RemedyKind::ReleaseRaised, says, &m.drawn(height, m.heights))
        }
        (Item::GateHeight, Some(least), _) => {
            let height = m.least(least, m.heights);
            let says = format!("Put in a gate {} high or higher.", m.text(height));
            offered(new_gate, says, &m.drawn(height, m.heights))
        }
        (Item::GateGap | Item::GateBottomGap, _, Some(most)) => {
            let gap = m.most(most, m.gaps);
            let says = format!("Set the gate, or fix a strip, so that {} or less stays open.", m.text(gap));
            offered(RemedyKind::HingeSet, says, &m.drawn(gap, m.gaps))
        }
        _ => Vec::new(),
    };
    let of_pools = |one: &Offered| pool || one.kind != new_gate;
    all.into_iter()
        .map(|one| {
            if of_pools(&one) {
                one
            } else {
                Offered {
                    kind: RemedyKind::ScrewedGate,
                    ..one
                }
            }
        })
        .collect()
}
