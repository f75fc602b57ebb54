//! Nothing that was acknowledged is lost, whatever happens to program and disk.

use std::fs;
use std::path::Path;
use std::process::Command;
use std::process::Stdio;
use std::thread::sleep;
use std::time::Duration;

use crate::harness::run_in;
use crate::walk::support::PROGRAM;
use crate::walk::support::Piped;

const LAW: [&str; 4] = ["s.csv", "--rules", "us-dwelling-2018", "--no-guidance"];

fn read(folder: &Path) -> String {
    fs::read_to_string(folder.join("s.csv")).unwrap_or_default()
}

/// A row of numbers that is the same in every run (Knuth's constants of MMIX).
struct Dice(u64);

impl Dice {
    fn below(&mut self, end: u64) -> u64 {
        let next = self.0.wrapping_mul(6_364_136_223_846_793_005);
        self.0 = next.wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % end
    }
}

/// Killed at random moments: what was acknowledged is in the file, which parses, and
/// the next walk goes on. `WALK_KILLS=2000` for as many rounds.
#[test]
fn killed_at_any_moment_it_loses_no_answer() {
    const ANSWERS: [(&str, &str); 9] = [
        ("landing", "g,place,landing,"),
        ("n", "g,condition,none seen,"),
        ("n", "g,moves when pushed,no,"),
        ("9 ft", "g,drop,9 ft,"),
        ("balusters", "g,infill,balusters,"),
        ("n", "g,opening,4 in ball passes,"),
        ("36 1/2 in", "g,height,36 1/2 in,"),
        ("paint: sound", "g,paint,sound,"),
        ("storeys: 2", "storeys,2,"),
    ];
    let rounds = std::env::var("WALK_KILLS").ok();
    let rounds: u32 = rounds.and_then(|text| text.parse().ok()).unwrap_or(20);
    let mut dice = Dice(2026);
    let folder = tempfile::tempdir().expect("a folder");
    let mut killed_within = 0;
    for round in 0..rounds {
        fs::write(
            folder.path().join("s.csv"),
            "unit,guard,item,reading,note\n,g,state,existing,\n",
        )
        .expect("written");
        let mut walk = Piped::start(folder.path(), &LAW);
        walk.until_it_waits();
        let mut acknowledged = Vec::new();
        let count = dice.below(ANSWERS.len() as u64);
        for (line, row) in ANSWERS.iter().take(usize::try_from(count).expect("small")) {
            walk.send(line);
            if walk.until_it_waits().contains("Noted.") {
                acknowledged.push(*row);
            }
        }
        let count = usize::try_from(count).expect("small");
        assert!(acknowledged.len() + 1 >= count, "{acknowledged:?}");
        // the last answer is on its way when it dies
        walk.send("solid part height: 3 in");
        sleep(Duration::from_micros(dice.below(40_000)));
        walk.child.kill().expect("killed");
        walk.child.wait().expect("dead");
        let text = read(folder.path());
        for row in acknowledged {
            assert!(text.contains(row), "round {round}: {row} is gone\n{text}");
        }
        killed_within += u32::from(!text.contains("solid part"));
        let args = ["check", "@s.csv", "--rules", "us-dwelling-2018"];
        let checked = run_in(folder.path(), &args, "");
        assert_ne!(checked.code, 2, "round {round}: {}\n{text}", checked.err);
    }
    if rounds >= 200 {
        assert!(
            killed_within > 0 && killed_within < rounds,
            "{killed_within} of {rounds}"
        );
    }
    // what a killed walk leaves behind blocks nobody, and is cleared away
    let walk = Piped::start(folder.path(), &LAW);
    let (_, err, code) = walk.finish();
    assert_eq!((err.as_str(), code), ("", Some(0)));
    let left = fs::read_dir(folder.path()).expect("readable").count();
    assert_eq!(left, 1, "the survey alone");
}

