//! The faults of one file, as they are found.

use std::ops::Range;

use crate::rules::codes::Fault;
use crate::source::Diagnostic;
use crate::source::Severity;
use crate::source::SourceFile;
use crate::source::nearest;

/// Collects what is wrong with one file.
///
/// What lies on a fault of syntax is left out: the value there is a stand-in.
pub(super) struct Faults<'f> {
    file: &'f SourceFile,
    syntax: Vec<Range<usize>>,
    found: Vec<Diagnostic>,
}

impl<'f> Faults<'f> {
    pub(super) fn new(file: &'f SourceFile) -> Faults<'f> {
        Faults {
            file,
            syntax: Vec::new(),
            found: Vec::new(),
        }
    }

    /// The file that is being read.
    pub(super) fn file(&self) -> &'f SourceFile {
        self.file
    }

    /// A fault of syntax, found before anything else.
    pub(super) fn syntax(&mut self, at: Range<usize>, message: String, help: Option<String>) {
        let excerpt = self.file.excerpt(at.clone());
        let mut diagnostic = Diagnostic::error(Fault::Syntax.code(), message, excerpt);
        diagnostic.help = help;
        self.found.push(diagnostic);
        self.syntax.push(at);
    }

    /// Whether a range touches a fault of syntax.
    pub(super) fn broken(&self, range: &Range<usize>) -> bool {
        self.syntax
            .iter()
            .any(|fault| fault.start <= range.end && range.start <= fault.end)
    }

    /// An error at a place.
    pub(super) fn error(&mut self, fault: Fault, at: &Range<usize>, message: impl Into<String>) {
        self.push(fault, Severity::Error, at, message.into(), None);
    }

    /// An error with what to write instead.
    pub(super) fn error_help(
        &mut self,
        fault: Fault,
        at: &Range<usize>,
        message: impl Into<String>,
        help: impl Into<String>,
    ) {
        self.push(
            fault,
            Severity::Error,
            at,
            message.into(),
            Some(help.into()),
        );
    }

    /// A warning with what to do about it.
    pub(super) fn warning(
        &mut self,
        fault: Fault,
        at: &Range<usize>,
        message: impl Into<String>,
        help: impl Into<String>,
    ) {
        self.push(
            fault,
            Severity::Warning,
            at,
            message.into(),
            Some(help.into()),
        );
    }

    /// An error with another place that belongs to it.
    pub(super) fn error_also(
        &mut self,
        fault: Fault,
        at: &Range<usize>,
        message: impl Into<String>,
        also: &Range<usize>,
        says: &str,
    ) {
        if !self.broken(at) {
            let excerpt = self.file.excerpt(at.clone());
            let other = self.file.excerpt(also.clone());
            self.found
                .push(Diagnostic::error(fault.code(), message, excerpt).also(other, says));
        }
    }

    fn push(
        &mut self,
        fault: Fault,
        severity: Severity,
        at: &Range<usize>,
        message: String,
        help: Option<String>,
    ) {
        if self.broken(at) {
            return;
        }
        let excerpt = self.file.excerpt(at.clone());
        let mut diagnostic = Diagnostic::error(fault.code(), message, excerpt);
        diagnostic.severity = severity;
        diagnostic.help = help;
        self.found.push(diagnostic);
    }

    /// How many errors there are so far.
    pub(super) fn errors(&self) -> usize {
        self.found
            .iter()
            .filter(|diagnostic| diagnostic.severity == Severity::Error)
            .count()
    }

    /// All of them.
    pub(super) fn into_diagnostics(self) -> Vec<Diagnostic> {
        self.found
    }
}

/// What to write instead of a word: the nearest right one, else all of them.
pub(super) fn instead(word: &str, right: &[&str]) -> String {
    match nearest(word, right.iter().copied()) {
        Some(near) => format!("write {near}"),
        None => format!("write {}", one_of(right)),
    }
}

/// `a, b or c`.
pub(super) fn one_of(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [first @ .., last] => format!("{} or {last}", first.join(", ")),
    }
}
