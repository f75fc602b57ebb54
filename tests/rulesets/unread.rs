//! What of a ruleset could not be read, what it says it asks nothing about, and
//! what it speaks of alone: nothing of it is lost on the way to the judge.

use guardrule::input::Severity;
use guardrule::input::SourceFile;
use guardrule::items::Hazard;
use guardrule::items::Item;
use guardrule::items::Verdict;
use guardrule::rules::Concern;
use guardrule::rules::LoadedRuleset;
use guardrule::rules::Ruleset;
use guardrule::rules::Status;
use guardrule::rules::Unread;
use guardrule::rules::UnreadPart;
use guardrule::rules::embedded;
use guardrule::rules::embedded_ids;
use guardrule::rules::load;

use super::loading::TOWN;
use super::loading::head;
use super::loading::load_files;
use super::loading::rule;
use super::loading::sound;
use super::loading::sound_by_id;

const HEIGHT: &str = "check.height.at-least = \"40 in\"";

fn parts(ruleset: &Ruleset) -> Vec<&UnreadPart> {
    ruleset.unread.iter().map(|unread| &unread.part).collect()
}

fn errors(loaded: &LoadedRuleset) -> usize {
    let all = loaded.diagnostics.iter();
    all.filter(|d| d.severity == Severity::Error).count()
}

#[test]
fn a_faulty_replacement_leaves_the_rule_that_was_there_in_force() {
    let base = sound_by_id("us-dwelling-2018");
    let old = base.rules.iter().find(|rule| rule.id == "rail-too-low");
    let old = old.expect("the rule is there");
    let slips = [
        ("\"42 in\"", "\"42\""),
        ("at-least = \"42 in\"", "at-lest = \"42 in\""),
        ("source = \"irc-2018\"", "source = \"irc-2081\""),
        (
            "check.height.at-least = \"42 in\"",
            "when.drp.above = \"30 in\"\ncheck.height.at-least = \"42 in\"",
        ),
    ];
    for (right, wrong) in slips {
        let text = TOWN.replace(right, wrong);
        assert_ne!(text, TOWN);
        let loaded = load_files(&[("town.toml", &text)]);
        assert_eq!(errors(&loaded), 1, "{wrong}");
        let ruleset = loaded.ruleset.expect("the other rules remain");
        let kept = ruleset.rules.iter().find(|rule| rule.id == "rail-too-low");
        let kept = kept.expect("the parent's rule stays");
        assert_eq!((&kept.clause, &kept.checks), (&old.clause, &old.checks));
        let [Unread { part, hazard, at }] = ruleset.unread.as_slice() else {
            panic!("{wrong}: {:?}", ruleset.unread);
        };
        let expected = UnreadPart::Rule {
            id: Some("rail-too-low".to_owned()),
            in_its_place: Some("us-dwelling-2018".into()),
        };
        assert_eq!((part, *hazard), (&expected, Some(Hazard::FallOver)));
        assert_eq!((&**at.file(), at.line()), ("town.toml", 22));
        let amended = ruleset.amendments.iter();
        assert!(
            amended.clone().all(|a| a.rule != "rail-too-low"),
            "what could not be read amends nothing"
        );
    }
}

#[test]
fn a_source_without_edition_makes_what_cites_it_unread() {
    let text = TOWN.replace("edition = \"2019\"\nstatus", "status");
    let loaded = load_files(&[("town.toml", &text)]);
    let ruleset = loaded.ruleset.expect("the other rules remain");
    let no_vines = UnreadPart::Rule {
        id: Some("no-vines".to_owned()),
        in_its_place: None,
    };
    assert_eq!(parts(&ruleset), [&no_vines, &UnreadPart::Head]);
}

