//! The arithmetic behind a finding, for `--explain`.

use crate::items::Verdict;
use crate::judge::Decision;
use crate::judge::Finding;
use crate::quantities::DoubtEffect;
use crate::quantities::Length;
use crate::quantities::Term;
use crate::quantities::TermKind;
use crate::reading::Value;
use crate::report::ReportBasis;
use crate::report::one_line;
use crate::report::opening_notes;
use crate::report::strength;
use crate::report::words;
use crate::report::wrap::Lines;
use crate::survey::Guard;

const INDENT: &str = "        ";

/// The lines of one finding.
pub(super) fn arithmetic(
    lines: &mut Lines,
    finding: &Finding<'_>,
    guard: &Guard,
    basis: &ReportBasis<'_>,
) {
    let title = format!(
        "{} in {}, {}: {}",
        one_line(&finding.rule.id),
        one_line(&finding.ruleset.id),
        finding.item,
        finding.verdict
    );
    lines.hanging("    * ", &title);
    let mut say = |text: &str| lines.hanging(INDENT, text);
    if let Some(limit) = &finding.limit {
        let exact = limit
            .value
            .map_or_else(String::new, |value| format!(" = {value}"));
        say(&format!("asked: {}{exact}", one_line(&words::limit(limit))));
    }
    if let Some(measured) = &finding.measured {
        let exact = measured
            .value
            .map_or_else(String::new, |value| format!(" = {}", rounded(value)));
        let place = finding
            .readings
            .first()
            .map(|index| words::place(guard.observation(*index), basis.survey))
            .unwrap_or_default();
        say(&format!(
            "reading: {}{exact} ({place})",
            one_line(&measured.written)
        ));
    }
    for note in shape_notes(finding, guard) {
        say(&note);
    }
    if let Some(u) = finding.uncertainty {
        for term in finding.terms(guard, basis.survey) {
            say(&term_says(term));
        }
        say(&format!(
            "together: u = {}, the root of the sum of their squares{}; the band is 2u = {}",
            rounded(u.as_length()),
            carried(finding, guard),
            rounded(u.doubled())
        ));
    }
    if let Some(margin) = finding.margin {
        say(&compared(margin, finding, basis));
    }
    if let Some(probability) = finding.probability {
        let chance = probability.value();
        let shown = if chance < 0.0001 {
            "below 0.0001".to_owned()
        } else if chance > 0.9999 {
            "above 0.9999".to_owned()
        } else {
            format!("{chance:.4}")
        };
        say(&format!("chance that it conforms: {shown}"));
    }
    for reason in &finding.reasons {
        say(&words::reason(reason, guard));
    }
    if let Some(chain) = &finding.chain {
        strength::calculation(lines, chain);
    }
}

/// What the shape of the deciding reading leaves open, the limit being the ball of
/// interest.
fn shape_notes(finding: &Finding<'_>, guard: &Guard) -> Vec<String> {
    let index = finding.readings.first();
    let reading = index.and_then(|index| guard.observation(*index).reading.as_ref());
    let Some((value, (unit, _))) = reading.and_then(|r| Some((&r.value, r.value.tape()?))) else {
        return Vec::new();
    };
    let ball = finding.limit.as_ref().and_then(|limit| limit.value);
    opening_notes(value, ball, unit)
}

fn compared(margin: Length, finding: &Finding<'_>, basis: &ReportBasis<'_>) -> String {
    let side = if margin < Length::ZERO {
        "past the limit"
    } else {
        "on its good side"
    };
    let band = match (basis.options.decision, finding.uncertainty) {
        (Decision::Simple, _) => "; only the reading counts".to_owned(),
        (Decision::Guarded, Some(u)) if margin.magnitude() < u.doubled() => {
            ", less than 2u".to_owned()
        }
        (Decision::Guarded, Some(_)) => ", at least 2u".to_owned(),
        (Decision::Guarded, None) => "; no doubt is counted".to_owned(),
    };
    let verdict = finding.verdict;
    let so = if verdict == Verdict::DoesNotApply {
        String::new()
    } else {
        format!(": {verdict}")
    };
    format!("{} {side}{band}{so}", rounded(margin.magnitude()))
}

/// Of a shape the effects are those of each dimension.
fn carried(finding: &Finding<'_>, guard: &Guard) -> &'static str {
    let reading = finding
        .readings
        .first()
        .and_then(|index| guard.observation(*index).reading.as_ref());
    let shaped = reading
        .is_some_and(|reading| matches!(reading.value, Value::Shape(_) | Value::StairTriangle(_)));
    if shaped {
        " for each dimension, carried over to the ball"
    } else {
        ""
    }
}

fn term_says(term: Term) -> String {
    let how = match term.kind {
        TermKind::Within => format!("within ± {}, anywhere equally likely", rounded(term.size)),
        TermKind::Graduation => format!("read to the nearest {}", rounded(term.size)),
        TermKind::Deviation => format!("standard deviation {}", rounded(term.size)),
    };
    format!(
        "{}: {how}: u = {}",
        effect_in_words(term.effect),
        rounded(term.standard().as_length())
    )
}

const fn effect_in_words(effect: DoubtEffect) -> &'static str {
    match effect {
        DoubtEffect::Builder => "the builder's error",
        DoubtEffect::Edges => "finding the edges",
        DoubtEffect::Graduation => "how finely it was read",
        DoubtEffect::Hand => "a steady hand",
        DoubtEffect::Hook => "its sliding hook",
        DoubtEffect::Plumb => "a tape not quite plumb",
        DoubtEffect::PlusMinus => "± beside the reading",
        DoubtEffect::Round => "a reading of one round",
        DoubtEffect::Surface => "a floor or ground not quite flat",
        DoubtEffect::Tape => "the tape itself",
        DoubtEffect::TapeWithHook => "the tape itself with its hook",
    }
}

/// Millimetres to the nearest micrometre.
fn rounded(length: Length) -> String {
    let nanometres = length.nanometres();
    let down = nanometres.div_euclid(1000);
    let up = i64::from(nanometres.rem_euclid(1000) >= 500);
    Length::from_nanometres(down.saturating_add(up).saturating_mul(1000)).to_string()
}
