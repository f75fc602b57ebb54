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
/// How far a label is moved at a time, where something is in its way: along its dimension,
/// and away from it.
const STEP: f64 = 6.0;
const ALONG: i8 = 30;
const AWAY: i8 = 14;
/// Room between a label and any line.
const CLEAR: f64 = 2.0;
/// A label that was moved farther than this is tied to its dimension by a line.
const TIED: f64 = 20.0;
/// A circle as so many straight pieces.
const PIECES: u8 = 48;

/// The answer as one SVG document that refers to nothing else: outline, largest ball,
/// the lengths as written, and a bar to scale.
///
/// # Errors
/// Those of `out`.
pub fn opening_svg(out: &mut dyn Write, answer: &OpeningAnswer<'_>) -> io::Result<()> {
    let sheet = SvgCanvas::of(answer);
    let texts = texts(answer);
    let below = sheet.high + 2.0 * ABOVE + 38.0;
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

    /// The dimensions with their labels, each moved until it lies free of lines and of
    /// the other labels; where no place is free, where it touches least.
    fn labels(&self, answer: &OpeningAnswer<'_>) -> Vec<SvgLabel> {
        let of = |dimension: &Dimension| {
            let ends = (self.at(dimension.from), self.at(dimension.to));
            let length = dimension.length.readable(answer.unit);
            SvgLabel::new(ends, &length, dimension.name)
        };
        let dimensions: Vec<SvgLabel> = answer.sketch.dimensions.iter().map(of).collect();
        let mut lines = self.lines(answer);
        lines.extend(dimensions.iter().flat_map(SvgLabel::lines));
        let mut placed: Vec<SvgLabel> = Vec::new();
        for label in dimensions {
            let along = (0..=ALONG).flat_map(|step| [step, -step]);
            let places = along.flat_map(|along| (0..=AWAY).map(move |away| (along, away)));
            let touches = |(along, away): (i8, i8)| {
                let moved = label.moved(along, away);
                let outside = usize::from(!moved.lies_within(self.high + 2.0 * ABOVE));
                let on_lines = lines.iter().filter(|line| moved.touches(**line)).count();
                let others = placed.iter().filter(|other| other.overlaps(&moved)).count();
                // off the page it is not read at all
                100 * outside + on_lines + 10 * others
            };
            let far = |(along, away): (i8, i8)| {
                let (along, away) = (i32::from(along), i32::from(away));
                along * along + away * away
            };
            let best = places.min_by_key(|place| (touches(*place), far(*place)));
            let (along, away) = best.unwrap_or((0, 0));
            placed.push(label.moved(along, away));
        }
        placed
    }

    /// Every line of the drawing itself, a circle as a many-sided figure.
    fn lines(&self, answer: &OpeningAnswer<'_>) -> Vec<SvgLine> {
        let mut lines: Vec<SvgLine> = Vec::new();
        let mut along = |corners: &[(f64, f64)]| {
            lines.extend(corners.windows(2).filter_map(|pair| match pair {
                [from, to] => Some((*from, *to)),
                _ => None,
            }));
        };
        let circle = |(x, y): (f64, f64), r: f64| -> Vec<(f64, f64)> {
            let turn = |piece: u8| f64::from(piece) * std::f64::consts::TAU / f64::from(PIECES);
            let each = (0..=PIECES).map(turn);
            each.map(|turn| (x + r * libm::cos(turn), y + r * libm::sin(turn)))
                .collect()
        };
        for part in &answer.sketch.parts {
            match part {
                SketchPart::Edge(line) => {
                    along(
                        &line
                            .iter()
                            .map(|corner| self.at(*corner))
                            .collect::<Vec<_>>(),
                    );
                }
                SketchPart::Member(outline) => {
                    let closed = outline.iter().chain(outline.first());
                    along(&closed.map(|corner| self.at(*corner)).collect::<Vec<_>>());
                }
                // its edges are parts of their own
                SketchPart::Hole(_) => {}
                SketchPart::Round(middle, diameter) => {
                    let r = diameter.millimetres_as_float() / 2.0 * self.scale;
                    along(&circle(self.at(*middle), r));
                }
            }
        }
        let middle = self.at(answer.largest.centre.unwrap_or(answer.sketch.middle));
        along(&circle(middle, answer.largest.lower_mm / 2.0 * self.scale));
        if let Some((size, _)) = answer.ball {
            let r = size.millimetres_as_float() / 2.0 * self.scale;
            along(&circle(middle, r));
        }
        lines
    }

    /// A bar of a round length, about a quarter of the drawing.
    fn bar(&self, unit: LengthUnit) -> Markup {
        let length = round_length(unit, WIDE / 3.0 / self.scale);
        let long = length.millimetres_as_float() * self.scale;
        let y = self.high + 2.0 * ABOVE + 10.0;
        html! {
            rect x="8" y=(px(y)) width=(px(long)) height="5" fill="#1a1a1a" {}
            text x=(px(8.0 + long + 6.0)) y=(px(y + 7.0)) {
                (length.exact(unit)) ", to scale"
            }
        }
    }
}

