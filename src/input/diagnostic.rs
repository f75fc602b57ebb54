//! Something wrong with a file, and a collection that stays small.

use std::collections::BTreeMap;
use std::fmt;
use std::sync::Arc;

use crate::input::Excerpt;

/// What kind of fault a diagnostic is: a number for good and a short title.
///
/// G1xx speak of rulesets, G2xx of surveys, G3xx of the command line. Every
/// module owns its own list of codes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Code {
    /// The number behind the G.
    pub number: u16,
    /// What it is about, for lists of codes.
    pub title: &'static str,
}

impl fmt::Display for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "G{}", self.number)
    }
}

/// How bad a fault is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// What stands there could not be used; the exit status becomes 2.
    Error,
    /// It was used, and the reader should know how.
    Warning,
}

/// A place in a file and what is there.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Label {
    /// Where.
    pub at: Excerpt,
    /// What is there, in a few words; may be empty.
    pub says: String,
}

/// Something wrong with a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Diagnostic {
    /// Which kind of fault.
    pub code: Code,
    /// How bad it is.
    pub severity: Severity,
    /// What is wrong, what was found and what was expected, in one line.
    pub message: String,
    /// The place.
    pub at: Label,
    /// Other places that belong to it ("first given here").
    pub also: Vec<Label>,
    /// The text to write instead, or the next step.
    pub help: Option<String>,
}

impl Diagnostic {
    /// An error at a place.
    #[must_use]
    pub fn error(code: Code, message: impl Into<String>, at: Excerpt) -> Diagnostic {
        Diagnostic {
            code,
            severity: Severity::Error,
            message: message.into(),
            at: Label {
                at,
                says: String::new(),
            },
            also: Vec::new(),
            help: None,
        }
    }

    /// A warning at a place.
    #[must_use]
    pub fn warning(code: Code, message: impl Into<String>, at: Excerpt) -> Diagnostic {
        Diagnostic {
            severity: Severity::Warning,
            ..Diagnostic::error(code, message, at)
        }
    }

    /// The same with a word beside the marked place.
    #[must_use]
    pub fn label(mut self, says: impl Into<String>) -> Diagnostic {
        self.at.says = says.into();
        self
    }

    /// The same with another place that belongs to it.
    #[must_use]
    pub fn also(mut self, at: Excerpt, says: impl Into<String>) -> Diagnostic {
        self.also.push(Label {
            at,
            says: says.into(),
        });
        self
    }

    /// The same with what to write instead.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Diagnostic {
        self.help = Some(help.into());
        self
    }
}

/// How many diagnostics of one code and file are kept; the rest is counted.
const KEPT: usize = 20;

/// The diagnostics of a run: at most twenty of a code and file, the rest counted.
#[derive(Clone, Debug, Default)]
pub struct Diagnostics {
    kept: BTreeMap<(Arc<str>, u16), Vec<Diagnostic>>,
    left_out: BTreeMap<(Arc<str>, u16), u64>,
    errors: u64,
}

impl Diagnostics {
    /// None yet.
    #[must_use]
    pub fn new() -> Diagnostics {
        Diagnostics::default()
    }

    /// Adds one.
    pub fn push(&mut self, diagnostic: Diagnostic) {
        if diagnostic.severity == Severity::Error {
            self.errors += 1;
        }
        let key = (Arc::clone(diagnostic.at.at.file()), diagnostic.code.number);
        let kept = self.kept.entry(key.clone()).or_default();
        if kept.len() < KEPT {
            kept.push(diagnostic);
        } else {
            *self.left_out.entry(key).or_default() += 1;
        }
    }

    /// Adds all of them.
    pub fn extend(&mut self, more: impl IntoIterator<Item = Diagnostic>) {
        for diagnostic in more {
            self.push(diagnostic);
        }
    }

    /// Adds another run's diagnostics, with the count of those it left out.
    pub fn absorb(&mut self, other: Diagnostics) {
        let errors = self.errors + other.errors;
        self.extend(other.kept.into_values().flatten());
        for (key, count) in other.left_out {
            *self.left_out.entry(key).or_default() += count;
        }
        self.errors = errors;
    }

    /// Whether one of them is an error.
    #[must_use]
    pub fn any_error(&self) -> bool {
        self.errors > 0
    }

    /// Those kept, by file, place and code.
    #[must_use]
    pub fn sorted(&self) -> Vec<&Diagnostic> {
        let mut all: Vec<&Diagnostic> = self.kept.values().flatten().collect();
        all.sort_by_key(|d| {
            (
                Arc::clone(d.at.at.file()),
                d.at.at.line(),
                d.at.at.column(),
                d.code.number,
            )
        });
        all
    }

    /// Files and codes of which more were found than kept, with the count of the rest.
    pub fn left_out(&self) -> impl Iterator<Item = (&str, u16, u64)> {
        self.left_out
            .iter()
            .map(|((file, code), count)| (&**file, *code, *count))
    }
}
