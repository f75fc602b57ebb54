//! What must hold of every report, whatever the names, notes and spans.

use std::sync::Arc;

use proptest::prelude::Just;
use proptest::prelude::Strategy;
use proptest::prelude::any;
use proptest::prelude::prop_oneof;
use proptest::proptest;

use guardrule::input::Code;
use guardrule::input::Diagnostic;
use guardrule::input::Diagnostics;
use guardrule::input::Excerpt;
use guardrule::report::FileNames;
use guardrule::report::WIDTH;
use guardrule::report::diagnostics_text;

use crate::reports::scenes::Scene;
use crate::reports::scenes::guard;
use crate::reports::scenes::plain;

/// Names and notes of any length and kind, escape sequences and wide letters among them.
fn cell() -> impl Strategy<Value = String> {
    prop_oneof![
        any::<String>(),
        "[a-z ]{0,400}",
        "[a-z]{100,300}",
        "(\u{1b}\\[31m|\r|\n|\t|界|é|=|\u{202e}|\u{0}| ){0,60}",
        Just("\u{1b}]0;title\u{7}".to_owned()),
    ]
}

/// Control characters and marks that turn the direction of writing.
fn obeyed(text: &str) -> Option<char> {
    text.chars().find(|c| {
        (c.is_control() && *c != '\n')
            || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
    })
}

proptest! {
    #[test]
    fn no_line_of_text_is_too_long_and_none_paints_the_terminal(
        name in cell(), unit in cell(), note in cell(), property in cell(), written in cell()
    ) {
        let rows = [
            ("place", "deck", note.as_str()),
            ("drop", "9 ft", ""),
            ("height", "35 in", note.as_str()),
            ("height", written.as_str(), note.as_str()),
            ("opening", "not reached", note.as_str()),
        ];
        let mut scene = Scene::new(
            &["us-dwelling-2018", "small-child-advice"],
            vec![guard(&unit, &name, &rows)],
        );
        scene.facts.property = Some(property);
        scene.facts.files = vec![Arc::from(name.as_str())];
        for width in [40, 60, 100, 80] {
            scene.width = width;
            for line in scene.text().lines() {
                assert!(textwrap::core::display_width(line) <= width, "{width}: {line:?}");
            }
        }
        let text = scene.text();
        assert_eq!(obeyed(&text), None);
        assert_eq!(obeyed(&scene.csv().replace("\r\n", "\n")), None);
    }

    #[test]
    fn styles_are_all_that_differs(name in cell()) {
        let rows = [("place", "landing", ""), ("drop", "9 ft", ""), ("height", "35 in", "")];
        let scene = Scene::new(&["us-dwelling-2018"], vec![guard("", &name, &rows)]);
        let styled = scene.styled_text();
        assert!(styled.contains("\u{1b}["));
        assert_eq!(plain(&styled), scene.text());
    }

    #[test]
    fn any_span_of_any_text_is_rendered(
        text in cell(), start in 0_usize..500, length in 0_usize..500, line in 0_u64..5,
        says in cell(), also in cell()
    ) {
        let file: Arc<str> = says.as_str().into();
        let at = Excerpt::new(Arc::clone(&file), line, &text, start..start + length);
        let other = Excerpt::new(file, line + 1, &also, length..start + length);
        let code = Code { number: 299, title: "a fault of the test" };
        let mut diagnostics = Diagnostics::new();
        diagnostics.push(
            Diagnostic::error(code, says.clone(), at).label(says).also(other, also.clone()).help(also),
        );
        let mut out = Vec::new();
        diagnostics_text(&mut out, &diagnostics, WIDTH, FileNames::Whole).expect("a Vec takes everything");
        let out = plain(&String::from_utf8(out).expect("UTF-8"));
        assert!(out.contains("error[G299]"), "{out}");
        assert_eq!(obeyed(&out), None, "{out:?}");
    }
}

fn shown(diagnostics: &Diagnostics) -> String {
    let mut out = Vec::new();
    diagnostics_text(&mut out, diagnostics, WIDTH, FileNames::Whole)
        .expect("a Vec takes everything");
    plain(&String::from_utf8(out).expect("UTF-8"))
}

const CODE: Code = Code {
    number: 201,
    title: "a bare inch mark",
};

#[test]
fn a_diagnostic_shows_line_and_column() {
    let mut diagnostics = Diagnostics::new();
    let line = "A,stair é,height,33 1/2\",note";
    let start = line.find("33").expect("there");
    diagnostics.push(
        Diagnostic::warning(
            CODE,
            "this reading has a bare inch mark",
            Excerpt::new("walk.csv".into(), 12, line, start..start + 7),
        )
        .label("read as 33 1/2 in")
        .also(
            Excerpt::new("walk.csv".into(), 3, "A,stair é,height,33 in", 0..1),
            "first given here",
        )
        .help("write 33 1/2 in; elsewhere the mark can swallow the rows below"),
    );
    diagnostics.push(Diagnostic::error(
        CODE,
        "this file is empty",
        Excerpt::whole("none.csv".into()),
    ));
    insta::assert_snapshot!(shown(&diagnostics));
}

#[test]
fn a_long_line_is_cut_around_the_mark_and_its_column_stays() {
    let mut diagnostics = Diagnostics::new();
    let line = format!("{}BAD{}", "a,".repeat(400), ",b".repeat(400));
    let at = Excerpt::new("wide.csv".into(), 7, &line, 800..803);
    assert_eq!((at.marked(), at.column()), ("BAD", 801));
    diagnostics.push(Diagnostic::error(CODE, "this cell is bad", at));
    let text = shown(&diagnostics);
    assert!(text.contains("wide.csv:7:801"), "{text}");
    assert!(
        text.lines().all(|line| line.chars().count() < 140),
        "{text}"
    );
    insta::assert_snapshot!(text);
}

#[test]
fn the_mark_of_several_lines_ends_with_the_first() {
    let mut diagnostics = Diagnostics::new();
    let text = "x,y,\"runs on\nand on\nand on\",z";
    let at = Excerpt::new("run.csv".into(), 4, text, 4..text.len() - 2);
    diagnostics.push(Diagnostic::error(CODE, "this cell runs on", at));
    insta::assert_snapshot!(shown(&diagnostics));
}

#[test]
fn what_was_left_out_is_counted() {
    let mut diagnostics = Diagnostics::new();
    for line in 1..=400 {
        let at = Excerpt::new("many.csv".into(), line, "bad", 0..3);
        diagnostics.push(Diagnostic::error(CODE, "this cell is bad", at));
    }
    let text = shown(&diagnostics);
    assert_eq!(text.matches("error[G201]").count(), 20);
    let last = text.trim_end().lines().last().expect("a line");
    assert_eq!(
        last,
        "many.csv: and 380 more of these (G201: a bare inch mark)"
    );
}
