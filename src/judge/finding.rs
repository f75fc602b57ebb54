//! What comes out of judging a guard.

use std::sync::Arc;

use crate::items::Danger;
use crate::items::DangerTold;
use crate::items::Hazard;
use crate::items::Item;
use crate::items::ItemSet;
use crate::items::Verdict;
use crate::judge::Chain;
use crate::judge::LimitShown;
use crate::judge::Reason;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::quantities::Probability;
use crate::quantities::StandardUncertainty;
use crate::quantities::YearSpan;
use crate::rules::AsksNothing;
use crate::rules::Concern;
use crate::rules::Rule;
use crate::rules::Ruleset;
use crate::rules::Unread;

/// How a guard fares by the rules that were in force when it was built.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WhenBuilt<'r> {
    /// The worst of their findings, those from memory left out.
    pub verdict: Verdict,
    /// The ids of the rulesets that were in force then.
    pub rulesets: Vec<&'r str>,
}

/// What keeps a ruleset from letting a guard meet.
#[derive(Clone, Debug)]
pub struct Unclear<'r> {
    /// The ruleset.
    pub ruleset: &'r Ruleset,
    /// The hazard it is about; `None` where it is about the guard as a whole.
    pub hazard: Option<Hazard>,
    /// Why.
    pub why: WhyUnclear<'r>,
}

/// Why a ruleset does not let a guard meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhyUnclear<'r> {
    /// A hole was written that no rule which was read asks about, wider than an opening may be.
    HoleNotAsked(Item),
    /// No rule on the hazard was read and met, and nothing says that none is asked.
    NoRuleRead,
    /// A circumstance stands outside what it covers.
    NotCovered(Item),
    /// It speaks of other subjects alone.
    OnlyOneSubject(&'r [Concern]),
    /// Whether it asks nothing depends on a circumstance that nobody wrote down.
    Silence(Item),
    /// A part of it could not be read.
    Unread(&'r Unread),
}

/// What all cases of circumstances that nobody wrote down agree on.
#[derive(Clone, Debug)]
pub struct Agreed<'r> {
    /// The ruleset.
    pub ruleset: &'r Ruleset,
    /// What they agree on.
    pub verdict: Verdict,
    /// The hazard; `None` where it is the guard as a whole.
    pub hazard: Option<Hazard>,
    /// The rules that say so, in one case or another.
    pub rules: Vec<&'r str>,
    /// Whether it is advice beside law.
    pub advises: bool,
}

/// What each answer to a question would lead to, by one ruleset.
#[derive(Clone, Debug)]
pub struct LeadsTo<'r> {
    /// The ruleset.
    pub ruleset: &'r Ruleset,
    /// The circumstance that nobody wrote down.
    pub item: Item,
    /// Answers that its rules tell apart, with the verdict; `None` where that
    /// depends on something else as well.
    pub answers: Vec<(String, Option<Verdict>)>,
}

/// Something seen that comes before every rule.
#[derive(Clone, Copy, Debug)]
pub struct DangerSeen {
    /// The item.
    pub item: Item,
    /// The word that was written.
    pub word: &'static str,
    /// What the table says of it.
    pub danger: Danger,
    /// The observation.
    pub index: usize,
}

/// A note that tells of a danger, and no reading says whether it is so.
#[derive(Clone, Debug)]
pub struct NoteOfDanger {
    /// The danger, and the item that would say so.
    pub told: DangerTold,
    /// The words of the note that tell of it.
    pub word: &'static str,
    /// The note.
    pub note: Arc<str>,
}

/// One rule judged against one guard (for `any-opening`: against one of its items).
#[derive(Clone, Debug)]
pub struct Finding<'r> {
    /// The ruleset.
    pub ruleset: &'r Ruleset,
    /// The rule.
    pub rule: &'r Rule,
    /// The item that was judged; the first one the rule asks for where none was.
    pub item: Item,
    /// What became of it.
    pub verdict: Verdict,
    /// What the reading alone would say (the simple decision).
    pub reading_alone: Verdict,
    /// It meets where it was measured, and the rest was not looked at.
    pub partial: bool,
    /// It takes part in the guard's verdict: a rule of what decides; one from
    /// memory only where it is not met.
    pub binding: bool,
    /// The rule is known only from memory, or is common practice beside law, and
    /// nobody asked for such rules to decide.
    pub from_memory: bool,
    /// The deciding value, where there is one.
    pub measured: Option<Measured>,
    /// The limit with which it was compared: the one with least to spare.
    pub limit: Option<LimitShown<'r>>,
    /// How far on the good side of the limit (below zero: short by), where both are lengths.
    pub margin: Option<Length>,
    /// How sure the value is; `None` where no doubt is counted.
    pub uncertainty: Option<StandardUncertainty>,
    /// How likely it conforms, where the value is doubtful.
    pub probability: Option<Probability>,
    /// The observations that decided: indices as
    /// [`Guard::observation`](crate::survey::Guard::observation) takes them.
    pub readings: Vec<usize>,
    /// Other observations of the same item.
    pub also_readings: Vec<usize>,
    /// Why, and what a reader should know about it.
    pub reasons: Vec<Reason<'r>>,
    /// The load path, where the rule states loads. The finding is then
    /// indicative: it can make a guard fall short, and never meet.
    pub chain: Option<Arc<Chain>>,
    /// The items whose readings were looked at: while these stay as they are, it does.
    pub(super) looked_at: ItemSet,
}

