//! The hole that decides, at a larger scale of its own, with each ball asked for and
//! the largest that passes.

use maud::Markup;
use maud::html;

use crate::quantities::Length;
use crate::report::guard_drawing::facts::HoleDrawn;
use crate::report::guard_drawing::facts::HoleShape;
use crate::report::guard_drawing::facts::SizeDrawn;
use crate::report::guard_drawing::pen::LINE;
use crate::report::guard_drawing::pen::LabelSide;
use crate::report::guard_drawing::pen::WIDE;
use crate::report::guard_drawing::pen::count;
use crate::report::guard_drawing::pen::in_lines;
use crate::report::guard_drawing::pen::label;
use crate::report::guard_drawing::pen::px;
use crate::report::guard_drawing::pen::scale_bar;
use crate::report::guard_drawing::pen::upright_dimension;

/// More balls than these are told on the cards alone.
const BALLS: usize = 3;
/// What was written stands below a ball where it is no longer.
const SHORT_ENOUGH: usize = 24;
/// Room for the balls beside each other.
const ROOM: f64 = 300.0;
/// A ball with its words, and from one to the next.
const ROOM_OF_A_BALL: f64 = 70.0;
const BETWEEN: f64 = 8.0;
/// The highest that a hole is drawn.
const HIGHEST: f64 = 150.0;

/// The drawing with its words.
pub(in crate::report) fn hole(drawn: &HoleDrawn, id: &str) -> Markup {
    let balls = balls(drawn);
    let step = match drawn.shape {
        HoleShape::AtStep { rise, going, lift } => Some((rise, going, lift)),
        HoleShape::BetweenLevels | HoleShape::BetweenUprights | HoleShape::Unknown => None,
    };
    let sizes: Vec<f64> = balls
        .iter()
        .map(|ball| ball.size.length.millimetres_as_float())
        .collect();
    let wide: f64 = sizes.iter().map(|size| size.max(1.0)).sum();
    let tallest = sizes.iter().copied().fold(1.0, f64::max);
    // what the small ones leave of their room is not the large one's
    let smallest = sizes.iter().copied().fold(f64::INFINITY, f64::min);
    let mut scale = (ROOM / wide).min(HIGHEST / tallest);
    while scale > 0.01 && room_taken(&sizes, scale) > WIDE - 26.0 {
        scale *= 0.97;
    }
    scale = scale.max(0.2 / smallest.max(1.0));
    if let Some((rise, going, lift)) = step {
        let high = rise.millimetres_as_float() * 2.0 + lift.millimetres_as_float();
        scale = (170.0 / going.millimetres_as_float() / 1.6).min(210.0 / high);
    }
    let (title, words) = (format!("{id}-title"), format!("{id}-words"));
    let (picture, high) = match step {
        Some((rise, going, lift)) => at_step(drawn, scale, rise, going, lift),
        None => beside_each_other(drawn, &balls, scale),
    };
    html! {
        figure class="fig" {
            p class="fig-name" { (drawn.title) ", larger" }
            svg class="draw" viewBox={ "0 0 " (px(WIDE)) " " (px(high + 34.0)) } role="img"
                aria-labelledby={ (title) " " (words) } {
                title id=(title) { (drawn.title) ", larger, with the balls asked for" }
                desc id=(words) { (in_words(drawn)) }
                (picture)
                (scale_bar(6.0, high + 20.0, drawn.unit, scale))
            }
            figcaption { (caption(drawn)) }
        }
    }
}

/// How wide the balls are with their words.
fn room_taken(sizes_mm: &[f64], scale: f64) -> f64 {
    let each = sizes_mm.iter();
    each.map(|size| (size * scale).max(ROOM_OF_A_BALL) + BETWEEN)
        .sum()
}

struct BallDrawn {
    size: SizeDrawn,
    class: &'static str,
}

/// The balls asked for, the smallest first, and the largest that passes at its place.
fn balls(drawn: &HoleDrawn) -> Vec<BallDrawn> {
    let mut asked: Vec<SizeDrawn> = Vec::new();
    for size in &drawn.asked {
        // one ball may be asked for by rules and by advice
        match asked.iter_mut().find(|other| other.length == size.length) {
            Some(known) => {
                let who = size.says.rsplit(": ").next().unwrap_or_default();
                if !known.says.ends_with(who) {
                    known.says.push_str(&format!(" and {who}"));
                }
            }
            None => asked.push(size.clone()),
        }
    }
    asked.truncate(BALLS);
    let mut all: Vec<BallDrawn> = asked
        .into_iter()
        .map(|size| BallDrawn {
            size,
            class: "ball-asked",
        })
        .collect();
    let passes = match drawn.shape {
        HoleShape::Unknown if drawn.says.chars().count() <= SHORT_ENOUGH => {
            format!("{}: as written", drawn.says)
        }
        HoleShape::Unknown => format!("{}: passes", drawn.passes.readable(drawn.unit)),
        HoleShape::AtStep { .. } | HoleShape::BetweenLevels | HoleShape::BetweenUprights => {
            format!("{}: just passes", drawn.passes.readable(drawn.unit))
        }
    };
    all.push(BallDrawn {
        size: SizeDrawn {
            length: drawn.passes,
            says: passes,
        },
        class: "ball-passes",
    });
    all
}

