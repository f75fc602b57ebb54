//! What a measuring drawing is made of: a small language of marks on a grid of
//! columns and rows, so that one source gives text and vectors.

/// A place on the grid: column from the left, row from the top. In vectors a
/// column is [`COLUMN`] and a row [`ROW`] wide.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct At {
    /// Column.
    pub x: i32,
    /// Row.
    pub y: i32,
}

/// The width of a column in drawing units.
pub const COLUMN: i32 = 6;
/// The height of a row in drawing units.
pub const ROW: i32 = 11;

/// Where a dimension ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DimensionEnds {
    /// In the middle of the first and the last cell.
    Centres,
    /// At the outer sides of the first and the last cell: between two faces.
    Faces,
}

/// One mark of a drawing. Later marks lie above earlier ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// A ball around the middle of a cell.
    Ball {
        /// Its centre.
        at: At,
        /// Its diameter in columns.
        across: i32,
    },
    /// A slim upright.
    Baluster {
        /// Its column.
        x: i32,
        /// Its first and last row.
        rows: (i32, i32),
    },
    /// The outline of a thing, its first and its last cell.
    Box(At, At),
    /// A dotted helping line: a level, the line of the noses.
    Dots(At, At),
    /// Words, from this cell on to the right.
    Label(At, &'static str),
    /// A thick upright.
    Post {
        /// Its column.
        x: i32,
        /// Its first and last row.
        rows: (i32, i32),
    },
    /// A rail; its upper edge runs from cell to cell.
    Rail(At, At),
    /// Something solid, hatched, from its first to its last cell: floor, wall, step.
    Solid(At, At),
    /// A dimension with arrows and end marks, level or plumb: what is measured.
    Span(At, At, DimensionEnds),
}

/// A drawing on its grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DrawingScene {
    /// What it shows, in one sentence.
    pub caption: &'static str,
    /// How many columns it takes.
    pub columns: i32,
    /// How many rows it takes.
    pub rows: i32,
    /// Its marks, from the back to the front.
    pub marks: &'static [Mark],
}
