//! More worked cases: what a guard comes to after a change, rule by rule, where several
//! countries ask differently. As in `after.rs`, each number is worked out apart from the
//! code from the lengths beside it, and each limit is that of the clause its rule names.

use crate::remedy::after::verdicts;

/// How the state comes about, what is then read, and how rules come out.
type StateCase = (
    &'static str,
    &'static [&'static str],
    &'static [(&'static str, &'static str)],
);

const RULES: &[&str] = &[
    "us-dwelling-2018",
    "us-buildings-2018",
    "us-rental-upkeep",
    "us-stair-gates",
    "canada-dwelling",
    "ontario-2012",
    "uk-approved-document-k",
    "ireland-rented-2017",
    "new-york-city-windows",
    "austria-oib-4",
    "france-2024",
    "netherlands-2024",
    "sweden-bbr",
];

const SHORT: &str = "falls short";
const MEETS: &str = "meets";

const BALCONY: &[&str] = &["place,balcony", "location,outside", "drop,4.5 m"];
const STAIR: &[&str] = &["place,stair", "location,inside", "risers,13", "drop,9 ft"];
const WINDOW: &[&str] = &[
    "place,window",
    "location,inside",
    "drop,10 ft",
    "sill above ground,10 ft",
    "dwellings in building,12",
];

