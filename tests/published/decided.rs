//! Guards that a board or a court ruled on: what was measured, what was decided, and
//! what the ruleset of the time (or the nearest that is here) says. Boards decide one case
//! and bind nobody else. Where the text has no number the answer is left to a person; a
//! guard that was refused never meets.
//!
//! BC is the Building Code Appeal Board of British Columbia, number and date of its
//! decision.

use guardrule::items::Item;
use guardrule::rules::Check;
use guardrule::rules::Subject;

use crate::harness::check;
use crate::harness::only_guard;

use super::judged_alone;
use super::readings;

/// Refused: case | what was decided | ruleset | rule | readings | verdict of the rule.
const REFUSED: &str = "
BC 23, told in 960A | a mesh of 2 in squares at a balcony is climbable | british-columbia-1992 | climbable-infill | place=balcony; use=dwelling; infill=mesh; opening=51 mm; height=1070 mm | not settled
BC 960A, 2 August 1988 | with the level members inside it would have been refused | british-columbia-1992 | level-members-inside | place=balcony; use=dwelling; infill=balusters; opening=38 mm; level members on=inside | not settled
BC 1354, 20 May 1994 | the lower rail of a guard with uprights 40 mm apart can be a toe hold | british-columbia-1992 | foothold-in-reach | place=balcony; use=dwelling; opening=40 mm; foothold=150 mm high; height=1070 mm | not settled
BC 1367, 16 November 1994 | shaped pickets, 55 mm between them and 4 in at the waist, help a climber | british-columbia-1992 | climbable-infill | place=deck; use=dwelling; infill=other; opening=4 in | not settled
BC 1408, 15 November 1995 | a bench built in, seat 457 mm high and 400 mm deep, helps a climber | british-columbia-1992 | foothold-in-reach | place=deck; use=dwelling; shared=no; drop=1.7 m; height=900 mm; foothold=457 mm high 400 mm deep | not settled
BC 1510, 5 July 2000 | a sloped step of about 18 mm at 600 mm helps a climber | british-columbia-1992 | foothold-in-reach | place=balcony; use=dwelling; height=1070 mm; foothold=600 mm high 18 mm deep | not settled
BC 1510, by the text from 2006 on | the same step, where 15 mm would be deemed safe | british-columbia-2012 | foothold-in-reach | place=balcony; use=dwelling; height=1070 mm; foothold=600 mm high 18 mm deep | falls short
BC 1514 | glass on a ledge 19 mm deep at 480 mm is climbable | british-columbia-2012 | foothold-in-reach | place=balcony; use=dwelling; foothold=480 mm high 19 mm deep | falls short
BC 1595, 21 January 2004 | members at 380 mm and 710 mm above the treads help a climber | british-columbia-1992 | foothold-in-reach | place=stair; use=dwelling; foothold=380 mm high; foothold=710 mm high | not settled
BC 1679, 18 November 2010 | level boards with gaps of less than 20 mm do not conform | british-columbia-2012 | climbable-infill | place=deck; use=dwelling; infill=horizontal bars; opening=19 mm | not settled
BC 1685, 16 December 2010 | a welded mesh of 38 mm does not conform | british-columbia-2012 | climbable-infill | place=deck; use=dwelling; infill=mesh; opening=38 mm | not settled
BC 1065, 10 May 1989 | a planter 305 mm high is no guard, but a hazard | british-columbia-1992 | outside-rail-too-low | place=deck; use=dwelling; shared=no; drop=3 m; height=305 mm | falls short
BC 1217, 30 August 1990 | a flight made 1100 mm wide by choice needs two handrails | british-columbia-1992 | handrail-on-one-side | place=stair; use=dwelling; flight width=1100 mm; handrail=separate; handrail sides=one side | falls short
New Zealand, determination 2024/070 | a hedge is no barrier above a wall of 1.1 m | new-zealand-f4 | no-guard | place=terrace; use=dwelling; shared=no; drop=1100 mm; guard=none | falls short
Doherty v The Owners - Strata Plan 36613 [2021] NSWCATAP 285 | an old balustrade below 1 m must meet the present code | australia-ncc-2022 | rail-too-low | place=balcony; use=dwelling; drop=6 m; height=950 mm; opening=130 mm | falls short
the same, its gaps | gaps above 125 mm | australia-ncc-2022 | gap-too-wide | place=balcony; use=dwelling; drop=6 m; height=950 mm; opening=130 mm; bottom gap=none | falls short
London, Ontario, order of 5 October 2021 | a child of 22 months fell through 140 mm between wall and guard | ontario-2012 | gap-too-wide | place=balcony; use=dwelling; shared=no; drop=50 m; height=1070 mm; opening=140 mm; bottom gap=none | falls short
Higher administrative court of North Rhine-Westphalia, 10 B 1465/01, 30 November 2001 | the parapet counts from the plinth below it | germany-north-rhine-westphalia-2000 | parapet-too-low-above-step | place=window; drop=5 m; height=850 mm; fixed seat=yes; height above seat=700 mm | not settled
France, Court of cassation, 14 February 2012 | a let home whose balcony has no guard that works is not decent | france-2024 | rail-too-low | place=balcony; use=dwelling; drop=6 m; height=990 mm; guard thickness=60 mm; moves when pushed=a lot | falls short
France, Court of cassation, 2nd civil chamber, 7 April 2022, no. 20-19.746 | an opening that begins at 42 cm on the fifth floor, without a bar | france-2024 | window-bar-too-low | place=window; use=dwelling; sill top height=420 mm; height=420 mm | not settled
Court of appeal of Aix-en-Provence, 7 May 2002, no. 98/19173 | a sill of 0.85 m in an old let house | france-2024 | window-bar-too-low | place=window; use=dwelling; sill top height=850 mm; height=850 mm | not settled
Bavarian higher administrative court, ZMR 2009, 566, by today's text | low old stair rails, which the order of the time might leave | germany-bavaria | rail-too-low | place=stair; use=dwelling; drop=3 m; height=800 mm | not settled
";

