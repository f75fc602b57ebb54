//! Remedies that close the inner face: sheets, boards upright, a mesh for the time being.

use crate::items::InfillLooseWord;
use crate::items::InfillWord;
use crate::items::Item;
use crate::items::ItemWord;
use crate::items::LocationWord;
use crate::items::OpeningsCheckedWord;
use crate::items::PlaceWord;
use crate::quantities::Length;
use crate::reading::Value;
use crate::remedy::aim::Measuring;
use crate::remedy::change::GuardChange;
use crate::remedy::drawn::Drawn;
use crate::remedy::drawn::is_stair;
use crate::remedy::kind::RemedyKind;
use crate::remedy::offered::Offered;
use crate::remedy::quantity::BOARDS;
use crate::remedy::quantity::HowMany;
use crate::remedy::quantity::LabourPer;
use crate::remedy::quantity::MaterialPart;
use crate::remedy::quantity::along;
use crate::remedy::quantity::measured;
use crate::remedy::topics::says;

/// A closed, smooth face from just above the floor to the top rail.
pub(super) fn closed_face(drawn: &Drawn<'_, '_>, infill: InfillWord, joint: &str) -> GuardChange {
    let m = &drawn.measuring;
    let low = m.either(Length::inches(1), 25);
    let none = "as drawn: covered by the new face";
    let mut change = GuardChange::default()
        .instead(
            drawn.guard,
            Item::Infill,
            infill.name(),
            "as drawn, on the inner face",
        )
        .instead(drawn.guard, Item::Opening, joint, "as drawn: the joints")
        .instead(
            drawn.guard,
            Item::OpeningsChecked,
            OpeningsCheckedWord::EveryOne.name(),
            "",
        )
        .instead(drawn.guard, Item::Foothold, "none", none)
        .without(drawn.guard, Item::LevelBarSpacing)
        .without(drawn.guard, Item::LevelMembersOn);
    if drawn.guard.of(Item::InfillLoose).next().is_some() {
        change = change.instead(
            drawn.guard,
            Item::InfillLoose,
            InfillLooseWord::No.name(),
            "as drawn",
        );
    }
    let shut = drawn.guard.of(Item::BottomGap).any(|(_, o)| {
        let value = o.reading.as_ref().map(|reading| &reading.value);
        value == Some(&Value::None)
    });
    if !shut && !says(drawn.guard, PlaceWord::Stair) {
        let gap = m.drawn(low, m.gaps);
        change = change.instead(
            drawn.guard,
            Item::BottomGap,
            &gap,
            "as drawn: below the new face",
        );
    }
    change
}

/// From just above the floor to the top rail.
fn face_height(drawn: &Drawn<'_, '_>) -> Option<Length> {
    let m = &drawn.measuring;
    let high = measured(drawn.guard, Item::Height)?;
    Some(m.up(high - m.either(Length::inches(1), 25)))
}

fn area(drawn: &Drawn<'_, '_>, what: &str) -> MaterialPart {
    let high = face_height(drawn).map_or_else(String::new, |high| {
        format!(", {} high", drawn.measuring.text(high))
    });
    along(drawn.guard, format!("{what}{high}"))
}

pub(super) fn sheet(drawn: &Drawn<'_, '_>, kind: RemedyKind) -> Offered {
    let m = &drawn.measuring;
    let joint = m.either(Length::sixty_fourths(16), 6);
    let says = format!(
        "Screw a clear sheet to the inner face, from {} above the floor up to the top rail; {} thick or \
         more, edges rounded, joints of {} at most: it closes the gaps and gives no foothold.",
        m.text(m.either(Length::inches(1), 25)),
        m.text(m.either(Length::sixty_fourths(16), 6)),
        m.text(joint)
    );
    let change = closed_face(drawn, InfillWord::Panel, &m.drawn(joint, m.gaps));
    Offered::new(kind, says, change)
        .of(area(drawn, "clear sheet (polycarbonate or acrylic)"))
        .taking(60, 120, LabourPer::Bay)
}

/// How wide a board is that stands upright on the inner face: the second that is sold.
fn board(m: &Measuring) -> Length {
    let (inches, millimetres) = BOARDS[1];
    m.either(Length::sixty_fourths(inches), millimetres)
}

/// How many boards cover the length with gaps of this width: the fewest, and a tenth more
/// for waste.
fn upright_boards(drawn: &Drawn<'_, '_>, slot: Length) -> MaterialPart {
    let m = &drawn.measuring;
    let wide = board(m);
    let count = measured(drawn.guard, Item::GuardLength).map(|length| {
        let (free, each) = ((length - slot).nanometres(), (wide + slot).nanometres());
        u32::try_from((free + each - 1) / each.max(1)).unwrap_or(0)
    });
    MaterialPart {
        what: format!("boards {} wide, upright", m.text(wide)),
        how_many: count.map_or(HowMany::Write(vec![Item::GuardLength]), |count| {
            HowMany::from_to(count, count.saturating_add(count.div_ceil(10)))
        }),
        length: face_height(drawn),
        buy: None,
    }
}

