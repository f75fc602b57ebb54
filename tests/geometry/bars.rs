//! Steps, raked bays and turned balusters against GEOS and a search by Nelder-Mead,
//! as `bars.py` froze them.

use guardrule::geometry::Across;
use guardrule::geometry::Balusters;
use guardrule::geometry::LargestBall;
use guardrule::geometry::Rake;
use guardrule::geometry::RakedBay;
use guardrule::geometry::Shape;
use guardrule::geometry::StairTriangle;
use guardrule::geometry::Station;
use guardrule::geometry::TurnedPair;
use guardrule::quantities::Length;

const FROZEN: &str = include_str!("bars.txt");

fn rows(kind: &str) -> Vec<Vec<&'static str>> {
    let lines = FROZEN.lines().map(|line| line.split(' ').collect());
    let rows = lines.filter(|words: &Vec<&str>| words[0] == kind);
    rows.map(|words| words[1..].to_vec()).collect()
}

fn number(text: &str) -> f64 {
    text.parse().expect("a number")
}

/// Three decimals of a millimetre are whole micrometres.
fn mm(text: &str) -> Length {
    let micrometres = (number(text) * 1000.0).round();
    let whole: i64 = format!("{micrometres:.0}").parse().expect("whole");
    Length::from_nanometres(whole * 1000)
}

/// GEOS finds a circle that fits, within its tolerance of the largest; where many
/// places tie it may stop short.
fn agrees(ball: &LargestBall, geos: f64, row: &[&str]) {
    let upper = ball.upper_mm.expect("bounded");
    assert!(ball.lower_mm <= upper, "{row:?}: {ball:?}");
    assert!(upper - ball.lower_mm <= 1e-9 * upper, "{row:?}: {ball:?}");
    assert!(upper >= geos - 1e-9 * geos, "{row:?}: {ball:?}");
    assert!(ball.lower_mm <= geos + 1e-8 * geos, "{row:?}: {ball:?}");
}

#[test]
fn steps_with_nosings_and_rails_of_any_height_agree_with_geos() {
    let rows = rows("step");
    assert_eq!(rows.len(), 150);
    for row in rows {
        let [geos, rise, going, lift, overhang, thickness] = row[..] else {
            panic!("{row:?}");
        };
        let thickness = (thickness != "-").then(|| mm(thickness));
        let step = StairTriangle::new(mm(rise), mm(going), mm(lift))
            .and_then(|step| step.with_nosing(mm(overhang), thickness));
        agrees(&step.expect("a step").largest_ball(), number(geos), &row);
    }
}

#[test]
fn raked_bays_agree_with_geos() {
    let rows = rows("raked");
    assert_eq!(rows.len(), 60);
    for row in rows {
        let [geos, gap, across, balusters, rise, going, high] = row[..] else {
            panic!("{row:?}");
        };
        let bay = Shape::Raked(RakedBay {
            gap: mm(gap),
            across: match across {
                "along" => Across::Along,
                _ => Across::Level,
            },
            balusters: match balusters {
                "plumb" => Balusters::Plumb,
                _ => Balusters::Square,
            },
            rake: Rake::Step {
                rise: mm(rise),
                going: mm(going),
            },
            high: Some(mm(high)),
        });
        agrees(&bay.largest_ball(), number(geos), &row);
    }
}

/// A search may end at a place that is not the best, so that its value is a lower
/// bound; among sixty starts it came to the best each time.
#[test]
fn turned_balusters_agree_with_a_search_in_space() {
    let rows = rows("turned");
    assert_eq!(rows.len(), 60);
    for row in rows {
        let (closed, open) = (number(row[0]), number(row[1]));
        let station = |text: &&str| {
            let (height, diameter) = text.split_once(':').expect("height:diameter");
            Station {
                height: mm(height),
                diameter: mm(diameter),
            }
        };
        let profile = row[3..].iter().map(station).collect();
        let pair = TurnedPair::new(mm(row[2]), profile).expect("a profile");
        let ball = Shape::Turned(pair).largest_ball();
        let upper = ball.upper_mm.expect("bounded");
        let near = |ours: f64, theirs: f64| (ours - theirs).abs() <= 1e-8 * theirs;
        assert!(near(ball.lower_mm, closed), "{row:?}: {ball:?}");
        assert!(near(upper, open), "{row:?}: {ball:?}");
    }
}
