//! Surveys held in memory, and what was read of them as plain lines.

use std::fmt::Write;
use std::ops::ControlFlow;

use guardrule::input::Diagnostic;
use guardrule::input::Diagnostics;
use guardrule::input::Severity;
use guardrule::survey::Guard;
use guardrule::survey::InMemory;
use guardrule::survey::Observation;
use guardrule::survey::Survey;
use guardrule::survey::SurveyFacts;
use guardrule::survey::SurveyFile;

/// Everything that was read of a survey.
pub(crate) struct Read {
    pub(crate) facts: SurveyFacts,
    pub(crate) guards: Vec<Guard>,
    pub(crate) diagnostics: Diagnostics,
}

/// Reads a survey of these files, given by name and bytes.
pub(crate) fn read_files(files: &[(&str, &[u8])]) -> Read {
    let files: Vec<Box<dyn SurveyFile>> = files
        .iter()
        .map(|(name, bytes)| {
            let page = InMemory::new(*name, *bytes);
            Box::new(page) as Box<dyn SurveyFile>
        })
        .collect();
    let survey = Survey::scan(&files).expect("memory can be read");
    let mut guards = Vec::new();
    let diagnostics = survey
        .guards(&mut |guard| {
            guards.push(guard);
            ControlFlow::Continue(())
        })
        .expect("memory does not change");
    assert_eq!(guards.len(), survey.guard_count());
    Read {
        facts: survey.facts().clone(),
        guards,
        diagnostics,
    }
}

/// Reads a survey of one file.
pub(crate) fn read(text: &str) -> Read {
    read_files(&[("walk.csv", text.as_bytes())])
}

/// A diagnostic as `file:line:column: severity[code]: message` and what belongs to it.
pub(crate) fn plain(diagnostic: &Diagnostic) -> String {
    let severity = match diagnostic.severity {
        Severity::Error => "error",
        Severity::Warning => "warning",
    };
    let at = &diagnostic.at.at;
    let mut lines = format!(
        "{}:{}:{}: {severity}[G{}]: {}\n",
        at.file(),
        at.line(),
        at.column(),
        diagnostic.code.number,
        diagnostic.message
    );
    let mut line = |what: &str, text: &str| {
        if !text.is_empty() {
            writeln!(lines, "    {what}: {}", text.escape_debug()).expect("a string takes text");
        }
    };
    line("marked", at.marked());
    line("label", &diagnostic.at.says);
    for also in &diagnostic.also {
        let place = format!(
            "line {}: {} ({})",
            also.at.line(),
            also.at.marked(),
            also.says
        );
        line("also", &place);
    }
    line("help", diagnostic.help.as_deref().unwrap_or_default());
    lines.replace("\\\"", "\"").replace("\\'", "'")
}

/// One observation in a few words.
pub(crate) fn brief(observation: &Observation) -> String {
    let read = if observation.reading.is_some() {
        ""
    } else {
        " (not read)"
    };
    let note = if observation.note.is_empty() {
        String::new()
    } else {
        format!(" [{}]", observation.note)
    };
    format!("{} = {}{read}{note}", observation.item, observation.written)
}

/// All of it as plain lines: diagnostics, then guards with what was read of them.
pub(crate) fn lines(read: &Read) -> String {
    let mut lines: String = read.diagnostics.sorted().into_iter().map(plain).collect();
    for (file, code, count) in read.diagnostics.left_out() {
        writeln!(lines, "{file}: {count} more of G{code}").expect("a string takes text");
    }
    for guard in &read.guards {
        let name: Vec<&str> = [&guard.building, &guard.unit, &guard.name]
            .into_iter()
            .map(|name| &**name)
            .filter(|name| !name.is_empty())
            .collect();
        writeln!(
            lines,
            "{}: {} of {} entries in error",
            name.join(", ").escape_debug(),
            guard.rows_in_error,
            guard.rows
        )
        .expect("a string takes text");
        let own = guard
            .own
            .iter()
            .map(|o| format!("{} = {} (own)", o.name, o.written));
        let inherited = guard
            .inherited
            .observations
            .iter()
            .map(|o| brief(o) + " (inherited)");
        for text in guard
            .observations
            .iter()
            .map(brief)
            .chain(own)
            .chain(inherited)
        {
            writeln!(lines, "    {}", text.escape_debug()).expect("a string takes text");
        }
    }
    lines
}
