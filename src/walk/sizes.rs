//! The sizes that the rules ask for: balls, sticks, how far a drop must be.

use crate::input::folded;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::judge::Reason;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::reading::Value;
use crate::reading::parse_length;
use crate::rules::Demand;
use crate::rules::Limit;
use crate::rules::Subject;
use crate::rules::Test;
use crate::survey::Guard;

/// No more balls are asked about at once. (common practice, no source)
const BALLS: usize = 6;

/// The drops at which a rule of this guard begins or ends to ask, least first.
pub(super) fn triggers<'r>(judged: &Judged<'r>) -> Vec<&'r Limit> {
    let waiting = judged.findings.iter().filter(|finding| {
        let missing = |reason: &Reason<'_>| *reason == Reason::CircumstanceMissing(Item::Drop);
        finding.reasons.iter().any(missing)
    });
    limits_of_drop(waiting)
}

/// Those of all rules, whether they wait or not.
pub(super) fn all_triggers<'r>(judged: &Judged<'r>) -> Vec<&'r Limit> {
    limits_of_drop(judged.findings.iter())
}

fn limits_of_drop<'f, 'r: 'f>(findings: impl Iterator<Item = &'f Finding<'r>>) -> Vec<&'r Limit> {
    let mut limits: Vec<&'r Limit> = Vec::new();
    for finding in findings {
        let of_drop = finding
            .rule
            .conditions()
            .filter(|condition| condition.item == Item::Drop);
        for condition in of_drop {
            if let Test::Length(bounds) = &condition.test {
                let all = [
                    &bounds.above,
                    &bounds.at_least,
                    &bounds.below,
                    &bounds.at_most,
                ];
                limits.extend(all.into_iter().flatten());
            }
        }
    }
    limits.retain(|limit| limit.length > Length::ZERO);
    limits.sort_by_key(|limit| limit.length);
    limits.dedup_by_key(|limit| limit.length);
    limits
}

/// A drop as it is asked about: not below the limit, in whole inches or centimetres.
pub(super) fn worded_above(limit: &Limit, unit: Option<LengthUnit>) -> String {
    let unit = unit.unwrap_or(limit.unit);
    if unit.is_imperial() == limit.unit.is_imperial() {
        return limit.written.clone();
    }
    let step = if unit.is_imperial() {
        Length::inches(1)
    } else {
        Length::millimetres(10)
    };
    let step = step.nanometres();
    let up = limit.length.nanometres().saturating_add(step - 1) / step;
    let length = Length::from_nanometres(up.saturating_mul(step));
    if unit.is_imperial() {
        length.exact(LengthUnit::Inch)
    } else {
        length.exact(LengthUnit::Millimetre)
    }
}

/// The balls that what waits for this hole asks for, largest first.
pub(super) fn ball_sizes<'r>(judged: &Judged<'r>, item: Item) -> Vec<&'r Limit> {
    let mut sizes: Vec<&'r Limit> = Vec::new();
    let waiting = judged.findings.iter().filter(|finding| {
        finding.item == item && (finding.verdict == Verdict::NotMeasured || finding.partial)
    });
    for finding in waiting {
        for check in &finding.rule.checks {
            let limit = match check.subject {
                Subject::Item(of) if of != item => None,
                Subject::LoadPath => None,
                Subject::AnyOpening | Subject::Item(_) => ball_limit(&check.demand),
            };
            sizes.extend(limit);
        }
    }
    sizes.retain(|limit| limit.length > Length::ZERO);
    sizes.sort_by_key(|limit| std::cmp::Reverse(limit.length));
    sizes.dedup_by_key(|limit| limit.length);
    sizes.truncate(BALLS);
    sizes
}

fn ball_limit(demand: &Demand) -> Option<&Limit> {
    match demand {
        Demand::Opening(demand) => demand
            .stops_ball
            .as_ref()
            .or(demand.at_most.as_ref())
            .or(demand.not_within.as_ref().map(|(above, _)| above)),
        Demand::Count(_)
        | Demand::Foothold(_)
        | Demand::Length(_)
        | Demand::Load(_)
        | Demand::VOpening(_)
        | Demand::Words { .. } => None,
    }
}

/// The ball to try at a hole of its own: the smallest that was not tried, since one that
/// stops settles every larger one.
pub(super) fn one_ball(judged: &Judged<'_>, guard: &Guard, item: Item) -> Option<String> {
    let sizes = ball_sizes(judged, item);
    let untried = sizes
        .iter()
        .rev()
        .find(|size| !was_tried(guard, item, size.length));
    untried.map(|size| size.written.clone())
}

/// Whether a ball has told already, here or everywhere, what one of this size would.
fn was_tried(guard: &Guard, item: Item, size: Length) -> bool {
    guard.observations.iter().any(|observation| {
        let reading = observation.reading.as_ref();
        let Some(Value::Ball(ball)) = reading.map(|reading| &reading.value) else {
            return false;
        };
        let here = observation.item == item;
        // what lets a ball pass lets every smaller one pass, and what stops one every larger
        if ball.passes {
            here && ball.ball >= size
        } else {
            (here || ball.everywhere && item.info().hole.is_everywhere()) && ball.ball <= size
        }
    })
}

