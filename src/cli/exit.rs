//! Exit status.

use std::process::ExitCode;

/// How a run ended, as the shell sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Exit {
    /// 0: every applicable rule is met; or the command did what it was asked.
    Met,
    /// 1: something falls short; an example of a ruleset fails.
    FallsShort,
    /// 2: a bad file or command line; wins over the others.
    BadInput,
    /// 3: nothing falls short, but something is undecided.
    Undecided,
}

impl Exit {
    /// The number.
    #[must_use]
    pub const fn code(self) -> u8 {
        match self {
            Exit::Met => 0,
            Exit::FallsShort => 1,
            Exit::BadInput => 2,
            Exit::Undecided => 3,
        }
    }
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> ExitCode {
        ExitCode::from(exit.code())
    }
}
