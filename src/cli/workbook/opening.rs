//! Opens a workbook by its content, whatever the file is called.

use crate::cli::workbook::bounds::WorkbookBounds;
use crate::cli::workbook::grid::Workbook;
use crate::cli::workbook::ods;
use crate::cli::workbook::parts::ZipParts;
use crate::cli::workbook::refusal::Refusal;
use crate::cli::workbook::sheet_file;
use crate::cli::workbook::sheet_file::OpenedBook;
use crate::cli::workbook::xlsx;

/// How large a workbook may be, packed: 64 MiB.
pub(in crate::cli) const LARGEST: u64 = 64 << 20;

/// Whether a file that begins so is a workbook, readable or not.
pub(in crate::cli) fn is_one(beginning: &[u8]) -> bool {
    beginning.starts_with(b"PK\x03\x04") || beginning.starts_with(b"\xD0\xCF\x11\xE0")
}

/// Opens a workbook by its content.
///
/// # Errors
/// Where it is none that can be read.
pub(in crate::cli) fn open(name: &str, bytes: &[u8]) -> Result<OpenedBook, Refusal> {
    let book = read(bytes)?;
    Ok(sheet_file::sheets(name, book))
}

fn read(bytes: &[u8]) -> Result<Workbook, Refusal> {
    if bytes.starts_with(b"\xD0\xCF\x11\xE0") {
        // a .xlsx under a password is kept in the old form, under this name
        let name: Vec<u8> = "EncryptedPackage"
            .encode_utf16()
            .flat_map(u16::to_le_bytes)
            .collect();
        let locked = bytes.windows(name.len()).any(|window| window == name);
        return Err(if locked {
            Refusal::Password
        } else {
            Refusal::Old
        });
    }
    let mut parts = ZipParts::open(bytes)?;
    let mut bounds = WorkbookBounds::default();
    if parts.has(xlsx::WORKBOOK) {
        xlsx::read(&mut parts, &mut bounds)
    } else if parts.has(ods::CONTENT) {
        ods::read(&mut parts, &mut bounds)
    } else if parts.has("xl/workbook.bin") {
        Err(Refusal::Xlsb)
    } else if parts.has_ending(".iwa") || parts.has("Index.zip") {
        Err(Refusal::Numbers)
    } else {
        Err(Refusal::Unknown)
    }
}

#[cfg(test)]
mod tests {
    use std::fs;
    use std::io::Cursor;
    use std::path::Path;

    use calamine::Data;
    use calamine::Reader;

    use super::*;
    use crate::cli::workbook::grid::GridCell;
    use crate::cli::workbook::grid::Stored;

    /// Whether another reader's value is ours.
    fn agrees(ours: &GridCell, theirs: &Data) -> bool {
        let squeezed = |text: &str| text.split_whitespace().collect::<String>();
        match (&ours.value, theirs) {
            (Stored::Blank, Data::Empty) => true,
            // it takes raised digits for plain ones, and a line break for one
            (Stored::Text(ours), Data::String(theirs)) => squeezed(ours) == squeezed(theirs),
            (Stored::Number(ours), Data::Float(theirs)) => ours.to_bits() == theirs.to_bits(),
            (Stored::Number(ours), Data::Int(theirs)) => format!("{ours}") == format!("{theirs}"),
            (Stored::Bool(ours), Data::Bool(theirs)) => ours == theirs,
            (Stored::Error(_), Data::Error(_) | Data::String(_)) => true,
            // a formula that nobody has worked out is 0 or nothing to it
            (Stored::NoResult, Data::Empty | Data::Float(_) | Data::String(_)) => true,
            (Stored::Date(day), Data::DateTime(theirs)) => {
                let (year, month, date, ..) = theirs.to_ymd_hms_milli();
                (i64::from(day.year), day.month, day.day)
                    == (i64::from(year), u32::from(month), u32::from(date))
            }
            (Stored::Date(day), Data::DateTimeIso(theirs)) => {
                theirs.starts_with(&format!("{:04}-{:02}-{:02}", day.year, day.month, day.day))
            }
            (Stored::Time(hours, minutes, seconds), Data::DateTime(theirs)) => {
                let (.., h, m, s, _) = theirs.to_ymd_hms_milli();
                (*hours, *minutes, *seconds) == (u32::from(h), u32::from(m), u32::from(s))
            }
            (Stored::Time(hours, minutes, seconds), Data::DurationIso(theirs)) => {
                *theirs == format!("PT{hours:02}H{minutes:02}M{seconds:02}S")
            }
            (_, _) => false,
        }
    }

    /// calamine, a reader of plain values, sees the same cells in every file.
    #[test]
    fn another_reader_sees_the_same_values() {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/corpus/spreadsheets");
        let (mut books, mut compared) = (0, 0);
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path
                .extension()
                .is_none_or(|end| end != "xlsx" && end != "ods")
            {
                continue;
            }
            let bytes = fs::read(&path).unwrap();
            let ours = read(&bytes).unwrap();
            let mut theirs = calamine::open_workbook_auto_from_rs(Cursor::new(&bytes)).unwrap();
            books += 1;
            for (name, range) in theirs.worksheets() {
                let grid = ours.sheets.iter().find(|sheet| sheet.name == name).unwrap();
                let from = range.start().unwrap_or_default();
                for (row, column, value) in range.cells() {
                    let small = |count: usize| u32::try_from(count).expect("a small sheet");
                    let at = (from.0 + small(row), from.1 + small(column));
                    let cell = grid.cells.get(&at).cloned().unwrap_or_default();
                    assert!(
                        agrees(&cell, value),
                        "{path:?} {name} {at:?}: {cell:?} {value:?}"
                    );
                    compared += 1;
                }
                for at in grid
                    .cells
                    .iter()
                    .filter(|(_, cell)| cell.value != Stored::Blank)
                {
                    assert!(range.get_value(*at.0).is_some(), "{path:?} {name}: {at:?}");
                }
            }
        }
        assert!(
            books > 40 && compared > 500,
            "{books} books, {compared} cells"
        );
    }

    #[test]
    fn what_is_no_workbook_is_refused_for_what_it_is() {
        let zip = |names: &[&str]| {
            let mut out = zip::ZipWriter::new(Cursor::new(Vec::new()));
            for name in names {
                out.start_file(*name, zip::write::SimpleFileOptions::default())
                    .unwrap();
            }
            out.finish().unwrap().into_inner()
        };
        let refused = |bytes: &[u8]| read(bytes).unwrap_err();
        assert_eq!(refused(b"\xD0\xCF\x11\xE0 an old book"), Refusal::Old);
        let locked: Vec<u8> = "EncryptedPackage"
            .encode_utf16()
            .flat_map(u16::to_le_bytes)
            .collect();
        assert_eq!(
            refused(&[b"\xD0\xCF\x11\xE0", &locked[..]].concat()),
            Refusal::Password
        );
        assert_eq!(refused(&zip(&["xl/workbook.bin"])), Refusal::Xlsb);
        assert_eq!(refused(&zip(&["Index/Document.iwa"])), Refusal::Numbers);
        assert_eq!(refused(&zip(&["holiday.jpg"])), Refusal::Unknown);
        assert_eq!(refused(b"PK\x03\x04 and no more"), Refusal::Damaged);
    }
}
