//! `guardrule rules diff|find|list|show|test`

use std::io;
use std::io::Write;
use std::sync::Arc;

use crate::cli::args::RulesArgs;
use crate::cli::args::RulesCommand;
use crate::cli::codes::EXAMPLE_FAILS;
use crate::cli::codes::NOTHING_TO_JUDGE_BY;
use crate::cli::exit::Exit;
use crate::cli::files;
use crate::cli::terminal::Terminal;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::judge::examples;
use crate::report;
use crate::report::TextPage;
use crate::report::one_line;
use crate::rules;
use crate::rules::Guidance;
use crate::rules::LoadedRuleset;
use crate::rules::Ruleset;
use crate::survey::NamedRules;

pub(super) fn run(args: &RulesArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    match &args.command {
        RulesCommand::Diff { first, second } => diff(first, second, terminal),
        RulesCommand::Find { words } => find(&words.join(" "), terminal),
        RulesCommand::List { full } => list(
            if *full {
                ListLength::Full
            } else {
                ListLength::Short
            },
            terminal,
        ),
        RulesCommand::Show { ruleset } => show(ruleset, terminal),
        RulesCommand::Test { rulesets } => test(rulesets, terminal),
    }
}

/// Loads rulesets by id or path, without their examples; what is wrong with them
/// goes to `diagnostics`.
pub(super) fn load<'a>(
    names: impl IntoIterator<Item = &'a str>,
    diagnostics: &mut Diagnostics,
) -> Vec<Ruleset> {
    let each = names.into_iter();
    let each = each.map(|name| rules::load_to_judge(name, &files::ruleset));
    kept(each, diagnostics)
}

/// The same with their examples.
fn load_whole<'a>(
    names: impl IntoIterator<Item = &'a str>,
    diagnostics: &mut Diagnostics,
) -> Vec<Ruleset> {
    let each = names.into_iter();
    let each = each.map(|name| rules::load(name, &files::ruleset));
    kept(each, diagnostics)
}

fn kept(
    loaded: impl Iterator<Item = LoadedRuleset>,
    diagnostics: &mut Diagnostics,
) -> Vec<Ruleset> {
    let mut rulesets = Vec::new();
    for one in loaded {
        diagnostics.extend(one.diagnostics);
        rulesets.extend(one.ruleset);
    }
    rulesets
}

/// The rulesets of the command line, else the survey's own, each once, and the
/// child guidance beside either.
pub(super) fn chosen(
    asked: &[String],
    of_survey: &[NamedRules],
    guidance: Guidance,
    diagnostics: &mut Diagnostics,
) -> Vec<Ruleset> {
    let asked = asked.iter().map(|name| (name.as_str(), None));
    let mut named: Vec<(&str, Option<&Excerpt>)> = asked.collect();
    if named.is_empty() {
        let rows = of_survey.iter();
        named.extend(rows.map(|row| (row.name.as_str(), Some(&row.at))));
    }
    rules::chosen(named, guidance, &files::ruleset, diagnostics)
}

/// What to say where no ruleset is left.
pub(super) fn nothing_to_judge_by() -> Diagnostic {
    let at = Excerpt::whole(Arc::from("command line"));
    Diagnostic::error(NOTHING_TO_JUDGE_BY, "there is no ruleset to judge by", at).help(
        "guardrule rules find flat in Florida (say where you are) names those that hold; then --rules ID",
    )
}

/// How much the list says of each ruleset.
enum ListLength {
    Full,
    Short,
}

fn find(words: &str, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let rulesets = load(rules::embedded_ids(), &mut diagnostics);
    let width = terminal.columns();
    let mut out = terminal.out();
    report::found_rules(
        &mut TextPage::new(&mut out, width),
        &rules::find(words, &rulesets),
    )?;
    out.flush()?;
    drop(out);
    print_diagnostics(&diagnostics, terminal, Exit::Met)
}

fn list(length: ListLength, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let rulesets = load_whole(rules::embedded_ids(), &mut diagnostics);
    let width = terminal.columns();
    let mut out = terminal.out();
    match length {
        ListLength::Full => report::list(&mut TextPage::new(&mut out, width), &rulesets)?,
        ListLength::Short => report::short_list(&mut TextPage::new(&mut out, width), &rulesets)?,
    }
    out.flush()?;
    drop(out);
    print_diagnostics(&diagnostics, terminal, Exit::Met)
}

fn diff(first: &str, second: &str, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let rulesets = load([first, second], &mut diagnostics);
    let width = terminal.columns();
    let mut out = terminal.out();
    if let [first, second] = rulesets.as_slice() {
        let mut page = TextPage::new(&mut out, width);
        report::difference(&mut page, first, second)?;
        report::deferral(&mut page)?;
    }
    out.flush()?;
    drop(out);
    print_diagnostics(&diagnostics, terminal, Exit::Met)
}

fn show(name: &str, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let rulesets = load_whole([name], &mut diagnostics);
    let width = terminal.columns();
    let mut out = terminal.out();
    for ruleset in &rulesets {
        report::show(&mut TextPage::new(&mut out, width), ruleset)?;
    }
    out.flush()?;
    drop(out);
    print_diagnostics(&diagnostics, terminal, Exit::Met)
}

fn test(names: &[String], terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let rulesets = if names.is_empty() {
        load_whole(rules::embedded_ids(), &mut diagnostics)
    } else {
        load_whole(names.iter().map(String::as_str), &mut diagnostics)
    };
    let faulty = diagnostics.any_error();
    let mut failures = Diagnostics::new();
    let width = terminal.columns();
    let mut out = terminal.out();
    for ruleset in &rulesets {
        let tested = examples::test(ruleset);
        let passed = tested.count - tested.failed.len();
        let id = one_line(&ruleset.id);
        let rest = if faulty {
            "; what has an error is left out until it is mended"
        } else {
            ""
        };
        let says = format!(
            "{id}: {passed} of {} examples come out as they say{rest}",
            tested.count
        );
        writeln!(out, "{}", report::wrapped(&says, width))?;
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
    for ruleset in &rulesets {
        against_parent(&mut out, width, ruleset)?;
    }
    report::deferral(&mut TextPage::new(&mut out, width))?;
    out.flush()?;
    drop(out);
    let failed = failures.any_error();
    diagnostics.absorb(failures);
    let exit = if failed { Exit::FallsShort } else { Exit::Met };
    terminal.diagnostics(&diagnostics)?;
    Ok(if faulty { Exit::BadInput } else { exit })
}

/// What somebody's own amendment changed against the ruleset that it extends.
fn against_parent(out: &mut dyn Write, width: usize, ruleset: &Ruleset) -> io::Result<()> {
    let Some(parent) = &ruleset.extends else {
        return Ok(());
    };
    // an edition of the program's own stands for itself
    if rules::is_embedded(&ruleset.file) {
        return Ok(());
    }
    // what is wrong with the parent was told when the amendment was loaded
    let parent = rules::load_to_judge(parent, &files::ruleset).ruleset;
    match parent {
        Some(parent) => {
            writeln!(out)?;
            report::difference(&mut TextPage::new(out, width), &parent, ruleset)
        }
        None => Ok(()),
    }
}

/// Prints diagnostics; an error among them makes the status 2.
pub(super) fn print_diagnostics(
    diagnostics: &Diagnostics,
    terminal: &mut Terminal<'_>,
    exit: Exit,
) -> io::Result<Exit> {
    terminal.diagnostics(diagnostics)?;
    Ok(if diagnostics.any_error() {
        Exit::BadInput
    } else {
        exit
    })
}
