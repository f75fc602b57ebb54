//! The printed sheet: what is on it, what is not, and what it does with text of others.

use std::collections::BTreeSet;

use guardrule::items::Item;
use guardrule::rules;
use guardrule::rules::Ruleset;
use guardrule::rules::Subject;
use roxmltree::Document;
use roxmltree::ParsingOptions;

use crate::harness::run;
use crate::harness::run_here;

/// The page as XML: HTML's void elements are closed, and no other stands on the page.
fn xml(page: &str) -> String {
    let viewport = "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"";
    page.replace("<meta charset=\"utf-8\">", "<meta charset=\"utf-8\"/>")
        .replace(&format!("{viewport}>"), &format!("{viewport}/>"))
}

fn parsed(page: &str) -> Document<'_> {
    let options = ParsingOptions {
        allow_dtd: true,
        ..ParsingOptions::default()
    };
    Document::parse_with_options(page, options).expect("well-formed")
}

fn asked_on(page: &str) -> BTreeSet<String> {
    let page = xml(page);
    let document = parsed(&page);
    let items = document.descendants();
    items
        .filter_map(|node| node.attribute("data-item"))
        .flat_map(|names| names.split("; ").map(str::to_owned))
        .collect()
}

/// What stands on every sheet, whatever the rules ask: the dangers, and what they hang on.
const ALWAYS: [&str; 8] = [
    "condition",
    "drop",
    "guard",
    "infill loose",
    "moves when pushed",
    "paint",
    "photo",
    "place",
];

/// What a ruleset looks at, worked out from its model.
fn looked_at(ruleset: &Ruleset) -> BTreeSet<Item> {
    let mut items = BTreeSet::new();
    for condition in &ruleset.covers.conditions {
        items.insert(condition.item);
    }
    for rule in &ruleset.rules {
        for group in std::iter::once(&rule.when)
            .chain(&rule.when_any)
            .chain(&rule.unless)
        {
            items.extend(group.iter().map(|condition| condition.item));
        }
        for check in &rule.checks {
            match check.subject {
                Subject::AnyOpening => {
                    items.extend([Item::Opening, Item::BottomGap, Item::EndGap]);
                }
                Subject::Item(item) => {
                    items.insert(item);
                }
                Subject::LoadPath => {
                    let asked = Item::LOAD_PATH.iter().filter(|i| **i != Item::PullTest);
                    items.extend(asked);
                }
            }
        }
    }
    items
}

#[test]
fn each_ruleset_finds_what_it_asks_for_and_nothing_else() {
    for id in rules::embedded_ids() {
        let ruleset = rules::load(id, &|_| None).ruleset.expect("it loads");
        let mut expected: BTreeSet<String> = looked_at(&ruleset)
            .iter()
            .map(|item| item.name().to_owned())
            .collect();
        if ruleset.in_force.is_some() {
            expected.insert("built".to_owned());
        }
        if expected.contains("opening") {
            expected.insert("openings checked".to_owned());
        }
        expected.extend(ALWAYS.map(str::to_owned));
        let ran = run_here(&["sheet", "--rules", id, "--no-guidance", "--strength"]);
        assert_eq!((ran.code, ran.err.as_str()), (0, ""), "{id}");
        assert_eq!(asked_on(&ran.out), expected, "{id}");
    }
}

#[test]
fn the_law_does_not_ask_for_footholds_nor_the_advice_for_risers() {
    let law = run_here(&["sheet", "--rules", "us-dwelling-2018", "--no-guidance"]);
    let advice = run_here(&["sheet"]);
    let both = run_here(&["sheet", "--rules", "us-dwelling-2018"]);
    let asked = |page: &str, item: &str| asked_on(page).contains(item);
    assert!(asked(&law.out, "risers") && !asked(&law.out, "foothold"));
    assert!(!asked(&advice.out, "risers") && asked(&advice.out, "foothold"));
    assert!(asked(&both.out, "risers") && asked(&both.out, "foothold"));
}

/// The pages by their class and label, in their order.
fn sheet_pages(page: &str) -> Vec<(String, String)> {
    let page = xml(page);
    let document = parsed(&page);
    document
        .descendants()
        .filter(|node| node.has_tag_name("section"))
        .map(|node| {
            let of = |name: &str| node.attribute(name).unwrap_or_default().to_owned();
            (of("class"), of("aria-label"))
        })
        .collect()
}

