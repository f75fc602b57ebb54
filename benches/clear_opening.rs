//! How long the clear opening of an outline takes.
//!
//! `cargo bench --bench clear_opening -- POLYGONS.json [OUT.json]` times every
//! outline of {"sets": [{"name": ..., "polygons": [[[x, y], ...], ...]}]} and writes
//! {"sets": [{"name": ..., "microseconds": [...], "diameter": [...]}]}: the smallest
//! time of an outline, in the order of the file. Without a file it times spirals.

#![expect(clippy::print_stdout, reason = "a benchmark prints what it measured")]

use std::fs;
use std::hint::black_box;
use std::time::Instant;

use guardrule::geometry::Corner;
use guardrule::geometry::Polygon;
use guardrule::geometry::clear_opening;
use serde_json::Value;
use serde_json::json;

/// Seconds for which one outline is timed, and rounds at least.
const SECONDS: f64 = 0.02;
const ROUNDS: u32 = 7;

#[path = "../tests/geometry/spiral.rs"]
mod outlines;

use outlines::spiral;

fn main() {
    let mut args = std::env::args().skip(1).filter(|arg| arg != "--bench");
    let sets = match args.next() {
        Some(path) => read(&path),
        None => [100, 1_000, 10_000]
            .map(|corners| (format!("spiral-{corners}"), vec![wound(corners)]))
            .into(),
    };
    let mut written = Vec::new();
    println!(
        "{:14} {:>8} {:>12} {:>12} {:>12} {:>10}",
        "set", "outlines", "median µs", "least µs", "most µs", "widest gap"
    );
    for (name, outlines) in sets {
        let mut times = Vec::new();
        let mut diameters = Vec::new();
        let mut widest = 0.0_f64;
        for outline in &outlines {
            let ball = clear_opening(outline);
            widest = widest.max(ball.relative_gap());
            times.push(timed(outline));
            diameters.push(ball.lower_mm);
        }
        let mut sorted = times.clone();
        sorted.sort_by(f64::total_cmp);
        println!(
            "{name:14} {:8} {:12.2} {:12.2} {:12.2} {widest:10.1e}",
            outlines.len(),
            sorted[sorted.len() / 2],
            sorted[0],
            sorted[sorted.len() - 1]
        );
        written.push(json!({"name": name, "microseconds": times, "diameter": diameters}));
    }
    if let Some(path) = args.next() {
        fs::write(path, json!({"sets": written}).to_string()).expect("written");
    }
}

/// The smallest time in microseconds; short work is done many times over.
fn timed(outline: &Polygon) -> f64 {
    let start = Instant::now();
    black_box(clear_opening(black_box(outline)));
    let once = start.elapsed().as_secs_f64().max(1e-7);
    let copies = if once < 1e-4 { 200 } else { 1 };
    let mut least = f64::INFINITY;
    let whole = Instant::now();
    let mut round = 0;
    while round < ROUNDS || whole.elapsed().as_secs_f64() < SECONDS {
        let start = Instant::now();
        for _ in 0..copies {
            black_box(clear_opening(black_box(outline)));
        }
        least = least.min(start.elapsed().as_secs_f64() / f64::from(copies));
        round += 1;
    }
    least * 1e6
}

fn read(path: &str) -> Vec<(String, Vec<Polygon>)> {
    let text = fs::read_to_string(path).expect("the file of outlines can be read");
    let json: Value = serde_json::from_str(&text).expect("JSON");
    let number = |value: &Value| value.as_f64().expect("a number");
    let corner = |value: &Value| Corner {
        x_mm: number(&value[0]),
        y_mm: number(&value[1]),
    };
    let list = |value: &Value| value.as_array().expect("a list").clone();
    let outline = |value: &Value| {
        let corners = list(value).iter().map(corner).collect();
        Polygon::new(corners).expect("a simple outline")
    };
    let set = |set: &Value| {
        let name = set["name"].as_str().expect("a name").to_owned();
        (name, list(&set["polygons"]).iter().map(outline).collect())
    };
    list(&json["sets"]).iter().map(set).collect()
}

fn wound(corners: u32) -> Polygon {
    Polygon::new(spiral(corners)).expect("a simple outline")
}
