//! The whole document.

use std::collections::BTreeSet;
use std::io;
use std::io::Write;
use std::num::NonZeroU32;

use maud::DOCTYPE;
use maud::PreEscaped;
use maud::html;

use crate::items::Item;
use crate::report::sheet::back::back;
use crate::report::sheet::front::front;
use crate::report::sheet::guard::guard;
use crate::report::sheet::guard::strength;
use crate::rules::Ruleset;

/// How the page is laid out; it holds no `<`, since it stands as it is in the page.
const STYLE: &str = include_str!("sheet.css");

/// The paper to print on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 × 297 mm.
    A4,
    /// What the printer holds; the pages fit A4 and Letter.
    AsPrinted,
    /// 8 1/2 × 11 in.
    Letter,
}

impl Paper {
    const fn rule(self) -> &'static str {
        match self {
            Paper::A4 => "@page { size: A4 portrait; }",
            Paper::AsPrinted => "",
            Paper::Letter => "@page { size: letter portrait; }",
        }
    }
}

/// What a sheet is made of.
#[derive(Clone, Debug)]
pub struct Sheet<'a> {
    /// The chosen rulesets.
    pub rulesets: &'a [Ruleset],
    /// How many guards have a page.
    pub guards: NonZeroU32,
    /// The paper.
    pub paper: Paper,
}

impl Sheet<'_> {
    /// The items that the rulesets ask for.
    pub(super) fn items(&self) -> BTreeSet<Item> {
        self.rulesets.iter().flat_map(Ruleset::items).collect()
    }

    /// Those of them that are asked for beyond strength.
    fn items_beyond_strength(&self) -> BTreeSet<Item> {
        let rulesets = self.rulesets.iter();
        rulesets.flat_map(Ruleset::items_beyond_strength).collect()
    }
}

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
