//! Remedies of what holds a guard, of a guard that is not there, of things near it. What
//! only a push or a look at the built thing can settle stays not measured.

use crate::items::FastenedToWord;
use crate::items::GuardWord;
use crate::items::Hazard;
use crate::items::InfillLooseWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::MovesWhenPushedWord;
use crate::items::NotchedPostWord;
use crate::items::OpeningsCheckedWord;
use crate::items::PaintWord;
use crate::items::PostFasteningWord;
use crate::items::Verdict;
use crate::judge::Finding;
use crate::judge::Judged;
use crate::quantities::Length;
use crate::remedy::aim::Measuring;
use crate::remedy::change::GuardChange;
use crate::remedy::change::changed;
use crate::remedy::demands::Demands;
use crate::remedy::drawn::Drawn;
use crate::remedy::drawn::is_stair;
use crate::remedy::kind::RemedyKind;
use crate::remedy::mends::mends_of;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::HowMany;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::MaterialPart;
use crate::remedy::quantity::along;
use crate::remedy::quantity::measured;
use crate::remedy::topics;
use crate::remedy::topics::says;
use crate::survey::Guard;

/// Whether a shortfall rests on the load path alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum LoadsShort {
    /// It does.
    Alone,
    /// Something that was seen falls short as well.
    WithOthers,
}

const LATER: &str = "to be looked at and pushed again when it is built";

/// A guard that moves: the link that moves is mended.
pub(super) fn moves(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let change = || {
        let pushed = Item::MovesWhenPushed;
        let change = GuardChange::default().instead(drawn.guard, pushed, "not reached", LATER);
        // that it moves may be all that says that it is there
        change.instead(drawn.guard, Item::Guard, GuardWord::Present.name(), "")
    };
    let nuts = "Tighten nuts and replace missing washers; from the inside, nobody leaning on it. Stop when \
                the wood is crushed. Push it again with one hand: if it still moves, keep off it."
        .to_owned();
    let link = "Have what moves found and mended (post foot, rail end, edge), and keep off it until then; posts \
                through-bolted to framing that is tied back. Push it again with one hand when done."
        .to_owned();
    let mut all = Vec::new();
    // what is welded, embedded or not seen has no nut to tighten
    let with_nuts = [
        PostFasteningWord::ThroughBolts,
        PostFasteningWord::Bracket,
        PostFasteningWord::Plate,
    ];
    let a_lot = says(drawn.guard, MovesWhenPushedWord::ALot);
    if !a_lot && with_nuts.iter().any(|word| says(drawn.guard, *word)) {
        all.push(
            Offered::new(RemedyKind::TightenNuts, nuts, change()).taking(10, 20, LabourPer::Post),
        );
    }
    all.push(
        Offered::new(RemedyKind::MendLink, link, change())
            .of(bolts(drawn.guard))
            .taking(90, 360, LabourPer::Post),
    );
    all
}

/// Two bolts, four washers, a tie and two pieces of blocking a post. (common practice, no
/// source)
fn bolts(guard: &Guard) -> MaterialPart {
    let length = measured(guard, Item::GuardLength);
    let spacing = measured(guard, Item::PostSpacing).filter(|spacing| *spacing > Length::ZERO);
    let posts = match (length, spacing) {
        (Some(length), Some(spacing)) => {
            let bays = (length.nanometres() + spacing.nanometres() - 1) / spacing.nanometres();
            u32::try_from(bays + 1).ok()
        }
        (Some(_) | None, _) => None,
    };
    let asked = [Item::GuardLength, Item::PostSpacing];
    let missing = asked
        .into_iter()
        .filter(|item| measured(guard, *item).is_none())
        .collect();
    MaterialPart {
        what: "posts, each with 2 through-bolts of 1/2 in (12 mm), 4 washers, 1 tie, 2 pieces of blocking"
            .to_owned(),
        how_many: posts.map_or(HowMany::Write(missing), |posts| HowMany::from_to(1, posts)),
        length: None,
        buy: None,
    }
}

