//! Inputs without an end, workbooks that unpack without an end, and places where nothing
//! may be written; each in a folder of its own, without privileges and in bounded memory.
#![cfg(unix)]

use std::fs;
use std::io::Cursor;
use std::io::Write;
use std::os::unix::fs::MetadataExt;
use std::os::unix::fs::PermissionsExt;
use std::os::unix::process::CommandExt;
use std::path::Path;
use std::process::Command;
use std::process::Output;
use std::process::Stdio;
use std::thread;

use zip::ZipWriter;
use zip::write::SimpleFileOptions;

use crate::harness::words;

/// Memory of its own that the program may take, in KiB: a little more than what a workbook
/// of the largest size that is unpacked would need.
const MEMORY: u32 = 420 << 10;

/// Nobody's number, as Linux and BSD have it.
const NOBODY: u32 = 65_534;

const SURVEY: &str =
    "unit,guard,item,reading\na,g,place,landing\na,g,drop,9 ft\na,g,height,34 in\n";

/// A folder that everybody may look into, with a survey and the program in it.
fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let inside = |name: &str| folder.path().join(name);
    fs::write(inside("s.csv"), SURVEY).expect("written");
    let program = env!("CARGO_BIN_EXE_guardrule");
    if fs::hard_link(program, inside("guardrule")).is_err() {
        fs::copy(program, inside("guardrule")).expect("copied");
    }
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o755)).expect("set");
    folder
}

/// The program with a bound on its memory, as nobody where the tests run as root.
fn without_privileges(folder: &Path, args: &[&str]) -> Command {
    let mut command = Command::new("sh");
    command
        .args([
            "-c",
            &format!("ulimit -d {MEMORY}; exec ./guardrule \"$@\""),
            "sh",
        ])
        .args(args)
        .current_dir(folder)
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped());
    let own = fs::metadata(folder).expect("there").uid();
    if own == 0 {
        command.uid(NOBODY).gid(NOBODY);
    }
    command
}

fn run(folder: &Path, args: &[&str]) -> Output {
    without_privileges(folder, args).output().expect("run")
}

fn said(output: &Output) -> String {
    words(&String::from_utf8_lossy(&output.stderr))
}

fn refuses(output: &Output, what: &str) {
    let said = said(output);
    assert_eq!(output.status.code(), Some(2), "{said}");
    assert!(said.contains(what), "{said}");
}

#[test]
fn a_device_that_never_ends_is_no_survey_and_no_place_for_a_walk() {
    let folder = folder();
    let at = folder.path();
    let what = "64 MiB came without the end of a line";
    refuses(&run(at, &["check", "/dev/zero"]), what);
    refuses(&run(at, &["remedy", "/dev/zero"]), what);
    refuses(&run(at, &["compare", "s.csv", "/dev/zero"]), what);
    refuses(&run(at, &["walk", "/dev/zero"]), "a walk is kept in a file");
    let rules = run(at, &["check", "s.csv", "--rules", "/dev/zero"]);
    refuses(&rules, "/dev/zero");
}

#[test]
fn a_line_that_never_ends_is_refused_before_it_fills_the_disk() {
    let folder = folder();
    let mut check = without_privileges(folder.path(), &["check", "-"]);
    let mut running = check.stdin(Stdio::piped()).spawn().expect("run");
    let mut into = running.stdin.take().expect("a pipe");
    let endless = thread::spawn(move || {
        let piece = [b'x'; 1 << 16];
        let mut came: u64 = 0;
        while into.write_all(&piece).is_ok() {
            came += 1 << 16;
        }
        came
    });
    let output = running.wait_with_output().expect("ended");
    refuses(&output, "64 MiB came without the end of a line");
    let came = endless.join().expect("ended");
    assert!(came < 66 << 20, "{came} bytes were taken");
}

#[test]
fn a_long_line_of_a_file_is_passed_over_in_little_memory() {
    let folder = folder();
    let mut long = SURVEY.as_bytes().to_vec();
    long.resize(80 << 20, b'x');
    long.extend_from_slice(b"\na,h,height,34 in\n");
    fs::write(folder.path().join("long.csv"), long).expect("written");
    let output = run(folder.path(), &["check", "long.csv", "--format", "summary"]);
    refuses(&output, "longer than 1 MiB");
    // what stands around it is judged all the same
    let summary = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(summary.contains("\"guards\": 2"), "{summary}");
}

