//! A result with the lines that lead to it, so that it can be checked by hand.

use crate::statics::amount::AnyQuantity;
use crate::statics::amount::Units;
use crate::statics::basis::Provenance;

/// What follows a symbol that is raised to a power.
const POWERS: &str = "²³⁴^";

/// One line of a calculation: symbol, formula, what was put in, what came out.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What is worked out: `M`.
    pub symbol: &'static str,
    /// How: `F·a`, in the symbols of the inputs.
    pub formula: &'static str,
    /// What was put in, by symbol.
    pub inputs: Vec<(&'static str, AnyQuantity)>,
    /// What came out.
    pub result: AnyQuantity,
    /// Where the formula comes from.
    pub basis: Provenance,
    /// Whether the formula holds in inches and pounds only.
    pub form: UnitForm,
}

/// Whether a formula asks for certain units.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum UnitForm {
    /// Holds in any consistent units.
    AnyUnits,
    /// Fitted to numbers in inches, pounds and psi.
    InchPound,
}

impl Line {
    /// The whole line: `M = F·a = 200 lb·36 in = 7200 lb·in`.
    ///
    /// A formula in inches and pounds is written so whatever is asked, and its
    /// result in the other units after it.
    #[must_use]
    pub fn written(&self, units: Units) -> String {
        let inside = match self.form {
            UnitForm::AnyUnits => units,
            UnitForm::InchPound => Units::Customary,
        };
        let result = self.result.written(inside);
        let inserted = self.inserted(inside);
        let mut text = format!("{} = {}", self.symbol, self.formula);
        if inserted != self.formula && inserted != result {
            text = format!("{text} = {inserted}");
        }
        text = format!("{text} = {result}");
        let other = self.result.written(units);
        if other == result {
            text
        } else {
            format!("{text} ({other})")
        }
    }

    /// The formula with every symbol replaced by its input.
    #[must_use]
    pub fn inserted(&self, units: Units) -> String {
        let mut text = String::new();
        let mut word = String::new();
        for c in self.formula.chars().chain(['\n']) {
            let in_name = c.is_alphanumeric() && !POWERS.contains(c);
            if in_name || "_'∥⊥".contains(c) {
                word.push(c);
                continue;
            }
            let input = self.inputs.iter().find(|(symbol, _)| *symbol == word);
            match input {
                Some((_, amount)) => {
                    let amount = amount.written(units);
                    if POWERS.contains(c) && amount.contains(' ') {
                        text.push_str(&format!("({amount})"));
                    } else {
                        text.push_str(&amount);
                    }
                }
                None => text.push_str(&word),
            }
            word.clear();
            if c != '\n' {
                text.push(c);
            }
        }
        text
    }
}

/// A value with the lines that lead to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Worked<T> {
    /// The value.
    pub value: T,
    /// The lines, the first first.
    pub lines: Vec<Line>,
}

impl<T: Copy + Into<AnyQuantity>> Worked<T> {
    /// A value from one formula that holds in any units.
    pub fn new(
        symbol: &'static str,
        formula: &'static str,
        inputs: &[(&'static str, AnyQuantity)],
        value: T,
        basis: Provenance,
    ) -> Worked<T> {
        let line = Line {
            symbol,
            formula,
            inputs: inputs.to_vec(),
            result: value.into(),
            basis,
            form: UnitForm::AnyUnits,
        };
        Worked {
            value,
            lines: vec![line],
        }
    }

    /// The same formula holds in inches and pounds only.
    #[must_use]
    pub fn in_inch_pound(mut self) -> Worked<T> {
        for line in &mut self.lines {
            line.form = UnitForm::InchPound;
        }
        self
    }
}

impl<T> Worked<T> {
    /// Puts the lines of an earlier result before these.
    #[must_use]
    pub fn after<U>(mut self, earlier: Worked<U>) -> Worked<T> {
        let own = std::mem::replace(&mut self.lines, earlier.lines);
        self.lines.extend(own);
        self
    }

    /// Another value from the same lines, as one of several results.
    pub fn map<U>(self, other: impl FnOnce(T) -> U) -> Worked<U> {
        Worked {
            value: other(self.value),
            lines: self.lines,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantities::inches;
    use crate::quantities::pounds;

    #[test]
    fn a_line_reads_as_one_would_write_it() {
        let (force, arm) = (pounds(200.0), inches(36.0));
        let inputs = [("F", force.into()), ("a", arm.into())];
        let moment = Worked::new("M", "F·a", &inputs, force * arm, Provenance::MECHANICS);
        let line = &moment.lines[0];
        assert_eq!(
            line.written(Units::Customary),
            "M = F·a = 200 lb·36 in = 7200 lb·in"
        );
        assert_eq!(
            line.written(Units::Metric),
            "M = F·a = 889.644 N·914.4 mm = 813.491 N·m"
        );
        let inputs = [("b", inches(1.5).into()), ("d", inches(3.5).into())];
        let modulus = inches(1.5) * inches(3.5) * inches(3.5) / 6.0;
        let section = Worked::new("S", "b·d²/6", &inputs, modulus, Provenance::MECHANICS);
        assert_eq!(
            section.lines[0].written(Units::Customary),
            "S = b·d²/6 = 1.5 in·(3.5 in)²/6 = 3.0625 in³"
        );
        let fitted = moment.in_inch_pound();
        assert_eq!(
            fitted.lines[0].written(Units::Metric),
            "M = F·a = 200 lb·36 in = 7200 lb·in (813.491 N·m)"
        );
    }
}
