//! The woods of a post's joint, and where the formulas for fasteners in wood hold
//! (NDS 2018 chapter 12, read second-hand).

use crate::items::BehindThePostWord;
use crate::items::FastenedToWord;
use crate::items::Item;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::why::LinkReason;
use crate::quantities::Distance;
use crate::quantities::inches;
use crate::statics::Ends;

/// The wood of the post and of what it is fastened to.
#[derive(Clone, Copy)]
pub(super) struct Woods<'w> {
    pub(super) post: &'w Wood,
    pub(super) framing: &'w Wood,
}

/// One fastener lets a post turn about it: there is no couple.
pub(super) const HINGE: LinkReason = LinkReason::Hinge;

/// Why no formula for fasteners in wood holds for what the post is fastened to.
pub(super) fn not_in_wood(seen: &Seen<'_, '_>) -> Option<(LinkReason, &'static [Item])> {
    match seen.word::<FastenedToWord>() {
        Some(
            FastenedToWord::Joist
            | FastenedToWord::Blocking
            | FastenedToWord::RimBoard
            | FastenedToWord::Stud,
        ) => {}
        Some(FastenedToWord::Concrete | FastenedToWord::Masonry) => {
            return Some((LinkReason::ScrewsInConcrete, &[]));
        }
        Some(FastenedToWord::Subfloor | FastenedToWord::Decking | FastenedToWord::DrywallOnly) => {
            return Some((LinkReason::NoFramingReached, &[]));
        }
        Some(_) => return Some((LinkReason::FastenersSitUnseen, &[])),
        None => {
            return Some((LinkReason::FastenersSitNotWritten, &[Item::FastenedTo]));
        }
    }
    apart(seen).map(|reason| (reason, &[] as &[Item]))
}

/// Yield and withdrawal presuppose faces in contact (NDS 2018 §12.3.1(a), read
/// second-hand).
pub(super) fn apart(seen: &Seen<'_, '_>) -> Option<LinkReason> {
    let between = [
        BehindThePostWord::Siding,
        BehindThePostWord::Spacers,
        BehindThePostWord::Gap,
    ];
    seen.mentions_any(&between)
        .then_some(LinkReason::PostAndFramingApart)
}

/// A rim or joist of 2x lumber, and a doubled one.
pub(super) const RIM: Ends<Distance> = Ends {
    low: inches(1.5),
    high: inches(3.0),
};

/// How thick the wood is that the post is fastened to: however long a screw is, it
/// holds no more.
pub(super) fn framing_thickness(seen: &Seen<'_, '_>) -> Ends<Distance> {
    seen.known_length(Item::FramingThickness)
        .map_or(RIM, Ends::exactly)
}
