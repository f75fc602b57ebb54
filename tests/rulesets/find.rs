//! From plain words to rulesets: addresses that we made up, and what must and
//! must not be offered there.

use std::collections::BTreeSet;

use guardrule::input::SourceFile;
use guardrule::rules::FoundRules;
use guardrule::rules::Home;
use guardrule::rules::Matter;
use guardrule::rules::Offer;
use guardrule::rules::Ruleset;
use guardrule::rules::embedded_ids;
use guardrule::rules::find;
use guardrule::rules::load;
use guardrule::rules::load_head;
use proptest::prelude::*;

use crate::harness::run_here;
use crate::harness::words;

fn all() -> Vec<Ruleset> {
    let all = embedded_ids().filter_map(|id| load(id, &|_| None).ruleset);
    all.collect()
}

fn ids<'a>(offers: &'a [Offer<'_>]) -> Vec<&'a str> {
    offers
        .iter()
        .map(|offer| offer.ruleset.id.as_str())
        .collect()
}

/// The heads alone find what the whole files find, at every address below and in every
/// region; and they judge nothing.
#[test]
fn heads_alone_find_what_whole_rulesets_find() {
    let whole = all();
    let heads: Vec<Ruleset> = embedded_ids().filter_map(load_head).collect();
    assert_eq!(heads.len(), whole.len());
    let found = |text: &str, rulesets: &[Ruleset]| {
        let found = find(text, rulesets);
        let offers = |offers: &[Offer<'_>]| -> Vec<String> {
            let each = offers.iter().map(|offer| {
                let ruleset = offer.ruleset;
                format!(
                    "{} {} {:?} {:?}",
                    ruleset.id, ruleset.title, offer.only, offer.editions
                )
            });
            each.collect()
        };
        let not_here = (found.not_here.clone(), found.ask.clone());
        (
            offers(&found.law),
            offers(&found.advice),
            offers(&found.only_where),
            not_here,
        )
    };
    let regions = whole.iter().flat_map(|ruleset| ruleset.regions.clone());
    let countries = whole.iter().filter_map(|ruleset| ruleset.country.clone());
    let places: BTreeSet<String> = regions.chain(countries).collect();
    let mut asked: Vec<String> = ADDRESSES.iter().map(|one| one.words.to_owned()).collect();
    for place in places {
        asked.extend([format!("house in {place}"), format!("flat {place}"), place]);
    }
    assert!(asked.len() > 100, "{}", asked.len());
    for text in asked {
        assert_eq!(found(&text, &heads), found(&text, &whole), "{text}");
    }
    for head in &heads {
        assert!(
            head.rules.is_empty() && !head.unread.is_empty(),
            "{}",
            head.id
        );
    }
}

/// What the program says of one address.
struct Address {
    words: &'static str,
    /// How the ids of the first offers begin, in this order.
    first: &'static [&'static str],
    /// How no id of an offered law begins: it holds elsewhere, or for other buildings.
    never: &'static [&'static str],
    /// A piece of what is said not to be here.
    not_here: Option<&'static str>,
}

