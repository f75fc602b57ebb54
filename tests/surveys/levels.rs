//! Names, levels and files: what belongs to which guard.

use std::cell::Cell;
use std::io;
use std::ops::ControlFlow;

use guardrule::items::Item;
use guardrule::quantities::Length;
use guardrule::survey::Guard;
use guardrule::survey::Survey;
use guardrule::survey::SurveyFile;
use guardrule::survey::TapeClass;

use crate::surveys::support::lines;
use crate::surveys::support::read;
use crate::surveys::support::read_files;

fn written(guard: &Guard, item: Item) -> Vec<String> {
    guard.of(item).map(|(_, o)| o.written.to_string()).collect()
}

#[test]
fn the_nearest_level_wins_for_each_item() {
    let read = read(
        "building,unit,guard,item,reading
,,,built,1960
,,,use,dwelling
North,,,built,1970
North,1,,built,1980
North,1,landing,built,1990
North,1,stair,height,36 in
North,2,stair,height,36 in
South,1,stair,height,36 in
North,,porch,height,36 in
,,shed,height,36 in
",
    );
    assert_eq!(read.diagnostics.sorted().len(), 0, "{}", lines(&read));
    let built: Vec<_> = read
        .guards
        .iter()
        .map(|g| written(g, Item::Built))
        .collect();
    assert_eq!(
        built,
        [["1990"], ["1980"], ["1970"], ["1960"], ["1970"], ["1960"]]
    );
    for guard in &read.guards {
        assert_eq!(written(guard, Item::Use), ["dwelling"]);
    }
}

#[test]
fn facts_and_rows_may_come_late_and_guards_keep_their_first_place() {
    let read = read(
        "unit,guard,item,reading
1,Landing,height,36 in
2,stair,height,35 in
1,landing ,opening,4 in
 1 ,LANDING,drop,9 ft
2,,built,1994
",
    );
    let names: Vec<&str> = read.guards.iter().map(|g| &*g.name).collect();
    assert_eq!(names, ["Landing", "stair"]);
    assert_eq!(read.guards[0].observations.len(), 3);
    assert_eq!(written(&read.guards[1], Item::Built), ["1994"]);
}

#[test]
fn tape_and_default_unit_hold_for_their_file_alone() {
    let read = read_files(&[
        (
            "inches.csv",
            b"guard,item,reading\na,height,36\n,tape,class I\n,read to,1/8 in\n,default unit,in\n,date,2026-05-04\n,by,R. T.\n",
        ),
        ("metres.csv", b"guard,item,reading\na,opening,90\n,default unit,mm\n,date,2026-05-05\n"),
        ("none.csv", b"guard,item,reading\na,bottom gap,60\n"),
    ]);
    assert_eq!(read.guards.len(), 1);
    assert_eq!(read.guards[0].rows_in_error, 1, "{}", lines(&read));
    let facts = &read.facts.file_facts;
    assert_eq!(facts[0].tape, Some(TapeClass::I));
    assert_eq!(facts[0].read_to, Some(Length::sixty_fourths(8)));
    assert_eq!((facts[1].tape, facts[2].read_to), (None, None));
    assert_eq!(read.facts.dates, ["2026-05-04", "2026-05-05"]);
    assert_eq!(read.facts.by, ["R. T."]);
}

#[test]
fn facts_of_the_survey_are_gathered() {
    let read = read(
        "guard,item,reading
,property,our house
,rules,us-dwelling-2018; local.toml
,rules,us-dwelling-2018
,build tolerance,± 1/8 in
a,height,36 in
a,date,2026-05-04
a,by,R. T.
",
    );
    assert_eq!(read.facts.property.as_deref(), Some("our house"));
    let rules = read
        .facts
        .rules
        .iter()
        .map(|rules| (&*rules.name, rules.at.line()));
    let rules: Vec<(&str, u64)> = rules.collect();
    assert_eq!(rules, [("us-dwelling-2018", 3), ("local.toml", 3)]);
    assert_eq!(read.facts.build_tolerance, Some(Length::sixty_fourths(8)));
    assert_eq!(read.facts.dates, ["2026-05-04"]);
    assert_eq!(read.facts.by, ["R. T."]);
    assert_eq!(read.diagnostics.sorted().len(), 0, "{}", lines(&read));
}

