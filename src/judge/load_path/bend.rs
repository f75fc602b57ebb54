//! The moment that a post can take, by what it is made of.

use crate::items::Item;
use crate::judge::load_path::link::Taken;
use crate::judge::load_path::seen::Seen;
use crate::judge::load_path::seen::WrittenLength;
use crate::judge::load_path::service::Wood;
use crate::judge::load_path::wood;
use crate::quantities::Distance;
use crate::quantities::Moment;
use crate::statics::Ends;
use crate::statics::Worked;
use crate::statics::metal::METALS;
use crate::statics::metal::Metal;
use crate::statics::metal::NoMethod;
use crate::statics::metal::UNKNOWN_WELDED_ALUMINIUM;
use crate::statics::metal::Weld;
use crate::statics::section::Profile;

/// What a member can take, or why nobody can say, and what to write down.
pub(super) type Capacity = Result<(Ends<Worked<Moment>>, Vec<Taken>), NoCapacity>;

/// Why no moment can be worked out.
pub(super) struct NoCapacity {
    pub(super) reason: &'static str,
    pub(super) asks: Vec<Item>,
}

fn no(reason: &'static str, asks: &[Item]) -> NoCapacity {
    NoCapacity {
        reason,
        asks: asks.to_vec(),
    }
}

/// The moment that the post can take; `left` is what a notch leaves of a wooden one.
pub(super) fn post(seen: &Seen<'_, '_>, wood: &Wood, left: Share) -> Capacity {
    let Some(material) = seen.word(Item::PostMaterial) else {
        return Err(no(
            "nobody wrote what the posts are made of",
            &[Item::PostMaterial],
        ));
    };
    let Some((a, b)) = seen.section(Item::PostSection) else {
        return Err(no(
            "nobody wrote how thick the posts are",
            &[Item::PostSection],
        ));
    };
    match material {
        "wood" => wooden(wood, a, b, left),
        "steel pipe" => metal(seen, a, b, Tube::Round, STEEL_PIPE),
        "steel tube" => metal(seen, a, b, Tube::Square, STEEL_TUBE),
        "stainless pipe" => metal(seen, a, b, Tube::Round, STAINLESS),
        "stainless tube" => metal(seen, a, b, Tube::Square, STAINLESS),
        "aluminium tube" => metal(seen, a, b, Tube::Square, ALUMINIUM),
        _ => Err(no(
            "no published strength for this material: iron may be brittle, and plastics differ",
            &[],
        )),
    }
}

/// How much of a post a notch leaves.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Share {
    Half,
    Whole,
}

/// Both ways of bending, since which one is outward is not written.
fn wooden(of: &Wood, a: Distance, b: Distance, left: Share) -> Capacity {
    let share = match left {
        Share::Half => 0.5,
        Share::Whole => 1.0,
    };
    let ways = [
        wood::left_of(of, a, b, b * share),
        wood::left_of(of, b, a, a * share),
    ];
    let [Some(one), Some(other)] = ways else {
        return Err(no("no published factors for wood of this size", &[]));
    };
    let all = [one.low, one.high, other.low, other.high];
    let Some(ends) = Ends::of_worked(all) else {
        return Err(no("no published factors for wood of this size", &[]));
    };
    Ok((ends, of.taken().to_vec()))
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

fn metal(seen: &Seen<'_, '_>, a: Distance, b: Distance, tube: Tube, names: &[&str]) -> Capacity {
    let wall = match seen.length(Item::WallThickness) {
        WrittenLength::There(wall) => Some(wall),
        WrittenLength::ThereIsNone => None,
        WrittenLength::Nothing => {
            return Err(no(
                "how thick the metal of the hollow post is cannot be seen from outside",
                &[Item::WallThickness],
            ));
        }
    };
    let ways = [(a, b), (b, a)];
    let profiles: Vec<Profile> = match (tube, wall) {
        (Tube::Round, Some(wall)) => vec![Profile::RoundTube { outside: a, wall }],
        (Tube::Round, None) => vec![Profile::Round { diameter: a }],
        (Tube::Square, Some(wall)) => {
            // round corners of cold-formed tube, sharp ones of extrusions (ASTM A500; from memory)
            let corners = [wall * 2.0, Distance::default()];
            let tube = |(across, along): (Distance, Distance)| {
                corners.map(|corner| Profile::RectangularTube {
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
            all.extend(moments(metal, *profile).unwrap_or_default());
        }
    }
    let ends = Ends::of_worked(all);
    let nothing = || {
        no(
            "the sizes of this post make no section",
            &[Item::WallThickness],
        )
    };
    ends.map(|ends| (ends, Vec::new())).ok_or_else(nothing)
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
