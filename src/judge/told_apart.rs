//! The values of a circumstance that rules tell apart, where nobody wrote it down.

use std::collections::BTreeSet;
use std::fmt;

use crate::items::Item;
use crate::items::ItemWord;
use crate::items::PlaceWord;
use crate::items::Worst;
use crate::judge::bound::Evidence;
use crate::judge::condition::Truth;
use crate::judge::condition::as_supposed;
use crate::judge::facts::trigger;
use crate::judge::rule::Bench;
use crate::judge::scene::Scene;
use crate::judge::scene::Supposed;
use crate::quantities::Age;
use crate::quantities::Length;
use crate::reading::Value;
use crate::rules::Bounds;
use crate::rules::Limit;
use crate::rules::Rule;
use crate::rules::Test;

/// A value that a rule tells apart, and how it is said.
#[derive(Clone, Debug)]
pub(super) struct Answer {
    pub(super) supposed: Supposed,
    /// One for each value that no test tells from the others.
    pub(super) says: Vec<AnswerSaid>,
}

/// How a value is said; put in words only where the answers differ.
#[derive(Clone, Debug)]
pub(super) enum AnswerSaid {
    /// A count or a year.
    Number(i64),
    /// Less than, exactly or more than a limit.
    Length(&'static str, String),
    /// An age.
    Months(u32),
    /// A word.
    Word(&'static str),
}

impl fmt::Display for AnswerSaid {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            AnswerSaid::Number(number) => write!(f, "{number}"),
            AnswerSaid::Length(how, limit) => write!(f, "{how} {limit}"),
            AnswerSaid::Months(months) => write!(f, "{months} months"),
            AnswerSaid::Word(word) => f.write_str(word),
        }
    }
}

impl Answer {
    /// All values that it stands for, in words.
    pub(super) fn in_words(&self) -> String {
        let all: Vec<String> = self.says.iter().map(AnswerSaid::to_string).collect();
        all.join(", ")
    }
}

/// A circumstance that nobody wrote down, with the values told apart.
#[derive(Clone, Debug)]
pub(super) struct Unknown {
    pub(super) item: Item,
    pub(super) answers: Vec<Answer>,
    /// Whether it may also be something that the ruleset does not cover. Shortfalls
    /// are told as if it were covered; that all is well is not.
    pub(super) may_be_outside: bool,
}

/// The values of a circumstance that the rules tell apart.
pub(super) fn told_apart(scene: &Scene<'_>, bench: &Bench<'_>, item: Item) -> Unknown {
    let ruleset = bench.ruleset;
    let rules = ruleset.rules.iter().chain(&ruleset.removed);
    let silent = ruleset
        .asks_nothing
        .iter()
        .flat_map(|silence| &silence.when);
    let tests: Vec<&Test> = rules
        .flat_map(Rule::conditions)
        .chain(silent)
        .filter(|condition| condition.item == item)
        .map(|condition| &condition.test)
        .collect();
    let covers: Vec<&Test> = ruleset
        .covers
        .conditions
        .iter()
        .filter(|condition| condition.item == item)
        .map(|condition| &condition.test)
        .collect();
    let is_covered = |answer: &Answer| {
        let covered = |test: &&Test| as_supposed(answer.supposed, test) != Truth::False;
        covers.iter().all(covered)
    };
    let mut answers: Vec<(Vec<Truth>, Answer)> = Vec::new();
    let mut may_be_outside = false;
    for answer in values(item, &tests) {
        if !may_be(scene, item, answer.supposed) {
            continue;
        }
        if !is_covered(&answer) {
            may_be_outside = true;
            continue;
        }
        let mut signature: Vec<Truth> = tests
            .iter()
            .map(|test| as_supposed(answer.supposed, test))
            .collect();
        // on a stair a bottom gap is no opening of its own
        signature.push(
            if answer.supposed == Supposed::Word(PlaceWord::Stair.name()) {
                Truth::True
            } else {
                Truth::False
            },
        );
        match answers.iter_mut().find(|(known, _)| *known == signature) {
            Some((_, known)) => known.says.extend(answer.says),
            None => answers.push((signature, answer)),
        }
    }
    Unknown {
        item,
        answers: answers.into_iter().map(|(_, answer)| answer).collect(),
        may_be_outside,
    }
}

