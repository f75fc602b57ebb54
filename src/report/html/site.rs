//! Many guards as a folder: a first page with the lists, and a page for each unit that
//! stands on its own.

use std::collections::BTreeMap;
use std::io;
use std::io::Write;

use maud::html;

use crate::input::Diagnostics;
use crate::report::JudgedGuard;
use crate::report::PageFor;
use crate::report::PhotoSource;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::html::document::add;
use crate::report::html::document::beginning;
use crate::report::html::document::ending;
use crate::report::html::document::put;
use crate::report::html::ending::last_sheet;
use crate::report::html::guard::OnePage;
use crate::report::html::headings::HeadingDepth;
use crate::report::html::many::first_sheet;
use crate::report::html::many::warnings;
use crate::report::html::sheet::PageSheet;
use crate::report::told::PageKeeps;
use crate::report::told::SurveyTold;
use crate::report::told::for_all;
use crate::report::told::when_and_by;

/// The page with the lists.
const INDEX: &str = "index.html";

/// Where the pages of a folder go.
pub trait PageSink {
    /// Makes the page of this name, whole or not at all.
    ///
    /// # Errors
    /// Those of the place.
    fn page(
        &mut self,
        name: &str,
        write: &mut dyn FnMut(&mut dyn Write) -> io::Result<()>,
    ) -> io::Result<()>;
}

/// The report as a folder of pages.
pub struct HtmlFolder<'a, S> {
    sink: S,
    basis: ReportBasis<'a>,
    photos: Option<Box<dyn PhotoSource + 'a>>,
    told: SurveyTold,
}

impl<'a, S: PageSink> HtmlFolder<'a, S> {
    /// Nothing is written before the end.
    pub fn new(sink: S, basis: ReportBasis<'a>) -> HtmlFolder<'a, S> {
        HtmlFolder {
            sink,
            basis,
            photos: None,
            told: SurveyTold::default(),
        }
    }

    /// The same with the photographs that the survey names, carried in the pages.
    #[must_use]
    pub fn with_photos(mut self, photos: Box<dyn PhotoSource + 'a>) -> HtmlFolder<'a, S> {
        self.photos = Some(photos);
        self
    }

    fn write(&mut self, faulty: bool) -> io::Result<()> {
        let told = &self.told;
        let basis = &self.basis;
        let sheet = PageSheet::new(basis, told.guards.len());
        let for_all = for_all(&told.guards);
        let units = units(told);
        let mut page_of = vec![0_usize; told.guards.len()];
        for (page, (_, guards)) in units.iter().enumerate() {
            for guard in guards {
                page_of[*guard] = page;
            }
        }
        let link = |index: usize| {
            let (name, _) = &units[page_of[index]];
            format!("{}#railing-{}", file_name(page_of[index], name), index + 1)
        };
        self.sink.page(INDEX, &mut |out| {
            put(out, beginning(&sheet.title(), &when_and_by(basis)))?;
            put(out, first_sheet(&sheet, told, faulty, &link))?;
            put(out, last_sheet(&sheet, told, &for_all))?;
            writeln!(out, "{}", ending())
        })?;
        for (page, (name, guards)) in units.iter().enumerate() {
            let title = match name.as_str() {
                "" => sheet.title(),
                name => format!("{name} · {}", sheet.title()),
            };
            self.sink.page(&file_name(page, name), &mut |out| {
                put(out, beginning(&title, &when_and_by(basis)))?;
                put(
                    out,
                    html! {
                        div class="top" { h1 { (title) } p { a href=(INDEX) { "All railings" } } }
                    },
                )?;
                let above = warnings(&sheet, faulty);
                for index in guards {
                    let one = OnePage {
                        told: &told.guards[*index],
                        number: index + 1,
                        depth: HeadingDepth::OfSeveral,
                        for_all: &for_all,
                        page_for: PageFor::Anybody,
                        above: (Some(index) == guards.first()).then_some(&above),
                    };
                    put(out, one.article(&sheet))?;
                }
                put(out, last_sheet(&sheet, &told.only(guards), &for_all))?;
                writeln!(out, "{}", ending())
            })?;
        }
        Ok(())
    }
}

/// Units in the order of their worst guard, each with its guards.
fn units(told: &SurveyTold) -> Vec<(String, Vec<usize>)> {
    let mut units: Vec<(String, Vec<usize>)> = Vec::new();
    let mut known: BTreeMap<String, usize> = BTreeMap::new();
    for (index, guard) in told.guards.iter().enumerate() {
        let parts = [guard.building.as_str(), guard.unit.as_str()];
        let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        let name = parts.join(", ");
        let at = *known.entry(name.clone()).or_insert_with(|| {
            units.push((name, Vec::new()));
            units.len() - 1
        });
        units[at].1.push(index);
    }
    units
}

/// A name that every system takes, whatever the unit is called.
fn file_name(page: usize, unit: &str) -> String {
    let plain = |sign: char| {
        if sign.is_ascii_alphanumeric() {
            sign
        } else {
            '-'
        }
    };
    let mut name: String = unit.chars().take(40).map(plain).collect();
    while name.contains("--") {
        name = name.replace("--", "-");
    }
    let name = name.trim_matches('-');
    if name.is_empty() {
        format!("{:04}.html", page + 1)
    } else {
        format!("{:04}-{name}.html", page + 1)
    }
}

impl<S: PageSink> Report for HtmlFolder<'_, S> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        let photos = self.photos.as_deref_mut();
        add(
            &mut self.told,
            entry,
            &self.basis,
            PageKeeps::Drawings,
            photos,
        );
        Ok(())
    }

    fn finish(mut self: Box<Self>, diagnostics: &Diagnostics) -> io::Result<Summary> {
        self.told.sort();
        self.write(diagnostics.any_error())?;
        Ok(self.told.summary)
    }
}
