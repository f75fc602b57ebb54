//! The post itself: the moment at the fastener that resists, on the section less its
//! holes; between its fasteners the couple shears it.

use crate::items::ConditionWord;
use crate::items::Item;
use crate::items::NotchedPostWord;
use crate::items::PostFasteningWord;
use crate::items::PostMaterialWord;
use crate::judge::load_path::arm::Fixed;
use crate::judge::load_path::arm::arm_taken;
use crate::judge::load_path::arm::between_the_fasteners;
use crate::judge::load_path::arm::couple_asks;
use crate::judge::load_path::arm::fixed;
use crate::judge::load_path::bend;
use crate::judge::load_path::bend::Cut;
use crate::judge::load_path::bend::Share;
use crate::judge::load_path::link::Hidden;
use crate::judge::load_path::link::Link;
use crate::judge::load_path::link::LinkFinding;
use crate::judge::load_path::link::LinkKind;
use crate::judge::load_path::link::Mend;
use crate::judge::load_path::link::Ruled;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::load::Loads;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::WrittenLength;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::sources;
use crate::judge::load_path::why::LinkCase;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::wood;
use crate::judge::load_path::wood::LumberPiece;
use crate::quantities::Distance;
use crate::quantities::Moment;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::demand::lever_arm;
use crate::statics::hardware::bolt_hole;
use crate::statics::section::Profile;

const KIND: LinkKind = LinkKind::Post;
const BENDING: LinkCase = LinkCase::BendingWhereFixed;

const ROT: Ruled = Ruled {
    reason: LinkReason::RottenPost,
    source: sources::DECAY_OF_A_POST,
};

const NOTCH: Ruled = Ruled {
    reason: LinkReason::NotchedThinPost,
    source: sources::NOTCHES_TESTED,
};

/// The moment in a post, at least and at most.
pub(super) type PostDemand = Ends<Worked<Moment>>;

