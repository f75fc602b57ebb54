//! Canonical text of a reading.

use uom::si::angle::degree;

use crate::geometry::Across;
use crate::geometry::Balusters;
use crate::geometry::Cables;
use crate::geometry::Rake;
use crate::geometry::RakedBay;
use crate::geometry::Risers;
use crate::geometry::Shape;
use crate::geometry::Strand;
use crate::geometry::TurnedPair;
use crate::quantities::Angle;
use crate::quantities::Force;
use crate::quantities::Length;
use crate::quantities::LengthUnit;
use crate::quantities::pounds_force;
use crate::reading::BallTest;
use crate::reading::Bound;
use crate::reading::FastenerSize;
use crate::reading::Fasteners;
use crate::reading::Foothold;
use crate::reading::Graduation;
use crate::reading::Measure;
use crate::reading::Push;
use crate::reading::Reading;
use crate::reading::ShapeReading;
use crate::reading::StairReading;
use crate::reading::ThingToClimb;
use crate::reading::VReading;
use crate::reading::Value;
use crate::reading::length::parse_length;

/// The canonical text of a reading: parsed again as a reading of its item it
/// gives the same quantity, and the same graduation where a text can express it.
///
/// ```
/// use guardrule::items::Item;
/// use guardrule::reading::{parse, print};
/// let parsed = parse(Item::Height, "2′ 10⅝″", None)?;
/// assert_eq!(print(&parsed.readings[0]), "34 5/8 in");
/// # Ok::<(), guardrule::reading::ReadingError>(())
/// ```
#[must_use]
pub fn print(reading: &Reading) -> String {
    let mut text = value(&reading.value);
    if let Some(at) = reading.at {
        let (low, high) = (any_unit(at.low), any_unit(at.high));
        text.push_str(" at ");
        text.push_str(&low);
        if at.low != at.high {
            text.push_str(" to ");
            text.push_str(&high);
        }
    }
    text
}

fn value(value: &Value) -> String {
    match value {
        Value::Age(age) => age.to_string(),
        Value::Ball(test) => ball(test),
        Value::Count(count) => count.to_string(),
        Value::Date { year, month, day } => format!("{year:04}-{month:02}-{day:02}"),
        Value::Fasteners(found) => fasteners(*found),
        Value::Foothold(found) => foothold(found),
        Value::Force(found) => force(*found),
        Value::Measure(found) => measure(found),
        Value::None => "none".to_owned(),
        Value::Pull(pull) => format!("{} {}", force(pull.force), any_unit(pull.moved)),
        Value::Section(a, b) => format!("{} x {}", any_unit(*a), any_unit(*b)),
        Value::Shape(found) => shape(found),
        Value::StairTriangle(found) => stair(found),
        Value::VOpening(found) => v_opening(found),
        Value::Stick(found) => {
            let word = if found.reaches { "reaches" } else { "below" };
            format!("{word} {}", in_unit(found.stick, found.unit))
        }
        Value::Text(text) => text.to_string(),
        Value::ThingToClimb(thing) => thing_to_climb(thing),
        Value::Unknown => "not reached".to_owned(),
        Value::Word(word) => (*word).to_owned(),
        Value::Years(span) => span.to_string(),
    }
}

fn measure(found: &Measure) -> String {
    let bound = match found.bound {
        Bound::Exactly => "",
        Bound::Over => "over ",
        Bound::Under => "under ",
    };
    match found.graduation {
        // how a tolerance is written; no reading is as far off as it is long
        Graduation::PlusMinus(within) if within == found.length => {
            format!("± {}", in_unit(within, found.unit))
        }
        Graduation::PlusMinus(within) => format!(
            "{bound}{} ± {}",
            in_unit(found.length, found.unit),
            in_unit(within, found.unit)
        ),
        Graduation::ReadTo(step) => {
            format!("{bound}{}", read_to(found.length, found.unit, step))
        }
    }
}

/// A length in its unit, written as if read to this step where some form says so.
fn read_to(length: Length, unit: LengthUnit, step: Length) -> String {
    let fits = |text: &String| {
        parse_length(text, None).is_ok_and(|m| {
            m.length == length && m.unit == unit && m.graduation == Graduation::ReadTo(step)
        })
    };
    written_forms(length, unit)
        .into_iter()
        .find(fits)
        .unwrap_or_else(|| in_unit(length, unit))
}

/// The shortest form in this unit; in millimetres where the unit has none.
fn in_unit(length: Length, unit: LengthUnit) -> String {
    written_forms(length, unit)
        .into_iter()
        .next()
        .unwrap_or_else(|| length.exact(unit))
}

/// A length whose unit nobody kept: in inches where it is a mark, else in millimetres.
fn any_unit(length: Length) -> String {
    length.exact(LengthUnit::Inch)
}

