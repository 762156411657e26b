//! The threads of a run, and what they are given to do.
//!
//! Nothing is shared and changed: a job goes to one thread with what it needs, and its result
//! comes back. The thread that runs the crew reads the input, decides who does what, and
//! writes.

use std::thread;

use crossbeam_channel::{Receiver, Sender, unbounded};

use super::job::{Done, Job};
use super::worker::Worker;
use super::zones::{ReadZones, Zones};
use super::{Own, Plan, RunError};

/// Opens what each thread needs for itself.
pub type OpenOwn<'a> =
    dyn Fn() -> Result<Own, Box<dyn std::error::Error + Send + Sync>> + Sync + 'a;

/// How a run comes by its maps.
pub struct Maps<'a> {
    /// Opens terrain, rasters and lines for a thread; its sources have no zones yet.
    pub own: &'a OpenOwn<'a>,
    /// Reads the zones.
    pub zones: &'a ReadZones<'a>,
    /// Whether each batch reads those around its rows, because all of them are too many.
    pub zones_by_batch: bool,
}

/// Workers and the way to them.
pub(super) struct Crew {
    jobs: Vec<Sender<Job>>,
    done: Receiver<(usize, Result<Done, RunError>)>,
}

/// A part of the run that the crew works through.
pub(super) trait Phase {
    /// The next job for a worker; `None` where there is none left for it.
    fn next(&mut self, worker: usize) -> Result<Option<Job>, RunError>;
    /// Takes a result.
    fn take(&mut self, done: Done) -> Result<(), RunError>;
}

/// Jobs that wait at a worker while it does another, so that it never waits for the next.
const AHEAD: usize = 2;

impl Crew {
    /// Starts the workers, lets `lead` work with them, and waits until they have ended.
    pub(super) fn run<T>(
        plan: &Plan,
        maps: &Maps<'_>,
        lead: impl FnOnce(&Self) -> Result<T, RunError>,
    ) -> Result<T, RunError> {
        thread::scope(|scope| {
            let (report, done) = unbounded();
            let start = |number| {
                let (send, receive) = unbounded();
                let report = report.clone();
                let work = move || serve(plan, maps, number, &receive, &report);
                (send, scope.spawn(work))
            };
            let (jobs, threads): (Vec<_>, Vec<_>) = (0..plan.threads.max(1)).map(start).unzip();
            let crew = Self { jobs, done };
            let outcome = lead(&crew);
            // Without their jobs the threads end. Each is joined, because a scope does not wait
            // until what a thread keeps for itself is freed: PROJ's transformations among it
            // must not be while the program ends.
            drop(crew);
            let ended = threads.into_iter().map(thread::ScopedJoinHandle::join);
            if ended.filter(Result::is_err).count() > 0 {
                return Err(RunError::ThreadEnded);
            }
            outcome
        })
    }

    pub(super) fn size(&self) -> usize {
        self.jobs.len()
    }

    /// Lets every worker make its maps of zones while others see to something else.
    pub(super) fn prepare(&self, zones: &Zones) -> Result<(), RunError> {
        for way in &self.jobs {
            let zones = zones.clone();
            way.send(Job::Prepare { zones })
                .map_err(|_| RunError::ThreadEnded)?;
        }
        Ok(())
    }

    /// Works a phase through to its end.
    pub(super) fn work(&self, phase: &mut dyn Phase) -> Result<(), RunError> {
        let mut under_way = 0_usize;
        for _ in 0..AHEAD {
            for worker in 0..self.jobs.len() {
                under_way += usize::from(self.give(phase, worker)?);
            }
        }
        while under_way > 0 {
            let (worker, result) = self.done.recv().map_err(|_| RunError::ThreadEnded)?;
            under_way -= 1;
            phase.take(result?)?;
            under_way += usize::from(self.give(phase, worker)?);
        }
        Ok(())
    }

    /// Gives a worker its next job; whether there was one.
    fn give(&self, phase: &mut dyn Phase, worker: usize) -> Result<bool, RunError> {
        let Some(job) = phase.next(worker)? else {
            return Ok(false);
        };
        let way = self.jobs.get(worker).ok_or(RunError::ThreadEnded)?;
        way.send(job).map_err(|_| RunError::ThreadEnded)?;
        Ok(true)
    }
}

/// What a thread does until nobody gives it jobs any more.
fn serve(
    plan: &Plan,
    maps: &Maps<'_>,
    number: usize,
    jobs: &Receiver<Job>,
    report: &Sender<(usize, Result<Done, RunError>)>,
) {
    let _farewell = Farewell { number, report };
    let mut worker = match (maps.own)() {
        Ok(own) => Worker::new(plan, own, maps.zones).ok_or(RunError::ThreadEnded),
        Err(error) => Err(RunError::Open(error)),
    };
    while let Ok(job) = jobs.recv() {
        let result = match &mut worker {
            Ok(worker) => worker.work(job),
            Err(_) => Err(
                match std::mem::replace(&mut worker, Err(RunError::ThreadEnded)) {
                    Err(error) => error,
                    Ok(_) => RunError::ThreadEnded,
                },
            ),
        };
        // A failure of what gives no result is told to the phase that comes next.
        if let Some(result) = result.transpose()
            && report.send((number, result)).is_err()
        {
            return;
        }
    }
}

/// Reports the end of a thread that panics, so that nobody waits for it.
struct Farewell<'a> {
    number: usize,
    report: &'a Sender<(usize, Result<Done, RunError>)>,
}

impl Drop for Farewell<'_> {
    fn drop(&mut self) {
        if thread::panicking() {
            let _ = self.report.send((self.number, Err(RunError::ThreadEnded)));
        }
    }
}
