//! What a report tells of a survey, before anybody decides how it looks: text and
//! pages are made from it, and neither works anything out.

mod alike;
mod counts;
mod ending;
mod guard;
mod holds;
mod names;
mod outcome;
mod page;
mod paragraph;
mod rank;
mod survey;
mod tonight;
mod totals;
mod whose;
pub(in crate::report) mod written;

pub(in crate::report) use alike::alike;
pub(in crate::report) use alike::apart;
pub(in crate::report) use counts::counts;
pub(in crate::report) use counts::when_and_by;
pub(in crate::report) use ending::DEFERRAL;
pub(in crate::report) use ending::GENERAL;
pub(in crate::report) use ending::judged_by;
pub(in crate::report) use ending::judging;
pub(in crate::report) use ending::taken;
pub(in crate::report) use guard::GuardTold;
pub(in crate::report) use guard::Next;
pub(in crate::report) use guard::ReportPart;
pub(in crate::report) use names::shared_names;
pub(in crate::report) use outcome::HazardTold;
pub(in crate::report) use page::PageKeeps;
pub(in crate::report) use page::PageTold;
pub(in crate::report) use page::PhotoTold;
pub(in crate::report) use page::RuleTold;
pub(in crate::report) use paragraph::MORE;
pub(in crate::report) use paragraph::Paragraph;
pub(in crate::report) use paragraph::Sentence;
pub(in crate::report) use survey::SurveyTold;
pub(in crate::report) use survey::for_all;
pub(in crate::report) use tonight::ActOfAll;
pub(in crate::report) use tonight::acts_of_all;
pub(in crate::report) use whose::whose;
