//! The exact length: a whole number of nanometres.

use std::fmt;
use std::ops::{Add, Neg, Sub};

use uom::si::f64::Length as UomLength;
use uom::si::length::nanometer;

/// Nanometres in 1/64 in: 25.4 mm / 64, exactly.
const SIXTY_FOURTH: i64 = 396_875;

/// An exact length in whole nanometres; may be negative, as a margin is.
///
/// One inch is 25.4 mm exactly (international agreement of July 1959), so every
/// 1/64 in is a whole number of nanometres, and 36 in, 3 ft and 914.4 mm are
/// equal. Sums saturate at about 9 million kilometres.
///
/// ```
/// use guardrule::quantities::Length;
/// assert_eq!(Length::inches(36), Length::feet(3));
/// assert_eq!(Length::inches(4), Length::from_nanometres(101_600_000));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length {
    nanometres: i64,
}

impl Length {
    /// No length at all.
    pub const ZERO: Length = Length { nanometres: 0 };

    /// A length of so many nanometres.
    #[must_use]
    pub const fn from_nanometres(nanometres: i64) -> Length {
        Length { nanometres }
    }

    /// Whole inches.
    #[must_use]
    pub const fn inches(inches: i32) -> Length {
        Length::from_nanometres(inches as i64 * 64 * SIXTY_FOURTH)
    }

    /// Whole feet of twelve inches.
    #[must_use]
    pub const fn feet(feet: i32) -> Length {
        Length::from_nanometres(feet as i64 * 12 * 64 * SIXTY_FOURTH)
    }

    /// Sixty-fourths of an inch, the finest mark of a tape.
    #[must_use]
    pub const fn sixty_fourths(count: i32) -> Length {
        Length::from_nanometres(count as i64 * SIXTY_FOURTH)
    }

    /// Whole millimetres.
    #[must_use]
    pub const fn millimetres(millimetres: i32) -> Length {
        Length::from_nanometres(millimetres as i64 * 1_000_000)
    }

    /// Whole micrometres.
    #[must_use]
    pub const fn micrometres(micrometres: i32) -> Length {
        Length::from_nanometres(micrometres as i64 * 1_000)
    }

    /// The length as whole nanometres.
    #[must_use]
    pub const fn nanometres(self) -> i64 {
        self.nanometres
    }

    /// The length without its sign.
    #[must_use]
    pub const fn magnitude(self) -> Length {
        Length::from_nanometres(self.nanometres.saturating_abs())
    }

