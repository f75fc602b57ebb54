//! `guardrule sheet`: the page to fill in by hand, or a blank survey.

use std::io;
use std::io::Write;
use std::path::Path;

use crate::cli::args::PaperArg;
use crate::cli::args::SheetArgs;
#[cfg(feature = "spreadsheet")]
use crate::cli::blank_book;
use crate::cli::check::no_output;
use crate::cli::codes;
use crate::cli::exit::Exit;
use crate::cli::output::Output;
use crate::cli::output::Replacing;
use crate::cli::rules::load;
use crate::cli::rules::nothing_to_judge_by;
use crate::cli::rules::print_diagnostics;
use crate::cli::terminal::Terminal;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::report;
use crate::report::BlankSurvey;
use crate::report::Paper;
use crate::report::Sheet;
use crate::report::StrengthPages;
use crate::rules::GUIDANCE;
use crate::rules::Ruleset;

pub(super) fn run(args: &SheetArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let names = names(args);
    let rulesets = load(names.iter().map(String::as_str), &mut diagnostics);
    if rulesets.is_empty() {
        diagnostics.push(nothing_to_judge_by());
    }
    let path = args
        .output
        .as_deref()
        .filter(|path| *path != Path::new("-"));
    if let Some(diagnostic) = path.and_then(|path| output_is_input(args, path)) {
        diagnostics.push(diagnostic);
    }
    // a sheet that leaves out a ruleset that was asked for would be taken for whole
    if diagnostics.any_error() {
        return print_diagnostics(&diagnostics, terminal, Exit::BadInput);
    }
    match path {
        None => {
            let mut out = terminal.out();
            write(&mut out, args, &rulesets, &names)?;
            out.flush()?;
        }
        Some(path) => {
            let replacing = if args.force {
                Replacing::Anything
            } else {
                Replacing::Reports
            };
            let written = Output::to(path, replacing).and_then(|mut file| {
                write(&mut file, args, &rulesets, &names)?;
                Ok(file.finish()?)
            });
            if let Err(error) = written {
                diagnostics.push(no_output(path, &error));
            }
        }
    }
    print_diagnostics(&diagnostics, terminal, Exit::Met)
}

/// Those that were named, each once, and the child guidance beside them, as `check` takes them.
fn names(args: &SheetArgs) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for name in &args.rules {
        if !names.contains(name) {
            names.push(name.clone());
        }
    }
    if !args.no_guidance && names.iter().all(|name| name != GUIDANCE) {
        names.push(GUIDANCE.to_owned());
    }
    names
}

fn write(
    out: &mut dyn Write,
    args: &SheetArgs,
    rulesets: &[Ruleset],
    names: &[String],
) -> io::Result<()> {
    let blank = BlankSurvey {
        rulesets,
        names,
        guards: args.guards,
        units: args.units,
    };
    if args.csv {
        return report::blank_survey(out, &blank);
    }
    #[cfg(feature = "spreadsheet")]
    if args.xlsx {
        return blank_book::write(out, &blank);
    }
    let paper = match args.paper {
        None => Paper::AsPrinted,
        Some(PaperArg::A4) => Paper::A4,
        Some(PaperArg::Letter) => Paper::Letter,
    };
    let sheet = Sheet {
        rulesets,
        guards: args.guards,
        paper,
        strength: if args.strength {
            StrengthPages::Yes
        } else {
            StrengthPages::No
        },
    };
    report::sheet(out, &sheet)
}

fn output_is_input(args: &SheetArgs, output: &Path) -> Option<Diagnostic> {
    let output = output.canonicalize().ok()?;
    let mut read = args.rules.iter();
    let same = read.find(|path| {
        Path::new(path)
            .canonicalize()
            .is_ok_and(|path| path == output)
    })?;
    let message = format!("the sheet would overwrite {same}, which is read here");
    let at = Excerpt::whole(same.as_str().into());
    Some(
        Diagnostic::error(codes::OUTPUT_IS_INPUT, message, at)
            .help("name another file after --output"),
    )
}
