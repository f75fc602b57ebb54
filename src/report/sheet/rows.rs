//! Rows to fill in: boxes to tick, lines to write on, balls to try.

use maud::Markup;
use maud::html;

use crate::items::Drawing;
use crate::items::Hole;
use crate::items::Item;
use crate::items::Kind;
use crate::items::Pictured;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::report::one_line;
use crate::report::vector;
use crate::rules::Limit;
use crate::rules::Ruleset;

/// The least height of a row that is written in, in millimetres.
const ROW_MM: f64 = 7.7;
/// A line of boxes.
const LINE_MM: f64 = 5.1;
/// A line of small text below a name.
const SMALL_MM: f64 = 3.4;
/// How wide the name's column and the column of boxes are.
const NAME_MM: f64 = 55.0;
const BOXES_MM: f64 = 128.0;
/// How wide a letter is, about: 9.5 pt, and 8.5 pt below a name.
const LETTER_MM: f64 = 1.82;
const SMALL_LETTER_MM: f64 = 1.6;
/// A box with the space round it, and a line to write on.
const BOX_MM: f64 = 7.2;
const WRITE_MM: f64 = 26.0;

/// One thing in a row, and how wide it is.
pub(super) struct RowPart {
    mm: f64,
    markup: Markup,
}

/// A box with its word.
pub(super) fn tick(word: &str) -> RowPart {
    RowPart {
        mm: BOX_MM + LETTER_MM * letters(word),
        markup: html! { span class="bx" { i class="sq" {} (word) } " " },
    }
}

/// A line to write on, behind what it is for.
pub(super) fn line(name: &str) -> RowPart {
    RowPart {
        mm: WRITE_MM + LETTER_MM * letters(name),
        markup: html! { span class="bx" { (name) i class="w" {} } " " },
    }
}

fn letters(text: &str) -> f64 {
    f64::from(u16::try_from(text.chars().count()).unwrap_or(u16::MAX))
}

/// A row with its height: name, what it asks, and what to tick or write.
pub(super) fn row(items: &[Item], name: &str, asks: &str, parts: Vec<RowPart>) -> (f64, Markup) {
    let mut lines = 1.0;
    let mut used = 0.0;
    for part in &parts {
        if used + part.mm > BOXES_MM && used > 0.0 {
            lines += 1.0;
            used = 0.0;
        }
        used += part.mm;
    }
    let small = (letters(asks) * SMALL_LETTER_MM / NAME_MM).ceil();
    let named = (letters(name) * 1.95 / NAME_MM).ceil().max(1.0);
    let high = (0.7 + LINE_MM * lines)
        .max(1.0 + 3.9 * named + SMALL_MM * small)
        .max(ROW_MM);
    let asked = items.iter().map(|item| item.name()).collect::<Vec<_>>();
    let markup = html! {
        tr data-item=(asked.join("; ")) {
            th scope="row" { (name) @if !asks.is_empty() { span { (asks) } } }
            td { @for part in parts { (part.markup) } }
        }
    };
    (high + 0.3, markup)
}

/// The row of an item as the table has it.
pub(super) fn row_of(item: Item, rulesets: &[Ruleset], unit: LengthUnit) -> (f64, Markup) {
    let info = item.info();
    let asks = asks(item);
    row(&[item], info.name, asks, parts(item, rulesets, unit))
}

/// What a row asks, in a few words.
fn asks(item: Item) -> &'static str {
    if item == Item::Height {
        return "floor to top, at its lowest; on a stair from the nose of a step";
    }
    if item == Item::Infill {
        return "what fills it, floor to top";
    }
    if item == Item::Drop {
        return "how far down, at the deepest; on a stair from its highest step";
    }
    if item == Item::Foothold {
        return "bar, ledge, hole that takes a foot";
    }
    if item == Item::ThingToClimb {
        return "chair, box, planter near it";
    }
    item.info().question
}

/// The words of an item as boxes; a danger says STOP.
pub(super) fn words(item: Item) -> Vec<RowPart> {
    let ticks = item.words().iter().map(|word| match word.danger {
        Some(_) => tick(&format!("{}: STOP", word.name)),
        None => tick(word.name),
    });
    ticks.collect()
}

