//! What one ruleset makes of a guard: the worst of its findings, and whether it
//! lets the guard meet.
//!
//! That nothing was found wrong is not enough for `meets`: a rule that limits the
//! height and one that limits the gaps must have been read and met, or the text
//! must have been read to ask nothing, or what was measured must switch it off.

use crate::items::Hazard;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::PlaceWord;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Reason;
use crate::judge::Unclear;
use crate::judge::WhyUnclear;
use crate::judge::condition::Truth;
use crate::judge::condition::all;
use crate::judge::condition::applies;
use crate::judge::condition::holds;
use crate::judge::rule::Bench;
use crate::judge::scene::Scene;
use crate::judge::unasked::hole_that_no_rule_asks;
use crate::judge::unasked::unasked_holes;
use crate::judge::view::FindingView;
use crate::rules::Concern;
use crate::rules::Condition;
use crate::rules::Demand;
use crate::rules::OpeningDemand;
use crate::rules::Rule;
use crate::rules::Ruleset;
use crate::rules::Subject;
use crate::rules::Test;

/// What a ruleset makes of a guard.
#[derive(Clone, Debug)]
pub(super) struct Decided<'r> {
    /// The worst of its findings; `None` where none counts.
    pub(super) worst: Option<Verdict>,
    /// What keeps it from letting the guard meet, of each hazard.
    pub(super) lacks: Vec<Unclear<'r>>,
    /// Whether what was measured lets it ask nothing about falling over, and about
    /// falling through: no rule on it was met.
    pub(super) switched_off: [bool; 2],
}

impl Decided<'_> {
    /// The verdict by this ruleset alone.
    pub(super) fn verdict(&self) -> Verdict {
        let lack = self.lacks.iter().map(|lack| lack.why.verdict()).min();
        match (self.worst, lack) {
            (Some(Verdict::Meets) | None, Some(lack)) => lack,
            (None, None) => Verdict::NotMeasured,
            (Some(worst), _) => worst,
        }
    }
}

/// The worst of the findings for each hazard, by the decision that was asked for.
pub(super) fn worst_of_hazards<'f, 'r: 'f>(
    findings: impl Iterator<Item = &'f Finding<'r>>,
    counted_as: impl Fn(&Finding<'r>) -> Verdict,
) -> [Option<Verdict>; 5] {
    let mut worst = [None; 5];
    for finding in findings {
        let at = Hazard::ALL
            .iter()
            .position(|one| *one == finding.rule.hazard);
        if let Some(worst) = at.and_then(|at| worst.get_mut(at)) {
            let verdict = counted_as(finding);
            *worst = Some(worst.map_or(verdict, |worst: Verdict| worst.min(verdict)));
        }
    }
    worst
}

/// What a ruleset makes of a guard, from its findings: by the decision that was asked
/// for, and by the readings alone.
pub(super) fn decided_and_alone<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    findings: &[Finding<'r>],
) -> [Decided<'r>; 2] {
    let decided = by_view(scene, bench, findings, FindingView::Decided);
    let is_alike =
        |finding: &Finding<'r>| FindingView::Decided.of(finding) == FindingView::Alone.of(finding);
    // beside the findings only such a hole is looked at by one view or the other
    let alike = findings.iter().all(is_alike) && unasked_holes(scene, findings).is_empty();
    let alone = if alike {
        decided.clone()
    } else {
        by_view(scene, bench, findings, FindingView::Alone)
    };
    [decided, alone]
}

fn by_view<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    findings: &[Finding<'r>],
    view: FindingView,
) -> Decided<'r> {
    let ruleset = bench.ruleset;
    let mut lacks: Vec<Unclear<'r>> = Vec::new();
    let mut lack = |hazard, why| {
        lacks.push(Unclear {
            ruleset,
            hazard,
            why,
        });
    };
    for unread in &ruleset.unread {
        lack(unread.hazard, WhyUnclear::Unread(unread));
    }
    if let Some(Reason::NotCovered(item)) = bench.not_covered {
        lack(None, WhyUnclear::NotCovered(item));
    }
    let mut worst = findings
        .iter()
        .filter(|finding| finding.takes_part())
        .map(|finding| view.of(finding))
        .min();
    if worst == Some(Verdict::DoesNotApply) {
        let stated =
            |reason: &Reason<'_>| matches!(reason, Reason::TriggerFalse(_) | Reason::Excepted(_));
        let has = |which: &dyn Fn(&Reason<'_>) -> bool| {
            let mut counted = findings.iter().filter(|finding| finding.takes_part());
            counted.any(|finding| finding.reasons.iter().any(which))
        };
        if !has(&stated) {
            worst = Some(Verdict::NotMeasured);
        } else if !has(&|reason: &Reason<'_>| reason.lets_no_guard_be_asked_for())
            || !ruleset.unread.is_empty()
            || from_memory_applies(findings, view)
            || a_removed_rule_applies(scene, ruleset)
        {
            worst = Some(Verdict::NotSettled);
        }
    } else if !ruleset.unread.is_empty() {
        // what could not be read might ask more
        worst = Some(worst.map_or(Verdict::NotSettled, |worst| worst.min(Verdict::NotSettled)));
    }
    let mut switched_off = [false; 2];
    for (hazard, off) in [Hazard::FallOver, Hazard::FallThrough]
        .into_iter()
        .zip(&mut switched_off)
    {
        if !speaks_of(&ruleset.concerns, hazard) {
            lack(Some(hazard), WhyUnclear::OnlyOneSubject(&ruleset.concerns));
            continue;
        }
        match grant(scene, bench, findings, hazard, view) {
            Ok(granted) => *off = granted == Granted::SwitchedOff,
            Err(why) => lack(Some(hazard), why),
        }
    }
    Decided {
        worst,
        lacks,
        switched_off,
    }
}

