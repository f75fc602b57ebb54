//! Lines that a person types: with editing on a terminal that can, plainly
//! everywhere else.

use std::io;
use std::io::Read;
use std::io::Write;

use rustyline::Config;
use rustyline::Editor;
use rustyline::error::ReadlineError;
use rustyline::history::MemHistory;

use crate::cli::terminal::Keyboard;
use crate::cli::terminal::Terminal;
use crate::report::one_line;

const PROMPT: &str = "> ";

/// No line is as long; what follows is not kept. (common practice, no source)
const LONGEST: usize = 4096;

/// How lines are read.
pub(super) enum Keys {
    /// One by one as they are pressed, with editing and the lines before.
    Edited(Box<Editor<(), MemHistory>>),
    /// As they come, one behind the other.
    Plain(Echo),
}

/// Whether what comes in is to be shown: nobody sees it being typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Echo {
    No,
    Yes,
}

impl Keys {
    pub(super) fn of(terminal: &Terminal<'_>) -> Keys {
        match terminal.keyboard() {
            Keyboard::Editing => {
                let config = Config::builder().bracketed_paste(false).build();
                match Editor::with_history(config, MemHistory::new()) {
                    Ok(editor) => Keys::Edited(Box::new(editor)),
                    Err(_) => Keys::Plain(Echo::No),
                }
            }
            Keyboard::Lines => Keys::Plain(Echo::No),
            Keyboard::Piped => Keys::Plain(Echo::Yes),
        }
    }

    /// The next line; `None` at its end, or when the person breaks off.
    pub(super) fn line(&mut self, terminal: &mut Terminal<'_>) -> io::Result<Option<String>> {
        match self {
            Keys::Edited(editor) => match editor.readline(PROMPT) {
                Ok(line) => {
                    if !line.trim().is_empty() {
                        drop(editor.add_history_entry(&line));
                    }
                    Ok(Some(line))
                }
                Err(ReadlineError::Eof | ReadlineError::Interrupted) => Ok(None),
                Err(ReadlineError::Io(error)) => Err(error),
                Err(error) => Err(io::Error::other(error)),
            },
            Keys::Plain(echo) => {
                let mut out = terminal.out();
                write!(out, "{PROMPT}")?;
                out.flush()?;
                drop(out);
                let line = plain_line(terminal.input())?;
                let mut out = terminal.out();
                match (&line, echo) {
                    (Some(line), Echo::Yes) => writeln!(out, "{}", one_line(line))?,
                    (None, _) => writeln!(out)?,
                    (Some(_), Echo::No) => {}
                }
                Ok(line)
            }
        }
    }
}

fn plain_line(input: &mut dyn Read) -> io::Result<Option<String>> {
    let mut bytes = Vec::new();
    let mut any = false;
    loop {
        let mut byte = [0];
        match input.read(&mut byte) {
            Ok(0) => break,
            Ok(_) if byte == [b'\n'] => {
                any = true;
                break;
            }
            Ok(_) if bytes.len() < LONGEST => bytes.extend(byte),
            Ok(_) => {}
            Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
            Err(error) => return Err(error),
        }
    }
    any |= !bytes.is_empty();
    let line = String::from_utf8_lossy(&bytes)
        .trim_end_matches('\r')
        .to_owned();
    Ok(any.then_some(line))
}