/// Each with the text that says what holds there.
const ADDRESSES: &[Address] = &[
    // Florida Building Code, Building, eighth edition, for flats; its residential volume
    // (R101.2 of the model) is for houses alone
    Address {
        words: "balcony of a flat in Orlando, Florida",
        first: &["florida-buildings-2023"],
        never: &[
            "us-dwelling",
            "california",
            "florida-dwelling",
            "new-jersey",
        ],
        not_here: None,
    },
    // California Residential Code, title 24 part 2.5: houses of one and two dwellings
    Address {
        words: "house with a deck, Los Angeles, California",
        first: &["california-dwelling"],
        never: &["new-york", "canada", "us-windows", "california-buildings"],
        not_here: None,
    },
    // O. Reg. 332/12, division B, part 9, which replaces the national code there
    Address {
        words: "12 Alder Row, Toronto, Ontario: deck of a house",
        first: &["ontario-2012"],
        never: &["us-", "british-columbia", "canada-", "quebec"],
        not_here: None,
    },
    // 105 CMR 410.503: homes that are let in Massachusetts
    Address {
        words: "rented apartment, porch, Boston",
        first: &["massachusetts-rental", "us-"],
        never: &["us-dwelling", "chicago", "washington"],
        not_here: None,
    },
    // New York City building code, BC 1015; flats built after 18 April 1929 have
    // the Multiple Dwelling Law section 52 beside it
    Address {
        words: "stair of a flat in Brooklyn",
        first: &["new-york-city"],
        never: &["us-dwelling", "california", "scotland"],
        not_here: None,
    },
    // Approved Document K is for England; Scotland and Wales have their own
    Address {
        words: "rented house in England",
        first: &["uk-approved-document-k"],
        never: &["scotland", "northern-ireland", "ireland"],
        not_here: Some("rented homes"),
    },
    // the technical handbook, standard 4.4
    Address {
        words: "stairs of a house in Glasgow with a toddler",
        first: &["scotland-20"],
        never: &["uk-approved-document-k", "northern-ireland"],
        not_here: None,
    },
    // Saxony's building code was not read; other states' codes do not hold there
    Address {
        words: "balcony, flat, Dresden",
        first: &[],
        never: &[
            "germany-building-codes",
            "germany-hesse",
            "germany-bavaria",
            "germany-lower",
            "austria",
        ],
        not_here: Some("Saxony"),
    },
    // decree 17 March 1978 and NF P01-012, the reference of practice
    Address {
        words: "balcony in Lyon built in 1995",
        first: &["france-1988"],
        never: &["germany", "switzerland"],
        not_here: None,
    },
    // National Construction Code 2022 with the Housing Provisions
    Address {
        words: "house with a verandah, Sydney, New South Wales",
        first: &["australia-ncc-20"],
        never: &["new-zealand", "singapore"],
        not_here: None,
    },
    // building code clause F4 with F4/AS1
    Address {
        words: "deck, Auckland",
        first: &["new-zealand-f4"],
        never: &["australia"],
        not_here: None,
    },
    // Building Standard Law, enforcement order, article 126
    Address {
        words: "balcony of an apartment in Tokyo",
        first: &["japan"],
        never: &["singapore", "us-"],
        not_here: None,
    },
    // approved document, section H
    Address {
        words: "flat in Singapore",
        first: &["singapore-h"],
        never: &["japan", "india"],
        not_here: None,
    },
    // a house has the residential code, and the code of all other buildings does not hold
    // there (R101.2 and 101.2 of the models)
    Address {
        words: "house in Texas with a toddler, wooden stairs",
        first: &["us-dwelling-2021"],
        never: &["us-buildings"],
        not_here: None,
    },
    Address {
        words: "townhouse in Seattle with a high deck",
        first: &["washington-dwelling-2021"],
        never: &["washington-buildings"],
        not_here: None,
    },
    // what several homes share is a matter of the building code
    Address {
        words: "shared stairs of a building in Texas",
        first: &["us-buildings-2021"],
        never: &["us-dwelling"],
        not_here: None,
    },
    // how many homes the house has was not said: either may hold
    Address {
        words: "a flat in an old house in Texas",
        first: &["us-buildings-2021", "us-dwelling-2021"],
        never: &["california"],
        not_here: None,
    },
    // the city's code since 2019 (titles 14B and 14X) was not read, and the model is not it
    Address {
        words: "apartment Chicago",
        first: &[],
        never: &["us-buildings", "us-dwelling"],
        not_here: Some("No building rules for flats in Chicago"),
    },
    // Administrative Code 27-2043.1; the model's windows are not the city's
    Address {
        words: "window of a rental apartment in New York City",
        first: &["new-york-city-windows"],
        never: &["us-buildings", "us-windows"],
        not_here: None,
    },
    Address {
        words: "condo in Toronto, 12th floor balcony",
        first: &["ontario-2012"],
        never: &["us-", "canada-"],
        not_here: None,
    },
    Address {
        words: "landlord with 40 stairwells in Boston",
        first: &["massachusetts-rental", "us-buildings"],
        never: &["us-dwelling"],
        not_here: None,
    },
    // BayBO article 36; the codes of other states do not hold in Munich
    Address {
        words: "balcony Munich",
        first: &["germany-bavaria"],
        never: &["germany-hesse", "germany-building-codes", "austria"],
        not_here: None,
    },
    Address {
        words: "terrace house in London",
        first: &["uk-approved-document-k"],
        never: &["scotland", "ireland"],
        not_here: None,
    },
    // nothing of Nigeria was read
    Address {
        words: "stair in Lagos",
        first: &[],
        never: &["us-", "uk-", "india"],
        not_here: Some("No building rules for this place in Nigeria"),
    },
    // nothing of Kenya was read
    Address {
        words: "house in Kenya",
        first: &[],
        never: &["us-", "uk-", "india", "scotland"],
        not_here: Some("No building rules for houses in Kenya"),
    },
];

