//! `guardrule compare BEFORE AFTER`: two rounds of one survey.

use std::fs::File;
use std::io;
use std::io::Read;
use std::io::Write;
use std::ops::ControlFlow;
use std::path::Path;
use std::path::PathBuf;

use crate::cli::args::CompareArgs;
use crate::cli::args::CompareFormat;
use crate::cli::args::DecisionArg;
use crate::cli::check::absorb_what_was_read;
use crate::cli::check::no_output;
use crate::cli::check::system_refusal;
use crate::cli::clock;
use crate::cli::codes;
use crate::cli::exit::Exit;
use crate::cli::files;
use crate::cli::output::Output;
use crate::cli::output::OutputError;
use crate::cli::output::Replacing;
use crate::cli::rules::chosen;
use crate::cli::rules::nothing_to_judge_by;
use crate::cli::rules::print_diagnostics;
use crate::cli::survey_rules;
use crate::cli::terminal::Terminal;
use crate::cli::terminal::as_it_is;
use crate::cli::terminal::without_styles;
use crate::compare::GuardOfRound;
use crate::compare::compared;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::judge;
use crate::judge::Authority;
use crate::judge::Decision;
use crate::judge::Options;
use crate::report;
use crate::report::ComparisonForm;
use crate::report::Detail;
use crate::report::Explain;
use crate::report::FilledList;
use crate::report::ReportBasis;
use crate::rules::Guidance;
use crate::rules::Ruleset;
use crate::survey::Guard;
use crate::survey::Survey;
use crate::survey::SurveyFacts;
use crate::survey::SurveyFile;

/// A list of work is not longer: 64 MiB, some hundred thousand rows.
const LONGEST_LIST: u64 = 64 << 20;

/// What is read of one round.
struct RoundRead {
    facts: SurveyFacts,
    guards: Vec<Guard>,
}

pub(super) fn run(args: &CompareArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let Some(before) = round(&args.before, terminal, &mut diagnostics) else {
        return print_diagnostics(&diagnostics, terminal, Exit::BadInput);
    };
    let list = match list_of_work(&args.after) {
        Ok(list) => list,
        Err(diagnostic) => {
            diagnostics.push(*diagnostic);
            return print_diagnostics(&diagnostics, terminal, Exit::BadInput);
        }
    };
    let after = match &list {
        Some(_) => None,
        None => match round(&args.after, terminal, &mut diagnostics) {
            Some(after) => Some(after),
            None => return print_diagnostics(&diagnostics, terminal, Exit::BadInput),
        },
    };
    let rulesets = rulesets(args, &before.facts, after.as_ref(), &mut diagnostics);
    if rulesets.iter().all(|ruleset| ruleset.rules.is_empty()) {
        diagnostics.push(nothing_to_judge_by());
        return print_diagnostics(&diagnostics, terminal, Exit::BadInput);
    }
    let options = Options {
        decision: match args.decision {
            DecisionArg::Guarded => Decision::Guarded,
            DecisionArg::Simple => Decision::Simple,
        },
        ..Options::default()
    };
    let basis = ReportBasis {
        survey: after.as_ref().map_or(&before.facts, |after| &after.facts),
        rulesets: &rulesets,
        options,
        today: clock::today(),
        tool_version: env!("CARGO_PKG_VERSION"),
        explain: Explain::No,
        detail: Detail::Short,
        width: if args.output.is_some() {
            report::WIDTH
        } else {
            terminal.columns()
        },
    };
    let first = judged(before.guards, &before.facts, &rulesets, options);
    let later = match (&list, after.as_ref()) {
        (Some(list), _) => {
            let pairs: Vec<_> = first
                .iter()
                .map(|one| (one.guard.clone(), one.judged.clone()))
                .collect();
            list.after(&pairs, &basis, &mut diagnostics)
        }
        (None, Some(after)) => after.guards.clone(),
        (None, None) => Vec::new(),
    };
    let later = judged(later, basis.survey, &rulesets, options);
    let law = Authority::of(&rulesets) == Authority::Law;
    let compared = compared(&first, &later, law);
    let form = match args.format {
        CompareFormat::Csv => ComparisonForm::Csv,
        CompareFormat::Html => ComparisonForm::Html,
        CompareFormat::Json => ComparisonForm::Json,
        CompareFormat::Text => ComparisonForm::Text,
    };
    let write =
        |out: &mut dyn Write| report::comparison(form, &basis, &before.facts, &compared, out);
    let is_text = form == ComparisonForm::Text;
    let path = args.output.as_deref();
    match path.filter(|path| *path != Path::new("-")) {
        None if is_text => {
            let mut out = terminal.out();
            write(&mut out)?;
            out.flush()?;
        }
        None => {
            let mut out = terminal.plain_out();
            write(&mut out)?;
            out.flush()?;
        }
        Some(path) => {
            if let Err(error) = to_file(path, args, is_text, &write) {
                diagnostics.push(no_output(path, &error));
            }
        }
    }
    let exit = if diagnostics.any_error() {
        Exit::BadInput
    } else if compared.falls_short() {
        Exit::FallsShort
    } else if compared.is_open() {
        Exit::Undecided
    } else {
        Exit::Met
    };
    terminal.diagnostics(&diagnostics)?;
    Ok(exit)
}

