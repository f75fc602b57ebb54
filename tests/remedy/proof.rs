//! Remedies written, applied, judged again: what they claim is met, and nothing that held
//! is broken.

use std::collections::BTreeMap;
use std::ops::ControlFlow;

use proptest::prelude::*;

use guardrule::items::Item;
use guardrule::items::Verdict;
use guardrule::judge::Finding;
use guardrule::judge::Judged;
use guardrule::judge::Options;
use guardrule::judge::judge;
use guardrule::remedy::PlanDepth;
use guardrule::remedy::Planned;
use guardrule::remedy::best_steps;
use guardrule::remedy::is_met;
use guardrule::remedy::plan;
use guardrule::report::Detail;
use guardrule::report::Explain;
use guardrule::report::PlannedGuard;
use guardrule::report::ReportBasis;
use guardrule::report::altered_survey;
use guardrule::rules::Ruleset;
use guardrule::rules::load;
use guardrule::survey::Guard;
use guardrule::survey::InMemory;
use guardrule::survey::Survey;
use guardrule::survey::SurveyFile;

fn rulesets(names: &[&str]) -> Vec<Ruleset> {
    let loaded = names
        .iter()
        .map(|name| load(name, &|_| None).ruleset.expect("it is embedded"));
    loaded.collect()
}

fn full_name(guard: &Guard) -> String {
    format!("{}|{}|{}", guard.building, guard.unit, guard.name)
}

/// Everything promised of a survey holds when its written form is judged; how many
/// shortfalls there were and how many of them are met then.
fn holds_up(text: &str, names: &[&str]) -> (usize, usize) {
    let rulesets = rulesets(names);
    let options = Options::default();
    let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(InMemory::new("s.csv", text.as_bytes()))];
    let survey = Survey::scan(&files).expect("it can be read");
    let mut planned = Vec::new();
    survey
        .guards(&mut |guard| {
            let judged = judge(&guard, survey.facts(), &rulesets, options);
            let plan = plan(&guard, &judged, survey.facts(), &rulesets, options);
            let best = best_steps(
                &guard,
                &judged,
                survey.facts(),
                &rulesets,
                options,
                PlanDepth::Best,
            );
            // what a report of many guards says is what the whole plan says
            let says = |steps: &[Planned]| {
                let all = steps
                    .iter()
                    .map(|step| (step.offered.says.clone(), step.proved));
                all.collect::<Vec<_>>()
            };
            assert_eq!(says(&best.steps), says(&plan.steps), "{text}");
            planned.push(PlannedGuard {
                guard,
                judged,
                plan,
            });
            ControlFlow::Continue(())
        })
        .expect("it can be read");
    let basis = ReportBasis {
        survey: survey.facts(),
        rulesets: &rulesets,
        options,
        today: "2026-05-04".to_owned(),
        tool_version: "0.0.0",
        explain: Explain::No,
        detail: Detail::Short,
        width: 80,
    };
    let mut written = Vec::new();
    altered_survey(&mut written, &planned, &basis).expect("a Vec takes everything");
    let after_text = String::from_utf8(written.clone()).expect("UTF-8");
    let files: Vec<Box<dyn SurveyFile>> =
        vec![Box::new(InMemory::new("after.csv", written.as_slice()))];
    let after = Survey::scan(&files).expect("it can be read");
    let mut judged_after: BTreeMap<String, Judged<'_>> = BTreeMap::new();
    after
        .guards(&mut |guard| {
            let judged = judge(&guard, after.facts(), &rulesets, options);
            judged_after.insert(full_name(&guard), judged);
            ControlFlow::Continue(())
        })
        .expect("it can be read");
    let (mut short, mut met) = (0, 0);
    for one in &planned {
        let after = judged_after
            .get(&full_name(&one.guard))
            .unwrap_or_else(|| panic!("{text}\n{after_text}"));
        let told = || {
            format!(
                "{:?}\n{text}\n{after_text}",
                one.plan
                    .steps
                    .iter()
                    .map(|step| &step.offered.says)
                    .collect::<Vec<_>>()
            )
        };
        for key in &one.plan.way.solved {
            assert!(
                is_met(after, key),
                "{key:?} is claimed and not met\n{}",
                told()
            );
        }
        assert_eq!(after.verdict, one.plan.way.verdict, "{}", told());
        breaks_nothing(&one.judged, after, &told);
        listed(one, after, &told);
        short += one
            .plan
            .topics
            .iter()
            .map(|topic| topic.short.len())
            .sum::<usize>();
        met += one.plan.way.solved.len() + one.plan.way.no_longer_asked.len();
    }
    (short, met)
}

