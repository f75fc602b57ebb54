//! What a guard comes to after a change: worked cases, each judged as an exact value by
//! several rulesets at once. Every number is worked out apart from the code, by exact
//! fractions, from the lengths that stand beside it; the limits are those of the clauses
//! that the rulesets name.

use std::collections::BTreeMap;

use crate::harness::run;

/// How each rule comes out, guard by guard, the reading alone compared; of a rule on
/// several items the worst.
pub(super) fn verdicts(survey: &str, rules: &[&str]) -> BTreeMap<String, BTreeMap<String, String>> {
    let mut args = vec![
        "check",
        "@s.csv",
        "--format",
        "json",
        "--decision",
        "simple",
    ];
    for id in rules {
        args.extend(["--rules", id]);
    }
    let ran = run(&[("s.csv", survey)], &args);
    assert!(ran.err.is_empty(), "{}", ran.err);
    let report = ran.json();
    let text = |value: &serde_json::Value| value.as_str().expect("a text").to_owned();
    let mut all = BTreeMap::new();
    for guard in report["guards"].as_array().expect("a list") {
        let mut of_guard: BTreeMap<String, String> = BTreeMap::new();
        for finding in guard["findings"].as_array().expect("a list") {
            let rule = format!("{} {}", text(&finding["ruleset"]), text(&finding["rule"]));
            let verdict = text(&finding["verdict"]);
            let known = of_guard.entry(rule).or_insert_with(|| verdict.clone());
            if verdict == "falls short" || *known == "not measured" {
                *known = verdict;
            }
        }
        all.insert(text(&guard["guard"]), of_guard);
    }
    all
}

/// The limits of a gap, by a letter each: U a 4 in ball (United States), M 100 mm
/// (Canada), C a 3 1/2 in ball, I a 2 3/8 in ball with a child under two, H the band that
/// holds a head, above 3 1/2 and below 9 in.
const GAP_LIMITS: [(char, &str); 5] = [
    ('U', "us-dwelling-2018 gap-too-wide"),
    ('M', "canada-dwelling gap-too-wide"),
    ('C', "small-child-advice gap-too-wide"),
    ('I', "small-child-advice gap-too-wide-for-infant"),
    ('H', "small-child-advice gap-can-hold-a-head"),
];