fn parts(item: Item, rulesets: &[Ruleset], unit: LengthUnit) -> Vec<RowPart> {
    let info = item.info();
    let mut parts = if let Kind::Words(_) = info.kind {
        words(item)
    } else {
        fields(info.kind).iter().map(|name| line(name)).collect()
    };
    if item == Item::Height {
        for stick in sticks(rulesets) {
            let size = in_unit(stick, unit).0;
            parts.push(tick(&format!("reaches {size}")));
            parts.push(tick(&format!("below {size}")));
        }
    }
    let none = item.words().iter().any(|word| word.name == "none");
    if info.none_allowed && !none {
        parts.push(tick("none"));
    }
    if item.is_at_guard() || item == Item::Drop {
        parts.push(tick("not reached"));
    }
    parts
}

/// What is written in a row, by the kind of reading.
const fn fields(kind: Kind) -> &'static [&'static str] {
    match kind {
        Kind::Fasteners => &["how many", "thick", "long"],
        Kind::Foothold => &["high", "deep"],
        Kind::Pull => &["force", "moved"],
        Kind::Section => &["across", "by"],
        Kind::StairTriangle => &["rise", "going", "lift"],
        Kind::ThingToClimb => &["high", "away"],
        Kind::VOpening => &["wide", "deep", "at the bottom"],
        Kind::Ages
        | Kind::Count
        | Kind::Date
        | Kind::Force
        | Kind::Graduation
        | Kind::Length
        | Kind::Opening
        | Kind::Text
        | Kind::Tolerance
        | Kind::Words(_)
        | Kind::Years => &[""],
    }
}

/// How many sticks there is room for.
const STICKS: usize = 2;

/// The heights that rules ask for at least, the lowest first.
fn sticks(rulesets: &[Ruleset]) -> Vec<&Limit> {
    let rules = rulesets.iter().flat_map(|ruleset| &ruleset.rules);
    let checks = rules.flat_map(|rule| &rule.checks);
    let mut limits: Vec<&Limit> = checks
        .filter(|check| check.subject == crate::rules::Subject::Item(Item::Height))
        .filter_map(|check| check.demand.least_length())
        .collect();
    limits.sort_by_key(|limit| limit.length);
    limits.dedup_by_key(|limit| limit.length);
    limits.truncate(STICKS);
    limits
}

/// A limit in the country's own unit, and as the rules write it where that differs. A
/// ball is rounded down, so that one that stops proves no less.
pub(super) fn in_unit(limit: &Limit, unit: LengthUnit) -> (String, Option<String>) {
    let written = one_line(&limit.written).into_owned();
    if limit.unit.is_imperial() == unit.is_imperial() {
        return (written, None);
    }
    let own = if unit.is_imperial() {
        let down = limit.length.readable_down(LengthUnit::Inch);
        down.strip_prefix("about ").unwrap_or(&down).to_owned()
    } else {
        // no ball is measured more finely
        const TENTH: i64 = 100_000;
        let down = limit.length.nanometres().div_euclid(TENTH) * TENTH;
        format!("{} mm", Length::from_nanometres(down).millimetre_digits())
    };
    (own, Some(written))
}

/// Whose ball it is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Whose {
    Advice,
    Both,
    Rules,
}

/// A ball with the holes at which it is asked for.
pub(super) struct SheetBall<'r> {
    pub(super) limit: &'r Limit,
    whose: Whose,
    holes: Vec<Item>,
}

/// The balls that the rulesets ask for at these holes, small ones first.
pub(super) fn balls<'r>(holes: &[Item], rulesets: &'r [Ruleset]) -> Vec<SheetBall<'r>> {
    let mut all: Vec<SheetBall<'r>> = Vec::new();
    for ruleset in rulesets {
        let whose = if ruleset.advisory {
            Whose::Advice
        } else {
            Whose::Rules
        };
        for hole in holes {
            // a gap of nothing is asked for by tape, and by no ball
            let sizes = ruleset
                .balls(*hole)
                .filter(|limit| limit.length > Length::ZERO);
            for limit in sizes {
                let known = all
                    .iter_mut()
                    .find(|ball| ball.limit.length == limit.length);
                match known {
                    Some(ball) => {
                        if ball.whose != whose {
                            ball.whose = Whose::Both;
                        }
                        if !ball.holes.contains(hole) {
                            ball.holes.push(*hole);
                        }
                    }
                    None => all.push(SheetBall {
                        limit,
                        whose,
                        holes: vec![*hole],
                    }),
                }
            }
        }
    }
    all.sort_by_key(|ball| ball.limit.length);
    all
}

