//! Loading: what the words of a file become, and rulesets that extend others.

use std::cell::RefCell;

use guardrule::input::Severity;
use guardrule::input::SourceFile;
use guardrule::items::Hazard;
use guardrule::items::Item;
use guardrule::items::Verdict;
use guardrule::quantities::Age;
use guardrule::quantities::Length;
use guardrule::quantities::LengthUnit;
use guardrule::rules::Bounds;
use guardrule::rules::Check;
use guardrule::rules::Condition;
use guardrule::rules::Demand;
use guardrule::rules::InForce;
use guardrule::rules::Limit;
use guardrule::rules::LoadedRuleset;
use guardrule::rules::Rule;
use guardrule::rules::Ruleset;
use guardrule::rules::Status;
use guardrule::rules::Subject;
use guardrule::rules::Test;
use guardrule::rules::Urgency;
use guardrule::rules::load;
use guardrule::rules::load_to_judge;
use guardrule::rules::straddle_gaps;

use super::faulty::plain;

/// Loads the first of some files; the others are those it may extend.
pub(super) fn load_files(files: &[(&str, &str)]) -> LoadedRuleset {
    let (first, _) = files.first().expect("one file or more");
    load(first, &|name| {
        let (name, text) = files.iter().find(|(file, _)| *file == name)?;
        Some(SourceFile::new(name, text))
    })
}

/// The ruleset of files that may have warnings and no errors.
pub(super) fn sound(files: &[(&str, &str)]) -> Ruleset {
    let loaded = load_files(files);
    let errors: Vec<String> = loaded
        .diagnostics
        .iter()
        .filter(|diagnostic| diagnostic.severity == Severity::Error)
        .map(plain)
        .collect();
    assert!(errors.is_empty(), "{}", errors.join("\n"));
    loaded.ruleset.expect("a ruleset without errors is there")
}

pub(super) fn head(id: &str) -> String {
    format!(
        "id = \"{id}\"\ntitle = \"T\"\nedition = \"E\"\n\
         [source.s]\ntitle = \"S\"\nedition = \"E\"\nstatus = \"quoted\"\n"
    )
}

pub(super) fn rule(id: &str, asks: &str) -> String {
    format!(
        "[[rule]]\nid = \"{id}\"\nhazard = \"climb\"\nclause = \"1\"\n\
         says = \"It is so.\"\nsource = \"s\"\n{asks}\n"
    )
}

/// The one rule of a file with this body.
fn only_rule(asks: &str) -> Rule {
    let text = head("one") + &rule("r", asks);
    let mut rules = sound(&[("one.toml", &text)]).rules;
    assert_eq!(rules.len(), 1);
    rules.remove(0)
}

fn limit(written: &str, length: Length, unit: LengthUnit) -> Limit {
    Limit {
        length,
        unit,
        written: written.to_owned(),
    }
}

fn inches(written: &str, sixty_fourths: i32) -> Limit {
    limit(
        written,
        Length::sixty_fourths(sixty_fourths),
        LengthUnit::Inch,
    )
}

#[test]
fn what_a_rule_may_leave_out_has_its_default() {
    let rule = only_rule("check.height.at-least = \"36 in\"");
    assert_eq!(rule.hazard, Hazard::Climb);
    assert_eq!(rule.urgency, Urgency::Soon);
    assert_eq!(rule.status, Status::Quoted);
    assert_eq!(rule.judgement, None);
    assert!(rule.when.is_empty() && rule.when_any.is_empty() && rule.unless.is_empty());
    assert_eq!(&*rule.file, "one.toml");
    let at_least = Some(inches("36 in", 36 * 64));
    let demand = Demand::Length(Bounds {
        at_least,
        ..Bounds::default()
    });
    let subject = Subject::Item(Item::Height);
    assert_eq!(rule.checks, [Check { subject, demand }]);
}

#[test]
fn every_operator_becomes_its_bound() {
    let rule = only_rule(
        "check.any-opening = { stops-ball = \"4 in\", at-least = \"1/2 in\", \
         not-within = { above = \"89 mm\", below = \"230 mm\" }, \
         zone = [\"0 in\", \"36 in\"], pushed = \"50 lbf\" }",
    );
    let check = rule.checks.first().expect("one check");
    assert_eq!(check.subject, Subject::AnyOpening);
    let Demand::Opening(demand) = &check.demand else {
        panic!("{:?}", check.demand);
    };
    assert_eq!(demand.stops_ball, Some(inches("4 in", 256)));
    assert_eq!(demand.at_least, Some(inches("1/2 in", 32)));
    assert_eq!(demand.at_most, None);
    let (above, below) = demand.not_within.as_ref().expect("a band");
    let millimetres = |n| Length::millimetres(n);
    assert_eq!(
        (above.length, below.length),
        (millimetres(89), millimetres(230))
    );
    let zone = demand.zone.as_ref().expect("a zone");
    assert_eq!(
        (zone.from.length, zone.to.length),
        (Length::ZERO, Length::inches(36))
    );
    assert!(demand.pushed.is_some());
    let rule = only_rule("check.foothold = { none-within = [\"140 mm\", \"900 mm\"] }");
    let check = rule.checks.first().expect("one check");
    let Demand::Foothold(demand) = &check.demand else {
        panic!("{:?}", check.demand);
    };
    let zone = demand.none_within.as_ref().expect("a zone");
    assert_eq!(zone.to.length, millimetres(900));
    assert_eq!(demand.deeper_than, None);
}

