//! Balusters of one bay as a drawing, to scale.

use std::io;
use std::io::Write;

use maud::Markup;
use maud::html;

use crate::geometry::BayLayout;
use crate::quantities::Length;
use crate::report::LayoutAnswer;
use crate::report::opening_svg::px;

/// The drawing's width in its own units (CSS pixels), and room round the bay.
pub(super) const LAYOUT_WIDE: f64 = 900.0;
const SIDE: f64 = 30.0;
/// From the rail's top to its foot in the drawing: the height is not known.
const HIGH: f64 = 170.0;
const TOP: f64 = 60.0;
/// From one line of text to the next.
const LINE: f64 = 20.0;
/// The least room for a label.
const LABEL: f64 = 58.0;

/// The bay from the side: posts, balusters, the mark of each, the widest gap. Its
/// width is to scale, with a bar that shows it; its height is not known and drawn
/// torn. A raked bay is drawn along its rail.
///
/// # Errors
/// Those of `out`.
pub fn layout_svg(out: &mut dyn Write, answer: &LayoutAnswer) -> io::Result<()> {
    let (high, bays) = layout_drawing(answer);
    let tall = high + 24.0;
    let drawn = html! {
        svg xmlns="http://www.w3.org/2000/svg" width=(px(LAYOUT_WIDE)) height=(px(tall))
            viewBox={ "0 0 " (px(LAYOUT_WIDE)) " " (px(tall)) } role="img" font-family="sans-serif"
            font-size="13" fill="#1a1a1a" {
            title { "Balusters of one bay, from the side, width to scale" }
            rect width="100%" height="100%" fill="#ffffff" {}
            (bays)
            text x=(px(SIDE)) y=(px(high + 12.0)) font-size="11" {
                "Measure each bay anew before you cut. The local authority and licensed professionals decide."
            }
        }
    };
    writeln!(out, "{}", drawn.into_string())
}

/// The bays of an answer, one below the other, and how high they are together.
pub(super) fn layout_drawing(answer: &LayoutAnswer) -> (f64, Markup) {
    let mut bays: Vec<(Length, &BayLayout, BetweenWhat)> = Vec::new();
    if let Some(layout) = &answer.layout {
        bays.push((answer.plan.clear, layout, BetweenWhat::Posts));
    }
    let between = answer.between.iter();
    bays.extend(between.map(|one| (one.gap, &one.layout, BetweenWhat::Balusters)));
    let each = TOP + HIGH + 120.0;
    let notes = notes(answer, &bays);
    let under = LINE * f64::from(u16::try_from(notes.len()).unwrap_or(u16::MAX));
    let high = each * f64::from(u16::try_from(bays.len()).unwrap_or(u16::MAX)) + 24.0 + under;
    let drawn = html! {
        @for (index, (clear, layout, between)) in (0_u16..).zip(&bays) {
            g transform={ "translate(0 " (px(each * f64::from(index))) ")" } {
                (bay(answer, (*clear, *between), layout))
            }
        }
        @for (index, note) in (0_u16..).zip(&notes) {
            text x=(px(SIDE)) y=(px(high - under + LINE * f64::from(index))) { (note) }
        }
    };
    (high, drawn)
}

/// What is to be known of the marks: from where, for which limit, and what is kept free.
fn notes(answer: &LayoutAnswer, bays: &[(Length, &BayLayout, BetweenWhat)]) -> Vec<String> {
    let level = if answer.degrees.is_some() {
        " Gaps and block are measured level."
    } else {
        ""
    };
    vec![
        format!(
            "Marks: near face of each baluster from {}, each for itself and never adding up. The height is not \
             drawn to scale.",
            from(answer, bays)
        ),
        format!(
            "{}; a gap may come out {} off and wood dry narrower by {}.{level}",
            answer.limit_says(),
            answer.plan.tolerance.exact(answer.unit),
            answer.plan.shrinkage.readable_up(answer.unit)
        ),
    ]
}

/// What stands at both ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum BetweenWhat {
    Posts,
    /// Balusters that are there, between which others are put.
    Balusters,
}

fn from(answer: &LayoutAnswer, bays: &[(Length, &BayLayout, BetweenWhat)]) -> &'static str {
    let posts = bays
        .iter()
        .any(|(_, _, between)| *between == BetweenWhat::Posts);
    match (answer.degrees.is_some(), posts) {
        (true, _) => "the upper post, along the rail",
        (false, true) => "the left post",
        (false, false) => "the left one of those that stand",
    }
}

