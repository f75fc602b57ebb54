//! `guardrule check SURVEY…`: the main job.

use std::io;
use std::io::Write;
use std::num::NonZero;
use std::path::Path;
use std::path::PathBuf;
use std::sync::Arc;
use std::thread;

use crate::cli::args::CheckArgs;
use crate::cli::args::DecisionArg;
use crate::cli::args::Format;
use crate::cli::args::MemoryArg;
use crate::cli::args::PageForArg;
use crate::cli::clock;
use crate::cli::codes;
use crate::cli::exit::Exit;
use crate::cli::files;
use crate::cli::judging::write_guards;
use crate::cli::output::Output;
use crate::cli::output::OutputError;
use crate::cli::output::Replacing;
#[cfg(feature = "photos")]
use crate::cli::photos::PhotosBeside;
use crate::cli::rules::chosen;
use crate::cli::rules::load;
use crate::cli::rules::nothing_to_judge_by;
use crate::cli::survey_rules;
use crate::cli::terminal::Terminal;
use crate::cli::terminal::as_it_is;
use crate::cli::terminal::without_styles;
use crate::input::Code;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::input::folded;
use crate::judge::AskedWhenBuilt;
use crate::judge::Decision;
use crate::judge::MemoryRules;
use crate::judge::Options;
use crate::report;
use crate::report::Detail;
use crate::report::Explain;
use crate::report::HtmlFolder;
use crate::report::HtmlReport;
use crate::report::PageFor;
use crate::report::PageSink;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::ReportForm;
use crate::report::Summary;
use crate::rules;
use crate::rules::Asked;
use crate::rules::Guidance;
use crate::rules::Ruleset;
use crate::survey::FileError;
use crate::survey::Guard;
use crate::survey::Survey;
use crate::survey::SurveyFile;

pub(super) fn run(args: &CheckArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let files = open(&args.surveys, terminal, &mut diagnostics);
    if files.is_empty() {
        return print_diagnostics(&diagnostics, terminal);
    }
    let survey = match Survey::scan(&files) {
        Ok(survey) => survey,
        Err(error) => {
            diagnostics.push(system_refusal(
                codes::CANNOT_READ,
                &error.file,
                &error.error,
            ));
            return print_diagnostics(&diagnostics, terminal);
        }
    };
    match survey.two_rounds() {
        Ok(None) => {}
        Ok(Some(rounds)) => {
            diagnostics.absorb(rounds);
            return print_diagnostics(&diagnostics, terminal);
        }
        Err(error) => {
            diagnostics.push(system_refusal(
                codes::CANNOT_READ,
                &error.file,
                &error.error,
            ));
            return print_diagnostics(&diagnostics, terminal);
        }
    }
    let guidance = if args.no_guidance {
        Guidance::WhereAsked
    } else {
        Guidance::Beside
    };
    let mut rulesets = rulesets(
        &args.rules,
        guidance,
        (&survey, &args.surveys),
        &mut diagnostics,
    );
    if args.when_built {
        add_editions(&mut rulesets, &mut diagnostics);
    }
    if rulesets.iter().all(|ruleset| ruleset.rules.is_empty()) {
        diagnostics.push(nothing_to_judge_by());
        return print_diagnostics(&diagnostics, terminal);
    }
    if let Some(diagnostic) = output_is_input(args).or_else(|| as_without_html(args)) {
        diagnostics.push(diagnostic);
        return print_diagnostics(&diagnostics, terminal);
    }
    let replacing = if args.force {
        Replacing::Anything
    } else {
        Replacing::Reports
    };
    let path = args
        .output
        .as_deref()
        .filter(|path| *path != Path::new("-"));
    if let Some(folder) = path.filter(|path| args.format == Format::Html && is_a_folder(path)) {
        return into_folder(args, &survey, &rulesets, folder, diagnostics, terminal);
    }
    let output = match path.map(|path| Output::to(path, replacing)).transpose() {
        Ok(output) => output,
        Err(error) => {
            diagnostics.push(no_output(path.unwrap_or(Path::new("-")), &error));
            return print_diagnostics(&diagnostics, terminal);
        }
    };
    judge(args, &survey, &rulesets, output, diagnostics, terminal)
}

/// Opens what can be opened; the rest is judged all the same.
pub(super) fn open(
    paths: &[PathBuf],
    terminal: &mut Terminal<'_>,
    diagnostics: &mut Diagnostics,
) -> Vec<Box<dyn SurveyFile>> {
    let mut files = Vec::new();
    for path in paths {
        match files::survey(path, terminal.input()) {
            Ok(surveys) => {
                files.extend(surveys.files);
                diagnostics.extend(surveys.diagnostics);
            }
            Err(error) => {
                let name = path.display().to_string();
                diagnostics.push(system_refusal(codes::CANNOT_READ, &name, &error));
            }
        }
    }
    files
}

