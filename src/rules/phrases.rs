//! Conditions and bounds in a reader's words.

use crate::rules::Amendment;
use crate::rules::Bounds;
use crate::rules::Condition;
use crate::rules::Entraps;
use crate::rules::LeaveOut;
use crate::rules::Limit;
use crate::rules::LoadBasis;
use crate::rules::LoadDemand;
use crate::rules::Test;

impl Condition {
    /// `drop more than 30 in`, `place is landing or deck`.
    #[must_use]
    pub fn says(&self) -> String {
        let name = self.item.name();
        match &self.test {
            Test::Age(bounds) => format!("{name} {}", bounds.says(ToString::to_string)),
            Test::Count(bounds) => format!("{name} {}", bounds.says(ToString::to_string)),
            Test::Length(bounds) => format!("{name} {}", bounds.says(Limit::written)),
            Test::NoneOf(words) => format!("{name} is not {}", words.join(" or ")),
            Test::OneOf(words) => format!("{name} is {}", words.join(" or ")),
            Test::Years(bounds) => format!("{name} {}", bounds.says(ToString::to_string)),
        }
    }
}

impl Amendment {
    /// What it asks less than before: `IT ASKS LESS (height: at least 30 in in place of at
    /// least 36 in)`; `None` where it asks as much.
    #[must_use]
    pub fn says_less(&self) -> Option<String> {
        let less = self.asks_less.join("; ");
        (!less.is_empty()).then(|| format!("IT ASKS LESS ({less})"))
    }
}

impl Entraps {
    /// `3 1/2 x 6.2 in probe while stopping a 9 in ball`
    #[must_use]
    pub fn says(&self) -> String {
        format!(
            "{} probe while stopping a {} ball",
            self.written, self.head.written
        )
    }
}

impl LoadDemand {
    /// `200 lbf at any point along the top, any direction; …`
    #[must_use]
    pub fn says(&self) -> String {
        let mut parts = Vec::new();
        let mut add = |text: Option<&str>, what: &str| {
            parts.extend(text.map(|text| format!("{text} {what}")));
        };
        let point = self.concentrated.as_ref().map(|load| load.written.as_str());
        add(point, "at the worst point along the top");
        let line = self.line.as_ref().map(|load| load.written.as_str());
        add(line, "along the top");
        let down = self.line_down.as_ref().map(|load| load.written.as_str());
        add(down, "straight down along the top");
        let patch = self
            .infill
            .as_ref()
            .map(|patch| patch.force.written.as_str());
        add(patch, "on the infill");
        let pressure = self.infill_pressure.as_ref();
        add(
            pressure.map(|load| load.written.as_str()),
            "on all of the infill",
        );
        let basis = match self.basis {
            LoadBasis::Allowable => "service loads",
            LoadBasis::Characteristic => {
                "characteristic loads, for which no strength is worked out here"
            }
        };
        format!(
            "{}, {}, each for itself ({basis})",
            parts.join(", "),
            self.direction.says()
        )
    }
}

impl LeaveOut {
    /// The sentence, with its condition before it where there is one.
    #[must_use]
    pub fn conditional(&self) -> String {
        if self.when.is_empty() {
            return self.says.clone();
        }
        format!("If {}: {}", all_of(&self.when), self.says)
    }
}

/// Conditions that must all hold, in a reader's words.
#[must_use]
pub fn all_of(conditions: &[Condition]) -> String {
    let each: Vec<String> = conditions.iter().map(Condition::says).collect();
    each.join(" and ")
}

impl Limit {
    /// As the file writes it.
    fn written(&self) -> String {
        self.written.clone()
    }
}

impl<T> Bounds<T> {
    /// `at least 34 in and at most 38 in`, each value as `text` gives it.
    pub fn says(&self, text: impl Fn(&T) -> String) -> String {
        let parts = [
            (&self.at_least, "at least"),
            (&self.at_most, "at most"),
            (&self.above, "more than"),
            (&self.below, "less than"),
        ];
        let there = parts.iter().filter_map(|(bound, word)| {
            let bound = bound.as_ref()?;
            Some(format!("{word} {}", text(bound)))
        });
        there.collect::<Vec<_>>().join(" and ")
    }
}
