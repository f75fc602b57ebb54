//! What can become of one thing from one round to the next.

use crate::items::Item;
use crate::judge::DangerSeen;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::quantities::Length;
use crate::survey::Guard;

/// A guard of one round with what was found.
#[derive(Clone, Debug)]
pub struct GuardOfRound<'r> {
    /// The guard.
    pub guard: Guard,
    /// What was found.
    pub judged: Judged<'r>,
}

/// What became of it, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ChangeKind {
    /// It met and now falls short, or it falls short by more than before.
    Worse,
    /// It falls short, and before nobody had found so.
    New,
    /// It falls short as before.
    StillShort,
    /// It was measured before, and nobody measured it again.
    NoLongerMeasured,
    /// It is not settled whether it was mended.
    Undecided,
    /// It fell short and now meets.
    Mended,
}

impl ChangeKind {
    /// All of them, worst first.
    pub const ALL: [ChangeKind; 6] = [
        ChangeKind::Worse,
        ChangeKind::New,
        ChangeKind::StillShort,
        ChangeKind::NoLongerMeasured,
        ChangeKind::Undecided,
        ChangeKind::Mended,
    ];

    /// The word in reports and in JSON.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            ChangeKind::Worse => "worse",
            ChangeKind::New => "new",
            ChangeKind::StillShort => "still short",
            ChangeKind::NoLongerMeasured => "no longer measured",
            ChangeKind::Undecided => "not settled",
            ChangeKind::Mended => "mended",
        }
    }
}

/// What a reader should know of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ChangeNote {
    /// It is better than before, and not good enough.
    Better,
    /// The readings differ by less than the tapes' doubt.
    WithinDoubt,
    /// It was read in fewer places than before.
    FewerPlaces,
    /// It was read elsewhere than where it was short.
    ElsewhereNow,
    /// It is drawn, and nobody has measured what was built.
    OnlyDrawn,
    /// By what is written now no rule asks for it, or the rule was not judged.
    NotAskedNow,
    /// It is too near to tell, or a rule is unclear.
    NotSettledNow,
    /// What holds it was only looked at, and an engineer decides.
    OnlySeen,
    /// It has a danger that comes before every rule.
    Danger,
}

/// What became of one thing by one rule, or of one danger.
#[derive(Clone, Debug)]
pub struct ChangeFound<'e, 'r> {
    /// What was looked at.
    pub item: Item,
    /// What became of it.
    pub kind: ChangeKind,
    /// What a reader should know of it.
    pub note: Option<ChangeNote>,
    /// It bears on whether anything decided falls short: a building rule, or advice
    /// where no law was judged; or a danger.
    pub decides: bool,
    /// The finding of the first round.
    pub before: Option<&'e Finding<'r>>,
    /// The finding of the second round.
    pub after: Option<&'e Finding<'r>>,
    /// The danger of the first round, and of the second.
    pub dangers: [Option<DangerSeen>; 2],
    /// How far it moved to the good side of its limit; below zero to the bad one.
    pub moved: Option<Length>,
}
