//! Sentences for a reader stand where every form of report finds them, and not where a
//! verdict is worked out.

use crate::architecture::all_sources;

/// Words in a row that make a phrase for a reader.
const A_PHRASE: usize = 4;

/// Where it is published what a link takes: citations, and no sentences.
const CITATIONS: &str = "src/judge/load_path/sources.rs";

/// The text literals of a file without comments.
fn literals(code: &str) -> Vec<String> {
    let mut all = Vec::new();
    let mut rest = code.chars().peekable();
    while let Some(next) = rest.next() {
        match next {
            // a quotation mark as a character, or a lifetime
            '\'' if rest.peek() == Some(&'"') => {
                rest.next();
            }
            '"' => {
                let mut text = String::new();
                while let Some(next) = rest.next().filter(|next| *next != '"') {
                    text.push(next);
                    if next == '\\' {
                        text.extend(rest.next());
                    }
                }
                all.push(text);
            }
            _ => {}
        }
    }
    all
}

/// How many words a literal has; names in braces, numbers and symbols are none.
fn words(literal: &str) -> usize {
    let outside = literal
        .split('{')
        .map(|part| part.split_once('}').map_or(part, |(_, after)| after));
    let words = outside.flat_map(|part| part.split(|c: char| !c.is_alphabetic() && c != '\''));
    words.filter(|word| word.len() > 1).count()
}

#[test]
fn what_judges_hands_over_reasons_and_no_sentences() {
    let (mut faults, mut read) = (Vec::new(), 0);
    for file in all_sources().iter().filter(|file| file.home == "judge") {
        // what an attribute says is for whoever reads the code
        let code = file.code.lines();
        let code: Vec<&str> = code
            .filter(|line| !line.trim_start().starts_with('#'))
            .collect();
        for literal in literals(&code.join("\n")) {
            read += 1;
            if words(&literal) >= A_PHRASE && file.name != CITATIONS {
                faults.push(format!("{}: {literal:?}", file.name));
            }
        }
    }
    assert!(read > 50, "{read} literals");
    assert!(
        faults.is_empty(),
        "a reason or a quantity, worded in report/:\n{}",
        faults.join("\n")
    );
}

#[test]
fn a_phrase_is_four_words_in_a_row() {
    let code = r#"let one = '"'; say("the rail is too low"); format!("{} and {}", a, b);"#;
    let found = literals(code);
    assert_eq!(found, ["the rail is too low", "{} and {}"]);
    assert_eq!(
        found.iter().map(|text| words(text)).collect::<Vec<_>>(),
        [5, 1]
    );
    assert_eq!(words("{moment:.3} N m in the {}"), 2);
}
