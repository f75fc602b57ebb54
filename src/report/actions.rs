//! The list of work: a row for each act, so that tonight's and the lasting one
//! stand apart. As CSV for a file, as text for a terminal.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::io;
use std::io::Write;

use crate::input::Diagnostics;
use crate::items::Item;
use crate::items::SharedWord;
use crate::items::Verdict;
use crate::judge::Authority;
use crate::remedy::PlanDepth;
use crate::remedy::WhoDoes;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::report::Summary;
use crate::report::acts;
use crate::report::acts::Tonight;
use crate::report::advice;
use crate::report::cautions::DEFERRAL;
use crate::report::matters::AskedBy;
use crate::report::matters::ThingMeasured;
use crate::report::matters::matters;
use crate::report::matters::says;
use crate::report::matters::share_short;
use crate::report::matters::was_not_entered;
use crate::report::one_line;
use crate::report::palette;
use crate::report::reader;
use crate::report::remedied::GuardRemedies;
use crate::report::remedied::ShownHoles;
use crate::report::remedied::ShownLeave;
use crate::report::remedied::ShownRemedy;
use crate::report::safe_cell;
use crate::report::words;
use crate::report::wrap::Lines;
use crate::rules::Urgency;
use crate::survey::Guard;

/// The columns; the last two are filled in by whoever does the work.
const COLUMNS: [&str; 21] = [
    "priority",
    "building",
    "unit",
    "guard",
    "place",
    "what",
    "measured",
    "asked",
    "by",
    "remedy",
    "quantity",
    "who",
    "leave",
    "holes",
    "access",
    "note",
    "clause",
    "how read",
    "deferral",
    "done on",
    "measured after",
];

/// How soon.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Priority {
    /// Tonight.
    Now,
    /// Soon.
    Soon,
    /// Look first.
    Look,
    /// To know about.
    Know,
}

impl Priority {
    const ALL: [Priority; 4] = [
        Priority::Now,
        Priority::Soon,
        Priority::Look,
        Priority::Know,
    ];

    const fn name(self) -> &'static str {
        match self {
            Priority::Now => "now",
            Priority::Soon => "soon",
            Priority::Look => "look",
            Priority::Know => "know",
        }
    }
}

/// One act.
#[derive(Clone, Debug)]
struct Act {
    priority: Priority,
    /// A danger comes first, then the hazards in their order, then the size.
    called: Reverse<bool>,
    hazard: usize,
    share: Reverse<i128>,
    building: String,
    unit: String,
    guard: String,
    place: String,
    what: String,
    measured: String,
    asked: String,
    by: &'static str,
    remedy: String,
    quantity: String,
    who: WhoDoes,
    leave: ShownLeave,
    holes: ShownHoles,
    access: &'static str,
    note: String,
    clause: String,
    read: &'static str,
}

/// The list of work.
pub(super) struct Actions<'a, W> {
    out: W,
    basis: ReportBasis<'a>,
    form: ActionsForm,
    acts: Vec<Act>,
    summary: Summary,
}

/// How the list is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum ActionsForm {
    /// For a spreadsheet.
    Csv,
    /// For a terminal.
    Table,
}

