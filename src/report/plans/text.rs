//! The plans as text: tonight first, then the steps, then what is not offered and why.

use std::io;
use std::io::Write;

use crate::geometry::USUAL_DRYING;
use crate::items::Item;
use crate::items::LocationWord;
use crate::judge::Authority;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::remedy::Needed;
use crate::remedy::Offered;
use crate::remedy::Planned;
use crate::remedy::RemedyKind;
use crate::remedy::RemedyPlan;
use crate::report::PlanOutcome;
use crate::report::PlannedGuard;
use crate::report::ReportBasis;
use crate::report::cautions::DEFERRAL;
use crate::report::one_line;
use crate::report::plans::cautions::PlacesOfRules;
use crate::report::plans::cautions::cautions;
use crate::report::plans::counts::PartTotal;
use crate::report::plans::counts::all_to_write;
use crate::report::plans::counts::labour;
use crate::report::plans::counts::labour_by;
use crate::report::plans::counts::taken_before;
use crate::report::plans::counts::totals;
use crate::report::plans::words;
use crate::report::reader;
use crate::report::wrap::Lines;

/// The plans of all guards as text.
///
/// # Errors
/// Those of `out`.
pub fn plans_text(
    out: &mut dyn Write,
    guards: &[PlannedGuard<'_>],
    basis: &ReportBasis<'_>,
) -> io::Result<()> {
    let mut lines = Lines::new(basis.width);
    lines.heading(&headline(guards));
    lines.gap();
    let places = PlacesOfRules::of(basis);
    tonight(&mut lines, guards);
    // whoever answers for many sees what it comes to before what each needs
    property(&mut lines, guards, &places);
    for (names, when, body) in blocks(guards, &places, basis.width) {
        lines.heading(&format!("{}{when}", names.join("; ")));
        lines.push(body);
        lines.gap();
    }
    undecided(&mut lines, guards);
    end(&mut lines, guards, basis);
    writeln!(out, "{}", lines.joined())
}

/// `2 of 3 railings fall short. 1 of them can be put right so that all chosen rules are met, as re-checked.`
fn headline(guards: &[PlannedGuard<'_>]) -> String {
    let short = guards
        .iter()
        .filter(|guard| !guard.plan.topics.is_empty())
        .count();
    if short == 0 {
        return "Nothing falls short: there is nothing to put right.".to_owned();
    }
    let right = guards.iter().filter(|guard| {
        !guard.plan.topics.is_empty()
            && matches!(
                guard.outcome(),
                PlanOutcome::Confirmed | PlanOutcome::Undecided
            )
    });
    let right = right.count();
    let all = "everything that falls short has a remedy that judging the changed railing confirms";
    if guards.len() == 1 {
        return match right {
            0 => {
                "It falls short, and not all of it has a remedy that can be shown here.".to_owned()
            }
            _ => format!("It falls short; {all}."),
        };
    }
    let fall = if short == 1 { "falls" } else { "fall" };
    format!(
        "{short} of {} railings {fall} short. For {right} of them {all}.",
        guards.len()
    )
}

/// Guards of which nothing falls short and something is undecided, in one line.
fn undecided(lines: &mut Lines, guards: &[PlannedGuard<'_>]) {
    let open = guards
        .iter()
        .filter(|guard| guard.plan.topics.is_empty() && guard.outcome() == PlanOutcome::Undecided);
    let names: Vec<String> = open.map(PlannedGuard::name).collect();
    if !names.is_empty() {
        let says = format!(
            "Nothing falls short, and something is undecided (guardrule check says what to measure): {}.",
            names.join("; ")
        );
        lines.spread("", "  ", &says);
        lines.gap();
    }
}

/// What comes before anybody sleeps, an act with all railings that it is for.
fn tonight(lines: &mut Lines, guards: &[PlannedGuard<'_>]) {
    let mut acts: Vec<(RemedyKind, Vec<String>)> = Vec::new();
    for guard in guards {
        for kind in &guard.plan.tonight {
            match acts.iter_mut().find(|(known, _)| known == kind) {
                Some((_, names)) => names.push(guard.name()),
                None => acts.push((*kind, vec![guard.name()])),
            }
        }
    }
    if acts.is_empty() {
        return;
    }
    // where nobody may stand comes first
    acts.sort_by_key(|(kind, _)| *kind != RemedyKind::EverybodyOff);
    lines.heading("Tonight");
    for (kind, names) in acts {
        let names = match names.len() {
            _ if guards.len() == 1 => String::new(),
            count if count > NAMED => format!("{count} railings, each named below: "),
            _ => format!("{}: ", names.join("; ")),
        };
        lines.hanging("  - ", &format!("{names}{}", words::tonight(kind)));
    }
    lines.gap();
}

/// So many are named where an act is for many.
const NAMED: usize = 8;

/// The blocks of all guards that need something; guards with one and the same share it.
fn blocks(
    guards: &[PlannedGuard<'_>],
    places: &PlacesOfRules<'_>,
    width: usize,
) -> Vec<(Vec<String>, String, String)> {
    let mut blocks: Vec<(Vec<String>, String, String)> = Vec::new();
    for guard in guards.iter().filter(|guard| !guard.plan.topics.is_empty()) {
        let mut lines = Lines::new(width);
        block(&mut lines, guard, places);
        let body = lines.joined();
        let soon = guard
            .plan
            .topics
            .iter()
            .map(|topic| topic.soon(&guard.guard));
        let when = soon.min().and_then(|soon| soon.says());
        let when = when.map_or_else(String::new, |when| format!(": {when}"));
        let same = |(_, known, other): &&mut (Vec<String>, String, String)| {
            *known == when && *other == body
        };
        match blocks.iter_mut().find(same) {
            Some((names, _, _)) => names.push(guard.name()),
            None => blocks.push((vec![guard.name()], when, body)),
        }
    }
    blocks
}

fn block(lines: &mut Lines, guard: &PlannedGuard<'_>, places: &PlacesOfRules<'_>) {
    let plan = &guard.plan;
    for (number, step) in (1..).zip(&plan.steps) {
        self::step(lines, (guard, places), number, step);
    }
    if let Some(says) = without_leave(plan) {
        lines.spread("  ", "    ", &says);
    }
    for unsolved in &plan.unsolved {
        let title = reader::title(unsolved.topic.item);
        let readings = words::readings(&guard.guard, unsolved.topic.item);
        lines.hanging("  ? ", &format!("{title} ({readings}): {}.", unsolved.why));
    }
    for bridge in &plan.bridges {
        let takes = words::takes(plan, bridge.kind, bridge.labour);
        let waits = words::waits(plan.waits(&guard.guard, bridge.kind));
        lines.spread(
            "  ",
            "    ",
            &format!("Until then: {waits}{} [{takes}]", bridge.says),
        );
    }
    result(lines, guard);
    for says in words::not_offered(&plan.refused) {
        lines.spread("  ", "    ", &format!("Not offered: {says}."));
    }
    let write = all_to_write(guard);
    if !write.is_empty() {
        let names: Vec<&str> = write.iter().map(|item| item.name()).collect();
        let says = format!(
            "To count what it takes, write {} (guardrule items says how each is measured).",
            names.join(", ")
        );
        lines.spread("  ", "    ", &says);
    }
    if let Some(says) = words::labour_in_all(labour(guard)) {
        lines.spread("  ", "    ", &says);
    }
}

/// What a tenant does without asking, where other steps need to be asked for.
fn without_leave(plan: &RemedyPlan) -> Option<String> {
    let free = |step: &Planned| step.offered.kind.row().leave == Needed::No;
    if plan.steps.iter().all(free) {
        return None;
    }
    let numbers = (1..).zip(&plan.steps).filter(|(_, step)| free(step));
    let numbers: Vec<String> = numbers
        .map(|(number, _): (usize, _)| number.to_string())
        .collect();
    match numbers.as_slice() {
        [] => None,
        [one] => Some(format!("A tenant does step {one} without asking anybody.")),
        several => Some(format!(
            "A tenant does steps {} without asking anybody.",
            several.join(", ")
        )),
    }
}

fn step(
    lines: &mut Lines,
    (guard, places): (&PlannedGuard<'_>, &PlacesOfRules<'_>),
    number: usize,
    step: &Planned,
) {
    let plan = &guard.plan;
    let title = reader::title(step.topic.item);
    let readings = words::readings(&guard.guard, step.topic.item);
    let readings = if readings.is_empty() {
        String::new()
    } else {
        format!(" ({readings})")
    };
    let waits = words::waits(step.waits);
    let says = format!("{title}{readings}: {waits}{}", step.offered.says);
    lines.hanging(&format!("  {number}. "), &says);
    let takes = words::takes(plan, step.offered.kind, step.offered.labour);
    lines.hanging("     ", &format!("[{takes}]"));
    for part in &step.offered.parts {
        let says = match taken_before(&plan.steps, number - 1, part) {
            Some(before) => format!("as in step {before}."),
            None => format!("{}.", words::part(part, plan.measuring.unit)),
        };
        lines.hanging("     Take: ", &says);
    }
    for says in step
        .offered
        .bay
        .iter()
        .flat_map(|bay| words::marks(bay, plan.measuring.unit))
    {
        lines.hanging("     Mark: ", &says);
    }
    if let Some(paint) = step
        .offered
        .paint
        .filter(|_| places.counts_painted_areas(guard))
    {
        let place = guard.guard.of(Item::Location).find_map(|(_, o)| o.word());
        let place = place.unwrap_or(LocationWord::Inside);
        let more = if paint.is_minor_repair(place) {
            "within what paid work may disturb as minor repair in the United States"
        } else {
            "more than minor repair in the United States: paid work needs a certified renovator"
        };
        let says = format!(
            "If it is painted: a bay taken out is up to {} of old paint, {more}.",
            paint.text()
        );
        lines.hanging("     ", &says);
    }
    if !step.proved {
        let says = "No drawing shows this: push it, look at it or ask an engineer when it is done.";
        lines.hanging("     ", says);
    }
    if let Some(lesser) = &step.lesser {
        let mut rules: Vec<String> = Vec::new();
        for rule in lesser.leaves.iter().map(|key| key.rule.replace('-', " ")) {
            if !rules.contains(&rule) {
                rules.push(rule);
            }
        }
        let says = format!(
            "{} That satisfies the building rules, and leaves the advice short: {}.",
            lesser.offered.says,
            rules.join(", ")
        );
        lines.hanging("     Less: ", &says);
    }
    let instead = others(step, &step.instead);
    if !instead.is_empty() {
        lines.hanging("     Or: ", &format!("{}.", instead.join("; ")));
    }
    let to_try = others(step, &step.to_try);
    if !to_try.is_empty() {
        let says = format!("{}.", to_try.join("; "));
        lines.hanging("     Or, shown only by trying it when done: ", &says);
    }
}

/// The names of what else would do, each once.
fn others(step: &Planned, others: &[Offered]) -> Vec<&'static str> {
    let mut names: Vec<&str> = Vec::new();
    for name in others.iter().map(|other| other.kind.row().name) {
        let new = name != step.offered.kind.row().name && !names.contains(&name);
        if new && names.len() < INSTEAD {
            names.push(name);
        }
    }
    names
}

/// So many others are named; JSON has all.
const INSTEAD: usize = 3;

fn result(lines: &mut Lines, guard: &PlannedGuard<'_>) {
    let plan = &guard.plan;
    if plan.steps.is_empty() {
        return;
    }
    let mut says = format!(
        "{} that fell short {} met",
        rules(plan.way.solved.len()),
        are(plan.way.solved.len())
    );
    if !plan.way.no_longer_asked.is_empty() {
        let count = plan.way.no_longer_asked.len();
        says.push_str(&format!(
            ", {} {} no longer asked",
            rules(count),
            are(count)
        ));
    }
    let steps = plan.steps.iter().filter(|step| !step.proved);
    let unsolved = plan.unsolved.iter().map(|unsolved| &unsolved.topic);
    let left: Vec<Item> = steps
        .map(|step| &step.topic)
        .chain(unsolved)
        .map(|topic| topic.item)
        .collect();
    if !left.is_empty() {
        let titles = left.iter().map(|item| reader::title(*item).to_lowercase());
        let titles: Vec<String> = titles.collect();
        says.push_str(&format!("; not shown by this: {}", titles.join(", ")));
    }
    let mut open: Vec<&str> = Vec::new();
    for item in plan.open.iter().map(|open| open.key.item) {
        if !left.contains(&item) && !open.contains(&item.name()) {
            open.push(item.name());
        }
    }
    if !open.is_empty() {
        says.push_str(&format!(
            "; still undecided (guardrule check says what to write down): {}",
            open.join(", ")
        ));
    }
    lines.spread(
        "  ",
        "    ",
        &format!("Judged again with this done: {says}."),
    );
}

fn rules(count: usize) -> String {
    if count == 1 {
        "1 point".to_owned()
    } else {
        format!("{count} points")
    }
}

const fn are(count: usize) -> &'static str {
    if count == 1 { "is" } else { "are" }
}

/// What it takes for all railings together.
fn property(lines: &mut Lines, guards: &[PlannedGuard<'_>], places: &PlacesOfRules<'_>) {
    let short = guards
        .iter()
        .filter(|guard| !guard.plan.steps.is_empty())
        .count();
    let totals = totals(guards);
    if short < 2 || totals.is_empty() {
        return;
    }
    lines.heading("For all railings together");
    let unit = guards.first().map(|guard| guard.plan.measuring.unit);
    for total in &totals {
        lines.hanging("  - ", &format!("{}.", together(total, unit)));
    }
    if let Some(says) = words::labour_by_trade(&labour_by(guards)) {
        lines.hanging("  - ", &says);
    }
    let planned = || guards.iter().filter(|guard| !guard.plan.steps.is_empty());
    let high = planned().filter(|guard| guard.plan.high).count();
    let old = planned().filter(|guard| places.counts_painted_areas(guard));
    let old = old.count();
    let dearer = [
        (high, "outdoors above one storey (ladder, scaffold or lift)"),
        (old, "where old paint may hold lead"),
    ];
    let dearer: Vec<String> = dearer
        .iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, why)| format!("{count} {why}"))
        .collect();
    if !dearer.is_empty() {
        let says = format!("What makes it dearer: {}.", dearer.join("; "));
        lines.hanging("  - ", &says);
    }
    lines.gap();
}

fn together(total: &PartTotal, unit: Option<LengthUnit>) -> String {
    let count = words::so_many(total.count);
    let buy = match (total.buy, unit) {
        (Length::ZERO, _) | (_, None) => String::new(),
        (buy, Some(unit)) => format!(", {} in all", buy.readable_up(unit)),
    };
    let railings = if total.guards == 1 {
        "railing"
    } else {
        "railings"
    };
    let open = match total.uncounted {
        0 => String::new(),
        open => format!(", {open} not counted"),
    };
    format!(
        "{count}{}{buy} (for {} {railings}{open})",
        total.what, total.guards
    )
}

/// Cautions, whom to ask, by what it was judged, and what to do next; once.
fn end(lines: &mut Lines, guards: &[PlannedGuard<'_>], basis: &ReportBasis<'_>) {
    let places = PlacesOfRules::of(basis);
    let (found, local) = cautions(guards.iter(), &places);
    if !found.is_empty() {
        lines.heading("Before anybody begins");
        for caution in found {
            lines.hanging("  - ", caution.says());
        }
        for says in local {
            lines.hanging("  - ", &says);
        }
        lines.hanging("  - ", &places.whom_to_ask());
        lines.gap();
    }
    let names: Vec<_> = basis
        .rulesets
        .iter()
        .map(|ruleset| one_line(&ruleset.title))
        .collect();
    lines.hanging("", &format!("Judged by: {}.", names.join("; ")));
    let drawn = guards.iter().filter(|guard| !guard.plan.steps.is_empty());
    if let Some(guard) = drawn.max_by_key(|guard| guard.plan.measuring.heights) {
        let m = &guard.plan.measuring;
        lines.hanging(
            "",
            &format!(
                "Drawn so that a gap may come out {} off, a height {}, and new wood dry narrower by \
                 {USUAL_DRYING}, and still keep the limit; wood wet from treatment shrinks more than twice as \
                 much: let it dry first. Sizes of stock, counts, labour and waste are common practice, no \
                 source. New work keeps to today's rules, whatever the old was built to.",
                m.text(m.gaps),
                m.text(m.heights)
            ),
        );
        lines.hanging(
            "",
            "Next: guardrule remedy SURVEY --write after.csv, then guardrule check after.csv. When it is \
             built, measure it anew: a drawing that meets is not yet a railing that does.",
        );
    }
    let steps = guards.iter().flat_map(|guard| &guard.plan.steps);
    let mut kinds = steps.map(|step| step.offered.kind);
    if kinds.any(|kind| kind.row().leave != Needed::No) {
        lines.hanging(
            "",
            "A letter to the owner: guardrule check SURVEY --format html --as request --output letter.html.",
        );
    }
    if Authority::of(basis.rulesets) == Authority::Guidance {
        lines.hanging(
            "",
            "Advice only: NO BUILDING RULES WERE CHECKED (guardrule rules find).",
        );
    }
    lines.hanging("", DEFERRAL);
}
