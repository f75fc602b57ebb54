//! What a rule says it also asks: no circumstance stands in a sentence alone. And what the
//! model rulesets name beside themselves.

use guardrule::items::Item;
use guardrule::items::Kind;
use guardrule::items::Pictured;
use guardrule::rules::Condition;
use guardrule::rules::Rule;
use guardrule::rules::Ruleset;
use guardrule::rules::embedded_ids;

use super::embedded::shipped;

/// Words of a sentence, and the items of which one must then be asked.
const NAMED: &[(&[&str], &[Item])] = &[
    (
        &["inside", "outside", "indoors", "outdoors"],
        &[Item::Location],
    ),
    (&["share", "shared"], &[Item::Shared]),
    (&["storey", "storeys"], &[Item::Storeys]),
    (
        &["stair", "stairs", "flight", "flights", "riser", "risers"],
        &[
            Item::Place,
            Item::Risers,
            Item::FlightShape,
            Item::FlightWidth,
        ],
    ),
    (
        &["ramp", "ramps"],
        &[Item::Place, Item::RampSlope, Item::RampRise],
    ),
    (&["steeper"], &[Item::RampSlope, Item::GroundFall]),
    (
        &["window", "windows", "sill"],
        &[Item::Place, Item::SillHeight, Item::SillTopHeight],
    ),
    (
        &[
            "balconies",
            "balcony",
            "deck",
            "decks",
            "landing",
            "porch",
            "terrace",
        ],
        &[Item::Place],
    ),
    (
        &["dwelling", "dwellings", "flat", "flats", "house", "houses"],
        &[
            Item::Use,
            Item::DwellingsInBuilding,
            Item::Shared,
            Item::Location,
        ],
    ),
    (
        &["cables", "mesh", "level bars", "horizontal bars"],
        &[Item::Infill],
    ),
];

/// What is no circumstance of the guard: `inside a dwelling` is one of who lives there,
/// the ground outside is what an item measures to.
const NO_CIRCUMSTANCE: &[&str] = &[
    "inside or outside",
    "inside and outside",
    "inside a dwelling",
    "inside a single dwelling",
    "inside a single-family house",
    "inside a flat",
    "inside dwellings",
    "outside dwellings",
    "outside a dwelling",
    "outside workplaces",
    "ground outside",
    "surface outside",
    "outside the edge",
    "lies outside it",
    "what lies outside",
];

/// Sentences that name one all the same, and why that is right.
const STANDS: &[(&str, &str, &str)] = &[
    ("", "climbable-infill", "the outside is a face of the guard"),
    (
        "",
        "barrier-too-low",
        "the outside is the side on which it is measured",
    ),
    (
        "",
        "foothold-in-reach",
        "the ends count as inside of a band",
    ),
    (
        "british-columbia-1992",
        "outside-rail-too-low",
        "its places lie outside",
    ),
    (
        "british-columbia-1992",
        "level-members-inside",
        "inside is a face of the guard",
    ),
    (
        "france-",
        "rail-too-low",
        "the stricter reading holds on the ground floor too",
    ),
    (
        "france-",
        "thick-rail-too-low",
        "the stricter reading holds on the ground floor too",
    ),
    (
        "france-",
        "window-bar-too-low",
        "left to a person, and the reason asks for the storey",
    ),
    (
        "ireland-tgd-k-2014",
        "outside-rail-too-low",
        "its places lie outside",
    ),
    (
        "ireland-tgd-k-2014",
        "no-guard-at-window",
        "inside is where its item is measured",
    ),
    (
        "new-jersey-buildings-2021",
        "rail-in-dwelling-too-low",
        "it says that the storeys do not count",
    ),
    (
        "new-york-city-windows",
        "window-can-be-fallen-from",
        "windows of shared areas count as well",
    ),
    (
        "",
        "handrail-missing",
        "none at all falls short inside and outside alike",
    ),
    (
        "new-zealand-f4",
        "rail-too-low",
        "its places say where it lies",
    ),
    (
        "northern-ireland-2012",
        "outside-rail-too-low",
        "its places lie outside",
    ),
    (
        "quebec-sainte-adele-2023",
        "low-rail-too-low",
        "it is the least that is asked anywhere, and a second rule asks for more outside",
    ),
    (
        "scotland-1999",
        "rail-too-low",
        "a landing inside is a place of this rule",
    ),
    (
        "uk-approved-document-k",
        "outside-rail-too-low",
        "its places lie outside",
    ),
    (
        "uk-approved-document-k",
        "terrace-rail-as-balcony",
        "left to a person, and the reason says why",
    ),
    (
        "wisconsin-",
        "no-guard",
        "it says where the drop is measured outside",
    ),
];

