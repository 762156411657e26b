//! The barrier itself: the kit it is built from, the strength of its parts, and what an opening
//! needs of it.

mod kit;
mod material;
mod planks;
mod strength;

pub use kit::{
    AnchorPattern, BasePlate, Brace, Kit, Plank, Post, Posts, ProfileError, Rectangle, Seal,
    Section, SectionClass, SectionSums, StatedBending, section_sums,
};
pub use material::{Material, MaterialStandard, ThicknessRange, WeldedStrength, materials};
pub use planks::{PlankStack, planks_for};
pub use strength::{Capacity, StrengthBasis, StrengthError, bending_capacity, shear_capacity};
