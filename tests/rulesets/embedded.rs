//! The shipped rulesets are complete: every rule says where it comes from, and
//! its examples straddle its limits.

use guardrule::items::Verdict;
use guardrule::judge::examples;
use guardrule::rules::Ruleset;
use guardrule::rules::Status;
use guardrule::rules::embedded;
use guardrule::rules::embedded_ids;
use guardrule::rules::load;
use guardrule::rules::straddle_gaps;

/// A shipped ruleset, which must have no fault at all.
pub(super) fn shipped(id: &str) -> Ruleset {
    let loaded = load(id, &|name| panic!("{id} asks for {name}"));
    let faults: Vec<String> = loaded
        .diagnostics
        .iter()
        .map(super::faulty::plain)
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    loaded.ruleset.expect("a ruleset without faults is there")
}

/// Each ruleset in the order of the list, with how many rules it has, and how
/// many of them were read second-hand, are from memory, or are common practice.
/// Where a text is read, the third figure goes down.
const TABLE: &[(&str, usize, usize, usize, usize)] = &[
    ("us-dwelling-2000", 12, 3, 8, 0),
    ("us-dwelling-2003", 11, 4, 7, 0),
    ("us-dwelling-2006", 11, 8, 3, 0),
    ("us-dwelling-2009", 12, 10, 1, 0),
    ("us-dwelling-2012", 12, 11, 0, 0),
    ("us-dwelling-2015", 11, 0, 0, 0),
    ("us-dwelling-2018", 11, 0, 0, 0),
    ("us-dwelling-2021", 11, 0, 0, 0),
    ("us-dwelling-2024", 22, 0, 0, 0),
    ("us-windows-2012", 1, 1, 0, 0),
    ("us-windows-2015", 1, 0, 0, 0),
    ("us-windows-2021", 1, 0, 0, 0),
    ("us-buildings-2015", 15, 0, 0, 0),
    ("us-buildings-2018", 14, 14, 0, 0),
    ("us-buildings-2021", 15, 0, 0, 0),
    ("us-buildings-2024", 15, 0, 0, 0),
    ("us-buildings-2000", 4, 0, 2, 0),
    ("us-handrails-2015", 8, 0, 0, 0),
    ("us-handrails-2018", 10, 0, 0, 0),
    ("us-building-handrails-2015", 7, 0, 0, 0),
    ("us-building-handrails-2021", 7, 0, 0, 0),
    ("us-existing-buildings-2021", 8, 0, 0, 0),
    ("us-workplace", 14, 4, 0, 0),
    ("us-accessible-handrails-2010", 10, 0, 0, 0),
    ("us-pool-barriers", 8, 2, 1, 0),
    ("us-rental-upkeep", 5, 0, 0, 0),
    ("wauseon-housing-1989", 2, 0, 0, 0),
    ("us-rental-inspection-2023", 7, 7, 0, 0),
    ("massachusetts-rental-2024", 16, 0, 0, 0),
    ("california-dwelling", 22, 0, 0, 0),
    ("california-buildings-2025", 14, 0, 0, 0),
    ("california-pools", 4, 0, 0, 0),
    ("florida-dwelling-2023", 11, 0, 0, 0),
    ("florida-buildings-2023", 15, 0, 0, 0),
    ("florida-pools", 3, 0, 0, 0),
    ("minnesota-windows-2020", 1, 0, 0, 0),
    ("new-jersey-dwelling-2021", 11, 0, 0, 0),
    ("new-jersey-buildings-2021", 17, 0, 0, 0),
    ("montana-dwelling-2021", 11, 0, 0, 0),
    ("north-carolina-dwelling", 12, 11, 0, 0),
    ("north-carolina-buildings", 16, 15, 0, 0),
    ("connecticut-buildings", 15, 15, 0, 0),
    ("connecticut-bed-and-breakfast", 3, 0, 0, 0),
    ("ohio-dwelling", 11, 0, 0, 0),
    ("oregon-dwelling-2021", 11, 0, 0, 0),
    ("oregon-buildings-2021", 15, 0, 0, 0),
    ("south-carolina-dwelling-2021", 12, 0, 0, 0),
    ("washington-dwelling-2021", 12, 0, 0, 0),
    ("washington-buildings-2021", 15, 0, 0, 0),
    ("wisconsin-dwelling", 3, 0, 0, 0),
    ("wisconsin-decks", 8, 0, 0, 0),
    ("missouri-child-care", 4, 0, 0, 0),
    ("missouri-family-child-care", 2, 0, 0, 0),
    ("kansas-child-care", 2, 0, 0, 0),
    ("new-jersey-windows", 2, 0, 0, 0),
    ("new-jersey-rooming-houses", 4, 0, 0, 0),
    ("new-york-city", 13, 12, 1, 0),
    ("new-york-city-windows", 1, 1, 0, 0),
    ("new-york-old-flats-1929", 5, 0, 0, 0),
    ("new-york-multiple-residence", 3, 0, 0, 0),
    ("chicago-older-text", 5, 0, 0, 0),
    ("washington-worker-housing", 5, 0, 0, 0),
    ("us-stair-gates", 4, 1, 2, 0),
    ("us-crib-slats", 1, 1, 0, 0),
    ("us-playground-handbook-2010", 22, 5, 5, 0),
    ("canada-dwelling", 25, 1, 0, 0),
    ("canada-handrails-2020", 5, 0, 0, 0),
    ("british-columbia-2018", 14, 10, 0, 0),
    ("british-columbia-2012", 3, 0, 0, 0),
    ("british-columbia-1992", 6, 0, 0, 0),
    ("quebec-2010", 5, 0, 0, 0),
    ("quebec-sainte-adele-2023", 8, 0, 0, 0),
    ("ontario-2012", 32, 0, 0, 0),
    ("ontario-handrails-2012", 3, 0, 0, 0),
    ("uk-approved-document-k", 22, 12, 0, 0),
    ("northern-ireland-2012", 5, 0, 3, 0),
    ("ireland-tgd-k-2014", 12, 8, 2, 0),
    ("ireland-rented-2017", 1, 1, 0, 0),
    ("scotland-1999", 8, 0, 0, 0),
    ("scotland-2019", 6, 0, 4, 0),
    ("australia-ncc-2022", 14, 4, 1, 0),
    ("australia-ncc-2019", 8, 7, 0, 0),
    ("new-south-wales-windows-2013", 1, 0, 0, 0),
    ("new-zealand-f4", 11, 6, 0, 0),
    ("germany-building-codes", 7, 0, 0, 0),
    ("germany-rhineland-palatinate", 7, 0, 0, 0),
    ("germany-hesse-2018", 5, 0, 1, 0),
    ("germany-lower-saxony-2012", 5, 0, 0, 0),
    ("germany-north-rhine-westphalia-2000", 6, 0, 0, 0),
    ("germany-bavaria", 4, 4, 0, 0),
    ("germany-brandenburg-2016", 3, 0, 0, 0),
    ("germany-stairs-din-18065", 9, 9, 0, 0),
    ("germany-baden-wuerttemberg", 12, 0, 0, 0),
    ("germany-child-minding", 5, 0, 0, 0),
    ("germany-child-care", 8, 0, 0, 0),
    ("germany-schleswig-holstein-1994", 5, 5, 0, 0),
    ("germany-schleswig-holstein", 3, 0, 0, 0),
    ("france-1988", 8, 7, 1, 0),
    ("france-2024", 8, 6, 2, 0),
    ("austria-oib-4", 7, 7, 0, 0),
    ("switzerland-sia-358", 6, 5, 1, 0),
    ("netherlands-2012", 6, 3, 3, 0),
    ("netherlands-existing-2012", 2, 2, 0, 0),
    ("netherlands-2024", 9, 0, 0, 0),
    ("netherlands-existing-2024", 8, 0, 0, 0),
    ("finland-2017", 15, 0, 0, 0),
    ("spain-sua-1", 7, 7, 0, 0),
    ("italy-dm-236-1989", 3, 3, 0, 0),
    ("portugal-np-4491-2009", 3, 3, 0, 0),
    ("belgium-nbn-2017", 5, 5, 0, 0),
    ("czech-1998", 8, 0, 0, 0),
    ("czech-windows-2009", 1, 0, 0, 0),
    ("czech-windows-2024", 3, 0, 0, 0),
    ("poland-2022", 14, 5, 0, 0),
    ("sweden-bbr", 9, 9, 0, 0),
    ("denmark-br18", 5, 0, 0, 0),
    ("norway-tek17", 8, 4, 0, 0),
    ("norway-tek10", 8, 0, 7, 0),
    ("singapore-h", 8, 1, 0, 0),
    ("japan-balconies", 3, 3, 0, 0),
    ("korea-housing", 4, 4, 0, 0),
    ("china-buildings-2022", 2, 2, 0, 0),
    ("china-homes-2011", 3, 3, 0, 0),
    ("china-homes-2025", 4, 4, 0, 0),
    ("brazil-nbr-14718-2019", 3, 3, 0, 0),
    ("india-kerala-high-rise", 5, 0, 0, 0),
    ("dubai-balconies-2013", 3, 3, 0, 0),
    ("europe-stair-gates-en-1930", 3, 0, 2, 0),
    ("small-child-advice", 21, 3, 0, 9),
];

