//! The parts of a workbook: files in a zip archive, unpacked within bounds.

use std::io;
use std::io::Cursor;
use std::io::Read;

use zip::ZipArchive;
use zip::result::ZipError;

use crate::cli::workbook::refusal::Refusal;

/// No part is unpacked beyond this: 128 MiB. A sheet of 20 000 rows takes 4.
const LARGEST_PART: u64 = 128 << 20;

/// All parts that are read together: 256 MiB.
const LARGEST_WHOLE: u64 = 256 << 20;

/// The archive, and how much may still be unpacked of it.
pub(super) struct ZipParts<'b> {
    archive: ZipArchive<Cursor<&'b [u8]>>,
    left: u64,
}

impl<'b> ZipParts<'b> {
    /// The parts in these bytes.
    ///
    /// # Errors
    /// Where they are no archive that can be read.
    pub(super) fn open(bytes: &'b [u8]) -> Result<ZipParts<'b>, Refusal> {
        let archive = ZipArchive::new(Cursor::new(bytes)).map_err(|_| Refusal::Damaged)?;
        Ok(ZipParts {
            archive,
            left: LARGEST_WHOLE,
        })
    }

    /// Whether there is a part of this name.
    pub(super) fn has(&self, name: &str) -> bool {
        self.archive.index_for_name(name).is_some()
    }

    /// Whether a part's name ends so.
    pub(super) fn has_ending(&self, ending: &str) -> bool {
        let mut names = self.archive.file_names();
        names.any(|name| name.is_ok_and(|name| name.ends_with(ending)))
    }

    /// A part as text; `None` where there is none of this name.
    ///
    /// # Errors
    /// A part under a password, too large, damaged or no UTF-8 text.
    pub(super) fn text(&mut self, name: &str) -> Result<Option<String>, Refusal> {
        let part = match self.archive.by_name(name) {
            Ok(part) => part,
            Err(ZipError::FileNotFound) => return Ok(None),
            Err(ZipError::UnsupportedArchive(why)) if why == ZipError::PASSWORD_REQUIRED => {
                return Err(Refusal::Password);
            }
            Err(_) => return Err(Refusal::Damaged),
        };
        let most = LARGEST_PART.min(self.left);
        let mut bytes = Vec::new();
        let read = part.take(most + 1).read_to_end(&mut bytes);
        let size = read.map_err(|_: io::Error| Refusal::Damaged)? as u64;
        if size > most {
            return Err(Refusal::TooLarge);
        }
        self.left -= size;
        let text = String::from_utf8(bytes).map_err(|_| Refusal::Damaged)?;
        let text = text
            .strip_prefix('\u{feff}')
            .map(str::to_owned)
            .unwrap_or(text);
        Ok(Some(text))
    }
}
