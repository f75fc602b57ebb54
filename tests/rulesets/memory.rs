//! Which rules of the shipped rulesets are from memory, and why.

use guardrule::rules::Status;
use guardrule::rules::embedded_ids;

use super::embedded::shipped;

/// Rules from memory, and why: no text that says it was found. The editions of the
/// United States before 2015 are carried over from later ones and stand apart.
pub(super) const FROM_MEMORY: &[(&str, &str, &str)] = &[
    (
        "us-pool-barriers",
        "gap-beside-level-bars-too-wide",
        "the reprint that was read ends before the figure",
    ),
    (
        "new-york-city",
        "no-guard",
        "BC 1015.2 was found in no text",
    ),
    (
        "us-stair-gates",
        "gate-too-low",
        "ASTM F1004 was found in no text",
    ),
    (
        "us-stair-gates",
        "gate-gap-too-wide",
        "ASTM F1004 was found in no text",
    ),
    (
        "us-playground-handbook-2010",
        "torso-fits-and-head-does-not",
        "the digit was lost in the reprint that was read",
    ),
    (
        "us-playground-handbook-2010",
        "gap-too-wide-for-toddler",
        "the digit was lost in the reprint that was read",
    ),
    (
        "us-playground-handbook-2010",
        "barrier-too-low-for-toddler",
        "the digit was lost in the reprint that was read",
    ),
    (
        "us-playground-handbook-2010",
        "no-barrier-for-toddler",
        "the digit was lost in the reprint that was read",
    ),
    (
        "us-playground-handbook-2010",
        "torso-of-toddler-fits-and-head-does-not",
        "the digit was lost in the reprint that was read",
    ),
    (
        "northern-ireland-2012",
        "rail-too-low",
        "section 5 of Technical Booklet H was found in no text",
    ),
    (
        "northern-ireland-2012",
        "outside-rail-too-low",
        "section 5 of Technical Booklet H was found in no text",
    ),
    (
        "northern-ireland-2012",
        "gap-too-wide",
        "section 5 of Technical Booklet H was found in no text",
    ),
    (
        "ireland-tgd-k-2014",
        "rail-too-low",
        "diagram 6 was found in no text",
    ),
    (
        "ireland-tgd-k-2014",
        "outside-rail-too-low",
        "diagram 6 was found in no text",
    ),
    (
        "scotland-2019",
        "stair-rail-too-low",
        "the table of 4.4.2 was found in no text",
    ),
    (
        "scotland-2019",
        "rail-too-low",
        "the table of 4.4.2 was found in no text",
    ),
    (
        "scotland-2019",
        "outside-rail-too-low",
        "the table of 4.4.2 was found in no text",
    ),
    (
        "scotland-2019",
        "window-guard-too-low",
        "the table of 4.4.2 was found in no text",
    ),
    (
        "australia-ncc-2022",
        "handrail-height",
        "the clause on handrail heights was not in what was read",
    ),
    (
        "germany-hesse-2018",
        "rail-too-low",
        "section 41(4) is cut off in the copy",
    ),
    (
        "france-1988",
        "low-level-gap-too-wide",
        "the standard was found in no text",
    ),
    (
        "france-2024",
        "no-guard",
        "the standard was found in no text",
    ),
    (
        "france-2024",
        "stair-rail-too-low",
        "the standard was found in no text",
    ),
    (
        "switzerland-sia-358",
        "high-rail-too-low",
        "the standard was found in no text",
    ),
    (
        "netherlands-2012",
        "stair-rail-too-low",
        "the decree of 2012 was found in no text",
    ),
    (
        "netherlands-2012",
        "gap-too-wide",
        "the decree of 2012 was found in no text",
    ),
    (
        "netherlands-2012",
        "foothold-in-reach",
        "the decree of 2012 was found in no text",
    ),
    (
        "norway-tek10",
        "stair-rail-too-low",
        "of the regulation of 2010 only 12-11 was found",
    ),
    (
        "norway-tek10",
        "rail-too-low",
        "of the regulation of 2010 only 12-11 was found",
    ),
    (
        "norway-tek10",
        "high-rail-too-low",
        "of the regulation of 2010 only 12-11 was found",
    ),
    (
        "norway-tek10",
        "gap-too-wide",
        "of the regulation of 2010 only 12-11 was found",
    ),
    (
        "norway-tek10",
        "edge-gap-too-wide",
        "of the regulation of 2010 only 12-11 was found",
    ),
    (
        "norway-tek10",
        "climbable-infill",
        "of the regulation of 2010 only 12-11 was found",
    ),
    (
        "norway-tek10",
        "foothold-to-climb",
        "of the regulation of 2010 only 12-11 was found",
    ),
    (
        "europe-stair-gates-en-1930",
        "gate-too-low",
        "the standard was found in no text",
    ),
    (
        "europe-stair-gates-en-1930",
        "gate-gap",
        "the standard was found in no text",
    ),
];