/// Accepted, or left alone: the rule that was at issue is silent, or a person decides.
const ACCEPTED: &str = "
BC 960, told in 960A, 2 August 1988 | level members outside alone, uprights inside 38 mm apart | british-columbia-1992 | level-members-inside | place=balcony; use=dwelling; infill=balusters; opening=38 mm; level members on=outside | meets
BC 1408, 15 November 1995 | its height of 900 mm at a deck less than 1.8 m up was right | british-columbia-1992 | deck-rail-too-low | place=deck; use=dwelling; shared=no; drop=1.7 m; height=900 mm | meets
BC 1217 by the code of 2020 | inside a dwelling one handrail is enough at any width | canada-dwelling | handrail-on-one-side | place=stair; location=inside; shared=no; flight width=1200 mm; handrail=separate; handrail sides=one side | does not apply
";

/// Decided by a text or on a matter that no ruleset here holds: a person has to answer,
/// and the program says so: case | what was decided | ruleset | readings | verdict.
const LEFT_TO_A_PERSON: &str = "
BC 1401, 15 June 1995 | an upstand of 667 mm and a rail above it in an office meet, since the rule on climbing speaks of homes | british-columbia-1992 | place=landing; use=workplace; location=inside; height=1070 mm; foothold=667 mm high 475 mm deep | not settled
BC 1523, 16 November 2000 | level bars 200 mm apart at an office deck are a hazard, whoever goes there | british-columbia-1992 | place=deck; use=workplace; infill=horizontal bars; opening=200 mm; height=1070 mm | not settled
BC 1536, 23 May 2001 | eight level bars with openings of 100 mm help a climber in a school, leaning in or not | british-columbia-1992 | place=landing; use=public; infill=horizontal bars; opening=100 mm; height=1070 mm | not settled
BC 1526, 22 February 2001 | a roof that is reached for upkeep alone needs no guard | british-columbia-1992 | place=roof; use=dwelling; drop=3 m; guard=none | not settled
New Zealand, determination 2001/2, told in issue 36 of the authority's letter | a level canopy of taut wires in place of an upright barrier complies | new-zealand-f4 | place=roof; use=dwelling; shared=no; drop=3 m; infill=cables; height=1 m; opening=90 mm; bottom gap=none; foothold=none | not settled
BC 1356, 20 May 1994 | an outside exit stair of a car dealer, more than 1100 mm wide, with one rail in its middle needs one at each side | british-columbia-1992 | place=stair; use=public; flight width=1200 mm; handrail=separate; handrail sides=one side | not settled
BC 1288, 19 August 1992 | a mall's ramp 30 ft wide needs no rails between those at its sides | british-columbia-1992 | place=ramp; use=public; handrail=separate; handrail sides=both sides | not settled
BC 1445, 20 August 1997 | one unbroken handrail runs on at the lowest and the highest floor alone | british-columbia-1992 | place=stair; use=public; flight width=1000 mm; handrail=separate; handrail sides=one side; handrail extension=none | not settled
New Zealand, determination 2023/039, 1 December 2023 | two handrails of an outside stair are graspable | new-zealand-f4 | place=stair; use=dwelling; shared=no; drop=2 m; handrail=separate; handrail sides=both sides; handrail shape=other | not measured
";

