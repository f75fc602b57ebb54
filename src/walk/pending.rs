//! An answer that is not written yet, and why.

use crate::items::Item;
use crate::walk::GuardName;
use crate::walk::Prompt;
use crate::walk::Topic;
use crate::walk::page::PageSpot;

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
    /// It says that one could not look.
    Reason,
    /// The guard has another word already.
    Slip(String),
    /// It is a number without a unit.
    Unit,
    /// It is out of the usual.
    Unlikely(String),
}

impl Why {
    pub(super) fn ask(&self, pending: &Pending) -> Prompt {
        let item = pending.item;
        let mut ask = match self {
            Why::Reason => Prompt::bare(
                Topic::Reason(item),
                format!("Why could {item} not be looked at?"),
                "no reason",
            ),
            Why::Slip(word) => Prompt::bare(
                Topic::Slip(item),
                format!(
                    "This guard has {item} {word}. Was that a slip? Where it changes, a new guard starts: then answer n."
                ),
                "leave it",
            ),
            Why::Unit => Prompt::bare(
                Topic::Unit(item),
                format!(
                    "{}: in what unit? It then holds for all numbers without one.",
                    pending.reading
                ),
                "answer anew",
            ),
            Why::Unlikely(caution) => Prompt::bare(
                Topic::Unlikely(item),
                format!("{caution} Is it right?"),
                "answer anew",
            ),
        };
        ask.words = match self {
            Why::Reason => Vec::new(),
            Why::Slip(_) | Why::Unlikely(_) => vec!["y", "n"],
            Why::Unit => Item::DefaultUnit.words().iter().map(|w| w.name).collect(),
        };
        ask
    }
}
