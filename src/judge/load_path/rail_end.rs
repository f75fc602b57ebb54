//! What holds the end of the top rail: how it is loaded follows from where the rail
//! sits (elementary statics; NDS 2018 §12.2 and §12.5.2.2, read second-hand).

use crate::items::Item;
use crate::items::RailEndFasteningWord;
use crate::items::RailPositionWord;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::screws::Layers;
use crate::judge::load_path::screws::NONE_IN_END_GRAIN;
use crate::judge::load_path::screws::Sideways;
use crate::judge::load_path::screws::held;
use crate::judge::load_path::screws::no_more_than_the_heads;
use crate::judge::load_path::screws::pushed_sideways;
use crate::judge::load_path::screws::toenailed;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::sources;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::inches;
use crate::reading::Fasteners;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::beam::end_reaction;
use crate::statics::factors::Grain;
use crate::statics::lateral::SidePlate;

const KIND: LinkKind = LinkKind::RailEnd;
const OUTWARD: LinkCase = LinkCase::PushedOutward;
const DOWN: LinkCase = LinkCase::PressedDown;
const UP: LinkCase = LinkCase::PulledUpward;
const ALONG: LinkCase = LinkCase::PulledAlong;

type EndCapacity = Result<Ends<Worked<Force>>, LinkReason>;

/// Where the rail meets the posts.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sits {
    Between,
    InsideFace,
    OnTop,
    OutsideFace,
}

impl Sits {
    const ALL: [Sits; 4] = [
        Sits::Between,
        Sits::InsideFace,
        Sits::OnTop,
        Sits::OutsideFace,
    ];

    fn of(word: RailPositionWord) -> Option<Sits> {
        match word {
            RailPositionWord::BetweenPosts => Some(Sits::Between),
            RailPositionWord::InsideFace => Some(Sits::InsideFace),
            RailPositionWord::OnTop => Some(Sits::OnTop),
            RailPositionWord::OutsideFace => Some(Sits::OutsideFace),
            RailPositionWord::Hidden | RailPositionWord::LetIn => None,
        }
    }
}

/// The links of a rail's ends.
pub(super) fn links(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    if seen.mentions(RailEndFasteningWord::HollowWallAnchor) {
        return vec![shown(hollow_wall(), loads)];
    }
    if seen.mentions(RailEndFasteningWord::Nails) {
        return nailed(seen, wood, loads);
    }
    match seen.word::<RailEndFasteningWord>() {
        Some(RailEndFasteningWord::ScrewsIntoAPost) => screwed(seen, wood, loads),
        Some(RailEndFasteningWord::ScrewsIntoAStud) => {
            into_a_stud(seen, (wood, &Wood::of_framing(seen)), loads)
        }
        Some(RailEndFasteningWord::Hidden) => vec![hidden(loads, LinkReason::RailEndUnseen, &[])],
        Some(RailEndFasteningWord::MasonryAnchors) => {
            vec![hidden(loads, LinkReason::AnchorsInMasonry, &[])]
        }
        Some(RailEndFasteningWord::Bracket) => {
            vec![hidden(loads, LinkReason::BracketLabelNotWritten, &[])]
        }
        Some(
            RailEndFasteningWord::BoltsThroughAPost
            | RailEndFasteningWord::HollowWallAnchor
            | RailEndFasteningWord::LetIntoThePost
            | RailEndFasteningWord::Nails
            | RailEndFasteningWord::Welded,
        ) => vec![hidden(loads, LinkReason::NoValueForFixing, &[])],
        None => vec![hidden(
            loads,
            LinkReason::RailEndNotWritten,
            &[Item::RailEndFastening],
        )],
    }
}

fn hollow_wall() -> Link {
    Link::by_rule(
        KIND,
        OUTWARD,
        LinkReason::HollowWallAnchor,
        sources::PLASTER,
    )
    .mending(Mend::IntoTheFraming)
}

