//! The demo survey of an old house: which opening decides, among scrollwork, turned
//! balusters, a raked stair and cables.

use crate::harness::run_here;

#[test]
fn the_old_house_names_the_openings_that_decide() {
    let ran = run_here(&["check", "@demo-surveys/old-house.csv"]);
    assert_eq!((ran.code, ran.err.as_str()), (1, ""));
    // the day of the report, and the path of this machine at its end
    let today = ran.out.split("report of").nth(1).expect("a date");
    let today = today.split_whitespace().next().expect("a date");
    let dated = ran.out.replace(today, "YYYY-MM-DD");
    let body: Vec<&str> = dated
        .lines()
        .take_while(|line| !line.starts_with("FOR ALL"))
        .collect();
    insta::assert_snapshot!(body.join("\n"));
}
