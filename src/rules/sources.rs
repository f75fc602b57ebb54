//! `[source.KEY]`: where rules come from.

use std::collections::BTreeSet;
use std::ops::Range;
use std::sync::Arc;

use crate::rules::codes::RuleFault;
use crate::rules::faults::Faults;
use crate::rules::faults::instead;
use crate::rules::fields::Fields;
use crate::rules::fields::Text;
use crate::rules::fields::TomlNode;
use crate::rules::fields::choice;
use crate::rules::model::Source;
use crate::rules::model::Status;

/// The sources that a file may cite: its own, and those it inherits.
#[derive(Default)]
pub(super) struct Sources {
    own: Vec<(Arc<Source>, Range<usize>)>,
    inherited: Vec<Arc<Source>>,
    /// Keys whose tables are faulty: citing them is no second fault.
    faulty: BTreeSet<String>,
    cited: BTreeSet<String>,
    incomplete: bool,
}

impl Sources {
    /// The file's own sources.
    pub(super) fn read(head: &Fields<'_>, faults: &mut Faults) -> Sources {
        let mut sources = Sources::default();
        let Some(value) = head.value("source") else {
            return sources;
        };
        let Some(table) = Fields::of(value, "`source`", faults) else {
            sources.incomplete = true;
            return sources;
        };
        for entry in table.entries() {
            match source(entry.key, entry.value, faults) {
                Some(source) => sources.own.push((Arc::new(source), entry.at)),
                None => {
                    sources.faulty.insert(entry.key.to_owned());
                }
            }
        }
        sources
    }

    /// Takes over the sources of the ruleset that this one extends.
    pub(super) fn inherit(&mut self, base: &[Arc<Source>]) {
        self.inherited.extend(base.iter().map(Arc::clone));
    }

    /// Some sources could not be read at all: an unknown key is then no fault of its own.
    pub(super) fn set_incomplete(&mut self) {
        self.incomplete = true;
    }

    /// The source of a key.
    pub(super) fn cite(&mut self, key: &Text<'_>, faults: &mut Faults) -> Option<Arc<Source>> {
        let own = self.own.iter().map(|(source, _)| source);
        let found = own
            .chain(&self.inherited)
            .find(|source| source.key == key.value)
            .map(Arc::clone);
        if found.is_some() {
            self.cited.insert(key.value.to_owned());
        } else if !self.incomplete && !self.faulty.contains(key.value) {
            let message = format!("the file lists no source `{}`", key.value);
            let keys: Vec<&str> = self.all_keys();
            let help = match keys.as_slice() {
                [] => format!("add [source.{}] with title, edition and status", key.value),
                keys => instead(key.value, keys),
            };
            faults.error_help(RuleFault::UnknownSource, &key.at, message, help);
        }
        found
    }

    fn all_keys(&self) -> Vec<&str> {
        let own = self.own.iter().map(|(source, _)| source);
        own.chain(&self.inherited)
            .map(|source| source.key.as_str())
            .collect()
    }

    /// Warns of the file's own sources that nothing cites.
    pub(super) fn warn_unused(&self, faults: &mut Faults) {
        for (source, at) in &self.own {
            if !self.cited.contains(&source.key) {
                faults.warning(
                    RuleFault::UnusedSource,
                    at,
                    format!("no rule cites the source `{}`", source.key),
                    "take it away, or name it in the rules that come from it",
                );
            }
        }
    }

    /// All of them, the file's own first; an own one hides an inherited one of its key.
    pub(super) fn into_list(self) -> Vec<Arc<Source>> {
        let mut list: Vec<Arc<Source>> = self.own.into_iter().map(|(source, _)| source).collect();
        for source in self.inherited {
            if list.iter().all(|own| own.key != source.key) {
                list.push(source);
            }
        }
        list
    }
}

fn source(key: &str, value: &TomlNode<'_>, faults: &mut Faults) -> Option<Source> {
    let what = format!("the source `{key}`");
    let before = faults.errors();
    let fields = Fields::of(value, &what, faults)?;
    fields.only(&["title", "edition", "status"], &what, faults);
    let title = fields.required("title", &what, faults);
    let edition = fields.required("edition", &what, faults);
    let status = fields.required("status", &what, faults);
    let status =
        status.and_then(|text| choice(&text, "status", &Status::ALL, Status::name, faults));
    let source = Source {
        key: key.to_owned(),
        title: title?.value.to_owned(),
        edition: edition?.value.to_owned(),
        status: status?,
    };
    (faults.errors() == before).then_some(source)
}