#[test]
fn invented_addresses_on_five_continents_are_led_to_the_rules_that_hold_there() {
    let all = all();
    for address in ADDRESSES {
        let found = find(address.words, &all);
        let law = ids(&found.law);
        let begins = |(id, first): (&&str, &&str)| id.starts_with(first);
        assert!(
            law.len() >= address.first.len() && law.iter().zip(address.first).all(begins),
            "{}: {law:?}",
            address.words
        );
        for never in address.never {
            let wrong = law.iter().find(|id| id.starts_with(never));
            assert_eq!(wrong, None, "{}", address.words);
        }
        let said = found.not_here.join(" ");
        if let Some(piece) = address.not_here {
            assert!(said.contains(piece), "{}: {said}", address.words);
        }
        assert!(
            ids(&found.advice).contains(&"small-child-advice"),
            "{}: the advice holds anywhere",
            address.words
        );
    }
}

#[test]
fn every_ruleset_is_named_where_it_holds() {
    let all = all();
    for ruleset in &all {
        let country = ruleset.country.clone().expect("a country, or any");
        // what holds in all of Europe holds in Norway
        let country = country
            .replace("Europe", "Norway")
            .replace("any country", "");
        let words = format!("{} {country}", ruleset.regions.first().unwrap_or(&country));
        let found = find(&words, &all);
        let mut offers = found
            .law
            .iter()
            .chain(&found.advice)
            .chain(&found.only_where);
        let named = offers.any(|offer| {
            offer.ruleset.id == ruleset.id || offer.editions.contains(&ruleset.id.as_str())
        });
        assert!(named, "{} is not found by {words}", ruleset.id);
    }
}

#[test]
fn what_was_not_said_is_asked_for() {
    let all = all();
    let ask = |words: &str| find(words, &all).ask.join("; ");
    assert!(ask("baby").contains("the country"));
    assert!(ask("deck in the USA").contains("state, province or city"));
    assert!(ask("deck in Florida").contains("a house, or a flat"));
    assert!(ask("deck in a house in Texas").contains("the year in which it was built"));
    assert!(!ask("deck in a house in Texas, built 2010").contains("the year"));
    assert!(!ask("deck of a house in Florida").contains("a flat"));
    assert!(ask("flat in the UK").contains("which of the countries"));
}

#[test]
fn plain_words_mean_what_people_mean() {
    let of = |words: &str| {
        let found: FoundRules<'_> = find(words, &[]);
        found.sought
    };
    let sought = of("a condo in Manhattan, New York, built 1935");
    assert_eq!(
        sought.region,
        Some("New York City"),
        "the city over the state"
    );
    assert_eq!(sought.countries, ["United States"]);
    assert_eq!((sought.home, sought.built), (Some(Home::Flat), Some(1935)));
    assert_eq!(of("day care in Kansas").matters, [Matter::ChildCare]);
    assert_eq!(of("day care in Kansas").purpose, Some("public"));
    assert_eq!(of("spiral stairs").place, Some("stair"));
    let unknown = of("balconie in Floryda, xyzzy").unknown;
    let near: Vec<Option<&str>> = unknown.iter().map(|(_, near)| *near).collect();
    assert_eq!(near, [Some("balcony"), Some("Florida"), None]);
}