#[test]
fn an_unreadable_circumstance_hides_the_inherited_one() {
    let read = read(
        "unit,guard,item,reading\n1,,place,landing\n1,a,place,landink floor\n1,a,height,36 in\n",
    );
    let place: Vec<_> = read.guards[0]
        .of(Item::Place)
        .map(|(_, o)| o.reading.is_none())
        .collect();
    assert_eq!(place, [true]);
}

#[test]
fn a_second_guard_column_says_whether_there_is_a_guard() {
    let read = read("unit,guard,guard,height\n1,balcony,none,\n2,balcony,,36 in\n");
    assert_eq!(written(&read.guards[0], Item::Guard), ["none"]);
    assert_eq!(written(&read.guards[1], Item::Guard), [""; 0]);
    assert_eq!(read.diagnostics.sorted().len(), 0, "{}", lines(&read));
}

#[test]
fn a_row_that_names_a_guard_and_nothing_else_is_a_guard_not_measured() {
    let read = read("unit,guard,item,reading,note\n1,a,,,\n1,b,,,locked\n");
    assert_eq!(read.guards.len(), 2);
    assert_eq!((read.guards[0].rows, read.guards[0].rows_in_error), (0, 0));
    assert_eq!(&*read.guards[1].own[0].written, "locked");
    assert_eq!(read.diagnostics.sorted().len(), 0, "{}", lines(&read));
}

#[test]
fn comments_blank_rows_and_units_called_by_a_number_sign() {
    let read =
        read("# our house\nunit,guard,item,reading\n\n,,,\n#2,a,height,36 in\n# measured twice\n");
    assert_eq!(read.guards.len(), 1);
    assert_eq!(&*read.guards[0].unit, "#2");
    assert_eq!(read.diagnostics.sorted().len(), 0, "{}", lines(&read));
}

#[test]
fn many_faults_of_a_kind_are_kept_to_twenty_and_counted() {
    let mut text = "guard,item,reading\n".to_owned();
    for guard in 0..50 {
        text.push_str(&format!(
            "{guard},place,deck\n{guard},height,tall {guard}\n{guard},place,stair\n"
        ));
    }
    let read = read(&text);
    assert_eq!(read.diagnostics.sorted().len(), 40);
    let left_out: Vec<_> = read
        .diagnostics
        .left_out()
        .map(|(_, code, count)| (code, count))
        .collect();
    assert_eq!(left_out, [(206, 30), (223, 30)]);
}

/// A file that is another one each time it is opened.
struct Changing(Cell<usize>, [&'static str; 2]);

impl SurveyFile for Changing {
    fn name(&self) -> &str {
        "changing.csv"
    }

    fn open(&self) -> io::Result<Box<dyn io::Read + '_>> {
        let opened = self.0.get();
        self.0.set(opened + 1);
        // looked at for its encoding, and read for the first time
        let turn = usize::from(opened >= 2);
        Ok(Box::new(self.1[turn].as_bytes()))
    }
}

#[test]
fn a_file_that_changes_between_the_readings_is_an_error() {
    const BEFORE: &str = "guard,item,reading\na,height,36 in\na,opening,4 in\n";
    for after in [
        "guard,item,reading\na,height,36 in\n",
        "guard,item,reading\nb,height,36 in\na,opening,4 in\n",
        "guard,item,reading\na,height,36 in\na,opening,4 in\na,drop,9 ft\n",
    ] {
        let file = Changing(Cell::new(0), [BEFORE, after]);
        let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(file)];
        let survey = Survey::scan(&files).expect("it can be read");
        let error = survey
            .guards(&mut |_| ControlFlow::Continue(()))
            .expect_err(after);
        assert_eq!(
            error.to_string(),
            "changing.csv: it changed while it was being read"
        );
    }
}

#[test]
fn reading_stops_when_nobody_wants_more() {
    let file = Changing(
        Cell::new(2),
        ["", "guard,item,reading\na,height,36 in\nb,height,36 in\n"],
    );
    let files: Vec<Box<dyn SurveyFile>> = vec![Box::new(file)];
    let survey = Survey::scan(&files).expect("it can be read");
    let mut count = 0;
    survey
        .guards(&mut |_| {
            count += 1;
            ControlFlow::Break(())
        })
        .expect("it can be read");
    assert_eq!((count, survey.guard_count()), (1, 2));
}
