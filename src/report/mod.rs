//! Reports: text, JSON, CSV, the summary alone, and diagnostics as text.
//!
//! Each form writes to an `impl Write`; styles are always written as ANSI
//! sequences, and the command line strips them where they should not be.
//! Nothing here decides a verdict.

mod actions;
mod acts;
mod advice;
mod basis;
mod cautions;
mod compared;
mod conversation;
mod csv;
mod csv_line;
mod decided;
mod diagnostics;
mod difference;
mod drawing;
mod escape;
mod explain;
mod forms;
mod found_rules;
mod guard_drawing;
mod html;
mod items;
mod json;
mod judging;
mod layout;
mod layout_svg;
mod link_reasons;
mod link_words;
mod matters;
mod millimetres;
mod opening;
mod opening_svg;
mod ours;
mod page_for;
mod palette;
mod photo;
mod plans;
mod reader;
mod remedied;
mod rulesets;
mod sheet;
mod strength;
mod summary;
mod summary_form;
mod tally;
mod text;
mod told;
mod words;
mod wrap;

pub use self::csv::Csv;
pub use self::json::{Json, SCHEMA, SCHEMA_TEXT};
pub use self::summary::Summary;
pub use self::summary_form::SummaryForm;
pub use self::text::{TextReport, first_screen};
pub use basis::{Detail, Explain, JudgedGuard, Report, ReportBasis, ReportForm};
pub use cautions::deferral;
pub use compared::{
    ComparisonForm, FilledList, codes as comparison_codes, comparison, is_an_action_list,
};
pub use conversation::{Manner, WalkBegins, answered, asked, before_a_walk, opening_words};
pub use diagnostics::{FileNames, diagnostics_text};
pub use difference::difference;
pub use drawing::{plain, vector};
pub use escape::{one_line, safe_cell};
pub use forms::report;
pub use found_rules::found_rules;
pub use html::{HtmlFolder, HtmlReport, PAGE_POLICY, PAGE_STYLE, PageSink};
pub use items::{item, items};
pub use judging::{GuardsWritten, each_guard, write_guards};
pub use layout::{LayoutAnswer, layout_json, layout_text};
pub use layout_svg::layout_svg;
pub use opening::{OpeningAnswer, opening_json, opening_notes, opening_text};
pub use opening_svg::opening_svg;
pub use ours::is_a_report;
pub use page_for::PageFor;
pub use photo::{PhotoShown, PhotoSource};
pub use plans::{
    PlanOutcome, PlannedGuard, altered_survey, plans_csv, plans_json, plans_svg, plans_text,
};
pub use reader::{capital, hazard, name as guard_name, verdict};
pub use rulesets::{Counts, list, short_list, show, standing};
pub use sheet::{
    BlankSurvey, BlankTable, Paper, Sheet, StrengthPages, blank_survey, blank_table, sheet,
};
pub use words::{assumption, reason};
pub use wrap::{NARROWEST, TextPage, WIDEST, WIDTH, wrapped};
