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
    ,,default unit,in,\n,,by,R. T.,\n,,property,yellow house,\n\
    ,landing,place,landing,\n,landing,condition,none seen,\n,landing,paint,sound,\n\
    ,landing,drop,4 ft 4 1/4 in,\n,landing,height,34 5/8,\n\
    ,landing,moves when pushed,no,\n,landing,infill loose,no,\n\
    ,landing,infill,balusters,\n,landing,opening,4 in ball stops everywhere,\n\
    ,deck,place,deck,\n,deck,paint,flaking,\n,deck,condition,none seen,\n\
    ,deck,moves when pushed,a lot,\"stopped; way closed: door locked\"\n\
    2A,balcony,place,balcony,\n2A,balcony,drop,over 30 in,\n\
    2A,balcony,condition,none seen,\n2A,balcony,paint,sound,\n\
    2A,balcony,moves when pushed,no,\n2A,balcony,infill loose,no,\n\
    2A,balcony,height,\"not reached\",a dog\n2A,balcony,infill,cables,\n\
    2A,balcony,opening,4 in ball passes pushed by hand,\n";

/// Whether the screen has a sentence, however its lines are broken.
fn says(screen: &str, sentence: &str) -> bool {
    let words = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    words(screen).contains(sentence)
}

/// The cautions with which every walk begins.
fn begins_with_cautions(screen: &str) {
    for sentence in [
        "Stay behind each railing; do not lean on it or over it; pull at nothing.",
        "licensed professionals decide",
    ] {
        assert!(says(screen, sentence), "{sentence}\n{screen}");
    }
}

/// Three guards on a terminal, with typing errors, an unlikely value, a danger in the
/// middle, going back and correcting: the report is that of the survey written by hand.
#[test]
fn three_guards_on_a_terminal_with_mistakes_and_a_danger() {
    let folder = tempfile::tempdir().expect("a folder");
    let args = ["s.csv", "--rules", "us-dwelling-2018", "--no-guidance"];
    let mut screen = Screen::start(folder.path(), 80, "xterm-256color", &args);
    begins_with_cautions(&screen.waits().join("\n"));
    // the left arrow and a deletion: the editor's own
    screen.line("landingg\u{7f}");
    assert!(screen.line("z").contains("Not taken:"));
    screen.line("n");
    screen.line("n");
    assert!(screen.line("9 ft 12 yards").contains("Not taken:"));
    screen.line("8 ft");
    assert!(screen.line("back").contains("So far: 8 ft"));
    screen.line("4 ft 4 1/4 in");
    screen.line("glass");
    screen.line("correct infill");
    assert!(screen.line("b").contains("Was that a slip?"));
    screen.line("y");
    let said = screen.line("?");
    assert!(said.contains("ball"), "the drawing\n{said}");
    screen.line("y");
    assert!(screen.line("12 ft").contains("Is it right"));
    screen.line("n");
    let said = screen.line("34 5/8");
    assert!(
        said.contains("Too low. Rules: 36 in or more, 1 3/8 in too low."),
        "{said}"
    );
    assert!(
        says(&said, "Until it is put right keep small children from it."),
        "{said}"
    );
    screen.line("");
    // the length, by which a remedy is counted
    screen.line("");
    let said = screen.line("");
    assert!(
        says(&said, "LANDING falls short of the building rules: too low."),
        "{said}"
    );
    screen.line("deck");
    let said = screen.line("3");
    assert!(says(&said, "do not scrape, sand or drill it"), "{said}");
    let said = screen.line("2, stopped");
    assert!(
        said.contains("!!! STOP !!!") && said.contains("KEEP EVERYBODY OFF IT"),
        "{said}"
    );
    assert!(
        says(&said, "never lock or block a way out in a fire"),
        "{said}"
    );
    assert!(said.contains("Is the way to it closed now?"), "{said}");
    screen.line("y, door locked");
    screen.line("");
    screen.line("2A, balcony");
    screen.line("n");
    screen.line("n");
    screen.line("y");
    let said = screen.line("c");
    assert!(says(&said, "pushed gently by hand"), "{said}");
    let said = screen.line("n");
    assert!(
        said.contains("Gaps too wide. Rules: no ball of 4 in may pass."),
        "{said}"
    );
    screen.line("not reached");
    screen.line("a dog");
    // what holds it, its length, a photograph, the next railing
    for _ in 0..4 {
        screen.line("");
    }
    screen.waits();
    write!(screen.keys, "R. T., yellow house\r").expect("typed");
    let code = screen.child.wait().expect("it ends").exit_code();
    assert_eq!(code, 0);
    thread::sleep(Duration::from_millis(100));
    let last = screen.shown.lock().expect("sound").screen().contents();
    assert!(
        last.contains("TONIGHT") && last.contains("KEEP EVERYBODY OFF IT"),
        "{last}"
    );
    assert!(says(&last, "guardrule check s.csv"), "{last}");
    let text = fs::read_to_string(folder.path().join("s.csv")).expect("written");
    let args = ["--no-guidance"];
    assert_eq!(report(&text, &args), report(BY_HAND, &args), "{text}");
}