/// Whether a rule that an amendment took away would have asked something here: what
/// is left is no word that no guard is asked for.
fn a_removed_rule_applies(scene: &Scene<'_>, ruleset: &Ruleset) -> bool {
    ruleset
        .removed
        .iter()
        .any(|rule| applies(scene, rule).truth > Truth::False)
}

/// A rule from memory that applies and is met decides nothing, and yet something
/// is asked.
fn from_memory_applies(findings: &[Finding<'_>], view: FindingView) -> bool {
    findings
        .iter()
        .filter(|finding| finding.from_memory && finding.counts())
        .any(|finding| view.of(finding) != Verdict::DoesNotApply)
}

/// Whether a ruleset speaks of a hazard at all.
fn speaks_of(concerns: &[Concern], hazard: Hazard) -> bool {
    concerns.is_empty()
        || concerns.iter().any(|concern| match concern {
            Concern::Gaps => hazard == Hazard::FallThrough,
            Concern::Heights => hazard == Hazard::FallOver,
            Concern::Gates | Concern::Handrails | Concern::Slats => false,
        })
}

/// By what a ruleset lets a guard meet for a hazard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Granted {
    /// A rule was met.
    ByARule,
    /// It was read to ask nothing here.
    AsksNothing,
    /// What was measured switches its rules off.
    SwitchedOff,
}

/// By what a ruleset lets a guard meet for a hazard, or why it does not.
fn grant<'r>(
    scene: &Scene<'_>,
    bench: &Bench<'r>,
    findings: &[Finding<'r>],
    hazard: Hazard,
    view: FindingView,
) -> Result<Granted, WhyUnclear<'r>> {
    let met = |finding: &&Finding<'r>| {
        !finding.from_memory && view.of(finding) == Verdict::Meets && !finding.is_indicative()
    };
    let at_a_window = scene
        .of(Item::Place)
        .any(|(_, observation)| observation.word() == Some(PlaceWord::Window));
    let grants = |finding: &Finding<'r>| {
        let rule = finding.rule;
        (at_a_window && grants_at_a_window(rule))
            || (rule.hazard == hazard
                && match hazard {
                    Hazard::FallOver => limits_the_height(rule),
                    Hazard::FallThrough => limits_openings(rule) && finding.item == Item::Opening,
                    Hazard::Entrapment | Hazard::Climb | Hazard::GiveWay => false,
                })
    };
    let mut granting = findings
        .iter()
        .filter(met)
        .filter(|finding| grants(finding))
        .peekable();
    if granting.peek().is_some() {
        let limits: Vec<&OpeningDemand> = granting
            .flat_map(|finding| finding.rule.openings(Item::Opening))
            .collect();
        let hole = match hazard {
            Hazard::FallThrough => hole_that_no_rule_asks(scene, findings, &limits, view),
            Hazard::FallOver | Hazard::Entrapment | Hazard::Climb | Hazard::GiveWay => None,
        };
        return hole.map_or(Ok(Granted::ByARule), |hole| {
            Err(WhyUnclear::HoleNotAsked(hole))
        });
    }
    let mut silence = Truth::False;
    let mut open = None;
    for silent in &bench.ruleset.asks_nothing {
        if silent.hazard != hazard {
            continue;
        }
        let holds_here = all(scene, &silent.when, scene.options.decision);
        silence = silence.max(holds_here);
        if holds_here == Truth::Unknown {
            let unknown = silent.when.iter().find(|condition| {
                holds(scene, condition, scene.options.decision) == Truth::Unknown
            });
            open = open.or(unknown.map(|condition| condition.item));
        }
    }
    match (silence, open) {
        (Truth::True, _) => return Ok(Granted::AsksNothing),
        (Truth::Unknown, Some(item)) => return Err(WhyUnclear::Silence(item)),
        (Truth::Doubt | Truth::False | Truth::Unknown, _) => {}
    }
    if is_switched_off(scene, bench, hazard) {
        return Ok(Granted::SwitchedOff);
    }
    Err(WhyUnclear::NoRuleRead)
}

