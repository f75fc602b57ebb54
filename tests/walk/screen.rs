//! The walk as it is seen: on a terminal, through a pipe, on a narrow screen.

use std::fs;
use std::io::Read;
use std::io::Write;
use std::num::NonZeroU16;
use std::path::Path;
use std::sync::Arc;
use std::sync::Mutex;
use std::thread;
use std::time::Duration;
use std::time::Instant;

use guardrule::cli;
use portable_pty::CommandBuilder;
use portable_pty::PtySize;
use portable_pty::native_pty_system;

use crate::walk::support::PROGRAM;
use crate::walk::support::Piped;
use crate::walk::support::report;

const ROWS: u16 = 200;

/// A terminal with a walk in it.
struct Screen {
    shown: Arc<Mutex<vt100::Parser>>,
    raw: Arc<Mutex<Vec<u8>>>,
    keys: Box<dyn Write + Send>,
    child: Box<dyn portable_pty::Child + Send + Sync>,
}

impl Screen {
    fn start(folder: &Path, columns: u16, term: &str, args: &[&str]) -> Screen {
        let size = PtySize {
            rows: ROWS,
            cols: columns,
            pixel_width: 0,
            pixel_height: 0,
        };
        let pair = native_pty_system().openpty(size).expect("a terminal");
        let mut command = CommandBuilder::new(PROGRAM);
        command.arg("walk");
        command.args(args);
        command.cwd(folder);
        command.env("TERM", term);
        let child = pair.slave.spawn_command(command).expect("it starts");
        drop(pair.slave);
        let shown = Arc::new(Mutex::new(vt100::Parser::new(
            NonZeroU16::new(ROWS).expect("rows"),
            NonZeroU16::new(columns).expect("columns"),
            0,
        )));
        let raw = Arc::new(Mutex::new(Vec::new()));
        let mut reader = pair.master.try_clone_reader().expect("readable");
        let (seen, bytes) = (Arc::clone(&shown), Arc::clone(&raw));
        let master = pair.master;
        let keys = master.take_writer().expect("writable");
        thread::spawn(move || {
            let _master = master;
            let mut buffer = [0; 4096];
            while let Ok(count @ 1..) = reader.read(&mut buffer) {
                seen.lock().expect("sound").process(&buffer[..count]);
                bytes.lock().expect("sound").extend(&buffer[..count]);
            }
        });
        Screen {
            shown,
            raw,
            keys,
            child,
        }
    }

    /// The lines up to where it waits, once it does.
    fn waits(&self) -> Vec<String> {
        let until = Instant::now() + Duration::from_secs(60);
        loop {
            {
                let parser = self.shown.lock().expect("sound");
                let screen = parser.screen();
                let (row, column) = screen.cursor_position();
                let width = screen.size().1;
                let lines: Vec<String> = screen.rows(0, width.get()).collect();
                let at = usize::from(row);
                if column == 2 && lines[at].trim_end() == ">" {
                    return lines[..at].to_vec();
                }
            }
            assert!(Instant::now() < until, "it does not wait for a line");
            thread::sleep(Duration::from_millis(2));
        }
    }

    /// Types a line, and waits for the next question; what the screen says then.
    fn line(&mut self, keys: &str) -> String {
        self.waits();
        // a cleared screen shows what comes next, and nothing of before
        self.shown.lock().expect("sound").process(b"\x1b[2J\x1b[H");
        write!(self.keys, "{keys}\r").expect("typed");
        self.waits().join("\n")
    }

    fn end(mut self, keys: &str) -> u32 {
        self.waits();
        write!(self.keys, "{keys}").expect("typed");
        self.child.wait().expect("it ends").exit_code()
    }
}

const BY_HAND: &str = "unit,guard,item,reading,note\n,,rules,us-dwelling-2018,\n\
    ,,date,2026-05-04,\n,,by,R. T.,\n\
    ,landing,place,landing,\n,landing,drop,4 ft 4 1/4 in,\n,landing,height,34 5/8 in,\n\
    ,landing,infill,balusters,\n,landing,opening,4 in ball stops everywhere,\n\
    ,deck,place,deck,\n,deck,drop,20 in,\n\
    2A,balcony,place,balcony,\n2A,balcony,drop,over 8 ft,\n2A,balcony,height,\"not reached\",a dog\n\
    2A,balcony,infill,cables,\n2A,balcony,opening,4 in ball passes pushed by hand,\n\
    2A,balcony,bottom gap,2 in,\n";

