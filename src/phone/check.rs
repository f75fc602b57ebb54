//! A whole report, byte for byte as `guardrule check` writes it to a pipe.

use std::collections::BTreeMap;
use std::io;

use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::judge::Options;
use crate::phone::answer::Checked;
use crate::phone::plain::plain;
use crate::phone::request::Form;
use crate::phone::request::PhotoSent;
use crate::phone::request::RailingName;
use crate::phone::request::SurveyText;
use crate::report;
use crate::report::Detail;
use crate::report::Explain;
use crate::report::HtmlReport;
use crate::report::Json;
use crate::report::PageFor;
use crate::report::PhotoShown;
use crate::report::PhotoSource;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::rules::Guidance;
use crate::rules::chosen;
use crate::survey::Guard;
use crate::survey::InMemory;
use crate::survey::Survey;
use crate::survey::SurveyFile;

/// Judges these files and reports.
///
/// # Errors
/// None but those of a file, and there are no files in here.
pub(super) fn checked(
    files: Vec<SurveyText>,
    rules: &[String],
    form: Form,
    today: String,
    only: Option<&RailingName>,
    photos: BTreeMap<String, PhotoSent>,
) -> io::Result<Checked> {
    let file = |file: SurveyText| -> Box<dyn SurveyFile> {
        Box::new(InMemory::new(file.name, file.text.into_bytes()))
    };
    let files: Vec<Box<dyn SurveyFile>> = files.into_iter().map(file).collect();
    let mut diagnostics = Diagnostics::new();
    let survey = Survey::scan(&files).map_err(|error| error.error)?;
    if let Some(rounds) = survey.two_rounds().map_err(|error| error.error)? {
        diagnostics.absorb(rounds);
        return nothing_judged(&diagnostics);
    }
    let of_survey = &survey.facts().rules;
    let asked = rules.iter().map(|name| (name.as_str(), None));
    let mut named: Vec<(&str, Option<&Excerpt>)> = asked.collect();
    if named.is_empty() {
        let rows = of_survey.iter();
        named.extend(rows.map(|row| (row.name.as_str(), Some(&row.at))));
    }
    // there are no files beside a page
    let rulesets = chosen(named, Guidance::Beside, &|_| None, &mut diagnostics);
    let basis = ReportBasis {
        survey: survey.facts(),
        rulesets: &rulesets,
        options: Options::default(),
        today,
        tool_version: env!("CARGO_PKG_VERSION"),
        explain: Explain::No,
        detail: Detail::Short,
        width: report::WIDTH,
    };
    let is_wanted = |guard: &Guard| {
        only.is_none_or(|only| {
            (&*guard.building, &*guard.unit, &*guard.name)
                == (
                    only.building.as_str(),
                    only.unit.as_str(),
                    only.guard.as_str(),
                )
        })
    };
    let mut out = Vec::new();
    {
        let mut report: Box<dyn Report + '_> = match form {
            Form::Html => {
                // a page of one railing is that of a survey with one
                let guards = only.map_or(survey.guard_count(), |_| 1);
                let page = HtmlReport::new(&mut out, basis.clone(), guards, PageFor::Anybody);
                Box::new(page.with_photos(Box::new(PhotosSent(photos))))
            }
            Form::Json => Box::new(Json::new(&mut out, basis.clone())?),
        };
        let written = report::write_guards(&survey, &basis, &is_wanted, &mut *report)?;
        diagnostics.absorb(written.read.map_err(|error| error.error)?);
        report.finish(&diagnostics)?;
    }
    Ok(Checked {
        report: String::from_utf8(out).map_err(io::Error::other)?,
        diagnostics: told(&diagnostics)?,
    })
}

/// The photographs that came with the request.
struct PhotosSent(BTreeMap<String, PhotoSent>);

impl PhotoSource for PhotosSent {
    fn photo(&mut self, _survey: &str, written: &str) -> Result<PhotoShown, String> {
        let photo = self.0.get(written).ok_or("it is not on this phone")?;
        Ok(PhotoShown {
            jpeg: photo.jpeg.clone(),
            wide: photo.wide,
            high: photo.high,
        })
    }
}

fn nothing_judged(diagnostics: &Diagnostics) -> io::Result<Checked> {
    Ok(Checked {
        report: String::new(),
        diagnostics: told(diagnostics)?,
    })
}

/// What is wrong with the files, as it stands on a terminal without colours.
pub(super) fn told(diagnostics: &Diagnostics) -> io::Result<String> {
    let mut out = Vec::new();
    report::diagnostics_text(
        &mut out,
        diagnostics,
        report::WIDTH,
        report::FileNames::Whole,
    )?;
    String::from_utf8(out)
        .map(|text| plain(&text))
        .map_err(io::Error::other)
}
