//! A comparison for a spreadsheet: one change a row.

use std::io;
use std::io::Write;

use crate::report::compared::told::ComparisonTold;
use crate::report::one_line;
use crate::report::reader;
use crate::report::safe_cell;
use crate::report::told::DEFERRAL;

/// The columns.
const COLUMNS: [&str; 12] = [
    "change", "building", "unit", "guard", "what", "by", "before", "after", "asked", "note",
    "clause", "deferral",
];

pub(super) fn write(out: &mut dyn Write, told: &ComparisonTold) -> io::Result<()> {
    let mut out = csv::Writer::from_writer(out);
    out.write_record(COLUMNS)?;
    for change in &told.changes {
        row(
            &mut out,
            [
                change.kind.name(),
                &change.building,
                &change.unit,
                &change.guard,
                &change.what,
                change.by,
                &change.before,
                &change.after,
                &change.asked,
                &change.note,
                &change.clause,
            ],
        )?;
    }
    for (name, why, before) in &told.not_entered {
        let before = reader::verdict(*before);
        let cells = ["not entered", "", "", name, "", "", before, "", "", why, ""];
        row(&mut out, cells)?;
    }
    for question in &told.questions {
        let cells = [
            "in one round alone",
            "",
            "",
            "",
            "",
            "",
            "",
            "",
            "",
            question,
            "",
        ];
        row(&mut out, cells)?;
    }
    out.flush()
}

fn row<W: Write>(out: &mut csv::Writer<W>, cells: [&str; 11]) -> io::Result<()> {
    let mut cells: Vec<String> = cells
        .iter()
        .map(|cell| safe_cell(&one_line(cell)))
        .collect();
    cells.push(safe_cell(DEFERRAL));
    out.write_record(&cells)?;
    Ok(())
}
