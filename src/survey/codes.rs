//! The codes of what can be wrong with a survey. One code, one meaning, for good.

use crate::input::Code;

macro_rules! codes {
    ($($name:ident = $number:literal $title:literal)*) => {
        $(pub(crate) const $name: Code = Code { number: $number, title: $title };)*
        const ALL: &[Code] = &[$($name),*];
    };
}

codes! {
    BARE_INCH_MARK = 201 "a bare inch mark was read as text"
    SWALLOWED_ROWS = 202 "a quoted cell runs on over following rows"
    TEXT_AFTER_MARK = 203 "text after a cell's closing mark"
    SURPLUS_READING = 204 "surplus cells that may belong to a reading"
    SURPLUS_NOTE = 205 "surplus cells were read as the rest of the note"
    UNREADABLE = 206 "a reading that cannot be read"
    BARE_NUMBER = 207 "a number without a unit of measure"
    SPREADSHEET_DATE = 208 "a reading that a spreadsheet has made a date"
    NEARLY_AN_ITEM = 209 "an item that is misspelt"
    OWN_ITEM = 210 "an item of the person's own"
    NEARLY_A_HEADING = 211 "a heading that is misspelt"
    OWN_HEADING = 212 "a heading of the person's own"
    HEADING_UNIT = 213 "a heading's unit of measure is unknown"
    NO_HEADER = 214 "the first row is no header"
    EMPTY_FILE = 215 "an empty file"
    HEADER_ONLY = 216 "nothing below the header"
    OTHER_DELIMITER = 217 "cells parted by semicolons or tabs"
    NOT_UTF8 = 218 "bytes that are not UTF-8"
    NO_CSV = 219 "a file of another kind"
    GUARD_MISSING = 220 "an observation of a guard in a row that names none"
    EMPTY_READING = 221 "a row with an item and no reading"
    ITEM_MISSING = 222 "a row with a reading and no item"
    CLASH = 223 "two answers where only one can hold"
    BESIDE_NO_GUARD = 224 "a part of a guard that is said not to be there"
    GUARD_TWICE = 225 "a guard that has two rows in a table"
    WRONG_LEVEL = 226 "a fact that holds more widely than its row"
    NEARLY_THE_SAME_NAME = 227 "two names that differ by a letter"
    FORMULA = 228 "a cell that a spreadsheet would run as a formula"
    CONTROL_CHARACTERS = 229 "characters that cannot be seen"
    ROW_TOO_LONG = 230 "a row that is too long"
    CAUTION = 231 "a reading that is out of the usual"
    NO_GUARDS = 232 "no row of the survey names a guard"
    COLUMN_TWICE = 233 "two columns with one meaning"
    LOOSE_NOTE = 234 "a note that belongs to nothing"
    NO_GUARD_IN_UNIT = 235 "a unit with facts and no guard"
    SAYS_NOTHING = 236 "a row that names no guard and says nothing"
    SHEET_CELL = 237 "a spreadsheet's cell that cannot be taken as it stands"
    TOTALS = 238 "a row of totals, a legend or a signature"
    OLD_ENCODING = 239 "letters saved in an old encoding"
    ABOVE_HEADER = 240 "rows above the header"
    SECOND_HEADER = 241 "a second header row"
    BLANK_BELOW = 242 "blank names below filled ones"
    TWO_ROUNDS = 243 "one guard in two files of different dates"
    TOO_MANY_RULES = 244 "more rulesets than a survey can be judged by"
    CELLS_SHIFTED = 245 "an item where a guard's name belongs"
}

/// Every code of this module: G201 to G245.
#[must_use]
pub fn codes() -> &'static [Code] {
    ALL
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_are_numbered_in_their_order_and_titled_apart() {
        for (number, code) in (201..).zip(codes()) {
            assert_eq!(code.number, number, "{}", code.title);
            assert!(codes().iter().all(|c| c == code || c.title != code.title));
        }
    }
}
