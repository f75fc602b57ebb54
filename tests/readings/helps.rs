//! A help that is followed gives a reading that is accepted.

use guardrule::items::Item;
use guardrule::items::Kind;
use guardrule::reading::parse;

use crate::readings::refused::REFUSED;
use crate::surveys::corpus::rows;

/// Helps that say what to do, and not what to write: how they begin.
const DOING: &[&str] = &[
    "count again",
    "format the column as text",
    "leave ",
    "look at",
    "measure again",
    "type ",
];

/// What stands behind `write` where it is no reading that could be taken over.
const NO_READING: &[&str] = &[
    "a gap",
    "a number",
    "both",
    "each corner once",
    "how",
    "it in one of them",
    "it to the nearest",
    "its form",
    "none if",
    "one age a row",
    "one ball test",
    "one length",
    "one of",
    "one reading a row",
    "one, ",
    "the ",
    "three corners",
    "what",
    "whole feet",
    "year, month and day",
    "a length",
    "a unit",
];

/// The readings that a help offers.
fn offered(help: &str) -> Vec<String> {
    let Some(at) = help.find("write ") else {
        return Vec::new();
    };
    let said = &help[at + "write ".len()..];
    let literal = !NO_READING.iter().any(|start| said.starts_with(start));
    // `write the sides as measured, such as 36 in`, `write it so: 36 in`
    let marks = ["it so: ", ", such as ", ", as in "];
    let shown = marks
        .iter()
        .find_map(|mark| Some(said.find(mark)? + mark.len()));
    let said = match shown {
        Some(from) => &said[from..],
        None if literal => said,
        None => return Vec::new(),
    };
    let said = said.split(';').next().unwrap_or_default();
    let mut found = Vec::new();
    for part in said.split(", or ").flat_map(|part| part.split(" or ")) {
        let ends = [
            " if ", " where ", " for ", ", and ", " (", ", leave", " in a ",
        ];
        let end = ends.iter().filter_map(|end| part.find(end)).min();
        let part = part[..end.unwrap_or(part.len())].trim();
        found.extend(part.split(", ").map(|one| one.trim().to_owned()));
    }
    found.retain(|one| !one.is_empty());
    found
}

/// Offers for a part of a reading, such as the force behind `pushed`, end so.
const PARTS: &[&str] = &[
    " lbf",
    " N",
    " deg",
    "1:2",
    "rise 7 3/4 going 10 in",
    "7 3/4 x 10 in",
];

fn follow(item: Item, text: &str, faults: &mut Vec<String>) -> usize {
    let Err(error) = parse(item, text, None) else {
        return 0;
    };
    let Some(help) = error.help else {
        faults.push(format!("{item}: `{text}` is refused without help"));
        return 0;
    };
    if Item::near_misses().any(|(_, miss)| miss.says == help) {
        return 0; // each of its offers is tried by itself below
    }
    let offers = offered(&help);
    let says_what_to_do = DOING.iter().any(|doing| help.starts_with(doing))
        || NO_READING
            .iter()
            .any(|start| help.starts_with(&format!("write {start}")));
    if offers.is_empty() && !says_what_to_do {
        faults.push(format!("{item}: `{text}`: nothing to follow in: {help}"));
    }
    for offer in &offers {
        // what is offered stands for the whole, or for the part that is marked
        let mut whole = text.to_owned();
        whole.replace_range(error.span.clone(), offer);
        let accepted = [offer, &whole]
            .iter()
            .any(|text| parse(item, text, None).is_ok());
        let part = PARTS.iter().any(|part| offer.ends_with(part));
        if !accepted && !part {
            faults.push(format!(
                "{item}: `{text}` offers `{offer}`, which is refused (help: {help})"
            ));
        }
    }
    offers.len()
}

/// Readings that people write and no item takes as they stand.
const SLIPS: &[&str] = &[
    "36",
    "36 1/2",
    "1,250 mm",
    "1.829 mm",
    "1.250 mm",
    "4 3/8 mm",
    "1 m 3 in",
    "2-11 1/2 in",
    "1/3 in",
    "-3 in",
    "about 5 in",
    "~ 90 cm",
    "5-6 in",
    "36+ in",
    "8 ft+",
    "36 inchs",
    "3'5",
    "35.5'",
    "9999 in",
    "0",
    "0 in",
    "no",
    "none",
    "yes",
    "y",
    "bars",
    "metal",
    "steel",
    "new",
    "3rd floor",
    "ok",
    "spindels",
    "landig",
    "throgh bolts",
    "screws",
    "12:30",
    "2026-03-04",
    "7/8",
    "3 ball stops",
    "4 in ball",
    "4 in ball maybe",
    "triangle 7 in",
    "rise 7 going 10",
    "18 high",
    "18 in",
    "5 in away",
    "50",
    "50 lbs 1/4",
    "3 years or so",
    "94",
    "two",
];

#[test]
fn a_help_that_is_followed_is_accepted() {
    let mut faults = Vec::new();
    let mut followed = 0;
    for (item, texts) in REFUSED {
        for text in *texts {
            followed += follow(*item, text, &mut faults);
        }
    }
    for (item, text) in rows() {
        followed += follow(item, &text, &mut faults);
    }
    for item in Item::all().filter(|item| item.info().kind != Kind::Text) {
        for text in SLIPS {
            followed += follow(item, text, &mut faults);
        }
    }
    assert!(
        faults.is_empty(),
        "{} faults:\n{}",
        faults.len(),
        faults.join("\n")
    );
    assert!(followed > 500, "only {followed} helps were followed");
}

#[test]
fn every_near_miss_is_refused_with_what_it_says_and_each_offer_is_accepted() {
    for (item, miss) in Item::near_misses() {
        for written in miss.written {
            let written = written.replace('*', "3rd");
            let Some(item) = item else {
                let found = Item::near_miss_of_name(&written).map(|miss| miss.says);
                assert_eq!(found, Some(miss.says), "{written}");
                continue;
            };
            let error = parse(item, &written, None).expect_err(&written);
            assert_eq!(error.help.as_deref(), Some(miss.says), "{item}: {written}");
            for offer in miss.offers {
                assert!(parse(item, offer, None).is_ok(), "{item}: {offer}");
            }
        }
    }
}

#[test]
fn every_word_that_hides_a_reading_is_asked_about_and_each_offer_is_an_item() {
    for miss in Item::words_held() {
        for word in miss.written {
            for name in [format!("the {word} by the wall"), format!("Worst_{word}")] {
                let found = Item::holding_a_word_of_one(&name).map(|miss| miss.says);
                assert_eq!(found, Some(miss.says), "{name}");
            }
            let own = format!("own {word} by the wall");
            assert!(Item::holding_a_word_of_one(&own).is_none(), "{own}");
        }
        for offer in miss.offers {
            assert!(Item::by_name(offer).is_some(), "{offer}");
        }
    }
}
