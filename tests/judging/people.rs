//! Guards as people have them: what holds each is told within six lines.

use crate::harness::run;
use crate::judging::posts::load_finding;
use crate::judging::posts::survey;

/// Ten guards as people have them: the path is told in at most six lines.
const GUARDS: &[(&str, &[(&str, &str)])] = &[
    (
        "a newel that hides its fixing",
        &[
            ("height", "36 in"),
            ("location", "inside"),
            ("post material", "wood"),
            ("post section", "3 1/2 x 3 1/2 in"),
            ("post fastening", "hidden"),
            ("fastened to", "hidden"),
            ("moves when pushed", "a little"),
        ],
    ),
    (
        "a steel plate on concrete",
        &[
            ("height", "42 in"),
            ("location", "outside"),
            ("post material", "steel tube"),
            ("post section", "2 x 2 in"),
            ("wall thickness", "1/8 in"),
            ("post fastening", "plate"),
            ("post fasteners", "4 x 3/8 in x 3 in"),
            ("fastener spacing", "3 in"),
            ("edge distance", "1/2 in"),
            ("plate thickness", "1/4 in"),
            ("fastened to", "concrete"),
            ("anchor embedment", "2 in"),
            ("concrete edge", "4 in"),
            ("condition", "sound"),
            ("moves when pushed", "no"),
            ("infill", "balusters"),
        ],
    ),
    (
        "a sleeve over a wooden post",
        &[
            ("height", "36 in"),
            ("location", "outside"),
            ("post material", "wood"),
            ("post section", "4x4"),
            ("post fastening", "hidden"),
            ("fastened to", "rim board"),
            ("framing held by", "hidden"),
            ("condition", "wet"),
        ],
    ),
    (
        "a deck with cables",
        &[
            ("height", "36 in"),
            ("location", "outside"),
            ("infill", "cables"),
            ("cable count", "10"),
            ("post material", "wood"),
            ("post section", "4x4"),
            ("post spacing", "5 ft"),
            ("post fastening", "through bolts"),
            ("post position", "outside the rim"),
            ("post fasteners", "2 x 1/2 in x 8 in"),
            ("fastener spacing", "5 in"),
            ("fastened to", "rim board"),
            ("condition", "sound"),
            ("moves when pushed", "no"),
        ],
    ),
    (
        "a notched post on lags",
        &[
            ("height", "36 in"),
            ("location", "outside"),
            ("post material", "wood"),
            ("post section", "4x4"),
            ("notched post", "yes"),
            ("post fastening", "lag screws"),
            ("post fasteners", "2 x 1/2 in x 3 in"),
            ("fastener spacing", "4 in"),
            ("fastened to", "rim board"),
            ("framing held by", "screws into end grain"),
            ("behind the post", "nothing"),
        ],
    ),
    (
        "a bracketed rail end in plasterboard",
        &[
            ("height", "36 in"),
            ("location", "inside"),
            ("rail end fastening", "hollow-wall anchor"),
            ("rail section", "1 1/2 x 3 1/2 in"),
        ],
    ),
    (
        "a flat cap over long bays",
        &[
            ("height", "36 in"),
            ("location", "outside"),
            ("post material", "wood"),
            ("wood species", "cedar"),
            ("lumber grade", "no. 2"),
            ("post section", "6x6"),
            ("post spacing", "8 ft"),
            ("rail section", "5 1/2 x 1 in"),
            ("rail position", "on top"),
            ("rail end fastening", "screws into a post"),
            ("rail end fasteners", "2 x No. 10 x 3 in"),
        ],
    ),
    (
        "a free end of a half wall",
        &[
            ("height", "36 in"),
            ("location", "inside"),
            ("post fastening", "half wall"),
            ("fastened to", "subfloor"),
            ("moves when pushed", "a lot"),
        ],
    ),
    (
        "a turned newel on one rod",
        &[
            ("height", "36 in"),
            ("location", "inside"),
            ("post material", "wood"),
            ("post section", "3 1/2 x 3 1/2 in"),
            ("post neck", "1 3/4 in"),
            ("neck height", "8 in"),
            ("post fastening", "central rod"),
            ("post fasteners", "1 x 1/2 in"),
        ],
    ),
    (
        "an aluminium post in a pocket",
        &[
            ("height", "42 in"),
            ("location", "outside"),
            ("post material", "aluminium tube"),
            ("post section", "1.9 x 1.9 in"),
            ("post fastening", "embedded"),
            ("socket depth", "3 in"),
            ("fastened to", "concrete"),
            ("condition", "surface rust"),
        ],
    ),
];

#[test]
fn ten_guards_as_people_have_them_are_told_in_six_lines_each() {
    assert_eq!(GUARDS.len(), 10);
    let mut told = String::new();
    for (what, rows) in GUARDS {
        let args = [
            "check",
            "@survey.csv",
            "--rules",
            "us-dwelling-2018",
            "--no-guidance",
        ];
        let survey = survey(&[rows.to_vec()]);
        let out = run(&[("survey.csv", &survey)], &args).out;
        let lines: Vec<&str> = out
            .lines()
            .skip_while(|line| {
                // what would mend more is said first where something would not hold
                !line.contains("What holds it (indicative")
                    && !line.starts_with("  A tradesman would also fit")
            })
            .enumerate()
            .take_while(|(at, line)| *at == 0 || line.starts_with("     "))
            .map(|(_, line)| line)
            .collect();
        // where nothing is wrong a guard has no block, and --full tells it all
        let nothing_wrong = out.contains("NOTHING WRONG FOUND");
        // where it gives way already that is what is said
        let silent = lines.is_empty() && (nothing_wrong || out.contains("KEEP EVERYBODY OFF IT"));
        assert!(
            silent || (2..=6).contains(&lines.len()),
            "{what}: {lines:#?}"
        );
        let full = run(
            &[("survey.csv", &survey)],
            &[&args[..], &["--full"]].concat(),
        )
        .out;
        assert!(full.contains("It can take"), "{what}: the table");
        told.push_str(&format!("{what}\n{}\n\n", lines.join("\n")));
        assert_ne!(load_finding(rows)["verdict"], "meets", "{what}");
    }
    insta::assert_snapshot!(told);
}
