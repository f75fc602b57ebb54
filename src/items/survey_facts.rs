//! The rows about the survey itself: who measured, when, with what.

use crate::items::AskedWhen;
use crate::items::DefaultUnitWord;
use crate::items::Group;
use crate::items::Holds;
use crate::items::Item;
use crate::items::ItemInfo;
use crate::items::ItemWord;
use crate::items::Kind;
use crate::items::Role;
use crate::items::TapeWord;
use crate::items::row::row;

pub(super) const PROPERTY: ItemInfo = ItemInfo {
    holds: Holds::ForAll,
    synonyms: &["address", "house name"],
    role: Role::Single,
    ..row(
        Item::Property,
        "property",
        Kind::Text,
        Group::Survey,
        "Which property the survey is about, in words of your own.",
        &["Write a name that you will know again next year."],
        &["our house"],
    )
};

pub(super) const DATE: ItemInfo = ItemInfo {
    holds: Holds::ForAll,
    synonyms: &["measured on", "day"],
    ..row(
        Item::Date,
        "date",
        Kind::Date,
        Group::Survey,
        "The day on which it was measured.",
        &["Write year, month and day, in this order."],
        &["2026-05-04"],
    )
};

pub(super) const BY: ItemInfo = ItemInfo {
    holds: Holds::ForAll,
    synonyms: &["measured by", "who"],
    ..row(
        Item::By,
        "by",
        Kind::Text,
        Group::Survey,
        "Who measured.",
        &["Write a name or initials."],
        &["R. T."],
    )
};

pub(super) const TAPE: ItemInfo = ItemInfo {
    holds: Holds::ForItsFile,
    synonyms: &["tape measure", "tape class"],
    role: Role::Single,
    ..row(
        Item::Tape,
        "tape",
        Kind::Words(TapeWord::WORDS),
        Group::Survey,
        "How accurate the tape is, as printed near its zero mark.",
        &[
            "Look near the start of the tape for I, II or III in an oval: that is its class.",
            "A tape in inches without such a mark: leave it out. NIST Handbook 44's limit for metal tapes is then taken.",
        ],
        &["class II", "handbook 44"],
    )
};

pub(super) const READ_TO: ItemInfo = ItemInfo {
    holds: Holds::ForItsFile,
    asked: AskedWhen::Never,
    synonyms: &["reading to"],
    role: Role::Single,
    ..row(
        Item::ReadTo,
        "read to",
        Kind::Graduation,
        Group::Survey,
        "How finely you read the tape.",
        &["Write the smallest step you bothered to tell apart."],
        &["1/16 in", "1 mm"],
    )
};

pub(super) const DEFAULT_UNIT: ItemInfo = ItemInfo {
    holds: Holds::ForItsFile,
    synonyms: &["unit of measure", "default units"],
    role: Role::Single,
    ..row(
        Item::DefaultUnit,
        "default unit",
        Kind::Words(DefaultUnitWord::WORDS),
        Group::Survey,
        "The unit of numbers that are written without one, in this file.",
        &["Write in, ft, mm, cm or m. Better still: write the unit with each reading."],
        &["in", "mm"],
    )
};

pub(super) const RULES: ItemInfo = ItemInfo {
    holds: Holds::ForAll,
    synonyms: &["ruleset", "rulesets", "code"],
    ..row(
        Item::Rules,
        "rules",
        Kind::Text,
        Group::Survey,
        "Which rulesets to judge by, parted by a semicolon.",
        &[
            "Type guardrule rules find and where you are, such as flat in Florida, to see which hold there.",
        ],
        &["us-dwelling-2018", "us-dwelling-2018; small-child-advice"],
    )
};

pub(super) const BUILD_TOLERANCE: ItemInfo = ItemInfo {
    holds: Holds::ForAll,
    asked: AskedWhen::Never,
    synonyms: &["tolerance"],
    role: Role::Single,
    ..row(
        Item::BuildTolerance,
        "build tolerance",
        Kind::Tolerance,
        Group::Survey,
        "How far a proposed guard may come out from its drawing.",
        &["Ask whoever builds it how closely they work."],
        &["± 1/8 in", "± 3 mm"],
    )
};
