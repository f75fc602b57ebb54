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

#[test]
fn a_folder_holds_a_page_for_each_unit_that_stands_on_its_own() {
    let folder = tempfile::tempdir().expect("a folder");
    let flats =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/reports/surveys/twelve-flats.csv");
    std::fs::copy(flats, folder.path().join("s.csv")).expect("copied");
    for _ in 0..2 {
        let args = ["check", "@s.csv", "--format", "html", "--output", "@pages/"];
        let ran = run_in(folder.path(), &args, "");
        assert_eq!((ran.code, ran.err.as_str(), ran.out.as_str()), (1, "", ""));
    }
    let pages: Vec<(String, String)> = std::fs::read_dir(folder.path().join("pages"))
        .expect("readable")
        .map(|entry| {
            let path = entry.expect("readable").path();
            let name = path
                .file_name()
                .expect("a name")
                .to_string_lossy()
                .into_owned();
            (name, std::fs::read_to_string(&path).expect("readable"))
        })
        .collect();
    assert!(pages.len() > 10, "{}", pages.len());
    let index = &pages
        .iter()
        .find(|(name, _)| name == "index.html")
        .expect("a first page")
        .1;
    for (name, page) in &pages {
        assert!(page.contains("licensed professionals decide"), "{name}");
        assert!(page.contains("small-child-advice"), "{name}");
        if name != "index.html" {
            assert!(index.contains(&format!("href=\"{name}#railing-")), "{name}");
            assert!(page.contains("href=\"index.html\""), "{name}");
        }
    }
}

#[test]
fn whom_a_page_is_for_chooses_what_comes_first_and_never_what_is_true() {
    let own = seen(&page("house.csv", &["--rules", "us-dwelling-2018"]));
    for (whom, begins) in [
        ("request", "Request to repair railings"),
        ("work", "List of work"),
        ("record", "What was not looked at"),
    ] {
        let page = page("house.csv", &["--rules", "us-dwelling-2018", "--as", whom]);
        let text = seen(&page);
        assert!(text.contains(begins), "{whom}");
        // every card of the report stands in each of them
        let cards: Vec<&str> = own
            .split(" falls short · ")
            .skip(1)
            .map(|card| &card[..12])
            .collect();
        assert!(cards.len() > 3);
        for card in cards {
            assert!(text.contains(card), "{whom}: {card}");
        }
        assert!(text.contains("licensed professionals decide"));
    }
    let ran = run_here(&["check", "@tests/reports/surveys/house.csv", "--as", "work"]);
    assert!(ran.err.contains("G332"), "{}", ran.err);
}

#[test]
fn the_disc_is_as_large_on_paper_as_the_ball() {
    let page = page(
        "house.csv",
        &["--rules", "us-dwelling-2018", "--as", "life-size"],
    );
    let discs: Vec<&str> = page.split("A disc to cut out, ").skip(1).collect();
    assert!(!discs.is_empty());
    for disc in discs {
        let says = disc.split(':').next().expect("a size");
        let inches = match says {
            "4 in" => 4.0,
            "3 1/2 in" => 3.5,
            "2 3/8 in" => 2.375,
            "6 in" => 6.0,
            other => panic!("{other}"),
        };
        let r = disc
            .split(" r=\"")
            .nth(1)
            .expect("a circle")
            .split('"')
            .next()
            .expect("its end");
        let r: f64 = r.parse().expect("a number");
        assert!((r * 2.0 - inches * 25.4_f64).abs() < 0.011, "{says}: {r}");
    }
}

