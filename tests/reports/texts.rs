//! Text reports, read before they were accepted.

use guardrule::report::Explain;

use crate::harness::run;
use crate::reports::scenes::Scene;
use crate::reports::scenes::guard;
use crate::reports::scenes::house;

const LAW: &[&str] = &["us-dwelling-2018", "small-child-advice"];

#[test]
fn a_house_with_one_of_everything() {
    insta::assert_snapshot!(Scene::new(LAW, house()).text());
}

#[test]
fn guidance_alone() {
    let guards = house().into_iter().take(1).collect();
    insta::assert_snapshot!(Scene::new(&["small-child-advice"], guards).text());
}

#[test]
fn with_its_arithmetic() {
    let mut scene = Scene::new(&["us-dwelling-2018"], house().into_iter().take(1).collect());
    scene.explain = Explain::Yes;
    insta::assert_snapshot!(scene.text());
}

#[test]
fn a_stair_with_its_triangle() {
    let stair = guard(
        "A",
        "stair",
        &[
            ("place", "stair", ""),
            ("use", "dwelling", ""),
            ("drop", "9 ft", ""),
            ("risers", "13", ""),
            ("handrail", "top of the guard", ""),
            ("height", "34 1/16 in", ""),
            ("opening", "4 1/8 in", ""),
            ("stair triangle", "rise 7 3/4 going 10 lift 1 1/2 in", ""),
            ("moves when pushed", "a lot", "the whole flight"),
        ],
    );
    insta::assert_snapshot!(Scene::new(LAW, vec![stair]).text());
}

#[test]
fn of_many_guards_those_that_meet_get_a_line() {
    let mut guards = Vec::new();
    for number in 0..40 {
        let mut each = house().swap_remove(if number == 7 { 0 } else { 4 });
        each.name = format!("gallery {number}").into();
        guards.push(each);
    }
    let text = Scene::new(LAW, guards).text();
    assert!(text.lines().count() < 260, "{}", text.lines().count());
    let first = text.find("gallery 7").expect("the worst");
    let next = text.find("gallery 0").expect("the next");
    assert!(first < next, "worst first");
    insta::assert_snapshot!(text);
}

/// `none` is no age of a child.
#[test]
fn where_no_child_lives_nobody_is_told_of_a_child_of_none() {
    let survey = "guard,item,reading\n,children,none\nloft edge,height,20 in\nloft edge,place,landing\nloft edge,drop,9 ft\n";
    let args = ["check", "@survey.csv"];
    let text = run(&[("survey.csv", survey)], &args).out;
    assert!(
        text.contains("loft edge: falls short of the advice"),
        "{text}"
    );
    assert!(!text.contains("child of none"), "{text}");
}
