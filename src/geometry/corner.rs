//! A point of an outline.

/// A point in millimetres, as written and not rounded: a corner, or a centre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Across, in millimetres.
    pub x_mm: f64,
    /// Up, in millimetres.
    pub y_mm: f64,
}

impl Corner {
    /// 0:0
    pub(super) const ORIGIN: Corner = Corner {
        x_mm: 0.0,
        y_mm: 0.0,
    };
}
