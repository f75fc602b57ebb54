//! Rulesets as text: the list, and one ruleset as a page a person can read.

use std::collections::BTreeMap;
use std::io;
use std::io::Write;

use textwrap::core::display_width;

use crate::report::cautions::DEFERRAL;
use crate::report::one_line;
use crate::report::palette;
use crate::report::wrap::TextPage;
use crate::report::wrap::hanging_in;
use crate::report::wrap::heading_in;
use crate::rules::Asked;
use crate::rules::AsksNothing;
use crate::rules::Check;
use crate::rules::Condition;
use crate::rules::Demand;
use crate::rules::FootholdDemand;
use crate::rules::Ladder;
use crate::rules::Limit;
use crate::rules::OpeningDemand;
use crate::rules::Rule;
use crate::rules::Ruleset;
use crate::rules::Status;
use crate::rules::Subject;
use crate::rules::all_of;

/// How many of a ruleset's rules were read how.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// All rules.
    pub rules: usize,
    /// Read in the text.
    pub published: usize,
    /// Read second-hand: verify.
    pub quoted: usize,
    /// From memory: verify; such a rule only warns.
    pub memory: usize,
    /// Common practice, no source.
    pub practice: usize,
    /// Worked examples.
    pub examples: usize,
}

impl Counts {
    /// The counts of one ruleset.
    #[must_use]
    pub fn of(ruleset: &Ruleset) -> Counts {
        let of = |status| {
            ruleset
                .rules
                .iter()
                .filter(|rule| rule.status == status)
                .count()
        };
        Counts {
            rules: ruleset.rules.len(),
            published: of(Status::Published),
            quoted: of(Status::Quoted),
            memory: of(Status::Memory),
            practice: of(Status::Practice),
            examples: ruleset.rules.iter().map(|rule| rule.examples.len()).sum(),
        }
    }

    /// `14 rules: 9 read in the text, 3 quoted second-hand (verify), …`
    #[must_use]
    pub fn says(self) -> String {
        let parts = [
            (self.published, "read in the text"),
            (self.quoted, "quoted second-hand (verify)"),
            (self.memory, "from memory (verify; these only warn)"),
            (self.practice, "common practice, no source"),
        ];
        let parts: Vec<String> = parts
            .iter()
            .filter(|(count, _)| *count > 0)
            .map(|(count, what)| format!("{count} {what}"))
            .collect();
        let noun = if self.rules == 1 { "rule" } else { "rules" };
        format!("{} {noun}: {}", self.rules, parts.join(", "))
    }
}

/// `law`, `guidance`, or `law then` for another edition that is judged by where a
/// guard was built in its time.
#[must_use]
pub const fn standing(ruleset: &Ruleset) -> &'static str {
    match (ruleset.advisory, ruleset.asked) {
        (true, _) => "guidance",
        (false, Asked::Chosen) => "law",
        (false, Asked::OfItsTime) => "law then",
    }
}

/// The rulesets by country, some lines each, and how many there are of all.
///
/// # Errors
/// Those of `out`.
pub fn list(out: &mut TextPage<'_>, rulesets: &[Ruleset]) -> io::Result<()> {
    for (country, rulesets) in by_country(rulesets) {
        writeln!(out, "{}\n", palette::heading(&one_line(country)))?;
        for ruleset in rulesets {
            let (id, standing) = (one_line(&ruleset.id), standing(ruleset));
            // beside the id where there is room
            let beside = 2 + display_width(&id) + 4 + standing.len() <= out.width();
            let before = if beside { "  " } else { "\n    " };
            writeln!(out, "  {}{before}({standing})", palette::heading(&id))?;
            writeln!(out, "{}", hanging_in(out.width(), "    ", &ruleset.title))?;
            let edition = format!("{}{}", ruleset.edition, years_in_force(ruleset));
            writeln!(
                out,
                "{}",
                hanging_in(out.width(), "    Edition read: ", &edition)
            )?;
            let counts = Counts::of(ruleset);
            writeln!(out, "{}", hanging_in(out.width(), "    ", &counts.says()))?;
            if counts.memory * 2 > counts.rules {
                let read = counts.rules - counts.memory;
                let text = format!("Mostly not read: {read} of {} can decide.", counts.rules);
                writeln!(out, "{}", hanging_in(out.width(), "    ", &text))?;
            }
            writeln!(out)?;
        }
    }
    writeln!(out, "{}", hanging_in(out.width(), "", &total(rulesets)))?;
    let next = "What one asks: guardrule rules show us-dwelling-2018. \
A town's own limits: write a file that extends one, and name it with --rules.";
    writeln!(out, "{}", hanging_in(out.width(), "", next))?;
    writeln!(out, "{}", hanging_in(out.width(), "", DEFERRAL))
}

