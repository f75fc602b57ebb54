//! The largest ball through one shape as a drawing, to scale.

use std::io;
use std::io::Write;

use maud::Markup;
use maud::html;

use crate::geometry::Corner;
use crate::geometry::Dimension;
use crate::geometry::SketchPart;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::report::OpeningAnswer;
use crate::report::cautions::DEFERRAL;
use crate::report::escape::one_line;
use crate::report::opening::largest_in_words;
use crate::report::words::shortened;

/// The drawing's room, in its own units (CSS pixels).
const WIDE: f64 = 560.0;
const HIGH: f64 = 420.0;
/// Room round it for the dimensions.
const MARGIN: f64 = 110.0;
/// A line of text.
const LINE: f64 = 19.0;
/// Characters of a line.
const LETTERS: usize = 88;
/// How wide a letter of a diameter is, about.
const LETTER: f64 = 8.0;
/// How far a dimension stands off what it measures.
const OFF: f64 = 16.0;

/// The answer as one SVG document that refers to nothing else: outline, largest ball,
/// the lengths as written, and a bar to scale.
///
/// # Errors
/// Those of `out`.
pub fn opening_svg(out: &mut dyn Write, answer: &OpeningAnswer<'_>) -> io::Result<()> {
    let sheet = SvgCanvas::of(answer);
    let texts = texts(answer);
    let lines = (0_u8..).zip(&texts).map(|(number, text)| {
        let y = sheet.high + 2.0 * MARGIN + 46.0 + LINE * f64::from(number);
        let weight = if number == 0 { "bold" } else { "normal" };
        html! { text x="20" y=(px(y)) font-size="14" font-weight=(weight) { (text) } }
    });
    let count = f64::from(u8::try_from(texts.len()).unwrap_or(u8::MAX));
    let (wide, high) = (
        WIDE + 2.0 * MARGIN,
        sheet.high + 2.0 * MARGIN + 46.0 + LINE * count,
    );
    let drawn = html! {
        svg xmlns="http://www.w3.org/2000/svg" width=(px(wide)) height=(px(high))
            viewBox={ "0 0 " (px(wide)) " " (px(high)) } role="img"
            font-family="sans-serif" fill="#1a1a1a" {
            title { (shortened(&one_line(answer.written))) }
            rect width="100%" height="100%" fill="#ffffff" {}
            @for part in &answer.sketch.parts { (sheet.part(part)) }
            (sheet.ball(answer))
            @for dimension in &answer.sketch.dimensions {
                (sheet.dimension(dimension, answer.unit))
            }
            (sheet.bar(answer.unit))
            @for line in lines { (line) }
        }
    };
    writeln!(out, "{}", drawn.into_string())
}

/// What stands below the drawing.
fn texts(answer: &OpeningAnswer<'_>) -> Vec<String> {
    let largest = largest_in_words(&answer.largest, answer.unit);
    let mut all = vec![shortened(&one_line(answer.written)), largest];
    all.extend(answer.notes.iter().cloned());
    all.push(
        "The shape was taken as exact. A ball in the hand settles it without arithmetic."
            .to_owned(),
    );
    all.push(DEFERRAL.to_owned());
    let wrap = |text: &String| {
        let lines = textwrap::wrap(text, LETTERS);
        lines.into_iter().map(String::from).collect::<Vec<_>>()
    };
    all.iter().flat_map(wrap).collect()
}

/// From millimetres to the drawing.
struct SvgCanvas {
    scale: f64,
    left: f64,
    top: f64,
    high: f64,
}

