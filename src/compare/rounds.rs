//! The guards of two rounds, paired by their names.

use std::collections::BTreeMap;

use crate::compare::change::ChangeFound;
use crate::compare::change::ChangeKind;
use crate::compare::change::GuardOfRound;
use crate::compare::classify::changes;
use crate::input::folded;
use crate::input::nearest;
use crate::items::Verdict;
use crate::survey::Guard;

/// One guard in both rounds.
#[derive(Clone, Debug)]
pub struct GuardPair<'e, 'r> {
    /// As it was.
    pub before: &'e GuardOfRound<'r>,
    /// As it is.
    pub after: &'e GuardOfRound<'r>,
    /// What changed or still falls short, worst first; nothing where it was not entered.
    pub changes: Vec<ChangeFound<'e, 'r>>,
    /// Nobody could look at it in the second round.
    pub not_entered: bool,
}

/// A guard that has no namesake in the other round.
#[derive(Clone, Debug)]
pub struct GuardMissing<'e, 'r> {
    /// The guard.
    pub of: &'e GuardOfRound<'r>,
    /// One without a namesake in the other round whose name is nearest, to ask about.
    pub perhaps: Option<&'e GuardOfRound<'r>>,
}

/// Two rounds beside each other.
#[derive(Clone, Debug)]
pub struct Compared<'e, 'r> {
    /// Guards of both rounds, in the order of the second.
    pub pairs: Vec<GuardPair<'e, 'r>>,
    /// Guards of the first round alone.
    pub missing: Vec<GuardMissing<'e, 'r>>,
    /// Guards of the second round alone.
    pub appeared: Vec<&'e GuardOfRound<'r>>,
}

/// Pairs the guards by building, unit and name, whatever their case, and says what
/// became of each. `law` says whether building rules were judged: they alone decide then.
#[must_use]
pub fn compared<'e, 'r>(
    before: &'e [GuardOfRound<'r>],
    after: &'e [GuardOfRound<'r>],
    law: bool,
) -> Compared<'e, 'r> {
    let mut first: BTreeMap<[String; 3], &GuardOfRound<'_>> = BTreeMap::new();
    for one in before {
        first.insert(names(&one.guard), one);
    }
    let mut pairs = Vec::new();
    let mut appeared = Vec::new();
    for after in after {
        let Some(before) = first.remove(&names(&after.guard)) else {
            appeared.push(after);
            continue;
        };
        let not_entered = after.guard.was_not_entered();
        let changes = if not_entered {
            Vec::new()
        } else {
            changes(before, after, law)
        };
        pairs.push(GuardPair {
            before,
            after,
            changes,
            not_entered,
        });
    }
    let alone = |one: &&GuardOfRound<'_>| first.contains_key(&names(&one.guard));
    let missing = before.iter().filter(alone);
    let missing = missing.map(|of| GuardMissing {
        of,
        perhaps: perhaps(of, &appeared),
    });
    Compared {
        missing: missing.collect(),
        pairs,
        appeared,
    }
}

fn names(guard: &Guard) -> [String; 3] {
    [&guard.building, &guard.unit, &guard.name].map(|name| folded(name))
}

/// One of the same unit whose name is near, else one of this name elsewhere.
fn perhaps<'e, 'r>(
    of: &GuardOfRound<'r>,
    appeared: &[&'e GuardOfRound<'r>],
) -> Option<&'e GuardOfRound<'r>> {
    let own = names(&of.guard);
    let same_unit = |one: &&&GuardOfRound<'_>| names(&one.guard)[..2] == own[..2];
    let mut here = appeared.iter().filter(same_unit);
    let near = nearest(
        &own[2],
        appeared
            .iter()
            .filter(same_unit)
            .map(|one| &*one.guard.name),
    );
    let near = near.and_then(|near| here.find(|one| &*one.guard.name == near));
    // the only one of the unit without a namesake may be it under another name
    let mut others = appeared.iter().filter(same_unit);
    let only = others.next().filter(|_| others.next().is_none());
    let mut all = appeared.iter();
    near.or(only)
        .or_else(|| all.find(|one| names(&one.guard)[2] == own[2]))
        .copied()
}

impl Compared<'_, '_> {
    /// How many things of all guards became so, each thing of a guard counted once for
    /// what decides and once for advice.
    #[must_use]
    pub fn count(&self, kind: ChangeKind, decides: bool) -> usize {
        let of = |pair: &GuardPair<'_, '_>| {
            let mut items: Vec<_> = pair
                .changes
                .iter()
                .filter(|change| change.kind == kind && change.decides == decides)
                .map(|change| (change.item, change.dangers.iter().flatten().count() > 0))
                .collect();
            items.sort_unstable();
            items.dedup();
            items.len()
        };
        self.pairs.iter().map(of).sum()
    }

    /// Whether anything that decides is worse, new or still short; a guard that appeared
    /// and falls short among it.
    #[must_use]
    pub fn falls_short(&self) -> bool {
        let short = |change: &ChangeFound<'_, '_>| {
            let kind = match change.kind {
                ChangeKind::Worse | ChangeKind::New | ChangeKind::StillShort => true,
                ChangeKind::NoLongerMeasured | ChangeKind::Undecided | ChangeKind::Mended => false,
            };
            kind && change.decides
        };
        let mut pairs = self.pairs.iter();
        let mut appeared = self.appeared.iter();
        pairs.any(|pair| {
            pair.after.judged.verdict == Verdict::FallsShort || pair.changes.iter().any(short)
        }) || appeared.any(|one| one.judged.verdict == Verdict::FallsShort)
    }

    /// Whether something is left open: not measured again, not settled, not entered, or
    /// a guard without a namesake.
    #[must_use]
    pub fn is_open(&self) -> bool {
        let open = |change: &ChangeFound<'_, '_>| {
            let kind = match change.kind {
                ChangeKind::NoLongerMeasured | ChangeKind::Undecided => true,
                ChangeKind::Worse
                | ChangeKind::New
                | ChangeKind::StillShort
                | ChangeKind::Mended => false,
            };
            kind && change.decides
        };
        let mut pairs = self.pairs.iter();
        !self.missing.is_empty()
            || !self.appeared.is_empty()
            || pairs.any(|pair| {
                pair.not_entered
                    || pair.after.judged.verdict.is_undecided()
                    || pair.changes.iter().any(open)
            })
    }
}
