//! The hole that decides at life size, with the ball that must not pass as a disc of
//! paper to cut out.

use maud::Markup;
use maud::html;

use crate::quantities::Length;
use crate::report::guard_drawing::facts::HoleDrawn;
use crate::report::guard_drawing::facts::HoleShape;
use crate::report::guard_drawing::pen::px;

/// What both A4 and Letter hold between their margins, in millimetres.
const PAPER: f64 = 176.0;

/// The hole and the strictest ball, each as wide on paper as in the world; the bar tells
/// whether the printer kept the size.
pub(in crate::report) fn life_size(drawn: &HoleDrawn, id: &str) -> Markup {
    let hole = drawn.passes.millimetres_as_float();
    html! {
        p { b { (drawn.title) ": " (drawn.says) } }
        (check_bar(id))
        @match drawn.shape {
            HoleShape::BetweenUprights | HoleShape::BetweenLevels if hole <= PAPER => (band(hole, id)),
            HoleShape::BetweenUprights | HoleShape::BetweenLevels => {
                p { "The hole is wider than the paper; the disc alone is drawn." }
            }
            HoleShape::AtStep { .. } | HoleShape::Unknown => {
                p { "The edges of this hole are not drawn here; the disc alone is." }
            }
        }
        @if !drawn.asked.is_empty() {
            p { "Cut the discs out. A ball of this size must not pass. Paper bends; hold it flat, square to the \
    bars, and try every hole. What it says counts only with a ball." }
        }
        @for (at, ball) in drawn.asked.iter().enumerate() {
            div class="whole" {
                p { b { (ball.says) } }
                (disc(ball.length, &ball.says, &format!("{id}-{at}")))
            }
        }
    }
}

/// A hundred millimetres and four inches, to lay a ruler on.
fn check_bar(id: &str) -> Markup {
    let title = format!("{id}-bar");
    html! {
        p { "Print at 100 %, not fitted to the page. Lay a ruler on the bar: from end to end 100 mm, to the short mark 3 in. \
    If it is not so, the sheet is not to size." }
        div class="scroll" tabindex="0" role="group" aria-label="a bar to lay a ruler on" {
        svg class="life" width="104mm" height="10mm" viewBox="0 0 104 10" role="img" aria-labelledby=(title) {
            title id=(title) { "A bar of 100 mm, with a mark at 3 in" }
            path class="life-line" d="M2 5H102M2 2V8M102 2V8M78.2 3.5V6.5" {}
        } }
    }
}

fn band(hole: f64, id: &str) -> Markup {
    let title = format!("{id}-hole");
    let wide = PAPER;
    let high = hole + 16.0;
    html! {
        div class="scroll" tabindex="0" role="group" aria-label="the hole at life size" {
        svg class="life" width={ (px(wide)) "mm" } height={ (px(high)) "mm" }
            viewBox={ "0 0 " (px(wide)) " " (exact(high)) } role="img" aria-labelledby=(title) {
            title id=(title) { "The hole at life size, lying on its side" }
            rect class="body-of" x="0" y="0" width=(px(wide)) height="8" {}
            rect class="body-of" x="0" y=(exact(hole + 8.0)) width=(px(wide)) height="8" {}
            path class="life-line" d={ "M0 8H" (px(wide)) "M0 " (exact(hole + 8.0)) "H" (px(wide)) } {}
        } }
    }
}

fn disc(length: Length, says: &str, id: &str) -> Markup {
    let across = length.millimetres_as_float();
    let title = format!("{id}-disc");
    html! {
        @if across > PAPER {
            p { "The ball is wider than the paper." }
        } @else {
            div class="scroll whole" tabindex="0" role="group" aria-label="a disc to cut out" {
            svg class="life" width={ (exact(across + 2.0)) "mm" } height={ (exact(across + 2.0)) "mm" }
                viewBox={ "-1 -1 " (exact(across + 2.0)) " " (exact(across + 2.0)) } role="img" aria-labelledby=(title) {
                title id=(title) { "A disc to cut out, " (says) }
                circle class="life-line" cx=(exact(across / 2.0)) cy=(exact(across / 2.0)) r=(exact(across / 2.0)) {}
                path class="life-line" d={ "M" (exact(across / 2.0 - 4.0)) " " (exact(across / 2.0)) "h8m-4 -4v8" } {}
            } }
        }
    }
}

/// Hundredths of a millimetre.
fn exact(size: f64) -> String {
    format!("{}", (size * 100.0).round() / 100.0 + 0.0)
}