/// Flats and houses of England that officials rated by likelihood and not by limits, with
/// what they marked as worst (rating system for homes, worked examples of 2004 and 2006):
/// example | marked | ruleset | rule | readings | verdict.
const RATED: &str = "
landing of the 1970s, level gaps over 200 mm | the gaps | uk-approved-document-k | gap-too-wide | place=landing; use=dwelling; shared=no; drop=2 m; height=900 mm; opening=201 mm; bottom gap=none | falls short
the same landing | its height of 900 mm was not marked | uk-approved-document-k | rail-too-low | place=landing; use=dwelling; shared=no; drop=2 m; height=900 mm; opening=201 mm | meets
sash window of before 1900, sill about 400 mm | the sill | uk-approved-document-k | window-guard-too-low | place=window; use=dwelling; shared=no; drop=2.8 m; height=400 mm | falls short
sash window of about 1890, sill 840 mm over a radiator | only slightly the sill | uk-approved-document-k | window-guard-too-low | place=window; use=dwelling; shared=no; drop=6.4 m; height=840 mm | meets
balcony of 1949, guard 950 mm | height | uk-approved-document-k | outside-rail-too-low | place=balcony; use=dwelling; shared=no; drop=9 m; height=950 mm; opening=150 mm | falls short
the same balcony, gap 150 mm | opening | uk-approved-document-k | gap-too-wide | place=balcony; use=dwelling; shared=no; drop=9 m; height=950 mm; opening=150 mm; bottom gap=none | falls short
landing of 1996, rail at 850 mm and nothing below | a child walks under the rail | uk-approved-document-k | gap-too-wide | place=landing; use=dwelling; shared=no; drop=3 m; height=1.2 m; opening=850 mm; bottom gap=850 mm | falls short
";

