//! Pages that people hand over, read as text: what stands in them, and what they
//! let themselves do. `pages.mjs` opens them in a browser.

#[cfg(feature = "photos")]
mod photos;
mod report;
