//! Why a link of the load path has no number, or falls short without one, in words.

use crate::judge::LinkReason;

/// The reason for a reader.
#[must_use]
pub(super) const fn reason(reason: LinkReason) -> &'static str {
    match reason {
        LinkReason::AnchorDepthAndEdgeDecide => {
            "how deep the anchors sit and how near they are to the edge of the concrete decide"
        }
        LinkReason::AnchorsDependOnConcrete => {
            "anchors depend on the concrete or masonry around them and on the distance to its edge: somebody who knows them has to look"
        }
        LinkReason::AnchorsInMasonry => {
            "anchors in masonry depend on the wall behind: somebody who knows them has to look"
        }
        LinkReason::AnchorsNearEdge => {
            "the anchors are nearer than 2 1/2 in to the edge of the concrete, which the approval that was read does not allow"
        }
        LinkReason::AnchorsOnlyBreakout => {
            "steel, pulling out, splitting, glue and cracks of the concrete are not in it: somebody who knows anchors has to look"
        }
        LinkReason::BalusterEndsUnseen => "the ends of the balusters cannot be seen",
        LinkReason::BalusterFixingNotWritten => "nobody wrote what holds the balusters",
        LinkReason::BalusterNailsUnseen => "how the nails sit, and how deep, cannot be seen",
        LinkReason::BalusterSpacingNotWritten => {
            "nobody wrote how far apart and how long the balusters are"
        }
        LinkReason::BalusterThicknessNotWritten => "nobody wrote how thick the balusters are",
        LinkReason::BalustersNotWood => {
            "balusters of metal or plastic: no published strength fits unseen"
        }
        LinkReason::BlockingAcrossGrain => {
            "screws pull the blocking across its grain, for which no value is published: every layout of blocking with lags that was tested split below 500 lb"
        }
        LinkReason::BlockingSplitInTests => {
            "no published value: blocking split in tests below 500 lb; somebody who builds decks has to look"
        }
        LinkReason::BoltEdgesNotWritten => {
            "how near the bolts are to the edges of the rim is not written"
        }
        LinkReason::BoltNearEdge => {
            "a bolt nearer than four diameters to the bottom edge of the rim, or than one and a half to its top: somebody on the rail may split the rim off below it"
        }
        LinkReason::BoltsHaveNoNumbers => "bolts are not sold by the numbers of wood screws",
        LinkReason::BoltsThroughPostOnFloor => {
            "no method here for bolts through a post that stands on the floor"
        }
        LinkReason::BracketLabelNotWritten => {
            "what a bracket carries stands on its label, and none is written"
        }
        LinkReason::BracketOrWeld => {
            "no published value: a bracket's stands on its label, a weld's is for a welder or an engineer"
        }
        LinkReason::BradsOrGlue => "brads and glue have no value that may be counted",
        LinkReason::CablesForAnEngineer => {
            "how tight the cables are and what the end posts take is for an engineer"
        }
        LinkReason::CablesNotWritten => "nobody wrote whether cables pull at the posts",
        LinkReason::CablesPullOnTop => {
            "the pull of the cables comes on top, and is not in this number"
        }
        LinkReason::CharacteristicLoads => {
            "this rule's loads are characteristic ones: what the link can take has to come from the same country's design code"
        }
        LinkReason::CharacteristicLoadsWantLengths => {
            "this rule's loads are characteristic ones; the load on this link wants more lengths"
        }
        LinkReason::Concrete => {
            "its strength and the distance to its edge decide, and somebody who knows anchors has to look; makers list 400 to 790 lb (1.8 to 3.5 kN) for one sleeve anchor of 3/8 to 1/2 in far from any edge, less near one (read second-hand)"
        }
        LinkReason::ConditionNotWritten => "nobody wrote whether there is rot, rust or a crack",
        LinkReason::ContactNotWritten => {
            "nobody wrote whether post and framing touch, with nothing between them"
        }
        LinkReason::CoupleOnBoltsUnknown => "the couple on the bolts is not known",
        LinkReason::CoupleOnPostUnknown => "the couple that shears the post is not known",
        LinkReason::DecayedSomewhere => {
            "cracks, deep rust or rot take strength that no number here counts"
        }
        LinkReason::EndPostsOfCables => {
            "the end posts carry the pull of every cable for as long as it is tight, and what holds their tops cannot be told: an engineer's matter"
        }
        LinkReason::FastenedToNotWritten => "nobody wrote what the posts are fastened to",
        LinkReason::FastenedToUnseen => {
            "it cannot be seen: look from below, or ask to lift a board"
        }
        LinkReason::FastenerMissing => "a bolt or screw is missing, or its nut",
        LinkReason::FastenersNotWritten => {
            "nobody wrote how many fasteners hold a post, how thick and how long they are"
        }
        LinkReason::FastenersSitNotWritten => "nobody wrote what the fasteners sit in",
        LinkReason::FastenersSitUnseen => "what the fasteners sit in cannot be seen",
        LinkReason::FloorBoardsOnly => {
            "no framing is reached: screws in floor boards alone give way long before the load that rules ask"
        }
        LinkReason::FramingHeldNotWritten => "nobody wrote what holds the joist or rim board",
        LinkReason::FramingHeldUnseen => "it cannot be seen: look from below, behind the post",
        LinkReason::HalfWallEndGrain => {
            "studs that are nailed through their plates are held in end grain: a wall that ends free does not stand up to a push by that"
        }
        LinkReason::HangersCarryDownward => {
            "hangers carry downward, and count for nothing against a pull away from the joists"
        }
        LinkReason::HeightNotWritten => "how high the rail is, is not written",
        LinkReason::HeightOrSpacingNotWritten => {
            "how high the rail is, or how far apart the posts are, is not written"
        }
        LinkReason::Hinge => {
            "one bolt or screw alone is a hinge: nothing here can be worked out for it"
        }
        LinkReason::HoldingDecidesShear => "how the post is held decides what shears it",
        LinkReason::HolesNotWritten => {
            "how wide the holes of its bolts or screws are is not written"
        }
        LinkReason::HolesThroughHollowPost => {
            "holes for bolts through a hollow post are not counted"
        }
        LinkReason::HollowWallAnchor => {
            "an anchor in a hollow wall is no load path: toggles are rated at 30 to 50 lb for things that hang, plaster board crumbles, and pulling out is the weaker way"
        }
        LinkReason::InfillNotWritten => "nobody wrote what the infill is",
        LinkReason::LineLoadWantsSpacing => {
            "the load along the top depends on how far apart the posts are"
        }
        LinkReason::LowestGradeHasNoValue => {
            "no value was read for the lowest grade and species that this wood may be"
        }
        LinkReason::Masonry => {
            "how sound the brick or block is and the distance to its edge decide, and somebody who knows anchors has to look; makers list 140 to 400 lb (0.6 to 1.8 kN) for one 3/8 in anchor glued into hollow block, and 450 to 900 lb (2.0 to 4.0 kN) in sound brick (read second-hand)"
        }
        LinkReason::MaterialNotWritten => "nobody wrote what it is made of",
        LinkReason::MaterialOfPostsNotWritten => "nobody wrote what the posts are made of",
        LinkReason::MovementNotWritten => "nobody wrote whether it moves when it is pushed by hand",
        LinkReason::MovesALittle => {
            "it moves a little: looser than a sound joint until somebody has tightened it and looked again"
        }
        LinkReason::MovesALot => "it moves a lot: something in this joint gives already",
        LinkReason::NailLengthNotWritten => "how long the nails are is not written",
        LinkReason::NailsAgainstAPull => "nails draw out: they may not be relied on against a pull",
        LinkReason::NailsHaveNoNumbers => {
            "nails are sold by their thickness, and not by the numbers of screws"
        }
        LinkReason::NailsHoldNoPost => {
            "nails draw out: they may not be relied on to hold a post against a pull"
        }
        LinkReason::NeckHasNoGrade => "the wood of a turned post has no grade that can be read",
        LinkReason::NeckHeightNotWritten => "how high the neck sits above the floor is not written",
        LinkReason::NoFactorsForSize => "no published factors for wood of this size",
        LinkReason::NoFramingReached => "no framing is reached: see what it is fastened to",
        LinkReason::NoLoadAlongTheTop => "no load along the top is known",
        LinkReason::NoMethodForInfill => {
            "no method here for this infill; glass and panels are for their maker or an engineer"
        }
        LinkReason::NoPublishedValue => "no published value",
        LinkReason::NoStrengthForMaterial => {
            "no published strength for this material: iron may be brittle, and plastics differ"
        }
        LinkReason::NoSuchSection => "the sizes of this post make no section",
        LinkReason::NoTableForBolts => "bolts of this size stand in no published table here",
        LinkReason::NoTableForRailScrews => "screws of this size stand in no table here",
        LinkReason::NoTableForScrews => "screws of this size stand in no published table here",
        LinkReason::NoValueAcrossGrain => "no value across the grain was read for this wood",
        LinkReason::NoValueForFixing => "no published value for this fixing",
        LinkReason::NoValueForPlateGround => "no published value for what the plate is fastened to",
        LinkReason::NoWasher => "no washer under a head or nut: a bare head draws into the wood",
        LinkReason::NoWasherUnderLag => {
            "no washer: whether the head draws into the post was not worked out, and no published value counts for it"
        }
        LinkReason::NotchNotWritten => "nobody wrote whether the post is notched where it is fixed",
        LinkReason::NotchSplits => {
            "a notch splits a post along the grain from its corner, and no number here counts that"
        }
        LinkReason::NotchedThinPost => {
            "a thin post notched where it is fixed: half a notch leaves a quarter of the bending strength, and notched posts on lag screws failed in tests at 178 lb on average"
        }
        LinkReason::NothingAlongTheRail => {
            "nails and screws in the end of a rail count for nothing along it; the next bay or a post has to hold it"
        }
        LinkReason::OutsideTables => "outside the published tables",
        LinkReason::PlasterBoard => {
            "plaster board is no load path: it crumbles, and anchors in it are rated for things that hang"
        }
        LinkReason::PlateGroundNotWritten => "nobody wrote what the plate is fastened to",
        LinkReason::PlateMetalBrittle => {
            "a cast or welded plate of this metal may be brittle or soft"
        }
        LinkReason::PlateThicknessNotWritten => "how thick the plate is, is not written",
        LinkReason::PostAndFramingApart => {
            "post and framing do not touch: with siding, spacers or a gap between them no published value holds"
        }
        LinkReason::PostFastenedUnseen => {
            "nobody can see it: ask to lift the cover or the board at the foot of a post"
        }
        LinkReason::PostFasteningNotWritten => "nobody wrote what holds the posts",
        LinkReason::PostNotWood => "no method here for a fastener through a post that is not wood",
        LinkReason::PostPositionNotWritten => {
            "nobody wrote whether the post stands outside the rim, inside it or flat on a joist"
        }
        LinkReason::PostSpacingNotWritten => "nobody wrote how far apart the posts are",
        LinkReason::PostThicknessNotWritten => "nobody wrote how thick the posts are",
        LinkReason::PullOnAnchorsUnknown => "the pull on the anchors is not known",
        LinkReason::PullOnPlateScrewsUnknown => "the pull on the screws of the plate is not known",
        LinkReason::PullOnRodUnknown => "the pull on the rod is not known",
        LinkReason::PullOnTieUnknown => "the pull on the tie is not known",
        LinkReason::PullOnUpperBoltUnknown => "the pull on the upper bolt is not known",
        LinkReason::PullOnUpperScrewUnknown => "the pull on the upper screw is not known",
        LinkReason::RailEndNotWritten => "nobody wrote what holds the rail's ends",
        LinkReason::RailEndUnseen => {
            "what holds the rail's end cannot be seen: look behind the bracket or its cover"
        }
        LinkReason::RailLetIn => {
            "no published value for a rail that is let into a notch of the post"
        }
        LinkReason::RailMayBeHigher => "the rail may be higher than what was tried",
        LinkReason::RailNailsNotWritten => {
            "nobody wrote how many nails hold the rail's end, how thick and how long"
        }
        LinkReason::RailNotWood => "a rail of metal or plastic: its strength cannot be seen",
        LinkReason::RailPositionNotWritten => {
            "how the rail sits on the posts decides, and nobody wrote it"
        }
        LinkReason::RailScrewLengthNotWritten => {
            "how long the screws in the rail's end are is not written"
        }
        LinkReason::RailScrewsNotWritten => {
            "nobody wrote how many screws hold the rail's end, how thick and how long"
        }
        LinkReason::RailSectionNotWritten => "nobody wrote how wide and high the top rail is",
        LinkReason::RimOnEndGrain => {
            "the rim board hangs on nails or screws in the ends of the joists, and those may not be counted against a pull at its top"
        }
        LinkReason::RodEndsUnseen => {
            "the washer below and how the thread sits in the newel cannot be seen"
        }
        LinkReason::RottenFixings => {
            "rotten wood: no number can be trusted, and the fixings in it have lost their hold"
        }
        LinkReason::RottenPost => {
            "rotten wood: no number can be trusted, and the fixings have lost their hold"
        }
        LinkReason::ScrewsInConcrete => {
            "screws and bolts in concrete or masonry hold by their anchors: write which, or ask whoever set them"
        }
        LinkReason::ScrewsInEndGrain => {
            "screws in the end of a piece of wood count for nothing against a pull"
        }
        LinkReason::ScrewsThroughFoot => {
            "no method here for screws through the foot of a post into what it stands on, or across a joist"
        }
        LinkReason::ScrewsToPostUnknown => "how far the screws are from the post is not known",
        LinkReason::ScrewsTooShallow => {
            "the screws reach less deep into the wood than the method asks at least: no value counts"
        }
        LinkReason::SlenderWalls => "walls so thin that they may buckle before the metal yields",
        LinkReason::SocketCannotBeTold => {
            "what a post set in concrete holds cannot be told from outside: look for cracks, rust stains and standing water in the socket"
        }
        LinkReason::StudPulledSideways => "no method here for a stud that is pulled sideways",
        LinkReason::ThinBoardRail => {
            "boards thinner than 1 1/2 in have no published bending value as rails"
        }
        LinkReason::ThreadNotKnown => "how much of each screw sits in the framing is not known",
        LinkReason::TieAtWhichBolt => {
            "a tie holds only at the bolt that it is at: look whether it is the upper one"
        }
        LinkReason::TieHoldsOnlyTop => {
            "the tie holds the top of the framing; what holds its bottom when somebody pulls inward is not known"
        }
        LinkReason::TieLabelNotWritten => {
            "what a tie carries stands on its label; compare it with the load given here"
        }
        LinkReason::TooStiffForARuler => {
            "it moved less than a ruler can tell; that says nothing about strength"
        }
        LinkReason::TwoPullsNeeded => "two pulls of different force are needed",
        LinkReason::WallThicknessUnseen => {
            "how thick the metal of the hollow post is cannot be seen from outside"
        }
        LinkReason::WasherMayPressIn => {
            "the washer may press into the wood and the joint work loose; whether it pulls through was not worked out"
        }
        LinkReason::WasherNoWiderThanHole => "the washer is no wider than its hole",
        LinkReason::WasherPressesIn => {
            "the washer presses into the wood and the joint works loose; whether it pulls through was not worked out"
        }
        LinkReason::WasherSizeNotWritten => "nobody wrote how wide the washers are",
        LinkReason::WhichWayTheJoistRuns => {
            "whether the pull lands on the nails depends on which way the joist runs"
        }
    }
}
