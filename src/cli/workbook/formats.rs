//! Number formats: what a format code says of the number beneath it.

use crate::cli::workbook::grid::NumberFormat;

/// What a built-in format of .xlsx is, by its number: 14 to 22, 27 to 36, 45 to
/// 47 and 50 to 58 are dates and times (seen in files; 46 from memory), 9 and
/// 10 percent, 12 and 13 fractions, 5 to 8, 37 to 44 money and accounting (from
/// memory).
pub(super) fn built_in(id: u32) -> NumberFormat {
    match id {
        14..=22 | 27..=36 | 45..=47 | 50..=58 => NumberFormat::DateOrTime,
        9 | 10 => NumberFormat::Percent,
        12 | 13 => NumberFormat::Fraction,
        5..=8 | 41..=44 => NumberFormat::Money,
        _ => NumberFormat::Plain,
    }
}

/// What a format code says: its first part, of numbers above zero.
pub(super) fn of_code(code: &str) -> NumberFormat {
    let mut words = String::new();
    let mut bare = String::new();
    let mut characters = code.chars().peekable();
    while let Some(c) = characters.next() {
        match c {
            ';' => break,
            '"' => {
                for quoted in characters.by_ref().take_while(|c| *c != '"') {
                    words.push(quoted);
                }
            }
            '\\' => words.extend(characters.next()),
            // the width of a character left blank, or one that fills the cell
            '_' | '*' => drop(characters.next()),
            '[' => {
                let inside: String = characters.by_ref().take_while(|c| *c != ']').collect();
                let elapsed = inside
                    .chars()
                    .all(|c| matches!(c, 'h' | 'm' | 's' | 'H' | 'M' | 'S'));
                if elapsed && !inside.is_empty() {
                    bare.push('h');
                } else if let Some(symbol) = inside.strip_prefix('$') {
                    words.push_str(symbol.split('-').next().unwrap_or_default());
                }
            }
            _ => bare.push(c),
        }
    }
    let bare = bare.to_lowercase();
    let holds = |letters: &[char]| bare.contains(letters);
    if bare.trim() == "general" || bare.trim() == "standard" || bare.trim() == "@" {
        NumberFormat::Plain
    } else if bare.contains('%') {
        NumberFormat::Percent
    } else if holds(&['y', 'm', 'd', 'h', 's']) && !holds(&['0', '#', '?']) {
        NumberFormat::DateOrTime
    } else if bare.contains('/') && holds(&['?', '#', '0']) {
        NumberFormat::Fraction
    } else if words.contains(['$', '€', '£', '¥']) || holds(&['$', '€', '£', '¥']) {
        NumberFormat::Money
    } else if words.trim().is_empty() {
        NumberFormat::Plain
    } else {
        NumberFormat::Words(words.trim().to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_say_what_the_number_is() {
        let words = |text: &str| NumberFormat::Words(text.to_owned());
        let cases = [
            ("General", NumberFormat::Plain),
            ("0.00", NumberFormat::Plain),
            ("# ?/?", NumberFormat::Fraction),
            ("# ??/16", NumberFormat::Fraction),
            ("0.0## \"in\"", words("in")),
            ("0\\ \"mm\"", words("mm")),
            ("d-mmm", NumberFormat::DateOrTime),
            ("[$-409]m/d/yy h:mm AM/PM;@", NumberFormat::DateOrTime),
            ("yyyy-mm-dd", NumberFormat::DateOrTime),
            ("[h]:mm", NumberFormat::DateOrTime),
            ("0.0%", NumberFormat::Percent),
            ("[$€-407] #,##0.00", NumberFormat::Money),
            ("0 \"days\"", words("days")),
            ("[Red]0.0", NumberFormat::Plain),
            ("@", NumberFormat::Plain),
        ];
        for (code, format) in cases {
            assert_eq!(of_code(code), format, "{code}");
        }
    }
}
