//! What would put a guard right: one remedy for each thing measured, aimed at the
//! strictest that any chosen ruleset asks of it, advice too. Common practice, no source.
//!
//! None lowers a guard, adds a rung where infill can be climbed, or fastens
//! anything to a guard that moves: what holds it comes first.

use crate::items::Hazard;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::judge::Operator;
use crate::quantities::Length;
use crate::report::advice;
use crate::report::one_line;
use crate::report::words;
use crate::report::wrap::TIE;
use crate::report::wrap::tied;
use crate::survey::Guard;

/// What would put one thing right.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Remedy {
    /// In one or two sentences.
    pub(super) says: String,
    /// What it aims at: `less than 2 3/8 in`; `None` where that is no number.
    pub(super) aims_at: Option<String>,
    /// Who does it.
    pub(super) who: Who,
    /// Whose leave it needs.
    pub(super) leave: Leave,
    /// Whether it makes holes.
    pub(super) holes: RemedyHoles,
    /// How long it lasts.
    pub(super) lasts: Lasts,
}

/// Who does it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Who {
    /// Somebody handy.
    Anybody,
    /// Somebody who builds stairs, decks or railings.
    Builder,
}

impl Who {
    pub(super) const fn name(self) -> &'static str {
        match self {
            Who::Anybody => "somebody handy",
            Who::Builder => "somebody who builds railings",
        }
    }
}

/// Whose leave it needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Leave {
    /// Nobody's.
    None,
    /// The owner's.
    Owner,
}

impl Leave {
    pub(super) const fn name(self) -> &'static str {
        match self {
            Leave::None => "none",
            Leave::Owner => "owner",
        }
    }
}

/// Whether a remedy makes holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum RemedyHoles {
    /// It does.
    Makes,
    /// It does not.
    MakesNone,
}

/// How long a remedy lasts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lasts {
    /// Until something better is done.
    Interim,
    /// For good.
    Permanent,
}

impl Lasts {
    pub(super) const fn name(self) -> &'static str {
        match self {
            Lasts::Interim => "interim",
            Lasts::Permanent => "permanent",
        }
    }
}

/// What would put an item right; `None` where nothing of it falls short.
pub(super) fn remedy(judged: &Judged<'_>, guard: &Guard, item: Item) -> Option<Remedy> {
    let of_item = || judged.findings.iter().filter(move |f| f.item == item);
    let short = |finding: &&Finding<'_>| finding.verdict == Verdict::FallsShort && finding.counts();
    let worst = of_item()
        .filter(short)
        .min_by_key(|finding| (finding.margin, !finding.binding))?;
    let strictest = strictest(of_item(), worst);
    let aims_at = strictest.limit.as_ref().map(words::limit);
    let (says, who, leave, holes, lasts) = plan(guard, worst, strictest);
    let says = if waits_for_the_posts(judged, item) {
        format!("First have what holds it put right, and fasten nothing to it before. Then: {says}")
    } else {
        says
    };
    Some(Remedy {
        // lines are broken by whoever prints them
        says: says.replace(TIE, " "),
        aims_at,
        who,
        leave,
        holes,
        lasts,
    })
}

/// Of all that is asked of an item in the same direction as what falls short, the
/// finding that asks most.
fn strictest<'f, 'r>(
    all: impl Iterator<Item = &'f Finding<'r>>,
    worst: &'f Finding<'r>,
) -> &'f Finding<'r> {
    let Some(narrow) = direction(worst) else {
        return worst;
    };
    let asked = all.filter(|finding| {
        let asks = finding.verdict != Verdict::DoesNotApply;
        asks && direction(finding) == Some(narrow)
    });
    let size = |finding: &&Finding<'r>| {
        let limit = finding.limit.as_ref();
        let size = limit.and_then(|limit| limit.value).unwrap_or(Length::ZERO);
        match narrow {
            Towards::Less => size,
            Towards::More => -size,
        }
    };
    asked
        .filter(|finding| finding.limit.as_ref().is_some_and(|l| l.value.is_some()))
        .min_by_key(size)
        .unwrap_or(worst)
}

