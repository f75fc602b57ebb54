//! `--output`: a file that is written whole or not at all, over nothing that is
//! somebody else's.

use std::fs;
use std::fs::File;
use std::fs::OpenOptions;
use std::io;
use std::io::BufWriter;
use std::io::IsTerminal;
use std::io::Read;
use std::io::Write;
use std::path::Path;
use std::path::PathBuf;
use std::sync::Mutex;
use std::sync::Once;

use tempfile::NamedTempFile;

use crate::report;

/// Whether a file may be replaced that is no report of ours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Replacing {
    /// Whatever stands there: `--force`.
    Anything,
    /// Only a report of ours; on a terminal it is asked for.
    Reports,
}

/// Why nothing is written.
#[derive(Debug, thiserror::Error)]
pub(super) enum OutputError {
    /// The system refuses.
    #[error("{0}")]
    Io(#[from] io::Error),
    /// It would replace a file that is no report.
    #[error("there is a file {} already, and it is no report of guardrule", .0.display())]
    NotOurs(PathBuf),
}

/// Where output goes.
pub(super) enum Output {
    /// A file that takes its place only when it is complete.
    File {
        temporary: BufWriter<NamedTempFile>,
        path: PathBuf,
    },
    /// A pipe or device: written through.
    Through(BufWriter<File>),
}

/// The file that is to go if the program is interrupted.
static UNFINISHED: Mutex<Option<PathBuf>> = Mutex::new(None);

impl Output {
    /// A temporary file beside the one that is to be; a link is followed.
    ///
    /// # Errors
    /// Where nothing can be written there, or something stands there that is not ours.
    pub(super) fn to(path: &Path, replacing: Replacing) -> Result<Output, OutputError> {
        if path.as_os_str().is_empty() {
            return Err(io::Error::other("the name after --output is empty").into());
        }
        let about = match fs::metadata(path) {
            Ok(about) => Some(about),
            Err(error) if error.kind() == io::ErrorKind::NotFound => None,
            Err(error) => return Err(error.into()),
        };
        let path = match (&about, fs::symlink_metadata(path)) {
            (Some(_), _) => path.canonicalize()?,
            (None, Ok(_)) => {
                return Err(io::Error::other("this is a link to a file that is not there").into());
            }
            (None, Err(_)) => path.to_owned(),
        };
        if let Some(about) = about {
            if about.is_dir() {
                return Err(io::Error::other("this is a folder").into());
            }
            if !about.is_file() {
                let file = OpenOptions::new().write(true).open(&path)?;
                return Ok(Output::Through(BufWriter::new(file)));
            }
            if about.permissions().readonly() {
                return Err(io::Error::other("this file is read-only").into());
            }
            let allowed = replacing == Replacing::Anything || is_ours(&path)? || allowed(&path)?;
            if !allowed {
                return Err(OutputError::NotOurs(path));
            }
        }
        let folder = match path.parent() {
            Some(folder) if folder != Path::new("") => folder,
            Some(_) | None => Path::new("."),
        };
        let temporary = NamedTempFile::new_in(folder)?;
        leave_nothing_behind(temporary.path());
        Ok(Output::File {
            temporary: BufWriter::new(temporary),
            path,
        })
    }

    /// Puts the file in its place.
    ///
    /// # Errors
    /// Where that cannot be done; the old file is then untouched.
    pub(super) fn finish(self) -> io::Result<()> {
        match self {
            Output::File { temporary, path } => {
                let temporary = temporary
                    .into_inner()
                    .map_err(io::IntoInnerError::into_error)?;
                share(temporary.as_file(), &path)?;
                temporary.persist(&path)?;
                forget_unfinished();
                Ok(())
            }
            Output::Through(mut stream) => match stream.flush() {
                // its reader has seen enough
                Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(()),
                other => other,
            },
        }
    }
}

impl Write for Output {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        match self {
            Output::File { temporary, .. } => temporary.write(bytes),
            Output::Through(stream) => stream.write(bytes),
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        match self {
            Output::File { temporary, .. } => temporary.flush(),
            Output::Through(stream) => stream.flush(),
        }
    }
}

/// How much of a file tells whether it is a report.
const BEGINNING: u64 = 64 * 1024;

fn is_ours(path: &Path) -> io::Result<bool> {
    let mut beginning = Vec::new();
    File::open(path)?
        .take(BEGINNING)
        .read_to_end(&mut beginning)?;
    Ok(report::is_a_report(&beginning))
}

/// Asks on a terminal whether a file may be replaced.
fn allowed(path: &Path) -> io::Result<bool> {
    if !(io::stdin().is_terminal() && io::stderr().is_terminal()) {
        return Ok(false);
    }
    let name = report::one_line(&path.display().to_string()).into_owned();
    write!(
        io::stderr(),
        "{name} is no report of guardrule. Replace it? [y/N] "
    )?;
    let mut answer = String::new();
    io::stdin().read_line(&mut answer)?;
    Ok(matches!(answer.trim(), "y" | "Y" | "yes"))
}

/// A temporary file is its owner's alone; a report is readable as other files are.
#[cfg(unix)]
fn share(file: &File, path: &Path) -> io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    let mode = fs::metadata(path).map_or(0o644, |old| old.permissions().mode());
    file.set_permissions(fs::Permissions::from_mode(mode))
}

#[cfg(not(unix))]
fn share(_file: &File, _path: &Path) -> io::Result<()> {
    Ok(())
}

/// Takes the file away if the program is interrupted or asked to end.
fn leave_nothing_behind(path: &Path) {
    static HANDLER: Once = Once::new();
    if let Ok(mut unfinished) = UNFINISHED.lock() {
        *unfinished = Some(path.to_owned());
    }
    HANDLER.call_once(|| {
        // where no handler can be set, the file is left behind as it was before
        drop(ctrlc::set_handler(|| {
            if let Ok(mut unfinished) = UNFINISHED.lock()
                && let Some(path) = unfinished.take()
            {
                drop(fs::remove_file(path));
            }
            interrupted();
        }));
    });
}

fn forget_unfinished() {
    if let Ok(mut unfinished) = UNFINISHED.lock() {
        *unfinished = None;
    }
}

/// The status of a program that an interrupt has ended, as shells have it.
#[expect(clippy::exit, reason = "an interrupt ends the program")]
fn interrupted() {
    std::process::exit(130);
}