/// Values of an item, one at least for each that a test tells apart.
fn values(item: Item, tests: &[&Test]) -> Vec<Answer> {
    let words = item.words().iter().map(|word| Answer {
        supposed: Supposed::Word(word.name),
        says: vec![AnswerSaid::Word(word.name)],
    });
    let mut all: Vec<Answer> = words.collect();
    let mut lengths: Vec<Limit> = Vec::new();
    let mut counts: BTreeSet<u32> = BTreeSet::new();
    let mut years: BTreeSet<i32> = BTreeSet::new();
    let mut months: BTreeSet<u32> = BTreeSet::new();
    for test in tests {
        match test {
            Test::Age(bounds) => months.extend(ends(bounds).map(|age| age.months())),
            Test::Count(bounds) => counts.extend(ends(bounds)),
            Test::Length(bounds) => lengths.extend(ends(bounds)),
            Test::Years(bounds) => years.extend(ends(bounds)),
            Test::NoneOf(_) | Test::OneOf(_) => {}
        }
    }
    if !months.is_empty() {
        all.push(Answer {
            supposed: Supposed::Nobody,
            says: vec![AnswerSaid::Word("no child")],
        });
    }
    let around = |at: u32| [at.saturating_sub(1), at, at.saturating_add(1)];
    for month in months.into_iter().flat_map(around) {
        all.push(Answer {
            supposed: Supposed::Age(Age::from_months(month)),
            says: vec![AnswerSaid::Months(month)],
        });
    }
    for count in counts.into_iter().flat_map(around) {
        all.push(Answer {
            supposed: Supposed::Count(count),
            says: vec![AnswerSaid::Number(count.into())],
        });
    }
    for year in years
        .into_iter()
        .flat_map(|year| [year - 1, year, year + 1])
    {
        all.push(Answer {
            supposed: Supposed::Year(year),
            says: vec![AnswerSaid::Number(year.into())],
        });
    }
    for limit in lengths {
        for (offset, says) in [(-1, "less than"), (0, "exactly"), (1, "more than")] {
            let length = limit.length + Length::from_nanometres(offset);
            all.push(Answer {
                supposed: Supposed::Length(length),
                says: vec![AnswerSaid::Length(says, limit.written.clone())],
            });
        }
    }
    all
}

fn ends<T: Clone>(bounds: &Bounds<T>) -> impl Iterator<Item = T> {
    let all = [
        &bounds.at_least,
        &bounds.at_most,
        &bounds.above,
        &bounds.below,
    ];
    all.into_iter().flatten().cloned()
}

/// What may still be of a circumstance that was written as a span of years, or as a
/// drop known from one side.
fn may_be(scene: &Scene<'_>, item: Item, supposed: Supposed) -> bool {
    match supposed {
        Supposed::Length(length) => may_be_long(scene, item, length),
        Supposed::Year(year) => may_be_year(scene, item, year),
        Supposed::Age(_) | Supposed::Count(_) | Supposed::Nobody | Supposed::Word(_) => true,
    }
}

/// The greatest of several governs, and is no less than any of them; it is bounded
/// from above only where each of them is.
fn may_be_long(scene: &Scene<'_>, item: Item, length: Length) -> bool {
    if item.info().worst != Worst::Greatest {
        return true;
    }
    let mut under_one = false;
    let mut over_none = true;
    for (index, _) in scene.of(item) {
        let (not_less, not_more) = match ends_of(scene, item, index) {
            Some(Evidence::AtLeast(least)) => (length >= least, true),
            Some(Evidence::Above(bound)) => (length > bound, true),
            Some(Evidence::Below(bound)) => (true, length < bound),
            Some(Evidence::Point(value, u)) => {
                let band = u.doubled();
                (length >= value - band, length <= value + band)
            }
            None => (true, true),
        };
        over_none &= not_less;
        under_one |= not_more;
    }
    over_none && (under_one || scene.of(item).next().is_none())
}

/// What a reading says of it from both sides; nothing where another end of it is doubted.
fn ends_of(scene: &Scene<'_>, item: Item, index: usize) -> Option<Evidence> {
    let trigger = trigger(scene, item, index)?;
    match (trigger.evidence, trigger.up_to) {
        (Evidence::Point(value, _), Some(_)) => Some(Evidence::AtLeast(value)),
        (evidence, _) => Some(evidence),
    }
}

fn may_be_year(scene: &Scene<'_>, item: Item, year: i32) -> bool {
    scene.of(item).all(|(_, observation)| {
        match observation.reading.as_ref().map(|reading| &reading.value) {
            Some(Value::Years(span)) => !span.surely_before(year) && !span.surely_from(year + 1),
            Some(_) | None => true,
        }
    })
}
