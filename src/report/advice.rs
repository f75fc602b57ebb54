//! One line of what to do, in general words; the numbers of a remedy are
//! worked out elsewhere.

use crate::items::Item;
use crate::items::Kind;
use crate::judge::Finding;
use crate::judge::Operator;
use crate::judge::Reason;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::report::one_line;
use crate::report::strength;
use crate::report::wrap::tied;
use crate::rules::Test;

/// What a tradesman would fit where the load path says it; an engineer confirms.
fn fasten(finding: &Finding<'_>, otherwise: &str) -> String {
    let fits = finding.chain.as_deref().map(strength::fits);
    match fits.unwrap_or_default().first() {
        Some(fit) => format!("have a tradesman fit {fit}; keep off it until then."),
        None => otherwise.to_owned(),
    }
}

const LOOK_AND_FASTEN: &str = "have a tradesman look at it and fasten it; keep off it until then.";
const LOOK: &str = "have it looked at by somebody who builds stairs or decks.";

/// What would put a shortfall right. Common practice, no source.
#[must_use]
pub(super) fn put_right(finding: &Finding<'_>) -> String {
    let by = by(finding);
    let limit = limit(finding);
    match finding.item {
        Item::Guard => {
            "put up a railing at this edge; until then keep children away from it.".to_owned()
        }
        Item::Height if lower_is_better(finding) => format!("lower the top of the railing{by}."),
        Item::Height => format!(
            "raise the rail{by}: a higher rail, or one added on top and fixed to the posts."
        ),
        Item::Opening | Item::SillHeight | Item::SillAboveGround if is_window(finding) => {
            format!("fit a window guard, or a stop that a child cannot undo{limit}.")
        }
        Item::Opening | Item::EndGap if wider_is_better(finding) => format!("widen it{by}."),
        Item::Opening => {
            format!("close or narrow it{by}: another baluster, a panel or a mesh{limit}.")
        }
        Item::BottomGap => {
            format!(
                "fill the gap under the bottom rail, or narrow it{by}: a lower rail, a board{limit}."
            )
        }
        Item::EndGap => format!("close or narrow it{by}: a strip or a baluster at the end{limit}."),
        Item::EdgeGap => {
            format!(
                "close the gap between the floor's edge and the railing, or narrow it{by}: a board{limit}."
            )
        }
        Item::StairTriangle => {
            format!("fill the triangle at the steps or lower the bottom rail{limit}.")
        }
        Item::RiserOpening => {
            format!("close the gap between the treads, or narrow it{by}: a board or a bar{limit}.")
        }
        Item::Foothold => {
            "take it away, cover it, or close the face in front of it, so that no foot finds hold."
                .to_owned()
        }
        Item::VOpening => {
            "close it, or fill it from the bottom until it is wider than it is deep.".to_owned()
        }
        Item::StepBeside | Item::StepOutside => {
            "put something before it or over it that gives no foothold, or a higher railing above it."
                .to_owned()
        }
        Item::ThingToClimb => "move it away from the railing.".to_owned(),
        Item::HandrailHeight if lower_is_better(finding) => format!("lower the handrail{by}."),
        Item::HandrailHeight => format!("raise the handrail{by}."),
        Item::Handrail => "put up a handrail.".to_owned(),
        Item::HandrailSides => "add a handrail on the other side.".to_owned(),
        Item::HandrailShape | Item::HandrailThickness | Item::HandrailPerimeter => {
            "change the handrail for one that a hand closes around.".to_owned()
        }
        Item::HandrailClearance => format!("set the handrail further from the wall{by}."),
        Item::HandrailExtension => format!("lengthen the handrail beyond the top step{by}."),
        Item::HeightAboveSeat => {
            format!("raise the railing{by}, or take the seat or ledge away from it.")
        }
        Item::GuardThickness | Item::LevelBarSpacing => {
            "have it looked at: the railing has to be built otherwise.".to_owned()
        }
        Item::GapAboveSolidPart => {
            format!("close the gap, or narrow it{by}: a board or a panel{limit}.")
        }
        Item::HandrailContinuous => {
            "let the handrail run the whole flight without a break.".to_owned()
        }
        Item::HandrailEnds => {
            "turn the handrail's ends to the wall or the floor, or end them at a post.".to_owned()
        }
        Item::LatchHeight => format!("set the latch higher{by}."),
        Item::GateClosesItself => "fit a spring and a latch that catches by itself.".to_owned(),
        Item::GateOpens => "hang the gate so that it opens the other way.".to_owned(),
        Item::WindowStop => "fit a stop that a child cannot undo.".to_owned(),
        Item::RampEdge => "add a kerb or a low rail along the ramp's side.".to_owned(),
        Item::LevelMembersOn => "cover or change the infill.".to_owned(),
        Item::GateHeight => format!("use a gate that is higher{by}."),
        Item::GateGap | Item::GateBottomGap => {
            "use another gate, or have this one set so that its gaps keep the limit.".to_owned()
        }
        Item::SolidPartHeight | Item::SolidPartTopWidth => {
            "see that no child can stand on it, or raise the railing above it.".to_owned()
        }
        Item::PostSpacing => format!("add a post, so that they stand closer{by}."),
        Item::PostSection => {
            "have it looked at: a stouter post, or another one beside it.".to_owned()
        }
        Item::Infill => "cover or change the infill.".to_owned(),
        Item::InfillLoose => {
            "fix what is loose, put back what is missing; keep children away until then."
                .to_owned()
        }
        Item::BalusterFixing
        | Item::Condition
        | Item::EdgeDistance
        | Item::FastenedTo
        | Item::FastenerDepth
        | Item::FastenerSpacing
        | Item::FramingHeldBy
        | Item::MovesWhenPushed
        | Item::NotchedPost
        | Item::PostFasteners
        | Item::PostFastening
        | Item::PullTest
        | Item::RailEndFasteners
        | Item::RailEndFastening
        | Item::ThreadInFraming
        | Item::WasherSize => fasten(finding, LOOK_AND_FASTEN),
        Item::BalusterLength
        | Item::BalusterSection
        | Item::BalusterSpacing
        | Item::AnchorEmbedment
        | Item::BehindThePost
        | Item::CableCount
        | Item::CableTension
        | Item::ConcreteEdge
        | Item::FramingSpecies
        | Item::FramingThickness
        | Item::LowerRailSection
        | Item::LumberGrade
        | Item::NeckHeight
        | Item::PlateThickness
        | Item::PostNeck
        | Item::PostPosition
        | Item::RailPosition
        | Item::RimDepth
        | Item::RowsOfSlits
        | Item::SocketDepth
        | Item::TieLabel
        | Item::WasherThickness
        | Item::PostMaterial
        | Item::RailSection
        | Item::WallThickness
        | Item::WoodSpecies => fasten(finding, LOOK),
        Item::BottomOfStairsGate | Item::TopOfStairsGate => {
            "screw a gate to the wall.".to_owned()
        }
        Item::Paint => {
            "keep children off it, and have it tested before anybody scrapes or sands it."
                .to_owned()
        }
        Item::FixedSeat
        | Item::FlightShape
        | Item::GuardLength
        | Item::OwnWayOut
        | Item::Photo
        | Item::RampRise
        | Item::RampSlope
        | Item::ReplacedWindow
        | Item::SillTopHeight
        | Item::TreadThickness
        | Item::FlightWidth
        | Item::GroundFall
        | Item::InnerEdgeLength
        | Item::WellWidth
        | Item::BuildTolerance
        | Item::Built
        | Item::By
        | Item::Children
        | Item::Date
        | Item::DeckingThickness
        | Item::DefaultUnit
        | Item::Drop
        | Item::DwellingsInBuilding
        | Item::Location
        | Item::OpeningsChecked
        | Item::Place
        | Item::Property
        | Item::ReadTo
        | Item::Risers
        | Item::Rules
        | Item::Shared
        | Item::SillAboveGround
        | Item::SillHeight
        | Item::State
        | Item::Storeys
        | Item::Tape
        | Item::Use => format!("change it so that the rule is met{by}."),
    }
}

