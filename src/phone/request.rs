//! What a page may ask for.

use std::collections::BTreeMap;

use serde::Deserialize;

/// One request; its JSON names it in `do`.
#[derive(Clone, Debug, Deserialize)]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub(super) enum Request {
    /// Takes an answer or a command, as typed in a walk.
    Answer { typed: String },
    /// Begins a walk with the text of a survey, which may be empty.
    Begin {
        name: String,
        survey: String,
        /// `2026-05-04`: there is no clock in here.
        today: Option<String>,
        /// Rulesets for a survey that names none.
        #[serde(default)]
        rules: Vec<String>,
    },
    /// A whole report, as the command line writes it.
    Check {
        files: Vec<SurveyText>,
        #[serde(default)]
        rules: Vec<String>,
        form: Form,
        today: String,
        /// This railing alone.
        only: Option<RailingName>,
        /// The photographs that stand in a page, by the names that the survey has for them.
        #[serde(default)]
        photos: BTreeMap<String, PhotoSent>,
    },
    /// All railings of the walk with how they are judged so far.
    Guards,
    /// Which rulesets hold here: the answers so far to the questions that find them.
    Search { lines: Vec<String> },
    /// What is asked now.
    State,
    /// What a half-typed answer would be understood as; nothing is written.
    Understand { typed: String },
    /// Reads one more ruleset for `search`, so that no single request takes long.
    Warm,
}

/// A survey file.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct SurveyText {
    pub(super) name: String,
    pub(super) text: String,
}

/// A photograph as the page keeps it: made small, and without what a camera wrote into it.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct PhotoSent {
    /// As JPEG, in base64.
    pub(super) jpeg: String,
    pub(super) wide: u32,
    pub(super) high: u32,
}

/// A railing, by its names as they stand in the survey.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RailingName {
    pub(super) building: String,
    pub(super) unit: String,
    pub(super) guard: String,
}

/// A form of report: that which the page shows, and that in which all can be compared with
/// the command line. What no page asks for would only make it larger.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Form {
    Html,
    Json,
}