#[test]
fn conditions_of_every_kind() {
    let rule = only_rule(
        "when.place = [\"stairs\", \"deck\"]\n\
         when.infill.is-not = \"solid\"\n\
         when.drop.above = \"30 in\"\n\
         when.risers.at-least = 4\n\
         when.children.below = \"2 years\"\n\
         when.built.below = \"1998\"\n\
         check.thing-to-climb.is = \"none\"\n\
         [[rule.when-any]]\nlocation = \"inside\"\n\
         [[rule.when-any]]\nshared = \"yes\"\nuse = [\"public\"]\n\
         [[rule.unless]]\nrisers.at-most = \"2\"",
    );
    let tests: Vec<(Item, &Test)> = rule.when.iter().map(|c| (c.item, &c.test)).collect();
    let below = |age| Bounds {
        below: Some(age),
        ..Bounds::default()
    };
    let expected = [
        (Item::Place, Test::OneOf(vec!["stair", "deck"])),
        (Item::Infill, Test::NoneOf(vec!["solid"])),
        (
            Item::Drop,
            Test::Length(Bounds {
                above: Some(inches("30 in", 30 * 64)),
                ..Bounds::default()
            }),
        ),
        (
            Item::Risers,
            Test::Count(Bounds {
                at_least: Some(4),
                ..Bounds::default()
            }),
        ),
        (Item::Children, Test::Age(below(Age::from_months(24)))),
        (
            Item::Built,
            Test::Years(Bounds {
                below: Some(1998),
                ..Bounds::default()
            }),
        ),
    ];
    let expected: Vec<(Item, &Test)> = expected.iter().map(|(item, test)| (*item, test)).collect();
    assert_eq!(tests, expected);
    let sizes: Vec<usize> = rule.when_any.iter().map(Vec::len).collect();
    assert_eq!(sizes, [1, 2]);
    assert_eq!(rule.unless.len(), 1);
    let demand = &rule.checks.first().expect("one check").demand;
    let is = vec!["none"];
    let is_not = Vec::new();
    assert_eq!(*demand, Demand::Words { is, is_not });
}

#[test]
fn check_any_holds_its_alternatives() {
    let rule = only_rule(
        "[[rule.check-any]]\nheight.at-least = \"42 in\"\n\
         [[rule.check-any]]\nguard.is = \"present\"",
    );
    let items: Vec<Subject> = rule.checks.iter().map(|check| check.subject).collect();
    assert_eq!(
        items,
        [Subject::Item(Item::Height), Subject::Item(Item::Guard)]
    );
}

#[test]
fn an_example_keeps_its_readings_and_its_place() {
    let rule = only_rule(
        "check.height.at-least = \"36 in\"\n[[rule.example]]\n\
         given = { risers = 4, height = [\"36 in\", \"35 to 36 in\"] }\nexpect = \"falls short\"",
    );
    let example = rule.examples.first().expect("one example");
    let given: Vec<(Item, &str)> = example
        .given
        .iter()
        .map(|(i, _, w)| (*i, w.as_str()))
        .collect();
    assert_eq!(
        given,
        [
            (Item::Risers, "4"),
            (Item::Height, "36 in"),
            (Item::Height, "35 to 36 in"),
            (Item::Height, "35 to 36 in"),
        ]
    );
    assert_eq!(example.expect, Verdict::FallsShort);
    assert_eq!(example.at.marked(), "\"falls short\"");
    assert_eq!(example.at.line(), 17);
}

#[test]
fn a_faulty_example_leaves_its_rule() {
    let asks = "check.height.at-least = \"36 in\"\n[[rule.example]]\n\
                given = { height = \"36\" }\nexpect = \"meets\"";
    let loaded = load_files(&[("a.toml", &(head("a") + &rule("r", asks)))]);
    let ruleset = loaded.ruleset.expect("the rule is sound");
    assert_eq!(ruleset.rules.len(), 1);
    assert!(ruleset.rules.iter().all(|rule| rule.examples.is_empty()));
    assert!(
        loaded
            .diagnostics
            .iter()
            .any(|d| d.severity == Severity::Error)
    );
}

