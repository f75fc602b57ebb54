//! Beams and sharing against frame elements (PyNiteFEA 3.2.0, `oracle.py`,
//! frozen in `frames.txt`).

use guardrule::quantities::Force;
use guardrule::quantities::inches;
use guardrule::quantities::pounds;
use guardrule::quantities::pounds_per_inch;
use guardrule::quantities::psi;
use guardrule::statics::beam::Case;
use guardrule::statics::beam::rigidity;
use guardrule::statics::section::Profile;

use super::agrees;
use super::customary;

const FRAMES: &str = include_str!("frames.txt");

fn on_edge() -> guardrule::quantities::Rigidity {
    let profile = Profile::Rectangle {
        across: inches(1.5),
        along: inches(3.5),
    };
    rigidity(
        psi(1.4e6),
        profile.section().expect("in the tables").second_moment,
    )
    .value
}

fn near(what: &str, ours: f64, frame: f64, tolerance: f64) {
    super::outside::reproduced(super::outside::Outside::Worked, what, frame);
    // A moment of zero comes out of the elements as some 1e-12 lb·in.
    let allowed = (tolerance * frame.abs()).max(1e-11);
    assert!(
        (ours - frame).abs() <= allowed,
        "{what}: {ours}, frame {frame}"
    );
}

fn case(name: &str, load: f64, over: f64) -> Option<Case> {
    let force: Force = pounds(load);
    Some(match name {
        "cantilever" => Case::Cantilever(force),
        "one-span" => Case::OneSpan(force),
        "one-span-built-in" => Case::OneSpanBuiltIn(force),
        "one-span-uniform" => Case::OneSpanUniform(pounds_per_inch(load)),
        "partly-uniform" => Case::PartlyUniform {
            load: force,
            over: inches(over),
        },
        "three-spans-end" => Case::ThreeSpansEnd(force),
        "three-spans-middle" => Case::ThreeSpansMiddle(force),
        "three-spans-worst" => Case::ThreeSpansWorst(force),
        "two-spans" => Case::TwoSpans(force),
        "two-spans-worst" => Case::TwoSpansWorst(force),
        _ => return None,
    })
}

#[test]
pub(super) fn rails_agree_with_frame_elements() {
    let mut compared = 0;
    for line in FRAMES.lines() {
        let cells: Vec<&str> = line.split(' ').collect();
        let name = cells[0];
        let number = |at: usize| cells[at].parse::<f64>().unwrap();
        let span = inches(number(2));
        let Some(case) = case(name, number(1), number(3)) else {
            continue;
        };
        // The worst places are given to six digits, and found by steps there.
        let tolerance = if name.ends_with("worst") { 3e-6 } else { 1e-9 };
        let moments = case.moments(span).value;
        near(name, customary(moments.sagging), number(4), tolerance);
        near(name, customary(moments.hogging), number(5), tolerance);
        compared += 2;
        let with_closed_form = case.deflection(span, on_edge());
        if let (Ok(moved), Ok(frame)) = (with_closed_form, cells[6].parse::<f64>()) {
            near(name, customary(moved.value), frame, 1e-9);
            compared += 1;
        }
    }
    assert_eq!(
        compared, 27,
        "numbers of the frame library that were compared"
    );
}

/// Closed forms: moments of a 2x4 cap over 72 in under 200 lb.
#[test]
pub(super) fn a_cap_over_one_two_and_three_spans() {
    let (load, span) = (pounds(200.0), inches(72.0));
    let both = |case: Case| case.moments(span).value;
    agrees("68", both(Case::OneSpan(load)).sagging, 3600.0);
    let moved = Case::OneSpan(load).deflection(span, on_edge()).unwrap();
    agrees("68 deflection", moved.value, 0.2072736);
    let flat = Profile::Rectangle {
        across: inches(3.5),
        along: inches(1.5),
    };
    let flat = rigidity(psi(1.4e6), flat.section().unwrap().second_moment).value;
    let moved = Case::OneSpan(load).deflection(span, flat).unwrap();
    agrees("69 deflection", moved.value, 1.12849);
    for (case, sagging, hogging) in [
        (Case::TwoSpans(load), 2925.0, 1350.0),
        (Case::ThreeSpansEnd(load), 2880.0, 1440.0),
        (Case::ThreeSpansMiddle(load), 2520.0, 1080.0),
    ] {
        agrees("sagging", both(case).sagging, sagging);
        agrees("hogging", both(case).hogging, hogging);
    }
}