#[rustfmt::skip]
const STATES: &[(&[&str], StateCase)] = &[
    (BALCONY, ("12 bars of 20 mm in 1800 mm leave 120 mm: what one text allows another refuses", &["height,1200 mm", "opening,120 mm at 400 mm"], &[
        ("austria-oib-4 gap-too-wide", MEETS), ("france-2024 gap-too-wide", SHORT), ("canada-dwelling gap-too-wide", SHORT), ("us-dwelling-2018 gap-too-wide", SHORT)])),
    (BALCONY, ("15 of them: 1500 / 16 = 93.75 mm", &["height,1200 mm", "opening,93.75 mm at 400 mm"], &[
        ("austria-oib-4 gap-too-wide", MEETS), ("france-2024 gap-too-wide", MEETS), ("canada-dwelling gap-too-wide", MEETS), ("us-dwelling-2018 gap-too-wide", MEETS), ("small-child-advice gap-too-wide", SHORT)])),
    (BALCONY, ("a clear panel from 1 in above the floor to the top rail", &["height,1200 mm", "infill,panel", "opening,none", "bottom gap,1 in", "foothold,none"], &[
        ("us-dwelling-2018 gap-too-wide", MEETS), ("canada-dwelling gap-too-wide", MEETS), ("small-child-advice gap-too-wide", MEETS), ("small-child-advice gap-too-wide-for-infant", MEETS), ("small-child-advice foothold-in-reach", MEETS), ("canada-dwelling foothold-in-reach", MEETS)])),
    (BALCONY, ("a second bottom rail of 1 1/2 at 2 3/4: its top 108 mm up, 892 below a top of 1000", &["height,1000 mm", "opening,2 3/4 in", "foothold,108 mm high 38 mm deep", "height above seat,892 mm"], &[
        ("canada-dwelling foothold-in-reach", MEETS), ("small-child-advice foothold-in-reach", MEETS), ("austria-oib-4 foothold-in-reach", MEETS), ("netherlands-2024 foothold-in-reach", MEETS),
        ("sweden-bbr foothold-in-reach", SHORT), ("france-2024 foothold-moves-the-floor", "not settled")])),
    (BALCONY, ("that at 2 3/8: its top 98 mm up, below the 100 of the French standard", &["height,1000 mm", "opening,3 1/8 in", "foothold,98 mm high 38 mm deep", "height above seat,902 mm"], &[
        ("france-2024 foothold-moves-the-floor", MEETS), ("sweden-bbr foothold-in-reach", SHORT)])),
    (BALCONY, ("two bars of 1 1/2 in 10 in: the upper one 195 mm up, over 4.5 m", &["height,1200 mm", "opening,2.3333 in", "foothold,97 mm high 38 mm deep", "foothold,195 mm high 38 mm deep"], &[
        ("canada-dwelling foothold-in-reach", SHORT), ("small-child-advice foothold-in-reach", SHORT), ("austria-oib-4 foothold-in-reach", SHORT)])),
    (BALCONY, ("two bars 30 mm deep in 330 mm: (330 - 60) / 3 = 90 mm, tops 120 and 240 mm up", &["height,1200 mm", "opening,90 mm", "foothold,120 mm high 30 mm deep", "foothold,240 mm high 30 mm deep"], &[
        ("austria-oib-4 foothold-in-reach", MEETS), ("netherlands-2024 foothold-in-reach", SHORT), ("canada-dwelling foothold-in-reach", SHORT), ("canada-dwelling gap-too-wide", MEETS), ("small-child-advice gap-too-wide", SHORT)])),
    (BALCONY, ("a closed board 330 mm high in their place", &["height,1200 mm", "opening,none", "bottom gap,none", "foothold,none"], &[
        ("austria-oib-4 foothold-in-reach", MEETS), ("netherlands-2024 foothold-in-reach", MEETS), ("canada-dwelling foothold-in-reach", MEETS), ("small-child-advice foothold-in-reach", MEETS), ("small-child-advice gap-too-wide-for-infant", MEETS)])),
    (BALCONY, ("a fillet of 45 degrees: one text has no relief for a slope, and leaves room to its official", &["height,1200 mm", "foothold,400 mm high 20 mm deep sloped 45 deg"], &[
        ("canada-dwelling foothold-in-reach", MEETS), ("small-child-advice foothold-in-reach", MEETS), ("ontario-2012 foothold-in-reach", "not settled")])),
    (STAIR, ("two balusters of 3/4 a tread, one more between each pair: (4 1/4 - 3/4) / 2", &["height,45 in", "opening,1 3/4 in"], &[
        ("us-dwelling-2018 stair-gap-too-wide", MEETS), ("uk-approved-document-k stair-gap-too-wide", MEETS), ("small-child-advice gap-too-wide", MEETS), ("small-child-advice gap-too-wide-for-infant", MEETS)])),
    (STAIR, ("full risers between treads 6 1/4 in apart", &["height,45 in", "riser opening,none"], &[
        ("us-dwelling-2018 open-riser-too-wide", MEETS), ("uk-approved-document-k open-riser-too-wide", MEETS)])),
    (STAIR, ("a handrail of 39 1/2 in, which upkeep codes never asked to lower", &["height,45 in", "handrail,separate", "handrail height,39 1/2 in"], &[
        ("us-dwelling-2018 handrail-height", SHORT), ("us-rental-upkeep handrail-height", MEETS)])),
    (STAIR, ("that at 36 in, inside four ranges", &["height,45 in", "handrail,separate", "handrail height,36 in"], &[
        ("us-dwelling-2018 handrail-height", MEETS), ("us-rental-upkeep handrail-height", MEETS), ("canada-dwelling handrail-height", MEETS), ("uk-approved-document-k handrail-height", MEETS)])),
    (STAIR, ("the old top of 34 3/4 kept as a handrail below one of 42 3/4, 883 mm up: a step for a child", &["height,42 3/4 in", "handrail,separate", "handrail height,34 3/4 in", "opening,2 1/2 in", "foothold,883 mm high 38 mm deep"], &[
        ("us-dwelling-2018 handrail-height", MEETS), ("us-dwelling-2018 stair-gap-too-wide", MEETS), ("small-child-advice foothold-in-reach", SHORT), ("small-child-advice gap-too-wide-for-infant", SHORT)])),
    (STAIR, ("a cap of 1 1/4 on it, its top at 36 = 914 mm, and one rail of 1 1/2 in the 5 1/4 left to 41 1/4: twice 1 7/8", &["height,42 3/4 in", "handrail,separate", "handrail height,36 in", "opening,1 7/8 in", "foothold,914 mm high 38 mm deep"], &[
        ("us-dwelling-2018 handrail-height", MEETS), ("us-dwelling-2018 stair-gap-too-wide", MEETS), ("small-child-advice foothold-in-reach", MEETS), ("small-child-advice gap-too-wide", MEETS), ("small-child-advice gap-too-wide-for-infant", MEETS)])),
    (STAIR, ("a screwed gate 24 in high, 2 in beside and below it", &["height,45 in", "top of stairs gate,screwed", "gate height,24 in", "gate gap,2 in", "gate bottom gap,2 in"], &[
        ("small-child-advice no-gate-at-stairs", MEETS), ("us-stair-gates gate-held-by-pressure", MEETS), ("us-stair-gates gate-too-low", MEETS), ("us-stair-gates gate-gap-too-wide", MEETS), ("us-stair-gates gate-too-far-above-floor", MEETS)])),
    (WINDOW, ("a window's stop at 3 3/4", &["opening,3 3/4 in"], &[
        ("ireland-rented-2017 window-can-be-fallen-from", MEETS), ("new-york-city-windows window-can-be-fallen-from", MEETS), ("small-child-advice gap-too-wide", SHORT)])),
    (WINDOW, ("8 upright bars of 3/4 in 36 in: (36 - 6) / 9", &["opening,3.3333 in"], &[
        ("ireland-rented-2017 window-can-be-fallen-from", MEETS), ("new-york-city-windows window-can-be-fallen-from", MEETS), ("small-child-advice gap-too-wide", MEETS), ("small-child-advice gap-too-wide-for-infant", SHORT)])),
    (&["place,landing", "location,inside", "drop,9 ft"], ("two newels 5 in apart, read as the gap at the end", &["height,45 in", "opening,3 in", "end gap,5 in"], &[
        ("us-dwelling-2018 gap-too-wide", SHORT), ("small-child-advice gap-too-wide", SHORT)])),
    (&["place,landing", "location,inside", "drop,9 ft"], ("an upright of 1 1/2 in the middle: twice 1 3/4", &["height,45 in", "opening,3 in", "end gap,1 3/4 in"], &[
        ("us-dwelling-2018 gap-too-wide", MEETS), ("small-child-advice gap-too-wide", MEETS)])),
];

#[test]
fn what_one_text_allows_another_refuses() {
    let mut survey =
        "unit,guard,item,reading\n,,use,dwelling\n,,shared,no\n,,children,9 months\n".to_owned();
    for (number, (place, (_, rows, _))) in STATES.iter().enumerate() {
        for row in place.iter().chain(*rows) {
            survey.push_str(&format!(",state {number},{row}\n"));
        }
    }
    let found = verdicts(&survey, RULES);
    let mut wrong = Vec::new();
    for (number, (_, (how, _, rules))) in STATES.iter().enumerate() {
        let of_guard = &found[&format!("state {number}")];
        for (rule, asked) in *rules {
            let verdict = of_guard.get(*rule).map_or("not there", String::as_str);
            if verdict != *asked {
                wrong.push(format!("{how}: {rule}: {verdict}, not {asked}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
