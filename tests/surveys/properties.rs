//! What holds for every survey.
