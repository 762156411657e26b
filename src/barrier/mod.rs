//! The barrier itself: the kit it is built from, the strength of its parts, and what an opening
//! needs of it.

mod fitting;
mod handling;
mod kit;
mod layout;
mod material;
mod planks;
mod strength;

pub use kit::{
    AnchorPattern, BasePlate, Brace, Kit, Plank, Post, Posts, Seal, Section, SectionClass,
    StatedBending,
};
pub use layout::{
    Leg, MountChoice, MountNeeds, MountPlace, PostFit, Run, Span, TooSmall, choose_mount, divide,
};
pub use material::{Material, MaterialStandard, ThicknessRange, WeldedStrength, materials};
pub use fitting::{Fitting, FittingMissing, InTime, twelve_hours};
pub use handling::{Handling, LiftLimit, Piece, handling};
pub use planks::{PlankStack, planks_for};
pub use strength::{Capacity, StrengthBasis, StrengthError, bending_capacity, shear_capacity};
