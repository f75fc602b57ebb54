//! From the name of a ruleset to the ruleset, with everything it extends.

use std::collections::BTreeMap;
use std::ops::Range;
use std::sync::Arc;

use toml::de::DeTable;

use crate::input::Diagnostic;
use crate::input::Excerpt;
use crate::input::SourceFile;
use crate::input::nearest;
use crate::items::Hazard;
use crate::rules::asks_nothing::asks_nothing;
use crate::rules::codes::RuleFault;
use crate::rules::embedded::embedded;
use crate::rules::embedded::embedded_ids;
use crate::rules::faults::Faults;
use crate::rules::fields::Fields;
use crate::rules::fields::Text;
use crate::rules::head::Head;
use crate::rules::merge::Own;
use crate::rules::merge::OwnRule;
use crate::rules::merge::merge;
use crate::rules::model::Ruleset;
use crate::rules::rule::Examples;
use crate::rules::rule::caution;
use crate::rules::rule::rule;
use crate::rules::sources::Sources;
use crate::rules::straddle;
use crate::rules::syntax::readable;
use crate::rules::unread::Unread;
use crate::rules::unread::UnreadPart;

/// How many files a chain of `extends` may hold.
const LONGEST_CHAIN: usize = 4;

/// A ruleset with what is wrong with its files.
#[derive(Clone, Debug)]
pub struct LoadedRuleset {
    /// The ruleset; `None` where nothing usable remains (see
    /// [`Ruleset::unreadable`]). Where some of its parts are faulty it holds the
    /// others and names those in [`Ruleset::unread`], and the diagnostics hold
    /// the errors.
    pub ruleset: Option<Ruleset>,
    /// What is wrong, by file and place.
    pub diagnostics: Vec<Diagnostic>,
}

/// Loads a ruleset by the id of a shipped one, or by a name that `lookup` resolves.
///
/// `lookup` is asked for everything that is no shipped id, in `extends` too;
/// this module opens nothing itself.
///
/// # Errors
/// Every fault of every file is a diagnostic: syntax, keys, items, words,
/// limits, sources, examples, chains of `extends` that are a circle or longer
/// than four files.
pub fn load(name: &str, lookup: &dyn Fn(&str) -> Option<SourceFile>) -> LoadedRuleset {
    load_with(name, lookup, Examples::Read, FilePortion::Whole)
}

/// As [`load`], without the worked examples: neither they nor their faults are
/// read, since no guard is judged by them.
///
/// # Errors
/// As [`load`], but for faults of examples.
pub fn load_to_judge(name: &str, lookup: &dyn Fn(&str) -> Option<SourceFile>) -> LoadedRuleset {
    load_with(name, lookup, Examples::LeftOut, FilePortion::Whole)
}

/// The head of a shipped ruleset and of what it extends: where it holds and what it covers,
/// which is all that [`find`](crate::rules::find) asks. It has none of its rules, says so
/// in [`Ruleset::unread`], and so lets no guard meet.
#[must_use]
pub fn load_head(id: &str) -> Option<Ruleset> {
    load_with(id, &|_| None, Examples::LeftOut, FilePortion::Head).ruleset
}

fn load_with(
    name: &str,
    lookup: &dyn Fn(&str) -> Option<SourceFile>,
    examples: Examples,
    portion: FilePortion,
) -> LoadedRuleset {
    let mut diagnostics = Vec::new();
    let loading = Loading {
        lookup,
        examples,
        portion,
    };
    let ruleset = match open(name, lookup) {
        Some(file) => read(&file, &loading, &mut Vec::new(), &mut diagnostics),
        None => {
            let at = Excerpt::whole(name.into());
            let diagnostic = Diagnostic::error(RuleFault::NotFound.code(), not_found(name), at)
                .help(nearby(name));
            diagnostics.push(diagnostic);
            None
        }
    };
    diagnostics.sort_by_key(|diagnostic| {
        let at = &diagnostic.at.at;
        let file = Arc::clone(at.file());
        (file, at.line(), at.column(), diagnostic.code.number)
    });
    LoadedRuleset {
        ruleset,
        diagnostics,
    }
}

/// How a ruleset is loaded, with all that it extends.
struct Loading<'l> {
    lookup: &'l dyn Fn(&str) -> Option<SourceFile>,
    examples: Examples,
    portion: FilePortion,
}

