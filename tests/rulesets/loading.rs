//! Loading.
