//! The load path's parts in words: which case of a link, what a calculation works
//! out, what was taken as given.

use crate::judge::LinkCase;
use crate::judge::LinkKind;
use crate::judge::StepName;
use crate::judge::Taken;

/// Which part of the load path it is.
#[must_use]
pub(super) const fn kind(kind: LinkKind) -> &'static str {
    match kind {
        LinkKind::Infill => "infill",
        LinkKind::InfillFixing => "ends of the infill",
        LinkKind::TopRail => "top rail",
        LinkKind::RailEnd => "rail end",
        LinkKind::Post => "post",
        LinkKind::PostFixing => "post fixing",
        LinkKind::Framing => "framing",
        LinkKind::FramingConnection => "what holds the framing",
        LinkKind::Stiffness => "stiffness in the pull test",
    }
}

/// Which case of a link: `bending, pressed down`.
#[must_use]
pub(super) const fn case(case: LinkCase) -> &'static str {
    match case {
        LinkCase::BalusterBending => "a baluster bending",
        LinkCase::Bending => "bending",
        LinkCase::BendingAtNeck => "bending at its turned neck",
        LinkCase::BendingDown => "bending, pressed down",
        LinkCase::BendingLevel => "bending, pushed level",
        LinkCase::BendingWhereFixed => "bending where it is fixed",
        LinkCase::BlockingSplit => "blocking split along its grain",
        LinkCase::BoardsOnly => "subfloor or decking boards only",
        LinkCase::BoltPulled => "bolt pulled: steel",
        LinkCase::Bolts => "bolts",
        LinkCase::BoltsPressedDown => "bolts pressed down",
        LinkCase::BoltsPushedSideways => "bolts pushed sideways by the couple",
        LinkCase::Breakout => "anchors of the plate break out of the concrete",
        LinkCase::Cables => "cables",
        LinkCase::Concrete => "concrete",
        LinkCase::DrywallOnly => "drywall only",
        LinkCase::EndOfHalfWall => "the end of a half wall",
        LinkCase::EndPostPulled => "end post pulled by its cables",
        LinkCase::FastenedTo => "what the post is fastened to",
        LinkCase::HoldsThePost => "what holds the post",
        LinkCase::InRottenWood => "in rotten wood",
        LinkCase::Infill => "what fills it",
        LinkCase::Masonry => "masonry",
        LinkCase::PanelsOrBars => "panels or bars",
        LinkCase::PlateBent => "plate bent",
        LinkCase::Pocket => "concrete around the post",
        LinkCase::PressedDown => "pressed down",
        LinkCase::PulledAlong => "pulled along the rail",
        LinkCase::PulledAway => "pulled away from the joists",
        LinkCase::PulledAwayBelow => "pulled away at its bottom",
        LinkCase::PulledInward => "pulled inward",
        LinkCase::PulledOut => "pulled out",
        LinkCase::PulledUpward => "pulled upward",
        LinkCase::PushedOutward => "pushed outward",
        LinkCase::RodPulled => "central rod pulled",
        LinkCase::ScrewsPressedDown => "screws pressed down",
        LinkCase::Shear => "shear",
        LinkCase::ShearBetweenFasteners => "shear between its fasteners",
        LinkCase::Stud => "stud",
        LinkCase::TopMoves => "movement of the top under 200 lbf (890 N)",
        LinkCase::UpperScrewPulledOut => "upper screw pulled out",
        LinkCase::WasherPressed => "washer pressed into the wood",
        LinkCase::WorstPlateScrew => "worst screw of the plate pulled out",
    }
}

/// What a part of a calculation works out: `load on it, at least`.
#[must_use]
pub(super) const fn step(step: StepName) -> &'static str {
    match step {
        StepName::CablePushed => {
            "one cable of 1/8 in pushed at the middle of a bay, clamped at the posts"
        }
        StepName::Load => "load on it",
        StepName::LoadAtLeast => "load on it, at least",
        StepName::LoadAtMost => "load on it, at most",
        StepName::RimTwisted => {
            "the rim alone, twisted by a post between two joists (no value for lumber in torsion was found; shear values are 130 to 280 psi)"
        }
        StepName::Takes => "what it can take",
        StepName::TakesAtLeast => "what it can take, at least",
        StepName::TakesAtMost => "what it can take, at most",
    }
}

/// What a link took as given.
#[must_use]
pub(super) const fn taken(taken: Taken) -> &'static str {
    match taken {
        Taken::OneSpan => "the rail between two posts by itself, as if it ended at each",
        Taken::Covering => "boards on the framing of anything up to 2 in",
        Taken::Depth => "the upper fastener 1 to 6 in below the top of the framing",
        Taken::Distances => "bolts at the full distances from ends and edges",
        Taken::Duration => {
            "load duration both as ten years and as ten minutes (C_D 1.0 and 1.6: disputed)"
        }
        Taken::Grade => "every grade from Standard and No. 3 to No. 1",
        Taken::Moisture => "the wood both dry and wet",
        Taken::NotchHalf => "half of the notched post left, without counting splits",
        Taken::OneScrew => "one No. 8 screw with 1/2 in of thread at each end",
        Taken::PointAlone => {
            "the load at one point alone: how far apart the posts are is not written, and the load along the top may be greater"
        }
        Taken::Rim => "a rim or joist 1 1/2 in thick",
        Taken::RimOrMore => "a rim or joist of 1 1/2 in, or a doubled one",
        Taken::BestBoard => "the best bending value of any lumber that was read",
        Taken::FramingSpecies => "every usual wood in the framing, whatever the posts are made of",
        Taken::LowerRail => "with and without a second rail below the top rail",
        Taken::Pivot => {
            "the post pressing at its lower bolt, or at the bottom edge of a rim up to 11 1/4 in deep"
        }
        Taken::Slits => "treated wood with and without rows of small slits, which take a fifth",
        Taken::Tension => "100 to 400 lb in each cable",
        Taken::EvenCables => "cables evenly spaced from the floor to the rail",
        Taken::Label => {
            "the label of the tie with load duration in it and without, its screws in wet wood"
        }
        Taken::SameMaterial => "rails and balusters of wood, as the posts",
        Taken::Species => "every usual wood, from the weakest to the strongest",
        Taken::Subfloor => "a subfloor of 23/32 in",
        Taken::Thread => "the thread by the usual share of a screw's length",
    }
}