/// How much of each file is read.
#[derive(Clone, Copy, PartialEq, Eq)]
enum FilePortion {
    /// What stands before its first rule.
    Head,
    Whole,
}

/// A file up to its first rule.
fn head_of(file: &SourceFile) -> SourceFile {
    let end = file
        .text
        .find("\n[[rule]]")
        .map_or(file.text.len(), |at| at + 1);
    SourceFile::new(&file.name, &file.text[..end])
}

fn open(name: &str, lookup: &dyn Fn(&str) -> Option<SourceFile>) -> Option<SourceFile> {
    embedded(name).or_else(|| lookup(name))
}

fn not_found(name: &str) -> String {
    format!(
        "there is no ruleset \"{name}\": it is none of the program's own, and no such file was found"
    )
}

fn nearby(name: &str) -> String {
    if let Some((first, rest)) = name.split_once(';') {
        let (first, second) = (first.trim(), rest.split(';').next().unwrap_or(rest).trim());
        return format!("name one ruleset at a time: --rules {first} --rules {second}");
    }
    let list = "guardrule rules list shows the program's own";
    let stem = name.trim_end_matches(|c: char| c.is_ascii_digit() || c == '-');
    let begins = |id: &&str| id.starts_with(stem) && id[stem.len()..].starts_with('-');
    let alike: Vec<&str> = embedded_ids().filter(begins).collect();
    match (alike.as_slice(), nearest(name, embedded_ids())) {
        // of several editions or towns, never the nearest alone: it may be the wrong one
        ([], Some(near)) => format!("write {near}, or the path of a file; {list}"),
        ([], None) if name.ends_with(".toml") || name.contains(['/', '\\']) => {
            format!("write the path of a file that is there; {list}")
        }
        ([], None) => format!(
            "guardrule rules find \"{}\" looks for one; or write the path of a file",
            stem.replace(['-', '_'], " ").trim()
        ),
        ([one], _) => format!("write {one}, or the path of a file; {list}"),
        (several, _) => format!(
            "write one of {}, or the path of a file; {list}",
            several.join(", ")
        ),
    }
}

/// Reads a file and those it extends; `trail` holds the files that led here.
fn read(
    file: &SourceFile,
    loading: &Loading<'_>,
    trail: &mut Vec<Arc<str>>,
    diagnostics: &mut Vec<Diagnostic>,
) -> Option<Ruleset> {
    trail.push(Arc::clone(&file.name));
    let head = (loading.portion == FilePortion::Head).then(|| head_of(file));
    let file = head.as_ref().unwrap_or(file);
    let mut faults = Faults::new(file);
    let mended;
    let (mut document, errors) = DeTable::parse_recoverable(&file.text);
    if !errors.is_empty() {
        mended = readable(&mut faults);
        (document, _) = DeTable::parse_recoverable(&mended);
    }
    let of_syntax = faults.errors();
    let fields = Fields::new(document.get_ref(), 0..0);
    let parts = Parts::of(&fields, file.text.len(), &mut faults);
    let head = Head::read(&fields, &parts.head, &mut faults);
    warn_of_borrowed_id(&head, &mut faults);
    let base = match &head.extends {
        Some(extends) => match base(extends, loading, trail, diagnostics, &mut faults) {
            Some(base) => Base::FoundRules(Box::new(base)),
            None => Base::Unusable,
        },
        None => Base::None,
    };
    let mut sources = Sources::read(&fields, &mut faults);
    if parts.head_broken(&faults) || matches!(base, Base::Unusable) {
        sources.set_incomplete();
    }
    if let Base::FoundRules(base) = &base {
        sources.inherit(&base.sources);
    }
    let head_whole = faults.errors() == of_syntax && !parts.head_broken(&faults);
    let mut own = Own::default();
    own_rules(
        &parts,
        loading.examples,
        &mut sources,
        &mut own,
        &mut faults,
    );
    own_cautions(&parts, &mut sources, &mut own, &mut faults);
    own_silences(
        &parts,
        loading.examples,
        &mut sources,
        &mut own,
        &mut faults,
    );
    if loading.portion == FilePortion::Head {
        own.unread
            .push(unread(UnreadPart::Whole, None, 0..0, &faults));
    }
    if !head_whole {
        own.unread
            .push(unread(UnreadPart::Head, None, 0..0, &faults));
    }
    if fields.value("rule").is_none() && matches!(base, Base::None) && !parts.head_broken(&faults) {
        faults.error_help(
            RuleFault::NoRules,
            &(0..0),
            "the ruleset has no rules",
            "add [[rule]] with id, hazard, clause, says, source and check; or extends = \"…\"",
        );
    }
    if !own.rules.is_empty() && !parts.anything_broken(&faults) {
        sources.warn_unused(&mut faults);
    }
    let ruleset = match base {
        Base::Unusable => None,
        Base::FoundRules(base) => merge(head, own, sources, Some(*base), &mut faults),
        Base::None => merge(head, own, sources, None, &mut faults),
    };
    diagnostics.extend(faults.into_diagnostics());
    trail.pop();
    ruleset
}

