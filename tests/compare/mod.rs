//! Two rounds of one survey: what may be called mended, and what may not.

mod lists;
mod rounds;

use std::fs;
use std::path::Path;

use crate::harness::Ran;
use crate::harness::run_in;

/// A notebook of guards that meet `us-dwelling-2018` but for these rows.
pub(crate) fn survey(date: &str, guards: &[(&str, &[(&str, &str)])]) -> String {
    let mut text = format!("unit,guard,item,reading,note\n,,date,{date},\n,,use,dwelling,\n");
    for (name, rows) in guards {
        let usual = [
            ("place", "landing"),
            ("drop", "9 ft"),
            ("height", "37 in"),
            ("opening", "3 in"),
            ("bottom gap", "2 in"),
            ("infill", "balusters"),
            ("openings checked", "every one"),
        ];
        let own = |item: &str| rows.iter().any(|(other, _)| *other == item);
        for (item, reading) in usual
            .iter()
            .filter(|(item, _)| !own(item))
            .chain(rows.iter())
        {
            if !reading.is_empty() {
                text.push_str(&format!("1A,{name},{item},{reading},\n"));
            }
        }
    }
    text
}

pub(crate) fn written(folder: &Path, before: &str, after: &str) {
    fs::write(folder.join("before.csv"), before).expect("written");
    fs::write(folder.join("after.csv"), after).expect("written");
}

pub(crate) fn compare(before: &str, after: &str, more: &[&str]) -> Ran {
    let folder = tempfile::tempdir().expect("a folder");
    written(folder.path(), before, after);
    let args = [
        "compare",
        "@before.csv",
        "@after.csv",
        "--rules",
        "us-dwelling-2018",
        "--no-guidance",
    ];
    run_in(folder.path(), &[&args, more].concat(), "")
}
