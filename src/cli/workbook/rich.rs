//! Text in runs: raised and lowered digits are fractions, and a reading may be
//! struck out in part.

/// Puts runs together.
#[derive(Debug, Default)]
pub(super) struct RichText {
    text: String,
    /// The last run was raised or lowered.
    was_raised: bool,
    any_struck: bool,
}

impl RichText {
    /// Adds a run. `3` and a raised `7` are three and seven, not thirty-seven.
    pub(super) fn push(&mut self, run: &str, is_raised: bool, is_struck: bool) {
        if run.is_empty() {
            return;
        }
        let digit_before = self.text.ends_with(|c: char| c.is_ascii_digit());
        let digit_follows = run.starts_with(|c: char| c.is_ascii_digit());
        if is_raised && !self.was_raised && digit_before && digit_follows {
            self.text.push(' ');
        }
        self.text.push_str(run);
        self.was_raised = is_raised;
        self.any_struck |= is_struck;
    }

    /// Whether something of it is struck out: then nobody can tell what holds.
    pub(super) fn is_struck(&self) -> bool {
        self.any_struck
    }

    /// The text.
    pub(super) fn finish(self) -> String {
        self.text
    }
}