/// Guidance, and no law.
const ADVICE: &[&str] = &[
    "us-pool-barriers",
    "chicago-older-text",
    "us-stair-gates",
    "us-crib-slats",
    "us-playground-handbook-2010",
    "germany-child-minding",
    "germany-child-care",
    "germany-schleswig-holstein-1994",
    "portugal-np-4491-2009",
    "sweden-bbr",
    "europe-stair-gates-en-1930",
    "small-child-advice",
];

/// Rulesets of which no page that was read says from when they held.
const UNDATED: &[&str] = &[
    "us-workplace",
    "us-pool-barriers",
    "us-rental-upkeep",
    "massachusetts-rental-2024",
    "california-pools",
    "florida-pools",
    "wisconsin-dwelling",
    "wisconsin-decks",
    "missouri-child-care",
    "missouri-family-child-care",
    "new-jersey-windows",
    "new-jersey-rooming-houses",
    "new-york-city",
    "new-york-city-windows",
    "new-york-multiple-residence",
    "chicago-older-text",
    "washington-worker-housing",
    "us-crib-slats",
    "us-playground-handbook-2010",
    "british-columbia-1992",
    "quebec-2010",
    "germany-building-codes",
    "germany-rhineland-palatinate",
    "germany-bavaria",
    "germany-brandenburg-2016",
    "germany-stairs-din-18065",
    "germany-child-minding",
    "germany-child-care",
    "germany-schleswig-holstein",
    "switzerland-sia-358",
    "portugal-np-4491-2009",
    "belgium-nbn-2017",
    "sweden-bbr",
    "singapore-h",
    "japan-balconies",
    "korea-housing",
    "china-buildings-2022",
    "china-homes-2025",
    "india-kerala-high-rise",
    "dubai-balconies-2013",
    "small-child-advice",
];

