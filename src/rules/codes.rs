//! The codes of what can be wrong with a ruleset.

use crate::input::Code;

/// What is wrong with a ruleset. One code, one meaning, for good.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum RuleFault {
    Syntax,
    MissingKey,
    UnknownKey,
    WrongKind,
    EmptyText,
    UnknownItem,
    UnknownWord,
    UnreadableQuantity,
    OperatorDoesNotFit,
    Contradiction,
    UnknownSource,
    GivenTwice,
    NothingAsked,
    SeveralChecks,
    UnreadableExample,
    UnknownChoice,
    BadId,
    NotFound,
    ExtendsLoop,
    ChainTooLong,
    BaseUnusable,
    UnknownRemoved,
    UnusedSource,
    ExamplesMissing,
    NoRules,
    MoreFaults,
    PlaceLost,
    NearlyTheSameId,
    SilenceNotRead,
    ZoneNotRaised,
    Implausible,
}

impl RuleFault {
    /// The printed number and title.
    pub(super) const fn code(self) -> Code {
        // the table is in the order of the enum; a test holds it so
        CODES[self as usize]
    }
}

/// The codes of this module, in the order of their numbers.
#[must_use]
pub fn codes() -> &'static [Code] {
    CODES
}

const fn code(number: u16, title: &'static str) -> Code {
    Code { number, title }
}

const CODES: &[Code] = &[
    code(101, "the file is not TOML"),
    code(102, "a key is missing"),
    code(103, "an unknown key"),
    code(104, "a value of another kind than the key takes"),
    code(105, "an empty text"),
    code(106, "an unknown item"),
    code(107, "a word that the item does not have"),
    code(108, "a limit that cannot be read"),
    code(109, "an operator that does not fit the item"),
    code(110, "bounds that contradict each other"),
    code(111, "a source that the file does not list"),
    code(112, "something given twice"),
    code(113, "a rule or a condition that asks nothing"),
    code(114, "a rule that asks several things"),
    code(115, "an example that cannot be read"),
    code(116, "a word outside a list of the format"),
    code(117, "an id that cannot be one"),
    code(118, "a ruleset that was not found"),
    code(119, "rulesets that extend each other in a circle"),
    code(120, "too long a chain of rulesets"),
    code(121, "a ruleset whose base cannot be used"),
    code(122, "a rule to remove that does not exist"),
    code(123, "a source that no rule cites"),
    code(124, "examples that do not straddle the limit"),
    code(125, "a ruleset without rules"),
    code(126, "more faults than are told"),
    code(127, "a place that loses a rule"),
    code(128, "an id that is nearly that of a rule taken over"),
    code(129, "a silence that was not read in the text"),
    code(
        130,
        "a height that was raised above where openings are looked at",
    ),
    code(131, "a limit that no railing has"),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fault_has_its_code() {
        assert_eq!(CODES.len(), RuleFault::Implausible as usize + 1);
        for (index, code) in CODES.iter().enumerate() {
            assert_eq!(usize::from(code.number), 101 + index, "{}", code.title);
        }
        assert_eq!(RuleFault::UnknownItem.code().title, "an unknown item");
        assert_eq!(RuleFault::UnusedSource.code().number, 123);
    }
}
