//! Over every shipped ruleset, at each place and for each use that it covers: no
//! guard that a careful person would refuse meets, and none ends with status 0,
//! be the ruleset whole, spoiled by a slip, or short of a rule.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::ops::ControlFlow;

use guardrule::input::SourceFile;
use guardrule::items::Hazard;
use guardrule::items::Item;
use guardrule::items::Verdict;
use guardrule::judge::Judged;
use guardrule::judge::Options;
use guardrule::judge::WhyUnclear;
use guardrule::judge::judge;
use guardrule::rules::Ruleset;
use guardrule::rules::Subject;
use guardrule::rules::Test;
use guardrule::rules::embedded;
use guardrule::rules::embedded_ids;
use guardrule::rules::load;
use guardrule::survey::InMemory;
use guardrule::survey::Survey;
use guardrule::survey::SurveyFile;

type Readings = Vec<(&'static str, &'static str)>;

/// A building and a drop; the drop lies above every trigger of the rulesets.
const BUILDINGS: &[(&str, &[(&str, &str)])] = &[
    (
        "a house",
        &[
            ("drop", "3 m"),
            ("dwellings in building", "1"),
            ("shared", "no"),
            ("location", "outside"),
            ("storeys", "2"),
            ("risers", "14"),
            ("built", "2023"),
            ("sill above ground", "4 m"),
        ],
    ),
    (
        "a block",
        &[
            ("drop", "25 m"),
            ("dwellings in building", "12"),
            ("shared", "yes"),
            ("location", "inside"),
            ("storeys", "6"),
            ("risers", "14"),
            ("built", "2023"),
            ("children", "2 years"),
            ("sill above ground", "25 m"),
        ],
    ),
    ("a drop alone", &[("drop", "3 m")]),
];

/// What nobody could find fault with, as far as one can write it down.
const SOUND: &[(&str, &str)] = &[
    ("guard", "present"),
    ("height", "1300 mm"),
    ("opening", "40 mm"),
    ("openings checked", "every one"),
    ("bottom gap", "20 mm"),
    ("end gap", "20 mm"),
    ("edge gap", "20 mm"),
    ("riser opening", "20 mm"),
    ("stair triangle", "rise 150 mm going 280 mm lift 5 mm"),
    ("foothold", "none"),
    ("thing to climb", "none"),
    ("infill", "balusters"),
    ("infill loose", "no"),
    ("handrail", "separate"),
    ("handrail height", "920 mm"),
    ("handrail sides", "both"),
    ("sill height", "1300 mm"),
    ("moves when pushed", "no"),
    ("condition", "sound"),
    ("notched post", "no"),
    ("post fastening", "through bolts"),
    ("fastened to", "joist"),
];

/// The openings of which each is made a hole in turn.
const OPENINGS: &[(&str, &str)] = &[
    ("opening", "300 mm"),
    ("bottom gap", "300 mm"),
    ("end gap", "300 mm"),
    ("riser opening", "300 mm"),
    ("stair triangle", "rise 300 mm going 400 mm lift 100 mm"),
];

/// One guard of the sweep: what is wrong with it, where it stands, and its readings.
#[derive(Clone)]
struct Case {
    what: String,
    readings: Readings,
}

fn set(readings: &mut Readings, item: &'static str, reading: &'static str) {
    readings.retain(|(other, _)| *other != item);
    readings.push((item, reading));
}

/// The words of a circumstance that a ruleset covers; all of them where it says nothing.
fn covered(ruleset: &Ruleset, item: Item) -> Vec<&'static str> {
    let all = item.words().iter().map(|word| word.name);
    let mut conditions = ruleset.covers.conditions.iter();
    match conditions.find(|condition| condition.item == item) {
        None => all.collect(),
        Some(condition) => match &condition.test {
            Test::OneOf(words) => words.clone(),
            Test::NoneOf(words) => all.filter(|word| !words.contains(word)).collect(),
            Test::Age(_) | Test::Count(_) | Test::Length(_) | Test::Years(_) => all.collect(),
        },
    }
}

/// Where guards of a ruleset may stand: the circumstances, with their words.
fn scenes(ruleset: &Ruleset) -> Vec<Case> {
    let mut scenes = Vec::new();
    for place in covered(ruleset, Item::Place) {
        for usage in covered(ruleset, Item::Use) {
            for (building, stated) in BUILDINGS {
                let mut readings: Readings = vec![("place", place), ("use", usage)];
                readings.extend(*stated);
                scenes.push(Case {
                    what: format!("{place}, {usage}, {building}"),
                    readings,
                });
            }
        }
    }
    scenes
}

