//! What ends a command early, and the exit status it ends with.

use std::error::Error;
use std::io::{IsTerminal as _, Write as _};
use std::process::ExitCode;

/// Why a command ends early.
#[derive(Debug)]
pub(crate) enum Failure {
    /// The user's input is at fault: exit status 1.
    Input(Box<dyn Error>),
    /// Anything else: exit status 2.
    Other(Box<dyn Error>),
    /// Nobody reads the output any more: nothing to say, nothing wrong.
    BrokenPipe,
}

impl Failure {
    /// A fault in the user's input.
    pub(crate) fn input(error: impl Into<Box<dyn Error>>) -> Self {
        Self::Input(error.into())
    }

    /// A fault that is not the user's.
    pub(crate) fn other(error: impl Into<Box<dyn Error>>) -> Self {
        Self::Other(error.into())
    }

    /// What is wrong, for another error to carry.
    pub(crate) fn message(&self) -> String {
        match self {
            Self::Input(error) | Self::Other(error) => error.to_string(),
            Self::BrokenPipe => "nobody reads the output".to_owned(),
        }
    }

    /// A failure of the same kind with another message.
    pub(crate) fn saying(&self, message: String) -> Self {
        match self {
            Self::Input(_) => Self::input(message),
            Self::Other(_) => Self::other(message),
            Self::BrokenPipe => Self::BrokenPipe,
        }
    }

    /// Says what is wrong on stderr and gives the exit status.
    pub(crate) fn report(&self) -> ExitCode {
        match self {
            Self::Input(error) => say(error.as_ref(), 1),
            Self::Other(error) => say(error.as_ref(), 2),
            Self::BrokenPipe => ExitCode::SUCCESS,
        }
    }
}

/// What clap says of the command line: help and version are answers, all else is the user's
/// input at fault.
pub(crate) fn usage(message: &clap::Error) -> ExitCode {
    // A closed stdout or stderr leaves nobody to tell.
    let _ = message.print();
    if message.use_stderr() {
        ExitCode::from(1)
    } else {
        ExitCode::SUCCESS
    }
}

fn say(error: &dyn Error, status: u8) -> ExitCode {
    // A closed stderr leaves nobody to tell.
    let _ = writeln!(std::io::stderr(), "error: {error}");
    ExitCode::from(status)
}

/// A line on stderr that is no error.
pub(crate) fn note(text: &str) {
    // A closed stderr leaves nobody to tell.
    let _ = writeln!(std::io::stderr(), "note: {text}");
}

/// A line on stderr for who waits at a terminal; nothing elsewhere.
pub(crate) fn say_on_terminal(text: &str) {
    let mut stderr = std::io::stderr();
    if stderr.is_terminal() {
        // A closed stderr leaves nobody to tell.
        let _ = writeln!(stderr, "{text}");
    }
}
