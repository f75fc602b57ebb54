//! The kinds of shortfalls: how soon each, what comes tonight, what lasts, and what
//! bridges the time between. One table. Common practice, no source.

use crate::remedy::kind::RemedyKind;

/// What kind of thing falls short.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "each is described in the table")]
pub enum ShortfallKind {
    Gap,
    Hole,
    GapForAChild,
    GapForAHead,
    TooLow,
    FarTooLow,
    TopAsHandrail,
    BottomGap,
    StairTriangle,
    RiserOpening,
    Foothold,
    FixedStep,
    ThingToClimb,
    Cables,
    LevelBars,
    LooseInfill,
    MissingInfill,
    MovesALot,
    MovesALittle,
    PostFixing,
    PostRotten,
    PostHidden,
    RailEndLoose,
    NoGuard,
    NoHandrail,
    NoHandrailUnasked,
    HandrailHeight,
    BracketLoose,
    HandrailComesOff,
    NoGate,
    PressedGate,
    NoGateBelow,
    WindowOpens,
    LowSill,
    FlakingPaint,
    GapAtWall,
    GapAtJoint,
    VOpen,
    GapAtEdge,
    PoolGate,
    GlassLoose,
    GlassGap,
    GlassUnmarked,
}

/// How soon it should be put right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HowSoon {
    /// Made safe tonight, mended within days.
    Now,
    /// Within about thirty days.
    Soon,
    /// Within two or three months.
    Plan,
    /// Nothing is asked there.
    NotAsked,
}

impl HowSoon {
    /// In a reader's words; `None` where nothing is asked.
    #[must_use]
    pub const fn says(self) -> Option<&'static str> {
        match self {
            HowSoon::Now => Some("tonight, and mended within days"),
            HowSoon::Soon => Some("within 30 days"),
            HowSoon::Plan => Some("within 60 to 90 days"),
            HowSoon::NotAsked => None,
        }
    }
}

/// What the table says of a kind of shortfall.
#[derive(Clone, Copy, Debug)]
pub struct ShortfallRow {
    /// Which kind.
    pub kind: ShortfallKind,
    /// Its name for a reader.
    pub name: &'static str,
    /// How soon: with a small child over a drop, with one and no drop, else over a
    /// drop, else.
    pub soon: [HowSoon; 4],
    /// What comes tonight.
    pub tonight: &'static [RemedyKind],
    /// What lasts, the least change that is safe first.
    pub lasting: &'static [RemedyKind],
    /// What bridges the time until then, and is no lasting remedy.
    pub bridge: &'static [RemedyKind],
}

impl ShortfallKind {
    /// What the table says of it.
    #[must_use]
    pub fn row(self) -> &'static ShortfallRow {
        // the rows stand in the order of the kinds: a test holds it so
        &SHORTFALLS[self as usize]
    }
}

use HowSoon as U;
use RemedyKind as K;
use ShortfallKind as S;

const fn row(
    kind: ShortfallKind,
    name: &'static str,
    soon: [HowSoon; 4],
    tonight: &'static [RemedyKind],
    lasting: &'static [RemedyKind],
    bridge: &'static [RemedyKind],
) -> ShortfallRow {
    ShortfallRow {
        kind,
        name,
        soon,
        tonight,
        lasting,
        bridge,
    }
}

