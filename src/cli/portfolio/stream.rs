//! Results on stdout: a filter.

use std::io::{ErrorKind, Write as _};
use std::path::PathBuf;

use sillmark::portfolio::summary::Summary;
use sillmark::portfolio::{Answers, Plan, RunError, SameIds, Sink, reject_lines, rejects_header};
use sillmark::table::Position;

use super::beside::RejectsFile;
use super::finish::{Finish, tell_cautions, tell_rejected, tell_repeated};
use super::{TOLD, failure, tell_rejects};
use crate::cli::arguments::PortfolioOptions;
use crate::cli::failure::Failure;
use crate::cli::tables::table_name;

/// Writes lines to stdout as they come.
pub(super) struct Stream {
    /// Until it is printed.
    header: Option<String>,
    /// The table's name in messages.
    table: String,
    rejects: Option<RejectsFile>,
    max_rejects: Option<u64>,
    told: usize,
    closed: bool,
    summary: Summary,
    ids: SameIds,
}

impl Stream {
    /// The header is printed with the first rows: a run that fails before prints nothing.
    pub(super) fn new(header: Option<String>, options: &PortfolioOptions) -> Result<Self, Failure> {
        let rejects = options.rejects.as_deref().map(|path| {
            let mut file = RejectsFile::begin(path)?;
            file.write(rejects_header().as_bytes())
                .map_err(|reason| failure(file_error(path.to_owned(), reason)))?;
            Ok(file)
        });
        Ok(Self {
            header,
            table: table_name(&options.table),
            rejects: rejects.transpose()?,
            max_rejects: options.max_rejects,
            told: 0,
            closed: false,
            summary: Summary::default(),
            ids: SameIds::default(),
        })
    }

    /// Whether nobody reads any more.
    pub(super) const fn is_closed(&self) -> bool {
        self.closed
    }

    /// What is said at the end.
    pub(super) fn end(mut self, finish: &Finish<'_>, plan: &Plan) -> Result<(), Failure> {
        match self.print(&[]) {
            Err(_) if self.closed => return Err(Failure::BrokenPipe),
            outcome => outcome.map_err(failure)?,
        }
        if self.told > TOLD {
            let more = self.told - TOLD;
            let _ = writeln!(
                std::io::stderr(),
                "rejected: {more} more rows (option --rejects names all)"
            );
        }
        let rejects = self.rejects.map(RejectsFile::land).transpose()?;
        finish.summaries(&self.summary, rejects.as_deref(), plan)?;
        tell_rejected(&self.summary, rejects.as_deref());
        tell_cautions(plan)?;
        tell_repeated(self.ids.search(), &self.table)
    }

    /// What is said where too many rows are rejected: the rows so far are kept.
    pub(super) fn end_early(self, error: RunError) -> Failure {
        if !matches!(error, RunError::TooManyRejects { .. }) {
            return failure(error);
        }
        let message = format!("{}: {error}", self.table);
        match self.rejects.map(RejectsFile::land) {
            Some(Ok(path)) => {
                Failure::input(format!("{message}; the rows are in {}", path.display()))
            }
            _ => Failure::input(message),
        }
    }

    fn print(&mut self, text: &[u8]) -> Result<(), RunError> {
        let header = self.header.take().unwrap_or_default();
        let mut stdout = std::io::stdout().lock();
        let printed = stdout
            .write_all(header.as_bytes())
            .and_then(|()| stdout.write_all(text))
            .and_then(|()| stdout.flush());
        printed.map_err(|reason| {
            self.closed = reason.kind() == ErrorKind::BrokenPipe;
            file_error("stdout".into(), reason)
        })
    }
}

impl Sink for Stream {
    fn take(&mut self, answers: &Answers, _end: Position) -> Result<(), RunError> {
        self.print(&answers.lines)?;
        match &mut self.rejects {
            Some(file) => file
                .write(&reject_lines(&answers.rejects))
                .map_err(|reason| file_error(file.path().to_owned(), reason))?,
            None => tell_rejects(answers, &self.table, &mut self.told),
        }
        self.summary.merge(&answers.summary);
        let temporary = std::env::temp_dir();
        self.ids
            .add(&answers.ids)
            .map_err(|reason| file_error(temporary, reason))?;
        match (self.max_rejects, answers.rejects.last()) {
            (Some(allowed), Some(last)) if self.summary.rejected() > allowed => {
                Err(RunError::TooManyRejects {
                    rejected: self.summary.rejected(),
                    allowed,
                    fault: Box::new(last.fault.clone()),
                })
            }
            _ => Ok(()),
        }
    }
}

fn file_error(path: PathBuf, reason: std::io::Error) -> RunError {
    RunError::File {
        path,
        action: "writing",
        reason,
    }
}
