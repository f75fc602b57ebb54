//! The conversation: questions out, answers in, each on the disk before the next.

use std::collections::BTreeSet;
use std::io;
use std::io::Write;
use std::path::Path;
use std::sync::Arc;

use crate::cli::args::WalkArgs;
use crate::cli::clock;
use crate::cli::codes;
use crate::cli::exit::Exit;
use crate::cli::rules::chosen;
use crate::cli::rules::load;
use crate::cli::rules::nothing_to_judge_by;
use crate::cli::rules::print_diagnostics;
use crate::cli::terminal::Terminal;
use crate::cli::walk::keys::Keys;
use crate::cli::walk::store::Store;
use crate::cli::walk::store::StoreError;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::judge::Options;
use crate::report;
use crate::report::Detail;
use crate::report::Explain;
use crate::report::JudgedGuard;
use crate::report::Manner;
use crate::report::ReportBasis;
use crate::report::WalkBegins;
use crate::report::one_line;
use crate::rules::Guidance;
use crate::rules::Ruleset;
use crate::rules::embedded_ids;
use crate::walk::GuardName;
use crate::walk::Prompt;
use crate::walk::Reply;
use crate::walk::RulesSearch;
use crate::walk::RulesSought;
use crate::walk::Settings;
use crate::walk::Topic;
use crate::walk::Walk;
use crate::walk::rules_of;

pub(in crate::cli) fn run(args: &WalkArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    let (store, text) = match Store::open(&args.survey) {
        Ok(opened) => opened,
        Err(error) => {
            diagnostics.push(refused(&args.survey, &error));
            return print_diagnostics(&diagnostics, terminal, Exit::BadInput);
        }
    };
    let name = args.survey.display().to_string();
    let of_survey = rules_of(&name, &text);
    let mut keys = Keys::of(terminal);
    // a survey that begins, where nobody named the rules: two or three plain questions
    let asked = if args.rules.is_empty() && of_survey.is_empty() && begins(&text) {
        match search(&mut keys, terminal)? {
            Some(found) => found,
            None => return Ok(Exit::Met),
        }
    } else {
        args.rules.clone()
    };
    let guidance = if args.no_guidance {
        Guidance::WhereAsked
    } else {
        Guidance::Beside
    };
    let rulesets = chosen(&asked, &of_survey, guidance, &mut diagnostics);
    if rulesets.is_empty() {
        diagnostics.push(nothing_to_judge_by());
    }
    if diagnostics.any_error() {
        return print_diagnostics(&diagnostics, terminal, Exit::BadInput);
    }
    let settings = Settings {
        today: Some(clock::today()),
        rules: asked,
        ..Settings::default()
    };
    match Walk::new(&name, &text, &rulesets, settings) {
        Ok(walk) => Talk {
            walk,
            name,
            store,
            keys,
            told: BTreeSet::new(),
            width: terminal.columns_of_a_talk(),
        }
        .converse(&rulesets, terminal),
        Err(error) => {
            let error = io::Error::other(error);
            diagnostics.push(refused(&args.survey, &StoreError::Io(error)));
            print_diagnostics(&diagnostics, terminal, Exit::BadInput)
        }
    }
}

/// Whether a survey holds nothing yet.
fn begins(text: &str) -> bool {
    text.lines().filter(|line| !line.trim().is_empty()).count() <= 1
}

/// Which rulesets hold here, by plain questions; `None` where the person breaks off.
fn search(keys: &mut Keys, terminal: &mut Terminal<'_>) -> io::Result<Option<Vec<String>>> {
    let mut diagnostics = Diagnostics::new();
    let all = load(embedded_ids(), &mut diagnostics);
    let mut search = RulesSearch::new(&all);
    loop {
        if let RulesSought::Chosen(ids) = search.sought() {
            return Ok(Some(ids.clone()));
        }
        let ask = search.step();
        let width = terminal.columns_of_a_talk();
        let mut out = terminal.out();
        writeln!(out, "{}", report::asked(&ask, Manner::InFull, width))?;
        out.flush()?;
        drop(out);
        let Some(line) = keys.line(terminal)? else {
            return Ok(None);
        };
        let told = search.answer(&line);
        let mut out = terminal.out();
        for said in &told {
            writeln!(out, "{}", report::answered(said, &ask, width))?;
        }
        writeln!(out)?;
        out.flush()?;
    }
}