fn bay(
    answer: &LayoutAnswer,
    (clear, between): (Length, BetweenWhat),
    layout: &BayLayout,
) -> Markup {
    let scale = (LAYOUT_WIDE - 2.0 * SIDE) / clear.nanometres_as_float();
    let at = |length: Length| SIDE + length.nanometres_as_float() * scale;
    let foot = TOP + HIGH;
    let slope = answer
        .degrees
        .map_or(1.0, |degrees| libm::cos(degrees.to_radians()));
    let bar = answer.plan.baluster.nanometres_as_float() * scale / slope;
    // labels stand in two rows, so that neighbours do not touch
    let mut free_from = [f64::NEG_INFINITY; 2];
    let labels: Vec<(f64, f64, String)> = (1..)
        .zip(&layout.marks)
        .filter_map(|(number, mark): (usize, _)| {
            let x = at(*mark);
            let last = number == layout.marks.len();
            let row = number % 2;
            if x - free_from[row] < LABEL && !last {
                return None;
            }
            free_from[row] = x;
            Some((x, row_of(number), mark.exact(answer.unit)))
        })
        .collect();
    // the last one has its label: one that would touch it gives way
    let crowded = |index: usize| {
        labels.last().is_some_and(|(last, row, _)| {
            index + 1 < labels.len()
                && (labels[index].1 - *row).abs() < 0.5
                && last - labels[index].0 < LABEL
        })
    };
    let narrow = clear < Length::inches(16);
    let (rule, bar_says) = match (answer.unit.is_imperial(), narrow) {
        (true, false) => (Length::inches(12), "12 in"),
        (true, true) => (Length::inches(1), "1 in"),
        (false, false) => (Length::millimetres(100), "100 mm"),
        (false, true) => (Length::millimetres(20), "20 mm"),
    };
    let (bars, what) = match (layout.marks.len(), between) {
        (1, BetweenWhat::Posts) => ("1 baluster".to_owned(), "bay"),
        (count, BetweenWhat::Posts) => (format!("{count} balusters"), "bay"),
        (1, BetweenWhat::Balusters) => ("1 baluster more".to_owned(), "in a gap of"),
        (count, BetweenWhat::Balusters) => (format!("{count} balusters more"), "in a gap of"),
    };
    // the block lies in the gap before the second baluster, or before the only one
    let block = layout.spacer.nanometres_as_float() * scale / slope;
    let first = layout.marks.first().map_or(SIDE, |mark| at(*mark));
    let block_at = if layout.marks.len() > 1 {
        first + bar
    } else {
        first - block
    };
    let long = rule.nanometres_as_float() * scale;
    html! {
        text x=(px(SIDE)) y="24" font-size="15" font-weight="bold" {
            (bars) " of " (answer.plan.baluster.exact(answer.unit))
            ", " (what) " " (clear.exact(answer.unit)) ", widest gap "
            (layout.largest_gap.readable_up(answer.unit)) ", block to hold them "
            (layout.spacer.exact(answer.unit))
        }
        @let ends = match between {
            BetweenWhat::Posts => "#b9ab93",
            BetweenWhat::Balusters => "#d8c9b0",
        };
        @for x in [SIDE - 14.0, LAYOUT_WIDE - SIDE] {
            rect x=(px(x)) y=(px(TOP - 14.0)) width="14" height=(px(HIGH + 28.0)) fill=(ends)
                stroke="#1a1a1a" {}
        }
        @if answer.degrees.is_some() {
            text x=(px(SIDE - 14.0)) y=(px(TOP - 20.0)) font-size="12" { "upper post" }
            text x=(px(LAYOUT_WIDE - SIDE + 14.0)) y=(px(TOP - 20.0)) font-size="12" text-anchor="end" {
                "lower post"
            }
        }
        @for y in [TOP, foot - 8.0] {
            rect x=(px(SIDE)) y=(px(y)) width=(px(LAYOUT_WIDE - 2.0 * SIDE)) height="8" fill="#d8c9b0"
                stroke="#1a1a1a" {}
        }
        @for mark in &layout.marks {
            rect x=(px(at(*mark))) y=(px(TOP + 8.0)) width=(px(bar)) height=(px(HIGH - 16.0))
                fill="#d8c9b0" stroke="#1a1a1a" {}
            line x1=(px(at(*mark))) y1=(px(foot + 4.0)) x2=(px(at(*mark))) y2=(px(foot + 18.0))
                stroke="#1a1a1a" {}
        }
        rect x=(px(block_at)) y=(px(TOP + HIGH / 2.0 - 12.0)) width=(px(block)) height="24" fill="#ffffff"
            stroke="#1a1a1a" stroke-dasharray="4 2" {}
        line x1=(px(block_at + block / 2.0)) y1=(px(TOP - 12.0)) x2=(px(block_at + block / 2.0))
            y2=(px(TOP + HIGH / 2.0 - 12.0)) stroke="#1a1a1a" {}
        text x=(px(block_at + block / 2.0)) y=(px(TOP - 18.0)) font-size="12" {
            "block " (layout.spacer.exact(answer.unit))
        }
        line x1=(px(SIDE)) y1=(px(foot + 58.0)) x2=(px(LAYOUT_WIDE - SIDE)) y2=(px(foot + 58.0))
            stroke="#555555" {}
        @for x in [SIDE, LAYOUT_WIDE - SIDE] {
            line x1=(px(x - 4.0)) y1=(px(foot + 62.0)) x2=(px(x + 4.0)) y2=(px(foot + 54.0)) stroke="#1a1a1a" {}
        }
        text x=(px(LAYOUT_WIDE - SIDE)) y=(px(foot + 74.0)) text-anchor="end" font-size="12" {
            "clear " (clear.exact(answer.unit))
        }
        line x1=(px(SIDE)) y1=(px(foot + 18.0)) x2=(px(LAYOUT_WIDE - SIDE)) y2=(px(foot + 18.0))
            stroke="#555555" {}
        @for x in [SIDE, LAYOUT_WIDE - SIDE] {
            line x1=(px(x)) y1=(px(foot + 12.0)) x2=(px(x)) y2=(px(foot + 24.0)) stroke="#1a1a1a" {}
        }
        @for (index, (x, row, text)) in labels.iter().enumerate() {
            @if !crowded(index) {
                text x=(px(*x)) y=(px(foot + 36.0 + row)) text-anchor="middle" font-size="12" { (text) }
            }
        }
        rect x=(px(SIDE)) y=(px(foot + 74.0)) width=(px(long)) height="6" {}
        text x=(px(SIDE + long + 8.0)) y=(px(foot + 82.0)) { "= " (bar_says) " of the bay, at any size of print: to scale" }
    }
}

/// How far below the first row a mark's label stands.
fn row_of(number: usize) -> f64 {
    if number.is_multiple_of(2) { 16.0 } else { 0.0 }
}
