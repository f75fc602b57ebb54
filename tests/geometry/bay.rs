//! Balusters of a bay: worked layouts, a search over the grid as oracle, and what
//! adding up a rounded gap would have done.

use guardrule::geometry::AtTheLimit;
use guardrule::geometry::BayEnds;
use guardrule::geometry::BayError;
use guardrule::geometry::BayLayout;
use guardrule::geometry::BayPlan;
use guardrule::geometry::GapLimit;
use guardrule::geometry::added_between;
use guardrule::geometry::on_each_tread;
use guardrule::quantities::Angle;
use guardrule::quantities::Length;
use guardrule::reading::parse_length;
use guardrule::reading::parse_slope;
use proptest::prelude::ProptestConfig;
use proptest::prop_assert;
use proptest::prop_assert_eq;
use proptest::proptest;
use proptest::sample::select;

fn length(text: &str) -> Length {
    parse_length(text, None).expect("a length").length
}

fn at_most(clear: &str, baluster: &str, limit: &str, graduation: &str) -> BayPlan {
    BayPlan {
        clear: length(clear),
        baluster: length(baluster),
        limit: GapLimit {
            length: length(limit),
            exactly: AtTheLimit::Fits,
        },
        ends: BayEnds::Gap,
        rake: None,
        graduation: length(graduation),
        tolerance: Length::ZERO,
        shrinkage: Length::ZERO,
    }
}

fn layout(plan: &BayPlan) -> BayLayout {
    plan.layout().expect("a layout")
}

/// Gaps of a level bay, from its marks alone.
fn gaps(plan: &BayPlan, marks: &[Length]) -> Vec<Length> {
    let mut face = Length::ZERO;
    let mut all = Vec::new();
    for mark in marks {
        all.push(*mark - face);
        face = *mark + plan.baluster;
    }
    all.push(plan.clear - face);
    all
}

/// Worked by exact fractions with n = ceil((L - G) / (b + G)), gap = (L - n b) / (n + 1),
/// marks from one end (textbook arithmetic, no source): bay, baluster, largest gap,
/// graduation; count, largest rounded gap, first and last mark.
#[test]
fn layouts_worked_by_exact_fractions() {
    const CASES: &[[&str; 8]] = &[
        [
            "36 in",
            "1 1/2 in",
            "4 in",
            "1/16 in",
            "6",
            "3 7/8 in",
            "3 7/8 in",
            "30 5/8 in",
        ],
        [
            "72 in",
            "3/4 in",
            "4 in",
            "1/16 in",
            "15",
            "3 13/16 in",
            "3 13/16 in",
            "67 7/16 in",
        ],
        [
            "96 1/2 in",
            "1 1/4 in",
            "4 in",
            "1/16 in",
            "18",
            "3 15/16 in",
            "3 7/8 in",
            "91 3/8 in",
        ],
        [
            "45 in",
            "1 1/2 in",
            "4 in",
            "1/16 in",
            "8",
            "3 11/16 in",
            "3 11/16 in",
            "39 13/16 in",
        ],
        [
            "59 in",
            "1 1/2 in",
            "4 in",
            "1/16 in",
            "10",
            "4 in",
            "4 in",
            "53 1/2 in",
        ],
        [
            "84 in",
            "3/4 in",
            "4 in",
            "1/16 in",
            "17",
            "4 in",
            "3 15/16 in",
            "79 5/16 in",
        ],
        [
            "1800 mm", "20 mm", "99 mm", "1 mm", "15", "94 mm", "94 mm", "1686 mm",
        ],
        [
            "2400 mm", "32 mm", "89 mm", "1 mm", "20", "84 mm", "84 mm", "2284 mm",
        ],
        [
            "1200 mm", "12 mm", "100 mm", "1 mm", "10", "99 mm", "98 mm", "1090 mm",
        ],
        [
            "51 5/8 in",
            "1 5/16 in",
            "3 15/16 in",
            "1/16 in",
            "10",
            "3 1/2 in",
            "3 1/2 in",
            "46 13/16 in",
        ],
        [
            "100 in",
            "3/4 in",
            "4 3/8 in",
            "1/16 in",
            "19",
            "4 5/16 in",
            "4 5/16 in",
            "94 15/16 in",
        ],
    ];
    for [
        clear,
        baluster,
        limit,
        graduation,
        count,
        largest,
        first,
        last,
    ] in CASES
    {
        let plan = at_most(clear, baluster, limit, graduation);
        let found = layout(&plan);
        assert_eq!(found.marks.len().to_string(), *count, "{clear}");
        assert_eq!(found.largest_gap, length(largest), "{clear}");
        assert_eq!(found.marks.first(), Some(&length(first)), "{clear}");
        assert_eq!(found.marks.last(), Some(&length(last)), "{clear}");
        assert_eq!(
            gaps(&plan, &found.marks).into_iter().max(),
            Some(length(largest))
        );
    }
    // an edge of 144 in, 3 posts of 3 1/2: two bays of (144 - 10 1/2) / 2
    let counts = [("3 3/4 in", 12), ("3 5/16 in", 14)];
    for (largest, count) in counts {
        let bay = layout(&at_most("66 3/4 in", "1 1/2 in", largest, "1/16 in"));
        assert_eq!(bay.marks.len(), count, "{largest}");
    }
    let none = layout(&at_most("3 7/8 in", "1 1/2 in", "4 in", "1/16 in"));
    assert_eq!(none.marks, []);
    assert_eq!(none.largest_gap, length("3 7/8 in"));
}