/// The stick that would settle a height which the tape cannot, if none was tried.
pub(super) fn stick(judged: &Judged<'_>, guard: &Guard, item: Item) -> Option<String> {
    let mut close: Vec<&Finding<'_>> = judged
        .findings
        .iter()
        .filter(|finding| finding.item == item && finding.verdict == Verdict::TooClose)
        .collect();
    close.sort_by_key(|finding| !finding.binding);
    let mut limits = close.iter().flat_map(|finding| {
        let checks = finding.rule.checks.iter();
        checks.filter_map(|check| check.demand.least_length())
    });
    let tried = |limit: &&Limit| {
        guard.of(item).any(|(_, o)| {
            let value = o.reading.as_ref().map(|reading| &reading.value);
            matches!(value, Some(Value::Stick(stick)) if stick.stick == limit.length)
        })
    };
    limits
        .find(|limit| !tried(limit))
        .map(|limit| limit.written.clone())
}

/// What an answer to the balls means: which of the sizes, as they are written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum BallChoice {
    /// Even the largest passes.
    AllPass,
    /// None of them is meant.
    No,
    /// This one stops, by its place in the list.
    Stops(usize),
}

/// The ball that is meant: by its whole size, or by the first letters of one alone.
pub(super) fn chosen_ball(text: &str, sizes: &[String]) -> BallChoice {
    let text = folded(text);
    let text = text.strip_suffix(" ball").unwrap_or(&text);
    if ["p", "pass", "passes", "all pass", "all", "they all pass"].contains(&text) {
        return BallChoice::AllPass;
    }
    if let ([_], "n" | "no") = (sizes, text) {
        return BallChoice::AllPass;
    }
    if let ([_], "y" | "yes" | "stops") = (sizes, text) {
        return BallChoice::Stops(0);
    }
    if !text.starts_with(|c: char| c.is_ascii_digit()) {
        return BallChoice::No;
    }
    let number = |size: &str| {
        let end = size.rfind(' ').unwrap_or(size.len());
        size[..end].to_owned()
    };
    let exact = sizes
        .iter()
        .position(|size| size == text || number(size) == text);
    if let Some(index) = exact {
        return BallChoice::Stops(index);
    }
    if let Ok(meant) = parse_length(text, None) {
        let same = sizes.iter().position(|size| {
            parse_length(size, None).is_ok_and(|size| size.length == meant.length)
        });
        return same.map_or(BallChoice::No, BallChoice::Stops);
    }
    let mut begin = sizes
        .iter()
        .enumerate()
        .filter(|(_, size)| size.starts_with(text));
    match (begin.next(), begin.next()) {
        (Some((index, _)), None) => BallChoice::Stops(index),
        (_, _) => BallChoice::No,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ball_is_chosen_by_its_size_or_the_beginning_of_it() {
        let sizes = ["6 in", "4 3/8 in", "4 in", "3 1/2 in"].map(str::to_owned);
        let chosen = |text| chosen_ball(text, &sizes);
        assert_eq!(chosen("6"), BallChoice::Stops(0));
        assert_eq!(chosen("4"), BallChoice::Stops(2), "4 in, and not 4 3/8 in");
        assert_eq!(chosen("4 3"), BallChoice::Stops(1));
        assert_eq!(chosen("3"), BallChoice::Stops(3));
        assert_eq!(chosen("3 1/2 in ball"), BallChoice::Stops(3));
        assert_eq!(chosen("88.9 mm"), BallChoice::Stops(3));
        assert_eq!(chosen("p"), BallChoice::AllPass);
        for other in ["", "8", "3 1/4 in", "y", "none", "2 3/8"] {
            assert_eq!(chosen(other), BallChoice::No, "{other}");
        }
        let one = ["100 mm".to_owned()];
        assert_eq!(chosen_ball("y", &one), BallChoice::Stops(0));
        assert_eq!(chosen_ball("n", &one), BallChoice::AllPass);
        assert_eq!(chosen_ball("1", &one), BallChoice::Stops(0));
    }

    #[test]
    fn a_drop_is_worded_above_its_limit() {
        let limit = |written: &str| {
            let measure = parse_length(written, None).expect("a length");
            Limit {
                length: measure.length,
                unit: if written.ends_with("in") {
                    LengthUnit::Inch
                } else {
                    LengthUnit::Millimetre
                },
                written: written.to_owned(),
            }
        };
        let metric = Some(LengthUnit::Millimetre);
        assert_eq!(worded_above(&limit("30 in"), metric), "770 mm");
        assert_eq!(worded_above(&limit("600 mm"), metric), "600 mm");
        assert_eq!(
            worded_above(&limit("600 mm"), Some(LengthUnit::Inch)),
            "24 in"
        );
        assert_eq!(worded_above(&limit("30 in"), None), "30 in");
    }
}
