//! The styles of text on a terminal. Meaning never hangs on them.

use owo_colors::Style;

use crate::items::Verdict;

/// Titles of sections.
const HEADING: Style = Style::new().bold();
/// What falls short.
const SHORT: Style = Style::new().red().bold();
/// What nobody can tell yet.
const OPEN: Style = Style::new().yellow();
/// What meets.
const MET: Style = Style::new().green();
/// What does not bear on it.
const ASIDE: Style = Style::new().dimmed();

/// A section's title.
#[must_use]
pub(super) fn heading(text: &str) -> String {
    HEADING.style(text).to_string()
}

/// Text in the colour of a verdict.
#[must_use]
pub(super) fn verdict(text: &str, verdict: Verdict) -> String {
    let style = match verdict {
        Verdict::FallsShort => SHORT,
        Verdict::TooClose | Verdict::NotSettled | Verdict::NotMeasured => OPEN,
        Verdict::Meets => MET,
        Verdict::DoesNotApply => ASIDE,
    };
    style.style(text).to_string()
}

/// Text that may be passed over.
#[must_use]
pub(super) fn aside(text: &str) -> String {
    ASIDE.style(text).to_string()
}
