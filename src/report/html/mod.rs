//! The report as a page that one hands over: it shows what is told of each guard and
//! works nothing out.

mod document;
mod ending;
mod guard;
mod headings;
mod many;
mod marks;
mod sheet;

pub use document::HtmlReport;
pub use document::PAGE_POLICY;
pub use document::PAGE_STYLE;
