//! Guards and surveys of our own invention, built without a file.

use std::sync::Arc;

use guardrule::input::Diagnostics;
use guardrule::items::Item;
use guardrule::judge::Options;
use guardrule::judge::judge;
use guardrule::reading::parse;
use guardrule::report::Detail;
use guardrule::report::Explain;
use guardrule::report::JudgedGuard;
use guardrule::report::ReportBasis;
use guardrule::report::ReportForm;
use guardrule::report::Summary;
use guardrule::report::report;
use guardrule::rules;
use guardrule::rules::Ruleset;
use guardrule::survey::FileFacts;
use guardrule::survey::Guard;
use guardrule::survey::Inherited;
use guardrule::survey::Observation;
use guardrule::survey::RowPlace;
use guardrule::survey::SurveyFacts;

/// A guard by its rows: item, reading, note.
pub(crate) fn guard(unit: &str, name: &str, rows: &[(&str, &str, &str)]) -> Guard {
    let mut observations = Vec::new();
    let mut rows_in_error = 0;
    for (line, (item, written, note)) in (2..).zip(rows) {
        let item = Item::by_name(item).expect("an item");
        let written: Arc<str> = (*written).into();
        let readings = parse(item, &written, None).map(|parsed| parsed.readings);
        let row = RowPlace { file: 0, line };
        let mut push = |reading| {
            observations.push(Observation {
                item,
                written: Arc::clone(&written),
                reading,
                note: (*note).into(),
                row,
                column: 0,
            });
        };
        match readings {
            Ok(readings) => readings
                .into_iter()
                .for_each(|reading| push(Some(Arc::new(reading)))),
            Err(_) => {
                rows_in_error += 1;
                push(None);
            }
        }
    }
    Guard {
        building: "".into(),
        unit: unit.into(),
        name: name.into(),
        observations,
        own: Vec::new(),
        inherited: Arc::new(Inherited::default()),
        rows_in_error,
        rows: u32::try_from(rows.len()).expect("few"),
    }
}

/// The shipped rulesets of these ids.
pub(crate) fn rulesets(ids: &[&str]) -> Vec<Ruleset> {
    ids.iter()
        .map(|id| rules::load(id, &|_| None).ruleset.expect("shipped"))
        .collect()
}

/// The facts of a survey in one file.
pub(crate) fn facts() -> SurveyFacts {
    SurveyFacts {
        files: vec!["house.csv".into()],
        file_facts: vec![FileFacts::default()],
        property: Some("the house on the hill".to_owned()),
        dates: vec!["2026-05-03".to_owned()],
        ..SurveyFacts::default()
    }
}

/// What a report is made of.
pub(crate) struct Scene {
    pub(crate) facts: SurveyFacts,
    pub(crate) rulesets: Vec<Ruleset>,
    pub(crate) options: Options,
    pub(crate) explain: Explain,
    pub(crate) detail: Detail,
    pub(crate) width: usize,
    pub(crate) guards: Vec<Guard>,
    pub(crate) diagnostics: Diagnostics,
}

impl Scene {
    /// These guards by these rulesets.
    pub(crate) fn new(ids: &[&str], guards: Vec<Guard>) -> Scene {
        Scene {
            facts: facts(),
            rulesets: rulesets(ids),
            options: Options::default(),
            explain: Explain::No,
            detail: Detail::Short,
            width: 80,
            guards,
            diagnostics: Diagnostics::new(),
        }
    }

    pub(crate) fn text(&self) -> String {
        plain(&self.styled_text())
    }

    pub(crate) fn styled_text(&self) -> String {
        self.written(ReportForm::Text).0
    }

    pub(crate) fn json(&self) -> (String, Summary) {
        self.written(ReportForm::Json)
    }

    pub(crate) fn csv(&self) -> String {
        self.written(ReportForm::Csv).0
    }

    pub(crate) fn summary(&self) -> (String, Summary) {
        self.written(ReportForm::Summary)
    }

    fn written(&self, form: ReportForm) -> (String, Summary) {
        let mut out = Vec::new();
        let basis = ReportBasis {
            survey: &self.facts,
            rulesets: &self.rulesets,
            options: self.options,
            today: "2026-05-04".to_owned(),
            tool_version: "0.0.0",
            explain: self.explain,
            detail: self.detail,
            width: self.width,
        };
        let mut report = report(form, basis, &mut out).expect("a Vec takes everything");
        for guard in &self.guards {
            let judged = judge(guard, &self.facts, &self.rulesets, self.options);
            let entry = JudgedGuard {
                guard: guard.clone(),
                judged,
            };
            report.guard(&entry).expect("a Vec takes everything");
        }
        let summary = report
            .finish(&self.diagnostics)
            .expect("a Vec takes everything");
        (String::from_utf8(out).expect("reports are UTF-8"), summary)
    }
}

/// The text without its styles.
pub(crate) fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(start) = rest.find("\u{1b}[") {
        plain.push_str(&rest[..start]);
        let end = rest[start..].find('m').expect("a style ends with m");
        rest = &rest[start + end + 1..];
    }
    plain.push_str(rest);
    plain
}

/// A house with one of everything: no guard, too low, at the limit, met.
pub(crate) fn house() -> Vec<Guard> {
    vec![
        guard(
            "A",
            "landing",
            &[
                ("place", "landing", ""),
                ("use", "dwelling", ""),
                ("drop", "4 ft 4 1/4 in", ""),
                ("height", "34 5/8 in", "at the newel"),
                ("height", "36 1/4 in", ""),
                ("opening", "4 1/4 in", "third from the wall"),
                ("bottom gap", "2 in", ""),
                ("infill", "balusters", ""),
                ("children", "14 months", ""),
                ("moves when pushed", "a little", ""),
            ],
        ),
        guard(
            "A",
            "deck",
            &[
                ("place", "deck", ""),
                ("use", "dwelling", ""),
                ("drop", "4 ft", ""),
                ("height", "36 in", ""),
                ("opening", "4 in ball stops everywhere", ""),
                ("infill", "balusters", ""),
                ("built", "1994", ""),
                ("post fastening", "not reached", "boards in the way"),
            ],
        ),
        guard(
            "A",
            "back steps",
            &[
                ("place", "porch", ""),
                ("use", "dwelling", ""),
                ("drop", "40 in", ""),
                ("guard", "none", ""),
            ],
        ),
        guard(
            "B",
            "front step",
            &[
                ("place", "porch", ""),
                ("use", "dwelling", ""),
                ("drop", "14 in", ""),
                ("guard", "none", ""),
            ],
        ),
        guard(
            "B",
            "gallery",
            &[
                ("place", "floor edge", ""),
                ("use", "dwelling", ""),
                ("drop", "3 m", ""),
                ("height", "1100 mm", ""),
                ("opening", "85 mm", ""),
                ("bottom gap", "none", ""),
                ("infill", "balusters", ""),
                ("openings checked", "every one", ""),
                ("foothold", "none", ""),
                ("children", "3 years", ""),
                ("moves when pushed", "no", ""),
                ("thing to climb", "none", ""),
                ("infill loose", "no", ""),
            ],
        ),
        guard(
            "B",
            "attic",
            &[("height", "35-1/3 in", ""), ("drop", "deep", "")],
        ),
    ]
}
