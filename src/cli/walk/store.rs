//! The survey on disk: replaced whole after every answer, never by two walks at
//! once, and never over what another program has written meanwhile.

use std::fs;
use std::fs::File;
use std::fs::OpenOptions;
use std::fs::TryLockError;
use std::io;
use std::io::Read;
use std::io::Write;
use std::path::Path;
use std::path::PathBuf;

/// A survey that this walk alone writes to.
pub(super) struct Store {
    path: PathBuf,
    /// What stands in the file as far as this walk knows; `None` while there is none.
    known: Option<Vec<u8>>,
    _lock: Lock,
}

/// Why a survey cannot be walked through or saved.
#[derive(Debug, thiserror::Error)]
pub(super) enum StoreError {
    /// Another walk has it.
    #[error("another walk has this survey open; finish that one first")]
    Busy,
    /// Another program has written to it; its text.
    #[error("another program has changed it")]
    Changed(String),
    /// A folder has its name now.
    #[error("a folder of this name stands in its place")]
    Folder,
    /// It is there no more.
    #[error("it is there no more")]
    Gone,
    /// The system refuses.
    #[error("{0}")]
    Io(#[from] io::Error),
    /// A device or a pipe.
    #[error("a walk is kept in a file, and this is none")]
    NoFile,
    /// Not as UTF-8.
    #[error("it is not saved as UTF-8: save it again as \"CSV UTF-8\"")]
    NotText,
    /// A file that may not be written to.
    #[error("it is read-only; nothing that you answer could be saved in it")]
    ReadOnly,
    /// Longer than what a person types.
    #[error("it is longer than 64 MiB, and no walk wrote it")]
    TooLong,
    /// A workbook of an office program.
    #[error("this is a workbook, and a walk goes on in CSV")]
    Workbook,
}

/// No survey that a walk goes on with is longer: 64 MiB, some million rows.
const LONGEST: u64 = 64 << 20;

/// How files of workbooks are called. One that begins so is one, however it is called.
const WORKBOOKS: [&str; 4] = ["xlsx", "ods", "xls", "xlsb"];
const WORKBOOKS_BEGIN: [[u8; 4]; 2] = [*b"PK\x03\x04", *b"\xd0\xcf\x11\xe0"];

/// Whether a walk can go on in a file, or begin one of this name.
fn is_for_a_walk(path: &Path) -> Result<(), StoreError> {
    let ending = path.extension().unwrap_or_default().to_string_lossy();
    if WORKBOOKS.contains(&ending.to_lowercase().as_str()) {
        return Err(StoreError::Workbook);
    }
    match fs::metadata(path) {
        Ok(about) if !about.is_file() => Err(StoreError::NoFile),
        Ok(about) if about.len() > LONGEST => Err(StoreError::TooLong),
        Ok(_) if begins_as_a_workbook(path) => Err(StoreError::Workbook),
        // what is not there is begun; what may not be looked at is said where it is read
        Ok(_) | Err(_) => Ok(()),
    }
}

fn begins_as_a_workbook(path: &Path) -> bool {
    let mut begins = [0; 4];
    let read = File::open(path).and_then(|mut file| file.read_exact(&mut begins));
    read.is_ok() && WORKBOOKS_BEGIN.contains(&begins)
}

impl Store {
    /// Opens a survey, or the place where one is to be; its text with it.
    pub(super) fn open(path: &Path) -> Result<(Store, String), StoreError> {
        // a link stays a link
        let path = path.canonicalize().unwrap_or_else(|_| path.to_owned());
        if path.is_dir() {
            let error = io::Error::other("this is a folder, and a survey is a file");
            return Err(StoreError::Io(error));
        }
        is_for_a_walk(&path)?;
        let lock = Lock::of(&path)?;
        // left behind by a walk that was killed while it wrote
        drop(fs::remove_file(hidden_beside(&path, "new")));
        let known = read(&path)?;
        if known.is_some() && fs::metadata(&path)?.permissions().readonly() {
            return Err(StoreError::ReadOnly);
        }
        let text = text_of(known.as_deref())?.unwrap_or_default();
        let store = Store {
            path,
            known,
            _lock: lock,
        };
        Ok((store, text))
    }

    /// Whether this text stands in the file already.
    pub(super) fn holds(&self, text: &str) -> bool {
        self.known.as_deref() == Some(text.as_bytes())
    }