/// A walk that has a place, a look and a push; what it has acknowledged.
fn under_way(folder: &Path) -> (Piped, String) {
    let mut walk = Piped::start(folder, &LAW);
    for line in ["landing", "n", "n"] {
        walk.until_it_waits();
        walk.send(line);
    }
    walk.until_it_waits();
    (walk, read(folder))
}

fn kept(folder: &Path) -> String {
    let mut entries = fs::read_dir(folder).expect("readable");
    let path = entries.find_map(|entry| {
        let path = entry.expect("readable").path();
        path.to_string_lossy().contains("unsaved").then_some(path)
    });
    fs::read_to_string(path.expect("kept elsewhere")).expect("readable")
}

fn in_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_file_that_is_deleted_under_way_is_written_anew() {
    let folder = tempfile::tempdir().expect("a folder");
    let (mut walk, before) = under_way(folder.path());
    fs::remove_file(folder.path().join("s.csv")).expect("deleted");
    walk.send("9 ft");
    let said = walk.until_it_waits();
    assert!(in_one_line(&said).contains("The file was gone"), "{said}");
    assert_eq!(
        read(folder.path()),
        format!("{before},landing,drop,9 ft,\n")
    );
    let (_, err, code) = walk.finish();
    assert_eq!((err.as_str(), code), ("", Some(0)));
}

#[test]
fn a_file_that_becomes_a_folder_is_said_and_nothing_is_lost() {
    let folder = tempfile::tempdir().expect("a folder");
    let (mut walk, before) = under_way(folder.path());
    fs::remove_file(folder.path().join("s.csv")).expect("deleted");
    fs::create_dir(folder.path().join("s.csv")).expect("made");
    walk.send("9 ft");
    let (_, err, code) = walk.finish();
    assert_eq!(code, Some(2), "{err}");
    let err = in_one_line(&err);
    assert!(
        err.contains("a folder of this name stands in its place"),
        "{err}"
    );
    assert_eq!(
        kept(folder.path()),
        format!("{before},landing,drop,9 ft,\n")
    );
}

#[cfg(unix)]
#[test]
fn a_file_that_is_made_read_only_is_not_written_over() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().expect("a folder");
    let (mut walk, before) = under_way(folder.path());
    let file = folder.path().join("s.csv");
    fs::set_permissions(&file, fs::Permissions::from_mode(0o444)).expect("read-only");
    walk.send("9 ft");
    let (_, err, code) = walk.finish();
    assert_eq!(code, Some(2), "{err}");
    assert!(in_one_line(&err).contains("it is read-only"), "{err}");
    assert_eq!(read(folder.path()), before);
    assert_eq!(
        kept(folder.path()),
        format!("{before},landing,drop,9 ft,\n")
    );
}

#[test]
fn a_second_walk_on_the_same_file_is_refused() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut first = Piped::start(folder.path(), &LAW);
    first.until_it_waits();
    let second = run_in(folder.path(), &["walk", "@s.csv"], "");
    assert_eq!((second.code, second.out.as_str()), (2, ""));
    assert!(
        second.err.contains("another walk has this survey open"),
        "{}",
        second.err
    );
    first.finish();
    let third = run_in(folder.path(), &["walk", "@s.csv"], "");
    assert_eq!(third.code, 0, "{}", third.err);
    let left: Vec<_> = fs::read_dir(folder.path())
        .expect("readable")
        .map(|entry| entry.expect("readable").file_name())
        .collect();
    assert!(left.iter().all(|name| name == "s.csv"), "{left:?}");
}