/// At the limit: a ball of 4 in falls through a gap of exactly 4 in, "at most 4 in" is kept.
#[test]
fn a_gap_of_exactly_the_limit_takes_one_more_baluster_where_a_ball_is_asked_for() {
    let fits = at_most("59 in", "1 1/2 in", "4 in", "1/16 in");
    let ball = BayPlan {
        limit: GapLimit {
            exactly: AtTheLimit::Passes,
            ..fits.limit
        },
        ..fits
    };
    assert_eq!(layout(&fits).marks.len(), 10);
    assert_eq!(layout(&ball).marks.len(), 11);
    assert!(layout(&ball).largest_gap < length("4 in"));
}

/// Stepping a rounded pitch leaves its error times the count to the last gap
/// (textbook arithmetic); marks from one end do not.
#[test]
fn adding_up_a_rounded_gap_drifts_and_marks_from_one_end_do_not() {
    let plan = at_most("96 1/2 in", "1 1/4 in", "4 in", "1/16 in");
    let found = layout(&plan);
    let step = length("5 1/8 in"); // 391/76 in = 5.1447 in, to the nearest 1/16 in
    let mut last = Length::ZERO;
    for _ in 0..18 {
        last = last + step;
    }
    let by_steps = plan.clear - last; // the last gap, after 18 gaps of 3 7/8 in
    assert_eq!(by_steps, length("4 1/4 in"));
    assert!(by_steps - found.gap > length("1/4 in"));
    assert!(found.largest_gap <= length("3 15/16 in"));
}

/// The ends: half a gap at each, and a baluster against each post.
#[test]
fn the_ends_of_a_bay_are_as_asked() {
    let half = BayPlan {
        ends: BayEnds::HalfGap,
        ..at_most("72 in", "1 1/2 in", "3 3/4 in", "1/16 in")
    };
    let found = layout(&half); // ceil(72 / 5.25) = 14, gap (72 - 21) / 14
    assert_eq!(found.marks.len(), 14);
    let all = gaps(&half, &found.marks);
    assert!(
        all[0] <= length("1 7/8 in") && all[14] <= length("1 7/8 in"),
        "{all:?}"
    );

    let against = BayPlan {
        ends: BayEnds::Baluster,
        ..half
    };
    let found = layout(&against); // ceil((72 + 3.75) / 5.25) = 15
    assert_eq!(found.marks.len(), 15);
    let all = gaps(&against, &found.marks);
    assert_eq!((all[0], all[15]), (Length::ZERO, Length::ZERO));
    assert!(all.iter().all(|gap| *gap <= length("3 3/4 in")), "{all:?}");
}

