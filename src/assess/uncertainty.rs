//! How well heights are known: the catalogue, and what the user gives instead.

use std::collections::BTreeMap;

use crate::level::LevelSource;
use crate::quantity::Length;
use crate::risk::{Deviation, Measured};
use crate::site::{GivenDeviation, StatedUncertainty};
use crate::statement::StatementError;

/// The standard deviations that an assessment uses.
#[derive(Clone, Debug, PartialEq)]
pub struct Uncertainty {
    /// The ground in the terrain model; `None` where nobody says how good it is.
    pub terrain: Option<Deviation>,
    /// Threshold and sills.
    pub sill: Deviation,
    /// The height of a threshold above the ground, where nobody surveyed the threshold.
    pub estimated: Deviation,
    /// The depth number of a sheet-flow zone.
    pub depth_number: Deviation,
    /// Levels by the code of their source, where the user gives one.
    levels: BTreeMap<&'static str, Deviation>,
}

impl Uncertainty {
    /// What the site file states; `terrain` is that of an option and goes first. A sill is
    /// taken as surveyed where nothing else is stated.
    ///
    /// # Errors
    /// [`StatementError`] where a name is not in the catalogue.
    pub fn of(
        stated: &StatedUncertainty,
        terrain: Option<&GivenDeviation>,
    ) -> Result<Self, StatementError> {
        let terrain = terrain.or(stated.terrain.as_ref());
        let levels = stated.levels.iter().map(|(code, given)| {
            Deviation::of_given(given, Measured::Level).map(|deviation| (*code, deviation))
        });
        Ok(Self {
            terrain: terrain
                .map(|given| Deviation::of_given(given, Measured::Terrain))
                .transpose()?,
            sill: match &stated.sill {
                Some(given) => Deviation::of_given(given, Measured::Sill)?,
                None => Deviation::shipped("surveyed")?,
            },
            estimated: Deviation::shipped("estimated")?,
            depth_number: Deviation::shipped("depth-number")?,
            levels: levels.collect::<Result<_, _>>()?,
        })
    }

    /// The standard deviation that the user gives for a source of levels.
    #[must_use]
    pub fn of_level(&self, source: LevelSource) -> Option<Length> {
        self.levels.get(source.code()).map(|deviation| deviation.sd)
    }

    /// The standard deviation of the terrain, where one is known.
    #[must_use]
    pub fn terrain_sd(&self) -> Option<Length> {
        self.terrain.as_ref().map(|deviation| deviation.sd)
    }
}
