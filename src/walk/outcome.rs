//! What became of an answer.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Authority;
use crate::judge::DangerSeen;
use crate::judge::Judged;
use crate::survey::Guard;
use crate::walk::GuardName;

/// A guard that is left.
#[derive(Clone, Debug)]
pub struct GuardDone<'r> {
    /// Its name.
    pub place: GuardName,
    /// The guard.
    pub guard: Guard,
    /// How it came out.
    pub judged: Judged<'r>,
    /// Whether law was chosen.
    pub authority: Authority,
}

/// What an answer has decided at the guard that is spoken of.
#[derive(Clone, Debug)]
pub struct NowSettled<'r> {
    /// How the guard is judged now.
    pub judged: Judged<'r>,
    /// Which of its findings are new, by their place.
    pub findings: Vec<usize>,
    /// Which of what all open cases agree on is new, by its place.
    pub agreed: Vec<usize>,
}

impl NowSettled<'_> {
    /// Whether something falls short now.
    #[must_use]
    pub fn falls_short(&self) -> bool {
        let mut findings = self.findings.iter();
        let short = |index: &usize| {
            let finding = self.judged.findings.get(*index);
            finding.is_some_and(|finding| finding.verdict == Verdict::FallsShort)
        };
        !self.agreed.is_empty() || findings.any(short)
    }
}

/// Something to tell the person.
#[derive(Clone, Debug)]
pub enum Reply<'r> {
    /// Items that were taken over from another guard, as written, and those of them
    /// that are otherwise here.
    Copied {
        /// The guard they come from.
        from: GuardName,
        /// What was taken over.
        taken: Vec<(Item, String)>,
        /// What is otherwise.
        but: Vec<(Item, String)>,
    },
    /// A guard with nothing left to ask.
    Done(Box<GuardDone<'r>>),
    /// The commands.
    Help,
    /// What is written so far: what it is of, and as written.
    Listing(Vec<(String, String)>),
    /// All there is to say about the question.
    More,
    /// An answer of several rows as it was understood, with the note beside it.
    Noted(Vec<(Item, String)>, String),
    /// An answer that was not taken: what was found, and what to write.
    Refused(String, Option<String>),
    /// A plain sentence.
    Remark(String),
    /// What is decided now and was not before.
    Settled(Box<NowSettled<'r>>),
    /// A guard with a danger: nothing more is measured or touched there.
    Stop(GuardName, Vec<DangerSeen>),
    /// An answer as it was understood, with the note beside it and what it holds for.
    Understood {
        /// The item.
        item: Item,
        /// The reading, as it stands in the survey now.
        reading: String,
        /// What was understood, where that is not how it was written.
        meant: Option<String>,
        /// The note.
        note: String,
        /// Where it holds: a guard, a unit, or with no names the whole survey.
        place: GuardName,
    },
    /// The first shortfall of the walk: until it is put right somebody is to be kept away.
    UntilMended,
}
