//! The demo survey of an old house: which opening decides, among scrollwork, turned
//! balusters, a raked stair and cables.

use crate::harness::run_here;

#[test]
fn the_old_house_names_the_openings_that_decide() {
    let ran = run_here(&["check", "@demo-surveys/old-house.csv"]);
    assert_eq!((ran.code, ran.err.as_str()), (1, ""));
    // the first line holds the date, and the path is that of this machine
    let (_, body) = ran.out.split_once('\n').expect("several lines");
    let body = body.lines().filter(|line| !line.starts_with("Read from"));
    let body: Vec<&str> = body
        .take_while(|line| !line.starts_with("Before you act"))
        .collect();
    insta::assert_snapshot!(body.join("\n"));
}