/// Writes the file whole or not at all, over nothing that is read here.
fn to_file(
    path: &Path,
    args: &CompareArgs,
    is_text: bool,
    write: &dyn Fn(&mut dyn Write) -> io::Result<()>,
) -> Result<(), OutputError> {
    let real = path.canonicalize().ok();
    let read = [&args.before, &args.after];
    if real.is_some() && read.iter().any(|one| one.canonicalize().ok() == real) {
        return Err(io::Error::other("this file is read here").into());
    }
    let replacing = if args.force {
        Replacing::Anything
    } else {
        Replacing::Reports
    };
    let mut file = Output::to(path, replacing)?;
    if is_text {
        write(&mut without_styles(&mut file))?;
    } else {
        let mut out = as_it_is(&mut file);
        write(&mut out)?;
        out.flush()?;
    }
    Ok(file.finish()?)
}

/// The list of work, where that is what the file is.
fn list_of_work(path: &PathBuf) -> Result<Option<FilledList>, Box<Diagnostic>> {
    let name = path.display().to_string();
    let refused = |error: &io::Error| Box::new(system_refusal(codes::CANNOT_READ, &name, error));
    if path == Path::new("-") {
        return Ok(None);
    }
    let mut file = File::open(path).map_err(|error| refused(&error))?;
    let mut beginning = Vec::new();
    (&mut file)
        .take(4096)
        .read_to_end(&mut beginning)
        .map_err(|error| refused(&error))?;
    if !report::is_an_action_list(&String::from_utf8_lossy(&beginning)) {
        return Ok(None);
    }
    file.take(LONGEST_LIST)
        .read_to_end(&mut beginning)
        .map_err(|error| refused(&error))?;
    FilledList::read(&name, &String::from_utf8_lossy(&beginning)).map(Some)
}

/// One survey, whole; nothing where it cannot be read.
fn round(
    path: &Path,
    terminal: &mut Terminal<'_>,
    diagnostics: &mut Diagnostics,
) -> Option<RoundRead> {
    let name = path.display().to_string();
    let surveys = match files::survey(path, terminal.input()) {
        Ok(surveys) => surveys,
        Err(error) => {
            diagnostics.push(system_refusal(codes::CANNOT_READ, &name, &error));
            return None;
        }
    };
    diagnostics.extend(surveys.diagnostics);
    let files: Vec<Box<dyn SurveyFile>> = surveys.files;
    let survey = match Survey::scan(&files) {
        Ok(survey) => survey,
        Err(error) => {
            let refused = system_refusal(codes::CANNOT_READ, &error.file, &error.error);
            diagnostics.push(refused);
            return None;
        }
    };
    let mut guards = Vec::new();
    let read = survey.guards(&mut |guard| {
        guards.push(guard);
        ControlFlow::Continue(())
    });
    absorb_what_was_read(read, diagnostics);
    Some(RoundRead {
        facts: survey.facts().clone(),
        guards,
    })
}

/// `--rules`, else those that the second round names, else the first.
fn rulesets(
    args: &CompareArgs,
    before: &SurveyFacts,
    after: Option<&RoundRead>,
    diagnostics: &mut Diagnostics,
) -> Vec<Ruleset> {
    let guidance = if args.no_guidance {
        Guidance::WhereAsked
    } else {
        Guidance::Beside
    };
    let of_after = after.map(|after| &after.facts.rules);
    let named = of_after.filter(|rules| !rules.is_empty());
    let mut beside = Vec::new();
    for rules in named.unwrap_or(&before.rules) {
        let surveys = [args.before.clone(), args.after.clone()];
        match survey_rules::beside_the_survey(rules, &surveys) {
            Ok(rules) => beside.push(rules),
            Err(diagnostic) => diagnostics.push(*diagnostic),
        }
    }
    chosen(&args.rules, &beside, guidance, diagnostics)
}

fn judged<'r>(
    guards: Vec<Guard>,
    facts: &SurveyFacts,
    rulesets: &'r [Ruleset],
    options: Options,
) -> Vec<GuardOfRound<'r>> {
    let each = guards.into_iter().map(|guard| {
        let judged = judge::judge(&guard, facts, rulesets, options);
        GuardOfRound { guard, judged }
    });
    each.collect()
}