/// Every form of a length in a unit, the plainest first.
fn written_forms(length: Length, unit: LengthUnit) -> Vec<String> {
    let mut forms = Vec::new();
    if unit.is_imperial() {
        forms.extend(fraction(length, unit, Fraction::Shortest));
        for denominator in [2, 4] {
            forms.extend(fraction(length, unit, Fraction::Over(denominator)));
        }
    }
    for places in 0..=9 {
        forms.extend(decimal(length, unit, places));
    }
    forms
}

#[derive(Clone, Copy)]
enum Fraction {
    Over(i64),
    Shortest,
}

/// `34 5/8 in`, `36 0/4 in`, where the length is such a fraction.
fn fraction(length: Length, unit: LengthUnit, form: Fraction) -> Option<String> {
    let one = i128::from(unit.one().nanometres());
    let marks = i128::from(length.nanometres()) * 64;
    if marks < 0 || marks % one != 0 {
        return None;
    }
    let marks = marks / one;
    let (whole, rest) = (marks / 64, marks % 64);
    let denominator = match form {
        Fraction::Over(denominator) => i128::from(denominator),
        Fraction::Shortest if rest == 0 => return Some(format!("{whole} {}", unit.symbol())),
        Fraction::Shortest => 64 >> rest.trailing_zeros().min(6),
    };
    if rest * denominator % 64 != 0 {
        return None;
    }
    let numerator = rest * denominator / 64;
    let symbol = unit.symbol();
    Some(match whole {
        0 => format!("{numerator}/{denominator} {symbol}"),
        whole => format!("{whole} {numerator}/{denominator} {symbol}"),
    })
}

/// `90.2 cm` with so many places, where that is exact.
fn decimal(length: Length, unit: LengthUnit, places: u32) -> Option<String> {
    let one = i128::from(unit.one().nanometres());
    let power = 10_i128.pow(places);
    let scaled = i128::from(length.nanometres()) * power;
    if scaled < 0 || scaled % one != 0 {
        return None;
    }
    let (whole, rest) = (scaled / one / power, scaled / one % power);
    let symbol = unit.symbol();
    if places == 0 {
        return Some(format!("{whole} {symbol}"));
    }
    let width = places as usize;
    Some(format!("{whole}.{rest:0width$} {symbol}"))
}

fn ball(test: &BallTest) -> String {
    let verdict = if test.passes { "passes" } else { "stops" };
    let mut text = format!("{} ball {verdict}", in_unit(test.ball, test.unit));
    if test.everywhere {
        text.push_str(" everywhere");
    }
    match test.push {
        Push::ByHand => text.push_str(" pushed by hand"),
        Push::Force(push) => {
            text.push_str(" pushed ");
            text.push_str(&force(push));
        }
        Push::None => {}
    }
    text
}

/// A force in whole or tenths of pounds-force where it is exactly that, else in newtons.
fn force(push: Force) -> String {
    let size = push.get::<uom::si::force::newton>();
    let pounds = (size / pounds_force(1.0).get::<uom::si::force::newton>() * 10.0).round() / 10.0;
    if pounds_force(pounds) == push {
        format!("{pounds} lbf")
    } else {
        format!("{size} N")
    }
}

fn shape(found: &ShapeReading) -> String {
    let side = |length: Length| with_step(length, found.unit, found.graduation);
    let text = match &found.shape {
        Shape::Cables(run) => cables(run, &side),
        Shape::Circle { diameter } => format!("circle {}", side(*diameter)),
        Shape::Polygon(outline) => {
            let corners: Vec<String> = outline
                .corners()
                .iter()
                .map(|corner| format!("{}:{}", corner.x_mm, corner.y_mm))
                .collect();
            format!("polygon {} mm", corners.join(" "))
        }
        Shape::Raked(bay) => raked(bay, &side),
        Shape::Rectangle { width, height } => {
            format!("rectangle {} x {}", side(*width), side(*height))
        }
        Shape::Slot { width } => format!("slot {}", side(*width)),
        Shape::Triangle { rise, run } => format!("triangle {} x {}", side(*rise), side(*run)),
        Shape::Turned(pair) => turned(pair, found),
    };
    text + &within(found.graduation, found.unit)
}

fn cables(run: &Cables, side: &dyn Fn(Length) -> String) -> String {
    let word = match run.strand() {
        Strand::Cable => "cable",
        Strand::Rod => "rods",
    };
    let (spacing, diameter) = (side(run.spacing()), side(run.diameter()));
    let mut text = format!("{word} {spacing} spacing {diameter} diameter");
    if let Some(free) = run.free() {
        text.push_str(&format!(" {} free", side(free)));
    }
    if let Some(tension) = run.tension() {
        text.push_str(&format!(" tension {}", force(tension)));
    }
    text
}