/// States and towns that take a model edition over: what they left alone is the
/// model's, and its source says so.
const STATES: &[&str] = &[
    "california-dwelling",
    "california-buildings-2025",
    "florida-dwelling-2023",
    "florida-buildings-2023",
    "new-jersey-dwelling-2021",
    "new-jersey-buildings-2021",
    "oregon-dwelling-2021",
    "montana-dwelling-2021",
    "ohio-dwelling",
    "oregon-buildings-2021",
    "south-carolina-dwelling-2021",
    "washington-dwelling-2021",
    "washington-buildings-2021",
    "wisconsin-decks",
    "quebec-sainte-adele-2023",
    "germany-rhineland-palatinate",
];

/// From which year a text was current, and in which the next one came, as the
/// sources of each file name their editions. A year moved by one is another
/// edition for whoever asks for the rules of the time of building.
const IN_FORCE: &[(&str, i32, Option<i32>)] = &[
    ("us-dwelling-2000", 2000, Some(2003)),
    ("us-dwelling-2003", 2003, Some(2006)),
    ("us-dwelling-2006", 2006, Some(2009)),
    ("us-dwelling-2009", 2009, Some(2012)),
    ("us-dwelling-2012", 2012, Some(2015)),
    ("us-dwelling-2015", 2015, Some(2018)),
    ("us-dwelling-2018", 2018, Some(2021)),
    ("us-dwelling-2021", 2021, Some(2024)),
    ("us-dwelling-2024", 2024, None),
    ("us-windows-2012", 2012, Some(2015)),
    ("us-windows-2015", 2015, Some(2021)),
    ("us-windows-2021", 2021, None),
    ("us-buildings-2015", 2015, Some(2018)),
    ("us-buildings-2018", 2018, Some(2021)),
    ("us-buildings-2021", 2021, Some(2024)),
    ("us-buildings-2024", 2024, None),
    ("us-buildings-2000", 2000, Some(2003)),
    ("us-handrails-2015", 2015, Some(2018)),
    ("us-handrails-2018", 2018, Some(2024)),
    ("us-building-handrails-2015", 2015, Some(2021)),
    ("us-building-handrails-2021", 2021, None),
    ("us-existing-buildings-2021", 2021, None),
    ("us-accessible-handrails-2010", 2010, None),
    ("wauseon-housing-1989", 1989, None),
    ("us-rental-inspection-2023", 2023, None),
    ("california-dwelling", 2025, None),
    ("california-buildings-2025", 2025, None),
    ("florida-dwelling-2023", 2023, None),
    ("florida-buildings-2023", 2023, None),
    ("minnesota-windows-2020", 2020, None),
    ("new-jersey-dwelling-2021", 2021, None),
    ("new-jersey-buildings-2021", 2021, None),
    ("montana-dwelling-2021", 2021, None),
    ("north-carolina-dwelling", 2026, None),
    ("north-carolina-buildings", 2026, None),
    ("connecticut-buildings", 2026, None),
    ("connecticut-bed-and-breakfast", 2026, None),
    ("ohio-dwelling", 2026, None),
    ("oregon-dwelling-2021", 2021, None),
    ("oregon-buildings-2021", 2021, None),
    ("south-carolina-dwelling-2021", 2021, None),
    ("washington-dwelling-2021", 2021, None),
    ("washington-buildings-2021", 2021, None),
    ("kansas-child-care", 2021, None),
    ("new-york-old-flats-1929", 1929, None),
    ("us-stair-gates", 2021, None),
    ("canada-dwelling", 2020, None),
    ("canada-handrails-2020", 2020, None),
    ("british-columbia-2018", 2018, Some(2024)),
    ("british-columbia-2012", 2006, Some(2018)),
    ("quebec-sainte-adele-2023", 2023, None),
    ("ontario-2012", 2012, Some(2025)),
    ("ontario-handrails-2012", 2012, Some(2025)),
    ("uk-approved-document-k", 2013, None),
    ("northern-ireland-2012", 2012, None),
    ("ireland-tgd-k-2014", 2015, None),
    ("ireland-rented-2017", 2017, None),
    ("scotland-1999", 1999, Some(2005)),
    ("scotland-2019", 2019, None),
    ("australia-ncc-2022", 2022, None),
    ("australia-ncc-2019", 2019, Some(2022)),
    ("new-south-wales-windows-2013", 2013, None),
    ("new-zealand-f4", 2017, None),
    ("germany-hesse-2018", 2018, None),
    ("germany-lower-saxony-2012", 2012, None),
    ("germany-north-rhine-westphalia-2000", 2000, Some(2018)),
    ("germany-baden-wuerttemberg", 2025, None),
    ("germany-schleswig-holstein-1994", 1994, Some(2000)),
    ("france-1988", 1988, Some(2024)),
    ("france-2024", 2024, None),
    ("austria-oib-4", 2019, Some(2023)),
    ("netherlands-2012", 2012, Some(2024)),
    ("netherlands-existing-2012", 2012, Some(2024)),
    ("netherlands-2024", 2024, None),
    ("netherlands-existing-2024", 2024, None),
    ("finland-2017", 2018, None),
    ("spain-sua-1", 2022, None),
    ("italy-dm-236-1989", 1989, None),
    ("czech-1998", 1998, Some(2009)),
    ("czech-windows-2009", 2009, Some(2024)),
    ("czech-windows-2024", 2024, None),
    ("poland-2022", 2022, None),
    ("denmark-br18", 2018, None),
    ("norway-tek17", 2017, None),
    ("norway-tek10", 2010, Some(2017)),
    ("china-homes-2011", 2011, Some(2025)),
    ("brazil-nbr-14718-2019", 2019, None),
    ("europe-stair-gates-en-1930", 2011, None),
];

