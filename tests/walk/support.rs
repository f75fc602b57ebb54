//! People who answer, and reports laid beside each other.

use std::io::Read;
use std::io::Write;
use std::path::Path;
use std::process::Child;
use std::process::Command;
use std::process::Stdio;

use guardrule::items::Item;
use guardrule::rules;
use guardrule::rules::Ruleset;
use guardrule::walk::GuardTopic;
use guardrule::walk::Reply;
use guardrule::walk::Settings;
use guardrule::walk::Topic;
use guardrule::walk::Walk;
use serde_json::Value;

use crate::harness::run;

pub(crate) const PROGRAM: &str = env!("CARGO_BIN_EXE_guardrule");

/// Embedded rulesets by their ids.
pub(crate) fn rulesets(ids: &[&str]) -> Vec<Ruleset> {
    ids.iter()
        .map(|id| rules::load(id, &|_| None).ruleset.expect("embedded"))
        .collect()
}

/// A walk of this text, without a clock.
pub(crate) fn walk<'r>(text: &str, rulesets: &'r [Ruleset]) -> Walk<'r> {
    let settings = Settings {
        today: Some("2026-05-04".to_owned()),
        ..Settings::default()
    };
    Walk::new("s.csv", text, rulesets, settings).expect("a survey")
}

/// Types these lines, and gives back all that was said.
pub(crate) fn typed<'r>(walk: &mut Walk<'r>, lines: &[&str]) -> Vec<Reply<'r>> {
    lines.iter().flat_map(|line| walk.answer(line)).collect()
}

/// Answers whatever is asked, by name, until the guard is done: the questions that were
/// put, and the keys, an Enter for each among them.
pub(crate) fn answered(
    walk: &mut Walk<'_>,
    answer: &dyn Fn(&str) -> &'static str,
) -> (Vec<String>, usize) {
    let (mut questions, mut keys) = (Vec::new(), 0);
    for _ in 0..80 {
        let ask = walk.step();
        if matches!(ask.topic, Topic::Name | Topic::Finished) {
            return (questions, keys);
        }
        let line = answer(&ask.id());
        keys += line.chars().count() + 1;
        questions.push(ask.id());
        walk.answer(line);
    }
    panic!("it never ends: {:?}", walk.step());
}

/// Answers one question after another, each by its name; what was said to the last one.
pub(crate) fn asked<'r>(walk: &mut Walk<'r>, script: &[(&str, &str)]) -> Vec<Reply<'r>> {
    let mut said = Vec::new();
    for (id, line) in script {
        assert_eq!(walk.step().id(), *id, "before {line:?}\n{}", walk.text());
        said = walk.answer(line);
    }
    said
}

/// The item that is asked about.
pub(crate) fn item(topic: &Topic) -> Option<Item> {
    match topic {
        Topic::Guard(GuardTopic::Ball(item, _) | GuardTopic::Item(item)) => Some(*item),
        Topic::Answer(_)
        | Topic::Fact(_)
        | Topic::Finished
        | Topic::Guard(_)
        | Topic::Name
        | Topic::Rules(_) => None,
    }
}

/// What was refused, and what was offered instead.
pub(crate) fn refusals(said: &[Reply<'_>]) -> Vec<String> {
    let refused = said.iter().filter_map(|said| {
        let Reply::Refused(message, help) = said else {
            return None;
        };
        Some(format!("{message}|{}", help.as_deref().unwrap_or("")))
    });
    refused.collect()
}

/// What `check` finds, without where in the file it stands.
pub(crate) fn report(text: &str, args: &[&str]) -> Value {
    let mut all = vec!["check", "@s.csv", "--format", "json"];
    all.extend(args);
    let ran = run(&[("s.csv", text)], &all);
    let mut json = ran.json();
    assert_eq!(json["diagnostics"], Value::Array(Vec::new()), "{text}");
    for guard in json["guards"].as_array_mut().expect("guards") {
        let mut readings: Vec<String> = guard["readings"]
            .as_array()
            .expect("readings")
            .iter()
            .map(|one| format!("{}: {} ({})", one["item"], one["written"], one["note"]))
            .collect();
        readings.sort();
        guard["readings"] = readings.into();
        for finding in guard["findings"].as_array_mut().expect("findings") {
            let finding = finding.as_object_mut().expect("a finding");
            finding.remove("readings");
            finding.remove("also_readings");
        }
    }
    serde_json::json!({"guards": json["guards"], "summary": json["summary"]})
}

/// A walk in a process of its own, with its lines through pipes.
pub(crate) struct Piped {
    pub(crate) child: Child,
}

impl Piped {
    pub(crate) fn start(folder: &Path, args: &[&str]) -> Piped {
        let child = Command::new(PROGRAM)
            .arg("walk")
            .args(args)
            .current_dir(folder)
            .env("TMPDIR", folder)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the program starts");
        Piped { child }
    }

    pub(crate) fn send(&mut self, line: &str) {
        let input = self.child.stdin.as_mut().expect("piped");
        writeln!(input, "{line}").expect("it listens");
        input.flush().expect("it listens");
    }

    /// What it writes until it waits for a line.
    pub(crate) fn until_it_waits(&mut self) -> String {
        let mut text = Vec::new();
        let mut byte = [0];
        let output = self.child.stdout.as_mut().expect("piped");
        while !text.ends_with(b"\n> ") {
            match output.read(&mut byte).expect("readable") {
                0 => break,
                _ => text.extend(byte),
            }
        }
        String::from_utf8(text).expect("UTF-8")
    }

    /// Ends its input; what it says last, on either stream, and its exit status.
    pub(crate) fn finish(mut self) -> (String, String, Option<i32>) {
        drop(self.child.stdin.take());
        let output = self.child.wait_with_output().expect("it ends");
        let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
        (
            text(output.stdout),
            text(output.stderr),
            output.status.code(),
        )
    }
}
