//! Places in files, and what may be wrong there.
//!
//! A [`Diagnostic`] is about a *file*; what is wrong with a railing is a
//! finding and lives in `judge`. How a diagnostic looks is decided in
//! `report`; nothing here prints or opens anything.

mod cell;
mod csv;
mod diagnostic;
mod encoding;
mod excerpt;
mod nearest;

pub use cell::{CellSpan, Quoting};
pub use csv::{FoundRow, LONGEST_ROW, RawRow, Scanner};
pub use diagnostic::{Code, Diagnostic, Diagnostics, Label, Severity};
pub use encoding::{Decoded, Encoding};
pub use excerpt::{Excerpt, SourceFile};
pub use nearest::{folded, nearest};
