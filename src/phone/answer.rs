//! What a page gets back.

use serde::Serialize;

use crate::phone::screen::Screen;

/// One answer.
#[derive(Debug, Serialize)]
#[serde(untagged)]
pub(super) enum DoorAnswer {
    Checked(Checked),
    Error { error: String },
    Guards { guards: Vec<GuardSoFar> },
    Searched(Box<Searched>),
    State(Box<State>),
    HalfTyped(HalfTyped),
    Warm { left: usize },
}

/// A report and what is wrong with the files.
#[derive(Debug, Serialize)]
pub(super) struct Checked {
    /// Empty where nothing could be judged.
    pub(super) report: String,
    pub(super) diagnostics: String,
}

/// How far the search for the rulesets has come.
#[derive(Debug, Serialize)]
pub(super) struct Searched {
    pub(super) question: Screen,
    pub(super) said: Vec<PageSaid>,
    /// The ids, once they are found; none where advice alone is wanted.
    pub(super) chosen: Option<Vec<String>>,
}

/// Where the walk stands.
#[derive(Debug, Serialize)]
pub(super) struct State {
    /// The survey as it is to be kept.
    pub(super) survey: String,
    /// How many railings are in it.
    pub(super) guards: usize,
    /// How many errors stand in it.
    pub(super) errors: usize,
    pub(super) question: Screen,
    /// What became of the answer, in words.
    pub(super) said: Vec<PageSaid>,
    /// The railing that is spoken of: its five hazards so far.
    pub(super) so_far: Vec<HazardSoFar>,
    /// What is written of it: item, reading and note.
    pub(super) written: Vec<(&'static str, String, String)>,
    /// Whether building rules are checked, or advice alone.
    pub(super) law: bool,
}

/// Something to tell the person.
#[derive(Debug, Serialize)]
pub(super) struct PageSaid {
    pub(super) kind: SaidKind,
    pub(super) lines: Vec<String>,
    /// What to do, where it is a danger.
    pub(super) acts: Vec<DangerAct>,
}

/// Of what kind it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum SaidKind {
    /// It was taken.
    Noted,
    /// A railing is done.
    Done,
    /// What is decided now.
    Settled,
    /// It was not taken.
    Refused,
    /// A danger.
    Stop,
    /// Anything else.
    Told,
}

/// A danger: what to do, and what was seen.
#[derive(Debug, Serialize)]
pub(super) struct DangerAct {
    pub(super) act: &'static str,
    pub(super) says: &'static str,
}

/// A hazard as it stands; the words are those of the reports.
#[derive(Debug, Serialize)]
pub(super) struct HazardSoFar {
    pub(super) hazard: &'static str,
    /// `falls short`, for the mark.
    pub(super) verdict: Option<&'static str>,
    pub(super) says: &'static str,
    /// The same of the advice.
    pub(super) advice: Option<&'static str>,
    pub(super) advice_says: &'static str,
}

/// A railing as it stands.
#[derive(Debug, Serialize)]
pub(super) struct GuardSoFar {
    pub(super) place: String,
    pub(super) building: String,
    pub(super) unit: String,
    pub(super) guard: String,
    pub(super) verdict: &'static str,
    pub(super) says: &'static str,
    pub(super) acts: Vec<DangerAct>,
    /// Names of the photographs that are written down.
    pub(super) photos: Vec<String>,
}

/// What a half-typed answer would become.
#[derive(Debug, Serialize)]
pub(super) struct HalfTyped {
    pub(super) taken: bool,
    pub(super) lines: Vec<String>,
}