/// What the load path calls for; an engineer decides, and no drawing here shows it.
fn for_an_engineer(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let short = |finding: &&Finding<'_>| finding.verdict == Verdict::FallsShort;
    let short = drawn.judged.findings.iter().filter(short);
    let mut mends: Vec<String> = Vec::new();
    for mend in short.filter_map(|f| f.chain.as_deref()).flat_map(mends_of) {
        if !mends.contains(&mend) {
            mends.push(mend);
        }
    }
    let says = match mends.split_first() {
        Some((first, more)) => {
            let more = more.iter().map(|mend| format!("; further: {mend}"));
            format!(
                "Have a tradesman fit {first}, as an engineer decides, and keep off it until then{}.",
                more.collect::<String>()
            )
        }
        None => "Have an engineer decide what it takes, and keep off it until then.".to_owned(),
    };
    vec![
        Offered::new(RemedyKind::BoltsAndTie, says, GuardChange::default())
            .of(bolts(drawn.guard))
            .taking(90, 360, LabourPer::Post),
    ]
}

/// What fastens the posts; where only the load path falls short, what it calls for.
pub(super) fn fixing(drawn: &Drawn<'_, '_>, of_loads: LoadsShort) -> Vec<Offered> {
    if of_loads == LoadsShort::Alone {
        return for_an_engineer(drawn);
    }
    let guard = drawn.guard;
    let masonry = says(guard, PostFasteningWord::MasonryAnchors);
    let plate = says(guard, PostFasteningWord::Plate)
        || says(guard, FastenedToWord::Subfloor)
        || says(guard, FastenedToWord::DrywallOnly);
    let notched = says(guard, NotchedPostWord::Yes);
    let nails = says(guard, PostFasteningWord::Nails);
    if masonry {
        let says = "Have the anchors looked at, or tested, by an engineer or by the anchors' maker; no new \
                    hole in a slab or its waterproof layer before that."
            .to_owned();
        return vec![Offered::new(
            RemedyKind::AnchorsChecked,
            says,
            GuardChange::default(),
        )];
    }
    let mut change = GuardChange::default();
    for item in [
        Item::PostFasteners,
        Item::WasherSize,
        Item::FastenerSpacing,
        Item::FastenerDepth,
        Item::EdgeDistance,
    ] {
        change = change.without(guard, item);
    }
    let bolted = PostFasteningWord::ThroughBolts.name();
    let blocking = FastenedToWord::Blocking.name();
    change = change.instead(guard, Item::PostFastening, bolted, "as drawn");
    if plate || guard.of(Item::FastenedTo).next().is_some() {
        change = change.instead(guard, Item::FastenedTo, blocking, "as drawn");
    }
    let (kind, does) = if notched {
        change = change.instead(
            guard,
            Item::NotchedPost,
            NotchedPostWord::No.name(),
            "as drawn",
        );
        (
            RemedyKind::NewPostForNotch,
            "Have each notched post replaced by a whole one; held by two through-bolts with \
             washers, the framing behind it tied back to the joists or blocked.",
        )
    } else if plate {
        (
            RemedyKind::BlockingUnderPlate,
            "Have solid blocking put under each post and the post fastened into it, or taken down to the \
             framing; the floor has to be opened.",
        )
    } else if nails {
        (
            RemedyKind::BoltsForNails,
            "Have each post through-bolted with two bolts of 1/2 in (12 mm) and washers on both sides in \
             place of nails, and the rim tied to the joists.",
        )
    } else {
        (
            RemedyKind::BoltsAndTie,
            "Have each post through-bolted with two bolts of 1/2 in (12 mm), washers on both sides, and the \
             rim tied to the joists or blocked; bolts through a rim alone tear it off.",
        )
    };
    vec![
        Offered::new(kind, does.to_owned(), change)
            .of(bolts(guard))
            .taking(90, 360, LabourPer::Post),
    ]
}

