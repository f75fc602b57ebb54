//! Files that are read: surveys, which are read twice, and rulesets.

use std::cell::RefCell;
use std::fs;
use std::fs::File;
use std::io;
use std::io::Read;
use std::io::Seek;
use std::io::SeekFrom;
use std::io::Write;
use std::path::Path;
use std::path::PathBuf;

#[cfg(feature = "spreadsheet")]
use crate::cli::workbook;
use crate::input::Diagnostic;
use crate::input::SourceFile;
use crate::survey::SurveyFile;

/// A survey on disk.
struct OnDisk {
    name: String,
    path: PathBuf,
}

impl SurveyFile for OnDisk {
    fn name(&self) -> &str {
        &self.name
    }

    fn open(&self) -> io::Result<Box<dyn Read + '_>> {
        Ok(Box::new(File::open(&self.path)?))
    }
}

/// Standard input or a pipe, spooled so that it can be read twice.
struct Spooled {
    name: String,
    file: RefCell<File>,
}

impl SurveyFile for Spooled {
    fn name(&self) -> &str {
        &self.name
    }

    fn open(&self) -> io::Result<Box<dyn Read + '_>> {
        let mut file = self.file.borrow().try_clone()?;
        file.seek(SeekFrom::Start(0))?;
        Ok(Box::new(file))
    }
}

/// The files of a survey that one name on the command line stands for, and what
/// is to be said of them.
pub(super) struct Surveys {
    pub(super) files: Vec<Box<dyn SurveyFile>>,
    pub(super) diagnostics: Vec<Diagnostic>,
}

/// More does not come through a pipe: 2 GiB. A survey of ten million rows takes
/// a fifth of it.
const MOST_SPOOLED: u64 = 2 << 30;

/// No line of a survey is longer, and no workbook: 64 MiB.
const LONGEST_LINE: u64 = 64 << 20;

/// A ruleset is not longer: 4 MiB. The longest that is shipped takes a twentieth.
const LONGEST_RULESET: u64 = 4 << 20;

/// Opens a survey once, so that a missing file is known before anything is judged.
///
/// # Errors
/// What the system says, and for a folder that it is one.
pub(super) fn survey(path: &Path, input: &mut dyn Read) -> io::Result<Surveys> {
    if path == Path::new("-") {
        return spooled("standard input".to_owned(), input);
    }
    let name = path.display().to_string();
    let kind = fs::metadata(path)?.file_type();
    if kind.is_dir() {
        return Err(io::Error::other("this is a folder, and a survey is a file"));
    }
    let mut file = File::open(path)?;
    if !kind.is_file() {
        return spooled(name, &mut file);
    }
    if let Some(surveys) = workbook(&name, &mut file)? {
        return Ok(surveys);
    }
    Ok(Surveys::one(OnDisk {
        name,
        path: path.to_owned(),
    }))
}

impl Surveys {
    fn one(file: impl SurveyFile + 'static) -> Surveys {
        Surveys {
            files: vec![Box::new(file)],
            diagnostics: Vec::new(),
        }
    }
}

/// What comes through a pipe or from a device, kept so that it can be read twice.
fn spooled(name: String, stream: &mut dyn Read) -> io::Result<Surveys> {
    let mut file = tempfile::tempfile()?;
    spool(stream, &mut file, MOST_SPOOLED)?;
    file.seek(SeekFrom::Start(0))?;
    if let Some(surveys) = workbook(&name, &mut file)? {
        return Ok(surveys);
    }
    Ok(Surveys::one(Spooled {
        name,
        file: RefCell::new(file),
    }))
}

/// Copies what comes, and ends where it is more than a survey can be: too many bytes, or
/// too many without the end of a line.
fn spool(stream: &mut dyn Read, into: &mut dyn Write, most: u64) -> io::Result<()> {
    let mut piece = vec![0; 64 << 10];
    let (mut came, mut line): (u64, u64) = (0, 0);
    loop {
        let read = match stream.read(&mut piece) {
            Ok(0) => return into.flush(),
            Ok(read) => &piece[..read],
            Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
            Err(error) => return Err(error),
        };
        came += read.len() as u64;
        line = match memchr::memrchr2(b'\n', b'\r', read) {
            Some(end) => (read.len() - end - 1) as u64,
            None => line + read.len() as u64,
        };
        if line > LONGEST_LINE {
            return Err(io::Error::other(
                "64 MiB came without the end of a line, and no survey is so",
            ));
        }
        if came > most {
            return Err(io::Error::other(
                "more than 2 GiB came, and no survey is so long",
            ));
        }
        into.write_all(read)?;
    }
}

/// The sheets of a file that is a workbook, whatever it is called.
#[cfg(feature = "spreadsheet")]
fn workbook(name: &str, file: &mut File) -> io::Result<Option<Surveys>> {
    let mut bytes = Vec::new();
    file.take(4).read_to_end(&mut bytes)?;
    if !workbook::is_one(&bytes) {
        return Ok(None);
    }
    file.take(workbook::LARGEST).read_to_end(&mut bytes)?;
    let opened = if bytes.len() as u64 > workbook::LARGEST {
        Err(workbook::Refusal::TooLarge)
    } else {
        workbook::open(name, &bytes)
    };
    Ok(Some(match opened {
        Ok(opened) => Surveys {
            files: opened.files,
            diagnostics: opened.diagnostics,
        },
        Err(refusal) => Surveys {
            files: Vec::new(),
            diagnostics: vec![refusal.diagnostic(name)],
        },
    }))
}

/// Without the feature `spreadsheet` a workbook is refused where it is read.
#[cfg(not(feature = "spreadsheet"))]
fn workbook(_name: &str, _file: &mut File) -> io::Result<Option<Surveys>> {
    Ok(None)
}

/// A ruleset's text; `None` where there is no such file, or it is none that a
/// ruleset could stand in: a folder, a device, too long, no UTF-8 text.
pub(super) fn ruleset(name: &str) -> Option<SourceFile> {
    let about = fs::metadata(name).ok()?;
    if !about.is_file() || about.len() > LONGEST_RULESET {
        return None;
    }
    let mut text = String::new();
    let file = File::open(name).ok()?;
    file.take(LONGEST_RULESET).read_to_string(&mut text).ok()?;
    Some(SourceFile::new(name, &text))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rows without an end.
    struct Rows(u64);

    impl Read for Rows {
        fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
            let row = b"a,g,height,36 in\n";
            for (byte, of) in into.iter_mut().zip(row.iter().cycle()) {
                *byte = *of;
            }
            self.0 += into.len() as u64;
            Ok(into.len())
        }
    }

    #[test]
    fn rows_without_an_end_are_refused_at_the_bound() {
        let (mut rows, mut kept) = (Rows(0), Vec::new());
        let error = spool(&mut rows, &mut kept, 1 << 20).expect_err("it ends");
        assert!(
            error.to_string().contains("no survey is so long"),
            "{error}"
        );
        assert!(
            rows.0 <= (1 << 20) + (64 << 10),
            "{} bytes were taken",
            rows.0
        );
        assert!(kept.len() <= 1 << 20, "{} bytes were kept", kept.len());
    }

    #[test]
    fn whatever_ends_is_kept_whole() {
        let text = "a,g,height,36 in\r\n".repeat(9_000);
        let mut kept = Vec::new();
        spool(&mut text.as_bytes(), &mut kept, 1 << 20).expect("it ends");
        assert_eq!(kept, text.as_bytes());
    }
}