impl SvgCanvas {
    fn of(answer: &OpeningAnswer<'_>) -> SvgCanvas {
        let mut corners: Vec<Corner> = Vec::new();
        for part in &answer.sketch.parts {
            match part {
                SketchPart::Edge(line) | SketchPart::Hole(line) | SketchPart::Member(line) => {
                    corners.extend(line)
                }
                SketchPart::Round(middle, diameter) => corners.extend(around(*middle, *diameter)),
            }
        }
        let bounds = |v: fn(&Corner) -> f64| {
            corners
                .iter()
                .map(v)
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| {
                    (low.min(v), high.max(v))
                })
        };
        let ((left, right), (low, high)) = (bounds(|c| c.x_mm), bounds(|c| c.y_mm));
        let scale = (WIDE / (right - left)).min(HIGH / (high - low));
        let wide = (right - left) * scale;
        SvgCanvas {
            scale,
            left: left - (WIDE - wide) / 2.0 / scale,
            top: high,
            high: (high - low) * scale,
        }
    }

    fn at(&self, corner: Corner) -> (f64, f64) {
        (
            MARGIN + (corner.x_mm - self.left) * self.scale,
            MARGIN + (self.top - corner.y_mm) * self.scale,
        )
    }

    fn points(&self, corners: &[Corner]) -> String {
        let point = |corner: &Corner| {
            let (x, y) = self.at(*corner);
            format!("{},{}", px(x), px(y))
        };
        corners.iter().map(point).collect::<Vec<_>>().join(" ")
    }

    fn part(&self, part: &SketchPart) -> Markup {
        match part {
            SketchPart::Edge(line) => html! {
                polyline points=(self.points(line)) fill="none" stroke="#1a1a1a"
                    stroke-width="2.5" stroke-linejoin="round" stroke-linecap="round" {}
            },
            SketchPart::Hole(outline) => {
                html! { polygon points=(self.points(outline)) fill="#eef3f8" {} }
            }
            SketchPart::Member(outline) => html! {
                polygon points=(self.points(outline)) fill="#d8c9b0" stroke="#1a1a1a"
                    stroke-width="1.5" stroke-linejoin="round" {}
            },
            SketchPart::Round(middle, diameter) => {
                let (x, y) = self.at(*middle);
                html! {
                    circle cx=(px(x)) cy=(px(y)) r=(px(millimetres(*diameter) / 2.0 * self.scale))
                        fill="#eef3f8" stroke="#1a1a1a" stroke-width="2.5" {}
                }
            }
        }
    }

    /// The circle of the lower bound, with its diameter: in it, or beside it where it
    /// is too small, on the side where no dimension stands.
    fn ball(&self, answer: &OpeningAnswer<'_>) -> Markup {
        let diameter_mm = answer.largest.lower_mm;
        let (x, y) = self.at(answer.largest.centre.unwrap_or(answer.sketch.middle));
        let r = diameter_mm / 2.0 * self.scale;
        let size = Length::from_nanometres_rounded(diameter_mm * 1e6).readable(answer.unit);
        let to_the_left = |dimension: &Dimension| {
            let ((x1, y1), (x2, y2)) = (self.at(dimension.from), self.at(dimension.to));
            (y2 - y1).abs() > (x2 - x1).abs() && x1.max(x2) < x
        };
        let letters = f64::from(u8::try_from(size.chars().count()).unwrap_or(u8::MAX));
        // above a hole that is no higher than the letters
        let beside = if r < 8.0 { y - r - 8.0 } else { y + 5.0 };
        let (tx, ty, anchor) = if letters * LETTER < 2.0 * r {
            (x, y - 5.0, "middle")
        } else if answer.sketch.dimensions.iter().any(to_the_left) {
            (x + r + 6.0, beside, "start")
        } else {
            (x - r - 6.0, beside, "end")
        };
        html! {
            circle cx=(px(x)) cy=(px(y)) r=(px(r)) fill="#c8443a" fill-opacity="0.16"
                stroke="#a8322a" stroke-width="1.5" {}
            line x1=(px(x - r)) y1=(px(y)) x2=(px(x + r)) y2=(px(y)) stroke="#a8322a"
                stroke-dasharray="5 3" {}
            text x=(px(tx)) y=(px(ty)) font-size="14" text-anchor=(anchor) fill="#7d1f19"
                stroke="#ffffff" stroke-width="3" stroke-opacity="0.8" paint-order="stroke" {
                (size)
            }
        }
    }

    /// A line beside what it measures, with an end mark each and its length.
    fn dimension(&self, dimension: &Dimension, unit: LengthUnit) -> Markup {
        let ((x1, y1), (x2, y2)) = (self.at(dimension.from), self.at(dimension.to));
        let long = ((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1))
            .sqrt()
            .max(1e-9);
        // to the right of the way from one end to the other
        let (nx, ny) = (-(y2 - y1) / long, (x2 - x1) / long);
        let off = |x: f64, y: f64, by: f64| (x + nx * by, y + ny * by);
        let ((ax, ay), (bx, by)) = (off(x1, y1, OFF), off(x2, y2, OFF));
        let marks = [(x1, y1), (x2, y2)].map(|(x, y)| (off(x, y, OFF - 5.0), off(x, y, OFF + 5.0)));
        let (tx, ty) = off((x1 + x2) / 2.0, (y1 + y2) / 2.0, OFF + 6.0);
        let anchor = if nx > 0.5 {
            "start"
        } else if nx < -0.5 {
            "end"
        } else {
            "middle"
        };
        let ty = if ny > 0.5 { ty + 11.0 } else { ty + 4.0 };
        let name = match dimension.name {
            "" => String::new(),
            name => format!(" {name}"),
        };
        html! {
            line x1=(px(ax)) y1=(px(ay)) x2=(px(bx)) y2=(px(by)) stroke="#555555" {}
            @for ((x1, y1), (x2, y2)) in marks {
                line x1=(px(x1)) y1=(px(y1)) x2=(px(x2)) y2=(px(y2)) stroke="#555555" {}
            }
            text x=(px(tx)) y=(px(ty)) font-size="13" text-anchor=(anchor) fill="#333333"
                stroke="#ffffff" stroke-width="3" stroke-opacity="0.8" paint-order="stroke" {
                (dimension.length.readable(unit)) (name)
            }
        }
    }

    /// A bar of a round length, about a quarter of the drawing.
    fn bar(&self, unit: LengthUnit) -> Markup {
        let length = round_length(unit, WIDE / 4.0 / self.scale);
        let long = millimetres(length) * self.scale;
        let y = self.high + 2.0 * MARGIN + 8.0;
        html! {
            rect x="20" y=(px(y)) width=(px(long)) height="6" fill="#1a1a1a" {}
            text x=(px(20.0 + long + 8.0)) y=(px(y + 8.0)) font-size="13" {
                (length.exact(unit)) ", to scale"
            }
        }
    }
}

/// The largest round length below so many millimetres.
fn round_length(unit: LengthUnit, below_mm: f64) -> Length {
    let steps: Vec<Length> = if unit.is_imperial() {
        let marks = [1, 4, 16, 32, 64, 128, 192, 384, 768, 2304, 7680];
        marks.map(Length::sixty_fourths).to_vec()
    } else {
        let sizes = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 5000];
        sizes.map(Length::millimetres).to_vec()
    };
    let fits = |length: &&Length| millimetres(**length) <= below_mm;
    let last = steps.iter().rfind(fits).or(steps.first());
    last.copied().unwrap_or(unit.one())
}

fn around(middle: Corner, diameter: Length) -> [Corner; 2] {
    let half = millimetres(diameter) / 2.0;
    [-half, half].map(|by| Corner {
        x_mm: middle.x_mm + by,
        y_mm: middle.y_mm + by,
    })
}

fn millimetres(length: Length) -> f64 {
    length.nanometres_as_float() / 1e6
}

/// Hundredths are as fine as a drawing needs.
fn px(size: f64) -> String {
    format!("{}", (size * 100.0).round() / 100.0 + 0.0)
}
