//! One piece of the guard from the front, torn off at both ends, and the guard from
//! its end: one floor, one scale in both directions.

use maud::Markup;
use maud::html;

use crate::items::InfillWord;
use crate::quantities::Length;
use crate::report::guard_drawing::facts::GuardDrawn;
use crate::report::guard_drawing::facts::SizeDrawn;
use crate::report::guard_drawing::pen::LINE;
use crate::report::guard_drawing::pen::LabelSide;
use crate::report::guard_drawing::pen::LabelWanted;
use crate::report::guard_drawing::pen::WIDE;
use crate::report::guard_drawing::pen::apart;
use crate::report::guard_drawing::pen::count;
use crate::report::guard_drawing::pen::in_lines;
use crate::report::guard_drawing::pen::label;
use crate::report::guard_drawing::pen::px;
use crate::report::guard_drawing::pen::scale_bar;
use crate::report::guard_drawing::pen::upright_dimension;
use crate::report::reader;

/// The piece lies between these, its dimensions stand behind it.
const PIECE: (f64, f64) = (8.0, 128.0);
const DIMENSION: f64 = 146.0;
const GUTTER: f64 = 158.0;
/// Letters of a line in the gutter, and beside the end view.
const IN_GUTTER: usize = 10;
const BESIDE: usize = 6;
/// The guard from its end.
const END: f64 = 318.0;
const THICK: f64 = 8.0;
/// How high the drawn part is.
const HIGH: f64 = 190.0;
/// More footholds than these are told in words alone.
const FOOTHOLDS: usize = 2;

/// The drawing with its words; nothing where there is no guard to draw.
pub(in crate::report) fn front(drawn: &GuardDrawn, id: &str) -> Option<Markup> {
    let tallest = drawn
        .tops
        .iter()
        .chain(&drawn.asked)
        .map(|size| size.length);
    let tallest = tallest
        .chain(drawn.footholds.iter().map(|foothold| foothold.height))
        .chain(drawn.bottom_gaps.iter().map(|size| size.length))
        .max()
        .map(Length::millimetres_as_float)
        .filter(|tallest| *tallest > 0.0 && !drawn.open_edge)?;
    let heads = count(drawn.asked.len());
    let top = 34.0 + 20.0 * heads;
    let view = FrontView {
        drawn,
        scale: HIGH / tallest,
        floor: top + HIGH,
    };
    let high = view.floor + 96.0;
    let (title, words) = (format!("{id}-title"), format!("{id}-words"));
    Some(html! {
        figure class="fig" {
            svg class="draw" viewBox={ "0 0 " (px(WIDE)) " " (px(high)) } role="img"
                aria-labelledby={ (title) " " (words) } {
                title id=(title) { "One piece of " (drawn.name) ", from the front and from its end" }
                desc id=(words) { (in_words(drawn)) }
                text x="2" y="15" { "from the front: one piece" }
                text x=(px(WIDE - 2.0)) y="15" class="right" { "from its end" }
                (view.asked())
                (view.piece())
                (view.gutter(top))
                (view.end(top))
                (view.drop())
                (scale_bar(8.0, view.floor + 80.0, drawn.unit, view.scale))
            }
            figcaption { (caption(drawn)) }
        }
    })
}

struct FrontView<'d> {
    drawn: &'d GuardDrawn,
    scale: f64,
    floor: f64,
}