/// How a gap comes about, what is then read, and the limits that it does not keep.
const GAPS: &[(&str, &str, &str)] = &[
    (
        "13 balusters of 1 1/2 in 72: (72 - 19 1/2) / 14",
        "3 3/4 in",
        "CIH",
    ),
    (
        "one of 1 1/2 between each pair 4 2/13 apart: (54/13 - 3/2) / 2",
        "1.3269 in",
        "",
    ),
    ("strips of 7/16 in gaps of 4 2/13", "3.7163 in", "CIH"),
    ("strips of 3/4 in gaps of 4 2/13", "3.4038 in", "I"),
    ("one bar of 3/4 in a gap of 5 11/32", "2 19/64 in", ""),
    ("10 bars of 3/4 in 48: 40 1/2 / 11", "3.6818 in", "CIH"),
    ("one bar of 3/4 in 4 1/2", "1 7/8 in", ""),
    ("one bar of 3/4 in 5 1/8", "2 3/16 in", ""),
    (
        "one bar of 1 1/2 in 9 1/2 lands on the limit",
        "4 in",
        "UMCIH",
    ),
    ("two bars of 1 1/2 in 9 1/2: 6 1/2 / 3", "2.1667 in", ""),
    (
        "a strip of 3/4 at a post in 4 1/4 leaves exactly 3 1/2",
        "3 1/2 in",
        "CI",
    ),
    ("a strip of 13/16 there", "3 7/16 in", "I"),
    ("12 bars of 20 mm in 1800 mm", "120 mm", "UMCIH"),
    ("15 bars of 20 mm in 1800 mm: 1500 / 16", "93.75 mm", "CIH"),
    ("one of 20 mm between each pair 120 mm apart", "50 mm", ""),
    ("a mesh of 1 3/4 in squares", "1 3/4 in", ""),
    ("a mesh of 1 1/4 in squares", "1 1/4 in", ""),
    ("a mesh that ends 6 in below the top rail", "6 in", "UMCIH"),
    (
        "5 1/2 in Douglas-fir put up wet at 3 7/8, dried to 12 %: 5 1/2 x 7.6 % x 18/30",
        "4.126 in",
        "UMCIH",
    ),
    ("the same of western redcedar, 5.0 %", "4.040 in", "UMCIH"),
    (
        "1 1/2 in Douglas-fir at 3 7/8: the inch rule holds, 100 mm does not",
        "3.943 in",
        "MCIH",
    ),
    ("the wet boards put up at 3 7/16", "3.688 in", "CIH"),
    (
        "a second bar of 1 1/2 in a gap of 7: 5 1/2 / 2",
        "2 3/4 in",
        "I",
    ),
    (
        "one bar of 1 1/2 in a gap of 10: out of the band and into it",
        "4 1/4 in",
        "UMCIH",
    ),
    ("two bars of 1 1/2 in a gap of 10: 7 / 3", "2.3333 in", ""),
    (
        "a rail of 1 1/2 with its top at 42 1/4 above one of 36",
        "4 3/4 in",
        "UMCIH",
    ),
    ("a board of 5 1/2 there", "3/4 in", ""),
    (
        "a rail of 38 mm with its top at 1075 mm above 914.4 mm",
        "122.6 mm",
        "UMCIH",
    ),
    ("two rails of 38 mm there: (160.6 - 76) / 2", "42.3 mm", ""),
    (
        "a tube of 50 mm with its top at 1105 mm above 1000 mm",
        "55 mm",
        "",
    ),
    (
        "a rail of 1 1/2 with its top at 42 3/4 above one of 34 3/4",
        "6 1/2 in",
        "UMCIH",
    ),
    ("one more of 1 1/2 in the middle of that", "2 1/2 in", "I"),
    ("strips of 5/16 in gaps of 3 3/4", "3 7/16 in", "I"),
    (
        "every other bar of 3/4 taken out of gaps of 3 3/4",
        "8 1/4 in",
        "UMCIH",
    ),
    ("a leaning baluster set plumb", "3 3/4 in", "CIH"),
    ("a lattice of 2 in squares", "2 in", ""),
    (
        "a board of 5 1/2 in the hole of 9 that one missing baluster leaves",
        "1 3/4 in",
        "",
    ),
    ("a strip of 1 at a wall in 4 1/4", "3 1/4 in", "I"),
    (
        "a strip of 1 beside a wall that leans by 1 degree, at its top",
        "3.128 in",
        "I",
    ),
    (
        "an upright of 1 1/2 between two newels 5 apart",
        "1 3/4 in",
        "",
    ),
];

#[test]
fn a_gap_after_a_change_keeps_the_limits_that_it_keeps_and_no_others() {
    let mut survey = "unit,guard,item,reading\n,,use,dwelling\n,,shared,no\n,,location,outside\n\
        ,,place,deck\n,,drop,4 ft\n,,children,9 months\n"
        .to_owned();
    for (number, (_, reading, _)) in GAPS.iter().enumerate() {
        survey.push_str(&format!(
            ",gap {number},height,1200 mm\n,gap {number},opening,{reading}\n"
        ));
    }
    let found = verdicts(&survey, &["us-dwelling-2018", "canada-dwelling"]);
    for (number, (how, reading, limits)) in GAPS.iter().enumerate() {
        let names = &found[&format!("gap {number}")];
        let short: String = GAP_LIMITS
            .iter()
            .filter(|(_, rule)| names[*rule] == "falls short")
            .map(|(letter, _)| *letter)
            .collect();
        assert_eq!(short, *limits, "{how}: {reading}");
    }
}

/// What is there, the rulesets, the rules that fall short of those named, and those that
/// are kept.
struct AfterCase {
    how: &'static str,
    rows: &'static [&'static str],
    short: &'static [&'static str],
    kept: &'static [&'static str],
}

const US: &str = "us-dwelling-2018";
const BUILDINGS: &str = "us-buildings-2024";
const CANADA: &str = "canada-dwelling";
const UK: &str = "uk-approved-document-k";
const AUSTRIA: &str = "austria-oib-4";

