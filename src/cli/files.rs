//! Files: surveys that are read twice, rulesets, and output that is written
//! whole or not at all.

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

use tempfile::NamedTempFile;

use crate::input::SourceFile;
use crate::survey::SurveyFile;

/// A survey on disk.
pub(super) struct OnDisk {
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

/// Standard input, spooled so that it can be read twice.
pub(super) struct Spooled {
    file: RefCell<File>,
}

impl SurveyFile for Spooled {
    fn name(&self) -> &'static str {
        "standard input"
    }

    fn open(&self) -> io::Result<Box<dyn Read + '_>> {
        let mut file = self.file.borrow().try_clone()?;
        file.seek(SeekFrom::Start(0))?;
        Ok(Box::new(file))
    }
}

/// Opens a survey once, so that a missing file is known before anything is judged.
///
/// # Errors
/// What the system says, and for a folder that it is one.
pub(super) fn survey(path: &Path, input: &mut dyn Read) -> io::Result<Box<dyn SurveyFile>> {
    if path == Path::new("-") {
        let mut file = tempfile::tempfile()?;
        io::copy(input, &mut file)?;
        return Ok(Box::new(Spooled {
            file: RefCell::new(file),
        }));
    }
    if File::open(path)?.metadata()?.is_dir() {
        return Err(io::Error::other("this is a folder, and a survey is a file"));
    }
    Ok(Box::new(OnDisk {
        name: path.display().to_string(),
        path: path.to_owned(),
    }))
}

/// A ruleset's text; `None` where there is no such file or it is no UTF-8 text.
pub(super) fn ruleset(name: &str) -> Option<SourceFile> {
    let text = fs::read_to_string(name).ok()?;
    Some(SourceFile::new(name, &text))
}

/// A file that takes its place only when it is complete.
pub(super) struct Output {
    temporary: NamedTempFile,
    path: PathBuf,
}

impl Output {
    /// A temporary file beside the one that is to be.
    ///
    /// # Errors
    /// Where nothing can be written there.
    pub(super) fn temporary_beside(path: &Path) -> io::Result<Output> {
        let folder = match path.parent() {
            Some(folder) if folder != Path::new("") => folder,
            Some(_) | None => Path::new("."),
        };
        if path.is_dir() {
            return Err(io::Error::other("this is a folder"));
        }
        Ok(Output {
            temporary: NamedTempFile::new_in(folder)?,
            path: path.to_owned(),
        })
    }

    /// Puts the file in its place.
    ///
    /// # Errors
    /// Where that cannot be done; the old file is then untouched.
    pub(super) fn finish(mut self) -> io::Result<()> {
        self.temporary.flush()?;
        make_readable_for_all(self.temporary.as_file(), &self.path)?;
        self.temporary.persist(&self.path)?;
        Ok(())
    }
}

/// A temporary file is its owner's alone; a report is readable as other files are.
#[cfg(unix)]
fn make_readable_for_all(file: &File, path: &Path) -> io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    let mode = fs::metadata(path).map_or(0o644, |old| old.permissions().mode());
    file.set_permissions(fs::Permissions::from_mode(mode))
}

#[cfg(not(unix))]
fn make_readable_for_all(_file: &File, _path: &Path) -> io::Result<()> {
    Ok(())
}

impl Write for Output {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.temporary.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.temporary.flush()
    }
}
