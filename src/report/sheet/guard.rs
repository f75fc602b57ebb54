//! The pages of one guard, in the order of work: look and push, the ball, the tape.

use std::collections::BTreeSet;

use maud::Markup;
use maud::html;

use crate::items::Drawing;
use crate::items::Group;
use crate::items::Hole;
use crate::items::Item;
use crate::items::Kind;
use crate::quantities::LengthUnit;
use crate::report::sheet::Sheet;
use crate::report::sheet::frame::PageOf;
use crate::report::sheet::frame::page;
use crate::report::sheet::paginate::Around;
use crate::report::sheet::paginate::PaperPart;
use crate::report::sheet::paginate::pages;
use crate::report::sheet::rows::RowPart;
use crate::report::sheet::rows::ball_row;
use crate::report::sheet::rows::balls;
use crate::report::sheet::rows::balls_head;
use crate::report::sheet::rows::drawings;
use crate::report::sheet::rows::drawings_of;
use crate::report::sheet::rows::line;
use crate::report::sheet::rows::row;
use crate::report::sheet::rows::row_of;
use crate::report::sheet::rows::takes_balls;
use crate::report::sheet::rows::tick;
use crate::report::sheet::rows::words;

/// What is on every page beside its rows: the running head and the foot.
const HEAD_AND_FOOT_MM: f64 = 31.0;
/// A heading of a part.
const HEADING_MM: f64 = 10.0;
/// The head of a table.
const TABLE_HEAD_MM: f64 = 1.0;
/// How many balls stand beside each other.
const BALLS: usize = 6;
/// Room for the lines of notes, at the least.
const NOTES_MM: f64 = 26.0;

/// What is seen before anything is touched.
const LOOKED_AT: [Item; 6] = [
    Item::Guard,
    Item::MovesWhenPushed,
    Item::InfillLoose,
    Item::Condition,
    Item::PostFastening,
    Item::Paint,
];

/// All pages of a guard, an even number of them: printed on both sides, none backs
/// another guard's.
pub(super) fn guard(sheet: &Sheet<'_>, number: u32) -> Markup {
    let items = sheet.items_of_a_guard();
    let strength = sheet.items_of_strength();
    let unit = sheet.unit();
    let mut parts = vec![look(&items, sheet, unit)];
    parts.extend(ball_parts(&items, sheet, unit));
    parts.push(tape(&items, sheet, unit));
    parts.extend(stairs(&items, sheet, unit));
    if !strength.is_empty() {
        parts.push(what_holds(&strength, sheet, unit));
    }
    let room = sheet.paper.room() - HEAD_AND_FOOT_MM;
    let mut filled = pages(parts, room);
    let last = filled.last().map_or(0.0, |(_, left)| *left);
    if last < NOTES_MM || filled.len() % 2 == 1 {
        filled.push((Vec::new(), room));
    }
    if filled.len() % 2 == 1 {
        filled.push((Vec::new(), room));
    }
    let count = filled.len();
    html! {
        @for (index, (pieces, left)) in filled.into_iter().enumerate() {
            (page(sheet, &PageOf { guard: number, page: index + 1, pages: count }, pieces, left))
        }
    }
}

fn goes_on(number: &'static str, says: &'static str) -> Box<dyn Fn() -> Markup> {
    Box::new(move || html! { h2 { (number) " " (says) ", goes on" } })
}

