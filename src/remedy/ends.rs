//! Remedies of loose and missing infill, and of gaps at walls, edges and joints.

use crate::items::InfillLooseWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::quantities::Length;
use crate::remedy::change::GuardChange;
use crate::remedy::drawn::Drawn;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::HowMany;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::MaterialPart;
use crate::remedy::quantity::measured;
use crate::remedy::topics::says;

/// Loose or missing infill.
pub(super) fn loose(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let change = GuardChange::default().instead(
        drawn.guard,
        Item::InfillLoose,
        InfillLooseWord::No.name(),
        "as drawn",
    );
    if says(drawn.guard, InfillLooseWord::Missing) {
        let does = "Put a new baluster where one is missing; of the same section, screwed at both ends. Count all bays, since one missing often means that all are held alike."
            .to_owned();
        return vec![
            Offered::new(RemedyKind::NewBaluster, does, change)
                .of(MaterialPart {
                    what: "balusters of the same section".to_owned(),
                    how_many: HowMany::Exactly(1),
                    length: measured(drawn.guard, Item::BalusterLength),
                    buy: None,
                })
                .taking(20, 40, LabourPer::Baluster),
        ];
    }
    let does =
        "Drive one new screw, top and bottom, through what is loose into the rail, beside the \
                old hole and with a pilot hole; what is split or only nailed is replaced."
            .to_owned();
    vec![Offered::new(RemedyKind::ScrewLoose, does, change).taking(6, 12, LabourPer::Baluster)]
}

/// The gap between the last upright and a wall or post.
pub(super) fn at_wall(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let gap = measured(drawn.guard, Item::EndGap);
    let Some(target) = drawn.filled_target(Item::EndGap, gap) else {
        return Vec::new();
    };
    let change = GuardChange::default().instead(
        drawn.guard,
        Item::EndGap,
        &m.drawn(target, m.gaps),
        "as drawn, at its widest",
    );
    let gap = gap.filter(|gap| *gap > target);
    let wide = gap.map_or_else(
        || "wide enough".to_owned(),
        |gap| format!("{} thick or more", m.text(m.up(gap - target))),
    );
    let aim = format!("{} or less", m.text(target));
    let strip = format!(
        "Screw an upright strip to the post or to wood in the wall, from the floor to the top rail; a strip \
         {wide}, so that {} or less stays at the widest place, never into plaster alone.",
        m.text(target)
    );
    let bar = format!(
        "Set a half baluster or a wall post in the gap, so that {} or less stays on either side.",
        m.text(target)
    );
    let mut all = vec![
        Offered::new(RemedyKind::StripAtWall, strip, change.clone())
            .aiming(aim.clone())
            .taking(20, 45, LabourPer::Strip),
        Offered::new(RemedyKind::HalfBaluster, bar, change.clone())
            .aiming(aim.clone())
            .taking(30, 60, LabourPer::Post),
    ];
    // two gaps of the target and the bar between them fill what is there
    let joint = gap.map(|gap| {
        m.up(gap - target - target)
            .max(m.either(Length::sixty_fourths(48), 19))
    });
    if let Some(wide) = joint {
        let upright = format!(
            "Where two railings meet, fix an upright {} wide or more in the middle of the joint; to the top \
             of the higher railing, so that {} or less stays on either side; to both posts where they stand \
             on one structure, else to one of them alone.",
            m.text(wide),
            m.text(target)
        );
        all.push(
            Offered::new(RemedyKind::UprightInJoint, upright, change)
                .aiming(aim)
                .of(MaterialPart {
                    what: format!("upright {} wide or more", m.text(wide)),
                    how_many: HowMany::Exactly(1),
                    length: measured(drawn.guard, Item::Height),
                    buy: None,
                })
                .taking(20, 45, LabourPer::Joint),
        );
    }
    all
}

/// The gap between the floor's edge and a guard that is fixed outside it.
pub(super) fn at_edge(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let gap = measured(drawn.guard, Item::EdgeGap);
    let Some(target) = drawn.filled_target(Item::EdgeGap, gap) else {
        return Vec::new();
    };
    let says = format!(
        "Close the gap at the floor's edge with a strip on the edge or a rail set inward, to {} or \
         less; leave a way for water.",
        m.text(target)
    );
    let change = GuardChange::default().instead(
        drawn.guard,
        Item::EdgeGap,
        &m.drawn(target, m.gaps),
        "as drawn",
    );
    vec![
        Offered::new(RemedyKind::StripAtEdge, says, change)
            .aiming(format!("{} or less", m.text(target))),
    ]
}

/// A gap that is open at the top and narrows downward.
pub(super) fn vee(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let says = "Fill the V to its full height with a board, or close it above by a bar at the top \
                rail; half filled it only becomes narrower."
        .to_owned();
    let change =
        GuardChange::default().instead(drawn.guard, Item::VOpening, "none", "as drawn: filled");
    vec![Offered::new(RemedyKind::VeeClosed, says, change)]
}