/// The whole load, since it may stand beside the post; no share goes to the next
/// bay of an existing rail.
fn reaction(loads: Loads<'_>) -> Option<Worked<Force>> {
    let load = loads.top_force()?;
    Some(end_reaction(load.value).after(load))
}

fn shown(link: Link, loads: Loads<'_>) -> Link {
    match reaction(loads) {
        Some(load) => link.with_demand(&Ends::exactly(load)),
        None => link,
    }
}

fn hidden(loads: Loads<'_>, reason: LinkReason, asks: &[Item]) -> Link {
    shown(Link::hidden(KIND, OUTWARD, reason, asks), loads)
}

/// Toe-nails between two posts carry a load across them; nails in a face are
/// pulled, and may not be relied on.
fn nailed(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let position = seen.word::<RailPositionWord>();
    if position != Some(RailPositionWord::BetweenPosts) {
        let ruled = Link::by_rule(KIND, OUTWARD, LinkReason::NailsAgainstAPull, sources::NAILS);
        let mut asks: Vec<Item> = Vec::new();
        if position.is_none() {
            asks.push(Item::RailPosition);
        }
        return vec![shown(ruled.asking(&asks).mending(Mend::RailEnd), loads)];
    }
    let Some(fasteners) = seen.fasteners(Item::RailEndFasteners) else {
        let reason = LinkReason::RailNailsNotWritten;
        return vec![hidden(loads, reason, &[Item::RailEndFasteners])];
    };
    let capacity = toenailed(wood, fasteners);
    let mut links = vec![weighed(OUTWARD, &capacity, wood, loads, Standing::Known)];
    if loads.presses_down() {
        links.push(weighed(DOWN, &capacity, wood, loads, Standing::Known));
    }
    if loads.pulls_inward() {
        links.push(along(loads));
    }
    links
}

/// Nails and screws in the end of a rail carry nothing along it; that a rail is
/// held at its other end, or runs on, nobody sees from one joint.
fn along(loads: Loads<'_>) -> Link {
    let reason = LinkReason::NothingAlongTheRail;
    shown(Link::hidden(KIND, ALONG, reason, &[]), loads)
}

/// Whether the mechanism is the one that is there.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Standing {
    Known,
    /// Any of several, one of which may load no fastener at all.
    Open,
}

fn weighed(
    case: LinkCase,
    capacity: &EndCapacity,
    wood: &Wood,
    loads: Loads<'_>,
    standing: Standing,
) -> Link {
    let Some(load) = reaction(loads) else {
        let reason = LinkReason::NoLoadAlongTheTop;
        return Link::hidden(KIND, case, reason, &[Item::PostSpacing]);
    };
    let low = match standing {
        Standing::Known => load.clone(),
        Standing::Open => load.clone().map(|_| Force::default()),
    };
    let demand = Ends { low, high: load };
    match capacity {
        Ok(capacity) => Link::weighed(KIND, case, &demand, capacity)
            .taking(wood.taken())
            .taking(&[Taken::Thread])
            .asking(&wood.narrows())
            .mending(Mend::RailEnd),
        Err(reason) => {
            let asks: &[Item] = if *reason == NONE_IN_END_GRAIN {
                &[]
            } else {
                &[Item::RailEndFasteners]
            };
            Link::hidden(KIND, case, *reason, asks).with_demand(&demand)
        }
    }
}

/// The fasteners, with their length.
fn with_length(seen: &Seen<'_, '_>) -> Result<Fasteners, LinkReason> {
    let fasteners = seen
        .fasteners(Item::RailEndFasteners)
        .ok_or(LinkReason::RailScrewsNotWritten)?;
    match fasteners.length {
        Some(_) => Ok(fasteners),
        None => Err(LinkReason::RailScrewLengthNotWritten),
    }
}

