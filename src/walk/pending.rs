//! An answer that is not written yet, and why.

use crate::items::Item;
use crate::quantities::LengthUnit;
use crate::walk::AnswerTopic;
use crate::walk::GuardName;
use crate::walk::Prompt;
use crate::walk::PromptChoice;
use crate::walk::Taking;
use crate::walk::Topic;
use crate::walk::page::PageSpot;
use crate::walk::unit::without_unit;

/// Where a reading goes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum How {
    /// A further one.
    Add,
    /// In the place of the one that stands there.
    Replace(PageSpot, GuardName),
}

/// An answer that is not written yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pending {
    pub(super) item: Item,
    pub(super) reading: String,
    pub(super) note: String,
    pub(super) how: How,
    /// It was looked at again and is right.
    pub(super) confirmed: bool,
}

/// Why it is not written yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Why {
    /// Months or years? The one that is likely, if one is.
    Age(Option<&'static str>),
    /// It says that one could not look.
    Reason,
    /// The guard has another word already.
    Slip(String),
    /// It is a number without a unit.
    Unit,
    /// It is out of the usual; the units in which it would not be.
    Unlikely(String, Vec<LengthUnit>),
}

impl Why {
    pub(super) fn ask(&self, pending: &Pending, in_force: Option<LengthUnit>) -> Prompt {
        let item = pending.item;
        match self {
            Why::Age(usual) => {
                let question = format!("{0} months, or {0} years?", pending.reading);
                let enter = usual.unwrap_or("answer anew");
                Prompt::bare(Topic::Answer(AnswerTopic::Age), question, enter)
                    .choosing(Taking::ByLetters, &[("months", ""), ("years", "")])
            }
            Why::Reason => Prompt::bare(
                Topic::Answer(AnswerTopic::Reason(item)),
                format!("Why could {item} not be looked at?"),
                "no reason",
            ),
            Why::Slip(word) => Prompt::bare(
                Topic::Answer(AnswerTopic::Slip(item)),
                format!(
                    "This railing has {item} {word}. Was that a slip? Where it changes, a new railing starts: then answer n."
                ),
                "leave it",
            )
            .choosing(Taking::ByLetters, &[("y", ""), ("n", "")]),
            Why::Unit => {
                let question = format!(
                    "{}: in what unit? It then holds for all numbers without one.",
                    pending.reading
                );
                let mut ask = Prompt::bare(Topic::Answer(AnswerTopic::Unit(item)), question, "answer anew");
                ask.choices = Item::DefaultUnit
                    .words()
                    .iter()
                    .map(|word| PromptChoice::new(word.name, ""))
                    .collect();
                ask.taking = Taking::ByLetters;
                ask
            }
            Why::Unlikely(caution, likely) => unlikely(pending, caution, likely, in_force),
        }
    }
}

/// Both units are named before anything is written.
fn unlikely(
    pending: &Pending,
    caution: &str,
    likely: &[LengthUnit],
    in_force: Option<LengthUnit>,
) -> Prompt {
    let item = pending.item;
    let number = without_unit(&pending.reading);
    let alone = number == pending.reading;
    let of_it = format!("{item}: ");
    let caution = caution.strip_prefix(&of_it).unwrap_or(caution);
    let mut question = caution
        .replace("; look at the number and its unit again", "")
        .replace(&format!(" for {item},"), ",");
    if let (true, Some(unit)) = (alone, in_force) {
        question.push_str(&format!(
            " A number alone is {} here, so this is {number} {}.",
            unit.plural(),
            unit.symbol()
        ));
    }
    if likely.is_empty() {
        question.push_str(" Is it right?");
    } else {
        let each: Vec<String> = likely
            .iter()
            .map(|unit| format!("{number} {}", unit.symbol()))
            .collect();
        question.push_str(&format!(" Is it right, or is it {}?", each.join(" or ")));
    }
    let mut ask = Prompt::bare(
        Topic::Answer(AnswerTopic::Unlikely(item)),
        question,
        "write it anew",
    );
    item.name().clone_into(&mut ask.title);
    ask.choices = vec![PromptChoice::new("y", "it is right")];
    let all = if alone && in_force.is_some() {
        "this and all other numbers alone"
    } else {
        ""
    };
    ask.choices.extend(
        likely
            .iter()
            .map(|unit| PromptChoice::new(unit.symbol(), all)),
    );
    ask.taking = Taking::ByLetters;
    ask
}
