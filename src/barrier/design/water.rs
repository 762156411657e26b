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
    /// Debris as it strikes the barrier; none where the water stays below the sill. A barrier
    /// lower than the struck area takes the whole force on its height.
    pub debris: Option<Impact>,
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
        let debris = water.impact.filter(|_| depth > Length::default());
        Ok(Self {
            case,
            depth,
            on_barrier,
            debris: debris.map(|impact| no_higher_than(impact, height)),
            water,
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
        match self.debris.filter(|_| from < self.depth) {
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

    /// The water on an upright that takes the water of a width.
    pub(super) fn water_on_upright(&self, tributary: Length) -> Vec<LinearLoad> {
        let bands = self.on_barrier.bands().iter();
        bands
            .map(|band| LinearLoad {
                from: band.from,
                to: band.to,
                at_from: band.at_from * tributary,
                at_to: band.at_to * tributary,
            })
            .collect()
    }

    /// Debris on an upright of a height: at the water surface, where it bends a cantilever
    /// most, and about each of `places`, or as near to it as the surface lets it. One `None`
    /// where there is no debris, so that there is always a load to look at.
    pub(super) fn strikes_on_upright(
        &self,
        tributary: Length,
        height: Length,
        places: &[Length],
    ) -> Vec<Option<LinearLoad>> {
        let Some(impact) = self.debris else {
            return vec![None];
        };
        let struck = struck_height(impact);
        let highest = (self.depth.min(height) - struck).max(Length::default());
        // What strikes a patch strikes the post in full, however little water it takes.
        let width = impact.width().unwrap_or(tributary);
        let about = places.iter().map(|place| *place - struck / 2.0);
        std::iter::once(highest)
            .chain(about)
            .map(|lowest| {
                let band = impact.band(lowest.max(Length::default()).min(highest));
                let load = band.at_from * width;
                Some(LinearLoad::uniform(band.from, band.to.min(height), load))
            })
            .collect()
    }
}

fn struck_height(impact: Impact) -> Length {
    match impact {
        Impact::Patch { height, .. } | Impact::Strip { height, .. } => height,
    }
}

/// The same force on an area that is no higher than the barrier.
fn no_higher_than(mut impact: Impact, barrier: Length) -> Impact {
    match &mut impact {
        Impact::Patch { height, .. } | Impact::Strip { height, .. } => {
            *height = height.min(barrier);
        }
    }
    impact
}
