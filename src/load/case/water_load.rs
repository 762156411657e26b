//! The load of one case of water, part by part.

use std::fmt;

use super::Outside;
use crate::load::{BreakingWave, FlowLoad, Impact, PressureProfile};
use crate::quantity::Length;
use crate::statement::Citation;

/// The load of a [`WaterCase`](super::WaterCase) on the wall from the ground up, and on an
/// opening below the ground from its sill up. A barrier takes what lies between the sill and
/// its top: [`PressureProfile::clipped`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WaterLoad {
    /// Still water; empty where waves break, whose load includes it.
    pub still: PressureProfile,
    /// Flowing water.
    pub flow: PressureProfile,
    /// What saturated soil adds to the water.
    pub soil: PressureProfile,
    /// Breaking waves with the water under them.
    pub wave: PressureProfile,
    /// Debris. It is no part of [`total`](Self::total): it acts at one place at a time.
    pub impact: Option<Impact>,
    /// How the load of flowing water was found.
    pub flow_method: Option<FlowLoad>,
    /// The wave, with its crest and the force of the code.
    pub breaking_wave: Option<BreakingWave>,
    /// Where each part stands.
    pub references: Vec<LoadReference>,
    /// What is not in the load, since nobody stated it or it does not apply.
    pub not_included: Vec<NotIncluded>,
    /// What the methods here do not cover.
    pub outside: Vec<Outside>,
}

/// A part of the load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadPart {
    /// Still water.
    StillWater,
    /// The depth that is added for the load only.
    ExtraDepth,
    /// Flowing water.
    Flow,
    /// Saturated soil.
    Soil,
    /// Breaking waves.
    Wave,
    /// Debris.
    Debris,
}

/// Where a part of the load stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LoadReference {
    /// The part.
    pub part: LoadPart,
    /// Clause and formula, and how sure we are.
    pub citation: Citation,
}

/// A part that is not in the load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotIncluded {
    /// The part.
    pub part: LoadPart,
    /// Why, as a clause.
    pub reason: &'static str,
    /// Whether it may act all the same: nobody stated what it depends on.
    pub may_act: bool,
}

impl fmt::Display for LoadPart {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(match self {
            Self::StillWater => "still water",
            Self::ExtraDepth => "extra load depth",
            Self::Flow => "flowing water",
            Self::Soil => "saturated soil",
            Self::Wave => "breaking waves",
            Self::Debris => "debris",
        })
    }
}

impl WaterLoad {
    /// All that presses at the same time, without debris.
    #[must_use]
    pub fn total(&self) -> PressureProfile {
        self.still
            .plus(&self.flow)
            .plus(&self.soil)
            .plus(&self.wave)
    }

    /// Height of the wave's crest over the sill.
    #[must_use]
    pub fn crest(&self) -> Option<Length> {
        self.breaking_wave.map(|wave| wave.crest())
    }

    /// What the methods here do not cover for a barrier with its top at a height over the
    /// sill: [`outside`](Self::outside), and crests that pass over the top.
    #[must_use]
    pub fn outside_with_top(&self, top: Length) -> Vec<Outside> {
        let over = self.crest().filter(|crest| *crest > top);
        let over = over.map(|crest| Outside::WaveOverTop { crest, top });
        self.outside.iter().copied().chain(over).collect()
    }
}
