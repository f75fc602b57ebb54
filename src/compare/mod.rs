//! Two rounds of one survey beside each other: what was mended, what is still short,
//! what is worse or new, what nobody measured again.
//!
//! Nothing is guessed: a guard that has no namesake in the other round is asked about,
//! and a change that is smaller than the tapes' doubt is none.

mod change;
mod classify;
mod rounds;

pub use change::{ChangeFound, ChangeKind, ChangeNote, GuardOfRound};
pub use rounds::{Compared, GuardMissing, GuardPair, compared};
