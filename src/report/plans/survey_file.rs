//! Guards as they would be, as a survey that `check` reads.

use std::io;
use std::io::Write;
use std::sync::Arc;

use crate::items::Item;
use crate::items::StateWord;
use crate::quantities::LengthUnit;
use crate::reading::parse_or_none;
use crate::reading::print;
use crate::report::PlannedGuard;
use crate::report::ReportBasis;
use crate::report::safe_cell;
use crate::rules;
use crate::survey::Observation;
use crate::survey::TapeClass;

/// All guards with their plans carried out, as a notebook: facts of the whole survey,
/// then each guard with everything that holds for it.
///
/// The facts that hold for a file are those of the first file; who calls sees to it that
/// all files agree.
///
/// # Errors
/// Those of `out`.
pub fn altered_survey(
    out: &mut dyn Write,
    guards: &[PlannedGuard<'_>],
    basis: &ReportBasis<'_>,
) -> io::Result<()> {
    let mut rows = csv::Writer::from_writer(out);
    rows.write_record(["building", "unit", "guard", "item", "reading", "note"])?;
    for (item, reading) in facts(guards, basis) {
        rows.write_record(["", "", "", item.name(), &safe_cell(&reading), ""])?;
    }
    for planned in guards {
        let guard = &planned.plan.way.guard;
        let names = [&guard.building, &guard.unit, &guard.name].map(|name| safe_cell(name));
        let mut last: Option<Arc<str>> = None;
        let own = |item: Item| guard.observations.iter().any(|o| o.item == item);
        let inherited = guard.inherited.observations.iter().filter(|o| !own(o.item));
        for observation in inherited.chain(&guard.observations) {
            // one cell may have given two observations
            if last
                .as_ref()
                .is_some_and(|last| Arc::ptr_eq(last, &observation.written))
            {
                continue;
            }
            last = Some(Arc::clone(&observation.written));
            if observation.item.is_survey_fact() {
                continue;
            }
            let [building, unit, name] = &names;
            let reading = cell(observation);
            rows.write_record([
                building,
                unit,
                name,
                observation.item.name(),
                &safe_cell(&reading),
                &safe_cell(&observation.note),
            ])?;
        }
        for own in &guard.own {
            let [building, unit, name] = &names;
            rows.write_record([
                building,
                unit,
                name,
                &safe_cell(&own.name),
                &safe_cell(&own.written),
                &safe_cell(&own.note),
            ])?;
        }
    }
    rows.flush()
}

/// As it was written, where that needs no heading to be read.
fn cell(observation: &Observation) -> String {
    let written = &*observation.written;
    let same = parse_or_none(observation.item, written, None).is_some_and(|parsed| {
        let mut readings = parsed.readings.iter();
        readings.any(|reading| Some(reading) == observation.reading.as_deref())
    });
    match &observation.reading {
        Some(reading) if !same => print(reading),
        Some(_) | None => written.to_owned(),
    }
}

fn facts(guards: &[PlannedGuard<'_>], basis: &ReportBasis<'_>) -> Vec<(Item, String)> {
    let survey = basis.survey;
    let mut facts = Vec::new();
    facts.extend(
        survey
            .property
            .clone()
            .map(|property| (Item::Property, property)),
    );
    facts.extend(survey.dates.first().map(|date| (Item::Date, date.clone())));
    facts.extend(survey.by.first().map(|by| (Item::By, by.clone())));
    if let Some(file) = survey.file_facts.first() {
        facts.extend(
            file.tape
                .map(|tape| (Item::Tape, tape_word(tape).to_owned())),
        );
        let step = file.read_to.map(|step| step.exact(LengthUnit::Inch));
        facts.extend(step.map(|step| (Item::ReadTo, step)));
    }
    let ids: Vec<&str> = basis
        .rulesets
        .iter()
        .map(|ruleset| {
            if rules::is_embedded(&ruleset.id) {
                &*ruleset.id
            } else {
                &*ruleset.file
            }
        })
        .collect();
    facts.push((Item::Rules, ids.join("; ")));
    // a plan for which nobody stated a tolerance is judged as it is drawn
    let plain = guards.iter().any(|guard| {
        let mut states = guard.plan.way.guard.of(Item::State);
        states.any(|(_, o)| o.word() == Some(StateWord::Proposed))
    });
    let stated = survey.build_tolerance.is_some();
    if let Some(guard) = guards.first().filter(|_| stated || !plain) {
        let m = &guard.plan.measuring;
        let within = survey.build_tolerance.unwrap_or(m.gaps);
        facts.push((Item::BuildTolerance, m.text(within)));
    }
    facts
}

const fn tape_word(tape: TapeClass) -> &'static str {
    match tape {
        TapeClass::I => "class I",
        TapeClass::II => "class II",
        TapeClass::III => "class III",
        TapeClass::Handbook44 => "handbook 44",
    }
}