/// 7 3/4 on 10 in: lengths along the rail are 1.265158 times those measured level
/// (textbook trigonometry); three bars of 3/4 in a tread leave 2 7/12 in.
#[test]
fn a_raked_bay_is_marked_along_its_rail() {
    let rake = parse_slope("7 3/4 x 10 in").expect("a slope");
    let plan = BayPlan {
        clear: length("101 3/16 in"), // eight goings of 10 in, along the rail 101.21
        rake: Some(rake),
        ..at_most("80 in", "3/4 in", "4 3/8 in", "1/16 in")
    };
    let found = layout(&plan);
    let level = layout(&BayPlan {
        clear: length("80 in"),
        rake: None,
        ..plan
    });
    assert_eq!(found.marks.len(), level.marks.len());
    for (along, flat) in found.marks.iter().zip(&level.marks) {
        let (along, flat) = (along.nanometres() as f64, flat.nanometres() as f64);
        assert!((along / flat - 1.265_158).abs() < 0.02, "{along} {flat}");
    }
    assert!(found.largest_gap <= length("4 3/8 in"));
    let tread = |limit: &str, baluster: &str| {
        on_each_tread(
            &at_most("80 in", baluster, limit, "1/16 in"),
            length("10 in"),
        )
    };
    assert_eq!(tread("4 3/8 in", "3/4 in").map(|found| found.0), Some(2));
    assert_eq!(tread("4 in", "3/4 in").map(|found| found.0), Some(3));
    assert_eq!(tread("2 3/8 in", "3/4 in"), None);
    // (240 - 2 x 22) / 2 is 98 exactly: at most 98 is kept, a ball of 98 falls through
    let exactly = at_most("2212 mm", "22 mm", "98 mm", "1 mm");
    let ball = BayPlan {
        limit: GapLimit {
            exactly: AtTheLimit::Passes,
            ..exactly.limit
        },
        ..exactly
    };
    let going = length("240 mm");
    assert_eq!(on_each_tread(&exactly, going), Some((2, length("98 mm"))));
    assert_eq!(on_each_tread(&ball, going).map(|found| found.0), Some(3));
}

/// Deck bay of 72 in with 12 balusters of 1 1/2 in: one between each pair leaves
/// 1.3269 in everywhere (worked by exact fractions); uneven gaps get what each needs.
#[test]
fn balusters_are_added_to_each_gap_for_itself() {
    let plan = at_most("72 in", "1 1/2 in", "3 3/4 in", "1/16 in");
    let uneven = ["4 1/8 in", "3 5/8 in", "10 in"].map(length);
    let found = added_between(&plan, &uneven).expect("they fit");
    let counts: Vec<usize> = found.iter().map(|one| one.layout.marks.len()).collect();
    assert_eq!(counts, [1, 0, 2]);
    assert_eq!(found[0].layout.largest_gap, length("1 5/16 in"));
}

#[test]
fn what_has_no_layout_says_why() {
    let plan = at_most("72 in", "1 1/2 in", "4 in", "1/16 in");
    let why = |plan: BayPlan| plan.layout().expect_err("no layout");
    let nothing = Length::ZERO;
    assert_eq!(
        why(BayPlan {
            clear: nothing,
            ..plan
        }),
        BayError::NotPositive
    );
    assert_eq!(
        why(BayPlan {
            graduation: nothing,
            ..plan
        }),
        BayError::NotPositive
    );
    assert_eq!(
        why(BayPlan {
            tolerance: length("4 in"),
            ..plan
        }),
        BayError::NothingLeft
    );
    assert_eq!(
        why(BayPlan {
            clear: length("20000 m"),
            ..plan
        }),
        BayError::TooMany
    );
    let tight = at_most("5 in", "4 3/4 in", "1/64 in", "1/64 in");
    assert_eq!(why(tight), BayError::TooTight);
    let wall = parse_slope("89.99 deg").expect("a slope");
    assert_eq!(
        why(BayPlan {
            rake: Some(wall),
            ..plan
        }),
        BayError::Wall
    );
}

/// Nanometres of a bay, far below what a float holds exactly.
#[expect(clippy::cast_possible_truncation, reason = "whole, and below 2^53")]
fn whole(nanometres: f64) -> i64 {
    nanometres as i64
}