/// The rulesets by country, a line each.
///
/// # Errors
/// Those of `out`.
pub fn short_list(out: &mut TextPage<'_>, rulesets: &[Ruleset]) -> io::Result<()> {
    for (country, rulesets) in by_country(rulesets) {
        writeln!(out, "{}", palette::heading(&one_line(country)))?;
        let widest = rulesets.iter().map(|ruleset| ruleset.id.len()).max();
        let widest = widest.unwrap_or(0);
        for ruleset in rulesets {
            let title = ruleset
                .title
                .strip_prefix(country)
                .unwrap_or(&ruleset.title);
            let title = one_line(title.trim_start_matches([':', ' ']));
            let id = one_line(&ruleset.id);
            writeln!(
                out,
                "{}",
                cut(&format!("  {id:widest$}  {title}"), out.width())
            )?;
        }
    }
    let next = "Which of them hold where you are: guardrule rules find flat in Florida. How far each \
was read: guardrule rules list --full. What one asks: guardrule rules show ID.";
    writeln!(out, "\n{}", hanging_in(out.width(), "", next))?;
    writeln!(out, "{}", hanging_in(out.width(), "", DEFERRAL))
}

/// A line that is cut where it would be broken.
fn cut(line: &str, width: usize) -> String {
    match line.char_indices().nth(width) {
        None => line.to_owned(),
        Some(_) => {
            let kept: String = line.chars().take(width - 1).collect();
            format!("{}…", kept.trim_end())
        }
    }
}

/// Rulesets that name no country, or hold in any, come last.
fn by_country(rulesets: &[Ruleset]) -> Vec<(&str, Vec<&Ruleset>)> {
    const ANY: &str = "any country";
    let mut groups: BTreeMap<(bool, &str), Vec<&Ruleset>> = BTreeMap::new();
    for ruleset in rulesets {
        let country = ruleset.country.as_deref().unwrap_or(ANY);
        let group = groups.entry((country == ANY, country)).or_default();
        group.push(ruleset);
    }
    groups
        .into_iter()
        .map(|((_, country), group)| (country, group))
        .collect()
}

/// `; current from 2018 until 2021`, where the ruleset says so.
fn years_in_force(ruleset: &Ruleset) -> String {
    ruleset.in_force.map_or_else(String::new, |years| {
        let until = years
            .until
            .map_or_else(String::new, |year| format!(" until {year}"));
        format!("; current from {}{until}", years.from)
    })
}

/// `51 rulesets with 3000 examples. 340 rules: 120 read in the text, …`
fn total(rulesets: &[Ruleset]) -> String {
    let all = rulesets
        .iter()
        .map(Counts::of)
        .fold(Counts::default(), |sum, one| Counts {
            rules: sum.rules + one.rules,
            published: sum.published + one.published,
            quoted: sum.quoted + one.quoted,
            memory: sum.memory + one.memory,
            practice: sum.practice + one.practice,
            examples: sum.examples + one.examples,
        });
    format!(
        "In all {} rulesets with {} worked examples. {}.",
        rulesets.len(),
        all.examples,
        all.says()
    )
}

