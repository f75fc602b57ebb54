//! What a plan holds: its steps, what else would do, how the guard then stands.

use crate::items::Item;
use crate::items::Verdict;
use crate::remedy::aim::Measuring;
use crate::remedy::change::GuardChange;
use crate::remedy::cost::who;
use crate::remedy::kind::RemedyKind;
use crate::remedy::kind::WhoDoes;
use crate::remedy::offered::Offered;
use crate::remedy::offered::WaitsFor;
use crate::remedy::proof::RefusedRemedy;
use crate::remedy::proof::RuleKey;
use crate::remedy::tonight::waits;
use crate::remedy::topics::ShortTopic;
use crate::survey::Guard;

/// One step of a plan.
#[derive(Clone, Debug)]
pub struct Planned {
    /// What falls short.
    pub topic: ShortTopic,
    /// What is done.
    pub offered: Offered,
    /// What it waits for.
    pub waits: WaitsFor,
    /// Whether judging the changed guard shows it; what only a push, a look or an
    /// engineer settles is shown by none.
    pub proved: bool,
    /// What else it puts right that is spoken of apart.
    pub also: Vec<Item>,
    /// What would satisfy the building rules alone, where that is less, and the advice
    /// that it leaves.
    pub lesser: Option<Lesser>,
    /// Others that would do in its place, the least change first; each was judged.
    pub instead: Vec<Offered>,
    /// Others that only trying the built thing shows to do.
    pub to_try: Vec<Offered>,
}

/// A remedy that stops where the building rules do.
#[derive(Clone, Debug)]
pub struct Lesser {
    /// What it is.
    pub offered: Offered,
    /// Advice that it leaves short.
    pub leaves: Vec<RuleKey>,
}

/// A guard with the plan carried out.
#[derive(Clone, Debug)]
pub struct PlannedWay {
    /// The guard as it would then be written.
    pub guard: Guard,
    /// What it changes.
    pub change: GuardChange,
    /// Rules that fell short and are met.
    pub solved: Vec<RuleKey>,
    /// Rules that fell short and are no longer asked.
    pub no_longer_asked: Vec<RuleKey>,
    /// Its verdict, by the rules that decide.
    pub verdict: Verdict,
    /// The worst of the advice beside them.
    pub guidance: Option<Verdict>,
}

/// Something that falls short and for which no remedy was found that breaks nothing.
#[derive(Clone, Debug)]
pub struct Unsolved {
    /// What falls short.
    pub topic: ShortTopic,
    /// Why nothing is offered.
    pub why: String,
}

/// A rule that stays undecided with the plan carried out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StillOpen {
    /// Which.
    pub key: RuleKey,
    /// What the rule says.
    pub says: String,
    /// How it stands.
    pub verdict: Verdict,
}

/// What would put a guard right.
#[derive(Clone, Debug)]
pub struct RemedyPlan {
    /// In which unit it is drawn, and how exactly it is taken to be built.
    pub measuring: Measuring,
    /// Everything that falls short.
    pub topics: Vec<ShortTopic>,
    /// What comes tonight, without tools and leave.
    pub tonight: Vec<RemedyKind>,
    /// The steps, in their order.
    pub steps: Vec<Planned>,
    /// What bridges the time until they are done.
    pub bridges: Vec<Offered>,
    /// What is not offered.
    pub refused: Vec<RefusedRemedy>,
    /// What falls short and has no remedy here.
    pub unsolved: Vec<Unsolved>,
    /// The guard with all steps done.
    pub way: PlannedWay,
    /// What stays undecided then.
    pub open: Vec<StillOpen>,
    /// Whether the guard moves, or something that holds it falls short or is a danger.
    pub not_firm: bool,
    /// Whether it stands outdoors above one storey, so that more needs a licensed person.
    pub high: bool,
}

impl RemedyPlan {
    /// Whether every shortfall has a remedy that the re-check confirms.
    #[must_use]
    pub fn is_proved(&self) -> bool {
        self.unsolved.is_empty() && self.steps.iter().all(|step| step.proved)
    }

    /// Who does it, here.
    #[must_use]
    pub fn who(&self, kind: RemedyKind) -> WhoDoes {
        who(kind, self.high)
    }

    /// What a remedy of this kind waits for on the guard of this plan.
    #[must_use]
    pub fn waits(&self, guard: &Guard, kind: RemedyKind) -> WaitsFor {
        waits(guard, kind, self.not_firm)
    }
}

/// The steps of a plan alone.
#[derive(Clone, Debug)]
pub struct BestSteps {
    /// In which unit it is drawn, and how exactly it is taken to be built.
    pub measuring: Measuring,
    /// Everything that falls short.
    pub topics: Vec<ShortTopic>,
    /// The steps, in their order; nothing of what else would do.
    pub steps: Vec<Planned>,
    /// What falls short and has no remedy here.
    pub unsolved: Vec<Unsolved>,
    /// What is not offered.
    pub refused: Vec<RefusedRemedy>,
    /// Whether it stands outdoors above one storey, so that more needs a licensed person.
    pub high: bool,
}

impl BestSteps {
    /// Who does it, here.
    #[must_use]
    pub fn who(&self, kind: RemedyKind) -> WhoDoes {
        who(kind, self.high)
    }
}

/// How much of a plan is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlanDepth {
    /// The step that is best for each shortfall: the rest is judged only as far as it
    /// could be better.
    Best,
    /// Everything that could be offered is judged, and what is not offered is kept.
    All,
}
