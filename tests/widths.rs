//! How wide the program writes in a real terminal of 40 to 100 columns: no line is longer,
//! whatever is asked.

use std::io::Read;
use std::path::Path;

use portable_pty::CommandBuilder;
use portable_pty::PtySize;
use portable_pty::native_pty_system;

const PROGRAM: &str = env!("CARGO_BIN_EXE_guardrule");

const HOUSE: &str = "tests/reports/surveys/house.csv";
const FLATS: &str = "tests/reports/surveys/twelve-flats.csv";

/// What people ask in a terminal.
const COMMANDS: &[&[&str]] = &[
    &["check", HOUSE, "--rules", "us-dwelling-2018"],
    &["check", FLATS],
    &[
        "check",
        "tests/reports/surveys/one-landing.csv",
        "--full",
        "--explain",
    ],
    &["check", FLATS, "--format", "actions"],
    // what is wrong with a file
    &[
        "check",
        "tests/corpus/surveys/several-faults-in-a-table.csv",
    ],
    &["check", "tests/corpus/surveys/several-faults.csv"],
    &["check", "tests/corpus/spreadsheets/dates.xlsx"],
    &["compare", HOUSE, HOUSE],
    &["remedy", HOUSE, "--rules", "us-dwelling-2018"],
    &["rules", "list"],
    &["rules", "list", "--full"],
    &["rules", "find", "rented flat", "ohio"],
    &["rules", "show", "small-child-advice"],
    &["rules", "diff", "us-dwelling-2018", "us-dwelling-2021"],
    &["rules", "test", "us-crib-slats"],
    &["items"],
    &["items", "stair triangle"],
    &["items", "heigth"],
    &["opening", "triangle 7 3/4 x 10 in", "--ball", "6 in"],
    &["opening", "cable 3 in spacing 1/8 in diameter 36 in free"],
    &[
        "layout",
        "--clear",
        "6 ft",
        "--baluster",
        "1 1/2 in",
        "--limit",
        "4 in",
    ],
];

/// What a command writes in a terminal of so many columns, without its styles.
fn written(args: &[&str], columns: u16) -> String {
    let size = PtySize {
        rows: 50,
        cols: columns,
        pixel_width: 0,
        pixel_height: 0,
    };
    let pair = native_pty_system().openpty(size).expect("a terminal");
    let mut command = CommandBuilder::new(PROGRAM);
    command.args(args);
    command.cwd(Path::new(env!("CARGO_MANIFEST_DIR")));
    command.env("TERM", "xterm-256color");
    let mut child = pair.slave.spawn_command(command).expect("it starts");
    drop(pair.slave);
    let mut reader = pair.master.try_clone_reader().expect("readable");
    let mut bytes = Vec::new();
    // a terminal whose other end is gone gives an error and no end
    let mut piece = [0; 4096];
    while let Ok(count @ 1..) = reader.read(&mut piece) {
        bytes.extend_from_slice(&piece[..count]);
    }
    let status = child.wait().expect("it ends");
    assert!(status.exit_code() <= 3, "{args:?}");
    without_styles(&String::from_utf8(bytes).expect("UTF-8"))
}

/// The text that is seen: styles (`ESC [ … m`) away.
fn without_styles(text: &str) -> String {
    let mut seen = String::new();
    let mut parts = text.split("\u{1b}[");
    seen.push_str(parts.next().unwrap_or_default());
    for part in parts {
        let (style, rest) = part.split_once('m').expect("nothing but styles is written");
        assert!(
            style
                .bytes()
                .all(|byte| byte.is_ascii_digit() || byte == b';'),
            "{style:?} is no style"
        );
        seen.push_str(rest);
    }
    seen
}

#[test]
fn no_line_is_longer_than_the_terminal_is_wide() {
    let mut long = Vec::new();
    let mut lines = 0;
    for columns in [40, 60, 80, 100] {
        for args in COMMANDS {
            let text = written(args, columns);
            assert!(text.lines().count() > 2, "{args:?} at {columns}: {text}");
            for line in text.lines() {
                lines += 1;
                let wide = textwrap::core::display_width(line.trim_end_matches('\r'));
                if wide > usize::from(columns) {
                    long.push(format!("{columns}: {wide}: {args:?}: {line}"));
                }
            }
        }
    }
    assert!(long.is_empty(), "{}", long.join("\n"));
    assert!(lines > 5_000, "{lines} lines");
}

#[test]
fn the_width_of_the_terminal_is_used() {
    let widest = |columns| {
        let text = written(COMMANDS[0], columns);
        let lines = text
            .lines()
            .map(|line| textwrap::core::display_width(line.trim_end()));
        lines.max().unwrap_or(0)
    };
    let found = [40, 60, 80, 100].map(widest);
    for (wide, columns) in found.into_iter().zip([40, 60, 80, 100]) {
        assert!(wide > columns - 8, "{wide} of {columns} columns are used");
    }
}
