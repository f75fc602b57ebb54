//! The moment that a post can take, by what it is made of.

use crate::items::Item;
use crate::items::PostMaterialWord;
use crate::judge::load_path::link::Lowest;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::WrittenLength;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::why::LinkReason;
use crate::judge::load_path::wood;
use crate::judge::load_path::wood::LumberPiece;
use crate::quantities::Distance;
use crate::quantities::Moment;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::metal::DESIGN_WALL;
use crate::statics::metal::METALS;
use crate::statics::metal::Metal;
use crate::statics::metal::NoMethod;
use crate::statics::metal::UNKNOWN_WELDED_ALUMINIUM;
use crate::statics::metal::Walls;
use crate::statics::metal::Weld;
use crate::statics::section::Profile;

/// What a member can take, or why nobody can say, and what to write down.
pub(super) type PostBending = Result<Bends, NoCapacity>;

/// What a member can take in bending.
pub(super) struct Bends {
    pub(super) ends: Ends<Worked<Moment>>,
    pub(super) lowest: Lowest,
    pub(super) taken: Vec<Taken>,
    pub(super) asks: Vec<Item>,
}

/// Why no moment can be worked out.
pub(super) struct NoCapacity {
    pub(super) reason: LinkReason,
    pub(super) asks: Vec<Item>,
}

fn no(reason: LinkReason, asks: &[Item]) -> NoCapacity {
    NoCapacity {
        reason,
        asks: asks.to_vec(),
    }
}

/// The moment that the post can take; `cut` is what is bored or cut from a wooden one.
pub(super) fn post(seen: &Seen<'_, '_>, wood: &Wood, cut: Cut) -> PostBending {
    let Some(material) = seen.word::<PostMaterialWord>() else {
        return Err(no(
            LinkReason::MaterialOfPostsNotWritten,
            &[Item::PostMaterial],
        ));
    };
    let Some((a, b)) = seen.section(Item::PostSection) else {
        return Err(no(
            LinkReason::PostThicknessNotWritten,
            &[Item::PostSection],
        ));
    };
    match material {
        PostMaterialWord::Wood => wooden(wood, (a, b), cut),
        PostMaterialWord::SteelPipe => metal(seen, a, b, Tube::Round, STEEL_PIPE),
        PostMaterialWord::SteelTube => metal(seen, a, b, Tube::Square, STEEL_TUBE),
        PostMaterialWord::StainlessPipe => metal(seen, a, b, Tube::Round, STAINLESS),
        PostMaterialWord::StainlessTube => metal(seen, a, b, Tube::Square, STAINLESS),
        PostMaterialWord::AluminiumTube => metal(seen, a, b, Tube::Square, ALUMINIUM),
        PostMaterialWord::Iron | PostMaterialWord::Other | PostMaterialWord::Plastic => {
            Err(no(LinkReason::NoStrengthForMaterial, &[]))
        }
    }
}

/// How much of a post a notch leaves.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Share {
    Half,
    Whole,
}

/// What is taken from a post where it is fixed.
#[derive(Clone, Copy)]
pub(super) struct Cut {
    pub(super) notch: Share,
    /// The width that holes take, at least and at most.
    pub(super) holes: Ends<Distance>,
}

impl Cut {
    /// What may be left of a post of these sides, the load along the second.
    pub(super) fn left(self, across: Distance, along: Distance) -> Vec<Profile> {
        let along = match self.notch {
            Share::Half => along * 0.5,
            Share::Whole => along,
        };
        let whole = Profile::Rectangle { across, along };
        [self.holes.low, self.holes.high]
            .into_iter()
            .filter_map(|hole| whole.bored(hole, 1).ok())
            .collect()
    }
}