impl Finding<'_> {
    /// Whether it rests on the load path, and so is no statement of strength.
    #[must_use]
    pub fn is_indicative(&self) -> bool {
        self.chain.is_some()
    }

    /// Whether it takes part in the guard's verdict and in the count of rules:
    /// an indicative one only where it falls short.
    #[must_use]
    pub fn counts(&self) -> bool {
        !self.is_indicative() || self.verdict == Verdict::FallsShort
    }

    /// Whether the guard's verdict may not rest on it as `meets`.
    #[must_use]
    pub fn counts_as(&self) -> Verdict {
        if self.partial && self.verdict == Verdict::Meets {
            Verdict::NotMeasured
        } else {
            self.verdict
        }
    }
}

/// The value that decided a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// The cell as it stands.
    pub written: Arc<str>,
    /// The value that was compared, where it is a length: of a triangle its clear opening.
    pub value: Option<Length>,
    /// The unit the person wrote.
    pub unit: Option<LengthUnit>,
}

/// Something taken as given, to be printed.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Assumption<'r> {
    /// The readings of this item are taken as those of its worst place.
    WorstPlace(Item),
    /// A ruleset's scope that nobody stated is taken as given.
    Covered {
        /// The ruleset's id.
        ruleset: &'r str,
        /// The circumstance.
        item: Item,
    },
    /// The infill was not written down: taken as stiff.
    InfillStiff,
    /// Every opening was looked at, since nobody said otherwise.
    EveryOpening,
    /// The guard stands there, since nobody said that it is a plan.
    Existing,
    /// Asked for the rules of its time, and nobody wrote down when it was built.
    BuiltUnknown,
    /// No chosen ruleset of law states years that cover this time of building.
    NoRulesetCovers(YearSpan),
    /// A tape that nobody named is taken as this.
    Tape(&'static str),
    /// How finely readings were taken to be read: the written form and the step.
    ReadTo {
        /// The reading.
        written: String,
        /// The step, as text.
        step: String,
    },
}

/// What to find out next, asked once per item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Question {
    /// The item to measure or to write down.
    pub item: Item,
    /// How many findings wait for it.
    pub findings: usize,
    /// Whether the load path alone waits for it.
    pub of_strength: bool,
}

/// A hazard's verdicts: by law, and by guidance. `None` where no chosen rule asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HazardVerdict {
    /// Which hazard.
    pub hazard: Hazard,
    /// The worst of the findings that decide.
    pub verdict: Option<Verdict>,
    /// The worst of the findings that only advise.
    pub guidance: Option<Verdict>,
}

/// A guard with everything that was found.
#[derive(Clone, Debug)]
pub struct Judged<'r> {
    /// The guard's verdict: the worst of the findings that decide.
    pub verdict: Verdict,
    /// What the readings alone would say.
    pub reading_alone: Verdict,
    /// The worst of the guidance; `None` where none was chosen or guidance itself decides.
    pub guidance: Option<Verdict>,
    /// By the rules of the time of building; `None` where nobody asked, where
    /// the time is not known, or where no ruleset here was in force then.
    pub when_built: Option<WhenBuilt<'r>>,
    /// What was seen that comes before every rule; the guard then falls short.
    pub dangers: Vec<DangerSeen>,
    /// Notes that tell of a danger which no reading says or denies; the guard then does
    /// not meet.
    pub notes: Vec<NoteOfDanger>,
    /// What all cases of unknown circumstances agree on, where no single finding
    /// says so.
    pub agreed: Vec<Agreed<'r>>,
    /// What each answer to an open circumstance would lead to.
    pub leads_to: Vec<LeadsTo<'r>>,
    /// What keeps the rulesets that decide from letting it meet, where nothing else does.
    pub unclear: Vec<Unclear<'r>>,
    /// What the rulesets that decide were read to ask nothing about here.
    pub silences: Vec<&'r AsksNothing>,
    /// Nobody could judge whether it would hold.
    pub strength_unchecked: bool,
    /// Whether every row of it is in error, so that nothing could be judged.
    pub could_not_judge: bool,
    /// All five hazards, in their order.
    pub hazards: [HazardVerdict; 5],
    /// The findings, in the order of the rulesets and their rules.
    pub findings: Vec<Finding<'r>>,
}
