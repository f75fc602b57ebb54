//! Codes of diagnostics about the command line, and the list of all codes.

use crate::input::Code;
use crate::report;
use crate::rules;
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
/// `--output` names a file that is read.
pub(super) const OUTPUT_IS_INPUT: Code = Code {
    number: 307,
    title: "the report would overwrite a file that is read",
};

/// A shape or a ball on the command line that cannot be read.
pub(super) const CANNOT_READ_SHAPE: Code = Code {
    number: 308,
    title: "a shape or a ball cannot be read",
};
/// A shape whose opening no guard usually has.
pub(super) const UNUSUAL_SHAPE: Code = Code {
    number: 309,
    title: "a shape of unusual size",
};

/// A survey that another walk has open.
pub(super) const WALK_IN_USE: Code = Code {
    number: 310,
    title: "another walk has the survey open",
};

/// A workbook that cannot be read.
pub(super) const WORKBOOK_REFUSED: Code = Code {
    number: 312,
    title: "a workbook that cannot be read",
};
/// What does not show on the screen, and was read.
#[cfg(feature = "spreadsheet")]
pub(super) const HIDDEN: Code = Code {
    number: 313,
    title: "hidden rows, columns or sheets",
};
/// A comment beside a cell.
#[cfg(feature = "spreadsheet")]
pub(super) const COMMENT: Code = Code {
    number: 314,
    title: "a comment beside a cell",
};
/// A part of a workbook that was left out.
#[cfg(feature = "spreadsheet")]
pub(super) const NOT_READ: Code = Code {
    number: 315,
    title: "a part of a workbook that was not read",
};
/// `--output` names a file that is no report.
pub(super) const WOULD_OVERWRITE: Code = Code {
    number: 316,
    title: "the output would replace a file that is no report",
};
/// `--as` without a page.
pub(super) const AS_WITHOUT_HTML: Code = Code {
    number: 332,
    title: "--as without --format html",
};
/// A survey names a ruleset outside its folder.
pub(super) const RULES_ELSEWHERE: Code = Code {
    number: 317,
    title: "a survey names a ruleset outside its folder",
};

/// The page for a phone cannot be put together.
pub(super) const NO_PAGE: Code = Code {
    number: 333,
    title: "no page for a phone",
};

/// A bay on the command line that cannot be read, or has no layout.
pub(super) const NO_LAYOUT: Code = Code {
    number: 311,
    title: "a bay that has no layout",
};

/// A remedy whose written form does not come out as planned.
pub(super) const NOT_CONFIRMED: Code = Code {
    number: 322,
    title: "a remedy that the written survey does not confirm",
};

const OWN: &[Code] = &[
    CANNOT_READ,
    CANNOT_WRITE,
    NO_SUCH_GUARD,
    NOTHING_TO_JUDGE_BY,
    NO_SUCH_ITEM,
    EXAMPLE_FAILS,
    OUTPUT_IS_INPUT,
    CANNOT_READ_SHAPE,
    UNUSUAL_SHAPE,
    WALK_IN_USE,
    NO_LAYOUT,
    WORKBOOK_REFUSED,
    #[cfg(feature = "spreadsheet")]
    HIDDEN,
    #[cfg(feature = "spreadsheet")]
    COMMENT,
    #[cfg(feature = "spreadsheet")]
    NOT_READ,
    WOULD_OVERWRITE,
    RULES_ELSEWHERE,
    AS_WITHOUT_HTML,
    NO_PAGE,
    NOT_CONFIRMED,
];

/// Every code of a diagnostic, by number.
#[must_use]
pub fn codes() -> Vec<Code> {
    let mut all: Vec<Code> = rules::codes().to_vec();
    all.extend(survey::codes());
    all.extend(report::comparison_codes());
    all.extend(OWN);
    all.sort();
    all
}