fn look(items: &BTreeSet<Item>, sheet: &Sheet<'_>, unit: LengthUnit) -> PaperPart {
    let mut rows = vec![
        row(
            &[Item::Guard],
            "guard",
            "is there a railing at this edge?",
            with_not_reached(words(Item::Guard)),
        ),
        row(
            &[Item::MovesWhenPushed],
            "moves when pushed",
            "stand well back; push once, gently, with one hand at the top; stop at the first movement",
            with_not_reached(words(Item::MovesWhenPushed)),
        ),
        row(
            &[Item::InfillLoose],
            "infill loose",
            "look; twist each bar gently",
            with_not_reached(words(Item::InfillLoose)),
        ),
    ];
    let mut condition = words(Item::Condition);
    condition.push(tick("post off the floor: STOP"));
    rows.push(row(
        &[Item::Condition],
        "condition",
        "look only; several are possible",
        with_not_reached(condition),
    ));
    rows.push(row(
        &[Item::Paint],
        "paint",
        "before 1978 it may hold lead: leave it alone",
        with_not_reached(words(Item::Paint)),
    ));
    let told = |item: &&Item| {
        let group = item.info().group;
        let circumstance = group == Group::Circumstance && !item.is_asked_once();
        let seen = group == Group::Seen || **item == Item::Infill;
        (circumstance || seen)
            && !LOOKED_AT[..4].contains(item)
            && **item != Item::Paint
            && **item != Item::Photo
            && !item.is_of_stairs()
    };
    rows.extend(
        items
            .iter()
            .filter(told)
            .map(|item| row_of(*item, sheet.rulesets, unit)),
    );
    let caution = html! {
        p class="cau" {
            b { "Stay on the safe side. Never lean on it, or over the edge. Children away." }
            " Where there is no railing, or it moves: keep well back, write “not reached”."
        }
    };
    let stop = html! {
        p class="stop" {
            b { "STOP ticked?" }
            " Keep everybody off it, close the way to it tonight, touch it no more; never lock or block a way out in a fire. Go on with the next railing."
        }
    };
    PaperPart {
        begin: Box::new(move || {
            html! { (caution) h2 { "1 Look and push" } (stop) }
        }),
        begin_mm: HEADING_MM + 28.0,
        again: goes_on("1", "Look and push"),
        again_mm: HEADING_MM,
        columns: columns(),
        rows,
        around: Around::Rows,
    }
}

fn with_not_reached(mut parts: Vec<RowPart>) -> Vec<RowPart> {
    parts.push(tick("not reached"));
    parts
}

/// The columns of a table of rows, for who does not see it.
fn columns() -> Markup {
    html! {
        tr class="vh" { th scope="col" { "what" } th scope="col" { "tick or write" } }
    }
}

/// The balls, in as many tables as they need.
fn ball_parts(items: &BTreeSet<Item>, sheet: &Sheet<'_>, unit: LengthUnit) -> Vec<PaperPart> {
    let holes: Vec<Item> = items
        .iter()
        .copied()
        .filter(|item| takes_balls(*item, sheet.rulesets))
        .collect();
    let all = balls(&holes, sheet.rulesets);
    let level: Vec<Item> = holes
        .iter()
        .copied()
        .filter(|hole| !hole.is_of_stairs())
        .collect();
    let draws = drawings_of(&level, 4);
    let mut parts = Vec::new();
    for (index, some) in all.chunks(BALLS).enumerate() {
        let (draws_mm, drawn) = if index == 0 {
            drawings(&draws)
        } else {
            (0.0, html! {})
        };
        let rows: Vec<(f64, Markup)> = holes.iter().map(|hole| ball_row(*hole, some)).collect();
        let begin = move || {
            html! {
                @if index == 0 {
                    h2 {
                        "2 The ball "
                        span class="sub" {
                            "at every hole, from the safe side; measure across the ball first; press nothing, but cables and nets gently by hand"
                        }
                    }
                } @else {
                    h2 { "2 The ball, larger ones" }
                }
                (drawn)
            }
        };
        parts.push(PaperPart {
            begin: Box::new(begin),
            begin_mm: HEADING_MM + 6.0 + draws_mm + 17.0,
            again: goes_on("2", "The ball"),
            again_mm: HEADING_MM + 17.0,
            columns: balls_head(some, unit),
            rows,
            around: Around::Balls,
        });
    }
    parts
}