#[test]
fn whatever_part_is_faulty_the_ruleset_says_that_it_was_not_read_whole() {
    let sound_text =
        head("a") + "extends = \"us-dwelling-2018\"\n".trim_end() + "\n" + &rule("r", HEIGHT);
    // `extends` belongs before the table of the source
    let sound_text = "extends = \"us-dwelling-2018\"\nremove = [\"handrail-missing\"]\n\
                      covers.place = [\"deck\"]\nconcerns = [\"heights\"]\n"
        .to_owned()
        + &sound_text.replace("extends = \"us-dwelling-2018\"\n[[rule]]", "[[rule]]")
        + "[[caution]]\nclause = \"2\"\nsays = \"So.\"\nsource = \"s\"\n\
           [[asks-nothing]]\nhazard = \"climb\"\nsays = \"Nothing.\"\nsource = \"s\"\n";
    assert!(sound(&[("a.toml", &sound_text)]).unread.is_empty());
    let slips = [
        (
            "remove = [\"handrail-missing\"]",
            "remove = [\"handrail-mising\"]",
            "head",
        ),
        ("remove", "remov", "head"),
        (
            "covers.place = [\"deck\"]",
            "covers.place = [\"dek\"]",
            "head",
        ),
        (
            "concerns = [\"heights\"]",
            "concerns = [\"hights\"]",
            "head",
        ),
        ("concerns = [\"heights\"]", "concerns = []", "head"),
        (
            "concerns = [\"heights\"]",
            "concerns = [\"heights\"",
            "head",
        ),
        ("status = \"quoted\"", "status = \"quotd\"", "head"),
        ("40 in", "40", "rule"),
        ("40 in\"", "40 in", "rule"),
        ("clause = \"2\"", "claus = \"2\"", "caution"),
        ("says = \"Nothing.\"", "say = \"Nothing.\"", "silence"),
        ("says = \"Nothing.\"", "says = Nothing.", "silence"),
    ];
    for (right, wrong, part) in slips {
        let text = sound_text.replacen(right, wrong, 1);
        assert_ne!(text, sound_text, "{right}");
        let loaded = load_files(&[("a.toml", &text)]);
        assert!(errors(&loaded) >= 1, "{wrong}");
        let ruleset = loaded.ruleset.expect("the parent's rules remain");
        let found = ruleset.unread.iter().any(|unread| match &unread.part {
            UnreadPart::AsksNothing => part == "silence",
            UnreadPart::Caution => part == "caution",
            UnreadPart::Head => part == "head",
            UnreadPart::Rule { .. } => part == "rule",
            UnreadPart::Whole => false,
        });
        assert!(found, "{wrong}: {:?}", ruleset.unread);
    }
}

#[test]
fn a_faulty_example_leaves_its_rule_read() {
    let asks =
        format!("{HEIGHT}\n[[rule.example]]\ngiven = {{ height = \"36\" }}\nexpect = \"meets\"");
    let loaded = load_files(&[("a.toml", &(head("a") + &rule("r", &asks)))]);
    assert_eq!(errors(&loaded), 1);
    let ruleset = loaded.ruleset.expect("the rule is sound");
    assert!(ruleset.unread.is_empty(), "{:?}", ruleset.unread);
}

#[test]
fn what_a_parent_could_not_be_read_for_its_child_could_not_either() {
    let parent = head("p") + &rule("r", HEIGHT) + &rule("q", "check.height.at-lest = \"1 in\"");
    let child = "id = \"c\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"p.toml\"\n";
    let loaded = load_files(&[("c.toml", child), ("p.toml", &parent)]);
    let ruleset = loaded.ruleset.expect("a rule remains");
    let part = UnreadPart::Rule {
        id: Some("q".to_owned()),
        in_its_place: None,
    };
    assert_eq!(parts(&ruleset), [&part]);
    assert_eq!(&**ruleset.unread[0].at.file(), "p.toml");
}