/// The head of a table of balls.
pub(super) fn balls_head(balls: &[SheetBall<'_>], unit: LengthUnit) -> Markup {
    html! {
        tr {
            th scope="col" { "gap" }
            th scope="col" { "none" }
            th scope="col" { "not reached" }
            @for ball in balls {
                @let (own, written) = in_unit(ball.limit, unit);
                th scope="col" class="ball" {
                    (own)
                    @if let Some(written) = written { span { (written) } }
                    span {
                        (match ball.whose {
                            Whose::Advice => "advice",
                            Whose::Both => "rules, advice",
                            Whose::Rules => "rules",
                        })
                    }
                    span { "stops passes" }
                }
            }
        }
    }
}

/// What a hole is called in the table of balls, and where it is.
const HOLES: [(Item, &str, &str); 6] = [
    (Item::Opening, "bars", "every hole between them"),
    (Item::BottomGap, "bottom gap", "under the lowest rail"),
    (Item::EndGap, "end gap", "beside the wall or post"),
    (Item::EdgeGap, "edge gap", "floor's edge to the railing"),
    (Item::StairTriangle, "step triangle", "stairs only"),
    (Item::RiserOpening, "open riser", "stairs only"),
];

/// A row of the table of balls.
pub(super) fn ball_row(item: Item, balls: &[SheetBall<'_>]) -> (f64, Markup) {
    let known = HOLES.iter().find(|(hole, ..)| *hole == item);
    let (name, place) = known.map_or((item.name(), ""), |(_, name, place)| (*name, *place));
    let markup = html! {
        tr data-item=(item.name()) {
            th scope="row" { (name) span { (place) } }
            td class="c" { i class="sq" {} }
            td class="c" { i class="sq" {} }
            @for ball in balls {
                @if ball.holes.contains(&item) {
                    td class="bc" { i class="sq" {} i class="sq" {} }
                } @else {
                    td class="bc off" { "–" }
                }
            }
        }
    };
    (8.6, markup)
}

/// Whether a hole is tried with a ball.
pub(super) fn takes_balls(item: Item, rulesets: &[Ruleset]) -> bool {
    item.info().hole != Hole::No && !balls(&[item], rulesets).is_empty()
}

/// How high a letter of a drawing stands on paper, in millimetres: 8.3 pt.
const DRAWN_LETTER_MM: f64 = 2.95;

/// As many of these drawings as fit beside each other, and how high they are together.
pub(super) fn drawings(of: &[Drawing]) -> (f64, Markup) {
    const ACROSS_MM: f64 = 180.0;
    let (mut high, mut used): (f64, f64) = (0.0, 0.0);
    let mut fitting: Vec<Drawing> = Vec::new();
    for drawing in of {
        let (wide, tall) = drawn_mm(*drawing);
        if used + wide <= ACROSS_MM {
            used += wide + 2.0;
            high = high.max(tall);
            fitting.push(*drawing);
        }
    }
    if fitting.is_empty() {
        return (0.0, html! {});
    }
    let markup = html! {
        div class="draws" { @for drawing in fitting { (sized(drawing)) } }
    };
    (high + 2.0, markup)
}

/// How wide and high a drawing is so that its words can be read.
fn drawn_mm(drawing: Drawing) -> (f64, f64) {
    let scene = drawing.scene();
    let letters = if scene.rows > 10 { 15.0 } else { 13.0 };
    let scale = DRAWN_LETTER_MM / letters;
    let wide = f64::from(scene.columns * crate::items::COLUMN + 2) * scale;
    let high = f64::from(scene.rows * crate::items::ROW + 5) * scale;
    (wide, high)
}

fn sized(drawing: Drawing) -> Markup {
    let (wide, _) = drawn_mm(drawing);
    let svg = vector(drawing.scene()).into_string();
    let wide = format!("<svg width=\"{wide:.1}mm\" ");
    html! { (maud::PreEscaped(svg.replacen("<svg ", &wide, 1))) }
}

/// The first drawings of these items, each once.
pub(super) fn drawings_of(items: &[Item], most: usize) -> Vec<Drawing> {
    let mut all: Vec<Drawing> = Vec::new();
    for item in items {
        if let Pictured::By(drawings) = item.info().pictured
            && let Some(first) = drawings.first()
            && !all.contains(first)
        {
            all.push(*first);
        }
    }
    all.truncate(most);
    all
}
