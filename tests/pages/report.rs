//! The report as a page.

use base64::Engine;
use guardrule::report::PAGE_POLICY;
use guardrule::report::PAGE_STYLE;
use sha2::Digest;
use sha2::Sha256;

use std::path::Path;

use crate::harness::run_here;
use crate::harness::run_in;

const SURVEYS: [(&str, &[&str]); 3] = [
    ("one-landing.csv", &[]),
    ("house.csv", &["--rules", "us-dwelling-2018"]),
    ("twelve-flats.csv", &[]),
];

fn page(file: &str, more: &[&str]) -> String {
    let path = format!("@tests/reports/surveys/{file}");
    run_here(&[&["check", path.as_str(), "--format", "html"], more].concat()).out
}

/// What a reader sees: tags and styles left out, blanks as one.
fn seen(page: &str) -> String {
    let (_, body) = page.split_once("<body>").expect("a body");
    let mut text = String::new();
    let mut inside = false;
    for sign in body.chars() {
        match sign {
            '<' => inside = true,
            '>' => inside = false,
            other if !inside => text.push(other),
            _ => {}
        }
    }
    let text = text.replace("&lt;", "<").replace("&gt;", ">");
    let text = text.replace("&quot;", "\"").replace("&amp;", "&");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_policy_lets_nothing_in_but_the_style_of_the_page() {
    let hash = base64::engine::general_purpose::STANDARD.encode(Sha256::digest(PAGE_STYLE));
    assert_eq!(
        PAGE_POLICY,
        format!(
            "default-src 'none'; style-src 'sha256-{hash}'; img-src data:; base-uri 'none'; \
             form-action 'none'"
        )
    );
    assert!(!PAGE_STYLE.contains('<') && !PAGE_STYLE.contains("url("));
    let page = page("house.csv", &[]);
    assert!(page.contains(&format!("<style>{PAGE_STYLE}</style>")));
    for never in [
        "style=", "<script", "<link", "<iframe", "http://", "https://",
    ] {
        assert!(!page.contains(never), "{never}");
    }
}

#[test]
fn every_reading_and_every_note_stands_in_the_page() {
    for (file, rules) in SURVEYS {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reports/surveys");
        let mut reader = csv::Reader::from_path(path.join(file)).expect("the survey is there");
        let headers = reader.headers().expect("a header").clone();
        let column = |name: &str| headers.iter().position(|h| h == name).expect("a column");
        let (reading, note) = (column("reading"), column("note"));
        let text = seen(&page(file, rules));
        let mut cells = 0;
        for row in reader.records() {
            let row = row.expect("a row");
            for cell in [&row[reading], &row[note]] {
                assert!(text.contains(cell), "{file}: {cell}");
                cells += 1;
            }
        }
        assert!(cells > 10, "{cells}");
    }
}

#[test]
fn what_a_survey_says_is_text_in_the_page_and_nothing_else() {
    let folder = tempfile::tempdir().expect("a folder");
    let evil = "<img src=x onerror=alert(1)>";
    let survey = format!(
        "unit,guard,item,reading,note\n,,property,\"{evil}\"\"&amp;\",\n{evil},{evil},place,deck,{evil}\n\
         {evil},{evil},drop,9 ft,</style><script>alert(2)</script>\n{evil},{evil},height,34 in,\u{202e}txet\n\
         {evil},{evil},my own {evil},{evil},{evil}\n"
    );
    std::fs::write(folder.path().join("s.csv"), survey).expect("written");
    let ran = run_in(folder.path(), &["check", "@s.csv", "--format", "html"], "");
    for never in ["<img", "<script", "</style><"] {
        let body = ran.out.split_once("</style>").expect("a style").1;
        assert!(!body.contains(never), "{never}: {}", ran.err);
    }
    let text = seen(&ran.out);
    assert!(text.contains(evil), "{text}");
    assert!(text.contains("</style><script>alert(2)</script>"), "{text}");
    assert!(
        !text.contains('\u{202e}'),
        "directions of writing are not changed"
    );
}

#[test]
fn danger_stands_before_the_table_and_the_deferral_on_every_sheet() {
    let page = page("twelve-flats.csv", &[]);
    let places: Vec<usize> = [
        "No building rules were checked",
        ">Tonight<",
        "What needs doing, worst first",
        "Nothing wrong found",
        "id=\"railing-1\"",
        ">Know<",
    ]
    .iter()
    .map(|part| page.find(part).unwrap_or_else(|| panic!("{part}")))
    .collect();
    assert!(places.is_sorted(), "{places:?}");
    let sheets = page.matches("<div class=\"matter\">").count();
    assert!(sheets > 15, "{sheets}");
    assert_eq!(page.matches("<div class=\"runf\">").count(), sheets);
    for foot in page.split("<div class=\"runf\">").skip(1) {
        let foot = foot.split("</div>").next().expect("a foot");
        assert!(foot.contains("The local authority and licensed professionals decide"));
    }
}

#[test]
fn nothing_is_called_safe() {
    for (file, rules) in SURVEYS {
        let text = seen(&page(file, rules)).to_lowercase();
        for (at, _) in text.match_indices("safe") {
            let before = &text[..at];
            let after = &text[at..];
            let said = ["othing here is called ", "on the "]
                .iter()
                .any(|said| before.ends_with(said));
            // the titles of sources are other people's words
            assert!(
                said || after.starts_with("safety"),
                "{file}: {}",
                &text[at.saturating_sub(60)..at + 20]
            );
        }
    }
}
