//! The measuring drawings as plain text and as vectors, from one source.

mod plain;
mod vector;

pub use plain::plain;
pub use vector::vector;