    /// The same length as a quantity of the `uom` crate, for formulas. This is
    /// the one place where the two meet.
    #[must_use]
    #[expect(
        clippy::cast_precision_loss,
        reason = "exact below 2^53 nm, which is 9007 km"
    )]
    pub fn to_uom(self) -> UomLength {
        UomLength::new::<nanometer>(self.nanometres as f64)
    }

    /// The length in nanometres as a float, for formulas; exact below 9007 km.
    #[must_use]
    #[expect(
        clippy::cast_precision_loss,
        reason = "exact below 2^53 nm, which is 9007 km"
    )]
    pub(crate) fn nanometres_as_float(self) -> f64 {
        self.nanometres as f64
    }

    /// Millimetres, as near as a float comes.
    pub(crate) fn millimetres_as_float(self) -> f64 {
        self.nanometres_as_float() / 1e6
    }

    /// The nearest whole nanometre; what is not finite becomes the largest length.
    #[must_use]
    #[expect(
        clippy::cast_possible_truncation,
        reason = "float to integer casts saturate, and the value was rounded first"
    )]
    pub(crate) fn from_nanometres_rounded(nanometres: f64) -> Length {
        Length::from_nanometres(if nanometres.is_nan() {
            i64::MAX
        } else {
            nanometres.round() as i64
        })
    }

    /// The length in millimetres, in full, without a unit: `901.7`.
    ///
    /// Exact for every length: at most six decimals, no trailing zeros.
    #[must_use]
    pub fn millimetre_digits(self) -> String {
        let mut text = String::with_capacity(MOST_TEXTS);
        self.push_millimetre_digits(&mut text);
        text
    }

    /// The same behind a text.
    pub(crate) fn push_millimetre_digits(self, text: &mut String) {
        push_decimal(text, self.nanometres, 1_000_000);
    }

    /// Exact text in this unit where it has one, else in millimetres.
    ///
    /// Inches come as whole numbers and fractions down to 1/64; a length that
    /// lies between two marks is printed as millimetres, which hold every
    /// nanometre.
    ///
    /// ```
    /// use guardrule::quantities::{Length, LengthUnit};
    /// assert_eq!(Length::sixty_fourths(34 * 64 + 40).exact(LengthUnit::Inch), "34 5/8 in");
    /// assert_eq!(Length::millimetres(902).exact(LengthUnit::Inch), "902 mm");
    /// assert_eq!(Length::millimetres(902).exact(LengthUnit::Centimetre), "90.2 cm");
    /// ```
    #[must_use]
    pub fn exact(self, unit: LengthUnit) -> String {
        let mut text = String::with_capacity(MOST_TEXTS);
        self.push_exact(unit, &mut text);
        text
    }

    fn push_exact(self, unit: LengthUnit, text: &mut String) {
        let in_full = |unit: LengthUnit, text: &mut String| {
            push_decimal(text, self.nanometres, unit.one().nanometres.unsigned_abs());
            text.push(' ');
            text.push_str(unit.symbol());
        };
        match unit {
            LengthUnit::Inch | LengthUnit::Foot if self.nanometres % SIXTY_FOURTH == 0 => {
                let marks = self.nanometres / SIXTY_FOURTH;
                if marks < 0 {
                    text.push('-');
                }
                push_fraction(text, marks.unsigned_abs());
                text.push_str(" in");
            }
            LengthUnit::Inch | LengthUnit::Foot => in_full(LengthUnit::Millimetre, text),
            LengthUnit::Millimetre | LengthUnit::Centimetre | LengthUnit::Metre => {
                in_full(unit, text);
            }
        }
    }

    /// Text for a reader: exact where a tape could show it, else rounded to the
    /// nearest 1/16 in or 0.1 mm and marked `about`.
    #[must_use]
    pub fn readable(self, unit: LengthUnit) -> String {
        let step = reading_step(unit);
        self.about(unit, self.nanometres.saturating_add(step / 2))
    }

    /// The same for an amount that must not be understated: rounded up.
    ///
    /// ```
    /// use guardrule::quantities::{Length, LengthUnit};
    /// let short = Length::inches(36) - Length::millimetres(902);
    /// assert_eq!(short.readable_up(LengthUnit::Inch), "about 1/2 in");
    /// ```
    #[must_use]
    pub fn readable_up(self, unit: LengthUnit) -> String {
        let step = reading_step(unit);
        self.about(unit, self.nanometres.saturating_add(step - 1))
    }

    /// The same for an amount that must not be overstated: rounded down.
    #[must_use]
    pub fn readable_down(self, unit: LengthUnit) -> String {
        self.about(unit, self.nanometres)
    }

    /// Exact text, else that of the step at or below `towards`.
    fn about(self, unit: LengthUnit, towards: i64) -> String {
        let finest = match unit {
            LengthUnit::Inch | LengthUnit::Foot => SIXTY_FOURTH,
            LengthUnit::Millimetre | LengthUnit::Centimetre | LengthUnit::Metre => 100_000,
        };
        if self.nanometres % finest == 0 {
            return self.exact(unit);
        }
        let step = reading_step(unit);
        let rounded = towards - towards.rem_euclid(step);
        let (how, shown) = match rounded {
            0 => ("less than ", step),
            rounded => ("about ", rounded),
        };
        let mut text = String::with_capacity(MOST_TEXTS);
        text.push_str(how);
        Length::from_nanometres(shown).push_exact(unit, &mut text);
        text
    }
}

/// What people read off a tape in this unit: 1/16 in, 0.1 mm.
const fn reading_step(unit: LengthUnit) -> i64 {
    match unit {
        LengthUnit::Inch | LengthUnit::Foot => 4 * SIXTY_FOURTH,
        LengthUnit::Millimetre | LengthUnit::Centimetre | LengthUnit::Metre => 100_000,
    }
}

/// Millimetres in full, as `901.7 mm`.
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} mm", self.millimetre_digits())
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length::from_nanometres(self.nanometres.saturating_add(other.nanometres))
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length::from_nanometres(self.nanometres.saturating_sub(other.nanometres))
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length::from_nanometres(self.nanometres.saturating_neg())
    }
}

/// A unit in which people write lengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LengthUnit {
    /// `in`
    Inch,
    /// `ft`
    Foot,
    /// `mm`
    Millimetre,
    /// `cm`
    Centimetre,
    /// `m`
    Metre,
}

impl LengthUnit {
    /// The unit as we write it: `in`, `ft`, `mm`, `cm`, `m`.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            LengthUnit::Inch => "in",
            LengthUnit::Foot => "ft",
            LengthUnit::Millimetre => "mm",
            LengthUnit::Centimetre => "cm",
            LengthUnit::Metre => "m",
        }
    }

    /// What a unit is called when it is said of all numbers.
    #[must_use]
    pub const fn plural(self) -> &'static str {
        match self {
            LengthUnit::Inch => "inches",
            LengthUnit::Foot => "feet",
            LengthUnit::Millimetre => "millimetres",
            LengthUnit::Centimetre => "centimetres",
            LengthUnit::Metre => "metres",
        }
    }

    /// One of this unit, exactly.
    #[must_use]
    pub const fn one(self) -> Length {
        match self {
            LengthUnit::Inch => Length::inches(1),
            LengthUnit::Foot => Length::feet(1),
            LengthUnit::Millimetre => Length::millimetres(1),
            LengthUnit::Centimetre => Length::millimetres(10),
            LengthUnit::Metre => Length::millimetres(1000),
        }
    }

    /// Whether people write fractions in this unit (inches and feet).
    #[must_use]
    pub const fn is_imperial(self) -> bool {
        matches!(self, LengthUnit::Inch | LengthUnit::Foot)
    }
}