pub(super) const TOWN: &str = r#"
id = "our-town"
title = "Our town"
edition = "2019"
extends = "us-dwelling-2018"
remove = ["handrail-missing"]

[source.town]
title = "Town ordinance"
edition = "2019"
status = "published"

[[rule]]
id = "no-vines"
hazard = "climb"
clause = "Town 1"
says = "Nothing to climb stands near."
source = "town"
check.thing-to-climb.is = "none"

[[rule]]
id = "rail-too-low"
hazard = "fall over"
clause = "Town 2"
says = "Guards are 42 in high."
source = "irc-2018"
status = "memory"
check.height.at-least = "42 in"
"#;

#[test]
fn an_amendment_replaces_adds_and_removes() {
    let base = sound_by_id("us-dwelling-2018");
    let ruleset = sound(&[("town.toml", TOWN)]);
    let ids = |ruleset: &Ruleset| -> Vec<String> {
        ruleset.rules.iter().map(|rule| rule.id.clone()).collect()
    };
    let mut expected = ids(&base);
    expected.retain(|id| id != "handrail-missing");
    expected.push("no-vines".to_owned());
    assert_eq!(ids(&ruleset), expected, "a replaced rule keeps its place");
    let rail = ruleset.rules.iter().find(|rule| rule.id == "rail-too-low");
    let rail = rail.expect("the rule is there");
    assert_eq!(
        (rail.clause.as_str(), rail.status),
        ("Town 2", Status::Memory)
    );
    assert!(rail.when.is_empty(), "the whole rule is replaced");
    assert_eq!(&*rail.file, "town.toml");
    let stair = ruleset
        .rules
        .iter()
        .find(|rule| rule.id == "stair-rail-too-low");
    assert_eq!(stair.map(|rule| &*rule.file), Some("us-dwelling-2018"));
    let told = ruleset.amendments.iter().map(|amendment| {
        let less: Vec<&str> = amendment.asks_less.iter().map(String::as_str).collect();
        (
            amendment.rule.as_str(),
            &*amendment.file,
            amendment.removed,
            less,
        )
    });
    assert_eq!(
        told.collect::<Vec<_>>(),
        [
            ("no-vines", "town.toml", false, vec![]),
            ("rail-too-low", "town.toml", false, vec![]),
            (
                "handrail-missing",
                "town.toml",
                true,
                vec!["what it asks is asked no more"]
            ),
        ]
    );
}

pub(super) fn sound_by_id(id: &str) -> Ruleset {
    load(id, &|_| None).ruleset.expect("a shipped ruleset")
}

#[test]
fn what_an_amendment_does_not_say_is_inherited() {
    let base = sound_by_id("us-dwelling-2018");
    let ruleset = sound(&[("town.toml", TOWN)]);
    assert_eq!(ruleset.id, "our-town");
    assert_eq!(&*ruleset.file, "town.toml");
    assert_eq!(ruleset.covers.says, base.covers.says);
    assert_eq!(ruleset.covers.conditions, base.covers.conditions);
    assert_eq!(ruleset.leaves_out, base.leaves_out);
    let years = InForce {
        from: 2018,
        until: Some(2021),
    };
    assert_eq!(ruleset.in_force, Some(years));
    assert_eq!(ruleset.cautions.len(), base.cautions.len());
    let keys: Vec<&str> = ruleset.sources.iter().map(|s| s.key.as_str()).collect();
    assert_eq!(keys, ["town", "irc-2018", "article", "states"]);
    let advice = "id = \"a\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"small-child-advice\"\n";
    assert!(
        sound(&[("a.toml", advice)]).advisory,
        "guidance does not turn into law"
    );
}

#[test]
fn what_an_amendment_says_replaces_what_was_there() {
    let text = "id = \"a\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"small-child-advice\"\n\
                advisory = false\nleaves-out = [\"All else.\"]\nin-force = { from = 1990 }\n\
                covers = { says = \"one house\", place = \"stair\" }\n";
    let ruleset = sound(&[("a.toml", text)]);
    assert!(!ruleset.advisory);
    assert_eq!(ruleset.leaves_out.len(), 1);
    assert_eq!(ruleset.leaves_out[0].says, "All else.");
    let years = InForce {
        from: 1990,
        until: None,
    };
    assert_eq!(ruleset.in_force, Some(years));
    let place = Condition {
        item: Item::Place,
        test: Test::OneOf(vec!["stair"]),
    };
    assert_eq!(ruleset.covers.conditions, [place]);
}

