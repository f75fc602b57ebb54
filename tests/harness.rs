//! Runs the program in this process, on files of a folder of its own.

use std::ffi::OsString;
use std::fs;
use std::path::Path;

use guardrule::cli;
use serde_json::Value;

/// What a run gave.
pub(crate) struct Ran {
    pub(crate) out: String,
    pub(crate) err: String,
    pub(crate) code: u8,
}

impl Ran {
    /// Standard output as JSON.
    pub(crate) fn json(&self) -> Value {
        serde_json::from_str(&self.out)
            .unwrap_or_else(|error| panic!("{error}\n{}\n{}", self.out, self.err))
    }
}

/// Runs `guardrule` with these arguments; `@NAME` stands for a file of the folder.
pub(crate) fn run_in(folder: &Path, args: &[&str], input: &str) -> Ran {
    let mut all: Vec<OsString> = vec!["guardrule".into()];
    all.extend(args.iter().map(|arg| match arg.strip_prefix('@') {
        Some(name) => folder.join(name).into_os_string(),
        None => OsString::from(arg),
    }));
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let code = {
        let mut terminal = cli::Terminal::new(&mut out, &mut err, input.as_bytes());
        cli::run(all, &mut terminal).code()
    };
    let text = |bytes: Vec<u8>| {
        let text = String::from_utf8(bytes).expect("output is UTF-8");
        // a folder of a test has no name of its own
        text.replace(&format!("{}/", folder.display()), "")
    };
    Ran {
        out: text(out),
        err: text(err),
        code,
    }
}

/// Runs `guardrule` on files made for it.
pub(crate) fn run(files: &[(&str, &str)], args: &[&str]) -> Ran {
    let folder = tempfile::tempdir().expect("a folder");
    for (name, text) in files {
        fs::write(folder.path().join(name), text).expect("written");
    }
    run_in(folder.path(), args, "")
}

/// Runs `guardrule` in the project's own folder.
pub(crate) fn run_here(args: &[&str]) -> Ran {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let args: Vec<String> = args
        .iter()
        .map(|arg| match arg.strip_prefix('@') {
            Some(name) => here.join(name).display().to_string(),
            None => (*arg).to_owned(),
        })
        .collect();
    let args: Vec<&str> = args.iter().map(String::as_str).collect();
    run_in(here, &args, "")
}

/// `check --format json` of one survey with these rulesets.
pub(crate) fn check(survey: &str, args: &[&str]) -> Ran {
    let mut all = vec!["check", "@survey.csv", "--format", "json"];
    all.extend(args);
    run(&[("survey.csv", survey)], &all)
}

/// The only guard of a JSON report.
pub(crate) fn only_guard(report: &Value) -> &Value {
    let guards = report["guards"].as_array().expect("guards");
    assert_eq!(guards.len(), 1, "one guard");
    &guards[0]
}

/// The verdict of the only guard of a survey, by one ruleset alone, or by the one in
/// `town.toml`.
pub(crate) fn verdict_by(rules: &str, town: &str, survey: &str) -> String {
    let files = [("town.toml", town), ("survey.csv", survey)];
    let mut args = vec!["check", "@survey.csv", "--format", "json", "--no-guidance"];
    args.extend(["--rules", rules]);
    let report = run(&files, &args).json();
    let verdict = only_guard(&report)["verdict"].as_str();
    verdict.expect("a word").to_owned()
}

/// The findings of a guard by rule id, in their order.
pub(crate) fn finding<'a>(guard: &'a Value, rule: &str) -> &'a Value {
    let findings = guard["findings"].as_array().expect("findings");
    findings
        .iter()
        .find(|finding| finding["rule"] == rule)
        .unwrap_or_else(|| panic!("no finding of {rule} in {guard}"))
}

/// Words in a row, so that a broken line is no difference.
pub(crate) fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A report without its date: today's is not yesterday's.
pub(crate) fn undated(text: &str) -> String {
    let dated = |line: &str| match line.split_once("report of ") {
        Some((before, _)) => format!("{before}report of DATE"),
        None => line.to_owned(),
    };
    text.lines().map(dated).collect::<Vec<_>>().join("\n")
}
