//! What stands on every printed page: which property, unit and railing, and who decides.

use maud::Markup;
use maud::html;

use crate::judge::Authority;
use crate::report::ReportBasis;
use crate::report::one_line;
use crate::report::told::DEFERRAL;
use crate::report::told::when_and_by;
use crate::report::words;

/// What the sheets of one report share.
pub(in crate::report) struct PageSheet<'a> {
    pub(in crate::report) authority: Authority,
    property: String,
    measured: String,
    judged_by: String,
    /// How many guards there are.
    pub(in crate::report) of: usize,
    /// What leads back to the list; nothing where there is one guard.
    pub(in crate::report) basis: &'a ReportBasis<'a>,
}

impl<'a> PageSheet<'a> {
    pub(in crate::report) fn new(basis: &'a ReportBasis<'a>, of: usize) -> PageSheet<'a> {
        let list = |several: &[String]| {
            let each: Vec<_> = several.iter().map(|text| one_line(text)).collect();
            words::shortened(&each.join("; "))
        };
        let facts = basis.survey;
        let measured = match (facts.dates.as_slice(), facts.by.as_slice()) {
            ([], []) => String::new(),
            ([], by) => format!("measured by {}", list(by)),
            (dates, []) => format!("measured {}", list(dates)),
            (dates, by) => format!("measured {} by {}", list(dates), list(by)),
        };
        let ids: Vec<_> = basis.rulesets.iter().map(|one| one_line(&one.id)).collect();
        let authority = Authority::of(basis.rulesets);
        let judged_by = match authority {
            Authority::Law => format!("Judged by {}.", ids.join(", ")),
            Authority::Guidance => {
                format!("No building rules were checked, only {}.", ids.join(", "))
            }
        };
        PageSheet {
            authority,
            property: facts
                .property
                .as_deref()
                .map(|name| words::shortened(&one_line(name)))
                .unwrap_or_default(),
            measured,
            judged_by,
            of,
            basis,
        }
    }

    /// `the yellow house · deck · railing 1 of 3 · measured 2026-05-04`
    pub(in crate::report) fn running_head(&self, number: usize, name: &str) -> String {
        self.joined(&[name, &format!("railing {number} of {}", self.of)])
    }

    /// Of a page about several: what it is about.
    pub(in crate::report) fn head_of(&self, what: &str) -> String {
        self.joined(&[what])
    }

    fn joined(&self, parts: &[&str]) -> String {
        let first = [self.property.as_str()];
        let last = [self.measured.as_str()];
        let all = first.iter().chain(parts).chain(&last);
        let all: Vec<&str> = all.copied().filter(|part| !part.is_empty()).collect();
        all.join(" · ")
    }

    /// The foot of every printed page.
    pub(in crate::report) fn foot(&self) -> Markup {
        html! {
            div class="runf" {
                p { (self.judged_by) " Nothing here is called safe. " (DEFERRAL) }
            }
        }
    }

    /// When it was measured and by whom, and the day of the report.
    pub(in crate::report) fn when_and_by(&self) -> String {
        when_and_by(self.basis)
    }

    /// The name of the property, else a plain word.
    pub(in crate::report) fn title(&self) -> String {
        if self.property.is_empty() {
            "Railings".to_owned()
        } else {
            self.property.clone()
        }
    }
}

/// The head of every printed page.
pub(in crate::report) fn running(text: &str) -> Markup {
    html! { div class="run" { p { (text) } } }
}