#[test]
fn every_shipped_ruleset_loads_without_a_word() {
    let ids: Vec<&str> = embedded_ids().collect();
    let listed: Vec<&str> = TABLE.iter().map(|row| row.0).collect();
    assert_eq!(ids, listed);
    for id in ids {
        let ruleset = shipped(id);
        assert_eq!(ruleset.id, id);
        assert_eq!(&*ruleset.file, id);
        assert!(embedded(id).is_some());
        assert!(ruleset.amendments.is_empty());
        assert!(ruleset.country.is_some(), "{id}: country");
    }
    assert!(embedded("us-dwelling-1899").is_none());
}

#[test]
fn advice_and_missing_years_are_as_listed() {
    for id in embedded_ids() {
        let ruleset = shipped(id);
        assert_eq!(ruleset.advisory, ADVICE.contains(&id), "{id}");
        assert_eq!(ruleset.in_force.is_none(), UNDATED.contains(&id), "{id}");
    }
}

#[test]
fn the_years_in_force_are_those_of_the_editions() {
    let found: Vec<(&str, i32, Option<i32>)> = embedded_ids()
        .filter_map(|id| Some((id, shipped(id).in_force?)))
        .map(|(id, years)| (id, years.from, years.until))
        .collect();
    assert_eq!(found, IN_FORCE);
}

