//! Remedies of handrails.

use crate::items::HandrailWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::quantities::Length;
use crate::remedy::change::GuardChange;
use crate::remedy::demands::Demands;
use crate::remedy::drawn::Drawn;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::MaterialPart;
use crate::remedy::quantity::along;
use crate::remedy::quantity::brackets as brackets_of;

/// The top of a handrail that suits what is asked: 36 in or 914 mm fits a range of 34 to
/// 38 in, of 900 to 1000 mm, and is no foothold below 900 mm.
pub(super) fn hand_height(drawn: &Drawn<'_, '_>) -> Option<Length> {
    let m = &drawn.measuring;
    let demands = Demands::of(drawn.judged, Item::HandrailHeight);
    let least = demands
        .least
        .map_or(Length::ZERO, |least| m.least(least, m.gaps));
    let most = demands
        .most
        .map_or(Length::feet(4), |most| m.most(most, m.gaps));
    let usual = m.either(Length::inches(36), 914);
    (least <= most).then(|| usual.max(least).min(most))
}

/// The room beside a handrail: 2 in or 50 mm, more where a chosen rule asks for more of
/// any handrail, since a new one is asked what none was asked before.
fn clear_of_the_wall(drawn: &Drawn<'_, '_>) -> Length {
    let m = &drawn.measuring;
    let least = Demands::of_any(drawn.judged, Item::HandrailClearance).least;
    let asked = least.map_or(Length::ZERO, |least| m.least(least, m.gaps));
    asked.max(m.either(Length::inches(2), 50))
}

pub(super) fn handrail_change(drawn: &Drawn<'_, '_>, height: Length) -> GuardChange {
    let m = &drawn.measuring;
    let size = m.either(Length::sixty_fourths(96), 38);
    let clear = clear_of_the_wall(drawn);
    let note = "as drawn, of the new handrail";
    let mut change = GuardChange::default()
        .instead(
            drawn.guard,
            Item::Handrail,
            HandrailWord::Separate.name(),
            note,
        )
        .instead(
            drawn.guard,
            Item::HandrailHeight,
            &m.drawn(height, m.gaps),
            note,
        )
        .instead(drawn.guard, Item::HandrailShape, "round", note)
        .instead(
            drawn.guard,
            Item::HandrailThickness,
            &m.drawn(size, m.step),
            note,
        )
        .instead(
            drawn.guard,
            Item::HandrailClearance,
            &m.drawn(clear, m.gaps),
            note,
        )
        .instead(drawn.guard, Item::HandrailContinuous, "yes", note)
        .instead(drawn.guard, Item::HandrailEnds, "returned", note)
        .without(drawn.guard, Item::HandrailPerimeter)
        .without(drawn.guard, Item::HandrailGripWidth);
    let asked = |item: Item| Demands::of_any(drawn.judged, item).most.is_some();
    if asked(Item::HandrailProjection) {
        let stands_out = m.drawn(clear + size, m.gaps);
        change = change.instead(drawn.guard, Item::HandrailProjection, &stands_out, note);
    }
    if asked(Item::HandrailEndGap) {
        change = change.instead(drawn.guard, Item::HandrailEndGap, "none", note);
    }
    change
}

/// What a new handrail takes.
pub(super) fn handrail_parts(drawn: &Drawn<'_, '_>) -> [MaterialPart; 2] {
    let m = &drawn.measuring;
    let brackets = format!(
        "brackets for it, one within {} of each end",
        m.text(m.either(Length::inches(12), 300))
    );
    [
        along(drawn.guard, "handrail that a hand closes around".to_owned()),
        MaterialPart {
            what: brackets,
            how_many: brackets_of(drawn.guard),
            length: None,
            buy: None,
        },
    ]
}

/// A handrail that is missing, on too few sides, or of a shape that no hand closes around.
pub(super) fn handrail(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let Some(height) = hand_height(drawn) else {
        return Vec::new();
    };
    let does = format!(
        "Put up a round handrail on the wall the whole flight, its top {} above the noses; {} thick, {} clear \
         of the wall, its ends turned to the wall, brackets into studs or a backing board, at most {} apart.",
        m.text(height),
        m.text(m.either(Length::sixty_fourths(96), 38)),
        m.text(clear_of_the_wall(drawn)),
        m.text(m.either(Length::inches(48), 1200))
    );
    let mut change = handrail_change(drawn, height);
    if drawn.guard.of(Item::HandrailSides).next().is_some() {
        change = change.instead(drawn.guard, Item::HandrailSides, "both sides", "as drawn");
    }
    let [rail, brackets] = handrail_parts(drawn);
    vec![
        Offered::new(RemedyKind::NewHandrail, does, change)
            .aiming(format!("its top at {}", m.text(height)))
            .of(rail)
            .of(brackets)
            .taking(90, 180, LabourPer::Flight),
    ]
}

/// The top of a guard that is the handrail, and higher than a handrail may be: never
/// lowered; a handrail of its own is put up instead.
pub(super) fn top_as_handrail(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let Some(height) = hand_height(drawn) else {
        return Vec::new();
    };
    let wall = format!(
        "Do not lower the guard: leave its top where it is, and put up a handrail of its own on the wall, its top {} above the \
         noses, so that the top of the railing need not be one.",
        m.text(height)
    );
    let on_guard = format!(
        "Do not lower the guard: leave its top where it is, and put a handrail on the inner face, its top {} above the noses, on \
         slim brackets from below.",
        m.text(height)
    );
    let change = handrail_change(drawn, height);
    let deep = m.either(Length::sixty_fourths(96), 38);
    let step = format!(
        "{} high {} deep ± {}",
        m.text(height),
        m.text(deep),
        m.text(m.gaps)
    );
    let with_step = change.clone().also(
        Item::Foothold,
        &step,
        "as drawn: the handrail on the railing",
    );
    let [rail, brackets] = handrail_parts(drawn);
    vec![
        Offered::new(RemedyKind::WallHandrail, wall, change)
            .of(rail.clone())
            .of(brackets.clone())
            .taking(90, 180, LabourPer::Flight),
        Offered::new(RemedyKind::GuardHandrail, on_guard, with_step)
            .of(rail)
            .of(brackets)
            .taking(120, 240, LabourPer::Flight),
    ]
}

/// A separate handrail at a wrong height.
pub(super) fn handrail_height(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    if drawn.is_handrail() {
        return top_as_handrail(drawn);
    }
    let Some(height) = hand_height(drawn) else {
        return Vec::new();
    };
    let does = format!(
        "Move the handrail's brackets, so that its top stands at {} above the noses; screws into wood, \
         not into old holes.",
        m.text(height)
    );
    let change = GuardChange::default().instead(
        drawn.guard,
        Item::HandrailHeight,
        &m.drawn(height, m.gaps),
        "as drawn",
    );
    vec![
        Offered::new(RemedyKind::MoveBrackets, does, change)
            .aiming(format!("its top at {}", m.text(height)))
            .taking(20, 30, LabourPer::Bracket),
    ]
}