/// So long are nearly all texts of a length.
const MOST_TEXTS: usize = 24;

/// `33 1/2` from 64ths of an inch.
fn push_fraction(text: &mut String, marks: u64) {
    let (whole, rest) = (marks / 64, marks % 64);
    if rest == 0 {
        return push_digits(text, whole, 1);
    }
    if whole > 0 {
        push_digits(text, whole, 1);
        text.push(' ');
    }
    let shared = 1 << rest.trailing_zeros().min(6);
    push_digits(text, rest / shared, 1);
    text.push('/');
    push_digits(text, 64 / shared, 1);
}

/// A count of nanometres in a unit of so many, a power of ten, in full, without trailing zeros.
fn push_decimal(text: &mut String, nanometres: i64, unit: u64) {
    let size = nanometres.unsigned_abs();
    if nanometres < 0 {
        text.push('-');
    }
    push_digits(text, size / unit, 1);
    let mut rest = size % unit;
    if rest == 0 {
        return;
    }
    let mut places = unit.ilog10();
    while rest.is_multiple_of(10) {
        rest /= 10;
        places -= 1;
    }
    text.push('.');
    push_digits(text, rest, places);
}

/// A number with zeros before it up to so many places: a table of findings has many of these.
fn push_digits(text: &mut String, mut number: u64, places: u32) {
    let mut digits = [b'0'; LONGEST_NUMBER];
    let mut least = usize::try_from(places).unwrap_or(LONGEST_NUMBER);
    let mut at = digits.len();
    while at > 0 && (number > 0 || least > 0) {
        at -= 1;
        digits[at] = b'0' + u8::try_from(number % 10).unwrap_or(0);
        number /= 10;
        least = least.saturating_sub(1);
    }
    text.push_str(str::from_utf8(&digits[at..]).unwrap_or_default());
}

/// Digits of the largest of them.
const LONGEST_NUMBER: usize = 20;

#[cfg(test)]
mod tests {
    use super::*;

    /// Exact conversions: 1 in = 25.4 mm (international agreement, July 1959, read in an
    /// encyclopaedia; NIST SP 811 appendix B from memory).
    #[test]
    fn the_international_inch_is_exact() {
        assert_eq!(Length::inches(1).nanometres(), 25_400_000);
        assert_eq!(Length::feet(1).nanometres(), 304_800_000);
        for (part, nanometres) in [
            (1, 396_875),
            (2, 793_750),
            (4, 1_587_500),
            (8, 3_175_000),
            (16, 6_350_000),
            (32, 12_700_000),
        ] {
            assert_eq!(Length::sixty_fourths(part).nanometres(), nanometres);
        }
    }

    /// The exact millimetres behind the rounded figures that US texts print
    /// (2018 IRC R312, read in a county's printing): multiplied out.
    #[test]
    fn inch_limits_in_exact_millimetres() {
        const CASES: &[(i32, &str)] = &[
            (80, "31.75"),
            (96, "38.1"),
            (112, "44.45"),
            (144, "57.15"),
            (152, "60.325"),
            (224, "88.9"),
            (256, "101.6"),
            (280, "111.125"),
            (384, "152.4"),
            (576, "228.6"),
            (34 * 64, "863.6"),
            (36 * 64, "914.4"),
            (38 * 64, "965.2"),
            (42 * 64, "1066.8"),
            (72 * 64, "1828.8"),
        ];
        for (marks, millimetres) in CASES {
            assert_eq!(
                Length::sixty_fourths(*marks).millimetre_digits(),
                *millimetres
            );
        }
    }

    #[test]
    fn text_for_a_reader_says_when_it_is_rounded() {
        let short = Length::inches(36) - Length::millimetres(902);
        assert_eq!(short.readable(LengthUnit::Millimetre), "12.4 mm");
        assert_eq!(short.readable(LengthUnit::Inch), "about 1/2 in");
        assert_eq!(short.readable_up(LengthUnit::Inch), "about 1/2 in");
        assert_eq!(short.readable_down(LengthUnit::Inch), "about 7/16 in");
        assert_eq!(short.readable_up(LengthUnit::Millimetre), "12.4 mm");
        let hair = Length::from_nanometres(10);
        assert_eq!(hair.readable(LengthUnit::Millimetre), "less than 0.1 mm");
        assert_eq!(hair.readable(LengthUnit::Inch), "less than 1/16 in");
        assert_eq!(hair.readable_up(LengthUnit::Inch), "about 1/16 in");
    }

    #[test]
    fn uom_agrees() {
        use uom::si::length::millimeter;
        let inches = Length::inches(36).to_uom().get::<millimeter>();
        assert!((inches - 914.4).abs() < 1e-9);
    }

    #[test]
    fn nothing_has_no_sign() {
        assert_eq!(Length::ZERO.exact(LengthUnit::Inch), "0 in");
        assert_eq!(Length::ZERO.exact(LengthUnit::Millimetre), "0 mm");
        assert_eq!((-Length::inches(1)).exact(LengthUnit::Inch), "-1 in");
    }
}
