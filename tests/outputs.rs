//! Files that misbehave: what `--output` replaces and what it leaves alone, pipes,
//! links, devices, a full disk; and rulesets that a survey names itself.

use std::fs;
use std::io::Read;
use std::path::Path;
use std::process::Command;
use std::process::Stdio;
use std::thread;
use std::time::Duration;

use crate::harness::run_in;
use crate::harness::words;

const SURVEY: &str = "unit,guard,item,reading\na,g,use,dwelling\na,g,place,landing\na,g,drop,9 ft\n\
    a,g,height,34 in\na,g,opening,3 in\na,g,bottom gap,2 in\n";

fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("s.csv"), SURVEY).expect("written");
    folder
}

fn check(folder: &Path, more: &[&str]) -> crate::harness::Ran {
    let mut args = vec![
        "check",
        "@s.csv",
        "--rules",
        "us-dwelling-2018",
        "--no-guidance",
    ];
    args.extend(more);
    run_in(folder, &args, "")
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("readable");
    let mut names: Vec<String> = entries
        .map(|entry| {
            entry
                .expect("readable")
                .file_name()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    names.sort();
    names
}

#[test]
fn a_report_takes_the_place_of_a_report_of_every_form() {
    for form in ["text", "json", "csv", "actions", "summary"] {
        let folder = folder();
        for _ in 0..2 {
            let ran = check(folder.path(), &["--format", form, "--output", "@r"]);
            assert_eq!((ran.code, ran.out.as_str()), (1, ""), "{form}: {}", ran.err);
        }
        assert_eq!(names(folder.path()), ["r", "s.csv"]);
    }
    let folder = folder();
    for _ in 0..2 {
        let ran = run_in(folder.path(), &["sheet", "--output", "@page.html"], "");
        assert_eq!(ran.code, 0, "{}", ran.err);
    }
}

#[test]
fn a_file_that_is_no_report_is_replaced_only_when_forced() {
    let folder = folder();
    let notes = folder.path().join("notes.txt");
    fs::write(&notes, "my notes").expect("written");
    let ran = check(folder.path(), &["--output", "@notes.txt"]);
    assert_eq!(ran.code, 2);
    assert!(
        ran.err.contains("G316") && ran.err.contains("--force"),
        "{}",
        ran.err
    );
    assert_eq!(fs::read_to_string(&notes).expect("there"), "my notes");
    assert_eq!(
        check(folder.path(), &["--output", "@notes.txt", "--force"]).code,
        1
    );
    assert!(fs::read_to_string(&notes).expect("there").contains("34 in"));
    // a blank survey may have been filled in
    for _ in 0..2 {
        let _blank = run_in(
            folder.path(),
            &["sheet", "--csv", "--output", "@blank.csv"],
            "",
        );
    }
    let again = run_in(
        folder.path(),
        &["sheet", "--csv", "--output", "@blank.csv"],
        "",
    );
    assert_eq!(again.code, 2, "{}", again.err);
    assert_eq!(names(folder.path()), ["blank.csv", "notes.txt", "s.csv"]);
}

#[test]
fn a_dash_is_standard_output() {
    let folder = folder();
    let ran = check(folder.path(), &["--format", "summary", "--output", "-"]);
    assert_eq!(ran.code, 1);
    assert!(ran.out.contains("\"falls_short\""), "{}", ran.out);
    assert_eq!(names(folder.path()), ["s.csv"]);
}

#[cfg(unix)]
#[test]
fn links_are_followed_to_a_file_and_stay_links() {
    let folder = folder();
    let inside = |name: &str| folder.path().join(name);
    fs::create_dir(inside("reports")).expect("made");
    fs::write(inside("reports/r.txt"), "").expect("written");
    std::os::unix::fs::symlink("reports/r.txt", inside("link.txt")).expect("linked");
    std::os::unix::fs::symlink("nowhere.txt", inside("broken.txt")).expect("linked");
    assert_eq!(check(folder.path(), &["--output", "@link.txt"]).code, 1);
    assert!(inside("link.txt").is_symlink());
    assert!(
        fs::read_to_string(inside("reports/r.txt"))
            .expect("there")
            .contains("34 in")
    );
    let ran = check(folder.path(), &["--output", "@broken.txt"]);
    assert_eq!(ran.code, 2);
    assert!(
        words(&ran.err).contains("a link to a file that is not there"),
        "{}",
        ran.err
    );
    let ran = check(folder.path(), &["--output", "@reports"]);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("this is a folder"), "{}", ran.err);
    assert_eq!(names(&inside("reports")), ["r.txt"]);
}

#[cfg(unix)]
#[test]
fn pipes_and_devices_are_written_through_and_pipes_are_read_as_surveys() {
    let folder = folder();
    let pipe = folder.path().join("pipe");
    let made = Command::new("mkfifo")
        .arg(&pipe)
        .status()
        .expect("there is mkfifo");
    assert!(made.success());
    let reader = {
        let pipe = pipe.clone();
        thread::spawn(move || {
            let mut text = String::new();
            fs::File::open(pipe)
                .expect("opened")
                .read_to_string(&mut text)
                .expect("read");
            text
        })
    };
    let ran = check(folder.path(), &["--format", "summary", "--output", "@pipe"]);
    assert_eq!(ran.code, 1, "{}", ran.err);
    assert!(reader.join().expect("read").contains("falls_short"));
    let writer = {
        let pipe = pipe.clone();
        thread::spawn(move || fs::write(pipe, SURVEY).expect("written"))
    };
    let args = [
        "check",
        "@pipe",
        "--rules",
        "us-dwelling-2018",
        "--no-guidance",
        "--format",
        "summary",
    ];
    let ran = run_in(folder.path(), &args, "");
    writer.join().expect("written");
    assert_eq!(ran.code, 1, "{}", ran.err);
    assert_eq!(check(folder.path(), &["--output", "/dev/null"]).code, 1);
    assert_eq!(names(folder.path()), ["pipe", "s.csv"]);
}

/// More guards than are judged before other threads begin.
fn many_guards() -> String {
    let rows = (0..700).map(|n| {
        let (height, gap, drop) = (30 + n % 9, 3 + n % 3, 1 + n % 8);
        format!("{n},height,{height} in\n{n},opening,{gap} in\n{n},drop,{drop} ft\n")
    });
    format!("guard,item,reading\n{}", rows.collect::<String>())
}

#[test]
fn a_survey_of_many_guards_reads_the_same_on_any_number_of_threads() {
    let folder = folder();
    fs::write(folder.path().join("s.csv"), many_guards()).expect("written");
    let on = |threads: &str| check(folder.path(), &["--format", "csv", "--threads", threads]);
    let one = on("1");
    assert_eq!(one.code, 1, "{}", one.err);
    let rows = one.out.lines().skip(1);
    let mut guards: Vec<&str> = rows.filter_map(|row| row.split(',').nth(3)).collect();
    guards.dedup();
    let in_order: Vec<String> = (0..700).map(|n| n.to_string()).collect();
    assert_eq!(guards, in_order);
    for threads in ["2", "3", "8"] {
        let several = on(threads);
        assert_eq!(several.code, one.code);
        assert!(several.out == one.out, "{threads} threads");
    }
    let none = on("0");
    assert_eq!(none.code, 2);
    assert!(none.err.contains("--threads"), "{}", none.err);
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_ends_all_threads() {
    let folder = folder();
    fs::write(folder.path().join("s.csv"), many_guards()).expect("written");
    let args = ["--format", "csv", "--threads", "3", "--output", "/dev/full"];
    let ran = check(folder.path(), &args);
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("No space left"), "{}", ran.err);
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_said() {
    let folder = folder();
    for form in ["text", "json", "csv", "summary"] {
        let ran = check(folder.path(), &["--format", form, "--output", "/dev/full"]);
        assert_eq!(ran.code, 2, "{form}");
        assert!(ran.err.contains("No space left"), "{form}: {}", ran.err);
        let full = fs::OpenOptions::new()
            .write(true)
            .open("/dev/full")
            .expect("opened");
        let out = Command::new(env!("CARGO_BIN_EXE_guardrule"))
            .args(["check", "s.csv", "--format", form])
            .current_dir(folder.path())
            .stdout(full)
            .stderr(Stdio::piped())
            .output()
            .expect("run");
        let err = String::from_utf8_lossy(&out.stderr);
        assert_eq!(out.status.code(), Some(2), "{form}: {err}");
        assert!(
            err.contains("standard output") && err.contains("No space left"),
            "{form}: {err}"
        );
    }
}

#[cfg(unix)]
#[test]
fn nothing_unfinished_is_left_after_an_interrupt() {
    let folder = folder();
    let mut many = "unit,guard,item,reading\n".to_owned();
    for guard in 0..20_000 {
        many.push_str(&format!(
            "a,g{guard},height,34 in\na,g{guard},opening,3 in\n"
        ));
    }
    fs::write(folder.path().join("s.csv"), many).expect("written");
    let mut running = Command::new(env!("CARGO_BIN_EXE_guardrule"))
        .args(["check", "s.csv", "--output", "r.json", "--format", "json"])
        .current_dir(folder.path())
        .stderr(Stdio::null())
        .spawn()
        .expect("run");
    for _ in 0..600 {
        if names(folder.path()).len() > 1 {
            break;
        }
        thread::sleep(Duration::from_millis(50));
    }
    assert_eq!(
        names(folder.path()).len(),
        2,
        "the unfinished file is there"
    );
    let id = running.id().to_string();
    let sent = Command::new("kill")
        .args(["-INT", &id])
        .status()
        .expect("sent");
    assert!(sent.success());
    let status = running.wait().expect("ended");
    assert_eq!(status.code(), Some(130));
    assert_eq!(names(folder.path()), ["s.csv"]);
}

#[test]
fn a_survey_names_rulesets_beside_it_or_below_alone() {
    let folder = folder();
    let inside = |name: &str| folder.path().join(name);
    fs::create_dir_all(inside("surveys/rules")).expect("made");
    let rules =
        include_str!("../rulesets/us-dwelling-2018.toml").replace("us-dwelling-2018", "ours");
    fs::write(inside("surveys/rules/ours.toml"), &rules).expect("written");
    fs::write(inside("elsewhere.toml"), &rules).expect("written");
    let survey = |named: &str| format!("{SURVEY},,rules,{named}\n");
    let whole = inside("elsewhere.toml").display().to_string();
    for (named, fine) in [
        ("rules/ours.toml", true),
        ("us-dwelling-2018", true),
        ("../elsewhere.toml", false),
        ("rules/../../elsewhere.toml", false),
        (whole.as_str(), false),
        ("/dev/zero", false),
    ] {
        fs::write(inside("surveys/s.csv"), survey(named)).expect("written");
        let ran = run_in(
            folder.path(),
            &["check", "@surveys/s.csv", "--format", "summary"],
            "",
        );
        assert_eq!(ran.err.contains("G317"), !fine, "{named}: {}", ran.err);
        assert_eq!(ran.code, if fine { 1 } else { 2 }, "{named}: {}", ran.err);
    }
}

#[cfg(unix)]
#[test]
fn what_is_no_file_is_no_ruleset_and_is_not_read_without_end() {
    let folder = folder();
    for name in ["/dev/zero", "@s", "@."] {
        let args = ["check", "@s.csv", "--rules", name];
        let ran = run_in(folder.path(), &args, "");
        assert_eq!(ran.code, 2, "{name}: {}", ran.err);
    }
}
