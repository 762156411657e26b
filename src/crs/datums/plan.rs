//! The operations between two systems, the most accurate first, and which one a place gets.

use std::rc::Rc;

use super::error::NeededGrid;
use super::proj_operations::{Axis, Context, Operation};
use crate::quantity::{Length, unit::meter};
use crate::site::Location;

/// The greatest shift that grids may give, metres: rounded up from 28 m, by which the surface
/// of the Caspian Sea lies below the Baltic, the widest step between two sea levels in the
/// EPSG Dataset (EPSG 5438). VERTCON's old files in millimetres read as metres go beyond.
const LARGEST_GRID_SHIFT: f64 = 30.0;

/// How far beyond the box of an operation its grid is still asked, degrees. The dataset's
/// boxes are rounded to 0.01 degree and drawn round the coast of the main land: St Mary's in
/// the Isles of Scilly, a test point of OSGM15, lies 0.008 degree south of its box. Whether
/// the grid has a value there is for the grid to say.
const BOX_MARGIN: f64 = 0.02;

/// Metres upwards, as an ellipsoidal height is counted.
pub(super) const METRES_UP: Axis = Axis {
    metres_per_unit: 1.0,
    is_depth: false,
};

/// Every operation between two systems.
#[derive(Debug)]
pub(super) struct Plan {
    pub(super) operations: Vec<Operation>,
    source: Axis,
    target: Axis,
    largest_shift: f64,
}

/// What a place got.
#[derive(Debug)]
pub(super) enum Outcome<'plan> {
    /// The shift, by this operation; a more accurate one lacks these files.
    Shifted {
        shift: Length,
        operation: &'plan Operation,
        better: Vec<String>,
    },
    /// Files that the best operation for the place lacks.
    Missing(Vec<NeededGrid>),
    /// Operations there are, none for the place.
    Outside(String),
    /// A shift, metres, that cannot be.
    Absurd(f64, String),
    /// No operation at all.
    Unknown,
}

impl Plan {
    /// Asks PROJ for the operations between each pair of definitions of the first tier that
    /// has any.
    pub(super) fn new(
        context: &Rc<Context>,
        tiers: &[Vec<(String, String)>],
        (source, target): (Axis, Axis),
        bounds_shift: bool,
    ) -> Self {
        let mut operations: Vec<Operation> = Vec::new();
        for tier in tiers {
            for (from, to) in tier {
                for found in context.operations(from, to) {
                    if !operations.iter().any(|known| known.name == found.name) {
                        operations.push(found);
                    }
                }
            }
            if !operations.is_empty() {
                break;
            }
        }
        // Unknown accuracy last; the sort keeps PROJ's own order among equals.
        let rank = |operation: &Operation| operation.accuracy.unwrap_or(f64::INFINITY);
        operations.sort_by(|left, right| rank(left).total_cmp(&rank(right)));
        Self {
            operations,
            source,
            target,
            largest_shift: if bounds_shift {
                LARGEST_GRID_SHIFT
            } else {
                f64::INFINITY
            },
        }
    }

    /// Shifts a height at a place by the most accurate operation that can.
    pub(super) fn shift(&self, height: Length, at: Location) -> Outcome<'_> {
        let (longitude, latitude) = (at.longitude(), at.latitude());
        let mut missing: Vec<&Operation> = Vec::new();
        let mut failures: Vec<String> = Vec::new();
        for operation in self.reaching(longitude, latitude) {
            if operation.grids.iter().any(|grid| grid.path.is_none()) {
                missing.push(operation);
                continue;
            }
            let stored = signed(self.source) * height.get::<meter>();
            match operation.run(longitude, latitude, stored / self.source.metres_per_unit) {
                Err(detail) => failures.push(format!("{} ({detail})", named_grids(operation))),
                Ok(out) => {
                    let out = signed(self.target) * out * self.target.metres_per_unit;
                    let shift = out - height.get::<meter>();
                    if !operation.grids.is_empty() && shift.abs() > self.largest_shift {
                        return Outcome::Absurd(shift, named_grids(operation));
                    }
                    return Outcome::Shifted {
                        shift: Length::new::<meter>(shift),
                        operation,
                        better: best(&missing).map_or_else(Vec::new, |needed| {
                            needed.into_iter().map(|grid| grid.file).collect()
                        }),
                    };
                }
            }
        }
        match best(&missing) {
            Some(files) => Outcome::Missing(files),
            None if !failures.is_empty() => {
                Outcome::Outside(format!("no value there in {}", failures.join(", ")))
            }
            None if self.operations.is_empty() => Outcome::Unknown,
            None => {
                let mut areas: Vec<&str> = Vec::new();
                for operation in &self.operations {
                    if !areas.contains(&operation.area.as_str()) {
                        areas.push(&operation.area);
                    }
                }
                Outcome::Outside(format!("it holds in {}", areas.join(" | ")))
            }
        }
    }

    /// The operations meant for a place; then those with grids whose box it just misses.
    fn reaching(&self, longitude: f64, latitude: f64) -> impl Iterator<Item = &Operation> {
        let within = move |operation: &Operation, margin: f64| {
            operation
                .bounds
                .is_none_or(|bounds| bounds.widened(margin).contain(longitude, latitude))
        };
        let inside = self
            .operations
            .iter()
            .filter(move |found| within(found, 0.0));
        let beside = self.operations.iter().filter(move |found| {
            !within(found, 0.0) && within(found, BOX_MARGIN) && !found.grids.is_empty()
        });
        inside.chain(beside)
    }
}

/// The missing files of the first operation whose files can all be had, or of the first.
fn best(missing: &[&Operation]) -> Option<Vec<NeededGrid>> {
    let needed = |operation: &Operation| -> Vec<NeededGrid> {
        let lacking = operation.grids.iter().filter(|grid| grid.path.is_none());
        lacking
            .map(|grid| NeededGrid {
                file: grid.name.clone(),
                address: grid.address.clone(),
            })
            .collect()
    };
    let all: Vec<Vec<NeededGrid>> = missing.iter().map(|operation| needed(operation)).collect();
    let obtainable = |files: &&Vec<NeededGrid>| files.iter().all(|file| file.address.is_some());
    all.iter().find(obtainable).or(all.first()).cloned()
}

fn named_grids(operation: &Operation) -> String {
    let names: Vec<&str> = operation
        .grids
        .iter()
        .map(|grid| grid.name.as_str())
        .collect();
    if names.is_empty() {
        operation.name.clone()
    } else {
        names.join(", ")
    }
}

const fn signed(axis: Axis) -> f64 {
    if axis.is_depth { -1.0 } else { 1.0 }
}
