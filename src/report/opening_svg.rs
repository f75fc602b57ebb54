//! The largest ball through one shape as a drawing, to scale.

use std::io;
use std::io::Write;

use maud::Markup;
use maud::html;

use crate::geometry::Corner;
use crate::geometry::SketchPart;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::report::OpeningAnswer;
use crate::report::cautions::DEFERRAL;
use crate::report::escape::one_line;
use crate::report::opening::largest_in_words;
use crate::report::words::shortened;

/// The whole drawing fits the narrowest phone, in CSS pixels.
const ACROSS: f64 = 320.0;
/// Room on each side for the dimensions.
const MARGIN: f64 = 86.0;
/// The room of the opening itself.
const WIDE: f64 = ACROSS - 2.0 * MARGIN;
const HIGH: f64 = 240.0;
/// Room above and below it.
const ABOVE: f64 = 40.0;
/// The size of all letters.
const SIZE: f64 = 12.0;
/// A line of text.
const LINE: f64 = 15.0;
/// Characters of a line.
const LETTERS: usize = 46;
/// How wide a letter is, about.
const LETTER: f64 = 6.6;
/// How far a dimension stands off what it measures.
const OFF: f64 = 14.0;
/// How far a label is moved along its dimension at a time, where another is in its way.
const STEP: f64 = 9.0;
const STEPS: i8 = 24;

/// The answer as one SVG document that refers to nothing else: outline, largest ball,
/// the lengths as written, and a bar to scale.
///
/// # Errors
/// Those of `out`.
pub fn opening_svg(out: &mut dyn Write, answer: &OpeningAnswer<'_>) -> io::Result<()> {
    let sheet = SvgCanvas::of(answer);
    let texts = texts(answer);
    let below = sheet.high + 2.0 * ABOVE + 30.0;
    let lines = (0_u8..).zip(&texts).map(|(number, text)| {
        let y = below + LINE * f64::from(number);
        let weight = if number == 0 { "bold" } else { "normal" };
        html! { text x="8" y=(px(y)) font-weight=(weight) { (text) } }
    });
    let count = f64::from(u8::try_from(texts.len()).unwrap_or(u8::MAX));
    let high = below + LINE * count;
    let labels = sheet.labels(answer);
    let drawn = html! {
        svg xmlns="http://www.w3.org/2000/svg" width=(px(ACROSS)) height=(px(high))
            viewBox={ "0 0 " (px(ACROSS)) " " (px(high)) } role="img"
            font-family="sans-serif" font-size=(px(SIZE)) fill="#1a1a1a" {
            title { (shortened(&one_line(answer.written))) }
            rect width="100%" height="100%" fill="#ffffff" {}
            @for part in &answer.sketch.parts { (sheet.part(part)) }
            (sheet.balls(answer))
            @for label in &labels { (label.drawn()) }
            (sheet.bar(answer.unit))
            @for line in lines { (line) }
        }
    };
    writeln!(out, "{}", drawn.into_string())
}

/// What stands below the drawing.
fn texts(answer: &OpeningAnswer<'_>) -> Vec<String> {
    let largest = largest_in_words(&answer.largest, answer.unit);
    let mut all = vec![
        shortened(&one_line(answer.written)),
        format!("Red: {largest}"),
    ];
    if let Some((size, unit)) = answer.ball {
        let size = size.readable(unit);
        all.push(format!("Blue, dashed: the ball asked about, {size}."));
    }
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
        if let Some((size, _)) = answer.ball {
            let centre = answer.largest.centre.unwrap_or(answer.sketch.middle);
            corners.extend(around(centre, size));
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
            ABOVE + (self.top - corner.y_mm) * self.scale,
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
                    circle cx=(px(x)) cy=(px(y)) r=(px(diameter.millimetres_as_float() / 2.0 * self.scale))
                        fill="#eef3f8" stroke="#1a1a1a" stroke-width="2.5" {}
                }
            }
        }
    }

    /// The circle of the lower bound, and that of the ball that was asked about, with one
    /// centre; what they are stands below the drawing.
    fn balls(&self, answer: &OpeningAnswer<'_>) -> Markup {
        let (x, y) = self.at(answer.largest.centre.unwrap_or(answer.sketch.middle));
        let r = answer.largest.lower_mm / 2.0 * self.scale;
        let asked = answer
            .ball
            .map(|(size, _)| size.millimetres_as_float() / 2.0 * self.scale);
        html! {
            circle class="largest" cx=(px(x)) cy=(px(y)) r=(px(r)) fill="#c8443a"
                fill-opacity="0.16" stroke="#a8322a" stroke-width="1.5" {}
            @if let Some(r) = asked {
                circle class="asked" cx=(px(x)) cy=(px(y)) r=(px(r)) fill="none"
                    stroke="#1d4f91" stroke-width="2" stroke-dasharray="5 3" {}
            }
        }
    }

    /// The dimensions with their labels, each moved along until it lies free.
    fn labels(&self, answer: &OpeningAnswer<'_>) -> Vec<SvgLabel> {
        let mut placed: Vec<SvgLabel> = Vec::new();
        for dimension in &answer.sketch.dimensions {
            let ends = (self.at(dimension.from), self.at(dimension.to));
            let length = dimension.length.readable(answer.unit);
            let tries = (0..=STEPS).flat_map(|step| [step, -step]);
            let each = tries
                .map(|step| SvgLabel::new(ends, &length, dimension.name, f64::from(step) * STEP));
            let free = |label: &SvgLabel| {
                label.lies_within(self.high + 2.0 * ABOVE)
                    && placed.iter().all(|other| !other.overlaps(label))
            };
            let mut each = each.peekable();
            let first = each.peek().cloned();
            placed.extend(each.find(free).or(first));
        }
        placed
    }

    /// A bar of a round length, about a quarter of the drawing.
    fn bar(&self, unit: LengthUnit) -> Markup {
        let length = round_length(unit, WIDE / 3.0 / self.scale);
        let long = length.millimetres_as_float() * self.scale;
        let y = self.high + 2.0 * ABOVE + 2.0;
        html! {
            rect x="8" y=(px(y)) width=(px(long)) height="5" fill="#1a1a1a" {}
            text x=(px(8.0 + long + 6.0)) y=(px(y + 7.0)) {
                (length.exact(unit)) ", to scale"
            }
        }
    }
}