impl FrontView<'_> {
    fn y(&self, size: &SizeDrawn) -> f64 {
        self.floor - size.length.millimetres_as_float() * self.scale
    }

    /// Where lines of what is asked go through both views.
    fn lines_asked(&self) -> Vec<f64> {
        self.drawn.asked.iter().map(|size| self.y(size)).collect()
    }

    /// What is asked: a line through both views, and its words at the top.
    fn asked(&self) -> Markup {
        html! {
            @for (at, size) in (0_u8..).zip(&self.drawn.asked) {
                @let y = self.y(size);
                @let head = 36.0 + 20.0 * f64::from(at);
                @let class = if at == 0 { "thick" } else { "dots" };
                path class=(class) d={ "M4 " (px(head - 5.0)) "h26" } {}
                text x="36" y=(px(head)) class="strong" { (size.says) }
                path class=(class) d={ "M4 " (px(y)) "H" (px(WIDE - 4.0)) } {}
            }
        }
    }

    fn piece(&self) -> Markup {
        let (left, right) = PIECE;
        let wide = px(right - left);
        let drawn = self.drawn;
        let top = drawn.tops.first().map(|size| self.y(size));
        let bottom = drawn.bottom_gaps.first().map(|size| self.y(size));
        let highest = top.unwrap_or(self.floor - HIGH * 0.8);
        let middle = (highest + self.floor) / 2.0;
        let words = fills(drawn);
        let begin = middle - LINE * count(words.len()) / 2.0 + 12.0;
        let torn = |x: f64, step: f64| {
            let mut path = format!("M{} {}", px(x), px(highest - 4.0));
            let mut y = highest - 4.0;
            let mut way = step;
            while y < self.floor - 3.0 {
                path.push_str(&format!("l{} 8", px(way)));
                way = -way;
                y += 8.0;
            }
            path
        };
        html! {
            @if let Some(y) = top {
                rect class="body-of" x=(px(left)) y=(px(y)) width=(wide) height="7" {}
                path class="thick" d={ "M" (px(left)) " " (px(y)) "H" (px(right)) } {}
            }
            @if let Some(y) = bottom {
                rect class="body-of" x=(px(left)) y=(px(y - 6.0)) width=(wide) height="6" {}
                path class="thick" d={ "M" (px(left)) " " (px(y)) "H" (px(right)) } {}
            }
            path class="gone" d=(torn(left - 2.0, 5.0)) {}
            path class="gone" d=(torn(right + 2.0, -5.0)) {}
            path class="thin" d=(torn(left + 2.0, 5.0)) {}
            path class="thin" d=(torn(right - 2.0, -5.0)) {}
            (label((left + right) / 2.0, begin, LabelSide::Middle, &words))
            path class="thick" d={ "M2 " (px(self.floor)) "H" (px(right + 8.0)) } {}
            text x="2" y=(px(self.floor + 18.0)) {
                @if drawn.on_stair { "nose of a step" } @else { "floor" }
            }
        }
    }

    /// Every height and gap beside the piece, none on a rail.
    fn gutter(&self, top: f64) -> Markup {
        let sizes: Vec<&SizeDrawn> = self
            .drawn
            .tops
            .iter()
            .chain(&self.drawn.bottom_gaps)
            .collect();
        let wanted: Vec<LabelWanted> = sizes
            .iter()
            .map(|size| LabelWanted {
                at: self.y(size),
                lines: in_lines(&size.says, IN_GUTTER),
            })
            .collect();
        let places = apart(&wanted, &self.lines_asked(), top - 8.0, self.floor + 14.0);
        html! {
            @for ((size, wanted), place) in sizes.iter().zip(&wanted).zip(&places) {
                @let y = self.y(size);
                path class="thin" d={ "M" (px(PIECE.1 + 2.0)) " " (px(y)) "H" (px(DIMENSION + 5.0)) } {}
                (upright_dimension(DIMENSION, self.floor, y))
                path class="thin" d={ "M" (px(DIMENSION)) " " (px(y)) "L" (px(GUTTER - 2.0)) " " (px(place - 5.0)) } {}
                (label(GUTTER, *place, LabelSide::Begins, &wanted.lines))
            }
        }
    }

    fn end(&self, top: f64) -> Markup {
        let drawn = self.drawn;
        let footholds = &drawn.footholds[..drawn.footholds.len().min(FOOTHOLDS)];
        let wanted: Vec<LabelWanted> = footholds
            .iter()
            .map(|foothold| LabelWanted {
                at: self.floor - foothold.height.millimetres_as_float() * self.scale,
                lines: in_lines(&foothold.says, BESIDE),
            })
            .collect();
        let places = apart(&wanted, &self.lines_asked(), top + 4.0, self.floor - 4.0);
        let dimension = END - 26.0;
        html! {
            path class="thick" d={ "M" (px(END - 80.0)) " " (px(self.floor)) "H" (px(END)) } {}
            @if let Some(size) = drawn.tops.first() {
                @let y = self.y(size);
                rect class="body-of" x=(px(END)) y=(px(y)) width=(px(THICK)) height=(px(self.floor - y)) {}
                path class="thick" d={ "M" (px(END)) " " (px(self.floor)) "V" (px(y)) "h" (px(THICK)) } {}
            } @else {
                path class="dots" d={ "M" (px(END)) " " (px(self.floor)) "V" (px(top)) } {}
            }
            @for ((foothold, wanted), place) in footholds.iter().zip(&wanted).zip(&places) {
                @let y = self.floor - foothold.height.millimetres_as_float() * self.scale;
                @let deep = foothold.depth.map_or(4.0, |depth| (depth.millimetres_as_float() * self.scale).max(3.0));
                rect class="dot" x=(px(END - deep)) y=(px(y)) width=(px(deep)) height="5" {}
                (upright_dimension(dimension, self.floor, y))
                path class="thin" d={ "M" (px(dimension)) " " (px(y)) "H" (px(END - deep)) } {}
                (label(dimension - 8.0, *place, LabelSide::Ends, &wanted.lines))
            }
        }
    }

    /// The drop is broken: nobody draws nine feet on a phone.
    fn drop(&self) -> Markup {
        let Some(drop) = &self.drawn.drop else {
            return html! {};
        };
        let x = END + THICK + 12.0;
        let (from, to) = (self.floor, self.floor + 78.0);
        let broken = format!(
            "M{x} {f}v24l7 5-14 8 7 5V{t}M{l} {f}h12",
            x = px(x),
            f = px(from),
            t = px(to),
            l = px(x - 6.0)
        );
        let mut lines = in_lines(&format!("drop {drop}"), 17);
        lines.truncate(2);
        lines.push("not to scale".to_owned());
        html! {
            path class="line" d=(broken) {}
            path class="thick" d={ "M" (px(END - 24.0)) " " (px(to)) "H" (px(WIDE - 2.0)) } {}
            (label(END - 4.0, from + 24.0, LabelSide::Ends, &lines))
        }
    }
}