fn judge_cases(table: &str) -> usize {
    let mut faults = Vec::new();
    let mut count = 0;
    for line in table.trim().lines() {
        let cells: Vec<&str> = line.split(" | ").collect();
        let [case, decided, ruleset, rule, given, expect] = cells[..] else {
            panic!("a row of another form: {line}");
        };
        let found = judged_alone(case, ruleset, rule, &readings(given));
        if found != expect {
            faults.push(format!("{case} ({decided}): {found}, expected {expect}"));
        }
        count += 1;
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    count
}

/// The verdict of the guard as a whole.
fn whole(ruleset: &str, given: &str) -> String {
    let mut survey = String::from("unit,guard,item,reading\n");
    for (item, reading) in readings(given) {
        survey.push_str(&format!("a,g,{item},{reading}\n"));
    }
    let options = [
        "--rules",
        ruleset,
        "--no-guidance",
        "--decision",
        "simple",
        "--memory",
        "decides",
    ];
    let report = check(&survey, &options).json();
    let verdict = only_guard(&report)["verdict"].as_str();
    verdict.expect("a word").to_owned()
}

#[test]
fn guards_that_were_refused_come_out_refused_or_are_left_to_a_person() {
    assert_eq!(judge_cases(REFUSED), 22);
}

#[test]
fn a_guard_that_was_refused_never_meets() {
    for line in REFUSED.trim().lines() {
        let cells: Vec<&str> = line.split(" | ").collect();
        let found = whole(cells[2], cells[4]);
        assert_ne!(found, "meets", "{line}");
        assert_ne!(found, "does not apply", "{line}");
    }
}

#[test]
fn what_was_accepted_is_not_refused() {
    assert_eq!(judge_cases(ACCEPTED), 3);
}

#[test]
fn what_no_ruleset_here_decides_is_left_to_a_person() {
    let mut count = 0;
    for line in LEFT_TO_A_PERSON.trim().lines() {
        let cells: Vec<&str> = line.split(" | ").collect();
        let [case, decided, ruleset, given, expect] = cells[..] else {
            panic!("a row of another form: {line}");
        };
        assert_eq!(whole(ruleset, given), expect, "{case} ({decided})");
        count += 1;
    }
    assert_eq!(count, 9);
}

/// Court of cassation, 3rd civil chamber, 22 June 2022, no. 21-10.512: in a let flat of
/// before 1955 with a sill below 90 cm and no guard the landlord was not in breach of the
/// decree on decent homes, which makes him keep guards and add none. Of its time no ruleset
/// here speaks, and today's does not let it meet.
#[test]
fn an_old_window_without_a_bar_is_judged_by_today_and_by_nothing_of_its_time() {
    let survey = "unit,guard,item,reading\na,g,place,window\na,g,use,dwelling\n\
                  a,g,built,1950\na,g,sill top height,850 mm\na,g,height,850 mm\na,g,drop,6 m\n";
    let args = ["--rules", "france-2024", "--no-guidance", "--when-built"];
    let report = check(survey, &args).json();
    let guard = only_guard(&report);
    assert_eq!(guard["verdict"], "not settled");
    assert_eq!(guard["when_built"]["verdict"], "not settled");
}

#[test]
fn guards_that_officials_marked_fall_short_of_the_limit_they_marked() {
    assert_eq!(judge_cases(RATED), 7);
}

/// Every decision that was read to its end, by the board or court and its number: each
/// stands in one of the tables or tests of this file.
const DECISIONS: &[&str] = &[
    "BC 23,",
    "BC 960A,",
    "BC 960,",
    "BC 1354,",
    "BC 1367,",
    "BC 1401,",
    "BC 1408,",
    "BC 1510,",
    "BC 1514 ",
    "BC 1523,",
    "BC 1536,",
    "BC 1595,",
    "BC 1679,",
    "BC 1685,",
    "BC 1065,",
    "BC 1526,",
    "BC 1217,",
    "BC 1356,",
    "BC 1288,",
    "BC 1445,",
    "determination 2001/2,",
    "determination 2024/070 ",
    "determination 2023/039,",
    "NSWCATAP 285",
    "order of 5 October 2021",
    "10 B 1465/01",
    "no. 21-10.512",
    "no. 20-19.746",
    "14 February 2012",
    "no. 98/19173",
    "court of appeal of Cologne",
    "ZMR 2009, 566",
];

#[test]
fn every_decision_that_was_read_to_its_end_is_a_case_here() {
    let here = include_str!("decided.rs");
    for decision in DECISIONS {
        let listed = format!("    \"{decision}\",");
        assert!(here.contains(&listed), "{decision}");
        assert!(here.matches(decision).count() > 1, "{decision} has no case");
    }
    assert_eq!(DECISIONS.len(), 32);
}

/// A house of the 1930s whose window catch holds below 100 mm but comes undone easily, and
/// the landing of 1996 whose rail at 850 mm has nothing below it: neither meets, whatever
/// else is right.
#[test]
fn a_stop_that_fails_and_a_rail_with_nothing_below_it_never_meet() {
    let catch = "place=window; use=dwelling; shared=no; drop=4.2 m; height=900 mm; \
                 sill height=900 mm; sill above ground=4.2 m; opening=90 mm; bottom gap=none";
    for ruleset in ["uk-approved-document-k", "us-windows-2021"] {
        let comes_undone = format!("{catch}; window stop=comes undone");
        assert_eq!(whole(ruleset, &comes_undone), "falls short", "{ruleset}");
    }
    let landing = RATED.lines().last().expect("the landing");
    let given = landing.split(" | ").nth(4).expect("its readings");
    assert_eq!(whole("uk-approved-document-k", given), "falls short");
}

/// Clauses on climbing without a number: two ledges that a child can stand on are left to a
/// person, whatever fills the guard.
#[test]
fn a_guard_with_ledges_to_stand_on_meets_no_text_that_asks_about_climbing() {
    let given = "place=balcony; use=dwelling; shared=no; drop=3 m; height=1.15 m; \
                 infill=balusters; opening=80 mm; bottom gap=80 mm; edge gap=none";
    for ruleset in ["uk-approved-document-k", "new-zealand-f4", "norway-tek17"] {
        let ledges =
            format!("{given}; foothold=300 mm high 60 mm deep; foothold=600 mm high 60 mm deep");
        assert_eq!(whole(ruleset, &ledges), "not settled", "{ruleset}");
        let smooth = format!("{given}; foothold=none");
        assert_eq!(whole(ruleset, &smooth), "meets", "{ruleset}");
    }
}

/// The old balustrade of Doherty v The Owners - Strata Plan 36613 met the rules of its time,
/// of which no ruleset here speaks: today's say what they say, those of 1980 nothing.
#[test]
fn an_old_balustrade_is_judged_by_today_and_by_nothing_of_its_time() {
    let survey = "unit,guard,item,reading\na,g,place,balcony\na,g,use,dwelling\n\
                  a,g,built,1980\na,g,drop,6 m\na,g,height,950 mm\na,g,opening,130 mm\n\
                  a,g,bottom gap,none\n";
    let args = [
        "--rules",
        "australia-ncc-2022",
        "--no-guidance",
        "--when-built",
    ];
    let report = check(survey, &args).json();
    let guard = only_guard(&report);
    assert_eq!(guard["verdict"], "falls short");
    assert_eq!(guard["when_built"]["verdict"], "not settled");
}

/// A hotel's balcony rail of 56 cm on the third floor (court of appeal of Cologne, told in
/// June 2009): too low under every ruleset that limits the height of a balcony's guard.
#[test]
fn a_balcony_rail_of_56_cm_meets_no_text() {
    let given = "place=balcony; location=outside; use=dwelling; shared=no; drop=9 m; \
                 dwellings in building=2; storeys=3; built=2024; height=560 mm; opening=none; \
                 bottom gap=none; foothold=none; guard thickness=60 mm; infill=solid";
    let mut short = 0;
    for id in guardrule::rules::embedded_ids() {
        let loaded = guardrule::rules::load(id, &|_| None);
        let rules = loaded.ruleset.expect("shipped").rules;
        let of_height = |check: &Check| check.subject == Subject::Item(Item::Height);
        if !rules.iter().any(|rule| rule.checks.iter().any(of_height)) {
            continue;
        }
        let found = whole(id, given);
        assert_ne!(found, "meets", "{id}");
        short += usize::from(found == "falls short");
    }
    assert!(short > 50, "{short}");
}