/// The hole as a band, the balls side by side in it.
fn beside_each_other(drawn: &HoleDrawn, balls: &[BallDrawn], scale: f64) -> (Markup, f64) {
    let hole = drawn.passes.millimetres_as_float() * scale;
    let tallest = balls
        .iter()
        .map(|ball| ball.size.length.millimetres_as_float() * scale);
    let tallest = tallest.fold(hole, f64::max);
    let edges = !matches!(drawn.shape, HoleShape::Unknown);
    let top = 20.0 + (tallest - hole);
    let floor = top + hole;
    let mut x = 10.0;
    let mut placed: Vec<(f64, f64, &BallDrawn)> = Vec::new();
    for ball in balls {
        let wide = ball.size.length.millimetres_as_float() * scale;
        let room = wide.max(ROOM_OF_A_BALL);
        placed.push((x + room / 2.0, wide / 2.0, ball));
        x += room + BETWEEN;
    }
    let right = x;
    let below = if edges { floor + 34.0 } else { floor + 20.0 };
    let lines: Vec<Vec<String>> = balls
        .iter()
        .map(|ball| in_lines(&ball.size.says, 10))
        .collect();
    let most = lines.iter().map(Vec::len).max().unwrap_or(1);
    let picture = html! {
        @if edges {
            rect class="body-of" x="4" y=(px(top - 14.0)) width=(px(right - 8.0)) height="14" {}
            path class="thick" d={ "M4 " (px(top)) "H" (px(right - 4.0)) } {}
            rect class="body-of" x="4" y=(px(floor)) width=(px(right - 8.0)) height="14" {}
            path class="thick" d={ "M4 " (px(floor)) "H" (px(right - 4.0)) } {}
            (upright_dimension(right + 8.0, floor, top))
        }
        @for ((x, r, ball), lines) in placed.iter().zip(&lines) {
            circle class=(ball.class) cx=(px(*x)) cy=(px(floor - r)) r=(px(*r)) {}
            (label(*x, below, LabelSide::Middle, lines))
        }
    };
    (picture, below + LINE * count(most))
}

/// Two steps, the line of the rail's underside, and the largest ball in the corner.
fn at_step(
    drawn: &HoleDrawn,
    scale: f64,
    rise: Length,
    going: Length,
    lift: Length,
) -> (Markup, f64) {
    let (rise, going, lift) = (
        rise.millimetres_as_float() * scale,
        going.millimetres_as_float() * scale,
        lift.millimetres_as_float() * scale,
    );
    let r = drawn.passes.millimetres_as_float() * scale / 2.0;
    let left = 8.0 + going * 0.3;
    let top = 12.0 + rise * 0.3 + lift;
    // the nose of the lower tread, and of the next one up
    let (x0, y0) = (left, top + rise);
    let (x1, y1) = (left + going, top);
    let slope = rise / going;
    let rail = |x: f64| y0 - lift - (x - x0) * slope;
    let (from, to) = (left - going * 0.3, x1 + going * 0.3);
    let steps = format!("M{} {}H{}V{}H{}", px(x0), px(y0), px(x1), px(y1), px(to));
    let smallest = drawn.asked.first();
    let words_at = to + 14.0;
    let mut lines = in_lines(
        &format!("{} just passes", drawn.passes.readable(drawn.unit)),
        13,
    );
    if let Some(asked) = smallest {
        lines.extend(in_lines(&format!("must not: {}", asked.says), 13));
    }
    lines.extend(in_lines(&drawn.says, 13));
    let picture = html! {
        path class="thick" d=(steps) {}
        path class="line" d={ "M" (px(x0)) " " (px(y0)) "v" (px(rise * 0.3)) } {}
        path class="thick" d={ "M" (px(from)) " " (px(rail(from))) "L" (px(to)) " " (px(rail(to))) } {}
        path class="dots" d={ "M" (px(x0)) " " (px(y0)) "L" (px(x1)) " " (px(y1)) } {}
        circle class="ball-passes" cx=(px(x1 - r)) cy=(px(y0 - r)) r=(px(r)) {}
        @if let Some(asked) = smallest {
            @let small = asked.length.millimetres_as_float() * scale / 2.0;
            circle class="thin" cx=(px(x1 - small)) cy=(px(y0 - small)) r=(px(small)) {}
        }
        (label(words_at, 26.0, LabelSide::Begins, &lines))
    };
    let words = 26.0 + LINE * count(lines.len());
    (picture, (y0 + rise * 0.3 + 10.0).max(words))
}

fn in_words(drawn: &HoleDrawn) -> String {
    let where_it_lies = match drawn.shape {
        HoleShape::BetweenUprights => "Between two uprights",
        HoleShape::BetweenLevels => "Between two level edges",
        HoleShape::AtStep { .. } => "Between tread, riser and the rail above",
        HoleShape::Unknown => "By what was written",
    };
    let mut text = format!(
        "{where_it_lies}: written {}; a ball of {} just passes.",
        drawn.says,
        drawn.passes.readable(drawn.unit)
    );
    for ball in &drawn.asked {
        text.push_str(&format!(" A ball must not pass of {}.", ball.says));
    }
    text
}

fn caption(drawn: &HoleDrawn) -> &'static str {
    match drawn.shape {
        HoleShape::BetweenUprights => {
            "To scale, lying on its side. Where along the railing it lies, nobody wrote."
        }
        HoleShape::BetweenLevels => "To scale. Where along the railing it lies, nobody wrote.",
        HoleShape::AtStep { .. } => {
            "To scale from rise, going and lift; a dotted line joins the noses of the steps."
        }
        HoleShape::Unknown => "The balls to scale; the edges of the hole are not drawn.",
    }
}