/// `--rules`, else the survey's own, and the child guidance beside either.
pub(super) fn rulesets(
    rules: &[String],
    guidance: Guidance,
    (survey, surveys): (&Survey<'_>, &[PathBuf]),
    diagnostics: &mut Diagnostics,
) -> Vec<Ruleset> {
    let mut named = Vec::new();
    if rules.is_empty() {
        for rules in &survey.facts().rules {
            match survey_rules::beside_the_survey(rules, surveys) {
                Ok(rules) => named.push(rules),
                Err(diagnostic) => diagnostics.push(*diagnostic),
            }
        }
    }
    chosen(rules, &named, guidance, diagnostics)
}

/// The other editions of the chosen rulesets of law, for guards built in their time.
fn add_editions(rulesets: &mut Vec<Ruleset>, diagnostics: &mut Diagnostics) {
    let mut names: Vec<&str> = Vec::new();
    for ruleset in rulesets.iter().filter(|ruleset| !ruleset.advisory) {
        for edition in rules::other_editions(&ruleset.id) {
            if rulesets.iter().all(|other| other.id != edition) && !names.contains(&edition) {
                names.push(edition);
            }
        }
    }
    let editions = load(names, diagnostics).into_iter();
    rulesets.extend(editions.map(|edition| Ruleset {
        asked: Asked::OfItsTime,
        ..edition
    }));
}

fn judge(
    args: &CheckArgs,
    survey: &Survey<'_>,
    rulesets: &[Ruleset],
    mut output: Option<Output>,
    mut diagnostics: Diagnostics,
    terminal: &mut Terminal<'_>,
) -> io::Result<Exit> {
    let width = if output.is_some() {
        report::WIDTH
    } else {
        terminal.columns()
    };
    let basis = basis(args, survey, rulesets, width);
    let form = match args.format {
        Format::Actions if output.is_none() && terminal.is_a_screen() => ReportForm::ActionsTable,
        Format::Actions => ReportForm::Actions,
        Format::Text => ReportForm::Text,
        Format::Html => ReportForm::Html {
            guards: survey.guard_count(),
            page_for: page_for(args),
        },
        Format::Json => ReportForm::Json,
        Format::Csv => ReportForm::Csv,
        Format::Summary => ReportForm::Summary,
    };
    // only text is written with styles; to look for them in other forms takes long
    let is_text = matches!(form, ReportForm::Text | ReportForm::ActionsTable);
    let written = {
        let (mut painted, mut plain, mut in_file);
        let out: &mut dyn Write = match (&mut output, is_text) {
            (Some(file), true) => {
                in_file = without_styles(file);
                &mut in_file
            }
            (Some(file), false) => {
                in_file = as_it_is(file);
                &mut in_file
            }
            (None, true) => {
                painted = terminal.out();
                &mut painted
            }
            (None, false) => {
                plain = terminal.plain_out();
                &mut plain
            }
        };
        write_report(args, survey, &basis, form, out, &mut diagnostics)
            .and_then(|summary| out.flush().map(|()| summary))
    };
    let summary = match (written, &args.output) {
        (Ok(summary), _) => summary,
        (Err(error), Some(path)) if output.is_some() => {
            diagnostics.push(no_output(path, &OutputError::Io(error)));
            return print_diagnostics(&diagnostics, terminal);
        }
        (Err(error), _) => {
            let message = format!("the report cannot be written to standard output: {error}");
            return Err(io::Error::other(message));
        }
    };
    if let Some(file) = output
        && let Err(error) = file.finish()
    {
        let path = args.output.as_deref().unwrap_or(Path::new("-"));
        diagnostics.push(no_output(path, &OutputError::Io(error)));
    }
    terminal.diagnostics(&diagnostics)?;
    Ok(exit(&summary, &diagnostics))
}

/// What a report's head needs.
fn basis<'a>(
    args: &CheckArgs,
    survey: &'a Survey<'_>,
    rulesets: &'a [Ruleset],
    width: usize,
) -> ReportBasis<'a> {
    let options = Options {
        decision: match args.decision {
            DecisionArg::Guarded => Decision::Guarded,
            DecisionArg::Simple => Decision::Simple,
        },
        memory: match args.memory {
            MemoryArg::Warns => MemoryRules::Warn,
            MemoryArg::Decides => MemoryRules::Decide,
        },
        when_built: if args.when_built {
            AskedWhenBuilt::Asked
        } else {
            AskedWhenBuilt::NotAsked
        },
    };
    ReportBasis {
        survey: survey.facts(),
        rulesets,
        options,
        today: clock::today(),
        tool_version: env!("CARGO_PKG_VERSION"),
        explain: if args.explain {
            Explain::Yes
        } else {
            Explain::No
        },
        detail: if args.full {
            Detail::Full
        } else {
            Detail::Short
        },
        width,
    }
}