fn same_rule<'f, 'r>(judged: &'f Judged<'r>, finding: &Finding<'_>) -> Option<&'f Finding<'r>> {
    judged.findings.iter().find(|other| {
        other.ruleset.id == finding.ruleset.id
            && other.rule.id == finding.rule.id
            && other.item == finding.item
    })
}

/// A rule that was met is met or no longer asked; what nobody can see before it is built,
/// and what the load path only indicates, may be open.
fn breaks_nothing(before: &Judged<'_>, after: &Judged<'_>, told: &dyn Fn() -> String) {
    let built = [Item::MovesWhenPushed, Item::Condition];
    for finding in &after.findings {
        let was = same_rule(before, finding).map(|was| was.verdict);
        let short = finding.verdict == Verdict::FallsShort;
        assert!(
            !short || was == Some(Verdict::FallsShort),
            "{} {} falls short anew\n{}",
            finding.rule.id,
            finding.item,
            told()
        );
        let open = finding.verdict.is_undecided();
        let may_be_open = built.contains(&finding.item)
            || finding.chain.is_some()
            || finding.is_strength_unseen();
        // what met only where it was measured did not hold
        let held = same_rule(before, finding).map(|was| was.counts_as());
        let was_met = held == Some(Verdict::Meets);
        assert!(
            !(was_met && open && !may_be_open),
            "{} {} held and is {:?}\n{}",
            finding.rule.id,
            finding.item,
            finding.verdict,
            told()
        );
    }
}

/// What falls short after all belongs to a step that is not proved, or to what has no remedy.
fn listed(one: &PlannedGuard<'_>, after: &Judged<'_>, told: &dyn Fn() -> String) {
    let unproved = one
        .plan
        .steps
        .iter()
        .filter(|step| !step.proved)
        .map(|step| &step.topic);
    let left: Vec<_> = unproved
        .chain(one.plan.unsolved.iter().map(|unsolved| &unsolved.topic))
        .flat_map(|topic| &topic.short)
        .collect();
    for finding in after
        .findings
        .iter()
        .filter(|finding| finding.verdict == Verdict::FallsShort && finding.counts())
    {
        let known = left
            .iter()
            .any(|key| key.rule == finding.rule.id && key.ruleset == finding.ruleset.id);
        assert!(
            known,
            "{} falls short still and is not listed\n{}",
            finding.rule.id,
            told()
        );
    }
}

#[test]
fn the_remedies_of_every_demo_survey_hold_up() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/demo-surveys");
    let mut read = 0;
    for entry in std::fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("readable").path();
        if path.extension().is_none_or(|end| end != "csv") {
            continue;
        }
        let text = std::fs::read_to_string(&path).expect("readable");
        let (short, met) = holds_up(&text, &["us-dwelling-2018", "small-child-advice"]);
        assert!(short > 0, "{}", path.display());
        assert!(
            2 * met >= short || path.ends_with("load-path.csv"),
            "{}: {met} of {short}",
            path.display()
        );
        read += 1;
    }
    assert!(read >= 6, "{read}");
}