/// Relative luminance of `#rgb` or `#rrggbb` (WCAG 2.2, definition of relative
/// luminance, read on its page).
fn luminance(colour: &str) -> f64 {
    let digits: Vec<u8> = colour
        .trim_start_matches('#')
        .chars()
        .map(|digit| u8::try_from(digit.to_digit(16).expect("a digit")).expect("small"))
        .collect();
    let channel = |at: usize| {
        let value = match digits.len() {
            3 => digits[at] * 17,
            _ => digits[at * 2] * 16 + digits[at * 2 + 1],
        };
        let value = f64::from(value) / 255.0;
        if value <= 0.04045 {
            value / 12.92
        } else {
            libm::pow((value + 0.055) / 1.055, 2.4)
        }
    };
    0.2126 * channel(0) + 0.7152 * channel(1) + 0.0722 * channel(2)
}

/// Contrast ratio (WCAG 2.2, definition).
fn contrast(one: &str, other: &str) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

#[test]
fn the_contrast_of_two_colours_is_that_of_the_formula() {
    assert!((contrast("#000", "#fff") - 21.0).abs() < 1e-9);
    // the lightest grey that passes on white
    assert!(contrast("#767676", "#fff") > 4.5 && contrast("#777777", "#fff") < 4.5);
}

#[test]
fn words_and_lines_stand_out_in_light_in_dark_and_in_print() {
    let schemes: Vec<&str> = PAGE_STYLE
        .split(":root {")
        .skip(1)
        .map(|rest| rest.split('}').next().expect("an end"))
        .collect();
    assert_eq!(schemes.len(), 3, "light, dark, print");
    for scheme in schemes {
        let colour = |name: &str| {
            let rest = scheme
                .split(&format!("--{name}: "))
                .nth(1)
                .expect("a colour");
            rest.split(';').next().expect("an end")
        };
        for (front, back) in [
            ("ink", "paper"),
            ("soft", "paper"),
            ("ink", "wash"),
            ("soft", "wash"),
            ("ink", "grey"),
        ] {
            let ratio = contrast(colour(front), colour(back));
            assert!(ratio >= 4.5, "{front} on {back}: {ratio} of {scheme}");
        }
        let ratio = contrast(colour("line"), colour("paper"));
        assert!(ratio >= 3.0, "line on paper: {ratio}");
    }
}

#[test]
fn every_drawing_is_well_formed_and_says_in_words_what_it_shows() {
    let mut drawings = 0;
    for (file, rules) in SURVEYS {
        let page = page(file, rules);
        for part in page.split("<svg class=\"draw\"").skip(1) {
            let end = part.find("</svg>").expect("an end");
            let svg = format!("<svg{}</svg>", &part[..end]);
            let read =
                roxmltree::Document::parse(&svg).unwrap_or_else(|error| panic!("{error}: {svg}"));
            let words = |name: &str| {
                let node = read.descendants().find(|node| node.has_tag_name(name));
                node.and_then(|node| node.text()).unwrap_or_default().len()
            };
            assert!(words("title") > 5 && words("desc") > 20, "{svg}");
            drawings += 1;
        }
    }
    assert!(drawings > 20, "{drawings}");
}

#[test]
fn a_drawing_shows_no_stair_that_nobody_wrote_and_both_of_two_readings() {
    let folder = tempfile::tempdir().expect("a folder");
    let survey = "unit,guard,item,reading,note\n,flight,place,stair,\n,flight,drop,9 ft,\n\
                  ,flight,height,34 1/2 in,\n,flight,height,38 in,\n,flight,opening,3 in,\n";
    std::fs::write(folder.path().join("s.csv"), survey).expect("written");
    let without = run_in(folder.path(), &["check", "@s.csv", "--format", "html"], "").out;
    assert!(
        without.contains("The top was read 34 1/2 in"),
        "both are told"
    );
    assert!(without.contains("and 38 in"));
    assert!(without.contains("the slope is not drawn"));
    assert!(!without.contains("a dotted line joins the noses"));
    let with = format!("{survey},flight,stair triangle,rise 7 going 10 lift 3 in,\n");
    std::fs::write(folder.path().join("s.csv"), with).expect("written");
    let with = run_in(folder.path(), &["check", "@s.csv", "--format", "html"], "").out;
    assert!(with.contains("a dotted line joins the noses"));
}
