//! The command line: arguments, files, the clock, colour, exit status. What is
//! worth a test of its own lives below.

mod args;
#[cfg(feature = "spreadsheet")]
mod blank_book;
mod check;
mod clock;
mod codes;
mod compare;
mod exit;
mod files;
mod items;
mod judging;
mod layout;
mod opening;
mod output;
mod page;
#[cfg(feature = "photos")]
mod photos;
mod remedy;
mod rules;
mod sheet;
mod survey_rules;
mod terminal;
mod walk;
#[cfg(feature = "spreadsheet")]
mod workbook;

use std::ffi::OsString;

use clap::Parser;

pub use args::Cli;
pub use codes::codes;
pub use exit::Exit;
pub use terminal::Terminal;

use args::Command;

/// Runs the program with these arguments (the program's name first) on these streams.
///
/// Never ends the process: the caller does, with the status that comes back.
pub fn run(args: impl IntoIterator<Item = OsString>, terminal: &mut Terminal<'_>) -> Exit {
    let cli = match Cli::try_parse_from(args) {
        Ok(cli) => cli,
        Err(error) => return terminal.usage(&error),
    };
    terminal.choose_colour(cli.color);
    let done = match cli.command {
        Command::Check(args) => check::run(&args, terminal),
        Command::Compare(args) => compare::run(&args, terminal),
        Command::Items(args) => items::run(&args, terminal),
        Command::Layout(args) => layout::run(&args, terminal),
        Command::Opening(args) => opening::run(&args, terminal),
        Command::Page(args) => page::run(&args, terminal),
        Command::Remedy(args) => remedy::run(&args, terminal),
        Command::Rules(args) => rules::run(&args, terminal),
        Command::Sheet(args) => sheet::run(&args, terminal),
        Command::Walk(args) => walk::run(&args, terminal),
    };
    match done {
        Ok(exit) => exit,
        Err(error) => terminal.failed(&error),
    }
}