/// A dimension with its label.
#[derive(Clone)]
struct SvgLabel {
    ends: ((f64, f64), (f64, f64)),
    /// From what is measured to its dimension.
    normal: (f64, f64),
    /// Where the text stands, its first line.
    at: (f64, f64),
    anchor: &'static str,
    lines: Vec<String>,
}

impl SvgLabel {
    /// The label beside the middle of its dimension, moved along it by so much.
    fn new(ends: ((f64, f64), (f64, f64)), length: &str, name: &str, moved: f64) -> SvgLabel {
        let ((x1, y1), (x2, y2)) = ends;
        let long = ((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1))
            .sqrt()
            .max(1e-9);
        // to the right of the way from one end to the other
        let (nx, ny) = (-(y2 - y1) / long, (x2 - x1) / long);
        let (along_x, along_y) = ((x2 - x1) / long, (y2 - y1) / long);
        let beside = OFF + 5.0;
        let x = (x1 + x2) / 2.0 + nx * beside + along_x * moved;
        let y = (y1 + y2) / 2.0 + ny * beside + along_y * moved;
        let mut lines = vec![length.to_owned()];
        if !name.is_empty() {
            lines.push(name.to_owned());
        }
        let high = LINE * f64::from(u8::try_from(lines.len()).unwrap_or(1));
        let (anchor, first) = if nx > 0.5 {
            ("start", y + SIZE / 2.0 - (high - LINE) / 2.0)
        } else if nx < -0.5 {
            ("end", y + SIZE / 2.0 - (high - LINE) / 2.0)
        } else if ny > 0.0 {
            ("middle", y + SIZE)
        } else {
            ("middle", y - (high - LINE))
        };
        SvgLabel {
            ends,
            normal: (nx, ny),
            at: (x, first),
            anchor,
            lines,
        }
    }

    /// Left, top, right, bottom of its text.
    fn bounds(&self) -> (f64, f64, f64, f64) {
        let letters = self.lines.iter().map(|line| line.chars().count()).max();
        let letters = u8::try_from(letters.unwrap_or(0)).unwrap_or(u8::MAX);
        let wide = LETTER * f64::from(letters);
        let (x, y) = self.at;
        let left = match self.anchor {
            "start" => x,
            "end" => x - wide,
            _ => x - wide / 2.0,
        };
        let high = LINE * f64::from(u8::try_from(self.lines.len()).unwrap_or(1));
        (left, y - SIZE, left + wide, y - SIZE + high)
    }

    fn overlaps(&self, other: &SvgLabel) -> bool {
        let (a, b) = (self.bounds(), other.bounds());
        a.0 < b.2 && b.0 < a.2 && a.1 < b.3 && b.1 < a.3
    }

    fn lies_within(&self, high: f64) -> bool {
        let (left, top, right, bottom) = self.bounds();
        left >= 0.0 && right <= ACROSS && top >= 0.0 && bottom <= high
    }

    /// A line beside what it measures, two that lead to it from the measured places, and
    /// its text.
    fn drawn(&self) -> Markup {
        let ((x1, y1), (x2, y2)) = self.ends;
        let (nx, ny) = self.normal;
        let off = |x: f64, y: f64, by: f64| (x + nx * by, y + ny * by);
        let ((ax, ay), (bx, by)) = (off(x1, y1, OFF), off(x2, y2, OFF));
        let leads = [(x1, y1), (x2, y2)].map(|(x, y)| ((x, y), off(x, y, OFF + 4.0)));
        let (x, y) = self.at;
        html! {
            line x1=(px(ax)) y1=(px(ay)) x2=(px(bx)) y2=(px(by)) stroke="#555555" {}
            @for ((x1, y1), (x2, y2)) in leads {
                line class="lead" x1=(px(x1)) y1=(px(y1)) x2=(px(x2)) y2=(px(y2))
                    stroke="#555555" stroke-width="0.8" {}
            }
            @for (number, line) in (0_u8..).zip(&self.lines) {
                text class="label" x=(px(x)) y=(px(y + LINE * f64::from(number)))
                    text-anchor=(self.anchor) fill="#333333" stroke="#ffffff" stroke-width="3"
                    stroke-opacity="0.8" paint-order="stroke" { (line) }
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
    let fits = |length: &&Length| length.millimetres_as_float() <= below_mm;
    let last = steps.iter().rfind(fits).or(steps.first());
    last.copied().unwrap_or(unit.one())
}

fn around(middle: Corner, diameter: Length) -> [Corner; 2] {
    let half = diameter.millimetres_as_float() / 2.0;
    [-half, half].map(|by| Corner {
        x_mm: middle.x_mm + by,
        y_mm: middle.y_mm + by,
    })
}

/// Hundredths are as fine as a drawing needs.
pub(super) fn px(size: f64) -> String {
    format!("{}", (size * 100.0).round() / 100.0 + 0.0)
}
