//! One name for one type: no two types of the crate share one.

use std::collections::BTreeMap;

use crate::architecture::all_sources;

/// The name of the type that a line begins, where it begins one.
fn type_begun(line: &str) -> Option<&str> {
    let rest = match line.strip_prefix("pub") {
        Some(rest) if rest.starts_with('(') => rest.split_once(") ")?.1,
        Some(rest) => rest.trim_start(),
        None => line,
    };
    let kinds = ["struct ", "enum ", "trait ", "type ", "union "];
    let rest = kinds.iter().find_map(|kind| rest.strip_prefix(kind))?;
    let end = rest.find(|c: char| !c.is_alphanumeric());
    Some(&rest[..end.unwrap_or(rest.len())])
}

#[test]
fn no_two_types_share_a_name() {
    let files = all_sources();
    let mut stands_in = BTreeMap::<&str, Vec<&str>>::new();
    for file in &files {
        for name in file.code.lines().filter_map(type_begun) {
            stands_in.entry(name).or_default().push(&file.name);
        }
    }
    assert!(stands_in.len() > 300, "the types were found");
    stands_in.retain(|_, places| places.len() > 1);
    assert!(stands_in.is_empty(), "{stands_in:#?}");
}