fn sound(scene: &Case) -> Case {
    let mut readings = scene.readings.clone();
    readings.extend(SOUND);
    // on a stair the gap below is the lift of the triangle; elsewhere there are no steps
    let elsewhere: &[&str] = if readings.contains(&("place", "stair")) {
        &["bottom gap"]
    } else {
        &["stair triangle", "riser opening"]
    };
    readings.retain(|(item, _)| !elsewhere.contains(item));
    Case {
        what: format!("sound: {}", scene.what),
        readings,
    }
}

/// A guard to the knee, with holes that a child goes through.
fn low_with_holes(scene: &Case) -> Case {
    let mut case = sound(scene);
    set(&mut case.readings, "height", "300 mm");
    set(&mut case.readings, "sill height", "300 mm");
    for (item, hole) in OPENINGS {
        set(&mut case.readings, item, hole);
    }
    case.what = format!("low with holes: {}", scene.what);
    case
}

/// Guards that must not meet, whatever the ruleset.
fn refused(scene: &Case) -> Vec<Case> {
    let mut cases = vec![low_with_holes(scene)];
    for (item, hole) in OPENINGS {
        let mut case = sound(scene);
        set(&mut case.readings, "height", "300 mm");
        set(&mut case.readings, "sill height", "300 mm");
        let others = OPENINGS.iter().map(|(other, _)| *other);
        let others: Vec<&str> = others.filter(|other| other != item).collect();
        case.readings.retain(|(item, _)| !others.contains(item));
        set(&mut case.readings, item, hole);
        case.what = format!("low with {item} {hole}: {}", scene.what);
        cases.push(case);
    }
    let mut moves = sound(scene);
    set(&mut moves.readings, "moves when pushed", "a lot");
    moves.what = format!("moves a lot: {}", scene.what);
    cases.push(moves);
    cases
}

fn notebook(cases: &[Case]) -> String {
    let mut text = "guard,item,reading\n".to_owned();
    for (at, case) in cases.iter().enumerate() {
        for (item, reading) in &case.readings {
            writeln!(text, "g{at},{item},{reading}").expect("a text takes all");
        }
    }
    text
}

fn table(cases: &[Case]) -> String {
    let mut items: Vec<&str> = Vec::new();
    for (item, _) in cases.iter().flat_map(|case| &case.readings) {
        if !items.contains(item) {
            items.push(item);
        }
    }
    let mut text = format!("guard,{}\n", items.join(","));
    for (at, case) in cases.iter().enumerate() {
        write!(text, "g{at}").expect("a text takes all");
        for item in &items {
            let reading = case.readings.iter().find(|(of, _)| of == item);
            write!(text, ",{}", reading.map_or("", |(_, reading)| reading)).expect("likewise");
        }
        text.push('\n');
    }
    text
}

