//! The core's door for a page: JSON requests in, JSON answers out. The walk, the words
//! and the reports are those of the floors below; a page only shows them.
//!
//! [`Door`] is the same wherever it runs, and is tested like any other code. Compiled
//! to WebAssembly, four functions in front of one door are all that a page sees.

mod answer;
mod check;
mod door;
#[cfg(target_arch = "wasm32")]
#[expect(
    unsafe_code,
    reason = "a name that a page can call is an unsafe attribute; there is no unsafe block"
)]
mod exports;
mod plain;
mod request;
mod screen;

pub use door::Door;
