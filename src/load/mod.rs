//! What the water does to a barrier and a wall.
//!
//! A [`WaterCase`] is what is known of the water before one barrier; its
//! [`load`](WaterCase::load) is a [`WaterLoad`] with one [`PressureProfile`] a part. A
//! [`CombinationSet`] has the load factors on it.
//!
//! Loads are for each unit of width. Depths are measured from the foot of the loaded
//! surface up to the water surface; heights in a [`PressureProfile`] up from the sill.

mod band;
mod buoyancy;
mod case;
mod combination;
mod depth;
mod drag;
mod error;
mod flotation;
mod flow;
mod hydrostatic;
mod impact;
mod profile;
mod reference;
mod risk_category;
mod soil;
mod velocity;
mod water;
mod wave;

pub use band::PressureBand;
pub use buoyancy::buoyant_force;
pub use case::{
    BreakingWaves, LoadPart, LoadReference, NotIncluded, Outside, WaterCase, WaterLoad, WaveAction,
    WaveLevel,
};
pub use combination::{
    Actions, Combination, CombinationSet, FactorBasis, Factors, LoadZone, ResistanceBasis,
};
pub use depth::depth_at_wall;
pub use drag::{DragCoefficient, DragRow};
pub use error::LoadError;
pub use flotation::{dead_weight_against_uplift, flotation_safety, uplift_pressure};
pub use flow::{
    Flow, FlowLoad, FlowMethod, LEAST_HEAD_COEFFICIENT, fastest_for_velocity_head, velocity_head,
};
pub use hydrostatic::{Hydrostatic, hydrostatic_pressure};
pub use impact::{
    CommentaryImpact, Debris, DebrisZone, GuidanceImpact, Impact, ImpactMethod, StoppedObject,
    StruckStructure, blockage_coefficient, debris_depth_coefficient, importance_coefficient,
    object_weight, response_ratio,
};
pub use profile::{PressureProfile, Resultant};
pub use risk_category::RiskCategory;
pub use soil::{SoilGroup, saturated_soil};
pub use velocity::{VelocityBounds, velocity_bounds};
pub use water::{Salinity, WATER_WEIGHT_SOURCE, standard_gravity};
pub use wave::{Behind, BreakingWave, breaking_wave_height, stillwater_depth_under_crest};