/// Editions of the United States from before 2015 of which little was read, and why their
/// rules from memory are that.
pub(super) const BEFORE_2015: &[(&str, &str)] = &[
    (
        "us-dwelling-2000",
        "of this edition R316.2 and what differs were read or quoted; the rest is carried back from 2018",
    ),
    (
        "us-dwelling-2003",
        "of this edition only R311.5.6 on handrails was found, quoted; the rest is carried over from 2000",
    ),
    (
        "us-dwelling-2006",
        "its clause on open risers was found in no text, and its heights in none that names the edition",
    ),
    (
        "us-dwelling-2009",
        "its clause on open risers was found in no text",
    ),
    (
        "us-dwelling-2012",
        "all that stands here of it is quoted, or inferred and said so",
    ),
    (
        "us-buildings-2000",
        "of this edition only 1003.2.12.2 on openings was found",
    ),
];

/// Whether a ruleset is one of those editions.
fn before_2015(id: &str) -> bool {
    BEFORE_2015.iter().any(|(old, _)| *old == id)
}

/// Nothing else is from memory, and outside England and the editions of the United States
/// and Canada from 2015 on at most twelve rules in a hundred are.
#[test]
fn what_is_from_memory_is_named_with_why() {
    let mut found = Vec::new();
    let (mut elsewhere, mut of_memory) = (0, 0);
    for id in embedded_ids() {
        let ruleset = shipped(id);
        let country = ruleset.country.as_deref();
        let old = before_2015(id);
        let here = old || !matches!(country, Some("United States" | "Canada" | "England"));
        for rule in &ruleset.rules {
            let memory = rule.status == Status::Memory;
            if memory && !old {
                found.push((id, rule.id.clone()));
            }
            elsewhere += usize::from(here);
            of_memory += usize::from(here && memory);
        }
    }
    assert!(BEFORE_2015.iter().all(|(_, why)| why.len() > 20));
    let named: Vec<(&str, String)> = FROM_MEMORY
        .iter()
        .map(|(id, rule, why)| {
            assert!(why.len() > 20, "{id}: {rule}: {why}");
            (*id, (*rule).to_owned())
        })
        .collect();
    assert_eq!(found, named);
    assert!(
        of_memory * 100 <= elsewhere * 12,
        "{of_memory} of {elsewhere}"
    );
}

/// In the United States from 2015 on, in Canada and in England a rule is from memory only
/// where no text, or none that still shows the figure, was found.
#[test]
fn where_most_readers_live_memory_stands_only_for_what_was_found_in_no_text() {
    let of = |id: &str| shipped(id).country;
    let here = |id: &&(&str, &str, &str)| {
        let country = of(id.0);
        let country = country.as_deref();
        matches!(country, Some("United States" | "Canada" | "England"))
    };
    let why = |reason: &str| {
        let reasons = ["was found in no text", "reprint that was read"];
        reasons.iter().any(|known| reason.contains(known))
    };
    let left: Vec<_> = FROM_MEMORY.iter().filter(here).collect();
    assert_eq!(left.len(), 9, "{left:?}");
    for (id, rule, reason) in left {
        assert!(why(reason), "{id}: {rule}: {reason}");
        assert_eq!(of(id).as_deref(), Some("United States"), "{id}");
    }
}
