//! The floor plan: imports point downward only, and what touches the world
//! outside stays in the command-line layer.

mod circles;
mod names;
mod sources;
mod words;

use std::fs;
use std::path::Path;

const FLOORS: &[(&str, u8)] = &[
    ("quantities", 0),
    ("input", 0),
    ("geometry", 1),
    ("statics", 1),
    ("items", 2),
    ("reading", 3),
    ("rules", 4),
    ("survey", 4),
    ("judge", 5),
    ("compare", 6),
    ("remedy", 6),
    ("walk", 6),
    ("report", 7),
    ("phone", 8),
    ("cli", 8),
];

/// What only `cli` may do; clippy catches some of these, this catches all.
const OUTSIDE: &[&str] = &[
    "print!",
    "println!",
    "eprint!",
    "eprintln!",
    "process::exit",
    "std::env",
    "std::fs",
    "std::thread",
    "std::time",
];

struct SourceText {
    name: String,
    home: String,
    code: String,
}

fn floor(module: &str) -> Option<u8> {
    let row = FLOORS.iter().find(|(name, _)| *name == module);
    row.map(|(_, floor)| *floor)
}

/// Every source file but lib.rs and main.rs, comment lines and tests left out.
fn sources(folder: &Path, files: &mut Vec<SourceText>) {
    for entry in fs::read_dir(folder).expect("src is there") {
        let path = entry.expect("readable").path();
        if path.is_dir() {
            sources(&path, files);
            continue;
        }
        let name = path.to_string_lossy().replace('\\', "/");
        let inside = name.split("/src/").last().expect("in src");
        if path.extension().is_none_or(|end| end != "rs") || !inside.contains('/') {
            continue;
        }
        let text = fs::read_to_string(&path).expect("readable");
        let code = text.split("#[cfg(test)]").next().expect("a first part");
        let lines = code
            .lines()
            .filter(|line| !line.trim_start().starts_with("//"));
        files.push(SourceText {
            home: inside.split('/').next().expect("a folder").to_owned(),
            name: format!("src/{inside}"),
            code: lines.collect::<Vec<_>>().join("\n"),
        });
    }
}

fn all_sources() -> Vec<SourceText> {
    let mut files = Vec::new();
    sources(
        &Path::new(env!("CARGO_MANIFEST_DIR")).join("src"),
        &mut files,
    );
    assert!(files.len() > 20, "the sources were found");
    files
}

/// The names that follow `crate::`; empty for a grouped import.
fn names_after_crate(code: &str) -> impl Iterator<Item = &str> {
    code.split("crate::").skip(1).map(|rest| {
        let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_');
        &rest[..end.unwrap_or(rest.len())]
    })
}

#[test]
fn imports_point_downward() {
    let mut faults = Vec::new();
    for file in all_sources() {
        let Some(own) = floor(&file.home) else {
            faults.push(format!("{}: folder {} has no floor", file.name, file.home));
            continue;
        };
        for target in names_after_crate(&file.code) {
            let fine = target == file.home || floor(target).is_some_and(|there| there < own);
            if !fine {
                faults.push(format!("{}: {} reaches {target:?}", file.name, file.home));
            }
        }
        if file.code.contains("super::super") {
            faults.push(format!("{}: super::super", file.name));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn every_floor_has_its_folder() {
    let files = all_sources();
    for (name, _) in FLOORS {
        assert!(
            files.iter().any(|file| file.home == *name),
            "{name} is gone"
        );
    }
}

#[test]
fn only_the_command_line_touches_the_world_outside() {
    let mut faults = Vec::new();
    for file in all_sources().iter().filter(|file| file.home != "cli") {
        for word in OUTSIDE {
            if file.code.contains(word) {
                faults.push(format!("{}: {word}", file.name));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// `lib.rs` lists its modules from the ground up.
#[test]
fn the_modules_are_listed_in_the_order_of_the_floors() {
    let lib = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/lib.rs");
    let lib = fs::read_to_string(lib).expect("src/lib.rs is there");
    let listed: Vec<u8> = lib
        .lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'))
        .map(|name| floor(name).expect("a module with a floor"))
        .collect();
    assert_eq!(listed.len(), FLOORS.len());
    assert!(listed.is_sorted(), "{listed:?}");
}

#[test]
fn the_guide_names_every_folder() {
    let guide = Path::new(env!("CARGO_MANIFEST_DIR")).join("DEVELOPERS.md");
    let guide = fs::read_to_string(guide).expect("the guide is there");
    for (name, _) in FLOORS {
        assert!(
            guide.contains(&format!("`{name}/`")),
            "{name}/ is not in the guide"
        );
    }
}

/// Every file and folder that the guide names by its path is there.
#[test]
fn the_paths_of_the_guide_exist() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let guide = fs::read_to_string(root.join("DEVELOPERS.md")).expect("the guide is there");
    let named = guide.split('`').skip(1).step_by(2).filter(|path| {
        let begins = ["src/", "tests/", "rulesets/", "demo-surveys/"];
        begins.iter().any(|begin| path.starts_with(begin)) && !path.contains([' ', ':'])
    });
    let mut read = 0;
    for path in named.filter(|path| !path.contains("ID.toml")) {
        assert!(root.join(path).exists(), "{path}");
        read += 1;
    }
    assert!(read > 50, "{read}");
}