/// A rule about windows alone.
fn is_window(finding: &Finding<'_>) -> bool {
    let windows = Test::OneOf(vec!["window"]);
    let mut conditions = finding.rule.when.iter();
    conditions.any(|condition| condition.item == Item::Place && condition.test == windows)
}

fn lower_is_better(finding: &Finding<'_>) -> bool {
    matches!(operator(finding), Some(Operator::AtMost | Operator::Below))
}

fn wider_is_better(finding: &Finding<'_>) -> bool {
    matches!(operator(finding), Some(Operator::AtLeast | Operator::Above))
}

fn operator(finding: &Finding<'_>) -> Option<Operator> {
    finding.limit.as_ref().map(|limit| limit.operator)
}

/// ` by 1/2 in or more`, where the shortfall is a length.
fn by(finding: &Finding<'_>) -> String {
    let stops = operator(finding) == Some(Operator::StopsBall);
    match finding.margin {
        Some(margin) if margin < Length::ZERO => {
            let more = if stops { "more than" } else { "at least" };
            format!(" by {more} {}", amount(finding, margin))
        }
        Some(_) | None => String::new(),
    }
}

/// `, until a 4 in ball no longer passes`
fn limit(finding: &Finding<'_>) -> String {
    match &finding.limit {
        Some(limit) if limit.operator == Operator::StopsBall => {
            let ball = tied(&format!("{} ball", one_line(&limit.written)));
            format!(", until a {ball} no longer passes")
        }
        Some(_) | None => String::new(),
    }
}