/// The moment where the post is held: at the upper fastener, or at the floor.
pub(super) fn demand(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Option<PostDemand> {
    let height = seen.height()?;
    let at =
        |height, covering, depth| loads.post_moment(lever_arm(height, covering, depth), height);
    let (covering, depth) = (seen.covering(), seen.depth());
    let floor = Distance::default();
    let (low, high) = match fixed(seen) {
        Some(Fixed::OnTheSide | Fixed::FlatOnAJoist) => (
            at(height.low, covering.low, depth.low),
            at(height.high, covering.high, depth.high),
        ),
        Some(Fixed::OnTop) => (at(height.low, floor, floor), at(height.high, floor, floor)),
        None => (
            at(height.low, floor, floor),
            at(height.high, covering.high, depth.high),
        ),
    };
    Some(Ends {
        low: low?,
        high: high?,
    })
}

/// The greatest moment at the fastener that resists.
pub(super) fn moment(seen: &Seen<'_, '_>, loads: Loads<'_>) -> Option<Worked<Moment>> {
    demand(seen, loads).map(|ends| ends.high)
}

/// The width that holes take from a post held by fasteners in the direction of the
/// load; half of it where nobody counted them.
fn holes(seen: &Seen<'_, '_>) -> Ends<Distance> {
    let none = Distance::default();
    let side = seen
        .section(Item::PostSection)
        .map_or(none, |(a, b)| a.min(b));
    let unknown = Ends {
        low: none,
        high: side / 2.0,
    };
    match fixed(seen) {
        Some(Fixed::OnTop) => return Ends::exactly(none),
        None => return unknown,
        Some(Fixed::OnTheSide | Fixed::FlatOnAJoist) => {}
    }
    let counted = seen
        .most_fasteners(Item::PostFasteners)
        .zip(seen.thickest(Item::PostFasteners));
    let Some((count, thickest)) = counted else {
        return unknown;
    };
    let bored = bolt_hole(thickest).value;
    // the lead hole of a shank is as wide as the shank (NDS 2018 §12.1.4.2)
    let (least, most) = match seen.word::<PostFasteningWord>() {
        Some(PostFasteningWord::ThroughBolts) => (bored, bored),
        Some(PostFasteningWord::LagScrews | PostFasteningWord::WoodScrews) => (thickest, thickest),
        Some(_) | None => (thickest, bored),
    };
    // those of one level may lie side by side, or apart along the grain
    let side_by_side = count.div_ceil(2).max(1);
    Ends {
        low: least,
        high: most * f64::from(side_by_side),
    }
}

/// The links of the post.
pub(super) fn links(
    seen: &Seen<'_, '_>,
    wood: &Wood,
    loads: Loads<'_>,
    demand: Option<&PostDemand>,
) -> Vec<Link> {
    let Some(demand) = demand else {
        let reason = LinkReason::HeightOrSpacingNotWritten;
        let asks = [Item::Height, Item::PostSpacing];
        let link = Link::hidden(KIND, BENDING, reason, &asks);
        return vec![ruled(seen, link)];
    };
    let cut = Cut {
        notch: if seen.mentions(NotchedPostWord::Yes) {
            Share::Half
        } else {
            Share::Whole
        },
        holes: holes(seen),
    };
    let mut links = vec![ruled(seen, bending(seen, wood, cut, demand))];
    if cut.notch == Share::Whole && !seen.mentions(ConditionWord::Rot) {
        links.extend(shear(seen, wood, loads, cut));
    }
    links.extend(neck(seen, wood, loads));
    links
}

fn bending(seen: &Seen<'_, '_>, wood: &Wood, cut: Cut, demand: &Ends<Worked<Moment>>) -> Link {
    let mut taken = arm_taken(seen);
    taken.retain(|taken| *taken != Taken::Pivot && fixed(seen) != Some(Fixed::OnTop));
    if cut.notch == Share::Half {
        taken.push(Taken::NotchHalf);
    }
    let link = match bend::post(seen, wood, cut) {
        Ok(bends) => Link::weighed(KIND, BENDING, demand, &bends.ends)
            .taking(&bends.taken)
            .asking(&bends.asks)
            .lowest(bends.lowest)
            .mending(Mend::ThickerPost),
        Err(no) => Link::hidden(KIND, BENDING, no.reason, &no.asks).with_demand(demand),
    };
    let on_the_side = matches!(fixed(seen), Some(Fixed::OnTheSide | Fixed::FlatOnAJoist));
    let link = link.taking(&taken);
    if on_the_side && seen.word() != Some(PostMaterialWord::Wood) {
        let reason = LinkReason::HolesThroughHollowPost;
        return link.never_passing(reason, &[]);
    }
    if on_the_side && seen.fasteners(Item::PostFasteners).is_none() {
        let reason = LinkReason::HolesNotWritten;
        return link.never_passing(reason, &[Item::PostFasteners]);
    }
    link
}

/// What is seen of the post decides before any number.
fn ruled(seen: &Seen<'_, '_>, link: Link) -> Link {
    if seen.mentions(ConditionWord::Rot) {
        let rotten = Link::bare(KIND, link.case, LinkFinding::ByRule(ROT)).mending(Mend::NewPost);
        return Link {
            demand: link.demand,
            ..rotten
        };
    }
    if !seen.mentions(NotchedPostWord::Yes) {
        return link;
    }
    let thick = seen.section(Item::PostSection);
    if thick.is_none_or(|(a, b)| a.min(b) < wood::TIMBER) {
        return Link {
            finding: LinkFinding::ByRule(NOTCH),
            mend: Some(Mend::NewPost),
            ..link
        };
    }
    // what is ruled out is a notch in a 4x4; what a thicker post keeps splits as well
    match link.finding {
        LinkFinding::NoShortfall | LinkFinding::TooClose => Link {
            finding: LinkFinding::NotMeasured(Hidden {
                reason: LinkReason::NotchSplits,
            }),
            ratio: None,
            ..link
        },
        LinkFinding::ByRule(_) | LinkFinding::FallsShort | LinkFinding::NotMeasured(_) => link,
    }
}

/// Between its fasteners a post on the side of the framing is sheared by the couple
/// and not by the push.
fn shear(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>, cut: Cut) -> Option<Link> {
    let (a, b) = seen.section(Item::PostSection)?;
    if seen.word() != Some(PostMaterialWord::Wood) {
        return None;
    }
    let (case, demand) = match fixed(seen) {
        Some(Fixed::OnTheSide | Fixed::FlatOnAJoist) => {
            let case = LinkCase::ShearBetweenFasteners;
            let Some(demand) = between_the_fasteners(seen, loads) else {
                let reason = LinkReason::CoupleOnPostUnknown;
                return Some(Link::hidden(KIND, case, reason, &couple_asks(seen)));
            };
            (case, demand)
        }
        Some(Fixed::OnTop) => (LinkCase::Shear, Ends::exactly(loads.top_force()?)),
        None => {
            let reason = LinkReason::HoldingDecidesShear;
            return Some(Link::hidden(
                KIND,
                LinkCase::Shear,
                reason,
                &[Item::PostFastening],
            ));
        }
    };
    let mut left = cut.left(a, b);
    left.extend(cut.left(b, a));
    let piece = LumberPiece {
        across: a,
        along: b,
    };
    let capacity = wood::shear(wood, piece, &left)?;
    let link = Link::weighed(KIND, case, &demand, &capacity)
        .taking(wood.taken())
        .mending(Mend::ThickerPost);
    let counted = seen.fasteners(Item::PostFasteners).is_some();
    Some(if fixed(seen) == Some(Fixed::OnTop) || counted {
        link
    } else {
        let reason = LinkReason::HolesNotWritten;
        link.never_passing(reason, &[Item::PostFasteners])
    })
}

/// A turned post is thinnest at its neck: S = π·d³/32 there.
fn neck(seen: &Seen<'_, '_>, wood: &Wood, loads: Loads<'_>) -> Option<Link> {
    let case = LinkCase::BendingAtNeck;
    let WrittenLength::There(diameter) = seen.length(Item::PostNeck) else {
        return None;
    };
    let (Some(height), WrittenLength::There(above)) =
        (seen.height(), seen.length(Item::NeckHeight))
    else {
        let reason = LinkReason::NeckHeightNotWritten;
        let asks = [Item::NeckHeight, Item::Height];
        return Some(Link::hidden(KIND, case, reason, &asks));
    };
    let at = |height: Distance| {
        let arm = (height - above).max(Distance::default());
        loads.post_moment(
            lever_arm(arm, Distance::default(), Distance::default()),
            height,
        )
    };
    let demand = Ends {
        low: at(height.low)?,
        high: at(height.high)?,
    };
    let piece = LumberPiece {
        across: diameter.max(crate::quantities::inches(1.5)),
        along: diameter.max(crate::quantities::inches(1.5)),
    };
    let round = [Profile::Round { diameter }];
    let takes = wood::moment_of(wood, piece, &round)?;
    let link = Link::weighed(KIND, case, &demand, &takes.ends);
    Some(
        link.taking(&wood.taken_in_bending())
            .lowest(takes.lowest)
            .mending(Mend::NewPost)
            .never_passing(LinkReason::NeckHasNoGrade, &[]),
    )
}