#[test]
fn cautions_come_first_and_no_page_of_a_guard_backs_anothers() {
    let ran = run_here(&["sheet", "--guards", "3"]);
    let pages = sheet_pages(&ran.out);
    let classes: Vec<&str> = pages.iter().map(|(class, _)| class.as_str()).collect();
    assert_eq!(classes[..2], ["pg front", "pg front"], "a leaf of its own");
    assert_eq!(classes.last(), Some(&"back"));
    for number in 1..=3 {
        let begins = format!("railing {number} of 3, page ");
        let own: Vec<usize> = (0..pages.len())
            .filter(|index| pages[*index].1.starts_with(&begins))
            .collect();
        assert_eq!(own.len() % 2, 0, "{pages:?}");
        assert_eq!(own[0] % 2, 0, "it begins on a front: {pages:?}");
        for (count, index) in (1..).zip(&own) {
            let label = format!("{begins}{count} of {}", own.len());
            assert_eq!(pages[*index].1, label);
        }
    }
    let place = |text: &str| ran.out.find(text).unwrap_or_else(|| panic!("{text}"));
    assert!(place("Never lean over an edge") < place("data-item"));
    assert!(place("The local authority and licensed professionals decide") < place("data-item"));
    // the order of work
    let order = [
        "1 Look and push",
        "STOP ticked?",
        "data-item=\"guard\"",
        "data-item=\"moves when pushed\"",
        "2 The ball",
        "3 The tape",
        "data-item=\"height\"",
        "4 Stairs only",
    ];
    let places: Vec<usize> = order.iter().map(|text| place(text)).collect();
    assert!(places.is_sorted(), "{places:?}");
}

/// Each danger of the table has its box with STOP behind it.
#[test]
fn every_danger_has_a_box_that_stops() {
    // a window's stop stands where the rules are about windows
    let of_windows = run_here(&["sheet", "--rules", "new-jersey-windows"]).out;
    let page = run_here(&["sheet"]).out + &of_windows;
    for item in Item::all() {
        for word in item.words().iter().filter(|word| word.danger.is_some()) {
            // said in the words of who stands there
            let word = if item == Item::PostFastening {
                "post off the floor"
            } else {
                word.name
            };
            assert!(page.contains(&format!("{word}: STOP")), "{item}: {word}");
        }
    }
}

#[test]
fn a_guard_has_room_for_three_openings_with_their_height() {
    let ran = run_here(&["sheet"]);
    let page = xml(&ran.out);
    let document = parsed(&page);
    let rows = document.descendants().filter(|node| {
        node.attribute("data-item") == Some("opening")
            && node
                .descendants()
                .any(|part| part.text() == Some("how high"))
    });
    assert_eq!(rows.count(), 3);
}

/// rulesets/small-child-advice.toml: 2 3/8, 3 1/2, 4 (windows) and 6 in; rulesets/us-dwelling-2018.toml: 4 and 4 3/8 in.
#[test]
fn the_balls_are_those_of_the_rulesets_with_a_box_to_stop_and_one_to_pass() {
    let balls = |args: &[&str]| {
        let page = xml(&run_here(args).out);
        let document = parsed(&page);
        let table = document
            .descendants()
            .find(|node| node.attribute("class") == Some("balls"))
            .expect("a table of balls");
        let named: Vec<String> = table
            .descendants()
            .filter(|node| node.attribute("class") == Some("ball"))
            .filter_map(|node| node.text().map(str::to_owned))
            .collect();
        for row in table
            .descendants()
            .filter(|node| node.has_attribute("data-item"))
        {
            let cells: Vec<_> = row
                .children()
                .filter(|node| node.has_tag_name("td"))
                .collect();
            // none, not reached, and a cell for each ball
            assert_eq!(cells.len(), named.len() + 2);
            let boxes: Vec<usize> = cells
                .iter()
                .map(|cell| {
                    cell.children()
                        .filter(|node| node.has_tag_name("i"))
                        .count()
                })
                .collect();
            assert_eq!(boxes[..2], [1, 1]);
            assert!(
                boxes[2..].iter().all(|count| [0, 2].contains(count)),
                "{boxes:?}"
            );
            assert!(boxes[2..].contains(&2), "{boxes:?}");
        }
        named
    };
    let law = ["sheet", "--rules", "us-dwelling-2018", "--no-guidance"];
    assert_eq!(balls(&law), ["4 in", "4 3/8 in", "6 in"]);
    assert_eq!(
        balls(&law[..3]),
        ["2 3/8 in", "3 1/2 in", "4 in", "4 3/8 in", "6 in"]
    );
    // in the country's own unit; what the rules write stands below it
    let metric = ["sheet", "--rules", "uk-approved-document-k"];
    let own = balls(&metric);
    assert!(
        own.contains(&"88.9 mm".to_owned()) && own.contains(&"100 mm".to_owned()),
        "{own:?}"
    );
    assert!(own.iter().all(|size| size.ends_with(" mm")), "{own:?}");
}

#[test]
fn strength_has_its_pages_only_on_request() {
    let with = run_here(&["sheet", "--rules", "us-dwelling-2018", "--strength"]).out;
    let without = run_here(&["sheet", "--rules", "us-dwelling-2018"]).out;
    assert!(with.contains("5 What holds it") && !without.contains("5 What holds it"));
    assert!(
        asked_on(&with).contains("rail section") && !asked_on(&without).contains("rail section")
    );
}