/// A number in the wrong unit on a narrow terminal: one answer mends the unit, and what
/// it touched is asked again.
#[test]
fn a_slip_of_unit_is_mended_in_forty_columns() {
    let folder = tempfile::tempdir().expect("a folder");
    let args = ["s.csv", "--rules", "us-dwelling-2018", "--no-guidance"];
    let mut screen = Screen::start(folder.path(), 40, "xterm", &args);
    begins_with_cautions(&screen.waits().join("\n"));
    for keys in ["landing", "n", "n", "260", "b", ""] {
        screen.line(keys);
    }
    let said = screen.line("8");
    assert!(says(&said, "or is it 8 cm"), "{said}");
    let said = screen.line("cm");
    assert!(
        says(&said, "From now on a number alone is centimetres."),
        "{said}"
    );
    assert!(says(&said, "or 260 in (6604 mm)"), "{said}");
    screen.line("");
    assert_eq!(screen.end("\u{4}"), 0);
    let text = fs::read_to_string(folder.path().join("s.csv")).expect("written");
    assert!(
        text.contains(",,default unit,cm,")
            && text.contains("drop,260 cm,")
            && text.contains("opening,8 cm,"),
        "{text}"
    );
}

#[test]
fn breaking_off_is_a_polite_end() {
    let folder = tempfile::tempdir().expect("a folder");
    let args = ["s.csv", "--rules", "us-dwelling-2018"];
    let mut screen = Screen::start(folder.path(), 80, "xterm", &args);
    for keys in ["none", "landing"] {
        screen.line(keys);
    }
    assert_eq!(screen.end("\u{3}"), 0);
    let text = fs::read_to_string(folder.path().join("s.csv")).expect("written");
    assert!(text.ends_with(",landing,place,landing,\n"), "{text}");
}

#[test]
fn a_terminal_that_cannot_be_drawn_on_is_never_redrawn() {
    let folder = tempfile::tempdir().expect("a folder");
    let args = ["s.csv", "--rules", "us-dwelling-2018", "--color", "never"];
    let mut screen = Screen::start(folder.path(), 80, "dumb", &args);
    begins_with_cautions(&screen.waits().join("\n"));
    for keys in ["2 years", "deck", "n"] {
        screen.line(keys);
    }
    let said = screen.line("2");
    assert!(said.contains("KEEP EVERYBODY OFF IT"), "{said}");
    let raw = screen.raw.lock().expect("sound").clone();
    assert!(!raw.contains(&0x1b) && !raw.contains(&0x08), "no sequences");
    assert_eq!(screen.end("\u{4}"), 0);
}

/// Where nobody names the rules, plain questions find them.
#[test]
fn without_rules_plain_questions_find_them() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut screen = Screen::start(folder.path(), 80, "xterm", &["s.csv"]);
    let said = screen.waits().join("\n");
    assert!(says(&said, "which country"), "{said}");
    screen.line("Florida");
    let said = screen.line("house");
    // one set of rules alone holds there: nothing to choose
    assert!(
        says(&said, "Building rules: florida-dwelling-2023"),
        "{said}"
    );
    screen.line("none");
    screen.line("landing");
    assert_eq!(screen.end("\u{4}"), 0);
    let text = fs::read_to_string(folder.path().join("s.csv")).expect("written");
    assert!(text.contains(",,rules,florida-dwelling-2023,"), "{text}");
}

const WHOLE: &str = "none\nlanding\n?\nn\nn\n4 ft 4 1/4 in\nmaybe\nb\n4\n34 5/8\nn\n\n\n\n\
    2A, porch\n0\ny\nn, no door\n\n2A, back\np\nporch\nlist\nhelp\nnext\n\nR. T.\n";

#[test]
fn a_whole_conversation_through_a_pipe() {
    let folder = tempfile::tempdir().expect("a folder");
    let args = ["s.csv", "--rules", "us-dwelling-2018"];
    let mut walk = Piped::start(folder.path(), &args);
    write!(walk.child.stdin.as_mut().expect("piped"), "{WHOLE}").expect("it listens");
    let (out, err, code) = walk.finish();
    assert_eq!((err.as_str(), code), ("", Some(0)));
    let today = out.split("Today: ").nth(1).expect("said");
    let today = today[..10].to_owned();
    insta::assert_snapshot!(out.replace(&today, "2026-05-04"));
}

#[test]
fn forty_columns_are_enough() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("s.csv");
    let path = path.to_str().expect("UTF-8");
    let args = ["guardrule", "walk", path, "--rules", "us-dwelling-2018"];
    let (mut out, mut err) = (Vec::new(), Vec::new());
    {
        let terminal = cli::Terminal::new(&mut out, &mut err, WHOLE.as_bytes());
        cli::run(args.map(Into::into), &mut terminal.with_columns(40));
    }
    let out = String::from_utf8(out).expect("UTF-8");
    assert!(out.lines().count() > 100, "{out}");
    for line in out.lines().filter(|line| !line.contains(path)) {
        assert!(line.chars().count() <= 40, "{line}");
    }
}