/// One ruleset as a page: what it asks, where, by which clause and source.
///
/// # Errors
/// Those of `out`.
pub fn show(out: &mut TextPage<'_>, ruleset: &Ruleset) -> io::Result<()> {
    let title = one_line(&ruleset.title);
    writeln!(out, "{}", heading_in(out.width(), "", &title))?;
    writeln!(
        out,
        "{}",
        hanging_in(
            out.width(),
            "",
            &format!("{}, {}.", one_line(&ruleset.id), standing(ruleset))
        )
    )?;
    writeln!(
        out,
        "{}",
        hanging_in(out.width(), "Edition read: ", &one_line(&ruleset.edition))
    )?;
    if let Some(years) = ruleset.in_force {
        let until = years
            .until
            .map_or_else(String::new, |year| format!(" until {year}"));
        let says = format!(
            "from {}{until}; your town may have taken it up later, or changed it",
            years.from
        );
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "Model edition current: ", &says)
        )?;
    }
    writeln!(
        out,
        "{}",
        hanging_in(out.width(), "", &Counts::of(ruleset).says())
    )?;
    if !ruleset.covers.says.is_empty() {
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "Covers: ", &one_line(&ruleset.covers.says))
        )?;
    }
    if !ruleset.taken_up.is_empty() {
        let states = ruleset.taken_up.join(", ");
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "Read in the prints of: ", &one_line(&states))
        )?;
    }
    if !ruleset.regions.is_empty() {
        let regions = ruleset.regions.join(", ");
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "Holds in: ", &one_line(&regions))
        )?;
    }
    if !ruleset.concerns.is_empty() {
        let concerns: Vec<&str> = ruleset.concerns.iter().map(|c| c.name()).collect();
        let says = format!("{}; by it alone no guard meets", concerns.join(", "));
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "Speaks only of: ", &says)
        )?;
    }
    for unread in &ruleset.unread {
        let says = format!("{}; by this ruleset no guard meets", unread.says());
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "NOT READ: ", &one_line(&says))
        )?;
    }
    for amendment in &ruleset.amendments {
        let what = if amendment.removed { "removed" } else { "set" };
        let less = amendment.says_less();
        let less = less.map_or_else(String::new, |less| format!(": {less}"));
        let says = format!("{} {what} by {}{less}", amendment.rule, amendment.file);
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "Amended: ", &one_line(&says))
        )?;
    }
    for rule in &ruleset.rules {
        writeln!(out)?;
        show_rule(out, rule)?;
    }
    for silence in &ruleset.asks_nothing {
        writeln!(out)?;
        show_silence(out, silence)?;
    }
    for caution in &ruleset.cautions {
        let says = format!(
            "{} ({})",
            one_line(&caution.says),
            one_line(&caution.clause)
        );
        writeln!(out, "\n{}", hanging_in(out.width(), "Caution: ", &says))?;
    }
    writeln!(out, "\n{}", palette::heading("What it leaves out"))?;
    for part in &ruleset.leaves_out {
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "  - ", &one_line(&part.conditional()))
        )?;
    }
    writeln!(out, "\n{}", palette::heading("Sources"))?;
    for source in &ruleset.sources {
        let says = format!(
            "{}, {} ({})",
            one_line(&source.title),
            one_line(&source.edition),
            source.status
        );
        writeln!(out, "{}", hanging_in(out.width(), "  - ", &says))?;
    }
    writeln!(out, "\n{}", hanging_in(out.width(), "", DEFERRAL))
}

/// What a text was read to ask nothing about.
fn show_silence(out: &mut TextPage<'_>, silence: &AsksNothing) -> io::Result<()> {
    let head = format!("Asks nothing about: {}", silence.hazard);
    writeln!(out, "{}", palette::heading(&head))?;
    writeln!(
        out,
        "{}",
        hanging_in(out.width(), "  ", &one_line(&silence.says))
    )?;
    if !silence.when.is_empty() {
        let place = one_line(&all_of(&silence.when)).into_owned();
        writeln!(out, "{}", hanging_in(out.width(), "  Where: ", &place))?;
    }
    let clause = silence.clause.as_ref();
    let clause = clause.map_or_else(String::new, |clause| format!("{clause}, "));
    let source = format!(
        "{}{} ({})",
        one_line(&clause),
        one_line(&silence.source.title),
        read_how(silence.status)
    );
    writeln!(out, "{}", hanging_in(out.width(), "  Source: ", &source))
}

/// How far a clause is to be trusted.
const fn read_how(status: Status) -> &'static str {
    match status {
        Status::Published => "read in the text",
        Status::Quoted => "quoted second-hand: verify",
        Status::Memory => "from memory: verify; it only warns",
        Status::Practice => "common practice, no source",
    }
}

fn show_rule(out: &mut TextPage<'_>, rule: &Rule) -> io::Result<()> {
    let title = format!("{}  ({})", one_line(&rule.id), rule.hazard);
    writeln!(out, "{}", heading_in(out.width(), "", &title))?;
    writeln!(
        out,
        "{}",
        hanging_in(out.width(), "  ", &one_line(&rule.says))
    )?;
    let place = place(rule);
    if !place.is_empty() {
        writeln!(out, "{}", hanging_in(out.width(), "  Where: ", &place))?;
    }
    writeln!(out, "{}", hanging_in(out.width(), "  Asks: ", &asks(rule)))?;
    if let Some(why) = &rule.judgement {
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "  For a person to decide: ", &one_line(why))
        )?;
    }
    if let Some(time) = &rule.within {
        writeln!(
            out,
            "{}",
            hanging_in(out.width(), "  To be mended within: ", &one_line(time))
        )?;
    }
    let source = format!(
        "{}, {} ({})",
        one_line(&rule.clause),
        one_line(&rule.source.title),
        read_how(rule.status)
    );
    writeln!(out, "{}", hanging_in(out.width(), "  Source: ", &source))
}

