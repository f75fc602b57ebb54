//! `guardrule remedy SURVEY`: what would put each shortfall right.

use std::io;
use std::io::Write;
use std::ops::ControlFlow;
use std::path::Path;
use std::path::PathBuf;
use std::sync::Arc;

use crate::cli::args::RemedyArgs;
use crate::cli::args::RemedyFormat;
use crate::cli::check::absorb_what_was_read;
use crate::cli::check::is_chosen;
use crate::cli::check::no_output;
use crate::cli::check::no_such_guard;
use crate::cli::check::open;
use crate::cli::check::print_diagnostics;
use crate::cli::check::rulesets;
use crate::cli::check::system_refusal;
use crate::cli::clock;
use crate::cli::codes;
use crate::cli::exit::Exit;
use crate::cli::output::Output;
use crate::cli::output::OutputError;
use crate::cli::output::Replacing;
use crate::cli::rules::nothing_to_judge_by;
use crate::cli::terminal::Terminal;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::judge;
use crate::judge::Judged;
use crate::judge::Options;
use crate::remedy;
use crate::report;
use crate::report::Detail;
use crate::report::Explain;
use crate::report::PlanOutcome;
use crate::report::PlannedGuard;
use crate::report::ReportBasis;
use crate::rules::Guidance;
use crate::rules::Ruleset;
use crate::survey::FileError;
use crate::survey::Guard;
use crate::survey::InMemory;
use crate::survey::Survey;
use crate::survey::SurveyFile;

pub(super) fn run(args: &RemedyArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let files = open(&args.surveys, terminal, &mut diagnostics);
    if files.is_empty() {
        return print_diagnostics(&diagnostics, terminal);
    }
    let survey = match one_round(&files) {
        Ok(survey) => survey,
        Err(found) => {
            diagnostics.absorb(found);
            return print_diagnostics(&diagnostics, terminal);
        }
    };
    let guidance = if args.no_guidance {
        Guidance::WhereAsked
    } else {
        Guidance::Beside
    };
    let rulesets = rulesets(
        &args.rules,
        guidance,
        (&survey, &args.surveys),
        &mut diagnostics,
    );
    if rulesets.iter().all(|ruleset| ruleset.rules.is_empty()) {
        diagnostics.push(nothing_to_judge_by());
        return print_diagnostics(&diagnostics, terminal);
    }
    let guards = planned(args, &survey, &rulesets, &mut diagnostics);
    let basis = ReportBasis {
        survey: survey.facts(),
        rulesets: &rulesets,
        options: Options::default(),
        today: clock::today(),
        tool_version: env!("CARGO_PKG_VERSION"),
        explain: Explain::No,
        detail: Detail::Short,
        width: terminal.columns(),
    };
    if let Some(path) = &args.write {
        write(args, path, &guards, &basis, &mut diagnostics)?;
    }
    let mut out = terminal.out();
    match args.format {
        RemedyFormat::Csv => report::plans_csv(&mut out, &guards, &basis)?,
        RemedyFormat::Json => report::plans_json(&mut out, &guards, &basis)?,
        RemedyFormat::Svg => report::plans_svg(&mut out, &guards)?,
        RemedyFormat::Text => report::plans_text(&mut out, &guards, &basis)?,
    }
    out.flush()?;
    drop(out);
    terminal.diagnostics(&diagnostics)?;
    Ok(exit(&guards, &diagnostics))
}

/// The files as one survey of one round.
fn one_round(files: &[Box<dyn SurveyFile>]) -> Result<Survey<'_>, Diagnostics> {
    let gone = |error: FileError| {
        let mut all = Diagnostics::new();
        all.push(system_refusal(
            codes::CANNOT_READ,
            &error.file,
            &error.error,
        ));
        all
    };
    let survey = Survey::scan(files).map_err(gone)?;
    match survey.two_rounds().map_err(gone)? {
        None => Ok(survey),
        Some(rounds) => Err(rounds),
    }
}

/// Judges every guard that was asked for, and plans it.
fn planned<'r>(
    args: &RemedyArgs,
    survey: &Survey<'_>,
    rulesets: &'r [Ruleset],
    diagnostics: &mut Diagnostics,
) -> Vec<PlannedGuard<'r>> {
    let options = Options::default();
    let names = [&args.building, &args.unit, &args.guard];
    let mut guards = Vec::new();
    let found = survey.guards(&mut |guard| {
        if is_chosen(names, &guard) {
            let judged = judge::judge(&guard, survey.facts(), rulesets, options);
            let plan = remedy::plan(&guard, &judged, survey.facts(), rulesets, options);
            guards.push(PlannedGuard {
                guard,
                judged,
                plan,
            });
        }
        ControlFlow::Continue(())
    });
    absorb_what_was_read(found, diagnostics);
    if guards.is_empty() && survey.guard_count() > 0 {
        diagnostics.push(no_such_guard(names));
    }
    guards
}

