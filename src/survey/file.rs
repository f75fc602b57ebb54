//! Where a survey comes from, and what can go wrong on the way.

use std::io;
use std::io::Read;
use std::sync::Arc;

use crate::survey::sheet::SheetCells;

/// A file that can be opened as often as needed.
pub trait SurveyFile {
    /// The name as the user gave it.
    fn name(&self) -> &str;

    /// Opens it at its beginning.
    ///
    /// # Errors
    /// What the system says.
    fn open(&self) -> io::Result<Box<dyn Read + '_>>;

    /// What a spreadsheet tells beside the text, where it is a sheet of one: its
    /// rows are lines of the text.
    fn sheet(&self) -> Option<&SheetCells> {
        None
    }
}

/// A survey that is no file on a disk: its text, under a name for what is wrong with it.
#[derive(Clone, Debug)]
pub struct InMemory {
    name: Arc<str>,
    bytes: Arc<[u8]>,
}

impl InMemory {
    /// Text, or bytes that may turn out to be none.
    #[must_use]
    pub fn new(name: impl Into<Arc<str>>, bytes: impl Into<Arc<[u8]>>) -> InMemory {
        InMemory {
            name: name.into(),
            bytes: bytes.into(),
        }
    }
}

impl SurveyFile for InMemory {
    fn name(&self) -> &str {
        &self.name
    }

    fn open(&self) -> io::Result<Box<dyn Read + '_>> {
        Ok(Box::new(&*self.bytes))
    }
}

/// A survey file that could not be read.
#[derive(Debug, thiserror::Error)]
#[error("{file}: {error}")]
pub struct FileError {
    /// The file's name.
    pub file: Arc<str>,
    /// What the system said.
    #[source]
    pub error: io::Error,
}

impl FileError {
    /// For `map_err`: an error of this file.
    pub(super) fn of(file: &dyn SurveyFile) -> impl Fn(io::Error) -> FileError {
        let name: Arc<str> = file.name().into();
        move |error| FileError {
            file: Arc::clone(&name),
            error,
        }
    }

    /// The file is not the one that was read before.
    pub(super) fn changed(file: &dyn SurveyFile) -> FileError {
        FileError::of(file)(io::Error::other("it changed while it was being read"))
    }
}