/// What a file extends.
enum Base {
    None,
    FoundRules(Box<Ruleset>),
    Unusable,
}

/// The parts of a file: its head, its rules, its cautions and its silences, each
/// with its extent.
struct Parts<'t> {
    head: Range<usize>,
    rules: Vec<(Fields<'t>, Range<usize>)>,
    cautions: Vec<(Fields<'t>, Range<usize>)>,
    silences: Vec<(Fields<'t>, Range<usize>)>,
    sources: Vec<Range<usize>>,
}

impl<'t> Parts<'t> {
    fn of(fields: &Fields<'t>, length: usize, faults: &mut Faults) -> Parts<'t> {
        let rules = fields.tables("rule", "[[rule]]", faults);
        let cautions = fields.tables("caution", "[[caution]]", faults);
        let silences = fields.tables("asks-nothing", "[[asks-nothing]]", faults);
        let sources: Vec<usize> = fields
            .value("source")
            .and_then(|value| value.get_ref().as_table())
            .map(|table| table.keys().map(|key| key.span().start).collect())
            .unwrap_or_default();
        let tables = rules.iter().chain(&cautions).chain(&silences);
        let mut starts: Vec<usize> = tables.map(|table| table.at.start).collect();
        let first = starts.iter().min().copied().unwrap_or(length);
        starts.extend(&sources);
        starts.sort_unstable();
        // up to the place before the next part, so that neighbours do not touch
        let extent = |start: usize| {
            let after = starts.partition_point(|other| *other <= start);
            start..starts.get(after).map_or(length, |next| next - 1)
        };
        let with_extent = |parts: Vec<Fields<'t>>| {
            let mut parts: Vec<(Fields<'t>, Range<usize>)> = parts
                .into_iter()
                .map(|fields| {
                    let start = fields.at.start;
                    (fields, extent(start))
                })
                .collect();
            parts.sort_by_key(|(_, extent)| extent.start);
            parts
        };
        Parts {
            head: 0..first.saturating_sub(1),
            rules: with_extent(rules),
            cautions: with_extent(cautions),
            silences: with_extent(silences),
            sources: sources.into_iter().map(extent).collect(),
        }
    }

    fn head_broken(&self, faults: &Faults) -> bool {
        std::iter::once(&self.head)
            .chain(&self.sources)
            .any(|extent| faults.broken(extent))
    }

    fn anything_broken(&self, faults: &Faults) -> bool {
        let tables = self.rules.iter().chain(&self.cautions);
        let tables = tables.chain(&self.silences);
        self.head_broken(faults) || tables.map(|(_, extent)| extent).any(|e| faults.broken(e))
    }
}

/// A shipped id on a file of somebody's own would make reports name the wrong rules.
fn warn_of_borrowed_id(head: &Head<'_>, faults: &mut Faults) {
    let Some(id) = &head.id else {
        return;
    };
    if embedded(id.value).is_some() && embedded(&faults.file().name).is_none() {
        faults.warning(
            RuleFault::GivenTwice,
            &id.at,
            format!(
                "the id {} is that of one of the program's own rulesets",
                id.value
            ),
            "give the file an id of its own, so that reports can tell the two apart",
        );
    }
}

/// The ruleset that a file extends, where it can be used.
fn base(
    extends: &Text<'_>,
    loading: &Loading<'_>,
    trail: &mut Vec<Arc<str>>,
    diagnostics: &mut Vec<Diagnostic>,
    faults: &mut Faults,
) -> Option<Ruleset> {
    let Some(file) = open(extends.value, loading.lookup) else {
        let help = nearby(extends.value);
        faults.error_help(
            RuleFault::NotFound,
            &extends.at,
            not_found(extends.value),
            help,
        );
        return None;
    };
    if trail.contains(&file.name) {
        let mut circle: Vec<&str> = trail.iter().map(|name| &**name).collect();
        circle.push(&file.name);
        let message = format!(
            "these rulesets extend each other in a circle: {}",
            circle.join(" extends ")
        );
        faults.error(RuleFault::ExtendsLoop, &extends.at, message);
        return None;
    }
    if trail.len() >= LONGEST_CHAIN {
        faults.error_help(
            RuleFault::ChainTooLong,
            &extends.at,
            format!("this is the fifth ruleset of a chain; it may hold {LONGEST_CHAIN} files"),
            "take the rules of two of them into one file",
        );
        return None;
    }
    let base = read(&file, loading, trail, diagnostics);
    if base.is_none() {
        faults.error(
            RuleFault::BaseUnusable,
            &extends.at,
            format!(
                "the ruleset \"{}\" cannot be used, so neither can this one",
                extends.value
            ),
        );
    }
    base
}

/// What a file could not be read for.
fn unread(
    part: UnreadPart,
    hazard: Option<Hazard>,
    at: Range<usize>,
    faults: &Faults<'_>,
) -> Unread {
    let at = faults.file().excerpt(at);
    Unread { part, hazard, at }
}

/// The hazard that a table names, be the rest of it as it may.
fn hazard(fields: &Fields<'_>) -> Option<Hazard> {
    fields
        .value("hazard")
        .and_then(|value| value.get_ref().as_str())
        .and_then(Hazard::by_name)
}

/// The file's own rules. One that lies on a fault of syntax counts as faulty.
fn own_rules(
    parts: &Parts<'_>,
    examples: Examples,
    sources: &mut Sources,
    own: &mut Own,
    faults: &mut Faults,
) {
    let mut ids: BTreeMap<String, Range<usize>> = BTreeMap::new();
    for (fields, extent) in &parts.rules {
        let id = fields.value("id").and_then(|value| {
            let id = value.get_ref().as_str()?;
            Some((id.to_owned(), value.span()))
        });
        let whole = !faults.broken(extent);
        let mut rule = whole
            .then(|| rule(fields, examples, sources, faults))
            .flatten();
        if let Some((name, at)) = &id {
            if let Some(first) = ids.get(name) {
                let message = format!(
                    "another rule of this file has the id `{name}`: give this one another id, or take it away"
                );
                faults.error_also(
                    RuleFault::GivenTwice,
                    at,
                    message,
                    first,
                    "first given here",
                );
                rule = None;
            } else {
                ids.insert(name.clone(), at.clone());
            }
        }
        let at = id.as_ref().map_or(fields.at.clone(), |(_, at)| at.clone());
        match rule {
            Some(rule) => {
                match examples {
                    Examples::Read => straddle::warn(&rule, &at, faults),
                    Examples::LeftOut => {}
                }
                own.rules.push(OwnRule { rule, at });
            }
            None => {
                let part = UnreadPart::Rule {
                    id: id.map(|(id, _)| id),
                    in_its_place: None,
                };
                own.unread.push(unread(part, hazard(fields), at, faults));
            }
        }
    }
}

fn own_cautions(parts: &Parts<'_>, sources: &mut Sources, own: &mut Own, faults: &mut Faults) {
    for (fields, extent) in &parts.cautions {
        let whole = !faults.broken(extent);
        match whole.then(|| caution(fields, sources, faults)).flatten() {
            Some(caution) => own.cautions.push(caution),
            None => {
                let at = fields.at.clone();
                let unread = unread(UnreadPart::Caution, None, at, faults);
                own.unread.push(unread);
            }
        }
    }
}

fn own_silences(
    parts: &Parts<'_>,
    examples: Examples,
    sources: &mut Sources,
    own: &mut Own,
    faults: &mut Faults,
) {
    for (fields, extent) in &parts.silences {
        let whole = !faults.broken(extent);
        let silence = whole.then(|| asks_nothing(fields, examples, sources, faults));
        match silence.flatten() {
            Some(silence) => own.silences.push(silence),
            None => {
                let (hazard, at) = (hazard(fields), fields.at.clone());
                let unread = unread(UnreadPart::AsksNothing, hazard, at, faults);
                own.unread.push(unread);
            }
        }
    }
}