impl<'a, W: Write> Actions<'a, W> {
    /// Nothing is written before the end, since what is urgent comes first.
    pub(super) fn new(out: W, basis: ReportBasis<'a>, form: ActionsForm) -> Actions<'a, W> {
        Actions {
            out,
            basis,
            form,
            acts: Vec::new(),
            summary: Summary::default(),
        }
    }

    fn deferral(&self) -> String {
        let against = match Authority::of(self.basis.rulesets) {
            Authority::Law => "Compared with rules as read.",
            Authority::Guidance => "Compared with advice as read; no building rules were checked.",
        };
        format!("{against} {DEFERRAL}")
    }

    fn write_csv(&mut self) -> io::Result<()> {
        let deferral = self.deferral();
        let mut out = csv::Writer::from_writer(&mut self.out);
        out.write_record(COLUMNS)?;
        for act in &self.acts {
            let mut cells: Vec<String> = act.cells().into_iter().map(|c| cell(&c)).collect();
            cells.push(cell(&deferral));
            cells.extend([String::new(), String::new()]);
            out.write_record(&cells)?;
        }
        out.flush()
    }

    fn write_table(&mut self) -> io::Result<()> {
        let mut lines = Lines::new(self.basis.width);
        for priority in Priority::ALL {
            let of = |act: &&Act| act.priority == priority;
            let mut here = self.acts.iter().filter(of).peekable();
            if here.peek().is_none() {
                continue;
            }
            lines.push(palette::heading(&priority.name().to_uppercase()));
            for act in here {
                lines.spread("  ", "     ", &act.says());
            }
            lines.gap();
        }
        for (what, of) in [
            ("By trade", Act::who as fn(&Act) -> &str),
            ("By kind of work", Act::what),
        ] {
            let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
            for act in self.acts.iter().filter(|act| !act.guard.is_empty()) {
                *counts.entry(of(act)).or_default() += 1;
            }
            let mut counts: Vec<(&str, usize)> = counts.into_iter().collect();
            counts.sort_by_key(|(name, count)| (Reverse(*count), *name));
            let parts: Vec<String> = counts
                .iter()
                .map(|(name, count)| format!("{name} {count}"))
                .collect();
            if !parts.is_empty() {
                lines.spread("", "  ", &format!("{what}: {}.", parts.join(", ")));
            }
        }
        lines.spread("", "", &self.deferral());
        writeln!(self.out, "{}", lines.joined())
    }
}

fn cell(text: &str) -> String {
    safe_cell(&one_line(text))
}

impl Act {
    fn new(priority: Priority, guard: &Guard, what: String, remedy: String) -> Act {
        Act {
            priority,
            called: Reverse(false),
            hazard: usize::MAX,
            share: Reverse(0),
            building: guard.building.to_string(),
            unit: guard.unit.to_string(),
            guard: guard.name.to_string(),
            place: place(guard),
            what,
            measured: String::new(),
            asked: String::new(),
            by: "",
            remedy,
            quantity: String::new(),
            who: WhoDoes::Anyone,
            leave: ShownLeave::None,
            holes: ShownHoles::MakesNone,
            access: access(guard),
            note: String::new(),
            clause: String::new(),
            read: "",
        }
    }

    fn who(&self) -> &str {
        self.who.name()
    }

    fn what(&self) -> &str {
        &self.what
    }

    fn cells(&self) -> [String; 18] {
        let holes = match self.holes {
            ShownHoles::Makes => "yes",
            ShownHoles::MakesNone => "no",
        };
        [
            self.priority.name().to_owned(),
            self.building.clone(),
            self.unit.clone(),
            self.guard.clone(),
            self.place.clone(),
            self.what.clone(),
            self.measured.clone(),
            self.asked.clone(),
            self.by.to_owned(),
            self.remedy.clone(),
            self.quantity.clone(),
            self.who.name().to_owned(),
            self.leave.name().to_owned(),
            holes.to_owned(),
            self.access.to_owned(),
            self.note.clone(),
            self.clause.clone(),
            self.read.to_owned(),
        ]
    }

    /// The row as a sentence for a terminal.
    fn says(&self) -> String {
        let name = [&self.building, &self.unit, &self.guard];
        let name: Vec<_> = name
            .iter()
            .filter(|part| !part.is_empty())
            .map(|part| one_line(part))
            .collect();
        let mut text = if name.is_empty() {
            self.what.clone()
        } else {
            format!("{}: {}", name.join(", "), self.what)
        };
        if !self.measured.is_empty() {
            text.push_str(&format!(" ({})", one_line(&self.measured)));
        }
        text.push_str(&format!(". {}", self.remedy));
        let mut takes = vec![self.who.name()];
        if self.leave == ShownLeave::Owner {
            takes.push("owner's leave");
        }
        if self.holes == ShownHoles::Makes {
            takes.push("may make holes");
        }
        format!("{text} [{}]", takes.join("; "))
    }
}

/// `landing, drop 8 ft 7 in`
fn place(guard: &Guard) -> String {
    let first = |item| guard.of(item).next().map(|(_, o)| reader::written(o));
    let place = first(Item::Place);
    let drop = first(Item::Drop).map(|drop| format!("drop {drop}"));
    let parts: Vec<String> = place.into_iter().chain(drop).collect();
    parts.join(", ")
}

pub(super) fn access(guard: &Guard) -> &'static str {
    let shared = says(guard, SharedWord::Yes);
    match (shared, guard.unit.is_empty()) {
        (true, _) => "shared",
        (false, false) => "through the flat",
        (false, true) => "",
    }
}