/// Why a file cannot be walked through.
fn refused(path: &Path, error: &StoreError) -> Diagnostic {
    let name = path.display().to_string();
    let (code, help) = match error {
        StoreError::Busy => (
            codes::WALK_IN_USE,
            "or name another file for this walk; two surveys can be checked together",
        ),
        StoreError::NotText => (codes::CANNOT_READ, "and begin again"),
        StoreError::NoFile | StoreError::TooLong => (
            codes::CANNOT_READ,
            "name a survey of its own, walk.csv for one: it is begun where there is none",
        ),
        StoreError::Workbook => (
            codes::CANNOT_READ,
            "check reads it as it is; to walk on, save the sheet as \"CSV UTF-8\" and name that file, or \
name a new one for this walk: check takes both together",
        ),
        StoreError::Changed(_)
        | StoreError::Folder
        | StoreError::Gone
        | StoreError::Io(_)
        | StoreError::ReadOnly => (
            codes::CANNOT_WRITE,
            "name a survey in a folder that you may write to",
        ),
    };
    let at = Excerpt::whole(Arc::from(name.as_str()));
    Diagnostic::error(code, format!("{name}: {error}"), at).help(help)
}

struct Talk<'r> {
    walk: Walk<'r>,
    /// The file as it was typed.
    name: String,
    store: Store,
    keys: Keys,
    /// What was put in full already.
    told: BTreeSet<String>,
    width: usize,
}

/// Whether the conversation goes on.
enum Goes {
    On,
    Over(Exit),
}

