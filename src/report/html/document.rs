//! The report as one file: no script, nothing from outside.

use std::io;
use std::io::Write;

use maud::DOCTYPE;
use maud::Markup;
use maud::PreEscaped;
use maud::html;

use crate::input::Diagnostics;
use crate::report::Detail;
use crate::report::JudgedGuard;
use crate::report::PageFor;
use crate::report::PhotoSource;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::guard_drawing::life_size;
use crate::report::html::ending::last_sheet;
use crate::report::html::guard::OnePage;
use crate::report::html::headings::HeadingDepth;
use crate::report::html::letters;
use crate::report::html::many;
use crate::report::html::many::first_sheet;
use crate::report::html::marks;
use crate::report::html::photos;
use crate::report::html::sheet::PageSheet;
use crate::report::html::sheet::running;
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
style-src 'sha256-+MM4jyqIkfejQPis2mXu0SFbcAxKGMSS0KqVBpIFwqg='; \
img-src data:; base-uri 'none'; form-action 'none'";

/// Up to so many guards every rule of each stands in the page.
const MOST_IN_FULL: usize = 24;
/// Up to so many each is drawn; the pages of single units draw all.
const MOST_DRAWN: usize = 200;

/// How much a page of so many guards keeps of each.
pub(super) fn keeps(guards: usize, detail: Detail) -> PageKeeps {
    if guards <= MOST_IN_FULL || detail == Detail::Full {
        PageKeeps::Everything
    } else if guards <= MOST_DRAWN {
        PageKeeps::Drawings
    } else {
        PageKeeps::Lists
    }
}

/// Takes one more guard for pages.
pub(super) fn add(
    told: &mut SurveyTold,
    entry: &JudgedGuard<'_>,
    basis: &ReportBasis<'_>,
    keeps: PageKeeps,
    photos: Option<&mut (dyn PhotoSource + '_)>,
) {
    told.add(entry, basis, String::new());
    if let Some(told) = told.guards.last_mut() {
        let mut page = PageTold::new(entry, basis, keeps, &told.paragraphs);
        if let Some(photos) = photos {
            page.photos = photos::of_guard(entry, basis, photos);
        }
        told.page = Some(Box::new(page));
    }
}

/// The report as a page.
pub struct HtmlReport<'a, W> {
    out: W,
    basis: ReportBasis<'a>,
    page_for: PageFor,
    keeps: PageKeeps,
    photos: Option<Box<dyn PhotoSource + 'a>>,
    told: SurveyTold,
}

impl<'a, W: Write> HtmlReport<'a, W> {
    /// Nothing is written before the end, since the worst comes first. `guards` is
    /// how many there will be about.
    pub fn new(
        out: W,
        basis: ReportBasis<'a>,
        guards: usize,
        page_for: PageFor,
    ) -> HtmlReport<'a, W> {
        // holes at life size are drawn from what the drawings hold
        let keeps = match page_for {
            PageFor::LifeSize => PageKeeps::Drawings,
            PageFor::Record => PageKeeps::Everything,
            PageFor::Anybody | PageFor::Landlord | PageFor::Contractor => {
                keeps(guards, basis.detail)
            }
        };
        HtmlReport {
            out,
            basis,
            page_for,
            keeps,
            photos: None,
            told: SurveyTold::default(),
        }
    }

    /// The same with the photographs that the survey names, carried in the page.
    #[must_use]
    pub fn with_photos(mut self, photos: Box<dyn PhotoSource + 'a>) -> HtmlReport<'a, W> {
        self.photos = Some(photos);
        self
    }
}

impl<W: Write> Report for HtmlReport<'_, W> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        let photos = self.photos.as_deref_mut();
        add(&mut self.told, entry, &self.basis, self.keeps, photos);
        Ok(())
    }

    fn finish(mut self: Box<Self>, diagnostics: &Diagnostics) -> io::Result<Summary> {
        self.told.sort();
        let whole = WholeDocument {
            basis: &self.basis,
            told: &self.told,
            faulty: diagnostics.any_error(),
            page_for: self.page_for,
        };
        whole.write(&mut self.out)?;
        Ok(self.told.summary)
    }
}

/// All of a survey in one page.
struct WholeDocument<'a> {
    basis: &'a ReportBasis<'a>,
    told: &'a SurveyTold,
    faulty: bool,
    page_for: PageFor,
}

