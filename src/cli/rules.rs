//! `guardrule rules diff|list|show|test`

use std::io;
use std::io::Write;

use crate::cli::args::RulesArgs;
use crate::cli::args::RulesCommand;
use crate::cli::codes::EXAMPLE_FAILS;
use crate::cli::exit::Exit;
use crate::cli::files;
use crate::cli::terminal::Terminal;
use crate::evaluate::examples;
use crate::report;
use crate::report::one_line;
use crate::rules;
use crate::rules::Ruleset;
use crate::source::Diagnostic;
use crate::source::Diagnostics;

pub(super) fn run(args: &RulesArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    match &args.command {
        RulesCommand::Diff { first, second } => diff(first, second, terminal),
        RulesCommand::List => list(terminal),
        RulesCommand::Show { ruleset } => show(ruleset, terminal),
        RulesCommand::Test { rulesets } => test(rulesets, terminal),
    }
}

/// Loads rulesets by id or path; what is wrong with them goes to `diagnostics`.
pub(super) fn load<'a>(
    names: impl IntoIterator<Item = &'a str>,
    diagnostics: &mut Diagnostics,
) -> Vec<Ruleset> {
    let mut loaded = Vec::new();
    for name in names {
        let one = rules::load(name, &files::ruleset);
        diagnostics.extend(one.diagnostics);
        loaded.extend(one.ruleset);
    }
    loaded
}

fn list(terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let rulesets = load(rules::embedded_ids(), &mut diagnostics);
    let mut out = terminal.out();
    report::list(&mut out, &rulesets)?;
    out.flush()?;
    drop(out);
    said(&diagnostics, terminal, Exit::Met)
}

fn diff(first: &str, second: &str, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let rulesets = load([first, second], &mut diagnostics);
    let mut out = terminal.out();
    if let [first, second] = rulesets.as_slice() {
        report::difference(&mut out, first, second)?;
    }
    out.flush()?;
    drop(out);
    said(&diagnostics, terminal, Exit::Met)
}

fn show(name: &str, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let rulesets = load([name], &mut diagnostics);
    let mut out = terminal.out();
    for ruleset in &rulesets {
        report::show(&mut out, ruleset)?;
    }
    out.flush()?;
    drop(out);
    said(&diagnostics, terminal, Exit::Met)
}

fn test(names: &[String], terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let rulesets = if names.is_empty() {
        load(rules::embedded_ids(), &mut diagnostics)
    } else {
        load(names.iter().map(String::as_str), &mut diagnostics)
    };
    let faulty = diagnostics.any_error();
    let mut failures = Diagnostics::new();
    let mut out = terminal.out();
    for ruleset in &rulesets {
        let tested = examples::test(ruleset);
        let passed = tested.count - tested.failed.len();
        let id = one_line(&ruleset.id);
        let rest = if faulty {
            "; a rule with an error is left out until it is mended"
        } else {
            ""
        };
        writeln!(
            out,
            "{id}: {passed} of {} examples come out as they say{rest}",
            tested.count
        )?;
        for failed in tested.failed {
            let message = format!(
                "this example of {} gives {}, and it expects {}",
                failed.rule.id, failed.found, failed.example.expect
            );
            failures.push(
                Diagnostic::error(EXAMPLE_FAILS, message, failed.example.at.clone())
                    .label(format!("comes out as {}", failed.found))
                    .help("put the limit or the example right, whichever is wrong"),
            );
        }
    }
    out.flush()?;
    drop(out);
    let failed = failures.any_error();
    diagnostics.absorb(failures);
    let exit = if failed { Exit::FallsShort } else { Exit::Met };
    report::diagnostics_text(&mut terminal.err(), &diagnostics)?;
    Ok(if faulty { Exit::BadInput } else { exit })
}

/// Prints diagnostics; an error among them makes the status 2.
pub(super) fn said(
    diagnostics: &Diagnostics,
    terminal: &mut Terminal<'_>,
    exit: Exit,
) -> io::Result<Exit> {
    report::diagnostics_text(&mut terminal.err(), diagnostics)?;
    Ok(if diagnostics.any_error() {
        Exit::BadInput
    } else {
        exit
    })
}