/// A house has one dwelling or two, as the model codes cut it; a flat is one of three or
/// more in its building.
#[test]
fn a_ruleset_for_so_many_dwellings_is_offered_where_a_home_may_be_among_them() {
    let offered = |bound: &str, words: &str| {
        let text = format!(
            "id = \"town\"\ntitle = \"T\"\nedition = \"E\"\ncountry = \"United States\"\n\
             covers.says = \"homes\"\ncovers.dwellings-in-building.{bound}\n\
             [source.s]\ntitle = \"T\"\nedition = \"E\"\nstatus = \"published\"\n\
             [[rule]]\nid = \"r\"\nhazard = \"fall over\"\nclause = \"1\"\n\
             says = \"Something is asked.\"\nsource = \"s\"\ncheck.height.at-least = \"36 in\"\n"
        );
        let loaded = load("town.toml", &|name| {
            (name == "town.toml").then(|| SourceFile::new(name, &text))
        });
        let town = [loaded.ruleset.expect("it is read")];
        let found = find(words, &town);
        found.law.len() == 1
    };
    for (bound, house, flat) in [
        ("at-least = \"2\"", true, true),
        ("at-least = \"3\"", false, true),
        ("above = \"1\"", true, true),
        ("above = \"2\"", false, true),
        ("at-most = \"1\"", true, false),
        ("at-most = \"2\"", true, false),
        ("at-most = \"3\"", true, true),
        ("below = \"2\"", true, false),
        ("below = \"3\"", true, false),
        ("below = \"4\"", true, true),
    ] {
        assert_eq!(offered(bound, "deck of a house in Texas"), house, "{bound}");
        assert_eq!(offered(bound, "flat in Texas"), flat, "{bound}");
    }
}

#[test]
fn of_several_editions_the_newest_is_offered_or_that_of_the_year() {
    let all = all();
    let offer = |words: &str| {
        let found = find(words, &all);
        let dwelling = |offer: &&Offer<'_>| offer.ruleset.id.starts_with("us-dwelling");
        let offer = found.law.into_iter().find(|offer| dwelling(&offer));
        let offer = offer.expect("the model code");
        (offer.ruleset.id.as_str(), offer.editions.len())
    };
    let (newest, others) = offer("deck of a house in Nevada");
    assert_eq!(newest, "us-dwelling-2024");
    assert_eq!(
        offer("deck of a house in Nevada, built 2010"),
        ("us-dwelling-2009", others)
    );
    let found = find("deck of a house in Nevada, built 1950", &all);
    assert!(
        found.not_here.join(" ").contains("1950"),
        "{:?}",
        found.not_here
    );
}

/// The states' own prints as they were read: Texas and Pennsylvania 2021, Tennessee 2018,
/// Alabama 2015 of the residential code; New York, Illinois 2024 and Alabama 2021 of the
/// building code. What they leave unchanged is the model's.
#[test]
fn a_state_is_offered_the_edition_that_its_own_print_has() {
    let all = all();
    for (words, id) in [
        ("deck of a house in Texas", "us-dwelling-2021"),
        (
            "porch of a house in Pittsburgh, Pennsylvania",
            "us-dwelling-2021",
        ),
        ("deck of a house in Tennessee", "us-dwelling-2018"),
        ("deck of a house in Alabama", "us-dwelling-2015"),
        ("balcony of a flat in Illinois", "us-buildings-2024"),
        ("balcony of a flat in Alabama", "us-buildings-2021"),
    ] {
        let found = find(words, &all);
        let first = found.law.first().expect("an offer");
        assert_eq!(
            (first.ruleset.id.as_str(), first.read_there),
            (id, true),
            "{words}"
        );
        let said = found.not_here.join(" ");
        assert!(!said.contains("itself says"), "{words}: {said}");
    }
    // the year of building goes before it
    let found = find("deck of a house in Texas, built 2010", &all);
    assert!(ids(&found.law).contains(&"us-dwelling-2009"));
}

