//! The barrier itself: the kit it is built from, the strength of its parts, and what an opening
//! needs of it.

mod answer;
mod basis;
mod behind;
mod check;
mod design;
mod error;
mod finding;
mod fitting;
mod handling;
mod kit;
mod layout;
mod limit;
mod material;
mod member;
mod planks;
mod practice;
mod span;
mod strength;
mod water_before;

pub use answer::{BarrierAnswer, Surroundings};
pub use basis::{Basis, DeflectionLimit};
pub use behind::BehindBarriers;
pub use check::{Amount, Check, LoadCase, governing};
pub use design::{
    BarrierDesign, BarrierTask, BaseForces, BraceForces, CaseLoad, DesignRules, EndAnchors,
    EndForces, EndPostDesign, Ends, PlannedLeg, PlateAnchors, Upright, UprightDesign,
    design_barrier,
};
pub use error::DesignError;
pub use finding::{Open, Shortfall};
pub use fitting::{
    Fitting, FittingError, FittingMissing, InTime, twelve_hour_citation, twelve_hours,
};
pub use handling::{Handling, LiftLimit, Piece, handling};
pub use kit::{
    AnchorPattern, BasePlate, Brace, Kit, Plank, Post, Posts, ProfileError, Rectangle, Seal,
    Section, SectionClass, SectionSums, StatedBending, WallAnchors, section_sums,
};
pub use layout::{
    Leg, MountChoice, MountNeeds, MountPlace, PostFit, Run, Span, TooSmall, choose_mount, divide,
};
pub(crate) use limit::exceeds;
pub use material::{Material, MaterialStandard, ThicknessRange, WeldedStrength, materials};
pub use planks::{PlankStack, planks_for};
pub use practice::Practice;
pub use span::{Blow, PlankLoad, plank_checks};
pub use strength::{Capacity, StrengthBasis, StrengthError, bending_capacity, shear_capacity};
pub use water_before::WaterBefore;
