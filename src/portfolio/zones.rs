//! The zones of a run: read once for all rows, or anew around the rows of each batch.

use std::sync::Arc;

use super::RunError;
use super::chunk::Chunk;
use super::crew::{Crew, Phase};
use super::job::{Done, Job};
use crate::hazard::{Part, SharedZones};
use crate::site::Location;

/// Reads the zone layers, all of them or a part, on the thread that asks.
pub type ReadZones<'a> = dyn Fn(Option<Part>) -> Result<Vec<Arc<SharedZones>>, Box<dyn std::error::Error + Send + Sync>>
    + Sync
    + 'a;

/// Zones that threads share; the number tells them from others.
#[derive(Clone)]
pub(super) struct Zones {
    pub(super) number: u64,
    pub(super) layers: Arc<Vec<Arc<SharedZones>>>,
}

impl Zones {
    pub(super) fn none(number: u64) -> Self {
        Self {
            number,
            layers: Arc::default(),
        }
    }
}

/// The box of all places of a batch, with the margin that looking around needs.
pub(super) fn part_of(chunks: &[Chunk]) -> Option<Part> {
    let places = || chunks.iter().flat_map(|chunk| chunk.rows.locations());
    let range = |read: fn(Location) -> f64| {
        let start = (f64::INFINITY, f64::NEG_INFINITY);
        places().map(read).fold(start, |(low, high), value| {
            (low.min(value), high.max(value))
        })
    };
    let (west, east) = range(Location::longitude);
    let (south, north) = range(Location::latitude);
    let south_west = Location::from_degrees(west, south).ok()?;
    let north_east = Location::from_degrees(east, north).ok()?;
    Some(Part::around_box(south_west, north_east))
}

/// Has one worker read zones.
pub(super) fn read(crew: &Crew, number: u64, part: Part) -> Result<Zones, RunError> {
    let mut reading = Reading {
        job: Some(Job::Zones { part: Some(part) }),
        layers: None,
    };
    crew.work(&mut reading)?;
    let layers = reading.layers.ok_or(RunError::ThreadEnded)?;
    Ok(Zones {
        number,
        layers: Arc::new(layers),
    })
}

struct Reading {
    job: Option<Job>,
    layers: Option<Vec<Arc<SharedZones>>>,
}

impl Phase for Reading {
    fn next(&mut self, _worker: usize) -> Result<Option<Job>, RunError> {
        Ok(self.job.take())
    }

    fn take(&mut self, done: Done) -> Result<(), RunError> {
        let Done::Zones { layers } = done else {
            return Err(RunError::ThreadEnded);
        };
        self.layers = Some(layers);
        Ok(())
    }
}
