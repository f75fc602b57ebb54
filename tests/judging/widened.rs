//! What must hold of the load path whatever is written: units, what is left out, levers.

use proptest::prelude::*;
use serde_json::Value;

use crate::judging::load_path::WORKED;
use crate::judging::load_path::link;
use crate::judging::load_path::load_finding;

/// All ranges and verdicts of the links, without what is written in a unit.
fn figures(found: &Value) -> Vec<(String, f64, f64, String)> {
    let links = found["links"].as_array().expect("links");
    links
        .iter()
        .map(|link| {
            let end = |end: &str| link["ratio"][end].as_f64().unwrap_or(-1.0);
            let name = format!("{} {}", link["link"], link["case"]);
            (name, end("low"), end("high"), link["verdict"].to_string())
        })
        .collect()
}

#[test]
fn changing_units_changes_nothing() {
    let metric: Vec<(&str, &str)> = WORKED
        .iter()
        .map(|(item, reading)| {
            let metric = match *item {
                "height" => "914.4 mm",
                "post section" => "88.9 x 88.9 mm",
                "post spacing" => "1828.8 mm",
                "post fasteners" => "2 x 12.7 mm",
                "fastener spacing" => "127 mm",
                "rim depth" => "234.95 mm",
                "framing thickness" => "38.1 mm",
                "fastener depth" => "50.8 mm",
                "decking thickness" => "2.54 cm",
                "washer size" => "34.925 mm",
                "rail section" => "88.9 x 38.1 mm",
                "baluster section" => "38.1 x 38.1 mm",
                "baluster spacing" => "120.65 mm",
                "baluster length" => "812.8 mm",
                _ => reading,
            };
            (*item, metric)
        })
        .collect();
    let (one, other) = (
        figures(&load_finding(WORKED)),
        figures(&load_finding(&metric)),
    );
    assert_eq!(one.len(), other.len());
    for (a, b) in one.iter().zip(&other) {
        assert_eq!((&a.0, &a.3), (&b.0, &b.3));
        assert!(
            (a.1 - b.1).abs() < 1e-9 && (a.2 - b.2).abs() < 1e-9,
            "{a:?} {b:?}"
        );
    }
}

/// Leaving an item out never turns a link that is not measured into one that
/// shows no shortfall, nor the finding into `meets`; and a ratio's range only
/// widens.
#[test]
fn a_missing_item_only_widens() {
    let whole = figures(&load_finding(WORKED));
    let mut widened = 0;
    for (item, _) in WORKED {
        let kept: Vec<(&str, &str)> = WORKED
            .iter()
            .filter(|(one, _)| one != item)
            .copied()
            .collect();
        let found = load_finding(&kept);
        assert_ne!(found["verdict"], "meets", "without {item}");
        for (name, low, high, verdict) in figures(&found) {
            let Some(before) = whole.iter().find(|one| one.0 == name) else {
                assert_ne!(verdict, "\"meets\"", "without {item}: {name}");
                continue;
            };
            if low < 0.0 || before.1 < 0.0 {
                assert_ne!(verdict, "\"meets\"", "without {item}: {name}");
                continue;
            }
            let holds = low <= before.1 + 1e-9 && before.2 <= high + 1e-9;
            assert!(
                holds,
                "without {item}: {name}: {low} to {high}, was {before:?}"
            );
            widened += usize::from(low < before.1 - 1e-9 || high > before.2 + 1e-9);
        }
    }
    assert!(widened >= 10, "{widened}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn a_longer_lever_never_lowers_demand(
        height in 30_u32..60, more in 1_u32..20, depth in 0_u32..6, deeper in 0_u32..4,
    ) {
        let pull = |height: u32, depth: u32| {
            let (height, depth) = (format!("{height} in"), format!("{depth} in"));
            let mut rows = WORKED.to_vec();
            rows.retain(|(item, _)| !["height", "fastener depth"].contains(item));
            rows.push(("height", &height));
            rows.push(("fastener depth", &depth));
            let found = load_finding(&rows);
            let of = |kind: &str, case: &str| {
                link(&found, kind, case)["demand"]["high"].as_f64().unwrap()
            };
            (of("post", "bending"), of("post fixing", "steel"))
        };
        let (short, long) = (pull(height, depth), pull(height + more, depth + deeper));
        prop_assert!(long.0 >= short.0 && long.1 >= short.1, "{short:?} {long:?}");
    }

    #[test]
    fn a_bigger_screw_never_lowers_what_it_holds(
        small in 0_usize..6, bigger in 0_usize..6, thread in 2_u32..12, more in 0_u32..6,
    ) {
        const LAGS: [&str; 6] = ["1/4", "5/16", "3/8", "7/16", "1/2", "5/8"];
        let holds = |lag: usize, quarters: u32| {
            let fasteners = format!("2 x {} in x 6 in", LAGS[lag]);
            let thread = format!("{quarters}/4 in");
            let thread = if quarters.is_multiple_of(4) { format!("{} in", quarters / 4) } else { thread };
            let rows = [
                ("height", "36 in"),
                ("post fastening", "lag screws"),
                ("post fasteners", fasteners.as_str()),
                ("thread in framing", thread.as_str()),
                ("fastener spacing", "5 in"),
                ("fastened to", "rim board"),
            ];
            let found = load_finding(&rows);
            link(&found, "post fixing", "pulled out")["capacity"]["low"].as_f64().unwrap()
        };
        let (low, high) = (small.min(bigger), small.max(bigger));
        // the longer tip of a thicker lag takes from a short thread
        let thread = thread.max(6);
        prop_assert!(holds(high, thread) >= holds(low, thread) * 0.999_999 || thread < 8);
        prop_assert!(holds(low, thread + more) >= holds(low, thread));
    }
}
