//! The operations between two systems, the most accurate first, and which one a place gets.

use std::collections::HashSet;
use std::rc::Rc;

use super::error::NeededGrid;
use super::proj_operations::{Axis, Bounds, Context, Operation};
use crate::quantity::{Length, unit::meter};
use crate::site::Location;

/// The greatest shift that grids may give, metres: rounded up from 28 m, by which the surface
/// of the Caspian Sea lies below the Baltic, the widest step between two sea levels in the
/// EPSG Dataset (EPSG 5438). VERTCON's old files in millimetres read as metres go beyond.
const LARGEST_GRID_SHIFT: f64 = 30.0;

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
                    let same = |known: &Operation| {
                        known.name == found.name && known.bounds == found.bounds
                    };
                    if !operations.iter().any(same) {
                        operations.push(found);
                    }
                }
            }
            if !operations.is_empty() {
                break;
            }
        }
        drop_detours(&mut operations);
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
        for operation in &self.operations {
            // The dataset's box is the rule, not the extent of the grid: grids have values
            // beyond it (OSGM15 on islands that have datums of their own).
            let covers = |bounds: Bounds| bounds.contain(longitude, latitude);
            if !operation.bounds.is_none_or(covers) {
                continue;
            }
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
}

/// Drops the operations that read all the grids of another one and more, and lead no further: between two
/// horizontal systems PROJ also offers chains of grids that move a place by centimetres and a
/// height not at all.
fn drop_detours(operations: &mut Vec<Operation>) {
    let files = |operation: &Operation| -> HashSet<String> {
        operation
            .grids
            .iter()
            .map(|grid| grid.name.clone())
            .collect()
    };
    let known: Vec<(HashSet<String>, Option<Bounds>)> = operations
        .iter()
        .map(|operation| (files(operation), operation.bounds))
        .collect();
    operations.retain(|operation| {
        let own = files(operation);
        !known.iter().any(|(set, bounds)| {
            let shorter = !set.is_empty() && set.len() < own.len() && set.is_subset(&own);
            shorter
                && match (bounds, operation.bounds) {
                    (None, _) => true,
                    (Some(bounds), Some(own)) => bounds.hold(own),
                    (Some(_), None) => false,
                }
        })
    });
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