/// Three guards on a terminal, with typing errors, an unlikely value, going back
/// and correcting: the report is that of the survey written by hand.
#[test]
fn three_guards_on_a_terminal_with_mistakes() {
    let folder = tempfile::tempdir().expect("a folder");
    let args = ["s.csv", "--rules", "us-dwelling-2018", "--no-guidance"];
    let mut screen = Screen::start(folder.path(), 80, "xterm-256color", &args);
    // the left arrow and a deletion: the editor's own
    screen.line("2026-05-044\u{7f}");
    screen.line("R. T.");
    screen.line("");
    screen.line("landing");
    assert!(screen.line("lamding").contains("Not taken:"));
    screen.line("l");
    assert!(screen.line("9 ft 12 yards").contains("Not taken:"));
    screen.line("8 ft");
    assert!(screen.line("back").contains("So far: 8 ft"));
    screen.line("4 ft 4 1/4 in");
    assert!(screen.line("height: 12 ft").contains("Is it right?"));
    screen.line("n");
    let said = screen.line("34 5/8 in");
    assert!(
        said.contains("Falls short (building rules): height: 34 5/8 in"),
        "{said}"
    );
    screen.line("infill: glass");
    screen.line("correct infill");
    assert!(screen.line("b").contains("Was that a slip?"));
    screen.line("y");
    let said = screen.line("y");
    assert!(said.contains("landing: nothing more to find out"), "{said}");
    screen.line("deck");
    screen.line("d");
    let said = screen.line("20 in");
    assert!(said.contains("deck: nothing more to find out"), "{said}");
    screen.line("2A, balcony");
    screen.line("ba");
    screen.line("over 8 ft");
    screen.line("height: not reached");
    screen.line("a dog");
    screen.line("infill: c");
    let said = screen.line("n");
    assert!(
        said.contains("Falls short (building rules): opening"),
        "{said}"
    );
    let said = screen.line("2 in");
    let said = if said.contains("balcony: ") {
        said
    } else {
        screen.line("next")
    };
    assert!(said.contains("2A, balcony:"), "{said}");
    // the end of input on an empty line
    assert_eq!(screen.end("\u{4}"), 0);
    let text = fs::read_to_string(folder.path().join("s.csv")).expect("written");
    let args = ["--no-guidance"];
    assert_eq!(report(&text, &args), report(BY_HAND, &args), "{text}");
}

#[test]
fn breaking_off_is_a_polite_end() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut screen = Screen::start(folder.path(), 80, "xterm", &["s.csv"]);
    for keys in ["", "", "", "landing", "l"] {
        screen.line(keys);
    }
    assert_eq!(screen.end("\u{3}"), 0);
    let text = fs::read_to_string(folder.path().join("s.csv")).expect("written");
    assert!(text.ends_with(",landing,place,landing,\n"), "{text}");
}

#[test]
fn a_terminal_that_cannot_be_drawn_on_is_never_redrawn() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut screen = Screen::start(folder.path(), 80, "dumb", &["s.csv", "--color", "never"]);
    for keys in ["", "", "", "landing", "l"] {
        screen.line(keys);
    }
    let raw = screen.raw.lock().expect("sound").clone();
    assert!(!raw.contains(&0x1b) && !raw.contains(&0x08), "no sequences");
    assert_eq!(screen.end("\u{4}"), 0);
}

const WHOLE: &str = "2026-05-04\nR. T.\n\nlanding\n?\nl\n4 ft 4 1/4 in\nmaybe\n34 5/8 in\nb\ny\n2A, porch\np\nporch\n2 ft\nlist\nhelp\n\n";

#[test]
fn a_whole_conversation_through_a_pipe() {
    let folder = tempfile::tempdir().expect("a folder");
    let args = ["s.csv", "--rules", "us-dwelling-2018", "--no-guidance"];
    let mut walk = Piped::start(folder.path(), &args);
    write!(walk.child.stdin.as_mut().expect("piped"), "{WHOLE}").expect("it listens");
    let (out, err, code) = walk.finish();
    assert_eq!((err.as_str(), code), ("", Some(0)));
    let today = out.split("[Enter: today, ").nth(1).expect("asked");
    let today = today[..10].to_owned();
    insta::assert_snapshot!(out.replace(&today, "2026-05-04"));
}

#[test]
fn forty_columns_are_enough() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("s.csv");
    let args = ["guardrule", "walk", path.to_str().expect("UTF-8")];
    let (mut out, mut err) = (Vec::new(), Vec::new());
    {
        let terminal = cli::Terminal::new(&mut out, &mut err, WHOLE.as_bytes());
        cli::run(args.map(Into::into), &mut terminal.with_columns(40));
    }
    let out = String::from_utf8(out).expect("UTF-8");
    assert!(out.lines().count() > 100, "{out}");
    for line in out.lines() {
        assert!(line.chars().count() <= 40, "{line}");
    }
}