#[test]
fn every_rule_spoiled_by_a_slip_is_named_as_unread() {
    let mut spoiled = 0;
    for id in embedded_ids() {
        let text = embedded(id).expect("a shipped one").text;
        let starts: Vec<usize> = text.match_indices("[[rule]]\n").map(|(at, _)| at).collect();
        for at in starts {
            let (before, after) = text.split_at(at);
            let after = after.replacen("\nhazard = ", "\nhazrd = ", 1);
            let text = format!("{before}{after}");
            let loaded = load("x.toml", &|name| {
                (name == "x.toml").then(|| SourceFile::new(name, &text))
            });
            spoiled += 1;
            // a file whose only rule is spoiled is not there at all
            if let Some(ruleset) = loaded.ruleset {
                let rules = ruleset
                    .unread
                    .iter()
                    .filter(|unread| matches!(unread.part, UnreadPart::Rule { .. }));
                assert_eq!(rules.count(), 1, "{id} at {at}: {:?}", ruleset.unread);
            }
            assert!(
                loaded
                    .diagnostics
                    .iter()
                    .any(|d| d.severity == Severity::Error)
            );
        }
    }
    assert!(spoiled > 300, "{spoiled}");
}

#[test]
fn a_ruleset_that_is_not_there_is_one_that_was_not_read() {
    let ruleset = Ruleset::unreadable("nosuch.toml");
    assert_eq!(ruleset.id, "nosuch.toml");
    assert!(ruleset.rules.is_empty() && !ruleset.advisory);
    assert_eq!(parts(&ruleset), [&UnreadPart::Whole]);
    assert_eq!(
        ruleset.unread[0].says(),
        "the ruleset could not be found or read (nosuch.toml)"
    );
}

#[test]
fn what_could_not_be_read_is_said_with_its_place() {
    let text = TOWN.replace("\"42 in\"", "\"42\"");
    let ruleset = load_files(&[("town.toml", &text)]).ruleset;
    let ruleset = ruleset.expect("the other rules remain");
    assert_eq!(
        ruleset.unread[0].says(),
        "the rule rail-too-low could not be read (town.toml, line 22); \
         that of us-dwelling-2018 stays in force"
    );
}

#[test]
fn rules_that_are_taken_away_stay_known_as_they_were() {
    let base = sound_by_id("us-dwelling-2018");
    let ruleset = sound(&[("town.toml", TOWN)]);
    let ids: Vec<&str> = ruleset
        .removed
        .iter()
        .map(|rule| rule.id.as_str())
        .collect();
    assert_eq!(ids, ["handrail-missing"]);
    let old = base.rules.iter().find(|rule| rule.id == "handrail-missing");
    assert_eq!(
        old.map(|rule| &rule.checks),
        Some(&ruleset.removed[0].checks)
    );
    // the grandchild that writes it again has it back
    let again = "id = \"g\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"town.toml\"\n".to_owned()
        + &rule("handrail-missing", HEIGHT).replace("\"s\"", "\"town\"");
    let ruleset = sound(&[("g.toml", &again), ("town.toml", TOWN)]);
    assert!(ruleset.removed.is_empty());
    assert!(
        ruleset
            .rules
            .iter()
            .any(|rule| rule.id == "handrail-missing")
    );
    // and one that says nothing of it has it not
    let silent = "id = \"g\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"town.toml\"\n";
    let ruleset = sound(&[("g.toml", silent), ("town.toml", TOWN)]);
    assert_eq!(ruleset.removed.len(), 1);
}

const SILENT: &str = "[[asks-nothing]]\nhazard = \"fall through\"\nwhen.place = [\"stair\"]\n\
                      when.drop.below = \"1 m\"\nsays = \"It asks nothing about gaps.\"\n\
                      clause = \"4\"\nsource = \"s\"\n[[asks-nothing.example]]\n\
                      given = { place = \"stair\", drop = \"90 cm\" }\nexpect = \"meets\"\n";

