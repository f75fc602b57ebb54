//! What is said of faulty rulesets: every file under `tests/corpus/rulesets` with
//! a snapshot beside it.

use std::fs;
use std::path::Path;
use std::path::PathBuf;

use guardrule::input::Diagnostic;
use guardrule::input::Severity;
use guardrule::input::SourceFile;
use guardrule::rules::LoadedRuleset;
use guardrule::rules::codes;
use guardrule::rules::load;

/// A diagnostic in plain lines; the pretty form is made in the report.
pub(super) fn plain(diagnostic: &Diagnostic) -> String {
    let severity = match diagnostic.severity {
        Severity::Error => "error",
        Severity::Warning => "warning",
    };
    let at = &diagnostic.at.at;
    let mut lines = vec![format!(
        "{}:{}:{}: {severity}[G{}]: {}",
        at.file(),
        at.line(),
        at.column(),
        diagnostic.code.number,
        diagnostic.message
    )];
    lines.push(format!("  at: {}", at.marked()));
    for also in &diagnostic.also {
        lines.push(format!(
            "  also {}:{}: {} ({})",
            also.at.line(),
            also.at.column(),
            also.at.marked(),
            also.says
        ));
    }
    lines.extend(diagnostic.help.iter().map(|help| format!("  help: {help}")));
    lines.join("\n")
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/corpus/rulesets")
}

/// Loads a file of the corpus; what it extends stands beside it.
pub(super) fn load_from_corpus(name: &str) -> LoadedRuleset {
    load(name, &|name| {
        let text = fs::read_to_string(folder().join(name)).ok()?;
        Some(SourceFile::new(name, &text))
    })
}

fn files() -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder())
        .expect("the corpus is there")
        .map(|entry| entry.expect("an entry").file_name())
        .map(|name| name.into_string().expect("a plain name"))
        .filter(|name| name.ends_with(".toml"))
        .collect();
    names.sort();
    names
}

#[test]
fn every_faulty_ruleset_is_told_all_its_faults() {
    let names = files();
    assert!(names.len() >= 16, "{} files", names.len());
    for name in names {
        let loaded = load_from_corpus(&name);
        let kept = match &loaded.ruleset {
            Some(ruleset) => {
                let ids: Vec<&str> = ruleset.rules.iter().map(|rule| rule.id.as_str()).collect();
                let unread = ruleset.unread.iter();
                let unread: String = unread.map(|u| format!("\nunread: {}", u.says())).collect();
                format!("kept: {}{unread}", ids.join(", "))
            }
            None => "nothing usable".to_owned(),
        };
        let mut lines: Vec<String> = loaded.diagnostics.iter().map(plain).collect();
        assert!(!lines.is_empty(), "{name} has no fault");
        lines.push(kept);
        let mut settings = insta::Settings::clone_current();
        settings.set_snapshot_path(folder());
        settings.set_prepend_module_to_snapshot(false);
        settings.set_omit_expression(true);
        settings.bind(|| insta::assert_snapshot!(name.as_str(), lines.join("\n")));
    }
}

#[test]
fn every_code_is_produced_by_the_corpus() {
    let mut seen: Vec<u16> = files()
        .iter()
        .flat_map(|name| load_from_corpus(name).diagnostics)
        .map(|diagnostic| diagnostic.code.number)
        .collect();
    seen.push(not_found());
    seen.sort_unstable();
    seen.dedup();
    let all: Vec<u16> = codes().iter().map(|code| code.number).collect();
    assert_eq!(seen, all);
}

/// A ruleset that is not there has no file in the corpus.
fn not_found() -> u16 {
    let loaded = load_from_corpus("us-dweling-2018");
    assert!(loaded.ruleset.is_none());
    let diagnostic = loaded.diagnostics.first().expect("one diagnostic");
    assert_eq!(diagnostic.at.at.line(), 0);
    let help = diagnostic.help.as_deref();
    assert_eq!(
        help,
        Some(
            "write us-dwelling-2018, or the path of a file; guardrule rules list shows the program's own"
        )
    );
    diagnostic.code.number
}