/// From 2000 on exactly one edition of the model residential code was current in each year.
#[test]
fn editions_of_the_us_residential_code_follow_each_other() {
    let mut years: Vec<(i32, Option<i32>)> = embedded_ids()
        .filter(|id| id.starts_with("us-dwelling-"))
        .map(|id| shipped(id).in_force.expect("every edition has its years"))
        .map(|years| (years.from, years.until))
        .collect();
    years.sort_unstable();
    for pair in years.windows(2) {
        assert_eq!(pair[0].1, Some(pair[1].0));
    }
    assert_eq!(years[0].0, 2000);
    assert_eq!(years.last().map(|last| last.1), Some(None));
}

/// What an edition takes over from another one was either read in that edition as
/// well, and then its source names both, or it says that it is carried over or
/// inferred, and no longer counts as read in the text.
#[test]
fn a_rule_taken_over_was_read_there_too_or_says_so() {
    let (mut carried, mut read) = (0, 0);
    for id in embedded_ids() {
        let ruleset = shipped(id);
        let edition: String = ruleset
            .edition
            .chars()
            .filter(char::is_ascii_digit)
            .collect();
        for rule in &ruleset.rules {
            if rule.file.as_ref() == id || STATES.contains(&id) {
                continue;
            }
            let name = format!("{id}: {}", rule.id);
            let says_so = ["Carried over from", "Inferred:"]
                .iter()
                .any(|words| rule.says.contains(words));
            if says_so {
                assert_ne!(rule.status, Status::Published, "{name}");
                carried += 1;
            } else {
                assert!(rule.source.edition.contains(&edition), "{name}");
                assert_eq!(rule.status, rule.source.status, "{name}");
                read += 1;
            }
        }
    }
    assert!(carried > 20, "{carried}");
    assert!(read > 20, "{read}");
}

