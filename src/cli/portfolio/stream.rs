//! Results on stdout: a filter.

use std::fs::File;
use std::io::{ErrorKind, Write as _};
use std::path::PathBuf;

use sillmark::portfolio::summary::Summary;
use sillmark::portfolio::{Answers, Plan, RunError, SameIds, Sink, reject_lines, rejects_header};

use super::finish::{Finish, tell_repeated};
use super::{End, TOLD, tell_rejects};
use crate::cli::arguments::PortfolioOptions;
use crate::cli::failure::Failure;

/// Writes lines to stdout as they come.
pub(super) struct Stream {
    rejects: Option<(File, PathBuf)>,
    max_rejects: Option<u64>,
    told: usize,
    closed: bool,
    summary: Summary,
    ids: SameIds,
}

impl Stream {
    pub(super) fn new(header: Option<&str>, options: &PortfolioOptions) -> Result<Self, Failure> {
        let rejects = options.rejects.as_ref().map(|path| {
            let made = File::create(path).and_then(|mut file| {
                file.write_all(rejects_header().as_bytes())?;
                Ok(file)
            });
            made.map(|file| (file, path.clone())).map_err(|error| {
                Failure::input(format!("option --rejects: {}: {error}", path.display()))
            })
        });
        let mut stream = Self {
            rejects: rejects.transpose()?,
            max_rejects: options.max_rejects,
            told: 0,
            closed: false,
            summary: Summary::default(),
            ids: SameIds::default(),
        };
        stream
            .print(header.unwrap_or_default().as_bytes())
            .map_err(Failure::other)?;
        Ok(stream)
    }

    /// Whether nobody reads any more.
    pub(super) const fn is_closed(&self) -> bool {
        self.closed
    }

    /// What is said at the end.
    pub(super) fn end(self, finish: &Finish<'_>, plan: &Plan) -> Result<(), Failure> {
        if self.told > TOLD {
            let more = self.told - TOLD;
            let _ = writeln!(
                std::io::stderr(),
                "rejected: {more} more rows (option --rejects names all)"
            );
        }
        finish.summaries(&self.summary, None, plan)?;
        tell_repeated(self.ids)
    }

    fn print(&mut self, text: &[u8]) -> Result<(), RunError> {
        let mut stdout = std::io::stdout().lock();
        let printed = stdout.write_all(text).and_then(|()| stdout.flush());
        printed.map_err(|reason| {
            self.closed = reason.kind() == ErrorKind::BrokenPipe;
            file_error("stdout".into(), reason)
        })
    }
}

impl Sink for Stream {
    fn take(&mut self, answers: &Answers, _end: End) -> Result<(), RunError> {
        self.print(&answers.lines)?;
        match &mut self.rejects {
            Some((file, path)) => file
                .write_all(&reject_lines(&answers.rejects))
                .map_err(|reason| file_error(path.clone(), reason))?,
            None => tell_rejects(answers, &mut self.told),
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
