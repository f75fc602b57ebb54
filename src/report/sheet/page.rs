//! The whole document.

use std::collections::BTreeSet;
use std::io;
use std::io::Write;

use maud::DOCTYPE;
use maud::PreEscaped;
use maud::html;

use crate::items::Item;
use crate::report::sheet::Sheet;
use crate::report::sheet::back::back;
use crate::report::sheet::front::front;
use crate::report::sheet::guard::guard;
use crate::report::sheet::guard::strength;

/// How the page is laid out; it holds no `<`, since it stands as it is in the page.
const STYLE: &str = include_str!("sheet.css");

/// Writes the sheet as one HTML file without scripts or anything from outside.
///
/// # Errors
/// Those of `out`.
pub fn sheet(out: &mut dyn Write, sheet: &Sheet<'_>) -> io::Result<()> {
    let items = sheet.items();
    let main = sheet.items_beyond_strength();
    let of_strength: BTreeSet<Item> = items.difference(&main).copied().collect();
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                title { "Measuring sheet" }
                style { (PreEscaped(STYLE)) (PreEscaped(sheet.paper.rule())) }
            }
            body {
                (front(sheet, &items))
                @for number in 1..=sheet.guards.get() {
                    (guard(sheet, &main, number))
                    @if !of_strength.is_empty() { (strength(sheet, &of_strength, number)) }
                }
                (back(sheet.rulesets))
            }
        }
    };
    writeln!(out, "{}", page.into_string())
}
