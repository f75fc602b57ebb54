//! How much of the rulesets was read, as `rulesets/README.md` tells it: counted from the
//! files, so that the page cannot fall behind them.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::fs;
use std::path::Path;

use guardrule::rules::Status;
use guardrule::rules::embedded_ids;

use super::embedded::shipped;
use super::memory::BEFORE_2015;
use super::memory::FROM_MEMORY;

const BEGIN: &str = "<!-- counted from the files: begin -->\n";
const END: &str = "<!-- counted from the files: end -->\n";

/// Rulesets, then rules read in the text, quoted, from memory, by practice.
#[derive(Clone, Copy, Default)]
struct Counted {
    rulesets: usize,
    by_status: [usize; 4],
}

impl Counted {
    fn rules(self) -> usize {
        self.by_status.iter().sum()
    }

    fn add(&mut self, other: Counted) {
        self.rulesets += other.rulesets;
        for (sum, more) in self.by_status.iter_mut().zip(other.by_status) {
            *sum += more;
        }
    }

    fn row(self, name: &str) -> String {
        let [published, quoted, memory, practice] = self.by_status;
        format!(
            "| {name} | {} | {} | {published} | {quoted} | {memory} | {practice} |\n",
            self.rulesets,
            self.rules()
        )
    }
}

fn counted(id: &str) -> Counted {
    let mut counted = Counted {
        rulesets: 1,
        ..Counted::default()
    };
    for rule in shipped(id).rules {
        let at = match rule.status {
            Status::Published => 0,
            Status::Quoted => 1,
            Status::Memory => 2,
            Status::Practice => 3,
        };
        counted.by_status[at] += 1;
    }
    counted
}

/// The part of the page that is counted.
fn block() -> String {
    let mut by_country: BTreeMap<String, Counted> = BTreeMap::new();
    let mut all = Counted::default();
    for id in embedded_ids() {
        let country = shipped(id).country.expect("a country, or any");
        let counted = counted(id);
        by_country.entry(country).or_default().add(counted);
        all.add(counted);
    }
    let mut text = String::from(
        "| country | rulesets | rules | read in the text | quoted by others | from memory | practice |\n\
         |---|---|---|---|---|---|---|\n",
    );
    for (country, counted) in &by_country {
        text.push_str(&counted.row(country));
    }
    text.push_str(&all.row("all"));
    text.push_str("\nFrom memory, and why:\n\n");
    for (id, why) in BEFORE_2015 {
        let memory = counted(id).by_status[2];
        writeln!(text, "- `{id}`: {memory} rules, {why}.").expect("a text takes all");
    }
    let mut named: Vec<(&str, &str, Vec<&str>)> = Vec::new();
    for (id, rule, why) in FROM_MEMORY {
        match named.last_mut() {
            Some((last, reason, rules)) if last == id && reason == why => rules.push(rule),
            Some(_) | None => named.push((id, why, vec![rule])),
        }
    }
    for (id, why, rules) in named {
        let rules: Vec<String> = rules.iter().map(|rule| format!("`{rule}`")).collect();
        writeln!(text, "- `{id}`, {}: {why}.", rules.join(", ")).expect("a text takes all");
    }
    text
}

#[test]
fn the_page_tells_how_much_of_the_rulesets_was_read() {
    let page = Path::new(env!("CARGO_MANIFEST_DIR")).join("rulesets/README.md");
    let page = fs::read_to_string(page).expect("the page is there");
    let (_, rest) = page.split_once(BEGIN).expect("the mark that begins it");
    let (told, _) = rest.split_once(END).expect("the mark that ends it");
    let block = block();
    assert!(
        told == block,
        "rulesets/README.md is behind the files; between its marks it should read:\n{block}"
    );
}
