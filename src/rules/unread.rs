//! What of a ruleset could not be read.

use std::sync::Arc;

use crate::input::Excerpt;
use crate::items::Hazard;

/// A part of a ruleset that could not be read.
///
/// While there is one, the ruleset lets no guard meet: nobody knows what the
/// part would have asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    /// Which part it is.
    pub part: UnreadPart,
    /// The hazard that it is about, where that much could be read.
    pub hazard: Option<Hazard>,
    /// Where it stands; line 0 of a file that was not found.
    pub at: Excerpt,
}

/// Which part of a ruleset could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum UnreadPart {
    /// What it asks nothing about.
    AsksNothing,
    /// A caution.
    Caution,
    /// The head: what it is, extends, removes, covers, concerns, or its sources.
    Head,
    /// A rule.
    Rule {
        /// Its id, where it has one.
        id: Option<String>,
        /// The file whose rule of this id stays in force in its place.
        in_its_place: Option<Arc<str>>,
    },
    /// All of it: it was not found, or nothing usable remains.
    Whole,
}

impl Unread {
    /// A sentence for a reader, without the full stop: `the rule rail-too-low
    /// could not be read (town.toml, line 12)`.
    #[must_use]
    pub fn says(&self) -> String {
        let file = self.at.file();
        let place = match self.at.line() {
            0 => file.to_string(),
            line => format!("{file}, line {line}"),
        };
        match &self.part {
            UnreadPart::AsksNothing => {
                format!("a statement of what it asks nothing about could not be read ({place})")
            }
            UnreadPart::Caution => format!("a caution could not be read ({place})"),
            UnreadPart::Head => format!("its head could not be read whole ({place})"),
            UnreadPart::Rule { id, in_its_place } => {
                let rule = match id {
                    Some(id) => format!("the rule {id}"),
                    None => "a rule".to_owned(),
                };
                let stays = match in_its_place {
                    Some(file) => format!("; that of {file} stays in force"),
                    None => String::new(),
                };
                format!("{rule} could not be read ({place}){stays}")
            }
            UnreadPart::Whole => format!("the ruleset could not be found or read ({place})"),
        }
    }
}