/// Which way a limit asks a measure to go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Towards {
    Less,
    More,
}

fn direction(finding: &Finding<'_>) -> Option<Towards> {
    match finding.limit.as_ref()?.operator {
        Operator::AtMost | Operator::Below | Operator::StopsBall => Some(Towards::Less),
        Operator::Above | Operator::AtLeast => Some(Towards::More),
        Operator::AngleAtLeast
        | Operator::Entraps
        | Operator::Is
        | Operator::IsNot
        | Operator::LadderBelow
        | Operator::LadderUpTo
        | Operator::NoneWithin
        | Operator::NotWithin => None,
    }
}

/// Whether something else comes first: what holds the guard is in danger or wrong.
fn waits_for_the_posts(judged: &Judged<'_>, item: Item) -> bool {
    let of_strength = item.info().hazards.contains(&Hazard::GiveWay)
        || item == Item::Guard
        || item == Item::ThingToClimb;
    let moves = judged
        .dangers
        .iter()
        .any(|seen| seen.danger.hazard == Hazard::GiveWay);
    let short = judged.findings.iter().any(|finding| {
        finding.rule.hazard == Hazard::GiveWay
            && finding.verdict == Verdict::FallsShort
            && finding.item != Item::InfillLoose
    });
    !of_strength && (moves || short)
}

type RemedyOutline = (String, Who, Leave, RemedyHoles, Lasts);

fn plan(guard: &Guard, worst: &Finding<'_>, strictest: &Finding<'_>) -> RemedyOutline {
    let owner = |says: String| {
        (
            says,
            Who::Builder,
            Leave::Owner,
            RemedyHoles::Makes,
            Lasts::Permanent,
        )
    };
    let until = until(strictest);
    let climbable = guard.of(Item::Infill).any(|(_, o)| {
        matches!(
            o.word(),
            Some(InfillWord::HorizontalBars | InfillWord::Cables)
        )
    });
    let item = worst.item;
    let gap = item == Item::Opening || item == Item::EndGap;
    if item == Item::Height && direction(worst) == Some(Towards::Less) {
        return owner(
            "do not lower the railing: put up a handrail of its own at the height that is asked, so that \
the top of the railing need not be one."
                .to_owned(),
        );
    }
    if (gap || item == Item::GapAboveSolidPart) && climbable {
        return owner(format!(
            "cover the inner side with a panel or a mesh too close for a foot, from the floor to the rail{until}."
        ));
    }
    if gap && direction(worst) != Some(Towards::More) {
        return owner(format!(
            "close or narrow it: another upright, a panel or a mesh too close for a foot{until}."
        ));
    }
    let nothing_fixed = |says: String, lasts: Lasts| {
        let holes = RemedyHoles::MakesNone;
        (says, Who::Anybody, Leave::None, holes, lasts)
    };
    if item == Item::ThingToClimb {
        return nothing_fixed(
            "move it away from the railing.".to_owned(),
            Lasts::Permanent,
        );
    }
    // the words name the limit of one that falls short
    let named = if strictest.verdict == Verdict::FallsShort {
        strictest
    } else {
        worst
    };
    let says = advice::put_right(named);
    if item == Item::Paint {
        return nothing_fixed(says, Lasts::Interim);
    }
    owner(says)
}

/// `, until a 2 3/8 in ball no longer passes`
fn until(finding: &Finding<'_>) -> String {
    match &finding.limit {
        Some(limit) if limit.operator == Operator::StopsBall => {
            let ball = tied(&format!("{} ball", one_line(&limit.written)));
            format!(", until a {ball} no longer passes anywhere")
        }
        Some(limit) if limit.operator == Operator::AtMost => {
            format!(", until it is {}", tied(&one_line(&words::limit(limit))))
        }
        Some(_) | None => String::new(),
    }
}