    /// Puts a text in the place of the file; on the disk when it comes back.
    pub(super) fn save(&mut self, text: &str) -> Result<(), StoreError> {
        if self.path.is_dir() {
            return Err(StoreError::Folder);
        }
        let now = read(&self.path)?;
        if now != self.known {
            let changed = text_of(now.as_deref())?;
            self.known = now;
            return Err(changed.map_or(StoreError::Gone, StoreError::Changed));
        }
        if now.is_some() && fs::metadata(&self.path)?.permissions().readonly() {
            return Err(StoreError::ReadOnly);
        }
        let new = hidden_beside(&self.path, "new");
        let written = write_whole(&new, text, &self.path);
        let placed = written.and_then(|()| fs::rename(&new, &self.path));
        if let Err(error) = placed {
            drop(fs::remove_file(&new));
            return Err(StoreError::Io(error));
        }
        self.known = Some(text.as_bytes().to_vec());
        sync_folder(&self.path);
        Ok(())
    }

    /// Keeps a text that could not be saved: where.
    pub(super) fn keep_elsewhere(&self, text: &str) -> io::Result<PathBuf> {
        let name = self.path.file_name().unwrap_or_default();
        let mut name = name.to_os_string();
        name.push(format!(".unsaved-{}.csv", std::process::id()));
        let path = std::env::temp_dir().join(name);
        if let Err(error) = fs::write(&path, text) {
            // half of a survey would be taken for the whole
            drop(fs::remove_file(&path));
            return Err(error);
        }
        Ok(path)
    }
}

fn text_of(bytes: Option<&[u8]>) -> Result<Option<String>, StoreError> {
    let text = bytes.map(|bytes| String::from_utf8(bytes.to_vec()));
    text.transpose().map_err(|_| StoreError::NotText)
}

/// The bytes of a file; `None` where there is none.
fn read(path: &Path) -> io::Result<Option<Vec<u8>>> {
    match fs::read(path) {
        Ok(bytes) => Ok(Some(bytes)),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
        Err(error) => Err(error),
    }
}

fn write_whole(new: &Path, text: &str, old: &Path) -> io::Result<()> {
    let mut file = File::create(new)?;
    if let Ok(old) = fs::metadata(old) {
        file.set_permissions(old.permissions())?;
    }
    file.write_all(text.as_bytes())?;
    file.sync_all()
}

/// That the file has its new name outlives a power cut as well.
fn sync_folder(path: &Path) {
    if let Ok(folder) = File::open(folder_of(path)) {
        // not every file system can do it; the file itself is on the disk
        drop(folder.sync_all());
    }
}

fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if folder != Path::new("") => folder,
        Some(_) | None => Path::new("."),
    }
}

/// A file beside the survey: `.house.csv.lock`.
fn hidden_beside(path: &Path, what: &str) -> PathBuf {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    folder_of(path).join(format!(".{name}.{what}"))
}

/// Held while a walk goes on. The system lets go of it when the program ends,
/// however it ends; the file that is left behind then blocks nobody.
struct Lock {
    path: PathBuf,
    _file: File,
}

impl Lock {
    fn of(survey: &Path) -> Result<Lock, StoreError> {
        let path = hidden_beside(survey, "lock");
        let file = OpenOptions::new()
            .create(true)
            .truncate(false)
            .write(true)
            .open(&path)?;
        match file.try_lock() {
            // a walk that ended just now may have taken the file away
            Ok(()) if !is_still_there(&file, &path) => Err(StoreError::Busy),
            Ok(()) => Ok(Lock { path, _file: file }),
            Err(TryLockError::WouldBlock) => Err(StoreError::Busy),
            Err(TryLockError::Error(error)) => Err(StoreError::Io(error)),
        }
    }
}

#[cfg(unix)]
fn is_still_there(file: &File, path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    match (file.metadata(), fs::metadata(path)) {
        (Ok(locked), Ok(there)) => locked.ino() == there.ino(),
        (Err(_), _) | (_, Err(_)) => false,
    }
}

#[cfg(not(unix))]
fn is_still_there(_file: &File, _path: &Path) -> bool {
    true
}

impl Drop for Lock {
    fn drop(&mut self) {
        drop(fs::remove_file(&self.path));
    }
}