/// What stands in the middle of the piece: what fills it, and that it was not counted.
fn fills(drawn: &GuardDrawn) -> Vec<String> {
    let text = match drawn.infill {
        None => "what fills it was not written down",
        Some(InfillWord::Balusters) => "upright bars: not counted",
        Some(InfillWord::HorizontalBars) => "level bars: not counted, not measured",
        Some(InfillWord::Cables) => "level cables: not counted",
        Some(InfillWord::UprightCables) => "upright cables: not counted",
        Some(InfillWord::Mesh) => "mesh",
        Some(InfillWord::Net) => "a net",
        Some(InfillWord::Panel) => "a panel",
        Some(InfillWord::Solid) => "solid",
        Some(InfillWord::Glass) => "glass",
        Some(InfillWord::Other) => "filled otherwise",
    };
    in_lines(text, 14)
}

/// The same as the drawing, in words.
fn in_words(drawn: &GuardDrawn) -> String {
    let above = if drawn.on_stair {
        "plumb above the nose of a step"
    } else {
        "above the floor"
    };
    let mut parts: Vec<String> = Vec::new();
    let listed = |sizes: &[SizeDrawn]| {
        let says: Vec<&str> = sizes.iter().map(|size| size.says.as_str()).collect();
        says.join(" and ")
    };
    match drawn.tops.as_slice() {
        [] => parts.push("How high the top is was not measured.".to_owned()),
        [_] => parts.push(format!("The top is {} {above}.", listed(&drawn.tops))),
        several => parts.push(format!("The top was read {} {above}.", listed(several))),
    }
    parts.extend(
        drawn
            .asked
            .iter()
            .map(|size| format!("Height {}.", size.says)),
    );
    if !drawn.bottom_gaps.is_empty() {
        parts.push(format!(
            "The gap at the bottom is {}.",
            listed(&drawn.bottom_gaps)
        ));
    }
    for foothold in &drawn.footholds {
        parts.push(format!("There is something to step on {}.", foothold.says));
    }
    parts.push(format!("{}.", reader::capital(&fills(drawn).join(" "))));
    if let Some(drop) = &drawn.drop {
        parts.push(format!("The drop is {drop}, not drawn to scale."));
    }
    parts.join(" ")
}

fn caption(drawn: &GuardDrawn) -> String {
    let mut text =
        "To scale from the readings: only thick edges were measured. How long it is and where its \
posts stand is not drawn."
            .to_owned();
    let mut missing = Vec::new();
    if drawn.tops.is_empty() {
        missing.push("how high it is");
    }
    if drawn.bottom_gaps.is_empty() && !drawn.on_stair {
        missing.push("the gap at the bottom");
    }
    if !missing.is_empty() {
        text.push_str(&format!(" Not measured: {}.", missing.join(", ")));
    }
    if drawn.on_stair {
        text.push_str(" Heights are plumb above the nose of a step; the slope is not drawn.");
    }
    if drawn.tops.len() > 1 {
        text.push_str(" It was read more than once: both are shown, and the lowest is drawn.");
    }
    if drawn.footholds.len() > FOOTHOLDS {
        text.push_str(" More steps were written down than are drawn.");
    }
    text
}