#[test]
fn what_a_text_asks_nothing_about_is_read_like_a_rule() {
    let text = head("a") + &rule("r", HEIGHT) + SILENT;
    let ruleset = sound(&[("a.toml", &text)]);
    let [silence] = ruleset.asks_nothing.as_slice() else {
        panic!("{:?}", ruleset.asks_nothing);
    };
    assert_eq!(silence.hazard, Hazard::FallThrough);
    assert_eq!(silence.status, Status::Quoted);
    assert_eq!(silence.says, "It asks nothing about gaps.");
    assert_eq!(silence.clause.as_deref(), Some("4"));
    assert_eq!(silence.source.key, "s");
    assert_eq!(&*silence.file, "a.toml");
    let items: Vec<Item> = silence.when.iter().map(|when| when.item).collect();
    assert_eq!(items, [Item::Place, Item::Drop]);
    let expected: Vec<Verdict> = silence.examples.iter().map(|e| e.expect).collect();
    assert_eq!(expected, [Verdict::Meets]);
    assert!(ruleset.items().contains(&Item::Drop), "it is asked for");
}

#[test]
fn a_silence_that_nobody_read_is_refused() {
    let texts = [
        head("a").replace("quoted", "memory") + &rule("r", HEIGHT) + SILENT,
        head("a") + &rule("r", HEIGHT) + &SILENT.replace("clause = \"4\"", "status = \"practice\""),
    ];
    for text in texts {
        let loaded = load_files(&[("a.toml", &text)]);
        let codes: Vec<u16> = loaded.diagnostics.iter().map(|d| d.code.number).collect();
        assert!(codes.contains(&129), "{codes:?}");
        let ruleset = loaded.ruleset.expect("the rule remains");
        assert!(ruleset.asks_nothing.is_empty());
        assert_eq!(parts(&ruleset), [&UnreadPart::AsksNothing]);
    }
}

#[test]
fn silences_and_concerns_and_what_is_covered_are_inherited() {
    let parent = "concerns = [\"handrails\", \"gates\"]\ncovers.says = \"houses\"\n\
                  covers.use = \"dwelling\"\n"
        .to_owned()
        + &head("p")
        + &rule("r", HEIGHT)
        + SILENT;
    let child = |more: &str| {
        format!("id = \"c\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"p.toml\"\n{more}")
    };
    let of = |more: &str| sound(&[("c.toml", &child(more)), ("p.toml", &parent)]);
    let ruleset = of("");
    assert_eq!(ruleset.concerns, [Concern::Handrails, Concern::Gates]);
    assert_eq!(ruleset.asks_nothing.len(), 1);
    assert_eq!(ruleset.covers.says, "houses");
    let ruleset = of("concerns = [\"gaps\"]\ncovers.says = \"flats\"\n");
    assert_eq!(ruleset.concerns, [Concern::Gaps]);
    assert_eq!(ruleset.covers.says, "flats");
    let items: Vec<Item> = ruleset.covers.conditions.iter().map(|c| c.item).collect();
    assert_eq!(items, [Item::Use], "words alone widen nothing");
    let own = "[[asks-nothing]]\nhazard = \"climb\"\nsays = \"So.\"\nsource = \"s\"\n";
    assert_eq!(of(own).asks_nothing.len(), 2);
}

#[test]
fn a_silence_is_carried_to_an_edition_only_where_that_was_read() {
    let parent = head("p") + &rule("r", HEIGHT) + SILENT;
    let of = |status: &str| {
        let child = format!(
            "id = \"c\"\ntitle = \"T\"\nedition = \"E\"\nextends = \"p.toml\"\n\
             carried = {{ status = \"{status}\", says = \"Carried.\" }}\n"
        );
        sound(&[("c.toml", &child), ("p.toml", &parent)])
    };
    let quoted = of("quoted");
    let says: Vec<&str> = quoted
        .asks_nothing
        .iter()
        .map(|s| s.says.as_str())
        .collect();
    assert_eq!(says, ["It asks nothing about gaps. Carried."]);
    assert!(of("memory").asks_nothing.is_empty());
}