/// A post that is rotten, rusted through, cracked, or whose fastening is gone.
pub(super) fn rotten(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let says =
        "Have what is rotten, rusted, cracked or unfastened replaced by a new post, and its \
                neighbours and what they stand on looked at. Nothing is hung on it before."
            .to_owned();
    let mut change = GuardChange::default();
    if drawn.guard.of(Item::Condition).next().is_some() {
        change = change.instead(drawn.guard, Item::Condition, "not reached", LATER);
    }
    let is_missing = topics::says(drawn.guard, PostFasteningWord::Missing);
    if is_missing {
        let bolts = PostFasteningWord::ThroughBolts.name();
        change = change.instead(drawn.guard, Item::PostFastening, bolts, "as drawn");
    }
    vec![
        Offered::new(RemedyKind::NewPostForRot, says, change)
            .of(bolts(drawn.guard))
            .taking(180, 360, LabourPer::Post),
    ]
}

/// The end of a rail at a wall or post.
pub(super) fn rail_end() -> Vec<Offered> {
    let behind =
        "Have blocking put between two studs behind the rail's end, and the rail screwed into it \
                  with at least 1 1/2 in (38 mm) of thread in wood."
            .to_owned();
    let plate =
        "Have a board fixed across two studs, and the rail's end screwed into it.".to_owned();
    vec![
        Offered::new(
            RemedyKind::BlockingBehindRail,
            behind,
            GuardChange::default(),
        )
        .taking(90, 180, LabourPer::End),
        Offered::new(RemedyKind::PlateAcrossStuds, plate, GuardChange::default()).taking(
            60,
            120,
            LabourPer::End,
        ),
    ]
}

/// The gap below as it is written; where so little is allowed that none can be built, none.
fn open_below(m: &Measuring, below: Length) -> String {
    if below > Length::ZERO {
        m.drawn(below, m.gaps)
    } else {
        "none".to_owned()
    }
}

/// An open edge: a new guard to today's rules. `judge` judges a first sketch of it, so
/// that what is asked of a guard that is there is known.
pub(super) fn new_guard<'r>(
    drawn: &Drawn<'_, 'r>,
    judge: &dyn Fn(&Guard) -> Judged<'r>,
) -> Vec<Offered> {
    let m = &drawn.measuring;
    let stair = is_stair(drawn.guard);
    let sketch = |height: Length, gap: Length, below: Length| {
        let closed = if stair {
            let note = "as drawn: closed at the steps";
            GuardChange::default().instead(drawn.guard, Item::StairTriangle, "none", note)
        } else {
            GuardChange::default()
        };
        closed
            .instead(
                drawn.guard,
                Item::Guard,
                GuardWord::Present.name(),
                "as drawn",
            )
            .instead(
                drawn.guard,
                Item::Height,
                &m.drawn(height, m.heights),
                "as drawn, at its lowest",
            )
            .instead(
                drawn.guard,
                Item::Infill,
                InfillWord::Balusters.name(),
                "as drawn",
            )
            .instead(
                drawn.guard,
                Item::Opening,
                &m.drawn(gap, m.gaps),
                "as drawn",
            )
            .instead(
                drawn.guard,
                Item::OpeningsChecked,
                OpeningsCheckedWord::EveryOne.name(),
                "",
            )
            .instead(
                drawn.guard,
                Item::BottomGap,
                &open_below(m, below),
                "as drawn",
            )
            .instead(
                drawn.guard,
                Item::Foothold,
                "none",
                "as drawn: no step on the inner side",
            )
            .instead(
                drawn.guard,
                Item::InfillLoose,
                InfillLooseWord::No.name(),
                "as drawn",
            )
    };
    let usual = m.either(Length::inches(2), 50);
    let first = sketch(m.either(Length::inches(36), 1000), usual, usual);
    let Some(guard) = changed(drawn.guard, &first) else {
        return Vec::new();
    };
    let judged = judge(&guard);
    let height = Demands::of(&judged, Item::Height).least;
    let height = m.least(
        height.unwrap_or(m.either(Length::inches(36), 1000)),
        m.heights,
    );
    let new = Drawn {
        guard: &guard,
        judged: &judged,
        measuring: drawn.measuring,
    };
    let gap = new.gap_target(Item::Opening, new.bar()).unwrap_or(usual);
    let below = Demands::of(&judged, Item::BottomGap).most;
    let below = below.map_or(gap, |most| m.most(most, m.gaps)).min(gap);
    let at_steps = if stair {
        "; the triangles at the steps closed, the gap measured level"
    } else {
        ""
    };
    let does = format!(
        "Have a railing put up to today's rules; top at {} at its lowest, uprights no more than {} apart, {}, \
         no step on the inner side, posts through-bolted to the framing{at_steps}.",
        m.text(height),
        m.text(gap),
        if below > Length::ZERO {
            format!("{} or less open below", m.text(below))
        } else {
            "closed down to the floor".to_owned()
        }
    );
    vec![
        Offered::new(RemedyKind::NewGuard, does, sketch(height, gap, below))
            .aiming(format!(
                "{} high or more, gaps of {} or less",
                m.text(height),
                m.text(gap)
            ))
            .of(along(drawn.guard, "railing with uprights".to_owned()))
            .taking(240, 480, LabourPer::Bay),
    ]
}

