//! What a comment rests on is a published source, which a reader can find.

use std::fs;
use std::path::Path;

/// Working papers that are not in the repository; written in two halves, so that
/// this file does not cite them.
const UNPUBLISHED: [&str; 2] = [concat!("fac", "ts/"), concat!("design", ".md")];

/// A row of somebody's table by its number, as a comment or a label cites it, and
/// not a row by its number `of` something that is named.
fn cites_a_row(line: &str) -> bool {
    let line = line.trim_start();
    let spoken = ["//", "#", "\"row", "row"]
        .iter()
        .any(|begin| line.starts_with(begin));
    let words: Vec<&str> = line.split_whitespace().collect();
    let number = |word: &str| word.starts_with(|c: char| c.is_ascii_digit());
    let cited = |at: usize| {
        let word = words[at].trim_start_matches(['(', '"', '/', '`']);
        ["row", "rows", "Row", "Rows"].contains(&word)
            && words.get(at + 1).is_some_and(|next| number(next))
            && words.get(at + 2) != Some(&"of")
    };
    spoken && (0..words.len()).any(cited)
}

fn uncited(folder: &Path, faults: &mut Vec<String>, read: &mut usize) {
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("readable").path();
        if path.is_dir() {
            uncited(&path, faults, read);
            continue;
        }
        let ends = |end: &str| path.extension().is_some_and(|found| found == end);
        if !ends("rs") && !ends("py") {
            continue;
        }
        *read += 1;
        let text = fs::read_to_string(&path).expect("readable");
        for (number, line) in (1..).zip(text.lines()) {
            let paper = UNPUBLISHED.iter().any(|paper| line.contains(paper));
            if paper || cites_a_row(line) {
                faults.push(format!("{}:{number}: {}", path.display(), line.trim()));
            }
        }
    }
}

#[test]
fn sources_are_published_ones() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (mut faults, mut read) = (Vec::new(), 0);
    for folder in ["src", "tests", "benches"] {
        uncited(&root.join(folder), &mut faults, &mut read);
    }
    assert!(read > 100, "{read} files");
    assert!(
        faults.is_empty(),
        "name title, clause, edition and how it was read:\n{}",
        faults.join("\n")
    );
}

#[test]
fn a_row_is_cited_where_a_comment_or_label_gives_its_number() {
    // in two halves, so that this file cites none
    let of = |begin: &str, rest: &str| format!("{begin}{rest}");
    for cited in [
        of("/// so it is, row", " 7"),
        of("\"row", " 12, second\","),
        of("row", " 3 | a | b"),
        of("# rows", " 1 to 6"),
    ] {
        assert!(cites_a_row(&cited), "{cited}");
    }
    for other in [
        "/// row 7 of the sheet",
        "let row = 3;",
        "say(\"row 3\");",
        "/// a row a guard",
    ] {
        assert!(!cites_a_row(other), "{other}");
    }
}