/// Readings that a guard may have; of each item one or none.
const READINGS: &[(&str, &[&str])] = &[
    ("use", &["dwelling", "public"]),
    (
        "place",
        &[
            "landing",
            "deck",
            "balcony",
            "stair",
            "floor edge",
            "porch",
            "terrace",
        ],
    ),
    ("location", &["inside", "outside"]),
    ("drop", &["20 in", "4 ft", "9 ft", "2.6 m", "22 ft"]),
    ("children", &["9 months", "14 months", "3 years", "none"]),
    (
        "height",
        &[
            "28 in",
            "33 1/2 in",
            "34 3/4 in",
            "35 15/16 in",
            "36 in",
            "36 1/8 in",
            "39 in",
            "42 1/2 in",
            "45 in",
            "880 mm",
            "905 mm",
            "1072 mm",
            "below 36 in",
            "reaches 42 in",
            "30 in; 38 in",
        ],
    ),
    (
        "opening",
        &[
            "2 in",
            "3 1/4 in",
            "3 3/4 in",
            "4 in",
            "4 1/16 in",
            "5 in",
            "9 1/2 in",
            "94 mm",
            "105 mm",
            "4 in ball passes",
            "4 in ball stops everywhere",
            "circle 5 in at 20 in",
            "none",
            "not reached",
        ],
    ),
    ("openings checked", &["every one", "some"]),
    (
        "bottom gap",
        &[
            "none",
            "1 1/2 in",
            "3 1/8 in",
            "4 1/4 in",
            "7 in",
            "10 in",
            "60 mm",
            "110 mm",
            "4 in ball passes",
        ],
    ),
    ("end gap", &["2 in", "4 1/4 in", "5 in"]),
    (
        "infill",
        &[
            "balusters",
            "horizontal bars",
            "cables",
            "panel",
            "other",
            "mesh",
        ],
    ),
    ("infill loose", &["no", "one", "missing"]),
    (
        "foothold",
        &[
            "none",
            "13 in high 1 3/8 in deep",
            "400 mm high 20 mm deep",
            "300 mm high",
        ],
    ),
    ("thing to climb", &["none", "18 in high 5 in away", "yes"]),
    ("moves when pushed", &["no", "a little", "a lot"]),
    (
        "post fastening",
        &["through bolts", "nails", "hidden", "lag screws", "missing"],
    ),
    ("notched post", &["yes", "no"]),
    ("fastened to", &["rim board", "subfloor", "joist"]),
    ("handrail", &["top of the guard", "separate", "none"]),
    (
        "handrail height",
        &["33 in", "36 in", "39 1/2 in", "950 mm"],
    ),
    ("risers", &["3", "13"]),
    (
        "stair triangle",
        &[
            "none",
            "rise 7 3/4 going 10 lift 2 in",
            "rise 7 going 10 1/2 lift 2 1/4 in",
            "rise 190 going 240 lift 0 mm",
            "6 in ball passes",
        ],
    ),
    ("riser opening", &["none", "3 in", "6 1/4 in"]),
    ("top of stairs gate", &["none", "pressed", "screwed"]),
    ("baluster section", &["3/4 x 3/4 in", "1 1/2 x 1 1/2 in"]),
    ("baluster spacing", &["4 3/4 in", "5 1/4 in"]),
    ("guard length", &["9 ft", "3.2 m"]),
    ("condition", &["sound", "rot"]),
    ("paint", &["sound", "flaking"]),
    ("state", &["existing", "proposed"]),
    ("v opening", &["5 in wide 6 in deep", "none"]),
    ("edge gap", &["1 in", "4 1/2 in"]),
];

const CHOSEN: &[&[&str]] = &[
    &["us-dwelling-2018", "small-child-advice"],
    &["us-buildings-2024", "small-child-advice"],
    &["uk-approved-document-k", "small-child-advice"],
    &["france-2024", "us-dwelling-2018"],
    &["small-child-advice"],
    &["canada-dwelling", "austria-oib-4", "sweden-bbr"],
];

/// Rows of one guard: an item is there three times in four, with one of its readings.
fn survey(picks: &[(u8, u8)]) -> String {
    let mut text = "unit,guard,item,reading\n".to_owned();
    for ((item, readings), (there, which)) in READINGS.iter().zip(picks) {
        if *there < 64 {
            continue;
        }
        let reading = readings[usize::from(*which) % readings.len()];
        for one in reading.split("; ") {
            text.push_str(&format!(",g,{item},{one}\n"));
        }
    }
    text
}

/// How many random guards; 2 000 were tried by hand with `REMEDY_GUARDS=2000`.
fn guards() -> u32 {
    std::env::var("REMEDY_GUARDS")
        .ok()
        .and_then(|count| count.parse().ok())
        .unwrap_or(24)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: guards(), failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_remedies_of_random_guards_hold_up(
        picks in proptest::collection::vec((any::<u8>(), any::<u8>()), READINGS.len()),
        chosen in 0..CHOSEN.len(),
    ) {
        holds_up(&survey(&picks), CHOSEN[chosen]);
    }
}