#[test]
fn every_rule_has_clause_source_and_a_sentence() {
    for id in embedded_ids() {
        let ruleset = shipped(id);
        assert!(ruleset.covers.says.len() > 20, "{id} says what it covers");
        assert!(
            !ruleset.leaves_out.is_empty(),
            "{id} says what it leaves out"
        );
        for part in &ruleset.leaves_out {
            assert!(part.says.ends_with('.'), "{id}: {}", part.says);
        }
        for rule in &ruleset.rules {
            let name = format!("{id}: {}", rule.id);
            assert!(!rule.clause.is_empty(), "{name}: clause");
            assert!(rule.says.ends_with('.'), "{name}: {}", rule.says);
            assert!(rule.says.starts_with(char::is_uppercase), "{name}");
            let listed = ruleset.sources.contains(&rule.source);
            assert!(listed, "{name}: source {}", rule.source.key);
            assert!(!rule.checks.is_empty(), "{name}");
            if let Some(why) = &rule.judgement {
                assert!(why.ends_with('.'), "{name}: {why}");
            }
        }
        for caution in &ruleset.cautions {
            assert!(caution.says.ends_with('.'), "{id}: {}", caution.says);
        }
    }
}

#[test]
fn the_examples_of_every_rule_straddle_its_limits() {
    for id in embedded_ids() {
        let gaps: Vec<String> = straddle_gaps(&shipped(id))
            .into_iter()
            .map(|gap| format!("{}: {}", gap.rule, gap.says))
            .collect();
        assert!(gaps.is_empty(), "{id}:\n{}", gaps.join("\n"));
    }
}

#[test]
fn how_much_is_from_memory() {
    let mut others = Vec::new();
    for row in TABLE {
        let ruleset = shipped(row.0);
        let count = |status| ruleset.rules.iter().filter(|r| r.status == status).count();
        let counted = (
            row.0,
            ruleset.rules.len(),
            count(Status::Quoted),
            count(Status::Memory),
            count(Status::Practice),
        );
        if counted != *row {
            others.push(format!("{counted:?},"));
        }
    }
    assert!(others.is_empty(), "{}", others.join("\n"));
}

/// A rule that leaves the decision to a person never says "falls short".
#[test]
fn a_rule_for_a_person_to_decide_has_no_example_that_falls_short() {
    for id in embedded_ids() {
        for rule in shipped(id).rules {
            let short = rule
                .examples
                .iter()
                .any(|e| e.expect == Verdict::FallsShort);
            let open = rule
                .examples
                .iter()
                .any(|e| e.expect == Verdict::NotSettled);
            assert_eq!(rule.judgement.is_some(), open, "{id}: {}", rule.id);
            assert!(!(open && short), "{id}: {}", rule.id);
        }
    }
}

#[test]
fn every_example_comes_out_as_it_says() {
    for id in embedded_ids() {
        let ruleset = shipped(id);
        let tested = examples::test(&ruleset);
        let failed: Vec<String> = tested
            .failed
            .iter()
            .map(|failed| {
                let (line, found) = (failed.example.at.line(), failed.found);
                format!("{id}:{line}: {}: {found}", failed.rule.id)
            })
            .collect();
        assert!(failed.is_empty(), "{}", failed.join("\n"));
        let written: usize = ruleset.rules.iter().map(|rule| rule.examples.len()).sum();
        assert_eq!(tested.count, written, "{id}");
    }
}

/// A circumstance that nobody wrote down never makes a rule met.
#[test]
fn a_condition_that_nobody_wrote_down_is_never_met_by_silence() {
    let mut tried = 0;
    for id in embedded_ids() {
        let ruleset = shipped(id);
        for rule in &ruleset.rules {
            let met = rule.examples.iter().filter(|e| e.expect == Verdict::Meets);
            for (example, condition) in met.flat_map(|e| rule.when.iter().map(move |c| (e, c))) {
                let mut silent = example.clone();
                silent.given.retain(|(item, _, _)| *item != condition.item);
                if silent.given.is_empty() {
                    continue;
                }
                let found = examples::judge_example(&ruleset, rule, &silent);
                assert_eq!(
                    found,
                    Verdict::NotMeasured,
                    "{id}: {}: without {}",
                    rule.id,
                    condition.item
                );
                tried += 1;
            }
        }
    }
    assert!(tried > 500, "{tried}");
}
