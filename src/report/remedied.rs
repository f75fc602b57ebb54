//! What would put a guard right, a remedy for each thing measured: the steps of the plan
//! that `guardrule remedy` prints in full.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::quantities::LengthUnit;
use crate::remedy::BestSteps;
use crate::remedy::MakesHoles;
use crate::remedy::Needed;
use crate::remedy::Offered;
use crate::remedy::PlanDepth;
use crate::remedy::Planned;
use crate::remedy::ShortTopic;
use crate::remedy::Unsolved;
use crate::remedy::WaitsFor;
use crate::remedy::WhoDoes;
use crate::remedy::best_steps;
use crate::report::JudgedGuard;
use crate::report::ReportBasis;
use crate::report::plans::material;
use crate::report::plans::refusal;
use crate::report::reader;
use crate::survey::Guard;

/// What would put one thing right.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct ShownRemedy {
    /// The act, in one sentence: guards alike in their faults share it.
    act: String,
    /// The act with its sizes, in one or two sentences.
    says: String,
    /// What it waits for.
    waits: WaitsFor,
    /// What it aims at: `gaps of 2 1/8 in or less`; `None` where that is no number.
    pub(super) aims_at: Option<String>,
    /// What it takes, where that could be counted.
    pub(super) quantity: Option<String>,
    /// Who does it.
    pub(super) who: WhoDoes,
    /// Whose leave it needs.
    pub(super) leave: ShownLeave,
    /// Whether it makes holes.
    pub(super) holes: ShownHoles,
    /// How long it lasts.
    pub(super) lasts: &'static str,
    /// How soon it should be done.
    pub(super) within: Option<&'static str>,
    /// What is not offered in its place, with the rules that it would break.
    pub(super) refused: Vec<RefusedShown>,
}

impl ShownRemedy {
    /// With all its sizes, in one or two sentences.
    #[must_use]
    pub(super) fn whole(&self) -> String {
        let first = match self.waits {
            WaitsFor::Nothing => "",
            WaitsFor::AFirmGuard => FIRM_FIRST,
            WaitsFor::ALook => LOOK_FIRST,
        };
        format!("{first}{}", self.says)
    }

    /// `Do: screw a strip to one face of a bar.`
    #[must_use]
    pub(super) fn in_short(&self) -> String {
        let lead = match self.waits {
            WaitsFor::Nothing => "Do: ",
            WaitsFor::AFirmGuard => "Do, once its posts hold: ",
            WaitsFor::ALook => "Do, once somebody has looked at its posts: ",
        };
        format!("{lead}{}", self.act)
    }
}

/// What stands before a remedy that adds height, weight or wind.
const LOOK_FIRST: &str = "First push it gently and look at what holds its posts. Then: ";

/// What stands before a remedy that waits until what holds the guard is put right.
const FIRM_FIRST: &str =
    "First have what holds it put right, and fasten nothing to it before. Then: ";

/// A remedy that is not offered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct RefusedShown {
    /// What it would be, and why not.
    pub(super) says: String,
    /// The rules that it would break.
    pub(super) breaks: Vec<String>,
}

/// Whose leave it needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum ShownLeave {
    /// Nobody's.
    None,
    /// The owner's.
    Owner,
}

impl ShownLeave {
    pub(super) const fn name(self) -> &'static str {
        match self {
            ShownLeave::None => "none",
            ShownLeave::Owner => "owner",
        }
    }
}

/// Whether a remedy makes holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum ShownHoles {
    /// It does, or may.
    Makes,
    /// It does not.
    MakesNone,
}

/// What would put a guard right, a remedy for each item that falls short.
#[derive(Clone, Debug, Default)]
pub(super) struct GuardRemedies {
    all: Vec<(Vec<Item>, ShownRemedy)>,
}

