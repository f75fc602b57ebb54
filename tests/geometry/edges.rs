//! Shapes and bays exactly at the edge of what they can be.

use guardrule::geometry::AtTheLimit;
use guardrule::geometry::BayEnds;
use guardrule::geometry::BayError;
use guardrule::geometry::BayPlan;
use guardrule::geometry::Cables;
use guardrule::geometry::CablesError;
use guardrule::geometry::Fit;
use guardrule::geometry::GapLimit;
use guardrule::geometry::Probe;
use guardrule::geometry::Shape;
use guardrule::geometry::StairTriangle;
use guardrule::geometry::StairTriangleError;
use guardrule::geometry::Station;
use guardrule::geometry::Strand;
use guardrule::geometry::TurnedError;
use guardrule::geometry::TurnedPair;
use guardrule::geometry::Vee;
use guardrule::geometry::on_each_tread;
use guardrule::quantities::Length;

const ZERO: Length = Length::ZERO;
const LEAST: Length = Length::from_nanometres(1);

fn mm(length: i32) -> Length {
    Length::millimetres(length)
}

#[test]
fn nothing_is_no_side_of_a_shape_and_a_nanometre_is_one() {
    let step = |rise, going, lift| StairTriangle::new(rise, going, lift);
    let refused = Err(StairTriangleError::NotPositive);
    assert_eq!(step(ZERO, mm(250), ZERO), refused);
    assert_eq!(step(mm(180), ZERO, ZERO), refused);
    assert_eq!(step(mm(180), mm(250), -LEAST), refused);
    assert!(step(mm(180), mm(250), ZERO).is_ok());
    assert!(step(LEAST, LEAST, ZERO).is_ok());

    assert_eq!(Vee::new(ZERO, mm(90)), None);
    assert_eq!(Vee::new(mm(90), ZERO), None);
    assert!(Vee::new(LEAST, LEAST).is_some());

    assert_eq!(Probe::new(ZERO, mm(90)), None);
    assert!(Probe::new(LEAST, mm(90)).is_some());

    let cables = |spacing, diameter| Cables::new(Strand::Cable, spacing, diameter).err();
    assert_eq!(cables(ZERO, mm(5)), Some(CablesError::NotPositive));
    assert_eq!(cables(mm(80), ZERO), Some(CablesError::NotPositive));
    assert_eq!(cables(mm(80), mm(80)), Some(CablesError::Touch));
    assert_eq!(cables(mm(80), mm(80) - LEAST), None);
}

#[test]
fn turned_balusters_that_just_touch_leave_no_opening() {
    let pair = |centres: Length, stations: &[(i32, Length)]| {
        let of = |(height, diameter): &(i32, Length)| Station {
            height: mm(*height),
            diameter: *diameter,
        };
        TurnedPair::new(centres, stations.iter().map(of).collect()).err()
    };
    let slim = (900, mm(30));
    assert_eq!(
        pair(mm(100), &[(0, mm(100)), slim]),
        Some(TurnedError::Touch { number: 1 })
    );
    assert_eq!(pair(mm(100), &[(0, mm(100) - LEAST), slim]), None);
    let nothing = Some(TurnedError::NotPositive);
    assert_eq!(pair(mm(100), &[(0, ZERO), slim]), nothing);
    assert_eq!(pair(ZERO, &[(0, mm(30)), slim]), nothing);
    // one height may stand twice only with two diameters
    let again = Some(TurnedError::NotRising { number: 2 });
    assert_eq!(pair(mm(100), &[(0, mm(30)), (0, mm(30)), slim]), again);
    assert_eq!(pair(mm(100), &[(0, mm(40)), (0, mm(30)), slim]), None);
}