/// Reads, judges and writes guard after guard.
fn write_report(
    args: &CheckArgs,
    survey: &Survey<'_>,
    basis: &ReportBasis<'_>,
    form: ReportForm,
    out: &mut dyn Write,
    diagnostics: &mut Diagnostics,
) -> io::Result<Summary> {
    let mut report = match form {
        ReportForm::Html { guards, page_for } => {
            let page = HtmlReport::new(out, basis.clone(), guards, page_for);
            #[cfg(feature = "photos")]
            let page = page.with_photos(Box::new(PhotosBeside::new(&args.surveys)));
            Box::new(page)
        }
        ReportForm::Actions
        | ReportForm::ActionsTable
        | ReportForm::Csv
        | ReportForm::Json
        | ReportForm::Summary
        | ReportForm::Text => report::report(form, basis.clone(), out)?,
    };
    let names = [&args.building, &args.unit, &args.guard];
    let is_wanted = |guard: &Guard| is_chosen(names, guard);
    let written = write_guards(survey, basis, &is_wanted, &mut *report, threads(args))?;
    absorb_what_was_read(written.read, diagnostics);
    if written.guards == 0 && survey.guard_count() > 0 {
        diagnostics.push(no_such_guard(names));
    }
    report.finish(diagnostics)
}

/// As many as were asked for, else one for each processor.
fn threads(args: &CheckArgs) -> NonZero<usize> {
    let processors = || thread::available_parallelism().unwrap_or(NonZero::<usize>::MIN);
    args.threads.unwrap_or_else(processors)
}

/// What the second reading found wrong with the files, or that one of them is gone.
pub(super) fn absorb_what_was_read(
    read: Result<Diagnostics, FileError>,
    diagnostics: &mut Diagnostics,
) {
    match read {
        Ok(found) => diagnostics.absorb(found),
        Err(error) => {
            diagnostics.push(system_refusal(
                codes::CANNOT_READ,
                &error.file,
                &error.error,
            ));
        }
    }
}

/// For whom the page is.
fn page_for(args: &CheckArgs) -> PageFor {
    match args.page_for {
        None => PageFor::Anybody,
        Some(PageForArg::Request) => PageFor::Landlord,
        Some(PageForArg::Work) => PageFor::Contractor,
        Some(PageForArg::Record) => PageFor::Record,
        Some(PageForArg::LifeSize) => PageFor::LifeSize,
    }
}

/// `--as` chooses what comes first in a page, and there is none in other forms.
fn as_without_html(args: &CheckArgs) -> Option<Diagnostic> {
    let wrong = args.page_for.is_some() && args.format != Format::Html;
    wrong.then(|| {
        let at = Excerpt::whole(Arc::from("command line"));
        Diagnostic::error(
            codes::AS_WITHOUT_HTML,
            "--as goes with --format html alone",
            at,
        )
        .help("say --format html as well")
    })
}

/// A folder takes a page after another, each whole or not at all.
struct IntoFolder<'f> {
    folder: &'f Path,
    replacing: Replacing,
}

impl PageSink for IntoFolder<'_> {
    fn page(
        &mut self,
        name: &str,
        write: &mut dyn FnMut(&mut dyn Write) -> io::Result<()>,
    ) -> io::Result<()> {
        let path = self.folder.join(name);
        let to_io = |error: OutputError| match error {
            OutputError::Io(error) => error,
            other @ OutputError::NotOurs(_) => io::Error::other(other.to_string()),
        };
        let mut file = Output::to(&path, self.replacing).map_err(to_io)?;
        let mut buffered = io::BufWriter::new(&mut file);
        write(&mut buffered)?;
        buffered.flush()?;
        drop(buffered);
        file.finish()
    }
}

/// A folder that is there, or a name that says that it is to be one.
fn is_a_folder(path: &Path) -> bool {
    path.is_dir() || path.to_string_lossy().ends_with(std::path::is_separator)
}