/// A margin without its sign, in the unit that the person wrote: what is short
/// is never understated, what is to spare never overstated.
#[must_use]
pub(super) fn amount(finding: &Finding<'_>, margin: Length) -> String {
    let unit = unit(finding);
    tied(&if margin < Length::ZERO {
        margin.magnitude().readable_up(unit)
    } else {
        margin.readable_down(unit)
    })
}

/// How sure the tape is, in the unit that the person wrote; never understated.
#[must_use]
pub(super) fn doubt(finding: &Finding<'_>, band: Length) -> String {
    tied(&band.readable_up(unit(finding)))
}

/// The unit that the person wrote, else the ruleset's.
#[must_use]
pub(super) fn unit(finding: &Finding<'_>) -> LengthUnit {
    let measured = finding.measured.as_ref().and_then(|measured| measured.unit);
    let limit = finding.limit.as_ref().and_then(|limit| limit.unit);
    measured.or(limit).unwrap_or(LengthUnit::Millimetre)
}

/// How to settle what was too close to call; `None` where no test can.
#[must_use]
pub(super) fn settle(finding: &Finding<'_>) -> Option<String> {
    for reason in &finding.reasons {
        if let Reason::TriggerInDoubt(item) = reason {
            return Some(format!(
                "measure {item} again, more finely than now, with a tape whose class you name."
            ));
        }
    }
    let limit = finding.limit.as_ref()?;
    let size = tied(&one_line(&limit.written));
    let finer = "or read it more finely than now, with a tape whose class you name";
    let opening = matches!(
        finding.item.info().kind,
        Kind::Opening | Kind::StairTriangle
    );
    let stick = matches!(
        finding.item,
        Item::HandrailHeight | Item::Height | Item::SolidPartHeight
    );
    let single =
        limit.value.is_some() && !matches!(limit.operator, Operator::Entraps | Operator::NotWithin);
    let place = if finding.item == Item::StairTriangle {
        "step"
    } else {
        "hole"
    };
    Some(if opening && single {
        format!(
            "try a ball of {size} at every {place} and write \"{} ball stops everywhere\" or \"{} ball passes\"; {finer}.",
            one_line(&limit.written),
            one_line(&limit.written)
        )
    } else if stick && single {
        format!(
            "cut a stick to {size}, hold it plumb at the lowest place, and write \"reaches {}\" or \"below {}\"; {finer}.",
            one_line(&limit.written),
            one_line(&limit.written)
        )
    } else if finding.item.info().kind.holds_a_length() {
        "read it more finely than now, with a tape whose class you name.".to_owned()
    } else {
        // what is seen or counted is read no more finely
        return None;
    })
}
