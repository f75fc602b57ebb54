//! What a spreadsheet tells of its cells beside their text: which of them cannot
//! be taken as they stand, and why.

use std::collections::HashMap;
use std::sync::Arc;

use crate::items::Item;
use crate::items::Kind;

/// One sheet of a workbook, beside the text of its cells.
#[derive(Clone, Debug, Default)]
pub struct SheetCells {
    name: String,
    cells: HashMap<(u64, usize), SheetCell>,
}

/// What is to be known of one cell.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SheetCell {
    /// Why its value cannot be taken as it stands.
    pub doubt: Option<CellDoubt>,
    /// The comment beside it.
    pub comment: Option<Arc<str>>,
    /// Whether it adds up, or looks through, other rows of its column.
    pub looks_down: bool,
}

/// Why the value of a cell cannot be taken as a reading.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CellDoubt {
    /// The program has made a day of what was typed; what was probably typed.
    Date(Option<String>),
    /// The program could not work it out.
    Error,
    /// One value that stands for several guards: the range.
    Merged(String),
    /// An amount of money.
    Money,
    /// A formula without a stored result; the formula.
    NoResult(String),
    /// A share of a hundred.
    Percent,
    /// It is struck out, or a part of it is.
    StruckOut,
    /// The program has made a time of day of what was typed; what was probably typed.
    Time(String),
}

impl CellDoubt {
    /// Whether an item's reading cannot be taken from such a cell.
    #[must_use]
    pub fn bears_on(&self, item: Item) -> bool {
        let kind = item.info().kind;
        match self {
            CellDoubt::Date(_) => !matches!(kind, Kind::Date | Kind::Years | Kind::Text),
            CellDoubt::Merged(_) => item.is_at_guard() && !item.is_circumstance(),
            CellDoubt::Money | CellDoubt::Percent => kind.holds_a_length(),
            CellDoubt::Time(_)
            | CellDoubt::Error
            | CellDoubt::NoResult(_)
            | CellDoubt::StruckOut => true,
        }
    }

    /// Whether a name cannot be taken from such a cell.
    #[must_use]
    pub fn bears_on_names(&self) -> bool {
        match self {
            CellDoubt::Merged(_) | CellDoubt::Money | CellDoubt::Percent => false,
            CellDoubt::Date(_)
            | CellDoubt::Error
            | CellDoubt::NoResult(_)
            | CellDoubt::StruckOut
            | CellDoubt::Time(_) => true,
        }
    }

    /// What is wrong, and what to do; `shown` is what stands in the cell.
    pub(super) fn says(&self, shown: &str) -> (String, String) {
        match self {
            CellDoubt::Date(meant) => (
                format!("the spreadsheet has made a date of what was typed here: {shown}"),
                match meant {
                    Some(meant) => format!(
                        "it was probably {meant}: give the column the format \"text\", and type it again"
                    ),
                    None => {
                        "give the column the format \"text\", and type what was read again".to_owned()
                    }
                },
            ),
            CellDoubt::Time(meant) => (
                format!("the spreadsheet has made a time of day of what was typed here: {shown}"),
                format!(
                    "it was probably {meant}: give the column the format \"text\", and type it again"
                ),
            ),
            CellDoubt::Error => (
                format!("the spreadsheet could not work this cell out: {shown}"),
                "type what was read in place of the formula".to_owned(),
            ),
            CellDoubt::Merged(range) => (
                format!("one reading stands in the merged cells {range}, beside several guards"),
                "unmerge them, and write beside each guard what was read there".to_owned(),
            ),
            CellDoubt::Money => (
                format!("this cell has the format of an amount of money: {shown}"),
                "give it the format \"number\" or \"text\", if it is what the tape read".to_owned(),
            ),
            CellDoubt::Percent => (
                format!("this cell has the format of a share of a hundred: {shown}"),
                "give it the format \"number\" or \"text\", if it is what the tape read".to_owned(),
            ),
            CellDoubt::NoResult(formula) => (
                format!("this formula has no result that was saved with the file: {formula}"),
                "open the file in the spreadsheet program, save it and check again; or type what was read".to_owned(),
            ),
            CellDoubt::StruckOut => (
                format!("this is struck out, all of it or in part: {shown}"),
                "delete it if it does not hold, or take the line through it away".to_owned(),
            ),
        }
    }
}

impl SheetCells {
    /// A sheet of this name, of which nothing is to be said yet.
    #[must_use]
    pub fn new(name: impl Into<String>) -> SheetCells {
        SheetCells {
            name: name.into(),
            cells: HashMap::new(),
        }
    }

    /// What the sheet is called in its workbook.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Notes something of the cell in this row (from 1) and column (from 0).
    pub fn set(&mut self, row: u64, column: usize, cell: SheetCell) {
        if cell != SheetCell::default() {
            self.cells.insert((row, column), cell);
        }
    }

    /// What is to be known of a cell.
    #[must_use]
    pub fn cell(&self, row: u64, column: usize) -> Option<&SheetCell> {
        self.cells.get(&(row, column))
    }

    /// The address of a cell: `D7` for the seventh row and the fourth column.
    #[must_use]
    pub fn address(row: u64, column: usize) -> String {
        let mut rest = column + 1;
        let mut letters = Vec::new();
        while rest > 0 {
            rest -= 1;
            letters.push(char::from(b'A' + u8::try_from(rest % 26).unwrap_or(0)));
            rest /= 26;
        }
        let letters: String = letters.iter().rev().collect();
        format!("{letters}{row}")
    }
}