#[test]
fn a_chain_holds_four_files_and_no_fifth() {
    let link = |n: u32, extends: &str| {
        let check = "check.height.at-least = \"36 in\"";
        let head = head(&format!("link-{n}"));
        format!("{extends}\n{head}{}", rule(&format!("rule-{n}"), check))
    };
    let name = |n: u32| format!("{n}.toml");
    let chain = |length: u32| -> Vec<(String, String)> {
        (1..=length)
            .map(|n| {
                let extends = format!("extends = \"{}\"", name(n + 1));
                let extends = if n == length { "" } else { &extends };
                (name(n), link(n, extends))
            })
            .collect()
    };
    let load_chain = |length| {
        let files = chain(length);
        let files: Vec<(&str, &str)> = files
            .iter()
            .map(|(n, t)| (n.as_str(), t.as_str()))
            .collect();
        load_files(&files)
            .ruleset
            .map(|ruleset| ruleset.rules.len())
    };
    assert_eq!(load_chain(4), Some(4));
    assert_eq!(load_chain(5), None);
}

#[test]
fn lookup_is_never_asked_for_a_shipped_id() {
    let asked = RefCell::new(Vec::new());
    let loaded = load("town.toml", &|name| {
        asked.borrow_mut().push(name.to_owned());
        (name == "town.toml").then(|| SourceFile::new(name, TOWN))
    });
    assert!(loaded.ruleset.is_some());
    assert_eq!(*asked.borrow(), ["town.toml"]);
}

#[test]
fn a_mark_at_the_start_of_the_file_moves_no_place() {
    let text = head("a") + &rule("r", "check.height.at-least = \"36 inchez\"");
    let places = |text: &str| -> Vec<(u64, u64)> {
        let loaded = load_files(&[("a.toml", text)]);
        let at = loaded.diagnostics.iter().map(|d| &d.at.at);
        at.map(|at| (at.line(), at.column())).collect()
    };
    let plain = places(&text);
    assert_eq!(plain, [(14, 29)]);
    assert_eq!(places(&format!("\u{feff}{text}")), plain);
    assert_eq!(places(&text.replace('\n', "\r\n")), plain);
}

#[test]
fn the_gaps_of_examples_are_named() {
    let examples = |given: &[&str]| {
        let mut text = head("a")
            + &rule(
                "r",
                "check.height = { at-least = \"34 in\", below = \"38 in\" }",
            );
        for height in given {
            text += &format!(
                "[[rule.example]]\ngiven = {{ height = \"{height}\" }}\nexpect = \"meets\"\n"
            );
        }
        let gaps = straddle_gaps(&sound(&[("a.toml", &text)]));
        gaps.into_iter().map(|gap| gap.says).collect::<Vec<_>>()
    };
    assert_eq!(
        examples(&["36 in"]),
        [
            "no example at exactly 34 in",
            "no example just below 34 in",
            "no example at exactly 38 in",
            "no example just below 38 in",
            "no example that falls short",
        ]
    );
    let all = ["863.6 mm", "33 15/16 in", "38 in", "965.199999 mm"];
    assert_eq!(examples(&all), ["no example that falls short"]);
    // 2 mm is close, more is not
    let near = ["34 in", "861.6 mm", "38 in", "963.199999 mm"];
    let expected = ["no example just below 38 in", "no example that falls short"];
    assert_eq!(examples(&near), expected);
}

#[test]
fn a_check_reads_no_examples_and_loses_nothing_else() {
    for id in guardrule::rules::embedded_ids() {
        let mut whole = load(id, &|_| None).ruleset.expect("a shipped ruleset");
        let to_judge = load_to_judge(id, &|_| None);
        assert!(to_judge.diagnostics.is_empty(), "{id}");
        let to_judge = to_judge.ruleset.expect("a shipped ruleset");
        whole
            .rules
            .iter_mut()
            .for_each(|rule| rule.examples.clear());
        whole
            .removed
            .iter_mut()
            .for_each(|rule| rule.examples.clear());
        whole
            .asks_nothing
            .iter_mut()
            .for_each(|silence| silence.examples.clear());
        assert_eq!(format!("{whole:?}"), format!("{to_judge:?}"), "{id}");
    }
    let asks = "check.height.at-least = \"36 in\"\n[[rule.example]]\n\
                given = { height = \"36\" }\nexpect = \"meets\"";
    let text = head("a") + &rule("r", asks);
    let loaded = load_to_judge("a.toml", &|name| Some(SourceFile::new(name, &text)));
    assert!(
        loaded.diagnostics.is_empty(),
        "faults of examples are for rules test"
    );
    assert_eq!(loaded.ruleset.map(|ruleset| ruleset.rules.len()), Some(1));
}
