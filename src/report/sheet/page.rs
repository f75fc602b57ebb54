//! The whole document.

use std::io;
use std::io::Write;

use maud::DOCTYPE;
use maud::PreEscaped;
use maud::html;

use crate::report::sheet::Sheet;
use crate::report::sheet::back::back;
use crate::report::sheet::front::front;
use crate::report::sheet::guard::guard;

/// How the page is laid out; it holds no `<`, since it stands as it is in the page.
const STYLE: &str = include_str!("sheet.css");

/// Writes the sheet as one HTML file without scripts or anything from outside.
///
/// # Errors
/// Those of `out`.
pub fn sheet(out: &mut dyn Write, sheet: &Sheet<'_>) -> io::Result<()> {
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { "Measuring sheet" }
                style { (PreEscaped(STYLE)) (PreEscaped(sheet.paper.rule())) }
            }
            body {
                main {
                    (front(sheet))
                    @for number in 1..=sheet.guards.get() { (guard(sheet, number)) }
                    (back(sheet.rulesets))
                }
            }
        }
    };
    writeln!(out, "{}", page.into_string())
}
