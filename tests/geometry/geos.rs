//! Random outlines against GEOS and a linear program, as `oracle.py` froze them.

use crate::geometry::checked;
use crate::geometry::polygon;

const FROZEN: &str = include_str!("geos.txt");

struct Outline {
    kind: String,
    geos: f64,
    tolerance: f64,
    program: Option<f64>,
    corners: Vec<(f64, f64)>,
}

fn outlines() -> Vec<Outline> {
    let number = |text: &str| -> f64 { text.parse().expect("a number") };
    let outline = |line: &str| {
        let mut words = line.split(' ');
        let mut word = || words.next().expect("four words before the corners");
        let (kind, geos, tolerance, program) = (word(), word(), word(), word());
        let corners = words.map(|corner| {
            let (x, y) = corner.split_once(':').expect("x:y");
            (number(x), number(y))
        });
        Outline {
            kind: kind.to_owned(),
            geos: number(geos),
            tolerance: number(tolerance),
            program: (program != "-").then(|| number(program)),
            corners: corners.collect(),
        }
    };
    let lines = FROZEN.lines().filter(|line| !line.starts_with('#'));
    lines.map(outline).collect()
}

/// A circle that GEOS found fits, so none of our upper bounds may lie below it.
/// Ours is larger than its tolerance explains only among slots of nearly one width
/// and in slivers, where GEOS ends its search early; that ours fits is checked.
#[test]
fn a_thousand_outlines_agree_with_geos() {
    let outlines = outlines();
    assert_eq!(outlines.len(), 1000);
    for outline in &outlines {
        let ball = checked(&polygon(&outline.corners));
        let Outline {
            kind,
            geos,
            tolerance,
            ..
        } = outline;
        let room = 1e-12 * geos + 1e-12;
        assert!(
            ball.upper_mm >= geos - room,
            "{kind}: {ball:?} below {geos}"
        );
        let near = ball.lower_mm - geos <= 2.0 * tolerance * geos;
        let ends_early = matches!(kind.as_str(), "comb" | "sliver");
        assert!(near || ends_early, "{kind}: {ball:?} above {geos}");
    }
}

/// The linear program keeps to its rows within 1e-7, which between nearly parallel
/// sides moves the answer by more (in mm).
#[test]
fn convex_outlines_agree_with_a_linear_program() {
    let mut count = 0;
    for outline in outlines() {
        let Some(program) = outline.program else {
            continue;
        };
        count += 1;
        let ball = checked(&polygon(&outline.corners));
        let off = (ball.lower_mm - program).abs();
        let room = if outline.kind == "sliver" { 1e-5 } else { 1e-8 };
        assert!(off <= room, "{}: {ball:?} against {program}", outline.kind);
    }
    assert!(count >= 250, "{count} convex outlines");
}
