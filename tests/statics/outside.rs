//! How many numbers from outside the code come out of it: those that a source prints, and
//! those that were worked out apart.

use std::cell::RefCell;
use std::collections::BTreeSet;

/// Where a number comes from.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Outside {
    /// A source prints it, rounded.
    Printed,
    /// Worked out by hand or by another program.
    Worked,
}

thread_local! {
    static NUMBERS: RefCell<BTreeSet<(Outside, String, u64)>> = const { RefCell::new(BTreeSet::new()) };
}

/// Notes a number that is about to be compared, once for each name and value.
pub(super) fn reproduced(outside: Outside, what: &str, number: f64) {
    NUMBERS.with_borrow_mut(|all| all.insert((outside, what.to_owned(), number.to_bits())));
}

/// Every comparison of this folder, run once more to be counted.
#[test]
fn at_least_a_hundred_numbers_from_outside_are_reproduced() {
    NUMBERS.with_borrow_mut(BTreeSet::clear);
    super::beams::rails_agree_with_frame_elements();
    super::beams::a_cap_over_one_two_and_three_spans();
    super::chain::members_of_the_chain();
    super::chain::fixings_of_the_chain();
    super::chain::allowable_pushes_beside_the_tested_ones();
    super::fasteners::lag_withdrawal_as_tabulated();
    super::fasteners::screw_withdrawal_as_tabulated();
    super::fasteners::nail_withdrawal_as_tabulated();
    super::fasteners::withdrawal_of_the_solved_examples();
    super::fasteners::heads_pulled_through_as_tabulated();
    super::fasteners::lags_of_a_notched_post();
    super::fasteners::nothing_is_pulled_out_of_end_grain_by_screws_and_nails();
    super::fasteners::formulas_stop_at_the_end_of_their_tables();
    super::fasteners::washers_on_wood();
    super::fasteners::wood_under_a_dowel();
    super::guards::where_a_line_load_overtakes_a_point_load();
    super::guards::moments_at_the_base();
    super::guards::metric_demands();
    super::guards::the_pull_on_the_upper_bolt();
    super::guards::plates_screwed_down();
    super::guards::a_plate_that_bends_presses_at_the_post();
    super::guards::a_plate_on_the_subfloor_only();
    super::guards::a_rail_end_on_screws();
    super::guards::cables_pushed_at_midspan();
    super::guards::breakout_of_anchors();
    super::joints::holes_take_from_the_width();
    super::joints::a_post_on_its_net_section();
    super::joints::the_couple_by_where_the_bolts_fit();
    super::joints::washers_by_their_size();
    super::joints::bolts_in_tension();
    super::joints::a_post_flat_on_a_joist();
    super::joints::bolts_in_a_row_share_unevenly();
    super::joints::a_cap_and_a_second_rail_bend_together();
    super::joints::southern_pine_goes_by_its_width();
    super::joints::a_rim_alone_cannot_hold_a_post_by_twisting();
    super::joints::cables_pull_at_the_post_where_they_end();
    super::joints::a_cable_that_is_pushed_tightens();
    super::joints::posts_of_tube();
    super::joints::a_base_plate_bends_before_its_screws_say_so();
    super::joints::breakout_of_a_row_of_anchors();
    super::joints::posts_in_a_pocket();
    super::members::lumber_sections();
    super::members::pipes_as_tabulated();
    super::members::tubes_and_bars();
    super::members::metric_tubes();
    super::members::sizes_that_make_no_section_are_refused();
    super::members::wooden_posts_in_bending();
    super::members::a_wet_post_by_species();
    super::members::a_flat_cap();
    super::members::untabulated_sizes_have_no_allowable_stress();
    super::members::a_post_bends_little();
    super::members::balusters_under_the_infill_load();
    super::members::metal_rails_and_posts();
    super::members::iron_of_unknown_alloy_has_no_allowable_moment();
    super::stiffness::limits_of_movement();
    super::stiffness::a_pull_test_at_two_forces();
    super::stiffness::the_tested_post_as_a_pull_test();
    super::stiffness::doubts_of_a_pull_test();
    super::yield_modes::bolts_in_single_shear_as_tabulated();
    super::yield_modes::bolts_in_double_shear_as_tabulated();
    super::yield_modes::lags_with_a_wood_side_as_tabulated();
    super::yield_modes::lags_with_a_steel_side_as_tabulated();
    super::yield_modes::wood_screws_as_tabulated();
    super::yield_modes::nails_as_tabulated();
    super::yield_modes::bolts_of_a_post_under_a_vertical_load();
    super::yield_modes::a_short_lag_in_spruce();
    super::yield_modes::a_short_screw_in_spruce();
    super::yield_modes::bolts_in_southern_pine_wet_and_dry();
    let of = |outside| {
        NUMBERS.with_borrow(|all| all.iter().filter(|number| number.0 == outside).count())
    };
    let (printed, worked) = (of(Outside::Printed), of(Outside::Worked));
    assert!(printed >= 100, "{printed} printed by a source");
    assert!(
        printed + worked >= 300,
        "{printed} printed, {worked} worked out"
    );
}
