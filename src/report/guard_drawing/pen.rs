//! What the drawings share: numbers, labels in lines, labels kept apart, scale bars.

use maud::Markup;
use maud::html;

use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::report::wrap::TIE;
use crate::report::wrap::quantities_tied;

/// How wide a drawing is in its own units; a label of 15 of them is 12 px on a phone
/// of 320 px.
pub(super) const WIDE: f64 = 358.0;

/// From one line of a label to the next.
pub(super) const LINE: f64 = 17.0;

/// Tenths are as fine as a page needs.
pub(super) fn px(size: f64) -> String {
    format!("{}", (size * 10.0).round() / 10.0 + 0.0)
}

/// Where a label stands and how.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum LabelSide {
    /// It begins there.
    Begins,
    /// Its middle is there.
    Middle,
    /// It ends there.
    Ends,
}

impl LabelSide {
    const fn class(self) -> &'static str {
        match self {
            LabelSide::Begins => "",
            LabelSide::Middle => "mid",
            LabelSide::Ends => "right",
        }
    }
}

/// A text in lines of so many letters at most; words are not parted, nor is a number
/// from its fraction and its unit.
pub(super) fn in_lines(text: &str, letters: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let text = quantities_tied(text);
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        let word = word.replace(TIE, " ");
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= letters => {
                line.push(' ');
                line.push_str(&word);
            }
            Some(_) | None => lines.push(word),
        }
    }
    lines
}

/// Lines of a label; `y` is the base of the first.
pub(super) fn label(x: f64, y: f64, side: LabelSide, lines: &[String]) -> Markup {
    html! {
        @for (at, line) in (0_u8..).zip(lines) {
            text x=(px(x)) y=(px(y + LINE * f64::from(at))) class=(side.class()) { (line) }
        }
    }
}

/// A label that wants to stand at a height, and gives way to others.
pub(super) struct LabelWanted {
    /// What it speaks of lies here.
    pub(super) at: f64,
    pub(super) lines: Vec<String>,
}

/// Room between two labels, and between a label and a line that is drawn.
const CLEAR: f64 = 3.0;

/// Where each label's first line stands: as near as can be to what it speaks of, none
/// over another nor over one of the level lines that are `drawn` there.
pub(super) fn apart(labels: &[LabelWanted], drawn: &[f64], top: f64, bottom: f64) -> Vec<f64> {
    let high = |label: &LabelWanted| LINE * count(label.lines.len());
    let mut order: Vec<usize> = (0..labels.len()).collect();
    order.sort_by(|a, b| labels[*a].at.total_cmp(&labels[*b].at));
    let mut places = vec![0.0; labels.len()];
    let mut taken: Vec<(f64, f64)> = drawn.iter().map(|line| (*line, *line)).collect();
    for index in order {
        let label = &labels[index];
        let wanted = label.at - high(label) / 2.0;
        let free = |place: &f64| {
            let (from, to) = (place - CLEAR, place + high(label) + CLEAR);
            *place >= top
                && place + high(label) <= bottom
                && taken
                    .iter()
                    .all(|(begin, end)| *end <= from || *begin >= to)
        };
        let steps = (0..400_u16).map(f64::from);
        let mut near = steps.flat_map(|step| [wanted + step, wanted - step]);
        let place = near.find(free).unwrap_or(wanted);
        places[index] = place;
        taken.push((place, place + high(label)));
    }
    // the base of a first line lies below its top
    places.iter().map(|place| place + 13.0).collect()
}

pub(super) fn count(many: usize) -> f64 {
    f64::from(u32::try_from(many).unwrap_or(u32::MAX))
}

/// The largest round length that is no longer on paper than this.
pub(super) fn round_length(unit: LengthUnit, scale: f64, longest: f64) -> Length {
    let all: Vec<Length> = if unit.is_imperial() {
        [1, 2, 4, 6, 12, 24].map(Length::inches).to_vec()
    } else {
        [10, 20, 50, 100, 200, 500, 1000]
            .map(Length::millimetres)
            .to_vec()
    };
    let fits = |length: &&Length| length.millimetres_as_float() * scale <= longest;
    let last = all.iter().rfind(fits).or(all.first());
    last.copied().unwrap_or(unit.one())
}

/// A bar of a round length, with its length behind it.
pub(super) fn scale_bar(x: f64, y: f64, unit: LengthUnit, scale: f64) -> Markup {
    let length = round_length(unit, scale, 90.0);
    let end = x + length.millimetres_as_float() * scale;
    let bar = format!(
        "M{x} {y}H{e}M{x} {a}v10M{e} {a}v10",
        x = px(x),
        y = px(y),
        e = px(end),
        a = px(y - 5.0)
    );
    html! {
        path class="thick" d=(bar) {}
        text x=(px(end + 8.0)) y=(px(y + 5.0)) { (length.exact(unit)) }
    }
}

/// A dimension line with its end marks, upright.
pub(super) fn upright_dimension(x: f64, from: f64, to: f64) -> Markup {
    let path = format!(
        "M{x} {f}V{t}M{l} {f}h10M{l} {t}h10",
        x = px(x),
        f = px(from),
        t = px(to),
        l = px(x - 5.0)
    );
    html! { path class="line" d=(path) {} }
}