fn screwed(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Vec<Link> {
    let fasteners = match with_length(seen) {
        Ok(fasteners) => fasteners,
        Err(reason) => return vec![hidden(loads, reason, &[Item::RailEndFasteners])],
    };
    let end = ScrewedEnd {
        seen,
        wood,
        fasteners,
    };
    let mut words: Vec<RailPositionWord> = seen.words::<RailPositionWord>().collect();
    words.sort_unstable();
    words.dedup();
    let sits: Vec<Sits> = words.iter().filter_map(|word| Sits::of(*word)).collect();
    if words.contains(&RailPositionWord::LetIn) {
        let reason = LinkReason::RailLetIn;
        return vec![hidden(loads, reason, &[])];
    }
    let known =
        !sits.is_empty() && sits.len() == words.len() && seen.word::<RailPositionWord>().is_some();
    if !known {
        return end.anywhere(loads);
    }
    let mut links = Vec::new();
    for sits in sits {
        links.extend(end.links(sits, loads));
    }
    links
}

/// The end of a wooden rail on a wooden post.
struct ScrewedEnd<'s, 'o, 'g> {
    seen: &'s Seen<'o, 'g>,
    wood: &'s Wood,
    fasteners: Fasteners,
}

/// The depth of a 2x4 stud and of a 4x4 post.
const BEHIND: Distance = inches(3.5);

impl ScrewedEnd<'_, '_, '_> {
    /// What lies under the heads, and what the thread bites.
    fn layers(&self, sits: Sits) -> Layers {
        let rail = self.seen.section(Item::RailSection);
        let usual = Ends {
            low: inches(0.5),
            high: inches(1.5),
        };
        let length = self
            .fasteners
            .length
            .map_or(BEHIND, |length| length.to_uom());
        let deep = Ends::exactly(length.max(BEHIND));
        match sits {
            Sits::OnTop => Layers {
                before: rail.map_or(usual, |(_, height)| Ends::exactly(height)),
                main: deep,
            },
            Sits::InsideFace | Sits::OutsideFace => Layers {
                before: rail.map_or(usual, |(width, _)| Ends::exactly(width)),
                main: Ends::exactly(BEHIND),
            },
            Sits::Between => {
                let post = self.seen.section(Item::PostSection);
                let post = post.map_or(Ends::exactly(BEHIND), |(a, b)| Ends::between(a, b));
                Layers {
                    before: post,
                    main: deep,
                }
            }
        }
    }

    fn sideways(&self, sits: Sits) -> EndCapacity {
        let grain = match sits {
            Sits::Between | Sits::OnTop => Grain::End,
            Sits::InsideFace | Sits::OutsideFace => Grain::Side,
        };
        let through = Sideways {
            layers: self.layers(sits),
            grain,
            plate: None,
            under_the_head: 90.0,
        };
        pushed_sideways((self.wood, self.wood), self.fasteners, through)
    }

    fn pulled(&self, sits: Sits) -> EndCapacity {
        let layers = self.layers(sits);
        let thread = held(self.wood, self.fasteners, layers, Grain::Side)?;
        let under = (self.wood, layers.before);
        Ok(no_more_than_the_heads(thread, under, self.fasteners))
    }

    fn links(&self, sits: Sits, loads: Loads<'_>) -> Vec<Link> {
        let one = |case, capacity: &EndCapacity| {
            weighed(case, capacity, self.wood, loads, Standing::Known)
        };
        let sideways = self.sideways(sits);
        let mut links = match sits {
            Sits::OnTop | Sits::Between => vec![one(OUTWARD, &sideways)],
            Sits::OutsideFace => vec![one(OUTWARD, &self.pulled(sits))],
            // outward the rail presses on the posts, and inward it pulls
            Sits::InsideFace if loads.pulls_inward() => {
                vec![one(LinkCase::PulledInward, &self.pulled(sits))]
            }
            Sits::InsideFace => Vec::new(),
        };
        let presses = match sits {
            // the cap lies on the post
            Sits::OnTop => false,
            Sits::Between | Sits::InsideFace | Sits::OutsideFace => loads.presses_down(),
        };
        if presses {
            links.push(one(DOWN, &sideways));
        }
        if sits == Sits::OnTop && loads.pulls_inward() {
            links.push(self.upward(loads));
        }
        links
    }

    /// Screws in the end of a post carry nothing upward; lags three quarters.
    fn upward(&self, loads: Loads<'_>) -> Link {
        let capacity = held(
            self.wood,
            self.fasteners,
            self.layers(Sits::OnTop),
            Grain::End,
        );
        weighed(UP, &capacity, self.wood, loads, Standing::Known)
    }

    /// Where nobody wrote how the rail sits, it may be the best and the worst way.
    fn anywhere(&self, loads: Loads<'_>) -> Vec<Link> {
        let mut all: Vec<Worked<Force>> = Vec::new();
        for sits in Sits::ALL {
            for capacity in [self.sideways(sits), self.pulled(sits)] {
                match capacity {
                    Ok(ends) => all.extend([ends.low, ends.high]),
                    Err(reason) => return vec![hidden(loads, reason, &[Item::RailPosition])],
                }
            }
        }
        let capacity = Ends::of_worked(all).ok_or(LinkReason::NoTableForRailScrews);
        let link = |case| {
            weighed(case, &capacity, self.wood, loads, Standing::Open)
                .asking(&[Item::RailPosition])
                .never_passing(LinkReason::RailPositionNotWritten, &[Item::RailPosition])
        };
        let mut links = vec![link(OUTWARD)];
        if loads.presses_down() {
            links.push(link(DOWN));
        }
        links
    }
}

