//! No file makes the loader panic or hang: shipped rulesets with pieces cut,
//! doubled and overwritten, and texts that nest deeply.

use guardrule::input::SourceFile;
use guardrule::rules::embedded;
use guardrule::rules::embedded_ids;
use guardrule::rules::load;
use proptest::prelude::*;

/// Loads a text and asks for every place, which must exist.
fn survives(text: &str) {
    let loaded = load("x.toml", &|name| {
        (name == "x.toml").then(|| SourceFile::new(name, text))
    });
    for diagnostic in &loaded.diagnostics {
        let at = &diagnostic.at.at;
        assert!(at.line() >= 1 && at.column() >= 1);
        assert!(at.text().contains(at.marked()));
        assert!(!diagnostic.message.is_empty());
    }
    let usable = loaded
        .ruleset
        .is_some_and(|ruleset| !ruleset.rules.is_empty());
    assert!(
        usable || !loaded.diagnostics.is_empty(),
        "nothing, and no word why"
    );
}

fn pieces() -> impl Strategy<Value = String> {
    prop_oneof![
        Just(String::new()),
        "[\\[\\]{}\"'=,.#\\n a-z0-9-]{0,6}",
        Just("[[rule]]\n".to_owned()),
        Just("\"\"\"".to_owned()),
        Just("\u{feff}é½".to_owned()),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn a_damaged_ruleset_is_refused_in_words(
        which in 0..embedded_ids().count(),
        cuts in prop::collection::vec((any::<prop::sample::Index>(), 0..40_usize, pieces()), 1..5),
    ) {
        let id = embedded_ids().nth(which).expect("within the count");
        let mut text = embedded(id).expect("a shipped one").text.to_string();
        for (at, length, piece) in cuts {
            let start = text.floor_char_boundary(at.index(text.len().max(1)));
            let end = text.ceil_char_boundary((start + length).min(text.len()));
            text.replace_range(start..end, &piece);
        }
        survives(&text);
    }

    #[test]
    fn any_text_is_refused_in_words(text in "\\PC{0,80}") {
        survives(&text);
    }
}

#[test]
fn deep_and_long_texts_end() {
    let many = 20_000;
    survives(&"[".repeat(many));
    survives(&("a = ".to_owned() + &"[".repeat(many)));
    survives(&("a = ".to_owned() + &"{a=".repeat(many)));
    survives(&("a.".repeat(200_000) + "b = 1"));
    survives(&"x = [\n".repeat(2_000));
    survives(&"y = 1\n".repeat(many));
    survives(&("a = [\n#".to_owned() + &"]".repeat(many) + &"\nb = c".repeat(2_000)));
    survives(&"[[rule]]\nid = \"r\"\n".repeat(2_000));
}
