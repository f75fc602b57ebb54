//! A quantity of any dimension, for the lines of a calculation.

use std::fmt;

use crate::quantities::Area;
use crate::quantities::Distance;
use crate::quantities::Force;
use crate::quantities::LineLoad;
use crate::quantities::Moment;
use crate::quantities::Pressure;
use crate::quantities::Ratio;
use crate::quantities::Rigidity;
use crate::quantities::SecondMoment;
use crate::quantities::SectionModulus;
use crate::quantities::inches;
use crate::quantities::millimetres;
use crate::quantities::newtons;
use crate::quantities::pounds;

/// In which units a calculation is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Units {
    /// lb, in, psi.
    Customary,
    /// N, mm, MPa.
    Metric,
}

/// A quantity of any dimension.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AnyQuantity {
    /// in² or mm²
    Area(Area),
    /// in or mm
    Distance(Distance),
    /// lb or N
    Force(Force),
    /// lb/in or N/mm
    LineLoad(LineLoad),
    /// lb·in or N·m; per radian for a rotational stiffness
    Moment(Moment),
    /// A pure number, as a factor or a specific gravity.
    Number(f64),
    /// psi or MPa
    Pressure(Pressure),
    /// lb·in² or N·m²
    Rigidity(Rigidity),
    /// in⁴ or mm⁴
    SecondMoment(SecondMoment),
    /// in³ or mm³
    SectionModulus(SectionModulus),
}

impl AnyQuantity {
    /// Number and unit symbol in these units; no symbol for a pure number.
    #[must_use]
    pub fn size(self, units: Units) -> (f64, &'static str) {
        match units {
            Units::Customary => self.customary(),
            Units::Metric => self.metric(),
        }
    }

    fn customary(self) -> (f64, &'static str) {
        let (inch, pound) = (inches(1.0), pounds(1.0));
        match self {
            AnyQuantity::Area(of) => ((of / (inch * inch)).value, "in²"),
            AnyQuantity::Distance(of) => ((of / inch).value, "in"),
            AnyQuantity::Force(of) => ((of / pound).value, "lb"),
            AnyQuantity::LineLoad(of) => ((of / (pound / inch)).value, "lb/in"),
            AnyQuantity::Moment(of) => ((of / (pound * inch)).value, "lb·in"),
            AnyQuantity::Number(of) => (of, ""),
            AnyQuantity::Pressure(of) => ((of / (pound / (inch * inch))).value, "psi"),
            AnyQuantity::Rigidity(of) => ((of / (pound * inch * inch)).value, "lb·in²"),
            AnyQuantity::SecondMoment(of) => ((of / (inch * inch * inch * inch)).value, "in⁴"),
            AnyQuantity::SectionModulus(of) => ((of / (inch * inch * inch)).value, "in³"),
        }
    }

    fn metric(self) -> (f64, &'static str) {
        let (mm, newton) = (millimetres(1.0), newtons(1.0));
        match self {
            AnyQuantity::Area(of) => ((of / (mm * mm)).value, "mm²"),
            AnyQuantity::Distance(of) => ((of / mm).value, "mm"),
            AnyQuantity::Force(of) => ((of / newton).value, "N"),
            AnyQuantity::LineLoad(of) => ((of / (newton / mm)).value, "N/mm"),
            AnyQuantity::Moment(of) => (of.value, "N·m"),
            AnyQuantity::Number(of) => (of, ""),
            AnyQuantity::Pressure(of) => ((of / (newton / (mm * mm))).value, "MPa"),
            AnyQuantity::Rigidity(of) => (of.value, "N·m²"),
            AnyQuantity::SecondMoment(of) => ((of / (mm * mm * mm * mm)).value, "mm⁴"),
            AnyQuantity::SectionModulus(of) => ((of / (mm * mm * mm)).value, "mm³"),
        }
    }

    /// Text with unit, to six significant digits: `1007.58 psi`.
    #[must_use]
    pub fn written(self, units: Units) -> String {
        let (number, unit) = self.size(units);
        if unit.is_empty() {
            significant(number)
        } else {
            format!("{} {unit}", significant(number))
        }
    }
}

/// In customary units.
impl fmt::Display for AnyQuantity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.written(Units::Customary))
    }
}

/// Six significant digits without trailing zeros; whole digits are kept in full.
fn significant(number: f64) -> String {
    let shown = format!("{number:.5e}");
    let exponent = shown.split('e').next_back().and_then(|e| e.parse().ok());
    let exponent: i32 = exponent.unwrap_or(0);
    let places = usize::try_from(5 - exponent).unwrap_or(0).min(17);
    let text = format!("{number:.places$}");
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

macro_rules! amounts {
    ($($kind:ident),*) => {
        $(impl From<$kind> for AnyQuantity {
            fn from(of: $kind) -> AnyQuantity {
                AnyQuantity::$kind(of)
            }
        })*
    };
}

amounts!(
    Area,
    Distance,
    Force,
    LineLoad,
    Moment,
    Pressure,
    Rigidity,
    SecondMoment,
    SectionModulus
);

impl From<Ratio> for AnyQuantity {
    fn from(of: Ratio) -> AnyQuantity {
        AnyQuantity::Number(of.value)
    }
}

impl From<f64> for AnyQuantity {
    fn from(of: f64) -> AnyQuantity {
        AnyQuantity::Number(of)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn six_digits_and_no_idle_zeros() {
        for (number, text) in [
            (1_007.580_17, "1007.58"),
            (0.177_663_1, "0.177663"),
            (7_200.0, "7200"),
            (28_999_999.7, "29000000"),
            (1.25, "1.25"),
            (0.0, "0"),
            (-0.5, "-0.5"),
            (99_999.96, "100000"),
            (f64::INFINITY, "inf"),
        ] {
            assert_eq!(significant(number), text);
        }
    }
}
