//! The door of the page: what it answers, and that it answers as the command line does.

use guardrule::phone::Door;
use serde_json::Value;
use serde_json::json;

use crate::harness::run;
use crate::harness::run_here;
use crate::harness::run_in;

fn ask(door: &mut Door, request: &Value) -> Value {
    let answer = door.call(request.to_string().as_bytes());
    serde_json::from_slice(&answer).expect("an answer is JSON")
}

fn begun(survey: &str, rules: &[&str]) -> (Door, Value) {
    let mut door = Door::default();
    let request = json!({"do": "begin", "name": "house.csv", "survey": survey, "today": "2026-05-04", "rules": rules});
    let state = ask(&mut door, &request);
    assert!(state.get("error").is_none(), "{state}");
    (door, state)
}

fn typed(door: &mut Door, text: &str) -> Value {
    ask(door, &json!({"do": "answer", "typed": text}))
}

#[test]
fn what_is_no_request_is_answered_by_an_error_and_nothing_panics() {
    let mut door = Door::default();
    for request in [
        "",
        "{",
        "[]",
        "{}",
        r#"{"do":"dance"}"#,
        r#"{"do":"answer","typed":"n"}"#,
        r#"{"do":"state"}"#,
        r#"{"do":"state","more":1}"#,
        r#"{"do":"guards"}"#,
        r#"{"do":"understand","typed":"n"}"#,
        r#"{"do":"begin","name":"a.csv","survey":"no,header\n1,2\n","rules":[]}"#,
        r#"{"do":"begin","name":"a.csv","survey":"","rules":["atlantis"]}"#,
        r#"{"do":"check","files":[],"form":"poem","today":"2026-05-04"}"#,
    ] {
        let answer = door.call(request.as_bytes());
        let answer: Value = serde_json::from_slice(&answer).expect("JSON");
        let error = answer["error"].as_str().expect(request);
        assert!(!error.is_empty(), "{request}");
    }
}

#[test]
fn a_walk_goes_on_from_the_text_that_was_kept() {
    let (mut door, state) = begun("", &["us-dwelling-2018"]);
    assert_eq!(state["law"], true);
    assert!(state["said"][0]["lines"][0].is_string(), "{state}");
    let mut state = state;
    while state["question"]["is_name"] != true {
        state = typed(&mut door, "");
    }
    state = typed(&mut door, "back porch");
    assert_eq!(state["question"]["place"], "back porch");
    let noted = typed(&mut door, "height: 34 in");
    assert_eq!(noted["said"][0]["kind"], "noted", "{noted}");
    let kept = noted["survey"].as_str().expect("a text").to_owned();
    assert!(kept.contains("back porch,height,34 in"), "{kept}");

    // the text alone says by which rules
    let (mut again, state) = begun(&kept, &[]);
    assert_eq!(state["law"], true);
    assert_eq!(state["guards"], 1);
    assert_eq!(state["question"]["place"], "back porch");
    assert_eq!(ask(&mut again, &json!({"do": "state"}))["survey"], kept);
}

/// What was understood before is not judged twice; whatever was tried, the answer alone counts.
#[test]
fn an_answer_that_was_understood_first_leads_where_it_leads_alone() {
    let answers = [
        "14 months",
        "landing",
        "n",
        "n",
        "y",
        "b",
        "4",
        "35 1/2 in",
        "nonsense",
        "n",
        "h",
    ];
    let (mut alone, _) = begun("", &["us-dwelling-2018"]);
    let (mut tried, _) = begun("", &["us-dwelling-2018"]);
    for (at, answer) in answers.into_iter().enumerate() {
        let mut understand = |text: &str| {
            let half = ask(&mut tried, &json!({"do": "understand", "typed": text}));
            assert!(half["taken"].is_boolean(), "{half}");
        };
        understand(answer);
        // every other time something else was tried last
        if at % 2 == 1 {
            understand("36 in");
        }
        assert_eq!(
            typed(&mut tried, answer),
            typed(&mut alone, answer),
            "{answer}"
        );
    }
    // and what was tried before another answer is not kept for later
    ask(&mut tried, &json!({"do": "understand", "typed": "back"}));
    assert_eq!(typed(&mut tried, "note low"), typed(&mut alone, "note low"));
    assert_eq!(typed(&mut tried, "back"), typed(&mut alone, "back"));
}

#[test]
fn a_half_typed_answer_is_understood_and_not_written() {
    let (mut door, _) = begun("guard,item,reading\nporch,place,porch\n", &[]);
    let before = ask(&mut door, &json!({"do": "state"}))["survey"].clone();
    let understood =
        |door: &mut Door, text: &str| ask(door, &json!({"do": "understand", "typed": text}));
    let good = understood(&mut door, "height: 2'11 1/2\"");
    assert_eq!(good["taken"], true, "{good}");
    let bad = understood(&mut door, "height: 1,250 mm");
    assert_eq!(bad["taken"], false, "{bad}");
    assert!(
        bad["lines"][0]
            .as_str()
            .is_some_and(|line| line.starts_with("Not taken")),
        "{bad}"
    );
    assert_eq!(ask(&mut door, &json!({"do": "state"}))["survey"], before);
}