/// All kinds of shortfalls.
#[rustfmt::skip]
pub const SHORTFALLS: &[ShortfallRow] = &[
    row(S::Gap, "a gap too wide", [U::Now, U::Soon, U::Soon, U::Soon], &[K::KeepAway], &[K::BarsBetween, K::Strips, K::SheetScrewed, K::LaidOutAgain, K::NewBay], &[K::MeshInside, K::MeshOutside, K::SheetClamped]),
    row(S::Hole, "a hole of 6 in or more", [U::Now, U::Now, U::Now, U::Soon], &[K::KeepAway, K::BoardOverHole], &[K::NewBaluster, K::BarsBetween, K::LaidOutAgain, K::NewBay], &[K::MeshInside, K::MeshOutside, K::SheetClamped]),
    row(S::GapForAChild, "a gap too wide for a small child", [U::Soon, U::Soon, U::Plan, U::Plan], &[K::KeepAway], &[K::Strips, K::BarsBetween, K::SheetScrewed], &[K::MeshInside, K::MeshOutside, K::SheetClamped]),
    row(S::GapForAHead, "a gap that holds a head", [U::Soon, U::Soon, U::Plan, U::Plan], &[K::KeepAway], &[K::Strips, K::BarsBetween, K::SheetScrewed], &[K::MeshInside, K::MeshOutside, K::SheetClamped]),
    row(S::TooLow, "too low", [U::Soon, U::Soon, U::Soon, U::Soon], &[K::MoveWhatRaises, K::MoveThing, K::KeepAway], &[K::Cap, K::BoardAbove, K::RailAbove, K::NewPosts], &[K::SheetAbove]),
    row(S::FarTooLow, "far too low", [U::Now, U::Soon, U::Now, U::Soon], &[K::KeepAway, K::MoveThing], &[K::NewPosts, K::BoardAbove, K::RailAbove], &[K::BarrierSetBack]),
    row(S::TopAsHandrail, "the top is the handrail, and not where a hand finds it", [U::Plan, U::Plan, U::Plan, U::Plan], &[], &[K::WallHandrail, K::GuardHandrail, K::RaiseTop, K::LowerTop], &[]),
    row(S::BottomGap, "the gap under the bottom rail", [U::Now, U::Soon, U::Soon, U::Soon], &[K::KeepAway, K::BoardAlongGap], &[K::KickBoard, K::StripUnder, K::SecondBottomRail, K::LowerBottomRail], &[]),
    row(S::StairTriangle, "the triangle at the steps", [U::Soon, U::Soon, U::Soon, U::Soon], &[K::StairsShut], &[K::StripUnderStairRail, K::TriangleFillers, K::LowerStairRail, K::ClosedString], &[K::StairGates]),
    row(S::RiserOpening, "the gap between the treads", [U::Soon, U::Soon, U::Plan, U::Plan], &[K::StairsShut], &[K::RiserBar, K::RiserStrip, K::FullRisers], &[K::StairGates, K::RiserMesh]),
    row(S::Foothold, "a foothold", [U::Soon, U::Soon, U::Plan, U::Plan], &[K::MoveThing, K::FootholdAway, K::KeepAway], &[K::Fillet, K::SmoothSheet, K::RaiseAboveFoothold], &[]),
    row(S::FixedStep, "something fixed to stand on", [U::Soon, U::Soon, U::Plan, U::Plan], &[K::KeepAway], &[K::FootholdAway, K::Fillet, K::RaiseAtSeat], &[]),
    row(S::ThingToClimb, "a thing to climb", [U::Now, U::Now, U::Plan, U::Plan], &[K::MoveThing], &[K::RaiseAtSeat], &[]),
    row(S::Cables, "cables", [U::Soon, U::Soon, U::Plan, U::Plan], &[K::KeepAway], &[K::SpreaderBars, K::TightenCables, K::CloserCables, K::UprightsForCables], &[K::CableSheet]),
    row(S::LevelBars, "level bars", [U::Soon, U::Soon, U::Plan, U::Plan], &[K::KeepAway, K::MoveThing], &[K::UprightBoards, K::SheetOverBars, K::BayOfUprights, K::MoreLevelBars], &[K::MeshOverBarsInside, K::MeshOverBarsOutside]),
    row(S::LooseInfill, "loose infill", [U::Now, U::Soon, U::Soon, U::Soon], &[K::TieLoose, K::EverybodyOff], &[K::ScrewLoose, K::NewBaluster], &[]),
    row(S::MissingInfill, "missing infill", [U::Now, U::Now, U::Now, U::Soon], &[K::BoardOverHole, K::KeepAway], &[K::NewBaluster, K::LaidOutAgain], &[]),
    row(S::MovesALot, "it moves a lot", [U::Now, U::Now, U::Now, U::Now], &[K::EverybodyOff], &[K::MendLink, K::BoltsForNails, K::BoltsAndTie, K::NewPostForNotch, K::BlockingUnderPlate, K::AnchorsChecked, K::NewPostForRot], &[K::BarrierSetBack]),
    row(S::MovesALittle, "it moves a little", [U::Now, U::Soon, U::Soon, U::Soon], &[K::EverybodyOff], &[K::TightenNuts, K::MendLink], &[K::BarrierSetBack]),
    row(S::PostFixing, "what holds the posts", [U::Soon, U::Soon, U::Soon, U::Soon], &[K::KeepAway], &[K::BoltsForNails, K::BoltsAndTie, K::NewPostForNotch, K::BlockingUnderPlate, K::AnchorsChecked], &[]),
    row(S::PostRotten, "a post that is rotten or rusted through", [U::Now, U::Now, U::Now, U::Now], &[K::EverybodyOff], &[K::NewPostForRot], &[K::BarrierSetBack]),
    row(S::PostHidden, "what holds the posts is hidden", [U::Soon, U::Soon, U::Plan, U::Plan], &[], &[K::LookAtFixing], &[]),
    row(S::RailEndLoose, "the rail end", [U::Now, U::Soon, U::Soon, U::Soon], &[K::EverybodyOff], &[K::BlockingBehindRail, K::PlateAcrossStuds], &[]),
    row(S::NoGuard, "no railing", [U::Now, U::Soon, U::Now, U::Plan], &[K::CloseTheWay], &[K::NewGuard, K::GroundFilled], &[K::BarrierSetBack]),
    row(S::NoHandrail, "no handrail", [U::Soon, U::Soon, U::Soon, U::Soon], &[], &[K::NewHandrail], &[]),
    row(S::NoHandrailUnasked, "no handrail, though no rule asks", [U::Plan, U::Plan, U::Plan, U::Plan], &[], &[K::NewHandrail], &[]),
    row(S::HandrailHeight, "the handrail is too low or too high", [U::Plan, U::Plan, U::Plan, U::Plan], &[], &[K::MoveBrackets], &[]),
    row(S::BracketLoose, "a loose bracket", [U::Soon, U::Soon, U::Soon, U::Soon], &[K::DoNotHold], &[K::LongerScrews, K::BackingBoard], &[]),
    row(S::HandrailComesOff, "a handrail that comes off", [U::Now, U::Now, U::Now, U::Now], &[K::DoNotHold], &[K::BackingBoard, K::LongerScrews], &[]),
    row(S::NoGate, "no gate at the stair top", [U::Now, U::Now, U::NotAsked, U::NotAsked], &[K::StairsShut], &[K::ScrewedGate], &[K::ClampKit]),
    row(S::PressedGate, "a pressed gate at the stair top", [U::Now, U::Now, U::NotAsked, U::NotAsked], &[K::StairsShut], &[K::ScrewedGate], &[K::ClampKit]),
    row(S::NoGateBelow, "no gate at the stair foot", [U::Soon, U::Soon, U::NotAsked, U::NotAsked], &[K::StairsShut], &[K::ScrewedGate], &[K::PressedGateBelow]),
    row(S::WindowOpens, "the window opens too far", [U::Now, U::Soon, U::Plan, U::Plan], &[K::WindowShut], &[K::WindowStop, K::WindowGuard, K::WallBelowWindow], &[]),
    row(S::LowSill, "the sill is low", [U::Now, U::Soon, U::Plan, U::Plan], &[K::WindowAndFurniture], &[K::SillStop, K::UprightBarsAtWindow, K::WallOrGlassBelow], &[]),
    row(S::FlakingPaint, "flaking paint", [U::Now, U::Now, U::Plan, U::Plan], &[K::KeepOffPaint, K::TestPaint], &[K::Renovator], &[K::EnclosePaint]),
    row(S::GapAtWall, "the gap at the wall", [U::Now, U::Soon, U::Soon, U::Soon], &[K::BoardInWallGap, K::KeepAway], &[K::StripAtWall, K::HalfBaluster, K::UprightInJoint], &[]),
    row(S::GapAtJoint, "the gap where two railings meet", [U::Now, U::Soon, U::Soon, U::Soon], &[K::BoardAcrossJoint, K::KeepAway], &[K::UprightInJoint, K::HeightAcrossJoint], &[]),
    row(S::VOpen, "a V that is open at the top", [U::Soon, U::Soon, U::Plan, U::Plan], &[K::BoardAcrossJoint, K::KeepAway], &[K::VeeClosed], &[]),
    row(S::GapAtEdge, "the gap at the floor edge", [U::Now, U::Soon, U::Soon, U::Soon], &[K::KeepAway, K::BoardAlongEdge], &[K::StripAtEdge], &[]),
    row(S::PoolGate, "the pool gate", [U::Now, U::Now, U::Now, U::Now], &[K::PoolGateLocked], &[K::HingeSet, K::ReleaseRaised, K::GateRehung, K::NewPoolGate], &[]),
    row(S::GlassLoose, "loose or broken glass", [U::Now, U::Now, U::Now, U::Now], &[K::OffAndBelow], &[K::GlassClampsReset, K::NewPane], &[K::BarrierSetBack]),
    row(S::GlassGap, "a gap beside glass", [U::Now, U::Soon, U::Soon, U::Soon], &[K::KeepAway], &[K::GlassEdgeStrip], &[]),
    row(S::GlassUnmarked, "glass without a rail or a mark", [U::Soon, U::Soon, U::Plan, U::Plan], &[], &[K::GlassTopRail, K::NewPane], &[]),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::remedy::kind::HowLong;
    use crate::remedy::kind::REMEDIES;

    #[test]
    fn every_kind_stands_in_its_own_row() {
        for (index, row) in SHORTFALLS.iter().enumerate() {
            assert_eq!(row.kind as usize, index, "{}", row.name);
            assert_eq!(row.kind.row().name, row.name);
            assert!(
                !row.lasting.is_empty() || !row.bridge.is_empty(),
                "{}",
                row.name
            );
        }
    }

    #[test]
    fn what_stands_under_tonight_lasts_that_long_and_what_lasts_is_lasting() {
        let lasts = |kind: &RemedyKind, how: HowLong| kind.row().lasts.contains(&how);
        for row in SHORTFALLS {
            assert!(
                row.tonight.iter().all(|kind| lasts(kind, HowLong::Tonight)),
                "{}",
                row.name
            );
            assert!(
                row.lasting
                    .iter()
                    .all(|kind| lasts(kind, HowLong::Permanent)),
                "{}",
                row.name
            );
        }
    }

    /// A kind that no shortfall names would never be offered.
    #[test]
    fn every_kind_of_remedy_belongs_to_a_shortfall() {
        // the last two are named where others are spoken of: a height to carry
        // across, and a top that is raised as a cap is
        let beside = [RemedyKind::MoveWhatRaises, RemedyKind::RaiseAboveFoothold];
        for remedy in REMEDIES {
            let named = SHORTFALLS.iter().any(|row| {
                let mut all = row.tonight.iter().chain(row.lasting).chain(row.bridge);
                all.any(|kind| *kind == remedy.kind)
            });
            assert!(named || beside.contains(&remedy.kind), "{}", remedy.key);
        }
    }
}