#[rustfmt::skip]
const AFTER: &[AfterCase] = &[
    AfterCase { how: "a cap of 3/4 on 35 5/8", rows: &["place,deck", "drop,2.5 m", "height,36 3/8 in"], short: &[ "canada-dwelling outside-rail-too-low", "uk-approved-document-k outside-rail-too-low"], kept: &["us-dwelling-2018 rail-too-low", "small-child-advice rail-too-low"] },
    AfterCase { how: "36 raised to 42 1/4", rows: &["place,deck", "drop,2.5 m", "height,42 1/4 in"], short: &["uk-approved-document-k outside-rail-too-low"], kept: &["us-dwelling-2018 rail-too-low", "canada-dwelling outside-rail-too-low"] },
    AfterCase { how: "36 in is 914.4 mm", rows: &["place,deck", "drop,2.0 m", "height,914.4 mm"], short: &["canada-dwelling outside-rail-too-low"], kept: &["us-dwelling-2018 rail-too-low"] },
    AfterCase { how: "a rail with its top at 1075 mm", rows: &["place,deck", "drop,2.0 m", "height,1075 mm"], short: &[], kept: &["canada-dwelling outside-rail-too-low"] },
    AfterCase { how: "a tube with its top at 1105 mm", rows: &["place,balcony", "drop,2.0 m", "height,1105 mm"], short: &[], kept: &["uk-approved-document-k outside-rail-too-low"] },
    AfterCase { how: "a cap of 3/8 on 42 in: 1076.3 mm", rows: &["place,deck", "drop,2.5 m", "height,1076.3 mm"], short: &[], kept: &["canada-dwelling outside-rail-too-low"] },
    AfterCase { how: "tiles and bed of 3/4 on the floor before 36 1/4", rows: &["place,deck", "drop,4 ft", "height,35 1/2 in"], short: &["us-dwelling-2018 rail-too-low", "small-child-advice rail-too-low"], kept: &[] },
    AfterCase { how: "a stair's top, the handrail, capped from 33 1/2 to 34 1/4", rows: &["place,stair", "risers,13", "drop,9 ft", "handrail,top of the guard", "height,34 1/4 in"], short: &["small-child-advice rail-too-low"], kept: &["us-dwelling-2018 stair-rail-too-low", "us-dwelling-2018 guard-top-as-handrail"] },
    AfterCase { how: "a stair's top, the handrail, raised by 8 from 34 3/4", rows: &["place,stair", "risers,13", "drop,9 ft", "handrail,top of the guard", "height,42 3/4 in"], short: &["us-dwelling-2018 guard-top-as-handrail"], kept: &["us-dwelling-2018 stair-rail-too-low"] },
    AfterCase { how: "a stair's top at 880 mm raised by 25", rows: &["place,stair", "risers,13", "drop,2.6 m", "handrail,top of the guard", "height,905 mm"], short: &["small-child-advice rail-too-low"], kept: &["uk-approved-document-k rail-too-low", "uk-approved-document-k guard-top-as-handrail", "canada-dwelling guard-top-as-handrail"] },
    AfterCase { how: "a handrail's brackets moved up by 3 from 33", rows: &["place,stair", "risers,9", "drop,6 ft", "height,40 in", "handrail,separate", "handrail height,36 in"], short: &[], kept: &["us-dwelling-2018 handrail-height", "canada-dwelling handrail-height", "uk-approved-document-k handrail-height"] },
    AfterCase { how: "a handrail of 34 in is 863.6 mm, too low for 865", rows: &["place,stair", "risers,9", "drop,6 ft", "height,40 in", "handrail,separate", "handrail height,863.6 mm"], short: &["canada-dwelling handrail-height"], kept: &["us-dwelling-2018 handrail-height"] },
    AfterCase { how: "that raised by 3/8: 873.1 mm", rows: &["place,stair", "risers,9", "drop,6 ft", "height,40 in", "handrail,separate", "handrail height,873.1 mm"], short: &[], kept: &["canada-dwelling handrail-height", "us-dwelling-2018 handrail-height"] },
    AfterCase { how: "a handrail on the guard at 34 1/4 in: 870 mm up, a step for a child", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "handrail,separate", "handrail height,34 1/4 in", "foothold,870 mm high 38 mm deep"], short: &["small-child-advice foothold-in-reach"], kept: &["us-dwelling-2018 handrail-height"] },
    AfterCase { how: "that at 36 in: 914 mm", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "handrail,separate", "handrail height,36 in", "foothold,914 mm high 38 mm deep"], short: &[], kept: &["us-dwelling-2018 handrail-height", "small-child-advice foothold-in-reach"] },
    AfterCase { how: "a step of 7 3/4 on 10, lift 2: a ball of 6.414", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "stair triangle,rise 7 3/4 going 10 lift 2 in"], short: &["us-dwelling-2018 step-triangle-too-wide", "canada-dwelling step-triangle-too-wide"], kept: &[] },
    AfterCase { how: "its rail 1 lower: a ball of 5.756, 146.2 mm", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "stair triangle,rise 7 3/4 going 10 lift 1 in"], short: &[], kept: &["us-dwelling-2018 step-triangle-too-wide", "canada-dwelling step-triangle-too-wide"] },
    AfterCase { how: "a strip of 1 1/4 under it: a ball of 5.592", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "stair triangle,rise 7 3/4 going 10 lift 3/4 in"], short: &[], kept: &["us-dwelling-2018 step-triangle-too-wide"] },
    AfterCase { how: "180 on 280 mm, lift 50: a ball of 162.4 mm", rows: &["place,stair", "risers,13", "drop,2.6 m", "height,1200 mm", "stair triangle,rise 180 going 280 lift 50 mm"], short: &["canada-dwelling step-triangle-too-wide"], kept: &[] },
    AfterCase { how: "its rail 25 lower: a ball of 144.8 mm", rows: &["place,stair", "risers,13", "drop,2.6 m", "height,1200 mm", "stair triangle,rise 180 going 280 lift 25 mm"], short: &[], kept: &["canada-dwelling step-triangle-too-wide"] },
    AfterCase { how: "190 on 240 mm, the rail on the noses: a ball of 123.9 mm", rows: &["place,stair", "risers,13", "drop,2.6 m", "height,1200 mm", "stair triangle,rise 190 going 240 lift 0 mm"], short: &[], kept: &["canada-dwelling step-triangle-too-wide"] },
    AfterCase { how: "that closed by a saw-tooth board", rows: &["place,stair", "risers,13", "drop,2.6 m", "height,1200 mm", "stair triangle,none"], short: &[], kept: &["uk-approved-document-k step-triangle-too-wide"] },
    AfterCase { how: "a strip of 2 1/2 under treads 6 1/4 apart", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "riser opening,3 3/4 in"], short: &[], kept: &["us-dwelling-2018 open-riser-too-wide", "uk-approved-document-k open-riser-too-wide"] },
    AfterCase { how: "a bar of 1 in the middle there", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "riser opening,2 5/8 in"], short: &[], kept: &["us-dwelling-2018 open-riser-too-wide", "uk-approved-document-k open-riser-too-wide"] },
    AfterCase { how: "6 1/4 between treads", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "riser opening,6 1/4 in"], short: &["us-dwelling-2018 open-riser-too-wide", "uk-approved-document-k open-riser-too-wide"], kept: &[] },
    AfterCase { how: "two bars of 3/4 a tread of 10 leave 4 1/4 level", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "opening,4 1/4 in"], short: &["uk-approved-document-k stair-gap-too-wide", "canada-dwelling gap-too-wide", "small-child-advice gap-too-wide"], kept: &["us-dwelling-2018 stair-gap-too-wide"] },
    AfterCase { how: "three bars a tread: (10 - 2 1/4) / 3", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "opening,2.5833 in"], short: &[], kept: &["us-dwelling-2018 stair-gap-too-wide", "uk-approved-document-k stair-gap-too-wide", "small-child-advice gap-too-wide"] },
    AfterCase { how: "two bars in 330 mm, their tops 120 and 240 mm up and 30 deep", rows: &["place,balcony", "location,outside", "drop,4.5 m", "height,1200 mm", "foothold,120 mm high 30 mm deep", "foothold,240 mm high 30 mm deep"], short: &["canada-dwelling foothold-in-reach", "small-child-advice foothold-in-reach"], kept: &[] },
    AfterCase { how: "a second bottom rail whose top is 108 mm up", rows: &["place,balcony", "location,outside", "drop,4.5 m", "height,1200 mm", "foothold,108 mm high 38 mm deep"], short: &[], kept: &["canada-dwelling foothold-in-reach", "small-child-advice foothold-in-reach"] },
    AfterCase { how: "the old bottom rail above it, 216 mm up", rows: &["place,balcony", "location,outside", "drop,4.5 m", "height,1200 mm", "foothold,216 mm high 38 mm deep"], short: &["canada-dwelling foothold-in-reach", "small-child-advice foothold-in-reach"], kept: &[] },
    AfterCase { how: "the upper of two bars in 10 in, 195 mm up, over 3 m: no rule of Canada asks", rows: &["place,balcony", "location,outside", "drop,3.0 m", "height,1200 mm", "foothold,195 mm high 38 mm deep"], short: &["small-child-advice foothold-in-reach"], kept: &[] },
    AfterCase { how: "a ledge 20 mm deep with a fillet of 45 degrees on it", rows: &["place,balcony", "location,outside", "drop,5 m", "height,1200 mm", "foothold,400 mm high 20 mm deep sloped 45 deg"], short: &[], kept: &["canada-dwelling foothold-in-reach", "small-child-advice foothold-in-reach"] },
    AfterCase { how: "a board of 9 1/4 under a rail 10 up", rows: &["place,deck", "drop,4 ft", "height,45 in", "bottom gap,1/2 in"], short: &[], kept: &["us-dwelling-2018 gap-too-wide", "canada-dwelling gap-too-wide", "small-child-advice gap-too-wide"] },
    AfterCase { how: "a sheet that begins 5 in up", rows: &["place,deck", "drop,4 ft", "height,45 in", "bottom gap,5 in"], short: &["us-dwelling-2018 gap-too-wide", "canada-dwelling gap-too-wide", "small-child-advice gap-too-wide"], kept: &[] },
    AfterCase { how: "a strip of 3/4 where the floor dips to 4 1/4", rows: &["place,deck", "drop,4 ft", "height,45 in", "bottom gap,3 1/2 in"], short: &["small-child-advice gap-too-wide"], kept: &["us-dwelling-2018 gap-too-wide", "canada-dwelling gap-too-wide"] },
    AfterCase { how: "a strip of 1 there", rows: &["place,deck", "drop,4 ft", "height,45 in", "bottom gap,3 1/4 in"], short: &[], kept: &["us-dwelling-2018 gap-too-wide", "canada-dwelling gap-too-wide", "small-child-advice gap-too-wide"] },
    AfterCase { how: "a bench 18 in high left 5 in away", rows: &["place,deck", "drop,4 ft", "height,36 in", "thing to climb,18 in high 5 in away"], short: &["small-child-advice thing-to-climb-near"], kept: &["us-dwelling-2018 rail-too-low"] },
    AfterCase { how: "that moved away", rows: &["place,deck", "drop,4 ft", "height,36 in", "thing to climb,none"], short: &[], kept: &["small-child-advice thing-to-climb-near"] },
    AfterCase { how: "a pressed gate at the top of a stair", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "top of stairs gate,pressed"], short: &["small-child-advice no-gate-at-stairs"], kept: &[] },
    AfterCase { how: "a screwed one 2 in above the floor", rows: &["place,stair", "risers,13", "drop,9 ft", "height,45 in", "top of stairs gate,screwed", "gate bottom gap,2 in"], short: &[], kept: &["small-child-advice no-gate-at-stairs", "small-child-advice gate-too-far-above-floor"] },
    AfterCase { how: "a window's stop at 3 3/4", rows: &["place,window", "drop,10 ft", "opening,3 3/4 in"], short: &["small-child-advice gap-too-wide"], kept: &["small-child-advice window-opens-too-far"] },
];

#[test]
fn a_guard_after_a_change_keeps_the_rules_that_it_keeps_and_no_others() {
    let mut survey =
        "unit,guard,item,reading\n,,use,dwelling\n,,shared,no\n,,children,9 months\n".to_owned();
    for (number, case) in AFTER.iter().enumerate() {
        for row in case.rows {
            survey.push_str(&format!(",case {number},{row}\n"));
        }
        if !case.rows.iter().any(|row| row.starts_with("location")) {
            survey.push_str(&format!(",case {number},location,outside\n"));
        }
    }
    let found = verdicts(&survey, &[US, BUILDINGS, CANADA, UK, AUSTRIA]);
    let mut wrong = Vec::new();
    for (number, case) in AFTER.iter().enumerate() {
        let names = &found[&format!("case {number}")];
        let mut told = |rules: &[&str], asked: &str| {
            for rule in rules {
                let verdict = names.get(*rule).map_or("not there", String::as_str);
                if verdict != asked {
                    wrong.push(format!("{}: {rule}: {verdict}", case.how));
                }
            }
        };
        told(case.short, "falls short");
        told(case.kept, "meets");
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
