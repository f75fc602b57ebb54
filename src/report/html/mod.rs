//! The report as a page that one hands over: it shows what is told of each guard and
//! works nothing out.

mod document;
mod ending;
mod guard;
mod headings;
mod letters;
mod many;
mod marks;
mod photos;
mod sheet;
mod site;

pub(super) use document::beginning;
pub(super) use document::ending;
pub(super) use many::warnings;
pub(super) use marks::mark;
pub(super) use sheet::PageSheet;
pub(super) use sheet::running;

pub use document::HtmlReport;
pub use document::PAGE_POLICY;
pub use document::PAGE_STYLE;
pub use site::{HtmlFolder, PageSink};
