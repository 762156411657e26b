//! `sillmark portfolio`: a table of buildings.

mod facts;
mod finish;
mod memory;
mod open;
mod progress;
mod stream;
mod table;

use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};

use sillmark::portfolio::{Answers, Plan, RunError, Sink, Unfinished, run as run_table};
use sillmark::table::{OutColumn, Position, TableReader};

use self::facts::fingerprint;
use self::open::Opener;
use self::progress::Bar;
use self::stream::Stream;
use super::arguments::PortfolioOptions;
use super::failure::Failure;
use super::output::check_path;

/// Somebody pressed Ctrl-C.
static STOPPED: AtomicBool = AtomicBool::new(false);

pub(super) fn run(options: &PortfolioOptions) -> Result<(), Failure> {
    let finish = finish::Finish::plan(options)?;
    let mut reader = table::open(options)?;
    let opener = Opener::new(options)?;
    let plan = table::plan(options, &reader, &opener)?;
    let columns = sillmark::portfolio::answer_columns(&plan.columns);
    match &options.output {
        None => to_stdout(options, &mut reader, &plan, &opener, &columns, &finish),
        Some(path) => to_file(
            options,
            path,
            &mut reader,
            &plan,
            &opener,
            &columns,
            &finish,
        ),
    }
}

fn header(columns: &[OutColumn]) -> String {
    let names: Vec<&str> = columns.iter().map(|column| column.name.as_str()).collect();
    format!("{}\n", names.join(","))
}

fn to_stdout(
    options: &PortfolioOptions,
    reader: &mut TableReader,
    plan: &Plan,
    opener: &Opener<'_>,
    columns: &[OutColumn],
    finish: &finish::Finish<'_>,
) -> Result<(), Failure> {
    let header = (!options.no_header).then(|| header(columns));
    let mut stream = Stream::new(header.as_deref(), options)?;
    let outcome = drive(reader, plan, opener, &mut stream);
    if stream.is_closed() {
        return Err(Failure::BrokenPipe);
    }
    outcome.map_err(failure)?;
    stream.end(finish, plan)
}

fn to_file(
    options: &PortfolioOptions,
    path: &Path,
    reader: &mut TableReader,
    plan: &Plan,
    opener: &Opener<'_>,
    columns: &[OutColumn],
    finish: &finish::Finish<'_>,
) -> Result<(), Failure> {
    check_path(path, &opener.files())?;
    let mark = fingerprint(options, opener)?;
    let mut work = if options.resume {
        let mut work = Unfinished::resume(path, &mark, options.max_rejects).map_err(failure)?;
        if let Some(position) = work.position() {
            table::skip_to(reader, position, &plan.columns, work.ids())?;
        }
        work
    } else {
        begin(path, &header(columns), mark, options.max_rejects)?
    };
    // A second Ctrl-C ends the program at once.
    let handler = ctrlc::set_handler(|| {
        if STOPPED.swap(true, Ordering::Relaxed) {
            std::process::exit(2);
        }
    });
    handler.map_err(Failure::other)?;
    if let Err(error) = drive(reader, plan, opener, &mut work) {
        return Err(stopped(error, work, path, finish));
    }
    work.note().and_then(|()| work.sync()).map_err(failure)?;
    finish.finish(work, path, columns, plan)
}

fn begin(
    path: &Path,
    header: &str,
    mark: sillmark::portfolio::Fingerprint,
    max_rejects: Option<u64>,
) -> Result<Unfinished, Failure> {
    let folder = Unfinished::folder(path);
    if folder.exists() {
        return Err(Failure::input(format!(
            "option --output: {:?}: an unfinished run is there, {}; accepted: --resume to \
             continue it, or a fresh start after that folder is removed",
            path.display().to_string(),
            folder.display()
        )));
    }
    Unfinished::start(path, header, mark, max_rejects).map_err(failure)
}

/// What is left of a run that ended early, and how to go on.
fn stopped(
    error: RunError,
    mut work: Unfinished,
    path: &Path,
    finish: &finish::Finish<'_>,
) -> Failure {
    let rows = work.summary().read();
    match error {
        RunError::TooManyRejects { .. } => {
            let kept = finish.keep_rejects(&work, path);
            let hint = match (kept, work.remove()) {
                (Ok(Some(kept)), Ok(())) => format!("; the rows are in {}", kept.display()),
                _ => String::new(),
            };
            Failure::input(format!("{error}{hint}; no result was written"))
        }
        error if rows == 0 => {
            // Nothing to take up again; what stays is the error itself.
            let _ = work.remove();
            failure(error)
        }
        error => {
            let noted = work.note();
            let go_on = match noted {
                Ok(()) => format!(
                    "{rows} rows are kept in {}; the same command with --resume goes on from there",
                    Unfinished::folder(path).display()
                ),
                Err(_) => format!(
                    "what was done up to the last note is kept in {}; the same command with \
                     --resume goes on from there",
                    Unfinished::folder(path).display()
                ),
            };
            let message = format!("{error}; {go_on}");
            match failure(error) {
                Failure::Input(_) => Failure::input(message),
                Failure::BrokenPipe => Failure::BrokenPipe,
                Failure::Other(_) => Failure::other(message),
            }
        }
    }
}

fn drive(
    reader: &mut TableReader,
    plan: &Plan,
    opener: &Opener<'_>,
    sink: &mut dyn Sink,
) -> Result<(), RunError> {
    let mut bar = Bar::new(reader);
    let outcome = run_table(
        reader,
        plan,
        &|| opener.own(plan.crs.as_ref()),
        sink,
        &mut |progress| {
            bar.show(progress);
            !STOPPED.load(Ordering::Relaxed)
        },
    );
    bar.clear();
    outcome
}

/// Whose fault it is that a run ended.
fn failure(error: RunError) -> Failure {
    use std::io::ErrorKind;
    match &error {
        RunError::Assess(_)
        | RunError::Table(_)
        | RunError::Open(_)
        | RunError::TooManyRejects { .. }
        | RunError::OtherRun { .. }
        | RunError::Journal { .. } => Failure::input(error),
        RunError::File { reason, .. } => match reason.kind() {
            ErrorKind::NotFound
            | ErrorKind::NotADirectory
            | ErrorKind::PermissionDenied
            | ErrorKind::ReadOnlyFilesystem => Failure::input(error),
            _ => Failure::other(error),
        },
        RunError::Stopped | RunError::ThreadEnded => Failure::other(error),
    }
}

/// Prints rejected rows where no file takes them.
fn tell_rejects(answers: &Answers, told: &mut usize) {
    use std::io::Write as _;
    for reject in &answers.rejects {
        *told += 1;
        if *told <= TOLD {
            // A closed stderr leaves nobody to tell.
            let _ = writeln!(std::io::stderr(), "rejected: {}", reject.fault);
        }
    }
}

/// Rejected rows that are told one by one.
const TOLD: usize = 20;

/// Where a sink is in the input; named here for the sinks.
type End = Position;