impl WholeDocument<'_> {
    fn write(&self, out: &mut dyn Write) -> io::Result<()> {
        let told = self.told;
        let sheet = PageSheet::new(self.basis, told.guards.len());
        let for_all = for_all(&told.guards);
        let alone = told.guards.len() == 1 && self.page_for == PageFor::Anybody;
        let depth = if alone {
            HeadingDepth::Alone
        } else {
            HeadingDepth::OfSeveral
        };
        let title = match told.guards.as_slice() {
            [one] => format!("{} · {}", one.name, sheet.title()),
            _ => sheet.title(),
        };
        put(out, beginning(&title, &when_and_by(self.basis)))?;
        if told.guards.is_empty() {
            put(out, nothing(&sheet, self.faulty))?;
        }
        let warnings = many::warnings(&sheet, self.faulty);
        match self.page_for {
            PageFor::Landlord => put(out, letters::request(&sheet, told, &warnings))?,
            PageFor::Contractor => put(out, letters::work(&sheet, told, &warnings))?,
            PageFor::LifeSize => put(out, holes(&sheet, told, &warnings))?,
            PageFor::Anybody | PageFor::Record => {}
        }
        let is_first = matches!(self.page_for, PageFor::Anybody | PageFor::Record);
        if depth == HeadingDepth::OfSeveral && !told.guards.is_empty() && is_first {
            let link = |index: usize| format!("#railing-{}", index + 1);
            put(out, first_sheet(&sheet, told, self.faulty, &link))?;
        }
        if self.page_for != PageFor::LifeSize {
            for (number, guard) in (1..).zip(&told.guards) {
                let page = OnePage {
                    told: guard,
                    number,
                    depth,
                    for_all: &for_all,
                    page_for: self.page_for,
                    above: alone.then_some(&warnings),
                };
                put(out, page.article(&sheet))?;
            }
        }
        if self.page_for == PageFor::Record {
            put(out, letters::record(&sheet, told))?;
        }
        if !told.guards.is_empty() && self.page_for != PageFor::LifeSize {
            put(out, last_sheet(&sheet, told, &for_all))?;
        }
        writeln!(out, "{}", ending())
    }
}

/// Writes a part.
pub(super) fn put(out: &mut dyn Write, part: Markup) -> io::Result<()> {
    out.write_all(part.into_string().as_bytes())
}

/// The deciding holes at life size, a sheet each.
fn holes(sheet: &PageSheet<'_>, told: &SurveyTold, warnings: &Markup) -> Markup {
    let drawn = (1..).zip(&told.guards).filter_map(|(number, guard)| {
        let hole = guard.page.as_ref()?.drawn.as_ref()?.hole.as_ref()?;
        Some((number, guard, hole))
    });
    let drawn: Vec<_> = drawn.collect();
    html! {
        section class="sheet" aria-labelledby="life" {
            (running(&sheet.head_of("holes at life size")))
            div class="matter" {
                h1 id="life" { "Holes at life size" }
                (warnings)
                @if drawn.is_empty() {
                    p { "No railing of this survey has a hole that a ball was asked for and that was measured." }
                } @else {
                    p { "One sheet for each railing whose deciding hole was measured: the hole as it is, and the ball that must not pass as a disc to cut out." }
                }
            }
            (sheet.foot())
        }
        @for (number, guard, hole) in drawn {
            section class="sheet" {
                (running(&sheet.running_head(number, &guard.name)))
                div class="matter" {
                    h2 class="name" { (guard.name) }
                    (life_size(hole, &format!("life-{number}")))
                }
                (sheet.foot())
            }
        }
    }
}

/// Everything before the first sheet: the tags that the end closes are left open.
pub(in crate::report) fn beginning(title: &str, where_and_when: &str) -> Markup {
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
pub(in crate::report) fn ending() -> String {
    let end = html! { footer class="end" { p { "Nothing here is called safe. " (DEFERRAL) } } };
    format!("</main>{}</body></html>", end.into_string())
}

/// Where nothing could be judged.
fn nothing(sheet: &PageSheet<'_>, faulty: bool) -> Markup {
    html! {
        section class="sheet" {
            div class="matter" {
                h1 { (sheet.title()) }
                p { "No railing could be read from the survey, so nothing was judged; why is said where \
    the report was made." }
                (many::warnings(sheet, faulty))
            }
            (sheet.foot())
        }
    }
}
