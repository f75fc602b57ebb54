//! What the first reading of a survey says of it.

use std::sync::Arc;

use crate::input::Diagnostic;
use crate::input::Excerpt;
use crate::survey::RowPlace;
use crate::survey::codes;
use crate::survey::complaints::RowSpot;
use crate::survey::complaints::SpotMark;
use crate::survey::complaints::Unplaced;
use crate::survey::entries::RowEntry;
use crate::survey::header::Header;
use crate::survey::names::NameId;
use crate::survey::names::Names;
use crate::survey::row::SurveyRow;

/// How many rulesets a survey may name.
pub(super) const MOST_RULES: usize = 100;

/// A unit or building of which facts are written and no guard.
pub(super) fn no_guard_in_unit(names: &Names, unit: NameId, file: &Arc<str>) -> Unplaced {
    let written = names.written(unit);
    let (what, name, mark) = if written.is_empty() {
        (
            "building",
            names.written(names.parent(unit)),
            SpotMark::Building,
        )
    } else {
        ("unit", written, SpotMark::Unit)
    };
    let row = names.first(unit);
    let message =
        format!("the {what} `{name}` has a row of facts and no guard: nothing is judged there");
    Unplaced {
        spots: [RowSpot { row, mark }; 2],
        second_says: "",
        diagnostic: Diagnostic::warning(
            codes::NO_GUARD_IN_UNIT,
            message,
            Excerpt::new(Arc::clone(file), row.line, "", 0..0),
        )
        .help("write the guard's name into the column guard, also where a railing is missing; leave the row out if there is nothing to guard"),
    }
}

/// Names that are blank below filled ones.
pub(super) fn blank_below(
    file: &Arc<str>,
    row: RowPlace,
    count: u32,
    what: &str,
    mark: SpotMark,
) -> Unplaced {
    let more = if count > 1 {
        format!(" and on {} more", count - 1)
    } else {
        String::new()
    };
    let message = format!(
        "the {what} is blank on this row{more}, below rows that name one: it may be the one above, in cells that were merged"
    );
    Unplaced {
        spots: [RowSpot { row, mark }; 2],
        second_says: "",
        diagnostic: Diagnostic::error(
            codes::BLANK_BELOW,
            message,
            Excerpt::new(Arc::clone(file), row.line, "", 0..0),
        )
        .help(format!(
            "write the {what} again on each row; guards that belong to no {what} stand above the first one"
        )),
    }
}

pub(super) fn too_many_rules(at: Excerpt) -> Diagnostic {
    let message = format!("a survey is judged by {MOST_RULES} rulesets at most");
    Diagnostic::error(codes::TOO_MANY_RULES, message, at)
        .label("the rest of them was left out")
        .help("name those that hold for the house, and no others")
}

/// A name and nothing else: a flat that nobody entered, a legend, a signature.
pub(super) fn says_nothing(row: &SurveyRow<'_>) -> Diagnostic {
    Diagnostic::warning(
        codes::SAYS_NOTHING,
        "this row names no guard and says nothing that can be read",
        row.excerpt_whole(),
    )
    .help("if it stands for a flat, name its guards and write not reached where you could not look")
}

/// A row whose cells are parted otherwise than the file's.
pub(super) fn row_in_one_cell(row: &SurveyRow<'_>, delimiter: u8) -> Diagnostic {
    Diagnostic::error(
        codes::OTHER_DELIMITER,
        "the cells of this row are parted otherwise than those of the header",
        row.excerpt_whole(),
    )
    .label("not read")
    .help(match delimiter {
        b',' => "part its cells by commas, as the header does".to_owned(),
        other => format!("part its cells as the header does: {:?}", char::from(other)),
    })
}

/// Whether a note is what a ruleset is called: one word with hyphens.
pub(super) fn is_like_an_id(note: &str) -> bool {
    let first = note.split([',', ';']).next().unwrap_or_default().trim();
    let lower = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    first.contains('-') && first.chars().all(lower) || first.ends_with(".toml")
}

/// A second ruleset that a comma has made a note.
pub(super) fn rules_in_the_note(row: &SurveyRow<'_>, entry: &RowEntry<'_>) -> Diagnostic {
    let note = entry.note.trim();
    Diagnostic::error(
        codes::SURPLUS_READING,
        format!("rules: `{note}` stands in the note, and no railing was judged by it"),
        row.excerpt_whole(),
    )
    .help(format!(
        "part rulesets by a semicolon: {}; {note}",
        entry.text
    ))
}

/// Text of the person's own in a row of facts.
pub(super) fn own_text_of_no_guard(row: &SurveyRow<'_>, cell: usize) -> Diagnostic {
    Diagnostic::warning(
        codes::LOOSE_NOTE,
        "your own text in a row that names no guard: it is not kept",
        row.excerpt(cell),
    )
    .help("write it in a row of the guard that it speaks of")
}

pub(super) fn header_only(file: &Arc<str>) -> Diagnostic {
    Diagnostic::error(
        codes::HEADER_ONLY,
        "there is a header and nothing below it",
        Excerpt::whole(Arc::clone(file)),
    )
    .help("write one observation a row below the header: 2A,balcony,height,34 5/8 in,")
}

pub(super) fn no_guards(file: &str) -> Diagnostic {
    Diagnostic::error(
        codes::NO_GUARDS,
        "the survey names no guard, so there is nothing to judge",
        Excerpt::whole(file.into()),
    )
    .help("write the guard's name into the column guard, and what you measured beside it")
}

pub(super) fn nearly_the_same(
    row: &SurveyRow<'_>,
    header: &Header,
    names: &Names,
    near: NameId,
    column: usize,
) -> Unplaced {
    let (what, mark) = if Some(column) == header.guard {
        ("guard", SpotMark::Guard)
    } else if Some(column) == header.unit {
        ("unit", SpotMark::Unit)
    } else {
        ("building", SpotMark::Building)
    };
    let (ours, theirs) = (row.cell(column), names.written(near));
    let first = names.first(near);
    let message = format!(
        "the {what} `{ours}` is spelt nearly as `{theirs}` on line {}: they were taken for two",
        first.line
    );
    Unplaced {
        spots: [row.at, first].map(|row| RowSpot { row, mark }),
        second_says: "the other one",
        diagnostic: Diagnostic::warning(codes::NEARLY_THE_SAME_NAME, message, row.excerpt(column))
            .help("spell the name the same on every row if one is meant"),
    }
}