#[test]
fn a_probe_that_just_fits_passes() {
    let probe = |one, other| Probe::new(mm(one), mm(other)).expect("two sides");
    // 3, 4 and 5: its diagonal is the hole
    let circle = Shape::Circle { diameter: mm(50) };
    assert_eq!(circle.admits(probe(30, 40), ZERO), Fit::Passes(None));
    assert_eq!(circle.admits(probe(30, 40), -LEAST), Fit::DoesNotPass);
    // a square in the right angle of a triangle with equal legs has half of a leg
    let triangle = |leg| Shape::Triangle {
        rise: mm(leg),
        run: mm(leg),
    };
    assert_eq!(triangle(80).admits(probe(40, 40), ZERO), Fit::Passes(None));
    assert_eq!(triangle(80).admits(probe(40, 41), ZERO), Fit::DoesNotPass);
    // a side of 30 along the leg of 60 leaves half of the other, either way round
    let flat = Shape::Triangle {
        rise: mm(60),
        run: mm(100),
    };
    assert_eq!(flat.admits(probe(30, 50), ZERO), Fit::Passes(None));
    let tall = Shape::Triangle {
        rise: mm(100),
        run: mm(60),
    };
    assert_eq!(tall.admits(probe(30, 50), ZERO), Fit::Passes(None));
    // turned in a rectangle: (7/5)² + (1/5)² = 2, where 78 + 62 is 7/5 of 90 + 10 and
    // 78 - 62 is 1/5 of 90 - 10 (Carver 1957, see `Shape::admits`)
    let hole = Shape::Rectangle {
        width: mm(62),
        height: mm(78),
    };
    assert_eq!(hole.admits(probe(90, 10), ZERO), Fit::Passes(None));
    assert_eq!(hole.admits(probe(90, 10), -LEAST), Fit::DoesNotPass);
    // between cables 50 apart a ball of its diagonal passes, and so does the probe
    let cables = Cables::new(Strand::Cable, mm(60), mm(10)).expect("cables");
    let cables = Shape::Cables(cables);
    assert_eq!(cables.admits(probe(30, 40), ZERO), Fit::Passes(None));
    assert_eq!(cables.admits(probe(30, 40), -LEAST), Fit::Undecided);
}

fn plan(clear: i32, limit: Length) -> BayPlan {
    BayPlan {
        clear: mm(clear),
        baluster: mm(40),
        limit: GapLimit {
            length: limit,
            exactly: AtTheLimit::Fits,
        },
        ends: BayEnds::Gap,
        rake: None,
        graduation: mm(1),
        tolerance: ZERO,
        shrinkage: ZERO,
    }
}

#[test]
fn a_bay_as_wide_as_a_gap_may_be_needs_no_baluster() {
    let count = |clear| {
        plan(clear, mm(100))
            .layout()
            .map(|layout| layout.marks.len())
    };
    assert_eq!(count(100), Ok(0));
    assert_eq!(count(101), Ok(1));
    assert_eq!(count(240), Ok(1));
    assert_eq!(count(241), Ok(2));
}

#[test]
fn balusters_may_stand_side_by_side_and_no_nearer() {
    // marks every 10 leave no step between 40 and 45: five of 40 fill 200
    let side_by_side = |clear, baluster| {
        let plan = BayPlan {
            baluster,
            graduation: mm(10),
            ..plan(clear, mm(5))
        };
        plan.layout().map(|layout| layout.marks.len())
    };
    assert_eq!(side_by_side(200, mm(40)), Ok(5));
    // no two marks of the grid may be 41 to 45 apart
    assert_eq!(side_by_side(200, mm(41)), Err(BayError::TooTight));
    // six would be needed in 230, and only five fit
    assert_eq!(side_by_side(240, mm(40)), Ok(6));
    assert_eq!(side_by_side(230, mm(40)), Err(BayError::TooTight));
}

#[test]
fn ten_thousand_balusters_are_worked_out_and_no_more() {
    // of 1, and 9 apart: n of them fill 10 n + 9
    let count = |clear| {
        let plan = BayPlan {
            baluster: mm(1),
            ..plan(clear, mm(9))
        };
        plan.layout().map(|layout| layout.marks.len())
    };
    assert_eq!(count(100_009), Ok(10_000));
    assert_eq!(count(100_010), Err(BayError::TooMany));
}

#[test]
fn two_balusters_have_a_spacing_and_one_has_none() {
    let layout = |clear| plan(clear, mm(100)).layout().expect("a layout");
    // two of 40 in 380 leave three gaps of 100
    assert_eq!(layout(380).marks.len(), 2);
    assert_eq!(layout(380).spacing, mm(140));
    assert_eq!(layout(240).spacing, ZERO);
}

#[test]
fn a_limit_that_drying_takes_whole_leaves_nothing() {
    let left = |shrinkage| {
        let plan = BayPlan {
            shrinkage,
            ..plan(1000, mm(3))
        };
        plan.layout().err()
    };
    assert_eq!(left(mm(3)), Some(BayError::NothingLeft));
    assert_ne!(left(mm(3) - LEAST), Some(BayError::NothingLeft));
}

#[test]
fn balusters_on_a_tread_leave_a_gap_and_one_no_wider_than_asked() {
    let on = |going: Length, limit: Length| on_each_tread(&plan(1000, limit), going);
    // two of 40 fill a going of 80, and one leaves 40
    assert_eq!(on(mm(80), mm(39)), None);
    assert_eq!(on(mm(80), mm(40) - LEAST), None);
    assert_eq!(on(mm(80), mm(40)), Some((1, mm(40))));
}