/// What a state changed goes before the model that it changed.
#[test]
fn a_state_that_changed_the_model_is_led_to_its_own() {
    let all = all();
    for (words, id) in [
        ("deck of a house in Montana", "montana-dwelling-2021"),
        ("deck of a house in Seattle", "washington-dwelling-2021"),
        ("flat in North Carolina", "north-carolina-buildings"),
        (
            "deck of a house in South Carolina",
            "south-carolina-dwelling-2021",
        ),
        ("deck of a house in Wisconsin", "wisconsin-decks"),
        ("balcony, apartment, Seoul", "korea-housing"),
        ("balcony of a flat in China built 2015", "china-homes-2011"),
    ] {
        let found = find(words, &all);
        assert!(
            ids(&found.law).contains(&id),
            "{words}: {:?}",
            ids(&found.law)
        );
    }
    // the model that a state has changed holds there no more, but for a year of building
    let law = |words: &str| {
        let found = find(words, &all);
        let law = found.law.iter().map(|offer| offer.ruleset.id.clone());
        law.collect::<Vec<String>>()
    };
    let model = |id: &String| id.starts_with("us-dwelling-");
    assert!(!law("deck of a house in Ohio").iter().any(model));
    assert!(law("deck of a house in Ohio, built 2010").iter().any(model));
    // Georgia's print of 2024 has the clause on windows no more
    let windows = |id: &String| id.starts_with("us-windows-");
    assert!(!law("window of a house in Georgia").iter().any(windows));
    assert!(law("window of a house in Nevada").iter().any(windows));
    let found = find("renovation of a flat in Texas", &all);
    assert!(ids(&found.law).contains(&"us-existing-buildings-2021"));
    let found = find("handrail of a stair, house in Texas", &all);
    assert!(ids(&found.law).contains(&"us-handrails-2018"));
}

/// A code that is in force no more, and whose successor was not read, says so; a later
/// edition that is here is named instead. Each offer says what it does not speak of.
#[test]
fn an_offer_says_when_it_ended_and_what_is_not_in_it() {
    let all = all();
    let ended = |words: &str, id: &str| {
        let found = find(words, &all);
        let offer = found.law.iter().find(|offer| offer.ruleset.id == id);
        offer.expect(id).ended
    };
    assert_eq!(ended("deck in Ontario", "ontario-2012"), Some(2025));
    assert_eq!(ended("deck of a house in Texas", "us-dwelling-2021"), None);
    assert_eq!(ended("balcony in Lyon", "france-2024"), None);
    let found = find("stair of a house in Texas", &all);
    let offer = found.law.first().expect("the model code");
    let left: Vec<&str> = offer
        .leaves_out(&found.sought)
        .map(|left| left.says.as_str())
        .collect();
    assert!(
        left.iter().any(|says| says.contains("handrail's grip")),
        "{left:?}"
    );
    assert!(!left.iter().any(|says| says.contains("Pool")), "{left:?}");
    let args = ["rules", "find", "balcony", "in", "Mainz"];
    let said = words(&run_here(&args).out);
    assert!(
        said.contains("It asks nothing, or not everywhere, about: fall through, climb."),
        "{said}"
    );
    assert!(said.contains("Not in it:"), "{said}");
}

/// What nobody has to write, and what people write all the same.
#[test]
fn numbers_and_small_words_are_passed_over() {
    let of = |words: &str| find(words, &[]).sought;
    let sought = of("my flat on the 12th floor has 2 low windows, London");
    assert_eq!(sought.unknown, []);
    assert_eq!(sought.countries, ["England"]);
    assert_eq!(of("a flat in a house of ours").home, None);
    assert_eq!(of("shared landing").home, Some(Home::Flat));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn any_words_have_an_answer(words in "\\PC{0,60}") {
        let found = find(&words, &[]);
        prop_assert!(found.law.is_empty());
    }
}

#[test]
fn an_edition_holds_from_its_first_year_to_the_year_before_the_next() {
    let rulesets = all();
    for id in [
        "us-dwelling-2012",
        "us-dwelling-2015",
        "us-dwelling-2018",
        "us-dwelling-2021",
    ] {
        let ruleset = rulesets.iter().find(|ruleset| ruleset.id == id);
        let years = ruleset.and_then(|ruleset| ruleset.in_force);
        let years = years.expect("its years are stated");
        let until = years.until.expect("another edition followed");
        let offered = |built: i32| {
            let sought = format!("house in Texas built {built}");
            let found = find(&sought, &rulesets);
            ids(&found.law).contains(&id)
        };
        assert!(!offered(years.from - 1), "{id}");
        assert!(offered(years.from), "{id}");
        assert!(offered(until - 1), "{id}");
        assert!(!offered(until), "{id}");
    }
}