/// A straight line of the drawing.
type SvgLine = ((f64, f64), (f64, f64));

/// A dimension with its label.
#[derive(Clone)]
struct SvgLabel {
    ends: SvgLine,
    /// From what is measured to its dimension.
    normal: (f64, f64),
    /// Where the text stands, its first line.
    at: (f64, f64),
    /// How far it was moved from beside the middle of its dimension.
    moved: (f64, f64),
    anchor: &'static str,
    lines: Vec<String>,
}

impl SvgLabel {
    /// The label beside the middle of its dimension.
    fn new(ends: SvgLine, length: &str, name: &str) -> SvgLabel {
        let ((x1, y1), (x2, y2)) = ends;
        let long = libm::hypot(x2 - x1, y2 - y1).max(1e-9);
        // to the right of the way from one end to the other
        let (nx, ny) = (-(y2 - y1) / long, (x2 - x1) / long);
        let beside = OFF + 5.0;
        let x = (x1 + x2) / 2.0 + nx * beside;
        let y = (y1 + y2) / 2.0 + ny * beside;
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
            moved: (0.0, 0.0),
            anchor,
            lines,
        }
    }

    /// The same moved so many steps along its dimension and away from it.
    fn moved(&self, along: i8, away: i8) -> SvgLabel {
        let (nx, ny) = self.normal;
        let (along, away) = (f64::from(along) * STEP, f64::from(away) * STEP);
        let moved = (ny * along + nx * away, ny * away - nx * along);
        SvgLabel {
            at: (self.at.0 + moved.0, self.at.1 + moved.1),
            moved,
            ..self.clone()
        }
    }

    /// Its dimension and the two lines that lead to it.
    fn lines(&self) -> [SvgLine; 3] {
        let (from, to) = self.ends;
        let off = |at: (f64, f64), by: f64| (at.0 + self.normal.0 * by, at.1 + self.normal.1 * by);
        [
            (off(from, OFF), off(to, OFF)),
            (from, off(from, OFF + 4.0)),
            (to, off(to, OFF + 4.0)),
        ]
    }

    /// Whether a line passes through its text, or too near by it.
    fn touches(&self, ((x1, y1), (x2, y2)): SvgLine) -> bool {
        let (left, top, right, bottom) = self.bounds();
        // the part of the line that lies between the four sides (Liang and Barsky)
        let (mut first, mut last) = (0.0_f64, 1.0_f64);
        for (step, room) in [
            (x1 - x2, x1 - (left - CLEAR)),
            (x2 - x1, right + CLEAR - x1),
            (y1 - y2, y1 - (top - CLEAR)),
            (y2 - y1, bottom + CLEAR - y1),
        ] {
            if step.abs() < 1e-9 {
                if room < 0.0 {
                    return false;
                }
            } else if step < 0.0 {
                first = first.max(room / step);
            } else {
                last = last.min(room / step);
            }
        }
        first <= last
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
    /// its text; where that stands apart, a line that ties it to the others.
    fn drawn(&self) -> Markup {
        let [dimension, from, to] = self.lines();
        let (x, y) = self.at;
        html! {
            line x1=(px(dimension.0.0)) y1=(px(dimension.0.1)) x2=(px(dimension.1.0))
                y2=(px(dimension.1.1)) stroke="#555555" {}
            @for ((x1, y1), (x2, y2)) in [from, to] {
                line class="lead" x1=(px(x1)) y1=(px(y1)) x2=(px(x2)) y2=(px(y2))
                    stroke="#555555" stroke-width="0.8" {}
            }
            @if let Some(((x1, y1), (x2, y2))) = self.tie() {
                line class="tie" x1=(px(x1)) y1=(px(y1)) x2=(px(x2)) y2=(px(y2))
                    stroke="#555555" stroke-width="0.8" stroke-dasharray="2 2" {}
            }
            @for (number, line) in (0_u8..).zip(&self.lines) {
                text class="label" x=(px(x)) y=(px(y + LINE * f64::from(number)))
                    text-anchor=(self.anchor) fill="#333333" stroke="#ffffff" stroke-width="3"
                    stroke-opacity="0.8" paint-order="stroke" { (line) }
            }
        }
    }

    /// From the middle of the dimension to the nearest place of a text that stands apart.
    fn tie(&self) -> Option<SvgLine> {
        if libm::hypot(self.moved.0, self.moved.1) <= TIED {
            return None;
        }
        let [(from, to), ..] = self.lines();
        let middle = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
        let (left, top, right, bottom) = self.bounds();
        let near = (
            middle.0.clamp(left - CLEAR, right + CLEAR),
            middle.1.clamp(top, bottom),
        );
        Some((middle, near))
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