impl Talk<'_> {
    fn converse(mut self, rulesets: &[Ruleset], terminal: &mut Terminal<'_>) -> io::Result<Exit> {
        let begins = WalkBegins {
            survey: &self.name,
            railings: self.walk.guard_count(),
            today: &clock::today(),
            unit: self.walk.unit_in_force(),
            at: self.walk.here().map(GuardName::says),
        };
        let words = report::opening_words(rulesets, &begins, self.width);
        let mut out = terminal.out();
        writeln!(out, "{words}")?;
        if self.walk.errors() > 0 {
            let text = "Something in it cannot be read; guardrule check says what.";
            writeln!(out, "{}", self.wrapped(text))?;
        }
        writeln!(out)?;
        out.flush()?;
        drop(out);
        loop {
            // a window may have been drawn narrower meanwhile
            terminal.measure_anew();
            self.width = terminal.columns_of_a_talk();
            let ask = self.walk.step();
            if ask.topic == Topic::Finished {
                return self.say_goodbye(rulesets, terminal);
            }
            self.put_question(&ask, terminal)?;
            let Some(line) = self.keys.line(terminal)? else {
                return self.say_goodbye(rulesets, terminal);
            };
            if let Goes::Over(exit) = self.take_answer(&ask, &line, terminal)? {
                return Ok(exit);
            }
        }
    }

    fn name(&self) -> String {
        one_line(&self.name).into_owned()
    }

    fn wrapped(&self, text: &str) -> String {
        report::wrapped(text, self.width)
    }

    fn put_question(&mut self, ask: &Prompt, terminal: &mut Terminal<'_>) -> io::Result<()> {
        let subject = match &ask.topic {
            Topic::Name => format!("name {}", self.walk.guard_count().min(1)),
            topic @ (Topic::Fact(_) | Topic::Finished | Topic::Guard(_) | Topic::Rules(_)) => {
                topic.to_string()
            }
            // about one answer each: never the same twice
            topic @ Topic::Answer(_) => format!("{topic} {}", self.told.len()),
        };
        let manner = if self.told.insert(subject) {
            Manner::InFull
        } else {
            Manner::Short
        };
        let mut out = terminal.out();
        writeln!(out, "{}", report::asked(ask, manner, self.width))?;
        out.flush()
    }

    /// Takes an answer and saves what it changed.
    fn take_answer(
        &mut self,
        ask: &Prompt,
        line: &str,
        terminal: &mut Terminal<'_>,
    ) -> io::Result<Goes> {
        let before = self.walk.clone();
        let mut told = self.walk.answer(line);
        loop {
            if self.walk.text() == before.text() || self.store.holds(self.walk.text()) {
                break;
            }
            match self.store.save(self.walk.text()) {
                Ok(()) => break,
                // all that was in it is known here: the next round writes it whole
                Err(StoreError::Gone) => {
                    let text = "The file was gone; it is written anew, with all that was in it.";
                    writeln!(terminal.out(), "{}", self.wrapped(text))?;
                }
                Err(StoreError::Changed(text)) => {
                    // the other's changes first, then the answer once more
                    let unsaved = std::mem::replace(&mut self.walk, before.clone());
                    if let Err(error) = self.walk.take_in(&text) {
                        return self.say_unsaved(&unsaved, &error.to_string(), terminal);
                    }
                    let mut out = terminal.out();
                    let text = "Another program has changed the file meanwhile; its changes are kept, and your answer is added to them.";
                    writeln!(out, "{}", report::wrapped(text, self.width))?;
                    drop(out);
                    told = self.walk.answer(line);
                }
                Err(error) => {
                    let unsaved = self.walk.clone();
                    return self.say_unsaved(&unsaved, &error.to_string(), terminal);
                }
            }
        }
        self.tell(ask, &told, terminal)?;
        Ok(Goes::On)
    }

    fn tell(
        &self,
        ask: &Prompt,
        told: &[Reply<'_>],
        terminal: &mut Terminal<'_>,
    ) -> io::Result<()> {
        let mut out = terminal.out();
        for said in told {
            writeln!(out, "{}", report::answered(said, ask, self.width))?;
        }
        writeln!(out)?;
        out.flush()
    }

    /// What to say where an answer cannot be saved: nothing is lost.
    fn say_unsaved(
        &self,
        walk: &Walk<'_>,
        why: &str,
        terminal: &mut Terminal<'_>,
    ) -> io::Result<Goes> {
        let name = self.name();
        let kept = match self.store.keep_elsewhere(walk.text()) {
            Ok(path) => format!(
                "The whole survey with your last answer is kept in {}.",
                one_line(&path.display().to_string())
            ),
            Err(_) => {
                let last = walk.text().lines().last().unwrap_or_default();
                format!("Write down the last answer yourself: {}", one_line(last))
            }
        };
        let text = format!(
            "error: {name} could not be saved: {}. What stood in it before your last answer is untouched. {kept}",
            one_line(why)
        );
        terminal.out().flush()?;
        writeln!(terminal.err(), "{}", report::wrapped(&text, self.width))?;
        Ok(Goes::Over(Exit::BadInput))
    }

    /// The first screen of the report, and what to do next.
    fn say_goodbye(&self, rulesets: &[Ruleset], terminal: &mut Terminal<'_>) -> io::Result<Exit> {
        let name = self.name();
        let mut out = terminal.out();
        if self.walk.guard_count() == 0 {
            writeln!(out, "{}", self.wrapped("No railing was written down."))?;
            out.flush()?;
            return Ok(Exit::Met);
        }
        let basis = ReportBasis {
            survey: self.walk.facts(),
            rulesets,
            options: Options::default(),
            today: clock::today(),
            tool_version: env!("CARGO_PKG_VERSION"),
            explain: Explain::No,
            detail: Detail::Short,
            width: self.width,
        };
        let guards: Vec<JudgedGuard<'_>> = self
            .walk
            .all_judged()
            .into_iter()
            .map(|(guard, judged)| JudgedGuard { guard, judged })
            .collect();
        writeln!(out)?;
        report::first_screen(&mut out, &basis, &guards)?;
        let text = format!(
            "All of it is saved in {name}. The whole report: guardrule check {name}. A list of work: guardrule check {name} --format actions. Go on: guardrule walk {name}."
        );
        writeln!(out, "\n{}", self.wrapped(&text))?;
        out.flush()?;
        Ok(Exit::Met)
    }
}