#[test]
fn what_another_program_writes_meanwhile_is_kept() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut walk = Piped::start(folder.path(), &LAW);
    for line in ["g", "landing", "n", "n"] {
        walk.until_it_waits();
        walk.send(line);
    }
    walk.until_it_waits();
    let theirs = format!("# theirs\n{},porch,drop,3 ft,\n", read(folder.path()));
    fs::write(folder.path().join("s.csv"), &theirs).expect("written");
    walk.send("9 ft");
    let said = walk.until_it_waits();
    assert!(
        said.contains("Another program has changed the file"),
        "{said}"
    );
    assert_eq!(read(folder.path()), format!("{theirs},g,drop,9 ft,\n"));
    // what is no survey any more is not written over
    fs::write(folder.path().join("s.csv"), "all gone").expect("written");
    walk.send("b");
    let (_, err, code) = walk.finish();
    assert_eq!(code, Some(2));
    let err = err.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(err.contains("s.csv could not be saved"), "{err}");
    assert_eq!(read(folder.path()), "all gone");
    let kept = kept(folder.path());
    assert!(
        kept.contains(",g,drop,9 ft,") && kept.contains(",porch,drop,3 ft,"),
        "{kept}"
    );
}

/// A limit on the size of files stands for a disk that is full: the write fails
/// half-way through with what the system says.
#[cfg(unix)]
#[test]
fn a_full_disk_is_said_and_the_old_file_is_untouched() {
    let folder = tempfile::tempdir().expect("a folder");
    let old = format!(
        "# {}\nunit,guard,item,reading,note\n,g,place,landing,\n",
        "x".repeat(1000)
    );
    fs::write(folder.path().join("s.csv"), &old).expect("written");
    let script = format!(
        "trap '' XFSZ; ulimit -f 1; exec '{PROGRAM}' walk s.csv --rules us-dwelling-2018 --no-guidance"
    );
    let mut child = Command::new("sh")
        .args(["-c", &script])
        .current_dir(folder.path())
        .env("TMPDIR", folder.path())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("sh");
    let mut input = child.stdin.take().expect("piped");
    std::io::Write::write_all(&mut input, b"n\nn\n").expect("it listens");
    drop(input);
    let ended = child.wait_with_output().expect("it ends");
    let err = String::from_utf8_lossy(&ended.stderr);
    let err = err.split_whitespace().collect::<Vec<_>>().join(" ");
    assert_eq!(ended.status.code(), Some(2), "{err}");
    assert!(err.contains("s.csv could not be saved"), "{err}");
    assert!(
        err.contains("Write down the last answer yourself: ,g,paint,sound,"),
        "{err}"
    );
    assert_eq!(read(folder.path()), old);
}

#[cfg(unix)]
#[test]
fn what_cannot_be_written_is_said_before_anything_is_asked() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("s.csv");
    fs::write(&file, "unit,guard,item,reading,note\n").expect("written");
    fs::set_permissions(&file, fs::Permissions::from_mode(0o444)).expect("read-only");
    let ran = run_in(folder.path(), &["walk", "@s.csv"], "g\n");
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.err.contains("it is read-only"), "{}", ran.err);
    // in /proc nobody may make a file, not even who may everything
    if Path::new("/proc/self").exists() {
        let ran = run_in(folder.path(), &["walk", "/proc/s.csv"], "g\n");
        assert_eq!((ran.code, ran.out.as_str()), (2, ""));
        assert!(ran.err.contains("error[G302]"), "{}", ran.err);
    }
    let ran = run_in(folder.path(), &["walk", "@"], "g\n");
    assert_eq!(ran.code, 2);
    assert!(ran.err.contains("this is a folder"), "{}", ran.err);
}

#[cfg(unix)]
#[test]
fn permissions_and_links_stay() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().expect("a folder");
    let real = folder.path().join("real.csv");
    fs::write(&real, "unit,guard,item,reading,note\n").expect("written");
    fs::set_permissions(&real, fs::Permissions::from_mode(0o640)).expect("set");
    std::os::unix::fs::symlink("real.csv", folder.path().join("s.csv")).expect("linked");
    let ran = run_in(folder.path(), &["walk", "@s.csv"], "\n\ng\nlanding\n");
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(
        fs::symlink_metadata(folder.path().join("s.csv"))
            .expect("there")
            .is_symlink()
    );
    let mode = fs::metadata(&real).expect("there").permissions().mode();
    assert_eq!(mode & 0o777, 0o640);
    assert!(read(folder.path()).contains(",g,place,landing,"));
}
