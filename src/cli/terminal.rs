//! The streams of a run, with or without colour.

use std::io;
use std::io::IsTerminal;
use std::io::Write;

use anstream::AutoStream;
use anstream::ColorChoice;
use anstream::adapter::StripBytes;

use crate::cli::args::Colour;
use crate::cli::exit::Exit;
use crate::input::Diagnostics;
use crate::report;
use crate::report::WIDTH;
use crate::report::one_line;

/// Where output goes. Tests hand in buffers.
pub struct Terminal<'a> {
    out: Box<dyn Write + 'a>,
    err: Box<dyn Write + 'a>,
    input: Box<dyn io::Read + 'a>,
    auto: ColorChoice,
    out_choice: ColorChoice,
    keyboard: Keyboard,
    columns: usize,
    screen: bool,
}

/// How a person's lines come in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Keyboard {
    /// From a terminal that can be drawn on.
    Editing,
    /// From one that cannot: a line at a time, never redrawn.
    Lines,
    /// From a file or another program.
    Piped,
}

/// Output goes out in pieces of this size.
const BUFFER: usize = 64 << 10;

/// No text is narrower. (common practice, no source)
const NARROWEST: usize = 24;

/// No line of a conversation is wider. (common practice, no source)
const WIDEST_TALK: usize = 80;

impl<'a> Terminal<'a> {
    /// The process's own streams.
    #[must_use]
    pub fn of_the_process() -> Terminal<'static> {
        let auto = AutoStream::choice(&io::stdout());
        Terminal {
            out: Box::new(io::BufWriter::with_capacity(BUFFER, io::stdout().lock())),
            err: Box::new(io::stderr().lock()),
            input: Box::new(io::stdin().lock()),
            auto,
            out_choice: auto,
            keyboard: keyboard(),
            columns: columns(),
            screen: io::stdout().is_terminal(),
        }
    }

    /// Streams of a test: no colour unless asked for.
    pub fn new(
        out: impl Write + 'a,
        err: impl Write + 'a,
        input: impl io::Read + 'a,
    ) -> Terminal<'a> {
        Terminal {
            out: Box::new(out),
            err: Box::new(err),
            input: Box::new(input),
            auto: ColorChoice::Never,
            out_choice: ColorChoice::Never,
            keyboard: Keyboard::Piped,
            columns: WIDTH,
            screen: false,
        }
    }

    /// The same with lines of this many columns.
    #[must_use]
    pub fn with_columns(mut self, columns: usize) -> Terminal<'a> {
        self.columns = columns.max(NARROWEST);
        self
    }

    /// How lines come in.
    pub(super) fn keyboard(&self) -> Keyboard {
        self.keyboard
    }

    /// How wide a report may be.
    pub(super) fn columns(&self) -> usize {
        self.columns.clamp(report::NARROWEST, report::WIDEST)
    }

    /// Reads the width of the window anew, where there is one.
    pub(super) fn measure_anew(&mut self) {
        if self.screen {
            self.columns = columns();
        }
    }

    /// How wide a conversation may be.
    pub(super) fn columns_of_a_talk(&self) -> usize {
        self.columns.min(WIDEST_TALK)
    }

    /// Whether standard output is a screen, and no file or other program.
    pub(super) fn is_a_screen(&self) -> bool {
        self.screen
    }

    pub(super) fn choose_colour(&mut self, colour: Colour) {
        self.out_choice = match colour {
            Colour::Auto => self.auto,
            Colour::Always => ColorChoice::AlwaysAnsi,
            Colour::Never => ColorChoice::Never,
        };
    }

    /// Standard output; styles reach it only where they should.
    pub(super) fn out(&mut self) -> impl Write + '_ {
        Painted::new(&mut *self.out, self.out_choice)
    }

    /// Standard output for forms that hold no styles, as they are.
    pub(super) fn plain_out(&mut self) -> impl Write + '_ {
        as_it_is(&mut *self.out)
    }

    /// Standard error; coloured as standard output is.
    pub(super) fn err(&mut self) -> impl Write + '_ {
        Painted::new(&mut *self.err, self.out_choice)
    }

    /// What is wrong with files, to standard error.
    ///
    /// # Errors
    /// Those of the stream.
    pub(super) fn diagnostics(&mut self, diagnostics: &Diagnostics) -> io::Result<()> {
        let columns = self.columns();
        let names = if self.screen {
            report::FileNames::Fitted
        } else {
            report::FileNames::Whole
        };
        report::diagnostics_text(&mut self.err(), diagnostics, columns, names)
    }

    /// Standard input.
    pub(super) fn input(&mut self) -> &mut dyn io::Read {
        &mut *self.input
    }

    /// What clap says of the command line, and its exit status.
    pub(super) fn usage(&mut self, error: &clap::Error) -> Exit {
        let text = error.render();
        let shown = if error.use_stderr() {
            write!(self.err(), "{text}")
        } else {
            let choice = self.auto;
            let mut out = Painted::new(&mut *self.out, choice);
            write!(out, "{}", text.ansi()).and_then(|()| out.flush())
        };
        match (error.use_stderr(), shown) {
            (true, _) => Exit::BadInput,
            (false, _) => Exit::Met,
        }
    }

    /// An error of the world outside, and its exit status.
    pub(super) fn failed(&mut self, error: &io::Error) -> Exit {
        let said = writeln!(self.err(), "error: {}", one_line(&error.to_string()));
        debug_assert!(said.is_ok() || said.is_err(), "nobody is left to tell");
        Exit::BadInput
    }
}

fn keyboard() -> Keyboard {
    let terminal = io::stdin().is_terminal() && io::stdout().is_terminal();
    let drawn_on = std::env::var("TERM").is_ok_and(|term| !term.is_empty() && term != "dumb");
    match (terminal, drawn_on || cfg!(windows)) {
        (true, true) => Keyboard::Editing,
        (true, false) => Keyboard::Lines,
        (false, _) => Keyboard::Piped,
    }
}

fn columns() -> usize {
    let wide = terminal_size::terminal_size().map(|(terminal_size::Width(wide), _)| wide);
    wide.map_or(WIDTH, usize::from).max(NARROWEST)
}

/// A file takes no styles.
pub(super) fn without_styles(file: &mut dyn Write) -> Painted<'_> {
    Painted::new(file, ColorChoice::Never)
}

/// A stream that is given no styles.
pub(super) fn as_it_is(stream: &mut dyn Write) -> Painted<'_> {
    Painted::new(stream, ColorChoice::AlwaysAnsi)
}

/// A stream that takes styles off where they should not be.
pub(super) struct Painted<'a> {
    stream: &'a mut dyn Write,
    strip: Option<StripBytes>,
}

impl<'a> Painted<'a> {
    fn new(stream: &'a mut dyn Write, choice: ColorChoice) -> Painted<'a> {
        let strip = match choice {
            ColorChoice::Always | ColorChoice::AlwaysAnsi => None,
            ColorChoice::Auto | ColorChoice::Never => Some(StripBytes::new()),
        };
        Painted { stream, strip }
    }
}

impl Write for Painted<'_> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let written = match &mut self.strip {
            None => self.stream.write_all(bytes),
            Some(strip) => {
                let mut parts = strip.strip_next(bytes);
                parts.try_for_each(|part| self.stream.write_all(part))
            }
        };
        unless_closed(written).map(|()| bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        unless_closed(self.stream.flush())
    }
}

/// A reader that has gone away (`| head`) has seen enough: that is no fault of
/// the survey, and the exit status is the verdict's all the same.
fn unless_closed(result: io::Result<()>) -> io::Result<()> {
    match result {
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(()),
        other => other,
    }
}
