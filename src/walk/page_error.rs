//! Why the text of a survey cannot be changed.

/// Why a text could not be changed.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub(super) enum PageError {
    /// A file that begins with no header of a survey.
    #[error("the file does not begin as a survey does")]
    NoHeader,
    /// Marks of a row that run on or are never closed.
    #[error(
        "line {0} of the file has quotation marks that do not close; put them right there first"
    )]
    Marks(u64),
    /// A row that is gone.
    #[error("line {0} of the file is not what it was")]
    Gone(u64),
    /// A building where the file has no column for it.
    #[error(
        "this file has no column building; leave the building out, or add the column to the file"
    )]
    NoBuilding,
    /// A unit where the file has no column for it.
    #[error("this file has no column unit; leave the unit out, or add the column to the file")]
    NoUnit,
}
