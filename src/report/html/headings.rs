//! Headings of the right depth: a page of one guard has its name at the top, a page
//! of many has it below.

use maud::Markup;
use maud::html;

/// How deep a heading lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum HeadingDepth {
    /// The guard is the page.
    Alone,
    /// One of several.
    OfSeveral,
}

impl HeadingDepth {
    /// The guard's name.
    pub(super) fn name(self, id: &str, content: &Markup) -> Markup {
        match self {
            HeadingDepth::Alone => html! { h1 class="name" id=(id) { (content) } },
            HeadingDepth::OfSeveral => html! { h2 class="name" id=(id) { (content) } },
        }
    }

    /// A part of what is said of a guard.
    pub(super) fn part(self, content: &str) -> Markup {
        match self {
            HeadingDepth::Alone => html! { h2 class="sub" { (content) } },
            HeadingDepth::OfSeveral => html! { h3 class="sub" { (content) } },
        }
    }

    /// A thing measured.
    pub(super) fn card(self, content: &str) -> Markup {
        match self {
            HeadingDepth::Alone => html! { h3 class="card-name" { (content) } },
            HeadingDepth::OfSeveral => html! { h4 class="card-name" { (content) } },
        }
    }
}
