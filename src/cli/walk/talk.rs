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
use crate::cli::rules::nothing_to_judge_by;
use crate::cli::rules::print_diagnostics;
use crate::cli::terminal::Terminal;
use crate::cli::walk::keys::Keys;
use crate::cli::walk::store::Store;
use crate::cli::walk::store::StoreError;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::report;
use crate::report::Manner;
use crate::report::one_line;
use crate::rules::Guidance;
use crate::rules::Ruleset;
use crate::walk::Prompt;
use crate::walk::Reply;
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
    let guidance = if args.no_guidance {
        Guidance::WhereAsked
    } else {
        Guidance::Beside
    };
    let rulesets = chosen(&args.rules, &of_survey, guidance, &mut diagnostics);
    if rulesets.is_empty() {
        diagnostics.push(nothing_to_judge_by());
    }
    if diagnostics.any_error() {
        return print_diagnostics(&diagnostics, terminal, Exit::BadInput);
    }
    let settings = Settings {
        today: Some(clock::today()),
        rules: args.rules.clone(),
        ..Settings::default()
    };
    match Walk::new(&name, &text, &rulesets, settings) {
        Ok(walk) => Talk {
            walk,
            name,
            store,
            keys: Keys::of(terminal),
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

/// Why a file cannot be walked through.
fn refused(path: &Path, error: &StoreError) -> Diagnostic {
    let name = path.display().to_string();
    let (code, help) = match error {
        StoreError::Busy => (
            codes::WALK_IN_USE,
            "or name another file for this walk; two surveys can be checked together",
        ),
        StoreError::NotText => (codes::CANNOT_READ, "and begin again"),
        StoreError::Changed(_) | StoreError::Io(_) | StoreError::ReadOnly => (
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
        let mut out = terminal.out();
        writeln!(out, "{}", report::opening_words(rulesets, self.width))?;
        writeln!(out, "{}\n", self.greeting())?;
        out.flush()?;
        drop(out);
        loop {
            let ask = self.walk.step();
            if ask.topic == Topic::Finished {
                return self.say_goodbye(terminal);
            }
            self.put_question(&ask, terminal)?;
            let Some(line) = self.keys.line(terminal)? else {
                return self.say_goodbye(terminal);
            };
            if let Goes::Over(exit) = self.take_answer(&ask, &line, terminal)? {
                return Ok(exit);
            }
        }
    }

    fn greeting(&self) -> String {
        let name = self.name();
        let mut text = match self.walk.guard_count() {
            0 => format!("Every answer is saved in {name} at once."),
            count => {
                let guards = if count == 1 { "guard" } else { "guards" };
                format!("{name} holds {count} {guards}; every answer is added to it at once.")
            }
        };
        if self.walk.errors() > 0 {
            text.push_str(" Something in it cannot be read; guardrule check says what.");
        }
        text.push_str(" First letters suffice. ? tells more, help lists what can be typed.");
        self.wrapped(&text)
    }

    fn name(&self) -> String {
        one_line(&self.name).into_owned()
    }

    fn wrapped(&self, text: &str) -> String {
        report::wrapped(text, self.width)
    }

    fn put_question(&mut self, ask: &Prompt, terminal: &mut Terminal<'_>) -> io::Result<()> {
        let subject = match &ask.topic {
            Topic::Ball(item, _) => format!("ball {item}"),
            Topic::Fact(item) | Topic::Item(item) => item.name().to_owned(),
            Topic::Name => format!("name {}", self.walk.guard_count().min(1)),
            Topic::Finished
            | Topic::Reason(_)
            | Topic::Slip(_)
            | Topic::Unit(_)
            | Topic::Unlikely(_) => String::new(),
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
                Err(StoreError::Changed(Some(text))) => {
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

    fn say_goodbye(&self, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
        let name = self.name();
        let text = if self.walk.guard_count() == 0 {
            "No guard was written down.".to_owned()
        } else {
            format!(
                "Everything is saved in {name}. Go on any time: guardrule walk {name}. The whole report: guardrule check {name}."
            )
        };
        let mut out = terminal.out();
        writeln!(out, "{}", self.wrapped(&text))?;
        out.flush()?;
        Ok(Exit::Met)
    }
}
