//! The faults of one file, as they are found.

use std::ops::Range;

use crate::input::Diagnostic;
use crate::input::Label;
use crate::input::Severity;
use crate::input::SourceFile;
use crate::input::nearest;
use crate::rules::codes::RuleFault;

/// Collects what is wrong with one file.
///
/// What lies on a fault of syntax is left out: the value there is a stand-in.
pub(super) struct Faults<'f> {
    file: &'f SourceFile,
    /// By their starts; each end is the furthest of those up to here.
    syntax: Vec<Range<usize>>,
    found: Vec<Diagnostic>,
    errors: usize,
    left_out: usize,
}

/// How many faults of one file are told, so that a file that is no ruleset at
/// all costs neither time nor memory out of proportion.
const MOST_TOLD: usize = 100;

impl<'f> Faults<'f> {
    pub(super) fn new(file: &'f SourceFile) -> Faults<'f> {
        Faults {
            file,
            syntax: Vec::new(),
            found: Vec::new(),
            errors: 0,
            left_out: 0,
        }
    }

    /// The file that is being read.
    pub(super) fn file(&self) -> &'f SourceFile {
        self.file
    }

    /// Faults of syntax, found before anything else.
    pub(super) fn syntax(&mut self, faults: Vec<SyntaxFault>) {
        for fault in &faults {
            let (message, help) = (fault.message.clone(), fault.help.clone());
            self.tell(RuleFault::Syntax, Severity::Error, &fault.at, message, help);
        }
        self.syntax = faults.into_iter().map(|fault| fault.at).collect();
        self.syntax.sort_by_key(|at| at.start);
        let mut furthest = 0;
        for at in &mut self.syntax {
            furthest = furthest.max(at.end);
            at.end = furthest;
        }
    }

    /// Whether a range touches a fault of syntax.
    pub(super) fn broken(&self, range: &Range<usize>) -> bool {
        let up_to = self.syntax.partition_point(|at| at.start <= range.end);
        self.syntax[..up_to]
            .last()
            .is_some_and(|last| last.end >= range.start)
    }

    /// An error at a place.
    pub(super) fn error(
        &mut self,
        fault: RuleFault,
        at: &Range<usize>,
        message: impl Into<String>,
    ) {
        self.push(fault, Severity::Error, at, message.into(), None);
    }

    /// An error with what to write instead.
    pub(super) fn error_help(
        &mut self,
        fault: RuleFault,
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
        fault: RuleFault,
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
        fault: RuleFault,
        at: &Range<usize>,
        message: impl Into<String>,
        also: &Range<usize>,
        says: &str,
    ) {
        let told = self.found.len();
        self.push(fault, Severity::Error, at, message.into(), None);
        let at = self.file.excerpt(also.clone());
        for diagnostic in self.found.iter_mut().skip(told) {
            let says = says.to_owned();
            let at = at.clone();
            diagnostic.also.push(Label { at, says });
        }
    }

    fn push(
        &mut self,
        fault: RuleFault,
        severity: Severity,
        at: &Range<usize>,
        message: String,
        help: Option<String>,
    ) {
        if !self.broken(at) {
            self.tell(fault, severity, at, message, help);
        }
    }

    fn tell(
        &mut self,
        fault: RuleFault,
        severity: Severity,
        at: &Range<usize>,
        message: String,
        help: Option<String>,
    ) {
        if severity == Severity::Error {
            self.errors += 1;
        }
        if self.found.len() >= MOST_TOLD {
            self.left_out += 1;
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
        self.errors
    }

    /// All of them.
    pub(super) fn into_diagnostics(mut self) -> Vec<Diagnostic> {
        if self.left_out > 0 {
            let message = format!("{} more faults are not told", self.left_out);
            let end = self
                .file
                .excerpt(self.file.text.len()..self.file.text.len());
            let diagnostic = Diagnostic::error(RuleFault::MoreFaults.code(), message, end);
            let help = "mend those that are told, or look whether this is a ruleset at all";
            self.found.push(diagnostic.help(help));
        }
        self.found
    }
}

/// A fault of the TOML itself.
pub(super) struct SyntaxFault {
    pub(super) at: Range<usize>,
    pub(super) message: String,
    pub(super) help: Option<String>,
}

/// What to write instead of a word: the nearest right one, else all of them.
pub(super) fn instead(word: &str, right: &[&str]) -> String {
    let meant = ALIKE.iter().find(|(other, _)| *other == word);
    let meant = meant.map(|(_, own)| *own).filter(|own| right.contains(own));
    match meant.or_else(|| nearest(word, right.iter().copied())) {
        Some(near) => format!("write {near}"),
        None => format!("write {}", one_of(right)),
    }
}

/// Words that people write for another one of the format, though no letters are alike.
const ALIKE: &[(&str, &str)] = &[
    ("article", "clause"),
    ("description", "says"),
    ("fail", "falls short"),
    ("fails", "falls short"),
    ("if", "when"),
    ("name", "id"),
    ("paragraph", "clause"),
    ("pass", "meets"),
    ("passes", "meets"),
    ("require", "check"),
    ("section", "clause"),
    ("text", "says"),
];

/// `a, b or c`.
pub(super) fn one_of(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [first @ .., last] => format!("{} or {last}", first.join(", ")),
    }
}