/// Writes the guards as they would be, reads that again and judges it: what it does not
/// confirm is an error.
fn write(
    args: &RemedyArgs,
    path: &Path,
    guards: &[PlannedGuard<'_>],
    basis: &ReportBasis<'_>,
    diagnostics: &mut Diagnostics,
) -> io::Result<()> {
    let name = path.display().to_string();
    let facts = &basis.survey.file_facts;
    if facts.iter().any(|file| Some(file) != facts.first()) {
        let says = "the files name different tapes, and one file can name only one";
        let at = Excerpt::whole(Arc::from(name));
        diagnostics.push(
            Diagnostic::error(codes::CANNOT_WRITE, says.to_owned(), at)
                .help("give them to remedy one by one"),
        );
        return Ok(());
    }
    let mut text = Vec::new();
    report::altered_survey(&mut text, guards, basis)?;
    for unconfirmed in unconfirmed(&text, guards, basis) {
        let at = Excerpt::whole(Arc::from(name.clone()));
        let says =
            format!("{unconfirmed} does not come out of the written survey as it was planned");
        diagnostics.push(
            Diagnostic::error(codes::NOT_CONFIRMED, says, at).help(
                "tell whoever keeps this program, with the survey; do not rely on this remedy",
            ),
        );
    }
    let same = |read: &&PathBuf| matches!((read.canonicalize(), path.canonicalize()), (Ok(read), Ok(path)) if read == path);
    if args.surveys.iter().any(|read| same(&read)) {
        let at = Excerpt::whole(Arc::from(name.clone()));
        let says = format!("the changed survey would overwrite {name}, which is read here");
        diagnostics.push(
            Diagnostic::error(codes::OUTPUT_IS_INPUT, says, at)
                .help("name another file after --write"),
        );
        return Ok(());
    }
    let replacing = if args.force {
        Replacing::Anything
    } else {
        Replacing::Reports
    };
    let written = Output::to(path, replacing).and_then(|mut output| {
        output.write_all(&text)?;
        output.finish().map_err(OutputError::Io)
    });
    if let Err(error) = written {
        let refusal = no_output(path, &error);
        diagnostics.push(match error {
            OutputError::NotOurs(_) => {
                refusal.help("name another file after --write, or say --force to replace this one")
            }
            OutputError::Io(_) => refusal,
        });
    }
    Ok(())
}

/// Guards whose verdict, or a point that was said to be met, differs when the written
/// survey is judged.
fn unconfirmed(text: &[u8], guards: &[PlannedGuard<'_>], basis: &ReportBasis<'_>) -> Vec<String> {
    let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(InMemory::new("after.csv", text))];
    let mut lost: Vec<String> = guards
        .iter()
        .map(|planned| full_name(&planned.guard))
        .collect();
    let Ok(survey) = Survey::scan(&files) else {
        return lost;
    };
    let read = survey.guards(&mut |guard| {
        let judged = judge::judge(&guard, survey.facts(), basis.rulesets, basis.options);
        let name = full_name(&guard);
        let same = |planned: &&PlannedGuard<'_>| full_name(&planned.guard) == name;
        if guards
            .iter()
            .find(same)
            .is_some_and(|planned| is_confirmed(planned, &judged))
        {
            lost.retain(|other| *other != name);
        }
        ControlFlow::Continue(())
    });
    if read.is_err() {
        return guards
            .iter()
            .map(|planned| full_name(&planned.guard))
            .collect();
    }
    lost
}

fn is_confirmed(planned: &PlannedGuard<'_>, judged: &Judged<'_>) -> bool {
    let way = &planned.plan.way;
    way.verdict == judged.verdict && way.solved.iter().all(|key| remedy::is_met(judged, key))
}

fn full_name(guard: &Guard) -> String {
    format!("{} {} {}", guard.building, guard.unit, guard.name)
        .trim()
        .to_owned()
}

fn exit(guards: &[PlannedGuard<'_>], diagnostics: &Diagnostics) -> Exit {
    let any = |outcome: PlanOutcome| guards.iter().any(|guard| guard.outcome() == outcome);
    if diagnostics.any_error() {
        Exit::BadInput
    } else if any(PlanOutcome::Stands) {
        Exit::FallsShort
    } else if any(PlanOutcome::Undecided) {
        Exit::Undecided
    } else {
        Exit::Met
    }
}