/// A thing to climb: it is moved; nobody takes anything off a railing that moves.
pub(super) fn thing_to_climb(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let away = drawn
        .measuring
        .text(drawn.measuring.either(Length::inches(40), 1000));
    let mut dangers = drawn.judged.dangers.iter();
    let does = if dangers.any(|seen| seen.danger.hazard == Hazard::GiveWay) {
        format!(
            "Leave it where it is until the posts hold, and tell whoever owns it; after that it is moved \
             {away} or more from the railing, not into the way out, or fixed so that a child cannot drag it."
        )
    } else {
        format!(
            "Move it {away} or more from the railing; off the balcony where that can be done and not into the \
             way out, or fix it so that a child cannot drag it."
        )
    };
    let change = GuardChange::default().instead(
        drawn.guard,
        Item::ThingToClimb,
        "none",
        "as drawn: moved away",
    );
    vec![Offered::new(RemedyKind::MoveThing, does, change).taking(5, 15, LabourPer::Thing)]
}

/// Paint that flakes.
pub(super) fn paint(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let does = "Have the paint tested; where it holds lead or nobody knows, a certified renovator makes it \
                sound. Until then cover it, and wipe up chips wet."
        .to_owned();
    let change = GuardChange::default().instead(
        drawn.guard,
        Item::Paint,
        PaintWord::Sound.name(),
        "as drawn",
    );
    vec![Offered::new(RemedyKind::Renovator, does, change)]
}

/// Glass that is loose, cracked or broken: a glazier's work, never a screw or a board.
pub(super) fn glass(drawn: &Drawn<'_, '_>, item: Item) -> Vec<Offered> {
    let change = || {
        let (after, note) = if item == Item::Condition {
            ("not reached", LATER)
        } else {
            (InfillLooseWord::No.name(), "as drawn")
        };
        GuardChange::default().instead(drawn.guard, item, after, note)
    };
    let reset = "Have a glazier set anew what holds the pane (clamps, gaskets, base channel); to its maker's \
                 data, and nobody on it or below it while a pane is loose.";
    let pane = "Have a glazier put in a new pane of the kind that today's rule asks, often laminated; photograph \
                the mark in its corner, and nobody below while it is lifted.";
    let mut all = Vec::new();
    if item != Item::Condition && !says(drawn.guard, InfillLooseWord::Missing) {
        all.push(
            Offered::new(RemedyKind::GlassClampsReset, reset.to_owned(), change()).taking(
                60,
                180,
                LabourPer::Pane,
            ),
        );
    }
    all.push(
        Offered::new(RemedyKind::NewPane, pane.to_owned(), change())
            .of(MaterialPart {
                what: "pane of the kind that today's rule asks, measured by a glazier".to_owned(),
                how_many: HowMany::Exactly(1),
                length: None,
                buy: None,
            })
            .taking(120, 300, LabourPer::Pane),
    );
    all
}