fn asked(ruleset: &Ruleset, rule: &Rule) -> Vec<Item> {
    let item = |condition: &Condition| condition.item;
    let groups = rule.when_any.iter().chain(&rule.unless).flatten();
    let mut items: Vec<Item> = rule.when.iter().chain(groups).map(item).collect();
    items.extend(ruleset.covers.conditions.iter().map(item));
    items.extend(
        rule.checks
            .iter()
            .flat_map(|check| check.items().iter().copied()),
    );
    items
}

#[test]
fn a_sentence_names_no_circumstance_that_the_rule_does_not_ask() {
    let mut wrong = Vec::new();
    let mut used = vec![false; STANDS.len()];
    let mut named = 0;
    for id in embedded_ids() {
        let ruleset = shipped(id);
        for rule in &ruleset.rules {
            let mut says = rule.says.to_lowercase();
            for phrase in NO_CIRCUMSTANCE {
                says = says.replace(phrase, "");
            }
            let plain: String = says
                .chars()
                .map(|c| if c.is_alphanumeric() { c } else { ' ' })
                .collect();
            let plain = format!(
                " {} ",
                plain.split_whitespace().collect::<Vec<_>>().join(" ")
            );
            let asks = asked(&ruleset, rule);
            for (words, items) in NAMED {
                let word = words
                    .iter()
                    .find(|word| plain.contains(&format!(" {word} ")));
                let Some(word) = word else { continue };
                named += 1;
                if items.iter().any(|item| asks.contains(item)) {
                    continue;
                }
                let stands = STANDS
                    .iter()
                    .position(|(of, rule_id, _)| id.starts_with(of) && rule.id == *rule_id);
                match stands {
                    Some(at) => used[at] = true,
                    None => wrong.push(format!("{id}: {}: {word}: {}", rule.id, rule.says)),
                }
            }
        }
    }
    assert!(named > 500, "{named}");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    for (used, (of, rule, why)) in used.iter().zip(STANDS) {
        assert!(used, "{of} {rule} needs no leave any more: {why}");
    }
}

/// The model codes of a country name, with a source, who asks for more there.
#[test]
fn every_model_ruleset_names_the_neighbours_that_ask_for_more() {
    const MODELS: &[&str] = &["us-dwelling-", "us-buildings-", "canada-dwelling"];
    const STATES: &[&str] = &[
        "California",
        "Minnesota",
        "Wisconsin",
        "New York City",
        "Florida",
        "Ontario",
        "Quebec",
    ];
    let mut tried = 0;
    for id in embedded_ids() {
        if !MODELS.iter().any(|model| id.starts_with(model)) {
            continue;
        }
        let ruleset = shipped(id);
        let names = ruleset.cautions.iter().any(|caution| {
            let named = STATES.iter().filter(|state| caution.says.contains(**state));
            named.count() >= 2 && !caution.source.title.is_empty()
        });
        assert!(names, "{id}");
        tried += 1;
    }
    assert!(tried > 10, "{tried}");
}

/// Whatever a shipped rule asks can be asked for: a question, steps, a picture or why none.
#[test]
fn every_item_that_a_rule_asks_has_a_question_and_a_way_to_measure_it() {
    let mut items: Vec<Item> = Vec::new();
    for id in embedded_ids() {
        let ruleset = shipped(id);
        for rule in &ruleset.rules {
            items.extend(asked(&ruleset, rule));
        }
    }
    items.sort_unstable();
    items.dedup();
    assert!(items.len() > 60, "{}", items.len());
    for item in items {
        let info = item.info();
        // what holds a guard is asked by its name, and a drawn guard says so itself
        if info.load_path.is_some() || item == Item::State {
            continue;
        }
        assert!(
            info.question.ends_with(['?', '.']),
            "{item}: {}",
            info.question
        );
        assert!(
            !info.how.is_empty() || !info.item.words().is_empty(),
            "{item}"
        );
        match info.pictured {
            Pictured::By(drawings) => assert!(!drawings.is_empty(), "{item}"),
            Pictured::Not(why) => {
                let measured = matches!(info.kind, Kind::Length | Kind::Opening);
                assert!(!measured || why.len() > 20, "{item}: {why}");
            }
        }
    }
}