fn raked(bay: &RakedBay, side: &dyn Fn(Length) -> String) -> String {
    let across = match bay.across {
        Across::Along => "along",
        Across::Level => "level",
    };
    let mut text = format!("raked {} {across}", side(bay.gap));
    match bay.rake {
        Rake::Angle(angle, step) => text.push_str(&format!(" at {}", degrees(angle, step))),
        Rake::Step { rise, going } => {
            text.push_str(&format!(" rise {} going {}", side(rise), side(going)));
        }
    }
    match bay.balusters {
        Balusters::Plumb => {}
        Balusters::Square => text.push_str(" square"),
    }
    if let Some(high) = bay.high {
        text.push_str(&format!(" high {}", side(high)));
    }
    text
}

/// An angle with as many decimals as it was read to.
fn degrees(angle: Angle, step: Angle) -> String {
    let (angle, step) = (angle.get::<degree>(), step.get::<degree>());
    let finer = |step: &f64| (*step < 0.999).then_some(step * 10.0);
    let steps = std::iter::successors(Some(step), finer);
    let places = steps.take(12).count() - 1;
    format!("{angle:.places$} deg")
}

/// A profile has one unit, the written one where it can express every length.
fn turned(pair: &TurnedPair, found: &ShapeReading) -> String {
    let lengths = || {
        let stations = pair.profile().iter();
        let pairs = stations.flat_map(|station| [station.height, station.diameter]);
        [pair.centres()].into_iter().chain(pairs)
    };
    let fits = |length: Length| !written_forms(length, found.unit).is_empty();
    let unit = if lengths().all(fits) {
        found.unit
    } else {
        LengthUnit::Millimetre
    };
    let symbol = format!(" {}", unit.symbol());
    let bare = |length: Length| {
        let text = with_step(length, unit, found.graduation);
        text.strip_suffix(&symbol).unwrap_or(&text).to_owned()
    };
    let mut text = format!("turned {}{symbol} centres", bare(pair.centres()));
    for station in pair.profile() {
        text.push_str(&format!(
            " {}:{}",
            bare(station.height),
            bare(station.diameter)
        ));
    }
    text + &symbol
}

fn fasteners(found: Fasteners) -> String {
    let size = match found.size {
        FastenerSize::Diameter(length) => any_unit(length),
        FastenerSize::Number(number) => format!("No. {number}"),
    };
    let length = found.length.map(any_unit);
    let length = length.map_or_else(String::new, |length| format!(" x {length}"));
    format!("{} x {size}{length}", found.count)
}

fn stair(found: &StairReading) -> String {
    let side = |length: Length| with_step(length, found.unit, found.graduation);
    let mut text = format!("rise {} going {}", side(found.rise), side(found.going));
    if let Some(lift) = found.lift {
        text.push_str(&format!(" lift {}", side(lift)));
    }
    if found.nosing != Length::ZERO {
        text.push_str(&format!(" nosing {}", side(found.nosing)));
    }
    if let Some(thickness) = found.nosing_thickness {
        text.push_str(&format!(" thick {}", side(thickness)));
    }
    if found.risers == Risers::Open {
        text.push_str(" open risers");
    }
    text + &within(found.graduation, found.unit)
}

fn v_opening(found: &VReading) -> String {
    let side = |length: Length| with_step(length, found.unit, found.graduation);
    let mut text = format!("{} wide {} deep", side(found.wide), side(found.deep));
    if found.bottom != Length::ZERO {
        text.push_str(&format!(" {} at the bottom", side(found.bottom)));
    }
    text + &within(found.graduation, found.unit)
}

fn foothold(found: &Foothold) -> String {
    let side = |length: Length| with_step(length, found.unit, found.graduation);
    let mut text = format!("{} high", side(found.height));
    if let Some(depth) = found.depth {
        text.push_str(&format!(" {} deep", side(depth)));
    }
    if let Some(along) = found.along {
        text.push_str(&format!(" {} along", side(along)));
    }
    text += &within(found.graduation, found.unit);
    if let Some(slope) = found.slope {
        text.push_str(&format!(" sloped {} deg", slope.degrees()));
    }
    text
}

/// One of several lengths that share a graduation.
fn with_step(length: Length, unit: LengthUnit, graduation: Graduation) -> String {
    match graduation {
        Graduation::PlusMinus(_) => in_unit(length, unit),
        Graduation::ReadTo(step) => read_to(length, unit, step),
    }
}

fn within(graduation: Graduation, unit: LengthUnit) -> String {
    match graduation {
        Graduation::PlusMinus(within) => format!(" ± {}", in_unit(within, unit)),
        Graduation::ReadTo(_) => String::new(),
    }
}

fn thing_to_climb(thing: &ThingToClimb) -> String {
    let height = thing
        .height
        .map(|height| format!("{} high", any_unit(height)));
    let depth = thing.depth.map(|depth| format!("{} deep", any_unit(depth)));
    let away = thing.away.map(|away| format!("{} away", any_unit(away)));
    let parts: Vec<String> = [height, depth, away].into_iter().flatten().collect();
    if parts.is_empty() {
        "yes".to_owned()
    } else {
        parts.join(" ")
    }
}