fn notes(matter: &ThingMeasured<'_, '_>, guard: &Guard) -> String {
    let readings = matter.readings(guard).into_iter();
    let notes = readings.filter(|observation| !observation.note.is_empty());
    let notes: Vec<_> = notes
        .map(|observation| one_line(&observation.note))
        .collect();
    notes.join("; ")
}

fn measured(matter: &ThingMeasured<'_, '_>, guard: &Guard) -> String {
    let readings = matter.readings(guard).into_iter();
    let written: Vec<String> = readings
        .map(|observation| {
            let written = reader::written(observation);
            if observation.item == matter.topic {
                written
            } else {
                format!("{} {written}", observation.item)
            }
        })
        .collect();
    written.join("; ")
}

/// An act of tonight.
fn of_tonight(tonight: &Tonight, guard: &Guard) -> Act {
    let what = tonight.what.clone();
    let mut act = Act::new(Priority::Now, guard, what, tonight.does.to_owned());
    act.called = Reverse(!tonight.call.is_empty());
    act.hazard = 0;
    act.measured = tonight.written.clone();
    act.note = tonight.note.clone();
    act.quantity = tonight.quantity.clone();
    act
}

/// The lasting acts, or the test that settles it.
fn of_matter(
    matter: &ThingMeasured<'_, '_>,
    entry: &JudgedGuard<'_>,
    remedies: &GuardRemedies,
) -> Vec<Act> {
    let of_it = acts::remedies_of(matter, remedies);
    if of_it.is_empty() {
        return lasting(matter, entry, None).into_iter().collect();
    }
    let acts = of_it.into_iter();
    acts.filter_map(|remedy| lasting(matter, entry, Some(remedy)))
        .collect()
}

fn lasting(
    matter: &ThingMeasured<'_, '_>,
    entry: &JudgedGuard<'_>,
    remedy: Option<&ShownRemedy>,
) -> Option<Act> {
    let guard = &entry.guard;
    let missed = matter.is_missed();
    let finding = if missed {
        matter.strictest()?
    } else {
        matter.with(Verdict::TooClose).next()?.1
    };
    let priority = match (missed, finding.rule.urgency) {
        (false, _) => Priority::Look,
        (true, Urgency::Now | Urgency::Soon) => Priority::Soon,
        (true, Urgency::Know) => Priority::Know,
    };
    let (what, says) = match remedy {
        Some(remedy) => {
            let first = matter
                .missed()
                .next()
                .map(|(_, finding)| reader::fault(finding));
            (first.unwrap_or_default(), remedy.whole())
        }
        None => {
            let what = format!(
                "{}: too near to tell",
                reader::title(matter.topic).to_lowercase()
            );
            let settle = advice::settle(finding);
            (what, settle.unwrap_or_else(|| "look again.".to_owned()))
        }
    };
    let mut act = Act::new(priority, guard, what, says);
    act.hazard = finding.rule.hazard as usize;
    act.share = Reverse(share_short(finding).unwrap_or(0));
    act.measured = measured(matter, guard);
    act.asked = asked(matter, missed);
    act.by = if missed {
        acts::asked_by(matter).name()
    } else {
        finding_by(matter)
    };
    act.quantity = acts::quantity(matter.topic, guard);
    if let Some(remedy) = remedy {
        if let Some(counted) = &remedy.quantity {
            act.quantity.clone_from(counted);
        }
        act.who = remedy.who;
        act.leave = remedy.leave;
        act.holes = remedy.holes;
    }
    act.note = notes(matter, guard);
    act.clause = one_line(&finding.rule.clause).into_owned();
    act.read = reader::mark(finding.rule.status).unwrap_or("read");
    Some(act)
}