/// Where a rule applies, in words; empty where it does everywhere.
pub(super) fn place(rule: &Rule) -> String {
    let mut when: Vec<String> = rule.when.iter().map(Condition::says).collect();
    if !rule.when_any.is_empty() {
        let groups: Vec<String> = rule.when_any.iter().map(|group| all_of(group)).collect();
        when.push(format!("either {}", groups.join(", or ")));
    }
    when.extend(
        rule.unless
            .iter()
            .map(|group| format!("not where {}", all_of(group))),
    );
    one_line(&when.join("; ")).into_owned()
}

/// What a rule asks, in words.
pub(super) fn asks(rule: &Rule) -> String {
    let checks: Vec<String> = rule.checks.iter().map(check).collect();
    checks.join(", or ")
}

fn check(check: &Check) -> String {
    let name = match check.subject {
        Subject::AnyOpening => "any gap between or beside its parts",
        Subject::Item(item) => item.name(),
        Subject::LoadPath => "what holds it up",
    };
    let asks = match &check.demand {
        Demand::Count(limits) => limits.says(ToString::to_string),
        Demand::Foothold(demand) => foothold(demand),
        Demand::Length(limits) => limits.says(limit_in_words),
        Demand::Load(demand) => demand.says(),
        Demand::Opening(demand) => opening(demand),
        Demand::VOpening(limit) => format!("its sides open {} or more", one_line(&limit.written)),
        Demand::Words { is, is_not } => {
            let mut parts = Vec::new();
            if !is.is_empty() {
                parts.push(format!("is {}", is.join(" or ")));
            }
            if !is_not.is_empty() {
                parts.push(format!("is not {}", is_not.join(" or ")));
            }
            parts.join(" and ")
        }
    };
    format!("{name}: {asks}")
}

fn foothold(demand: &FootholdDemand) -> String {
    let mut counts = String::new();
    if let Some(limit) = &demand.deeper_than {
        counts.push_str(&format!(" deeper than {}", limit_in_words(limit)));
    }
    if let Some(slope) = &demand.no_steeper_than {
        counts.push_str(&format!(" sloping {} or less", one_line(&slope.written)));
    }
    let mut parts = Vec::new();
    if let Some(zone) = &demand.none_within {
        let (from, to) = (limit_in_words(&zone.from), limit_in_words(&zone.to));
        parts.push(format!("none{counts} between {from} and {to}"));
    }
    if let Some(ladder) = &demand.ladder {
        let limit = limit_in_words(ladder.limit());
        let near = match ladder {
            Ladder::Below(_) => format!("less than {limit} apart"),
            Ladder::UpTo(_) => format!("{limit} apart or nearer"),
        };
        parts.push(if demand.none_within.is_some() {
            format!("several are fine unless two are {near}, upwards or along")
        } else {
            format!("no two{counts} {near}: they make a ladder")
        });
    }
    parts.join("; ")
}

fn opening(demand: &OpeningDemand) -> String {
    let mut parts = Vec::new();
    if let Some(ball) = &demand.stops_ball {
        parts.push(format!("a {} ball must not pass", limit_in_words(ball)));
    }
    if let Some(limit) = &demand.at_most {
        parts.push(format!("at most {}", limit_in_words(limit)));
    }
    if let Some(limit) = &demand.at_least {
        parts.push(format!("at least {}", limit_in_words(limit)));
    }
    if let Some((above, below)) = &demand.not_within {
        parts.push(format!(
            "not between {} and {}",
            limit_in_words(above),
            limit_in_words(below)
        ));
    }
    if let Some(entraps) = &demand.entraps {
        parts.push(format!(
            "what admits a probe of {} must let a ball of {} through too",
            one_line(&entraps.written),
            limit_in_words(&entraps.head)
        ));
    }
    let zone = demand.zone.as_ref().map_or_else(String::new, |zone| {
        format!(
            " (openings from {} to {} above the walking surface)",
            limit_in_words(&zone.from),
            limit_in_words(&zone.to)
        )
    });
    format!("{}{zone}", parts.join(" and "))
}

fn limit_in_words(limit: &Limit) -> String {
    one_line(&limit.written).into_owned()
}