fn tape(items: &BTreeSet<Item>, sheet: &Sheet<'_>, unit: LengthUnit) -> PaperPart {
    let measured: Vec<Item> = items
        .iter()
        .copied()
        .filter(|item| item.info().group == Group::Measured && !item.is_of_stairs())
        .collect();
    let mut rows = Vec::new();
    for item in &measured {
        if *item == Item::OpeningsChecked {
            continue;
        }
        if *item == Item::Opening {
            for (name, asks) in [
                (
                    "widest gap",
                    "where the ball passed; level, square between the faces",
                ),
                ("next gap", "the second widest"),
                ("third gap", ""),
            ] {
                let parts = vec![
                    line(""),
                    line("how high"),
                    tick("none"),
                    tick("not reached"),
                ];
                rows.push(row(&[Item::Opening], name, asks, parts));
            }
            let checked = Item::OpeningsChecked;
            let asks = "how many gaps you looked at";
            rows.push(row(&[checked], checked.name(), asks, words(checked)));
        } else {
            rows.push(row_of(*item, sheet.rulesets, unit));
        }
    }
    rows.push(row(
        &[Item::Photo],
        "photo no.",
        "one from the safe side, with a folding rule beside it",
        vec![line(""), tick("none")],
    ));
    let mut draws: Vec<Drawing> = vec![Drawing::Height];
    if measured.contains(&Item::Opening) {
        draws.push(Drawing::Tape);
    }
    if measured.contains(&Item::Foothold) {
        draws.push(Drawing::Foothold);
    }
    if measured.contains(&Item::ThingToClimb) {
        draws.push(Drawing::ThingToClimb);
    }
    let others = drawings_of(&measured, 12);
    for drawing in others {
        if draws.len() < 4 && !draws.contains(&drawing) {
            draws.push(drawing);
        }
    }
    let (draws_mm, drawn) = drawings(&draws);
    let begin = move || {
        let example = if unit.is_imperial() {
            "write the unit: 41 3/4 in · “over 8 ft” if too far to reach"
        } else {
            "write the unit: 1060 mm · 106.2 cm · “over 2.5 m” if too far to reach"
        };
        html! {
            h2 { "3 The tape " span class="sub" { (example) } }
            (drawn)
        }
    };
    PaperPart {
        begin: Box::new(begin),
        begin_mm: HEADING_MM + draws_mm + TABLE_HEAD_MM,
        again: goes_on("3", "The tape"),
        again_mm: HEADING_MM,
        columns: columns(),
        rows,
        around: Around::Rows,
    }
}

fn stairs(items: &BTreeSet<Item>, sheet: &Sheet<'_>, unit: LengthUnit) -> Option<PaperPart> {
    let mut asked: Vec<Item> = items
        .iter()
        .copied()
        .filter(|item| item.is_of_stairs() && !item.is_asked_once())
        .collect();
    // holes first, as everywhere
    asked.sort_by_key(|item| item.info().hole == Hole::No);
    if asked.is_empty() {
        return None;
    }
    let rows = asked
        .iter()
        .map(|item| row_of(*item, sheet.rulesets, unit))
        .collect();
    let mut draws = vec![Drawing::HeightOnStair];
    for drawing in drawings_of(&asked, 4) {
        if draws.len() < 4 && !draws.contains(&drawing) {
            draws.push(drawing);
        }
    }
    let (draws_mm, drawn) = drawings(&draws);
    Some(PaperPart {
        begin: Box::new(move || html! { h2 { "4 Stairs only" } (drawn) }),
        begin_mm: HEADING_MM + draws_mm + 5.0,
        again: goes_on("4", "Stairs only"),
        again_mm: HEADING_MM + 5.0,
        columns: columns(),
        rows,
        around: Around::Band,
    })
}

fn what_holds(items: &BTreeSet<Item>, sheet: &Sheet<'_>, unit: LengthUnit) -> PaperPart {
    let asked: Vec<Item> = items
        .iter()
        .copied()
        .filter(|item| !item.is_asked_once())
        .collect();
    let rows = asked
        .iter()
        .map(|item| row_of(*item, sheet.rulesets, unit))
        .collect();
    let measured = |item: &Item| !matches!(item.info().kind, Kind::Words(_));
    let drawn: Vec<Item> = asked.iter().copied().filter(measured).collect();
    let (draws_mm, drawn) = drawings(&drawings_of(&drawn, 3));
    PaperPart {
        begin: Box::new(move || {
            html! {
                h2 { "5 What holds it " span class="sub" { "only if its strength is looked into as well" } }
                p class="sub" {
                    "Write what can be seen without taking anything apart, and leave the rest empty. Nothing is tried out on it: what was seen is compared with published values, and a licensed engineer decides."
                }
                (drawn)
            }
        }),
        begin_mm: HEADING_MM + 12.0 + draws_mm,
        again: goes_on("5", "What holds it"),
        again_mm: HEADING_MM,
        columns: columns(),
        rows,
        around: Around::Rows,
    }
}