#[test]
fn the_page_needs_nothing_from_outside_and_asks_for_nothing_that_hurts() {
    let mut args = vec!["sheet"];
    for id in rules::embedded_ids() {
        args.extend(["--rules", id]);
    }
    let page = run_here(&args).out;
    let without_names = page.replace("xmlns=\"http://www.w3.org/2000/svg\"", "");
    for outside in [
        "<script", "src=", "href=", "url(", "http:", "https:", "@import", "style=",
    ] {
        assert!(!without_names.contains(outside), "{outside}");
    }
    let asked = page
        .split("class=\"back\"")
        .next()
        .expect("a first part")
        .to_lowercase();
    for harm in [
        "pull", "luggage", "lbf", "hang on", "climb on", "jump", "kick", "shake",
    ] {
        assert!(!asked.contains(harm), "{harm}");
    }
    assert!(
        asked.contains("push once, gently"),
        "the only act is told in full"
    );
}

#[test]
fn the_back_says_what_is_asked_by_which_clause_and_what_to_verify() {
    let page = run_here(&["sheet", "--rules", "us-dwelling-2012", "--no-guidance"]).out;
    let back = page.split("class=\"back\"").nth(1).expect("a last page");
    for said in [
        "at least 36 in above the walking surface",
        "R312.1.2",
        "R311.7.5.1 (second-hand: verify)",
        "edition read: 2012",
        "It leaves out",
    ] {
        assert!(back.contains(said), "{said}");
    }
}

#[test]
fn text_of_a_ruleset_cannot_break_out_of_the_page() {
    const TITLE: &str = "</style><script>alert(1)</script> & \"town\" <img src=x onerror=alert(2)>";
    let hostile = format!(
        "id = \"town\"\ntitle = '{TITLE}'\nedition = \"<b>1</b>\"\nadvisory = false\n\
         leaves-out = [\"a < b & c\"]\n[source.s]\ntitle = \"<i>\"\nedition = \"1\"\nstatus = \"practice\"\n\
         [[rule]]\nid = \"low\"\nhazard = \"fall over\"\nclause = \"</td><td>\"\n\
         check.height.at-least = \"36 in\"\nsays = \"<u>\"\nsource = \"s\"\n"
    );
    let ran = run(
        &[("town.toml", &hostile)],
        &["sheet", "--rules", "@town.toml", "--no-guidance"],
    );
    assert_eq!(ran.code, 0, "{}", ran.err);
    let page = xml(&ran.out);
    let document = parsed(&page);
    for name in ["script", "img", "u"] {
        let found = document.descendants().any(|node| node.has_tag_name(name));
        assert!(!found, "{name}");
    }
    let texts: String = document
        .descendants()
        .filter_map(|node| node.text())
        .collect();
    assert!(texts.contains(TITLE), "shown as it is written");
    let mut expected = BTreeSet::from(ALWAYS.map(str::to_owned));
    expected.insert("height".to_owned());
    assert_eq!(asked_on(&ran.out), expected);
}

#[test]
fn the_paper_is_the_one_that_was_chosen() {
    let page = |args: &[&str]| run_here(args).out;
    assert!(page(&["sheet", "--paper", "a4"]).contains("size: A4 portrait"));
    assert!(page(&["sheet", "--paper", "letter"]).contains("size: letter portrait"));
    assert!(!page(&["sheet"]).contains("portrait"));
    assert_eq!(run_here(&["sheet", "--guards", "0"]).code, 2);
    assert_eq!(run_here(&["sheet", "--units", "2"]).code, 2);
}

#[test]
fn a_sheet_is_written_whole_or_not_at_all() {
    let folder = tempfile::tempdir().expect("a folder");
    let to = |args: &[&str]| crate::harness::run_in(folder.path(), args, "");
    let ran = to(&["sheet", "--output", "@sheet.html"]);
    assert_eq!((ran.code, ran.out.as_str()), (0, ""), "{}", ran.err);
    let written = std::fs::read_to_string(folder.path().join("sheet.html")).expect("written");
    assert_eq!(written, to(&["sheet", "--output", "-"]).out);
    let ran = to(&[
        "sheet",
        "--rules",
        "no-such-rules",
        "--output",
        "@sheet.html",
    ]);
    assert_eq!(ran.code, 2);
    let kept = std::fs::read_to_string(folder.path().join("sheet.html")).expect("still there");
    assert_eq!(
        kept, written,
        "a sheet with a ruleset missing replaces nothing"
    );
    assert_eq!(to(&["sheet", "--output", "@no/such/sheet.html"]).code, 2);
    std::fs::write(folder.path().join("town.toml"), "id = \"town\"").expect("written");
    let ran = to(&["sheet", "--rules", "@town.toml", "--output", "@town.toml"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("error[G307]"), "{}", ran.err);
}
