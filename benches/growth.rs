//! How time grows with a survey: each case with 1 000 and with 4 000 entries, and the ratio,
//! which stays below 6 where time grows in proportion. Ends with 1 where one does not.
//!
//! `cargo bench --bench growth [-- CASE]`

#![expect(clippy::print_stdout, reason = "a benchmark prints what it measured")]

use std::ffi::OsString;
use std::fmt::Write;
use std::fs;
use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;

use guardrule::cli;

/// Each is timed so often, and the smallest time counts.
const ROUNDS: u32 = 5;

/// Grown fourfold, time may grow so much.
const MOST: f64 = 6.0;

/// A way to make a survey of so many entries, and what is asked of it.
struct Case {
    name: &'static str,
    survey: fn(usize) -> String,
    args: &'static [&'static str],
}

const LAW: [&str; 2] = ["--rules", "us-dwelling-2018"];

const CASES: [Case; 12] = [
    Case {
        name: "footholds",
        survey: |n| one_guard(n, |i| format!("foothold,{} mm high 40 mm deep", 100 + i)),
        args: &["--format", "summary"],
    },
    Case {
        name: "footholds-no-depth",
        survey: |n| one_guard(n, |i| format!("foothold,{} mm high", 100 + i)),
        args: &["--format", "summary"],
    },
    Case {
        name: "footholds-in-a-row",
        survey: |n| {
            one_guard(n, |i| {
                format!(
                    "foothold,{} mm high 40 mm deep {} mm along",
                    150 + i % 700,
                    500 * i
                )
            })
        },
        args: &["--format", "summary"],
    },
    Case {
        name: "footholds-shallow",
        survey: |n| one_guard(n, |i| format!("foothold,{} mm high 15 mm deep", 100 + i)),
        args: &["--format", "summary"],
    },
    Case {
        name: "openings-text",
        survey: |n| one_guard(n, |i| format!("opening,{} mm", 60 + i % 900)),
        args: &LAW,
    },
    Case {
        name: "openings-text-places",
        survey: |n| one_guard(n, |i| format!("opening,{} mm at {} mm", 60 + i % 40, 1 + i)),
        args: &LAW,
    },
    Case {
        name: "balls-text",
        survey: |n| {
            one_guard(n, |i| {
                format!("opening,{} mm ball stops at {i} mm", 60 + i % 40)
            })
        },
        args: &LAW,
    },
    Case {
        name: "heights-json",
        survey: |n| one_guard(n, |i| format!("height,{} mm", 900 + i)),
        args: &["--format", "json"],
    },
    Case {
        name: "heading-row",
        survey: |n| {
            let mut text = "unit,guard".to_owned();
            for i in 0..n {
                write!(text, ",remark of a long kind number {i}").expect("a string takes all");
            }
            text.push_str("\na,g\n");
            text
        },
        args: &["--format", "summary"],
    },
    Case {
        name: "ids-in-rules",
        survey: |n| {
            let ids: Vec<String> = (0..n).map(|i| format!("town-{i}")).collect();
            format!(
                "guard,item,reading\n,rules,{}\ng,height,36 in\n",
                ids.join("; ")
            )
        },
        args: &["--format", "summary"],
    },
    Case {
        name: "guards-text",
        survey: |n| {
            let mut text = "unit,guard,item,reading\n".to_owned();
            for i in 0..n {
                let (height, gap) = (900 + i % 200, 90 + i % 30);
                write!(
                    text,
                    "flat {i},rail,height,{height} mm\nflat {i},rail,opening,{gap} mm\n"
                )
                .expect("a string takes all");
            }
            text
        },
        args: &[],
    },
    Case {
        name: "faults",
        survey: |n| one_guard(n, |i| format!("heigth,{i}")),
        args: &["--format", "summary"],
    },
];

fn one_guard(n: usize, entry: fn(usize) -> String) -> String {
    let mut text = "guard,item,reading\ng,place,landing\ng,drop,9 ft\n".to_owned();
    for i in 0..n {
        writeln!(text, "g,{}", entry(i)).expect("a string takes all");
    }
    text
}

fn main() -> ExitCode {
    let wanted = std::env::args().skip(1).find(|arg| arg != "--bench");
    let folder = tempfile::tempdir().expect("a folder");
    let none = timed(
        folder.path(),
        "guard,item,reading\ng,height,36 in\n",
        &["--format", "summary"],
    );
    println!(
        "{:22} {:>9} {:>9} {:>7}",
        "case", "1000 ms", "4000 ms", "ratio"
    );
    let mut grew = false;
    for case in CASES {
        if wanted
            .as_ref()
            .is_some_and(|wanted| !case.name.contains(wanted.as_str()))
        {
            continue;
        }
        // what a check of one reading takes is no growth
        let times = [1_000, 4_000]
            .map(|n| (timed(folder.path(), &(case.survey)(n), case.args) - none).max(1e-6));
        let ratio = times[1] / times[0];
        grew |= ratio >= MOST;
        println!(
            "{:22} {:9.2} {:9.2} {ratio:7.2}",
            case.name,
            times[0] * 1e3,
            times[1] * 1e3
        );
    }
    if grew {
        ExitCode::FAILURE
    } else {
        ExitCode::SUCCESS
    }
}

/// The smallest time of a check, in seconds.
fn timed(folder: &Path, survey: &str, args: &[&str]) -> f64 {
    let path = folder.join("s.csv");
    fs::write(&path, survey).expect("written");
    let mut all: Vec<OsString> = vec!["guardrule".into(), "check".into(), path.into()];
    all.extend(args.iter().map(OsString::from));
    let mut least = f64::INFINITY;
    for _ in 0..ROUNDS {
        let (mut out, mut err) = (Vec::new(), Vec::new());
        let start = Instant::now();
        let mut terminal = cli::Terminal::new(&mut out, &mut err, &b""[..]);
        let exit = cli::run(all.clone(), &mut terminal);
        least = least.min(start.elapsed().as_secs_f64());
        assert!(exit.code() <= 3, "a check ends with a status of its own");
    }
    least
}
