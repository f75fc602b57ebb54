//! No circles of imports inside a folder: which file needs which, seen through
//! the re-exports of every `mod.rs`.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use crate::architecture::SourceText;
use crate::architecture::all_sources;

/// A path's words, such as `["judge", "load_path", "Chain"]`.
type Words = Vec<String>;

struct Tree {
    /// Which file a module's words lead to.
    modules: BTreeMap<Words, String>,
    /// What a module hands on: its words and the name, to the words behind it.
    handed_on: BTreeMap<Words, Words>,
}

impl Tree {
    fn new(files: &[SourceText]) -> Tree {
        let modules = files.iter().map(|file| (words_of(file), file.name.clone()));
        let mut tree = Tree {
            modules: modules.collect(),
            handed_on: BTreeMap::new(),
        };
        for file in files.iter().filter(|file| is_a_folder(file)) {
            for path in uses(&file.code, Use::HandedOn) {
                let here = words_of(file);
                let mut target = absolute(&here, &path);
                if target.first().is_none_or(|first| first != &here[0]) {
                    target = [here.clone(), path.clone()].concat();
                }
                let name = path.last().expect("a path has words").clone();
                tree.handed_on.insert([here, vec![name]].concat(), target);
            }
        }
        tree
    }

    /// The file in which the thing of this path stands.
    fn file(&self, path: &[String]) -> Option<&String> {
        let (mut here, mut rest) = (Words::new(), path.to_vec());
        // a name is handed on a few times at most
        for _ in 0..50 {
            let Some(next) = rest.first().cloned() else {
                break;
            };
            let there = [here.clone(), vec![next]].concat();
            if self.modules.contains_key(&there) {
                here = there;
                rest.remove(0);
            } else if let Some(target) = self.handed_on.get(&there) {
                rest.remove(0);
                rest = [target.clone(), rest].concat();
                here.clear();
            } else {
                break;
            }
        }
        self.modules.get(&here)
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Use {
    HandedOn,
    Own,
}

fn is_a_folder(file: &SourceText) -> bool {
    file.name.ends_with("/mod.rs")
}

fn words_of(file: &SourceText) -> Words {
    let inside = file.name.trim_start_matches("src/");
    let inside = inside.trim_end_matches(".rs").trim_end_matches("/mod");
    inside.split('/').map(str::to_owned).collect()
}

/// The words of a path from the root of the crate.
fn absolute(here: &[String], path: &[String]) -> Words {
    match path.first().map(String::as_str) {
        Some("crate") => path[1..].to_vec(),
        Some("self") => [here, &path[1..]].concat(),
        Some("super") => [&here[..here.len() - 1], &path[1..]].concat(),
        _ => path.to_vec(),
    }
}

/// Every path that is handed on by `pub use`, or every other one that begins at
/// the crate, the module or the one above it; groups are taken apart.
fn uses(code: &str, which: Use) -> Vec<Words> {
    let mut found = Vec::new();
    let mut own = String::new();
    for statement in code.split_inclusive(';') {
        let handed = ["pub use ", "pub(super) use ", "pub(crate) use "];
        let begin = handed.iter().find_map(|word| statement.find(word));
        match begin {
            Some(begin) => {
                let path = &statement[begin..].split_once("use ").expect("as found").1;
                found.extend(taken_apart(path.trim_end_matches(';')));
            }
            None => own.push_str(statement),
        }
    }
    if which == Use::HandedOn {
        return found;
    }
    let roots = ["crate::", "self::", "super::"];
    let begins = roots.iter().flat_map(|root| own.match_indices(root));
    let begins = begins.filter(|(at, _)| !own[..*at].ends_with(|c: char| c.is_alphanumeric()));
    begins.flat_map(|(at, _)| taken_apart(&own[at..])).collect()
}

/// `a::{b, c::D}` is `a::b` and `a::c::D`.
fn taken_apart(path: &str) -> Vec<Words> {
    let end = path.find(|c: char| !(c.is_alphanumeric() || c == '_' || c == ':'));
    let (head, tail) = path.split_at(end.unwrap_or(path.len()));
    let words = |text: &str| -> Words {
        let words = text.split("::").filter(|word| !word.is_empty());
        words.map(str::to_owned).collect()
    };
    if !(head.ends_with("::") && tail.starts_with('{')) {
        return vec![words(head)];
    }
    let (mut depth, mut parts, mut part) = (0, Vec::new(), String::new());
    for c in tail.chars() {
        depth += i32::from(c == '{') - i32::from(c == '}');
        match c {
            '{' if depth == 1 => {}
            ',' if depth == 1 => parts.push(std::mem::take(&mut part)),
            '}' if depth == 0 => break,
            _ => part.push(c),
        }
    }
    parts.push(part);
    let parts = parts.iter().filter(|part| !part.trim().is_empty());
    let inner = parts.flat_map(|part| taken_apart(part.trim()));
    inner.map(|rest| [words(head), rest].concat()).collect()
}

/// For each file those of its own folder that it needs.
fn needs(files: &[SourceText]) -> BTreeMap<&str, BTreeSet<&str>> {
    let tree = Tree::new(files);
    let mut needs = BTreeMap::new();
    for file in files {
        let here = words_of(file);
        let mut wanted = BTreeSet::new();
        for path in uses(&file.code, Use::Own) {
            let there = tree.file(&absolute(&here, &path));
            let there = there.and_then(|name| files.iter().find(|other| other.name == *name));
            if let Some(there) = there.filter(|there| there.home == file.home) {
                wanted.insert(there.name.as_str());
            }
        }
        wanted.remove(file.name.as_str());
        needs.insert(file.name.as_str(), wanted);
    }
    needs
}

/// The files that lead back to themselves.
fn in_circles<'f>(needs: &BTreeMap<&'f str, BTreeSet<&'f str>>) -> Vec<&'f str> {
    let leads_back = |start: &&&'f str| {
        let (mut seen, mut ahead) = (BTreeSet::new(), vec![**start]);
        while let Some(file) = ahead.pop() {
            for next in needs.get(file).into_iter().flatten() {
                if seen.insert(*next) {
                    ahead.push(next);
                }
            }
        }
        seen.contains(**start)
    };
    needs.keys().filter(leads_back).copied().collect()
}

#[test]
fn no_files_of_a_folder_need_each_other_in_a_circle() {
    let files = all_sources();
    let needs = needs(&files);
    let known = needs.values().map(BTreeSet::len).sum::<usize>();
    assert!(known > 200, "the imports were found: {known}");
    let circles = in_circles(&needs).into_iter();
    let faults: Vec<String> = circles
        .map(|file| format!("{file} needs {:?}", needs[file]))
        .collect();
    assert!(faults.is_empty(), "circles:\n{}", faults.join("\n"));
}

#[test]
fn a_circle_through_a_re_export_is_seen() {
    let file = |name: &str, code: &str| SourceText {
        name: name.to_owned(),
        home: "reading".to_owned(),
        code: code.to_owned(),
    };
    let files = [
        file(
            "src/reading/mod.rs",
            "mod ball;\npub use ball::{Ball, Rim};\nmod hole;",
        ),
        file(
            "src/reading/ball.rs",
            "use crate::reading::hole::{Hole, Depth};",
        ),
        file("src/reading/hole.rs", "fn f(_: crate::reading::Ball) {}"),
        file("src/reading/plain.rs", "use crate::reading::Ball;"),
    ];
    let needs = needs(&files);
    let circle = ["src/reading/ball.rs", "src/reading/hole.rs"];
    assert_eq!(in_circles(&needs), circle);
    assert!(needs["src/reading/plain.rs"].contains("src/reading/ball.rs"));
}
