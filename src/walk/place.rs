//! Which guard is spoken of, and what the next one may be called.

use crate::input::folded;
use crate::survey::Guard;

/// Building, unit and guard by their names; a blank one is none.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct GuardName {
    /// The building.
    pub building: String,
    /// The unit.
    pub unit: String,
    /// The guard.
    pub guard: String,
}

impl GuardName {
    /// Where this guard is.
    pub(super) fn of(guard: &Guard) -> GuardName {
        GuardName {
            building: guard.building.to_string(),
            unit: guard.unit.to_string(),
            guard: guard.name.to_string(),
        }
    }

    /// As names are compared: case and runs of spaces do not count.
    pub(super) fn compared(&self) -> GuardName {
        GuardName {
            building: folded(&self.building),
            unit: folded(&self.unit),
            guard: folded(&self.guard),
        }
    }

    /// The place of what holds for the whole unit.
    pub(super) fn whole_unit(&self) -> GuardName {
        GuardName {
            guard: String::new(),
            ..self.clone()
        }
    }

    /// Building, unit and guard for a reader: `2A, balcony`.
    #[must_use]
    pub fn says(&self) -> String {
        let names = [&self.building, &self.unit, &self.guard];
        let named: Vec<&str> = names
            .into_iter()
            .map(String::as_str)
            .filter(|name| !name.is_empty())
            .collect();
        named.join(", ")
    }

    /// The place that a person names: `balcony`, `2A, balcony`,
    /// `north block, 2A, balcony`; what is left out is as at the last guard.
    pub(super) fn named(text: &str, last: &GuardName) -> Option<GuardName> {
        let parts: Vec<&str> = text.split(',').map(str::trim).collect();
        let place = match parts.as_slice() {
            [guard] => GuardName {
                guard: (*guard).to_owned(),
                ..last.clone()
            },
            [unit, guard] => GuardName {
                building: last.building.clone(),
                unit: (*unit).to_owned(),
                guard: (*guard).to_owned(),
            },
            [building, unit, guard] => GuardName {
                building: (*building).to_owned(),
                unit: (*unit).to_owned(),
                guard: (*guard).to_owned(),
            },
            _ => return None,
        };
        (!place.guard.is_empty()).then_some(place)
    }

    /// The place that follows the last one: `=` counts the guard on, `=,` the
    /// unit; `=3B,` and `=3B, stair` name it.
    pub(super) fn following(text: &str, last: &GuardName) -> Option<GuardName> {
        let text = text.trim();
        if text.is_empty() {
            return Some(GuardName {
                guard: counted_on(&last.guard),
                ..last.clone()
            });
        }
        let Some((unit, guard)) = text.rsplit_once(',') else {
            return GuardName::named(text, last);
        };
        let guard = match guard.trim() {
            "" => last.guard.as_str(),
            guard => guard,
        };
        match unit.trim() {
            "" => Some(GuardName {
                unit: counted_on(&last.unit),
                guard: guard.to_owned(),
                ..last.clone()
            }),
            unit => GuardName::named(&format!("{unit}, {guard}"), last),
        }
    }
}

/// `stair 3` after `stair 2`, and `stair 2` after `stair`; `1B` after `1A` is not guessed.
pub(super) fn counted_on(name: &str) -> String {
    let stem = name.trim_end_matches(|c: char| c.is_ascii_digit());
    let digits = &name[stem.len()..];
    match digits.parse::<u64>() {
        Ok(number) => {
            let next = number.saturating_add(1).to_string();
            format!("{stem}{next:0>width$}", width = digits.len())
        }
        Err(_) if name.is_empty() => "2".to_owned(),
        Err(_) => format!("{name} 2"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn place(unit: &str, guard: &str) -> GuardName {
        GuardName {
            building: String::new(),
            unit: unit.to_owned(),
            guard: guard.to_owned(),
        }
    }

    #[test]
    fn what_is_left_out_is_as_at_the_last_guard() {
        let last = place("2A", "landing");
        assert_eq!(GuardName::named("stair", &last), Some(place("2A", "stair")));
        assert_eq!(
            GuardName::named("2B, stair", &last),
            Some(place("2B", "stair"))
        );
        assert_eq!(
            GuardName::named(" , stair", &last),
            Some(place("", "stair"))
        );
        assert_eq!(GuardName::named("2B,", &last), None);
    }

    #[test]
    fn guards_and_units_are_counted_on() {
        let last = place("Flat 9", "stair");
        let next = |text| GuardName::following(text, &last);
        assert_eq!(next(""), Some(place("Flat 9", "stair 2")));
        assert_eq!(next(","), Some(place("Flat 10", "stair")));
        assert_eq!(next("attic,"), Some(place("attic", "stair")));
        assert_eq!(next("attic, landing"), Some(place("attic", "landing")));
        assert_eq!(next("landing"), Some(place("Flat 9", "landing")));
        assert_eq!(counted_on("007"), "008");
    }
}
