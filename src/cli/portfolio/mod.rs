//! `sillmark portfolio`: a table of buildings.

mod beside;
mod facts;
mod finish;
mod memory;
mod open;
mod progress;
mod stream;
mod table;

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};

use sillmark::portfolio::{
    Answers, Maps, Plan, ResultShape, RunError, Sink, Unfinished, run as run_table,
};
use sillmark::table::{OutColumn, TableReader};

use self::facts::{MapNames, fingerprint};
use self::open::Opener;
use self::progress::Bar;
use self::stream::Stream;
use super::arguments::PortfolioOptions;
use super::brought::Brought;
use super::failure::{Failure, note};
use super::inputs;
use super::method::grade_radius;
use super::places::places_of_table;
use super::tables::{is_stdin, open_table, table_name};

/// Somebody pressed Ctrl-C.
static STOPPED: AtomicBool = AtomicBool::new(false);

pub(super) fn run(options: &PortfolioOptions) -> Result<(), Failure> {
    let mut finish = finish::Finish::plan(options)?;
    let mut reader = open_table(&options.table, &options.reading)?;
    beside::check_all(options, &files(options))?;
    let mut brought = Brought::around_places(&options.maps, || {
        places_of_table(&options.table, &options.reading)
    })?;
    brought.terrain_of_table(grade_radius(&options.maps.dem)?)?;
    finish.names = MapNames::of(&brought);
    let opener =
        Opener::new(options, &brought).map_err(|failure| brought.in_their_words(&failure))?;
    let plan = table::plan(options, &reader, &opener)?;
    let columns = sillmark::portfolio::answer_columns(ResultShape::of(&plan.columns));
    if opener.has_no_levels() {
        note(
            "neither flood zones nor levels are given, so that every row stays unresolved (--zones, --surface, --depth, --sections, --lines)",
        );
    }
    let task = Task {
        options,
        plan,
        opener,
        columns,
        finish,
    };
    match &options.output {
        None => task.to_stdout(&mut reader),
        Some(path) => task.to_file(path, &mut reader),
    }
}

/// The files that the run reads.
fn files(options: &PortfolioOptions) -> Vec<PathBuf> {
    let own = [Some(options.table.clone()), options.method.kit.clone()];
    let own = own.into_iter().flatten();
    own.chain(inputs::files(&options.maps)).collect()
}

/// All that is settled before the first row is read.
struct Task<'options> {
    options: &'options PortfolioOptions,
    plan: Plan,
    opener: Opener<'options>,
    columns: Vec<OutColumn>,
    finish: finish::Finish<'options>,
}

impl Task<'_> {
    fn to_stdout(&self, reader: &mut TableReader) -> Result<(), Failure> {
        let options = self.options;
        let header = (!options.no_header).then(|| header(&self.columns));
        let mut stream = Stream::new(header, options)?;
        let outcome = self.drive(reader, &mut stream);
        if stream.is_closed() {
            return Err(Failure::BrokenPipe);
        }
        match outcome {
            Ok(()) => stream.end(&self.finish, &self.plan),
            Err(error) => Err(stream.end_early(error)),
        }
    }

    fn to_file(&self, path: &Path, reader: &mut TableReader) -> Result<(), Failure> {
        let Self {
            options,
            plan,
            opener,
            columns,
            finish,
        } = self;
        let mark = fingerprint(options, opener)?;
        let mut work = match (options.resume, is_stdin(&options.table)) {
            (true, true) => {
                return Err(Failure::input(
                    "option --resume: a table on stdin can be read only once; accepted: a file",
                ));
            }
            (true, false) => Unfinished::resume(path, &mark, options.max_rejects),
            (false, _) => Unfinished::start(path, &header(columns), mark, options.max_rejects),
        }
        .map_err(failure)?;
        if let Some(position) = work.position() {
            table::skip_to(reader, position, &plan.columns, work.ids())?;
        }
        // A second Ctrl-C ends the program at once.
        let handler = ctrlc::set_handler(|| {
            if STOPPED.swap(true, Ordering::Relaxed) {
                std::process::exit(2);
            }
        });
        handler.map_err(Failure::other)?;
        if !work.is_complete()
            && let Err(error) = self.drive(reader, &mut work)
        {
            return Err(stopped(error, work, path, options, finish));
        }
        // While the rows are saved.
        let repeated = work.search();
        if !work.is_complete() {
            work.complete().map_err(failure)?;
        }
        finish
            .finish(work, path, columns, plan, repeated)
            .map_err(|failure| {
                if Unfinished::is_there(path) {
                    unfinished(&failure, path, options)
                } else {
                    failure
                }
            })
    }

    fn drive(&self, reader: &mut TableReader, sink: &mut dyn Sink) -> Result<(), RunError> {
        let mut bar = Bar::new(reader);
        let maps = Maps {
            own: &|| self.opener.own(self.plan.crs.as_ref()),
            zones: &|part| self.opener.zones(part),
            zones_by_batch: self.opener.zones_are_many(),
        };
        let outcome = run_table(reader, &self.plan, &maps, sink, &mut |progress| {
            bar.show(progress);
            !STOPPED.load(Ordering::Relaxed)
        });
        bar.clear();
        outcome
    }
}

fn header(columns: &[OutColumn]) -> String {
    let names: Vec<&str> = columns.iter().map(|column| column.name.as_str()).collect();
    format!("{}\n", names.join(","))
}

/// Where the rows are when they cannot be put under their name.
fn unfinished(failure: &Failure, path: &Path, options: &PortfolioOptions) -> Failure {
    let folder = Unfinished::folder(path).display().to_string();
    let message = failure.message();
    let message = if is_stdin(&options.table) {
        format!("{message}; all rows are in {folder}/rows.csv")
    } else {
        format!(
            "{message}; all rows are kept in {folder}; the same command with --resume goes on from there"
        )
    };
    failure.saying(message)
}

/// What is left of a run that ended early, and how to go on.
fn stopped(
    error: RunError,
    mut work: Unfinished,
    path: &Path,
    options: &PortfolioOptions,
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
            let table = table_name(&options.table);
            Failure::input(format!("{table}: {error}{hint}; no result was written"))
        }
        RunError::Stopped if rows == 0 => {
            let _ = work.remove();
            Failure::other("stopped before the first row was answered; nothing is kept")
        }
        error if rows == 0 => {
            // Nothing to take up again; what stays is the error itself.
            let _ = work.remove();
            failure(error)
        }
        error if is_stdin(&options.table) => {
            let _ = work.remove();
            let message = format!(
                "{error}; no result was written, and a table on stdin cannot be taken up again"
            );
            failure(error).saying(message)
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
            failure(error).saying(message)
        }
    }
}

/// Whose fault it is that a run ended.
fn failure(error: RunError) -> Failure {
    use std::io::ErrorKind;
    match &error {
        RunError::Assess(_)
        | RunError::Table(_)
        | RunError::Open(_)
        | RunError::TooManyRejects { .. }
        | RunError::Unfinished { .. }
        | RunError::NothingToResume { .. }
        | RunError::UnderWay { .. }
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
fn tell_rejects(answers: &Answers, table: &str, told: &mut usize) {
    use std::io::Write as _;
    for reject in &answers.rejects {
        *told += 1;
        if *told <= TOLD {
            // A closed stderr leaves nobody to tell.
            let fault = reject.fault.clone().in_file(table);
            let _ = writeln!(std::io::stderr(), "rejected: {fault}");
        }
    }
}

/// Rejected rows that are told one by one.
const TOLD: usize = 20;
