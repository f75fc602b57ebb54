//! A survey, asked for one question at a time: what to ask next, what an answer
//! becomes, what is still missing. Nothing here knows a terminal, a file or a
//! clock: the text of a survey goes in, and the text of a survey comes out.

mod answer;
mod asking;
mod command;
mod contradiction;
mod decided;
mod input;
mod mend;
mod naming;
mod outcome;
mod page;
mod page_error;
mod pending;
mod place;
mod place_word;
mod plan;
mod prompts;
mod question;
mod row;
mod rules_search;
mod sizes;
mod together;
mod understood;
mod unit;
mod view;
#[expect(clippy::module_inception, reason = "the type gives the file its name")]
mod walk;
mod wishes;
mod words;

pub use command::COMMANDS;
pub use outcome::{GuardDone, NowSettled, Reply};
pub use place::GuardName;
pub use question::{AnswerTopic, GuardTopic, Prompt, PromptChoice, RulesTopic, Taking, Topic};
pub use rules_search::{RulesSearch, RulesSought};
pub use view::rules_of;
pub use walk::{Settings, Walk, WalkError};