/// Boards upright over bars that a child climbs, a sheet, or a new bay.
pub(super) fn over_bars(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let cables = says(drawn.guard, InfillWord::Cables);
    // no wider than a foot finds no hold in, however much the rules would allow
    let slot = m.either(Length::sixty_fourths(32), 12);
    let boards = format!(
        "Screw boards upright to the inner face, no gap between them wider than {}; from {} above the \
         floor up to the top rail, so that no foot finds hold; wet boards dry first.",
        m.text(slot),
        m.text(m.either(Length::inches(1), 25))
    );
    let dried = drawn.dried(slot, board(m));
    let change = closed_face(drawn, InfillWord::Balusters, &dried);
    let kind = if cables {
        RemedyKind::UprightsForCables
    } else {
        RemedyKind::UprightBoards
    };
    let mut all = vec![
        Offered::new(kind, boards, change)
            .aiming(format!("gaps of {} or less", m.text(slot)))
            .of(upright_boards(drawn, slot))
            .taking(60, 150, LabourPer::Bay),
    ];
    if !cables {
        all.push(sheet(drawn, RemedyKind::SheetOverBars));
    }
    if let Some(target) = drawn.gap_target(Item::Opening, drawn.bar()) {
        all.push(Offered {
            kind: if cables {
                RemedyKind::NewBay
            } else {
                RemedyKind::BayOfUprights
            },
            ..new_bay(drawn, target)
        });
    }
    all
}

/// A smooth face over infill that a foot finds hold on.
pub(super) fn covered(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let solid = [InfillWord::Glass, InfillWord::Solid];
    if solid.iter().any(|infill| says(drawn.guard, *infill)) {
        return Vec::new();
    }
    vec![sheet(drawn, RemedyKind::SmoothSheet)]
}

/// What bridges the time until an opening is closed: nothing that makes holes.
pub(super) fn bridges(drawn: &Drawn<'_, '_>) -> Vec<Offered> {
    let m = &drawn.measuring;
    let inside = says(drawn.guard, LocationWord::Inside);
    let kind = match (drawn.is_climbable(), inside) {
        (true, true) => RemedyKind::MeshOverBarsInside,
        (true, false) => RemedyKind::MeshOverBarsOutside,
        (false, true) => RemedyKind::MeshInside,
        (false, false) => RemedyKind::MeshOutside,
    };
    let mesh = m.either(Length::sixty_fourths(80), 30);
    let does = format!(
        "Tie a stiff mesh of {} squares or smaller to the inner face, from the floor up to the top \
         rail, a tie every {} at all edges, ends cut and turned outward; push it by hand every week.",
        m.text(mesh),
        m.text(m.either(Length::inches(6), 150))
    );
    let mut change = closed_face(drawn, InfillWord::Mesh, &m.drawn(mesh, m.gaps));
    // a mesh covers no ledge
    change.new.retain(|new| new.item != Item::Foothold);
    change
        .gone
        .retain(|index| drawn.guard.observation(*index).item != Item::Foothold);
    vec![
        Offered::new(kind, does, change)
            .of(area(drawn, "stiff mesh"))
            .taking(30, 90, LabourPer::Bay),
        tied_sheet(drawn),
    ]
}

/// A sheet that is only tied: it gives no foothold, as a mesh does, and makes no hole.
fn tied_sheet(drawn: &Drawn<'_, '_>) -> Offered {
    let m = &drawn.measuring;
    let joint = m.either(Length::sixty_fourths(16), 6);
    let kind = if says(drawn.guard, InfillWord::Cables) {
        RemedyKind::CableSheet
    } else {
        RemedyKind::SheetClamped
    };
    let does = format!(
        "Tie or clamp a clear sheet to the inner face, from {} above the floor up to the top rail, through \
         holes drilled into the sheet before it goes up and none into the railing; {} thick or more, edges \
         rounded, held every {} all round. A foot finds no hold on it, as on a mesh; push it by hand every week.",
        m.text(m.either(Length::inches(1), 25)),
        m.text(joint),
        m.text(m.either(Length::inches(12), 300))
    );
    let change = closed_face(drawn, InfillWord::Panel, &m.drawn(joint, m.gaps));
    Offered::new(kind, does, change)
        .of(area(drawn, "clear sheet (polycarbonate or acrylic)"))
        .taking(60, 120, LabourPer::Bay)
}

pub(super) fn new_bay(drawn: &Drawn<'_, '_>, target: Length) -> Offered {
    let m = &drawn.measuring;
    let says = format!(
        "Have the bay made anew with uprights no more than {} apart and no more than that above \
         the floor; new work keeps to today's rules.",
        m.text(target)
    );
    let mut change = closed_face(drawn, InfillWord::Balusters, &m.drawn(target, m.gaps));
    change.new.retain(|new| new.item != Item::BottomGap);
    if !is_stair(drawn.guard) {
        let bottom = drawn
            .gap_target(Item::BottomGap, Length::ZERO)
            .unwrap_or(target)
            .min(target);
        let gap = m.drawn(bottom, m.gaps);
        change = change.instead(drawn.guard, Item::BottomGap, &gap, "as drawn");
    }
    Offered::new(RemedyKind::NewBay, says, change)
        .aiming(format!("gaps of {} or less", m.text(target)))
        .taking(240, 480, LabourPer::Bay)
}