/// A page for each unit, and one with the lists.
fn into_folder(
    args: &CheckArgs,
    survey: &Survey<'_>,
    rulesets: &[Ruleset],
    folder: &Path,
    mut diagnostics: Diagnostics,
    terminal: &mut Terminal<'_>,
) -> io::Result<Exit> {
    if let Err(error) = std::fs::create_dir_all(folder) {
        diagnostics.push(no_output(folder, &OutputError::Io(error)));
        return print_diagnostics(&diagnostics, terminal);
    }
    let basis = basis(args, survey, rulesets, report::WIDTH);
    let sink = IntoFolder {
        folder,
        replacing: if args.force {
            Replacing::Anything
        } else {
            Replacing::Reports
        },
    };
    let pages = HtmlFolder::new(sink, basis.clone());
    #[cfg(feature = "photos")]
    let pages = pages.with_photos(Box::new(PhotosBeside::new(&args.surveys)));
    let mut pages: Box<dyn Report> = Box::new(pages);
    let names = [&args.building, &args.unit, &args.guard];
    let is_wanted = |guard: &Guard| is_chosen(names, guard);
    let written = write_guards(survey, &basis, &is_wanted, &mut *pages, threads(args))?;
    absorb_what_was_read(written.read, &mut diagnostics);
    if written.guards == 0 {
        diagnostics.push(no_such_guard(names));
        return print_diagnostics(&diagnostics, terminal);
    }
    match pages.finish(&diagnostics) {
        Ok(summary) => {
            terminal.diagnostics(&diagnostics)?;
            Ok(exit(&summary, &diagnostics))
        }
        Err(error) => {
            diagnostics.push(no_output(folder, &OutputError::Io(error)));
            print_diagnostics(&diagnostics, terminal)
        }
    }
}

/// Whether a guard is of the building, the unit and the name that were asked for.
pub(super) fn is_chosen([building, unit, name]: [&Option<String>; 3], guard: &Guard) -> bool {
    let same = |asked: &Option<String>, name: &str| {
        let asked = asked.as_deref();
        asked.is_none_or(|asked| folded(asked) == folded(name))
    };
    same(building, &guard.building) && same(unit, &guard.unit) && same(name, &guard.name)
}

fn exit(summary: &Summary, diagnostics: &Diagnostics) -> Exit {
    if diagnostics.any_error() {
        Exit::BadInput
    } else if summary.falls_short > 0 {
        Exit::FallsShort
    } else if summary.undecided > 0 || summary.could_not_judge > 0 {
        Exit::Undecided
    } else {
        Exit::Met
    }
}

pub(super) fn print_diagnostics(
    diagnostics: &Diagnostics,
    terminal: &mut Terminal<'_>,
) -> io::Result<Exit> {
    terminal.diagnostics(diagnostics)?;
    Ok(Exit::BadInput)
}

/// `--output` that cannot be written, or must not be.
pub(super) fn no_output(path: &Path, error: &OutputError) -> Diagnostic {
    let name = path.display().to_string();
    match error {
        OutputError::Io(error) => system_refusal(codes::CANNOT_WRITE, &name, error),
        OutputError::NotOurs(_) => {
            let at = Excerpt::whole(Arc::from(name));
            Diagnostic::error(codes::WOULD_OVERWRITE, error.to_string(), at)
                .help("name another file after --output, or say --force to replace this one")
        }
    }
}

/// Something that the system refuses, about a file as a whole.
pub(super) fn system_refusal(code: Code, name: &str, error: &io::Error) -> Diagnostic {
    let missing = error.kind() == io::ErrorKind::NotFound;
    let message = if missing && code == codes::CANNOT_READ {
        format!("there is no file {name}")
    } else if missing {
        format!("there is no folder for {name}")
    } else {
        format!("{name}: {error}")
    };
    let help = if code == codes::CANNOT_READ {
        "check the name, and that you stand in the right folder"
    } else {
        "name a file in a folder that you may write to"
    };
    Diagnostic::error(code, message, Excerpt::whole(Arc::from(name))).help(help)
}

/// A report over its own survey would lose what was measured.
fn output_is_input(args: &CheckArgs) -> Option<Diagnostic> {
    let output = args.output.as_deref()?.canonicalize().ok()?;
    let rules = args.rules.iter().map(Path::new);
    let mut read = args.surveys.iter().map(PathBuf::as_path).chain(rules);
    let same = read.find(|path| path.canonicalize().is_ok_and(|path| path == output))?;
    let name = same.display().to_string();
    let message = format!("the report would overwrite {name}, which is read here");
    let at = Excerpt::whole(Arc::from(name));
    Some(
        Diagnostic::error(codes::OUTPUT_IS_INPUT, message, at)
            .help("name another file after --output"),
    )
}

pub(super) fn no_such_guard(names: [&Option<String>; 3]) -> Diagnostic {
    let asked: Vec<String> = ["building", "unit", "guard"]
        .iter()
        .zip(names)
        .filter_map(|(what, name)| name.as_ref().map(|name| format!("{what} {name}")))
        .collect();
    let at = Excerpt::whole(Arc::from("command line"));
    let message = format!("no guard of the survey fits {}", asked.join(", "));
    Diagnostic::error(codes::NO_SUCH_GUARD, message, at)
        .help("names are those of the columns building, unit and guard; case does not count")
}
