//! What several guards are called together: what their names share is said once.

use crate::report::reader;
use crate::report::told::guard::GuardTold;

/// Guards that are spoken of together.
pub(in crate::report) struct SharedNames {
    /// All of them: `Back stair, first landing and second landing`, `1A and 1B, balcony`.
    pub(in crate::report) together: String,
    /// Each for itself beside the others: `first landing`, `1A`.
    pub(in crate::report) each: Vec<String>,
}

/// What these guards are called together.
pub(in crate::report) fn shared_names(guards: &[&GuardTold]) -> SharedNames {
    let same = |of: fn(&GuardTold) -> &str| guards.windows(2).all(|two| of(two[0]) == of(two[1]));
    let all = |of: fn(&GuardTold) -> &str| -> Vec<String> {
        guards.iter().map(|guard| of(guard).to_owned()).collect()
    };
    let whole = all(|guard| &guard.name);
    let (Some(first), true) = (guards.first(), guards.len() > 1) else {
        return SharedNames {
            together: reader::listed(&whole),
            each: whole,
        };
    };
    let in_one_building = same(|guard| &guard.building);
    let in_one_unit = in_one_building && same(|guard| &guard.unit);
    let before = first.name.strip_suffix(first.alone.as_str()).unwrap_or("");
    if in_one_unit && !before.is_empty() {
        let each = all(|guard| &guard.alone);
        return SharedNames {
            together: format!("{before}{}", reader::listed(&each)),
            each,
        };
    }
    let units_alone = in_one_building && first.building.is_empty();
    let has_units = guards.iter().all(|guard| !guard.unit.is_empty());
    if units_alone && has_units && same(|guard| &guard.alone) {
        let each = all(|guard| &guard.unit);
        return SharedNames {
            together: format!("{}, {}", reader::listed(&each), first.alone),
            each,
        };
    }
    SharedNames {
        together: reader::listed(&whole),
        each: whole,
    }
}
