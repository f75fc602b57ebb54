//! How much a workbook may hold.

use crate::cli::workbook::refusal::Refusal;

/// Cells, strings and merged ranges of a whole book.
const MOST: usize = 4_000_000;

/// Rows and columns of a sheet, as the programs themselves allow.
const LAST: (u32, u32) = (1_048_576, 16_384);

/// Counts what is read.
#[derive(Debug, Default)]
pub(super) struct WorkbookBounds {
    counted: usize,
}

impl WorkbookBounds {
    /// Counts one more.
    ///
    /// # Errors
    /// Where it is one too many.
    pub(super) fn count(&mut self) -> Result<(), Refusal> {
        self.counted += 1;
        if self.counted > MOST {
            return Err(Refusal::TooLarge);
        }
        Ok(())
    }

    /// A place that no program would write is a fault of the file.
    ///
    /// # Errors
    /// Beyond the last row or column.
    pub(super) fn check_place(&self, (row, column): (u32, u32)) -> Result<(), Refusal> {
        if row >= LAST.0 || column >= LAST.1 {
            return Err(Refusal::Damaged);
        }
        Ok(())
    }
}
