//! Codes of diagnostics about the command line, and the list of all codes.

use crate::rules;
use crate::source::Code;
use crate::survey;

/// A file that cannot be read.
pub(super) const CANNOT_READ: Code = Code {
    number: 301,
    title: "a file cannot be read",
};
/// A file that cannot be written.
pub(super) const CANNOT_WRITE: Code = Code {
    number: 302,
    title: "a file cannot be written",
};
/// `--building`, `--unit` or `--guard` fits no guard.
pub(super) const NO_SUCH_GUARD: Code = Code {
    number: 303,
    title: "no guard of this name",
};
/// No ruleset is left to judge by.
pub(super) const NOTHING_TO_JUDGE_BY: Code = Code {
    number: 304,
    title: "no ruleset to judge by",
};
/// An item that there is not.
pub(super) const NO_SUCH_ITEM: Code = Code {
    number: 305,
    title: "no item of this name",
};
/// An example of a ruleset that does not come out as it says.
pub(super) const EXAMPLE_FAILS: Code = Code {
    number: 306,
    title: "an example does not come out as it says",
};
/// A survey in which no guard is named.
pub(super) const NO_GUARDS: Code = Code {
    number: 307,
    title: "a survey without guards",
};

const OWN: [Code; 7] = [
    CANNOT_READ,
    CANNOT_WRITE,
    NO_SUCH_GUARD,
    NOTHING_TO_JUDGE_BY,
    NO_SUCH_ITEM,
    EXAMPLE_FAILS,
    NO_GUARDS,
];

/// Every code of a diagnostic, by number.
#[must_use]
pub fn codes() -> Vec<Code> {
    let mut all: Vec<Code> = rules::codes().to_vec();
    all.extend(survey::codes());
    all.extend(OWN);
    all.sort();
    all
}