/// Whether what was measured switches off every rule on a hazard that holds at
/// this place: there is at least one, and each is off through a trigger that was
/// written down. What an amendment took away is asked no more, and is no leave.
fn is_switched_off(scene: &Scene<'_>, bench: &Bench<'_>, hazard: Hazard) -> bool {
    let rules = bench.ruleset.rules.iter().chain(&bench.ruleset.removed);
    let of_hazard = |rule: &&Rule| match hazard {
        Hazard::FallOver => limits_the_height(rule),
        Hazard::FallThrough => limits_openings(rule),
        Hazard::Entrapment | Hazard::Climb | Hazard::GiveWay => false,
    };
    let is_false =
        |condition: &Condition| holds(scene, condition, scene.options.decision) == Truth::False;
    let elsewhere = |group: &[Condition]| {
        let mut places = group
            .iter()
            .filter(|condition| condition.item == Item::Place);
        places.any(is_false)
    };
    let off = |group: &[Condition]| {
        group.iter().any(|condition| {
            is_measured_trigger(condition)
                && scene.is_written(condition.item)
                && is_false(condition)
        })
    };
    let mut any = false;
    for rule in rules.filter(of_hazard) {
        let mut groups = rule
            .when_any
            .iter()
            .filter(|group| !elsewhere(group))
            .peekable();
        let nowhere = !rule.when_any.is_empty() && groups.peek().is_none();
        if elsewhere(&rule.when) || nowhere {
            continue;
        }
        any = true;
        let by_groups = groups.peek().is_some() && groups.all(|group| off(group));
        if !(off(&rule.when) || by_groups) {
            return false;
        }
    }
    any
}

/// Triggers that a number switches: a word of the place, the use or what fills a
/// guard never takes a rule's subject away.
fn is_measured_trigger(condition: &Condition) -> bool {
    matches!(
        condition.item,
        Item::Built | Item::Children | Item::Drop | Item::Risers | Item::Storeys
    )
}

/// Whether a rule asks how high a guard is at least.
fn limits_the_height(rule: &Rule) -> bool {
    rule.checks.iter().any(|check| {
        let bounds = match (&check.demand, check.subject) {
            (Demand::Length(bounds), Subject::Item(Item::Height)) => bounds,
            (_, Subject::AnyOpening | Subject::Item(_) | Subject::LoadPath) => return false,
        };
        bounds.at_least.is_some() || bounds.above.is_some()
    })
}

/// Whether a rule asks how wide an opening is at most.
fn limits_openings(rule: &Rule) -> bool {
    rule.openings(Item::Opening)
        .any(|demand| demand.stops_ball.is_some() || demand.at_most.is_some())
}

/// At a window one rule speaks of the sill and of the opening, for both hazards.
fn grants_at_a_window(rule: &Rule) -> bool {
    let for_windows = rule.when.iter().any(|condition| {
        condition.item == Item::Place
            && matches!(&condition.test, Test::OneOf(words) if words.contains(&PlaceWord::Window.name()))
    });
    let sill = |item: Item| matches!(item, Item::SillHeight | Item::SillAboveGround);
    let of_sill = rule.conditions().any(|condition| sill(condition.item))
        || rule
            .checks
            .iter()
            .any(|check| check.items().iter().copied().any(sill));
    for_windows && of_sill && limits_openings(rule)
}

impl WhyUnclear<'_> {
    /// What it makes of a guard that would otherwise meet.
    pub(super) fn verdict(&self) -> Verdict {
        match self {
            WhyUnclear::Silence(_) => Verdict::NotMeasured,
            WhyUnclear::HoleNotAsked(_)
            | WhyUnclear::NoRuleRead
            | WhyUnclear::NotCovered(_)
            | WhyUnclear::OnlyOneSubject(_)
            | WhyUnclear::Unread(_) => Verdict::NotSettled,
        }
    }
}

impl Finding<'_> {
    /// Whether it takes part in what its ruleset makes of a guard: not where a
    /// rule from memory is met, nor what only strength waits for.
    #[must_use]
    pub fn takes_part(&self) -> bool {
        let counts_for_nothing =
            self.from_memory && matches!(self.verdict, Verdict::Meets | Verdict::DoesNotApply);
        self.counts() && !counts_for_nothing && !self.is_strength_unseen()
    }

    /// Whether it is open only because something that bears on strength was not
    /// written down or cannot be seen.
    #[must_use]
    pub fn is_strength_unseen(&self) -> bool {
        let of_strength = |item: Item| {
            matches!(
                item,
                Item::Condition | Item::FastenedTo | Item::NotchedPost | Item::PostFastening
            )
        };
        let open = matches!(self.verdict, Verdict::NotMeasured | Verdict::NotSettled);
        self.rule.hazard == Hazard::GiveWay
            && open
            && !self.reasons.is_empty()
            && self.reasons.iter().all(|reason| {
                matches!(reason, Reason::StrengthNotJudged)
                    || matches!(reason, Reason::NotWritten(item) if of_strength(*item))
                    || matches!(reason, Reason::Hidden(_) if of_strength(self.item))
            })
    }
}