/// The sheet of a bracket of 14 gage, or wood of up to 1 1/2 in, under the heads.
/// (common practice, no source)
const UNDER_THE_HEAD: [(Distance, Option<SidePlate>); 3] = [
    (inches(0.075), Some(SidePlate::Sheet)),
    (inches(0.5), None),
    (inches(1.5), None),
];

/// Screws in the side of a stud: pulled outward and pressed down.
fn into_a_stud(seen: &Seen<'_, '_>, (rail, stud): (&Wood, &Wood), loads: Loads<'_>) -> Vec<Link> {
    let fasteners = match with_length(seen) {
        Ok(fasteners) => fasteners,
        Err(reason) => return vec![hidden(loads, reason, &[Item::RailEndFasteners])],
    };
    let layers = Layers {
        before: Ends {
            low: inches(0.0),
            high: inches(1.5),
        },
        main: Ends::exactly(BEHIND),
    };
    let pulled = held(stud, fasteners, layers, Grain::Side).map(|thread| {
        let heads = no_more_than_the_heads(thread.clone(), (rail, layers.before), fasteners);
        // the sheet of a bracket may hold the heads
        Ends {
            low: heads.low,
            high: thread.high,
        }
    });
    let mut links = vec![weighed(OUTWARD, &pulled, stud, loads, Standing::Known)];
    if loads.presses_down() {
        let mut all = Vec::new();
        let mut failed = None;
        for (thick, plate) in UNDER_THE_HEAD {
            let through = Sideways {
                layers: Layers {
                    before: Ends::exactly(thick),
                    main: Ends::exactly(BEHIND),
                },
                grain: Grain::Side,
                plate,
                under_the_head: 90.0,
            };
            match pushed_sideways((rail, stud), fasteners, through) {
                Ok(ends) => all.extend([ends.low, ends.high]),
                Err(reason) => failed = Some(reason),
            }
        }
        let none = LinkReason::NoTableForRailScrews;
        let capacity = match failed {
            Some(reason) => Err(reason),
            None => Ends::of_worked(all).ok_or(none),
        };
        links.push(weighed(DOWN, &capacity, stud, loads, Standing::Known));
    }
    links
}
