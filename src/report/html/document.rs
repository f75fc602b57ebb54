//! The report as one file: no script, nothing from outside.

use std::io;
use std::io::Write;

use maud::DOCTYPE;
use maud::Markup;
use maud::PreEscaped;
use maud::html;

use crate::input::Diagnostics;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::html::ending::last_sheet;
use crate::report::html::guard::OnePage;
use crate::report::html::headings::HeadingDepth;
use crate::report::html::many;
use crate::report::html::many::first_sheet;
use crate::report::html::marks;
use crate::report::html::sheet::PageSheet;
use crate::report::told::DEFERRAL;
use crate::report::told::PageKeeps;
use crate::report::told::PageTold;
use crate::report::told::SurveyTold;
use crate::report::told::for_all;
use crate::report::told::when_and_by;

/// How the pages look; it holds no `<`, since it stands as it is in the page.
pub const PAGE_STYLE: &str = include_str!("page.css");

/// What the page lets itself do: its own style, by its hash, and pictures that it
/// carries; nothing else, and nothing from outside. A test compares the hash.
pub const PAGE_POLICY: &str = "default-src 'none'; \
style-src 'sha256-+hmL+JBLJWf8kadXy9C+Ax1wSOIy7whSlhLNhAGdc/A='; \
img-src data:; base-uri 'none'; form-action 'none'";

/// Above this many guards only the lists stand in the page, and not every rule.
const MOST_IN_FULL: usize = 24;

/// The report as a page.
pub struct HtmlReport<'a, W> {
    out: W,
    basis: ReportBasis<'a>,
    keeps: PageKeeps,
    told: SurveyTold,
}

impl<'a, W: Write> HtmlReport<'a, W> {
    /// Nothing is written before the end, since the worst comes first. `guards` is
    /// how many there will be about.
    pub fn new(out: W, basis: ReportBasis<'a>, guards: usize) -> HtmlReport<'a, W> {
        let keeps = if guards > MOST_IN_FULL {
            PageKeeps::Lists
        } else {
            PageKeeps::Everything
        };
        HtmlReport {
            out,
            basis,
            keeps,
            told: SurveyTold::default(),
        }
    }

    fn write(&mut self, diagnostics: &Diagnostics) -> io::Result<()> {
        let told = &self.told;
        let sheet = PageSheet::new(&self.basis, told.guards.len());
        let for_all = for_all(&told.guards);
        let depth = match told.guards.len() {
            1 => HeadingDepth::Alone,
            _ => HeadingDepth::OfSeveral,
        };
        let title = match told.guards.as_slice() {
            [one] => format!("{} · {}", one.name, sheet.title()),
            _ => sheet.title(),
        };
        let out = &mut self.out;
        let head = beginning(&title, &when_and_by(&self.basis));
        out.write_all(head.into_string().as_bytes())?;
        let put = |out: &mut W, part: Markup| out.write_all(part.into_string().as_bytes());
        if told.guards.is_empty() {
            put(out, nothing(&sheet, diagnostics))?;
        }
        if depth == HeadingDepth::OfSeveral && !told.guards.is_empty() {
            let link = |index: usize| format!("#railing-{}", index + 1);
            put(
                out,
                first_sheet(&sheet, told, diagnostics.any_error(), &link),
            )?;
        }
        if depth == HeadingDepth::Alone {
            put(out, many::warnings(&sheet, diagnostics.any_error()))?;
        }
        for (number, guard) in (1..).zip(&told.guards) {
            let page = OnePage {
                told: guard,
                number,
                depth,
                for_all: &for_all,
            };
            put(out, page.article(&sheet))?;
        }
        if !told.guards.is_empty() {
            put(out, last_sheet(&sheet, told, &for_all))?;
        }
        writeln!(out, "{}", ending())
    }
}

impl<W: Write> Report for HtmlReport<'_, W> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        self.told.add(entry, &self.basis, String::new());
        if let Some(told) = self.told.guards.last_mut() {
            let page = PageTold::new(entry, &self.basis, self.keeps, &told.paragraphs);
            told.page = Some(Box::new(page));
        }
        Ok(())
    }

    fn finish(mut self: Box<Self>, diagnostics: &Diagnostics) -> io::Result<Summary> {
        self.told.sort();
        self.write(diagnostics)?;
        Ok(self.told.summary)
    }
}

/// Everything before the first sheet: the tags that the end closes are left open.
pub(super) fn beginning(title: &str, where_and_when: &str) -> Markup {
    let head = html! {
        head {
            meta charset="utf-8";
            meta http-equiv="Content-Security-Policy" content=(PAGE_POLICY);
            meta name="viewport" content="width=device-width, initial-scale=1";
            meta name="generator" content="guardrule";
            title { (title) }
            style { (PreEscaped(PAGE_STYLE)) }
        }
    };
    let top = html! {
        a class="skip" href="#main" { "To the report" }
        (marks::symbols())
        header class="top" { p class="where" { (where_and_when) } }
    };
    PreEscaped(format!(
        "{}<html lang=\"en\">{}<body>{}<main id=\"main\" tabindex=\"-1\">",
        DOCTYPE.into_string(),
        head.into_string(),
        top.into_string()
    ))
}

/// Everything after the last sheet.
pub(super) fn ending() -> String {
    let end = html! { footer class="end" { p { "Nothing here is called safe. " (DEFERRAL) } } };
    format!("</main>{}</body></html>", end.into_string())
}

/// Where nothing could be judged.
fn nothing(sheet: &PageSheet<'_>, diagnostics: &Diagnostics) -> Markup {
    html! {
        section class="sheet" {
            div class="matter" {
                h1 { (sheet.title()) }
                p { "No railing could be read from the survey, so nothing was judged; why is said where \
    the report was made." }
                (many::warnings(sheet, diagnostics.any_error()))
            }
            (sheet.foot())
        }
    }
}