/// Judges each guard of a survey by each of some choices of rules, and hands over
/// which guard, which choice, and what became of it.
fn judged(text: &str, choices: &[Vec<Ruleset>], seen: &mut dyn FnMut(usize, usize, &Judged<'_>)) {
    if text.lines().nth(1).is_none() {
        return;
    }
    let file: Box<dyn SurveyFile> = Box::new(InMemory::new("sweep.csv", text.as_bytes()));
    let files = vec![file];
    let survey = Survey::scan(&files).expect("held in memory");
    let mut at = 0;
    let diagnostics = survey.guards(&mut |guard| {
        for (choice, rulesets) in choices.iter().enumerate() {
            let options = Options::default();
            seen(
                at,
                choice,
                &judge(&guard, survey.facts(), rulesets, options),
            );
        }
        at += 1;
        ControlFlow::Continue(())
    });
    let diagnostics = diagnostics.expect("held in memory");
    assert!(
        !diagnostics.any_error(),
        "the readings of the sweep are right"
    );
}

fn shipped() -> Vec<Ruleset> {
    let all = embedded_ids().map(|id| load(id, &|_| None).ruleset);
    all.map(|ruleset| ruleset.expect("a shipped ruleset"))
        .collect()
}

/// Whether the command ends with status 0.
fn ends_well(judged: &Judged<'_>) -> bool {
    matches!(judged.verdict, Verdict::Meets | Verdict::DoesNotApply)
}

/// Whether the text itself asks for no guard there: O. Reg. 332/12, 9.8.8.1.(5), speaks of
/// the windows of dwellings that lie above another suite (read).
fn is_asked_for_nothing(id: &str, what: &str, judged: &Judged<'_>) -> bool {
    id.starts_with("ontario-2012")
        && what.contains("window")
        && judged.verdict == Verdict::DoesNotApply
}

#[test]
fn no_guard_that_a_careful_person_would_refuse_meets_any_ruleset() {
    let mut count = 0;
    let mut wrong = Vec::new();
    for ruleset in shipped() {
        let scenes = scenes(&ruleset);
        let cases: Vec<Case> = scenes.iter().flat_map(refused).collect();
        let id = ruleset.id.clone();
        let choice = [vec![ruleset]];
        let mut verdicts: BTreeMap<usize, Verdict> = BTreeMap::new();
        judged(&notebook(&cases), &choice, &mut |at, _, judged| {
            count += 1;
            verdicts.insert(at, judged.verdict);
            if ends_well(judged) && !is_asked_for_nothing(&id, &cases[at].what, judged) {
                wrong.push(format!("{id}: {}: {}", cases[at].what, judged.verdict));
            }
        });
        judged(&table(&cases), &choice, &mut |at, _, judged| {
            count += 1;
            if verdicts.get(&at) != Some(&judged.verdict) {
                wrong.push(format!(
                    "{id}: {}: as a table {}",
                    cases[at].what, judged.verdict
                ));
            }
        });
    }
    assert!(count > 30_000, "{count} guards");
    assert!(
        wrong.is_empty(),
        "{} of {count}:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}

/// The text of a ruleset without the examples of its rules.
fn without_examples(id: &str) -> String {
    let text = embedded(id).expect("a shipped one").text;
    let mut kept = String::new();
    let mut example = false;
    for line in text.lines() {
        if line.starts_with('[') {
            example = line.ends_with(".example]]");
        }
        if !example {
            kept.push_str(line);
            kept.push('\n');
        }
    }
    kept
}

fn load_text(text: &str) -> Ruleset {
    let loaded = load("spoiled.toml", &|name| {
        (name == "spoiled.toml").then(|| SourceFile::new(name, text))
    });
    let unreadable = || Ruleset::unreadable("spoiled.toml");
    loaded.ruleset.unwrap_or_else(unreadable)
}

/// The ruleset with a slip in each of its rules in turn, with each rule taken away
/// by an amendment, and with each rule replaced by one that has a slip.
fn spoiled(ruleset: &Ruleset) -> Vec<(String, Vec<Ruleset>)> {
    const SLIPS: &[(&str, &str)] = &[
        ("\nhazard = ", "\nhazrd = "),
        ("\nsource = \"", "\nsource = \"no-such-"),
        ("\nclause = ", "\nclase = "),
        ("\ncheck", "\nchek"),
    ];
    let mut all = Vec::new();
    let text = without_examples(&ruleset.id);
    let starts: Vec<usize> = text.match_indices("[[rule]]\n").map(|(at, _)| at).collect();
    for (index, at) in starts.into_iter().enumerate() {
        let (right, wrong) = SLIPS[index % SLIPS.len()];
        let (before, after) = text.split_at(at);
        let spoiled = format!("{before}{}", after.replacen(right, wrong, 1));
        all.push((
            format!("a slip {wrong:?} at byte {at}"),
            vec![load_text(&spoiled)],
        ));
    }
    let head = |more: &str| {
        format!(
            "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"{}\"\n{more}\n",
            ruleset.id
        )
    };
    for rule in &ruleset.rules {
        let id = &rule.id;
        let removed = load_text(&head(&format!("remove = [\"{id}\"]")));
        all.push((format!("without {id}"), vec![removed]));
        let slip = format!("[[rule]]\nid = \"{id}\"\nhazard = \"{}\"\n", rule.hazard);
        all.push((
            format!("{id} replaced by a slip"),
            vec![load_text(&head(&slip))],
        ));
    }
    let missing = vec![ruleset.clone(), Ruleset::unreadable("nosuch.toml")];
    all.push(("beside one that is not there".to_owned(), missing));
    all
}

#[test]
fn a_fault_in_a_ruleset_lets_no_low_guard_meet() {
    let mut count = 0;
    let mut variants = 0;
    let mut wrong = Vec::new();
    for ruleset in shipped() {
        let scenes = scenes(&ruleset);
        let first = covered(&ruleset, Item::Use)[0];
        // with nothing stated but the drop every case is judged; the first sweep has that
        let of_first =
            |scene: &&Case| scene.readings.contains(&("use", first)) && scene.readings.len() > 3;
        let cases: Vec<Case> = scenes.iter().filter(of_first).map(low_with_holes).collect();
        let (names, choices): (Vec<String>, Vec<Vec<Ruleset>>) =
            spoiled(&ruleset).into_iter().unzip();
        variants += choices.len();
        judged(&notebook(&cases), &choices, &mut |at, choice, judged| {
            count += 1;
            let what = &cases[at].what;
            if ends_well(judged) && !is_asked_for_nothing(&ruleset.id, what, judged) {
                wrong.push(format!(
                    "{} {}: {what}: {}",
                    ruleset.id, names[choice], judged.verdict
                ));
            }
        });
    }
    assert!(
        variants > 1_500 && count > 20_000,
        "{count} guards, {variants} rulesets"
    );
    assert!(
        wrong.is_empty(),
        "{} of {count}:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}

/// Leaves out, one at a time, what the rules on falling over and through looked at.
#[test]
fn a_guard_of_which_a_rule_was_not_answered_does_not_meet() {
    let mut count = 0;
    let mut wrong = Vec::new();
    let mut can_meet: Vec<String> = Vec::new();
    let mut cannot: Vec<String> = Vec::new();
    let mut told = String::new();
    for ruleset in shipped() {
        let cases: Vec<Case> = scenes(&ruleset).iter().map(sound).collect();
        let id = ruleset.id.clone();
        let choice = [vec![ruleset]];
        let mut left_out: Vec<Case> = Vec::new();
        let mut verdicts: BTreeMap<&str, usize> = BTreeMap::new();
        let mut nearest: Option<(Verdict, String)> = None;
        judged(&notebook(&cases), &choice, &mut |at, _, judged| {
            *verdicts.entry(judged.verdict.name()).or_default() += 1;
            let asked = judged.verdict != Verdict::DoesNotApply;
            if asked
                && nearest
                    .as_ref()
                    .is_none_or(|(verdict, _)| *verdict < judged.verdict)
            {
                nearest = Some((judged.verdict, what_is_unclear(judged)));
            }
            if judged.verdict != Verdict::Meets {
                return;
            }
            let looked_at = judged.findings.iter().filter(|finding| {
                let falls = [Hazard::FallOver, Hazard::FallThrough].contains(&finding.rule.hazard);
                // of several that suffice another may answer
                let alone = finding.rule.checks.len() == 1;
                // there is a hole only where a guard stands outside the floor, or has a solid part
                let if_written = [Item::EdgeGap, Item::GapAboveSolidPart].contains(&finding.item)
                    && finding
                        .rule
                        .checks
                        .iter()
                        .any(|check| check.subject == Subject::AnyOpening);
                let decides = falls && alone && !if_written && finding.binding;
                decides && finding.verdict == Verdict::Meets
            });
            let mut items: Vec<&str> = looked_at.map(|finding| finding.item.name()).collect();
            items.sort_unstable();
            items.dedup();
            // any reading of a guard says that it is there; only an end gap may be missing
            items.retain(|item| !["guard", "end gap"].contains(item));
            for item in items {
                let mut case = cases[at].clone();
                case.readings.retain(|(other, _)| *other != item);
                case.what = format!("without {item}: {}", case.what);
                left_out.push(case);
            }
        });
        let says = format!("{id}: {verdicts:?}");
        if verdicts.contains_key("meets") {
            can_meet.push(says);
        } else {
            let (verdict, unclear) = nearest.expect("it asks something somewhere");
            writeln!(told, "{id}: {verdict}{unclear}").expect("a text takes all");
            cannot.push(says);
        }
        judged(&notebook(&left_out), &choice, &mut |at, _, judged| {
            count += 1;
            if judged.verdict == Verdict::Meets {
                wrong.push(format!("{id}: {}", left_out[at].what));
            }
        });
    }
    assert!(count > 500, "{count} guards");
    assert!(
        wrong.is_empty(),
        "{} of {count}:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    // both kinds are there: the sweep is no proof where nothing can meet
    assert!(
        can_meet.len() > 30,
        "{} can meet:\n{}\n\n{} cannot:\n{}",
        can_meet.len(),
        can_meet.join("\n"),
        cannot.len(),
        cannot.join("\n")
    );
    let all = can_meet.len() + cannot.len();
    let head = format!(
        "{} of {all} rulesets can say that a guard meets.",
        can_meet.len()
    );
    let told = format!("{head} The others, of a guard that nobody could fault:\n\n{told}");
    insta::assert_snapshot!("what_rulesets_say_that_cannot_say_meets", told);
}

/// What keeps a ruleset from letting a sound guard meet, by hazard.
fn what_is_unclear(judged: &Judged<'_>) -> String {
    let mut all: Vec<String> = Vec::new();
    for unclear in &judged.unclear {
        let why = match unclear.why {
            WhyUnclear::HoleNotAsked(item) => format!("no rule asks about the {item}"),
            WhyUnclear::NoRuleRead => "no rule on it was read and met".to_owned(),
            WhyUnclear::NotCovered(item) => format!("{item} is not covered"),
            WhyUnclear::OnlyOneSubject(_) => "it speaks of other subjects alone".to_owned(),
            WhyUnclear::Silence(item) => format!("whether it asks nothing depends on {item}"),
            WhyUnclear::Unread(_) => "a part could not be read".to_owned(),
        };
        let hazard = unclear.hazard.map_or("all of it", Hazard::name);
        all.push(format!("; {hazard}: {why}"));
    }
    all.concat()
}