#[test]
fn a_danger_comes_with_its_act_in_words() {
    let (mut door, _) = begun(
        "guard,item,reading\ndeck,place,deck\n",
        &["us-dwelling-2018"],
    );
    let state = typed(&mut door, "moves when pushed: a lot");
    let said = state["said"].as_array().expect("a list");
    let stop = said
        .iter()
        .find(|one| one["kind"] == "stop")
        .expect("a stop");
    assert_eq!(stop["acts"][0]["act"], "KEEP EVERYBODY OFF IT");
    assert!(!stop["lines"].as_array().expect("lines").is_empty());
    let guards = ask(&mut door, &json!({"do": "guards"}));
    assert_eq!(guards["guards"][0]["verdict"], "falls short");
    assert_eq!(
        guards["guards"][0]["acts"][0]["act"],
        "KEEP EVERYBODY OFF IT"
    );
}

#[test]
fn plain_words_lead_to_rulesets_and_what_is_not_understood_is_said() {
    let mut door = Door::default();
    let mut search = |lines: &[&str]| ask(&mut door, &json!({"do": "search", "lines": lines}));
    // the first question needs no ruleset
    let first = search(&[]);
    assert_eq!(first["question"]["id"], "country");
    assert_eq!(first["chosen"], Value::Null);
    let refused = search(&["Atlantis"]);
    assert_eq!(refused["said"][0]["kind"], "refused", "{refused}");
    assert_eq!(refused["question"]["id"], "country");
    let mut lines = vec!["Ontario"];
    let mut found = search(&lines);
    if found["question"]["id"] == "home" && found["chosen"].is_null() {
        lines.push("house");
        found = search(&lines);
    }
    if found["chosen"].is_null() {
        lines.push("1");
        found = search(&lines);
    }
    let chosen = found["chosen"].as_array().expect("rulesets");
    let ontario = |id: &Value| id.as_str().is_some_and(|id| id.starts_with("ontario"));
    assert!(chosen.iter().any(ontario), "{found}");
    assert_eq!(search(&[""])["chosen"], json!([]), "advice alone");
}

/// Reading the shipped rulesets one by one ends, and finds the same.
#[test]
fn the_rulesets_are_read_one_at_a_time() {
    let mut door = Door::default();
    let mut asked = 1;
    let mut left = ask(&mut door, &json!({"do": "warm"}))["left"]
        .as_u64()
        .expect("a number");
    while left > 0 {
        left = ask(&mut door, &json!({"do": "warm"}))["left"]
            .as_u64()
            .expect("a number");
        asked += 1;
        assert!(asked < 1000);
    }
    assert!(asked > 50, "{asked}");
    let words = json!({"do": "search", "lines": ["Ontario"]});
    assert_eq!(ask(&mut door, &words), ask(&mut Door::default(), &words));
}

#[test]
fn a_report_is_that_of_the_command_line() {
    // a text breaks its lines by how long the file's name is
    let here = concat!(env!("CARGO_MANIFEST_DIR"), "/");
    for name in ["family-house", "one-railing", "city-flat-uk"] {
        let path = format!("{here}demo-surveys/{name}.csv");
        let text = std::fs::read_to_string(&path).expect("it is there");
        let json = run_here(&["check", &path, "--format", "json"]).json();
        let today = &json["tool"]["date"];
        for form in ["json", "html"] {
            let ran = run_here(&["check", &path, "--format", form]);
            let request = json!({"do": "check", "files": [{"name": path, "text": text}], "form": form, "today": today});
            let answer = ask(&mut Door::default(), &request);
            for (part, printed) in [("report", &ran.out), ("diagnostics", &ran.err)] {
                let ours = answer[part].as_str().expect("a text").replace(here, "");
                assert!(ours == *printed, "{path} {form} {part}");
            }
            assert!(ran.out.len() > 100, "{path} {form}");
        }
    }
}

#[test]
fn a_program_without_the_module_says_how_the_page_is_built() {
    let ran = run_here(&["page", "--output", "-"]);
    if cfg!(feature = "page") {
        assert_eq!(ran.code, 0, "{}", ran.err);
        return;
    }
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.err.contains("bash src/phone/build.sh"), "{}", ran.err);
}

#[test]
fn the_page_is_put_around_a_packed_module_and_around_nothing_else() {
    let refused = run(
        &[("a.wasm", "no module")],
        &["page", "--module", "@a.wasm", "--output", "-"],
    );
    assert_eq!((refused.code, refused.out.as_str()), (2, ""));
    assert!(refused.err.contains("packed as .lzma"), "{}", refused.err);

    let folder = tempfile::tempdir().expect("a folder");
    let at = |name: &str| folder.path().join(name);
    let packed = [4, 0, 0, 4, 0, 8, 0, 0, 0, 0, 0, 0, 0, 1, 2, 3];
    std::fs::write(at("a.lzma"), packed).expect("written");
    let args = ["page", "--module", "@a.lzma", "--output", "@page.html"];
    assert_eq!(run_in(folder.path(), &args, "").code, 0);
    let page = std::fs::read_to_string(at("page.html")).expect("it was written");
    // thirteen bits in two letters, worked out apart from the program
    assert!(
        page.contains("data-bytes=\"16\">!%!!!\"!2!!!!!!!!'^!:</script>"),
        "{page}"
    );
    assert!(page.contains("default-src 'none'; script-src 'sha256-"));
    // a page of ours is replaced, somebody's own file is not
    assert_eq!(run_in(folder.path(), &args, "").code, 0);
    std::fs::write(at("page.html"), "unit,guard,item,reading\n").expect("written");
    let refused = run_in(folder.path(), &args, "");
    assert_eq!(refused.code, 2, "{}", refused.err);
}
