//! Commands, from what was typed to the exit status.
//!
//! | status | meaning |
//! | --- | --- |
//! | 0 | answered, whatever the verdicts |
//! | 1 | the user's input is at fault; the message says what would be accepted |
//! | 2 | anything else |

mod arguments;
mod assessing;
mod barrier;
mod brought;
mod catalog;
mod collect;
mod failure;
mod inputs;
mod method;
mod output;
mod places;
mod portfolio;
mod read_files;
mod review;
mod site;
mod tables;
mod today;

use std::process::ExitCode;

use clap::Parser;

use arguments::{Arguments, Command};

/// Runs the command that was typed.
pub(crate) fn run() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(message) => return failure::usage(&message),
    };
    if arguments.verbose {
        tracing_subscriber::fmt()
            .with_writer(std::io::stderr)
            .with_max_level(tracing::Level::DEBUG)
            .init();
    }
    let result = match &arguments.command {
        Command::Site(options) => site::run(options),
        Command::Portfolio(options) => portfolio::run(options),
        Command::Review(options) => review::run(options),
        Command::Barrier(options) => barrier::run(options),
        Command::Collect(options) => collect::run(options),
        Command::Catalog(options) => catalog::run(options),
    };
    match result {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => failure.report(),
    }
}