fn finding_by(matter: &ThingMeasured<'_, '_>) -> &'static str {
    let by = matter.with(Verdict::TooClose).map(|(by, _)| by).min();
    by.unwrap_or(AskedBy::Advice).name()
}

fn asked(matter: &ThingMeasured<'_, '_>, missed: bool) -> String {
    let verdict = if missed {
        Verdict::FallsShort
    } else {
        Verdict::TooClose
    };
    let mut parts: Vec<String> = Vec::new();
    for (_, finding) in matter.with(verdict) {
        let asked = reader::asked(finding);
        if !parts.contains(&asked) {
            parts.push(asked);
        }
    }
    parts.join("; ")
}

/// What is still to be looked at, or why nobody could.
fn to_look_at(entry: &JudgedGuard<'_>) -> Option<Act> {
    let guard = &entry.guard;
    if was_not_entered(guard) {
        let remedy = "ask for a date.".to_owned();
        let mut act = Act::new(Priority::Look, guard, "not entered".to_owned(), remedy);
        let readings = guard.of(Item::Guard);
        act.measured = "not reached".to_owned();
        act.quantity = "1 railing".to_owned();
        let notes = readings
            .filter(|(_, o)| !o.note.is_empty())
            .map(|(_, o)| one_line(&o.note));
        act.note = notes.collect::<Vec<_>>().join("; ");
        return Some(act);
    }
    let questions = entry.judged.questions();
    if questions.is_empty() || acts::waits_for_the_posts(entry) {
        return None;
    }
    let names: Vec<&str> = questions
        .iter()
        .map(|question| question.item.name())
        .collect();
    let remedy = match entry.judged.notes.first() {
        Some(note) => format!("{}.", reader::capital(&words::note_of_danger(note))),
        None => {
            let first = questions.first().map_or("", |q| q.item.info().question);
            format!("{first} Look, and write it down (guardrule walk asks the rest).")
        }
    };
    let mut act = Act::new(Priority::Look, guard, "not finished".to_owned(), remedy);
    act.asked = names.join("; ");
    Some(act)
}

impl<W: Write> Report for Actions<'_, W> {
    fn guard(&mut self, entry: &JudgedGuard<'_>) -> io::Result<()> {
        let matters = matters(entry, &self.basis);
        let tonight = acts::tonight(entry, &matters);
        let guard = &entry.guard;
        self.acts
            .extend(tonight.iter().map(|tonight| of_tonight(tonight, guard)));
        // what is moved away tonight stays away
        let moved = |matter: &&ThingMeasured<'_, '_>| {
            matter.topic != Item::ThingToClimb || acts::waits_for_the_posts(entry)
        };
        let remedies = GuardRemedies::of(entry, &self.basis, PlanDepth::Best);
        let lasting = matters.iter().filter(moved);
        self.acts
            .extend(lasting.flat_map(|matter| of_matter(matter, entry, &remedies)));
        self.acts.extend(to_look_at(entry));
        self.summary.count(&entry.judged);
        Ok(())
    }

    fn finish(mut self: Box<Self>, _: &Diagnostics) -> io::Result<Summary> {
        let order = |act: &Act| (act.priority, act.called, act.hazard, act.share);
        self.acts.sort_by_key(order);
        if Authority::of(self.basis.rulesets) == Authority::Guidance {
            self.acts.push(no_rules());
        }
        match self.form {
            ActionsForm::Csv => self.write_csv()?,
            ActionsForm::Table => self.write_table()?,
        }
        Ok(self.summary)
    }
}

/// The row that says that nobody chose building rules.
fn no_rules() -> Act {
    Act {
        priority: Priority::Know,
        called: Reverse(false),
        hazard: usize::MAX,
        share: Reverse(0),
        building: String::new(),
        unit: String::new(),
        guard: String::new(),
        place: String::new(),
        what: "no building rules checked".to_owned(),
        measured: String::new(),
        asked: String::new(),
        by: "",
        remedy: "choose them (guardrule rules list) and run the check again.".to_owned(),
        quantity: String::new(),
        who: WhoDoes::Anyone,
        leave: ShownLeave::None,
        holes: ShownHoles::MakesNone,
        access: "",
        note: String::new(),
        clause: String::new(),
        read: "",
    }
}
