//! The demo surveys read without a word.

use std::fs;
use std::path::Path;

use crate::surveys::support::lines;
use crate::surveys::support::read_files;

#[test]
fn demo_surveys_read_without_diagnostics() {
    const GUARDS: &[(&str, usize, usize)] = &[
        ("city-flat-uk.csv", 4, 1),
        ("family-house.csv", 3, 1),
        ("old-house.csv", 4, 1),
        ("load-path.csv", 5, 1),
        ("one-railing.csv", 1, 19),
        ("twelve-flats.csv", 19, 1),
    ];
    for (name, guards, rulesets) in GUARDS {
        let path = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("demo-surveys")
            .join(name);
        let bytes = fs::read(path).expect("the demo surveys are there");
        let read = read_files(&[(name, &bytes)]);
        assert_eq!(read.diagnostics.sorted().len(), 0, "{}", lines(&read));
        assert_eq!(read.guards.len(), *guards, "{name}");
        assert!(read.guards.iter().all(|guard| guard.rows_in_error == 0));
        assert_eq!(read.facts.rules.len(), *rulesets, "{name}");
    }
}
