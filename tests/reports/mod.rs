//! Reports of a few whole surveys in every form, and what must hold of every report.

mod first_screen;
mod forms;
mod found_again;
mod properties;
mod ranking;
mod said;
mod scenes;
mod texts;