/// A workbook with this text in the place of its first sheet.
fn workbook(sheet: &dyn Fn(&mut dyn Write)) -> Vec<u8> {
    const BOOK: &str = "<workbook xmlns:r=\"r\"><sheets><sheet name=\"Flats\" sheetId=\"1\" r:id=\"rId1\"/>\
</sheets></workbook>";
    const LINKS: &str = "<Relationships><Relationship Id=\"rId1\" Type=\"a/worksheet\" \
Target=\"worksheets/sheet1.xml\"/></Relationships>";
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default();
    for (name, text) in [
        ("xl/workbook.xml", BOOK),
        ("xl/_rels/workbook.xml.rels", LINKS),
    ] {
        zip.start_file(name, options).expect("begun");
        zip.write_all(text.as_bytes()).expect("written");
    }
    zip.start_file("xl/worksheets/sheet1.xml", options)
        .expect("begun");
    sheet(&mut zip);
    zip.finish().expect("finished").into_inner()
}

fn check_book(book: &[u8]) -> Output {
    let folder = folder();
    assert!(book.len() < 2 << 20, "small when packed: {}", book.len());
    fs::write(folder.path().join("flats.xlsx"), book).expect("written");
    run(folder.path(), &["check", "flats.xlsx"])
}

#[test]
fn a_workbook_that_unpacks_to_more_than_memory_is_refused() {
    // nearly all of 129 MiB is a space
    let bomb = workbook(&|out| {
        out.write_all(b"<worksheet><sheetData>").expect("written");
        let blank = vec![b' '; 1 << 20];
        for _ in 0..129 {
            out.write_all(&blank).expect("written");
        }
    });
    refuses(&check_book(&bomb), "holds more than a survey can");
}

#[test]
fn a_cell_at_a_place_that_no_program_writes_is_a_fault_of_the_file() {
    let far = workbook(&|out| {
        let cell = "<worksheet><sheetData><row r=\"4000000000\"><c r=\"ZZZZZ4000000000\"><v>1</v></c></row>\
</sheetData></worksheet>";
        out.write_all(cell.as_bytes()).expect("written");
    });
    refuses(&check_book(&far), "damaged");
}

#[test]
fn a_folder_and_a_file_that_may_not_be_written_to_are_left_alone() {
    let folder = folder();
    let at = folder.path();
    let names = |at: &Path| {
        let entries = fs::read_dir(at).expect("readable");
        let mut names: Vec<_> = entries
            .map(|entry| entry.expect("readable").file_name())
            .collect();
        names.sort();
        names
    };
    let closed = at.join("closed");
    fs::create_dir(&closed).expect("made");
    fs::write(closed.join("r.txt"), "mine").expect("written");
    fs::set_permissions(&closed, fs::Permissions::from_mode(0o555)).expect("set");
    for name in ["closed/new.txt", "closed/r.txt"] {
        let output = run(at, &["check", "s.csv", "--force", "--output", name]);
        refuses(&output, name);
    }
    let output = run(at, &["walk", "closed/w.csv", "--rules", "us-dwelling-2018"]);
    refuses(&output, "closed/w.csv");
    assert_eq!(names(&closed), ["r.txt"]);
    assert_eq!(
        fs::read_to_string(closed.join("r.txt")).expect("there"),
        "mine"
    );
    // a file that is read-only in a folder that is not
    let open = at.join("open");
    fs::create_dir(&open).expect("made");
    fs::set_permissions(&open, fs::Permissions::from_mode(0o777)).expect("set");
    fs::write(open.join("r.txt"), "mine").expect("written");
    fs::set_permissions(open.join("r.txt"), fs::Permissions::from_mode(0o444)).expect("set");
    let output = run(at, &["check", "s.csv", "--force", "--output", "open/r.txt"]);
    refuses(&output, "read-only");
    assert_eq!(names(&open), ["r.txt"]);
    assert_eq!(
        fs::read_to_string(open.join("r.txt")).expect("there"),
        "mine"
    );
    let output = run(at, &["check", "s.csv", "--output", "open/new.txt"]);
    assert_eq!(output.status.code(), Some(1), "{}", said(&output));
    assert_eq!(names(&open), ["new.txt", "r.txt"]);
}

#[test]
fn a_walk_is_not_begun_in_a_workbook() {
    let folder = folder();
    let at = folder.path();
    let book = workbook(&|out| {
        out.write_all(b"<worksheet><sheetData/></worksheet>")
            .expect("written");
    });
    for name in ["flats.xlsx", "flats.csv"] {
        fs::write(at.join(name), &book).expect("written");
        let output = run(at, &["walk", name, "--rules", "us-dwelling-2018"]);
        refuses(&output, "this is a workbook");
        assert!(
            said(&output).contains("save the sheet as \"CSV UTF-8\""),
            "{}",
            said(&output)
        );
        assert_eq!(fs::read(at.join(name)).expect("there"), book);
    }
    let output = run(at, &["walk", "new.ods", "--rules", "us-dwelling-2018"]);
    refuses(&output, "this is a workbook");
    assert!(!at.join("new.ods").exists());
}
