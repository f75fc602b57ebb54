//! A drawing as SVG: black lines on white, labels as text.

use maud::Markup;
use maud::html;

use crate::items::At;
use crate::items::COLUMN;
use crate::items::DimensionEnds;
use crate::items::DrawingScene;
use crate::items::Mark;
use crate::items::ROW;

/// One `svg` element that scales to its place; its title is the caption.
#[must_use]
pub fn vector(scene: &DrawingScene) -> Markup {
    let (width, height) = (scene.columns * COLUMN, scene.rows * ROW);
    let view = format!("-1 -4 {} {}", width + 2, height + 5);
    // tall drawings are scaled down more, and their words with them
    let letters = if scene.rows > 10 { 15 } else { 13 };
    let tall = if scene.rows > 10 { "tall" } else { "low" };
    html! {
        svg class=(tall) xmlns="http://www.w3.org/2000/svg" viewBox=(view) role="img"
            fill="none" stroke="#000" stroke-width="1" font-family="sans-serif" font-size=(letters) {
            title { (scene.caption) }
            @for mark in scene.marks { (drawn(mark)) }
        }
    }
}

fn drawn(mark: &Mark) -> Markup {
    match *mark {
        Mark::Ball { at, across } => html! {
            circle cx=(at.x * COLUMN + COLUMN / 2) cy=(at.y * ROW + ROW / 2)
                r=(across * COLUMN / 2) fill="#fff" stroke-width="2" {}
        },
        Mark::Baluster { x, rows } => cells(at(x, rows.0), at(x, rows.1), "#fff"),
        Mark::Box(from, to) => cells(from, to, "#fff"),
        Mark::Dots(from, to) => html! {
            line x1=(from.x * COLUMN) y1=(from.y * ROW) x2=(to.x * COLUMN) y2=(to.y * ROW)
                stroke-dasharray="1.5 3" {}
        },
        Mark::Label(from, text) => html! {
            text x=(from.x * COLUMN) y=(from.y * ROW + ROW - 2) fill="#000" stroke="#fff"
                stroke-width="3" paint-order="stroke" { (text) }
        },
        Mark::Post { x, rows } => cells(at(x, rows.0), at(x, rows.1), "#000"),
        Mark::Rail(from, to) => rail(from, to),
        Mark::Solid(from, to) => solid(from, to),
        Mark::Span(from, to, ends) => span(from, to, ends),
    }
}

fn cells(from: At, to: At, fill: &str) -> Markup {
    html! {
        rect x=(from.x * COLUMN) y=(from.y * ROW) width=((to.x - from.x + 1) * COLUMN)
            height=((to.y - from.y + 1) * ROW) fill=(fill) {}
    }
}

/// The upper edge of a level rail is the upper side of its cells; that of a
/// sloping one runs from the middle of the first column to that of the last.
fn rail(from: At, to: At) -> Markup {
    if from.y == to.y {
        return cells(from, to, "#ccc");
    }
    let thick = ROW;
    let middle = COLUMN / 2;
    let (left, right) = (from.x * COLUMN + middle, to.x * COLUMN + middle);
    let (high, low) = (from.y * ROW, to.y * ROW);
    let points = format!(
        "{left},{high} {right},{low} {right},{} {left},{}",
        low + thick,
        high + thick
    );
    html! { polygon points=(points) fill="#ccc" {} }
}

/// A rectangle with lines across, each from its lower left to its upper right.
fn solid(from: At, to: At) -> Markup {
    const STEP: usize = 6;
    let (left, top) = (from.x * COLUMN, from.y * ROW);
    let (width, height) = ((to.x - from.x + 1) * COLUMN, (to.y - from.y + 1) * ROW);
    let mut path = String::new();
    for along in (0..width + height).step_by(STEP).skip(1) {
        let (x1, y1) = ((along - height).max(0), along.min(height));
        let (x2, y2) = (along.min(width), (along - width).max(0));
        path += &format!("M{} {}L{} {}", left + x1, top + y1, left + x2, top + y2);
    }
    html! {
        rect x=(left) y=(top) width=(width) height=(height) fill="#fff" {}
        path d=(path) stroke-width="0.5" {}
    }
}

/// A line with an arrow and an end mark at each end, on white so that it stands out.
fn span(from: At, to: At, ends: DimensionEnds) -> Markup {
    let (middle_x, middle_y) = (COLUMN / 2, ROW / 2);
    let level = from.y == to.y;
    let (before, after) = match (ends, level) {
        (DimensionEnds::Centres, true) => (middle_x, middle_x),
        (DimensionEnds::Centres, false) => (middle_y, middle_y),
        (DimensionEnds::Faces, true) => (0, COLUMN),
        (DimensionEnds::Faces, false) => (0, ROW),
    };
    let path = if level {
        let (y, x1, x2) = (
            from.y * ROW + middle_y,
            from.x * COLUMN + before,
            to.x * COLUMN + after,
        );
        format!(
            "M{x1} {y}H{x2}M{} {}L{x1} {y}L{} {}M{} {}L{x2} {y}L{} {}M{x1} {}V{}M{x2} {}V{}",
            x1 + 4,
            y - 3,
            x1 + 4,
            y + 3,
            x2 - 4,
            y - 3,
            x2 - 4,
            y + 3,
            y - 5,
            y + 5,
            y - 5,
            y + 5
        )
    } else {
        let (x, y1, y2) = (
            from.x * COLUMN + middle_x,
            from.y * ROW + before,
            to.y * ROW + after,
        );
        format!(
            "M{x} {y1}V{y2}M{} {}L{x} {y1}L{} {}M{} {}L{x} {y2}L{} {}M{} {y1}H{}M{} {y2}H{}",
            x - 3,
            y1 + 4,
            x + 3,
            y1 + 4,
            x - 3,
            y2 - 4,
            x + 3,
            y2 - 4,
            x - 5,
            x + 5,
            x - 5,
            x + 5
        )
    };
    html! { path d=(path) stroke-width="1.6" {} }
}

const fn at(x: i32, y: i32) -> At {
    At { x, y }
}