/// The fewest balusters by walking every mark of the grid: from each place that a
/// near face can have, all that the next can have.
fn fewest_by_search(plan: &BayPlan, target: i64, cosine: f64) -> Option<usize> {
    let step = plan.graduation.nanometres();
    let level = |along: i64| whole((along as f64 * cosine).floor());
    let (clear, wide) = (plan.clear.nanometres(), plan.baluster.nanometres());
    let end = match plan.ends {
        BayEnds::Gap => target,
        BayEnds::HalfGap => target / 2,
        BayEnds::Baluster => 0,
    };
    if plan.ends == BayEnds::Gap && level(clear) <= target {
        return Some(0);
    }
    let footprint = whole((wide as f64 / cosine).ceil());
    // the farthest place that the last of so many balusters can have
    let mut farthest = level_floor(end, cosine, step);
    let most = clear / footprint;
    for count in 1..=most {
        let rest = level(clear - farthest) - wide;
        if rest <= end {
            return usize::try_from(count).ok();
        }
        if plan.ends == BayEnds::Baluster {
            let last = clear - footprint;
            if level(last - farthest) - wide <= target {
                return usize::try_from(count + 1).ok();
            }
        }
        farthest += level_floor(target + wide, cosine, step);
    }
    None
}

fn level_floor(level: i64, cosine: f64, step: i64) -> i64 {
    let mut along = 0;
    let far = whole((level as f64 / cosine).floor());
    while along + step <= far {
        along += step;
    }
    along
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(10_000))]

    /// No gap after rounding, tolerance and drying above the limit; the marks add up
    /// to the bay; one baluster fewer cannot do it.
    #[test]
    fn random_bays_keep_the_limit_with_the_fewest_balusters(
        clear in 150..4000_i32,
        wide in 6..90_i32,
        limit in 40..160_i32,
        tenths in 0..60_i32,
        shrinks in 0..40_i32,
        step in select(vec![1_000_000_i64, 500_000, 396_875, 1_587_500, 3_175_000]),
        ends in select(vec![BayEnds::Gap, BayEnds::HalfGap, BayEnds::Baluster]),
        exactly in select(vec![AtTheLimit::Fits, AtTheLimit::Passes]),
        degrees in select(vec![0.0, 0.0, 25.0, 37.7757]),
    ) {
        let angle = Angle::new::<uom::si::angle::degree>(degrees);
        let plan = BayPlan {
            clear: Length::millimetres(clear),
            baluster: Length::millimetres(wide),
            limit: GapLimit { length: Length::millimetres(limit), exactly },
            ends,
            rake: (degrees > 0.0).then_some(angle),
            graduation: Length::from_nanometres(step),
            tolerance: Length::micrometres(tenths * 100),
            shrinkage: Length::micrometres(shrinks * 100),
        };
        let target = plan.target();
        let cosine = libm::cos(degrees.to_radians());
        let footprint = whole((plan.baluster.nanometres() as f64 / cosine).ceil());
        let found = match plan.layout() {
            Ok(found) => found,
            Err(error) => {
                // nothing is left, or there is no room for a step in every gap
                let none = fewest_by_search(&plan, target.nanometres(), cosine);
                let room = |count: usize| {
                    let count = i64::try_from(count).expect("small");
                    plan.clear.nanometres() - count * footprint
                };
                let crowded = |count: usize| room(count) < i64::try_from(count + 1).expect("small") * step;
                prop_assert!(matches!(error, BayError::NothingLeft | BayError::TooTight));
                prop_assert!(none.is_none_or(crowded), "{plan:?} {none:?}");
                return Ok(());
            }
        };
        let mut face = 0;
        let mut sum = 0;
        let mut all = Vec::new();
        for mark in &found.marks {
            all.push(mark.nanometres() - face);
            face = mark.nanometres() + footprint;
        }
        all.push(plan.clear.nanometres() - face);
        for gap in &all {
            prop_assert!(*gap >= 0);
            prop_assert!((*gap as f64 * cosine) <= target.nanometres() as f64 + 2.0);
            sum += gap;
        }
        let count = found.marks.len();
        sum += footprint * i64::try_from(count).expect("small");
        prop_assert_eq!(sum, plan.clear.nanometres());
        let room = plan.limit.length - found.largest_gap - plan.tolerance - plan.shrinkage;
        prop_assert!(room >= Length::ZERO);
        for mark in found.marks.iter().take(count.saturating_sub(1)) {
            prop_assert_eq!(mark.nanometres() % step, 0);
        }
        prop_assert_eq!(Some(count), fewest_by_search(&plan, target.nanometres(), cosine));
    }
}
