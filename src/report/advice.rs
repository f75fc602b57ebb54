//! Amounts as a person wrote them, and how to settle what is too near to tell.

use crate::items::Item;
use crate::items::Kind;
use crate::judge::Finding;
use crate::judge::Operator;
use crate::judge::Reason;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::report::one_line;
use crate::report::wrap::tied;

/// A margin without its sign, in the unit that the person wrote: what is short
/// is never understated, what is to spare never overstated.
#[must_use]
pub(super) fn amount(finding: &Finding<'_>, margin: Length) -> String {
    let unit = small(unit(finding), margin);
    tied(&if margin < Length::ZERO {
        margin.magnitude().readable_up(unit)
    } else {
        margin.readable_down(unit)
    })
}

/// How sure the tape is, in the unit that the person wrote; never understated.
#[must_use]
pub(super) fn doubt(finding: &Finding<'_>, band: Length) -> String {
    tied(&band.readable_up(small(unit(finding), band)))
}

/// Nobody marks 0.0144 m on a rail: less than a metre is said in centimetres to whoever
/// wrote metres.
fn small(unit: LengthUnit, amount: Length) -> LengthUnit {
    if unit == LengthUnit::Metre && amount.magnitude() < Length::millimetres(1000) {
        LengthUnit::Centimetre
    } else {
        unit
    }
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