impl GuardRemedies {
    /// Of a guard; none where nothing falls short.
    #[must_use]
    pub(super) fn of(
        entry: &JudgedGuard<'_>,
        basis: &ReportBasis<'_>,
        depth: PlanDepth,
    ) -> GuardRemedies {
        let (guard, judged) = (&entry.guard, &entry.judged);
        let short = judged
            .findings
            .iter()
            .any(|finding| finding.verdict == Verdict::FallsShort && finding.counts());
        if !short {
            return GuardRemedies::default();
        }
        let (facts, options) = (basis.survey, basis.options);
        let plan = best_steps(guard, judged, facts, basis.rulesets, options, depth);
        let steps = plan.steps.iter().map(|step| {
            let mut items = items(&step.topic);
            for also in &step.also {
                let topic = plan.topics.iter().find(|topic| topic.item == *also);
                items.extend(topic.map(self::items).unwrap_or_default());
            }
            (items, shown(guard, &plan, step))
        });
        let unsolved = plan.unsolved.iter();
        let unsolved = unsolved.map(|one| (items(&one.topic), nothing_known(guard, one)));
        GuardRemedies {
            all: steps.chain(unsolved).collect(),
        }
    }

    /// What would put right what a finding judged; `None` where that does not fall short.
    #[must_use]
    pub(super) fn find(&self, finding: &Finding<'_>) -> Option<&ShownRemedy> {
        if finding.verdict != Verdict::FallsShort || !finding.counts() {
            return None;
        }
        // a load path's findings stand under what holds the posts, whatever they judged
        let item = if finding.chain.is_some() {
            Item::PostFastening
        } else {
            finding.item
        };
        let known = self.all.iter().find(|(items, _)| items.contains(&item));
        known.map(|(_, remedy)| remedy)
    }
}

/// Under which items a topic's shortfalls stand.
fn items(topic: &ShortTopic) -> Vec<Item> {
    let mut items: Vec<Item> = topic.short.iter().map(|key| key.item).collect();
    items.push(topic.item);
    items
}

/// What is said where no remedy was found.
fn nothing_known(guard: &Guard, unsolved: &Unsolved) -> ShownRemedy {
    let says = format!("{}.", unsolved.why);
    ShownRemedy {
        act: says.clone(),
        says,
        waits: WaitsFor::Nothing,
        aims_at: None,
        quantity: None,
        who: WhoDoes::Trade,
        leave: ShownLeave::Owner,
        holes: ShownHoles::Makes,
        lasts: "permanent",
        within: unsolved.topic.soon(guard).says(),
        refused: Vec::new(),
    }
}

fn shown(guard: &Guard, plan: &BestSteps, step: &Planned) -> ShownRemedy {
    let row = step.offered.kind.row();
    let refused = plan
        .refused
        .iter()
        .filter(|refused| refused.item == step.topic.item);
    ShownRemedy {
        act: reader::uncapital(&step.offered.act),
        says: reader::uncapital(&step.offered.says),
        waits: step.waits,
        aims_at: step.offered.aims_at.clone(),
        quantity: quantity(&step.offered, plan.measuring.unit),
        who: plan.who(step.offered.kind),
        leave: match row.leave {
            Needed::No => ShownLeave::None,
            Needed::Ask | Needed::Yes => ShownLeave::Owner,
        },
        holes: match row.holes {
            MakesHoles::No => ShownHoles::MakesNone,
            MakesHoles::Either | MakesHoles::Yes => ShownHoles::Makes,
        },
        lasts: row.lasts.last().map_or("permanent", |lasts| lasts.name()),
        within: step.topic.soon(guard).says(),
        refused: refused
            .map(|refused| RefusedShown {
                says: format!(
                    "{}: {}",
                    refused.offered.says.trim_end_matches('.'),
                    refusal(refused)
                ),
                breaks: refused
                    .breaks
                    .iter()
                    .map(|broken| format!("{}: {}", broken.key.ruleset, broken.key.rule))
                    .collect(),
            })
            .collect(),
    }
}

/// `1 to 24 x upright bars 3/4 in wide`; `None` where nothing of it was counted.
fn quantity(offered: &Offered, unit: LengthUnit) -> Option<String> {
    let parts = offered.parts.iter();
    let parts = parts.filter(|part| part.how_many.range().is_some());
    let parts: Vec<String> = parts.map(|part| material(part, unit)).collect();
    (!parts.is_empty()).then(|| parts.join("; "))
}
