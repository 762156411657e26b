//! The water of one load case, as parts of a barrier meet it.

use crate::barrier::{Blow, DesignError, LoadCase, PlankLoad};
use crate::beam::LinearLoad;
use crate::load::{Impact, PressureProfile, WaterCase, WaterLoad};
use crate::quantity::Length;

/// The load of one case on a barrier.
#[derive(Clone, Debug, PartialEq)]
pub struct CaseLoad {
    /// The case.
    pub case: LoadCase,
    /// Height of the water over the sill.
    pub depth: Length,
    /// The load, part by part, from the ground up.
    pub water: WaterLoad,
    /// What the barrier takes of it: between its sill and its top.
    pub on_barrier: PressureProfile,
}

impl CaseLoad {
    /// The load of `water` with its surface `depth` over the sill on a barrier of `height`.
    pub(super) fn of(
        case: LoadCase,
        water: WaterCase,
        depth: Length,
        height: Length,
    ) -> Result<Self, DesignError> {
        let water = WaterCase { depth, ..water }.load()?;
        let on_barrier = water.total().clipped(Length::default(), height);
        Ok(Self {
            case,
            depth,
            water,
            on_barrier,
        })
    }

    /// The load on the plank between two heights. Debris strikes at or below the surface, and
    /// a plank lower than the struck area takes its part of it.
    #[must_use]
    pub fn on_plank(&self, from: Length, to: Length) -> PlankLoad {
        let mut load = PlankLoad {
            water: self.on_barrier.force_between(from, to),
            blow: None,
        };
        let cover = to - from;
        match self.water.impact.filter(|_| from < self.depth) {
            None => {}
            Some(Impact::Strip { force, height }) => {
                load.water += force * (cover.min(height) / height);
            }
            Some(Impact::Patch {
                force,
                width,
                height,
            }) => {
                load.blow = Some(Blow {
                    force: force * (cover.min(height) / height),
                    spread: width,
                });
            }
        }
        load
    }

    /// The load on an upright that takes the water of a width, with debris at the water
    /// surface, where it bends a post most.
    pub(super) fn on_upright(&self, tributary: Length, height: Length) -> Vec<LinearLoad> {
        let water = self.on_barrier.bands().iter().map(|band| LinearLoad {
            from: band.from,
            to: band.to,
            at_from: band.at_from * tributary,
            at_to: band.at_to * tributary,
        });
        let debris = self.water.impact.map(|impact| {
            let struck = match impact {
                Impact::Patch { height, .. } | Impact::Strip { height, .. } => height,
            };
            let surface = self.depth.min(height);
            let band = impact.band((surface - struck).max(Length::default()));
            // What strikes a patch strikes the post in full, however little water it takes.
            let width = impact.width().unwrap_or(tributary);
            LinearLoad::uniform(band.from, band.to.min(height), band.at_from * width)
        });
        water.chain(debris).collect()
    }
}
