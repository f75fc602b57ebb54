//! The marks: the bar is what is asked, the dot is the reading, up is the good side.
//! Always beside its word.

use maud::Markup;
use maud::html;

use crate::items::Verdict;
use crate::report::reader;

/// The id of a verdict's mark.
const fn id(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::FallsShort => "#m-short",
        Verdict::TooClose => "#m-near",
        Verdict::NotSettled => "#m-unclear",
        Verdict::NotMeasured => "#m-open",
        Verdict::Meets => "#m-meets",
        Verdict::DoesNotApply => "#m-none",
    }
}

/// The mark alone; a screen reader has the word beside it.
pub(in crate::report) fn mark(verdict: Verdict) -> Markup {
    html! { svg class="m" aria-hidden="true" { use href=(id(verdict)) {} } }
}

/// The mark beside a guard's name.
pub(super) fn big(verdict: Verdict) -> Markup {
    html! { svg class="m m-big" aria-hidden="true" { use href=(id(verdict)) {} } }
}

/// The mark with its word.
pub(super) fn said(verdict: Verdict) -> Markup {
    with(verdict, reader::verdict(verdict))
}

/// The mark with another word for it.
pub(super) fn with(verdict: Verdict, word: &str) -> Markup {
    html! { span class="mw" { (mark(verdict)) " " (word) } }
}

/// What the marks of the page refer to.
pub(super) fn symbols() -> Markup {
    html! {
        svg class="defs" aria-hidden="true" focusable="false" {
            symbol id="m-short" viewBox="0 0 28 36" {
                line x1="3" x2="25" y1="18" y2="18" class="bar" {}
                circle cx="14" cy="28" r="6" class="dot" {}
            }
            symbol id="m-near" viewBox="0 0 28 36" {
                circle cx="14" cy="18" r="6.5" class="ring" {}
                path d="M7.5 18a6.5 6.5 0 0 0 13 0z" class="dot" {}
                line x1="1" x2="27" y1="18" y2="18" class="bar" {}
            }
            symbol id="m-unclear" viewBox="0 0 28 36" {
                line x1="1" x2="27" y1="18" y2="18" class="bar" {}
                circle cx="14" cy="18" r="8" class="dash" {}
            }
            symbol id="m-open" viewBox="0 0 28 36" { circle cx="14" cy="18" r="7" class="dashed" {} }
            symbol id="m-meets" viewBox="0 0 28 36" {
                line x1="3" x2="25" y1="18" y2="18" class="bar" {}
                circle cx="14" cy="8" r="5.5" class="ring" {}
            }
            symbol id="m-none" viewBox="0 0 28 36" { line x1="8" x2="20" y1="18" y2="18" class="ring" {} }
        }
    }
}

/// What each mark means.
pub(super) fn legend() -> Markup {
    html! {
        ul class="legend" { @for verdict in Verdict::ALL { li { (said(verdict)) } } }
        p class="source" { "The bar is what is asked, the dot is the reading: above the bar is the good side." }
    }
}
