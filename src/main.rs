//! The command line of sillmark. Each command stands in a file of its own in `cli`.

mod cli;

use std::process::ExitCode;

fn main() -> ExitCode {
    cli::run()
}
