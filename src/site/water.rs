//! What is known of the water at a site.

use crate::load::Salinity;
use crate::quantity::unit::Time;
use crate::quantity::{Length, Velocity};
use crate::statement::Choice;

/// The water at a site, as far as somebody states it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WaterConditions {
    /// Speed of the flow.
    pub velocity: Option<Velocity>,
    /// Fresh or salt.
    pub salinity: Option<Salinity>,
    /// Waves.
    pub waves: Option<Waves>,
    /// Width of the wall across the flow, on which the drag of water faster than 10 ft/s
    /// depends.
    pub wall_width: Option<Length>,
    /// Time between the warning and the water.
    pub warning: Option<Time>,
}

/// Waves at the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Waves {
    /// None worth a load.
    None,
    /// Waves that reach the wall without breaking.
    NonBreaking,
    /// Waves that break on the wall.
    Breaking,
}

impl Choice for Waves {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("none", Self::None),
        ("non-breaking", Self::NonBreaking),
        ("breaking", Self::Breaking),
    ];
}
