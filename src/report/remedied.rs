//! What would put a guard right, a remedy for each thing measured: the steps of the plan
//! that `guardrule remedy` prints in full.

use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::judge::Options;
use crate::quantities::LengthUnit;
use crate::remedy::HowMany;
use crate::remedy::HowSoon;
use crate::remedy::MakesHoles;
use crate::remedy::Needed;
use crate::remedy::Offered;
use crate::remedy::Planned;
use crate::remedy::RemedyPlan;
use crate::remedy::ShortTopic;
use crate::remedy::plan as plan_remedies;
use crate::report::plans::material;
use crate::report::plans::refusal;
use crate::report::reader;
use crate::report::remedy;
use crate::rules::Ruleset;
use crate::rules::Urgency;
use crate::survey::Guard;
use crate::survey::SurveyFacts;

/// What would put one thing right.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct ShownRemedy {
    /// In one or two sentences.
    pub(super) says: String,
    /// What it aims at: `gaps of 2 1/8 in or less`; `None` where that is no number.
    pub(super) aims_at: Option<String>,
    /// What it takes, where that could be counted.
    pub(super) quantity: Option<String>,
    /// Who does it.
    pub(super) who: &'static str,
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
    pub(super) fn of<'r>(
        guard: &Guard,
        judged: &Judged<'r>,
        facts: &SurveyFacts,
        rulesets: &'r [Ruleset],
        options: Options,
    ) -> GuardRemedies {
        let short = judged
            .findings
            .iter()
            .any(|finding| finding.verdict == Verdict::FallsShort && finding.counts());
        if !short {
            return GuardRemedies::default();
        }
        let plan = plan_remedies(guard, judged, facts, rulesets, options);
        // what judging again does not show is said in general words, with what to do until then
        let proved = plan.steps.iter().filter(|step| step.proved);
        let steps = proved.map(|step| {
            let mut items = items(&step.topic);
            for also in &step.also {
                let topic = plan.topics.iter().find(|topic| topic.item == *also);
                items.extend(topic.map(self::items).unwrap_or_default());
            }
            (items, shown(guard, &plan, step))
        });
        GuardRemedies {
            all: steps.collect(),
        }
    }

    fn find(&self, item: Item) -> Option<&ShownRemedy> {
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

fn shown(guard: &Guard, plan: &RemedyPlan, step: &Planned) -> ShownRemedy {
    let row = step.offered.kind.row();
    let refused = plan
        .refused
        .iter()
        .filter(|refused| refused.item == step.topic.item);
    ShownRemedy {
        says: if step.waits {
            format!("{WAITS}{}", reader::uncapital(&step.offered.says))
        } else {
            reader::uncapital(&step.offered.says)
        },
        aims_at: step.offered.aims_at.clone(),
        quantity: quantity(&step.offered, plan.measuring.unit),
        who: plan.who(step.offered.kind).name(),
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

/// What stands before a remedy that waits until what holds the guard is put right.
const WAITS: &str = "First have what holds it put right, and fasten nothing to it before. Then: ";

/// `at most 24 x upright bars 3/4 in wide`; `None` where nothing of it was counted.
fn quantity(offered: &Offered, unit: LengthUnit) -> Option<String> {
    let counted = |how: &HowMany| match how {
        HowMany::AtMost(_) | HowMany::Exactly(_) => true,
        HowMany::Write(_) => false,
    };
    let parts = offered.parts.iter().filter(|part| counted(&part.how_many));
    let parts: Vec<String> = parts.map(|part| material(part, unit)).collect();
    (!parts.is_empty()).then(|| parts.join("; "))
}

/// What would put an item right; `None` where nothing of it falls short. What no plan
/// has is said in general words.
pub(super) fn remedied(
    remedies: &GuardRemedies,
    (judged, guard): (&Judged<'_>, &Guard),
    finding: &Finding<'_>,
) -> Option<ShownRemedy> {
    if let Some(known) = remedies.find(finding.item) {
        return Some(known.clone());
    }
    let general = remedy::remedy(judged, guard, finding.item)?;
    Some(ShownRemedy {
        says: general.says,
        aims_at: general.aims_at,
        quantity: None,
        who: general.who.name(),
        leave: match general.leave {
            remedy::Leave::None => ShownLeave::None,
            remedy::Leave::Owner => ShownLeave::Owner,
        },
        holes: match general.holes {
            remedy::RemedyHoles::Makes => ShownHoles::Makes,
            remedy::RemedyHoles::MakesNone => ShownHoles::MakesNone,
        },
        lasts: general.lasts.name(),
        within: match finding.rule.urgency {
            Urgency::Now => HowSoon::Now.says(),
            Urgency::Soon => HowSoon::Soon.says(),
            Urgency::Know => HowSoon::Plan.says(),
        },
        refused: Vec::new(),
    })
}