/// Both ways of bending, since which one is outward is not written.
fn wooden(of: &Wood, (a, b): (Distance, Distance), cut: Cut) -> PostBending {
    let sizes = LinkReason::NoFactorsForSize;
    let way = |across, along| {
        let piece = LumberPiece { across, along };
        let left = cut.left(across, along);
        if left.is_empty() {
            return None;
        }
        wood::moment_of(of, piece, &left)
    };
    let (Some(one), Some(other)) = (way(a, b), way(b, a)) else {
        return Err(no(sizes, &[]));
    };
    let lowest = if [one.lowest, other.lowest] == [Lowest::Known; 2] {
        Lowest::Known
    } else {
        Lowest::Unknown
    };
    let all = [one.ends.low, one.ends.high, other.ends.low, other.ends.high];
    let ends = Ends::of_worked(all).ok_or_else(|| no(sizes, &[]))?;
    Ok(Bends {
        ends,
        lowest,
        taken: of.taken_in_bending(),
        asks: of.narrows_bending(),
    })
}

#[derive(Clone, Copy)]
enum Tube {
    Round,
    Square,
}

/// The weaker and the stronger metal that it may be (steel section
/// tables read second-hand; the rest from memory).
const STEEL_PIPE: &[&str] = &[
    "mild steel, unknown",
    "steel A53 Gr B pipe",
    "steel A500 Gr B round",
];
const STEEL_TUBE: &[&str] = &["mild steel, unknown", "steel A500 Gr C"];
const STAINLESS: &[&str] = &["stainless 304L or 316L", "stainless 304 or 316"];
const ALUMINIUM: &[&str] = &["aluminium 6063-T5", "aluminium 6061-T6"];

fn metal(seen: &Seen<'_, '_>, a: Distance, b: Distance, tube: Tube, names: &[&str]) -> PostBending {
    let wall = match seen.length(Item::WallThickness) {
        WrittenLength::There(wall) => Some(wall),
        WrittenLength::ThereIsNone => None,
        WrittenLength::Nothing => {
            return Err(no(LinkReason::WallThicknessUnseen, &[Item::WallThickness]));
        }
    };
    let ways = [(a, b), (b, a)];
    let profiles: Vec<Profile> = match (tube, wall) {
        (Tube::Round, Some(wall)) => [wall * DESIGN_WALL, wall]
            .map(|wall| Profile::RoundTube { outside: a, wall })
            .to_vec(),
        (Tube::Round, None) => vec![Profile::Round { diameter: a }],
        (Tube::Square, Some(wall)) => {
            // round corners of cold-formed tube, sharp ones of extrusions (ASTM A500; from memory)
            // a wall may be as thin as the design wall of formed tube (from memory)
            let thin = wall * DESIGN_WALL;
            let kinds = [
                (thin, thin * 2.0),
                (wall, wall * 2.0),
                (wall, Distance::default()),
            ];
            let tube = |(across, along): (Distance, Distance)| {
                kinds.map(|(wall, corner)| Profile::RectangularTube {
                    across,
                    along,
                    wall,
                    corner,
                })
            };
            ways.into_iter().flat_map(tube).collect()
        }
        (Tube::Square, None) => ways
            .map(|(across, along)| Profile::Rectangle { across, along })
            .to_vec(),
    };
    let metals = METALS.iter().filter(|metal| names.contains(&metal.name));
    let mut all = Vec::new();
    for metal in metals {
        for profile in &profiles {
            if metal.walls(*profile) == Walls::Slender {
                let reason = LinkReason::SlenderWalls;
                return Err(no(reason, &[]));
            }
            all.extend(moments(metal, *profile).unwrap_or_default());
        }
    }
    let nothing = || no(LinkReason::NoSuchSection, &[Item::WallThickness]);
    Ok(Bends {
        ends: Ends::of_worked(all).ok_or_else(nothing)?,
        lowest: Lowest::Known,
        taken: Vec::new(),
        asks: Vec::new(),
    })
}

/// The plastic moment and the lower elastic one; of aluminium beside a weld and clear of it.
fn moments(metal: &Metal, profile: Profile) -> Result<Vec<Worked<Moment>>, NoMethod> {
    let section = profile.section().map_err(|_| NoMethod)?;
    let mut all = vec![metal.allowable_moment(&section, Weld::Clear)?];
    if metal.welded.is_some() {
        let unknown = Metal {
            welded: Some(UNKNOWN_WELDED_ALUMINIUM),
            ..*metal
        };
        all.push(unknown.allowable_moment(&section, Weld::Beside)?);
    } else {
        all.push(metal.elastic_moment(&section)?);
    }
    Ok(all)
}
