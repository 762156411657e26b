//! The barrier itself: the kit it is built from and what an opening needs of it.

mod kit;
mod layout;
mod planks;

pub use kit::Kit;
pub use layout::{
    Leg, MountChoice, MountNeeds, MountPlace, PostFit, Run, Span, TooSmall, choose_mount, divide,
};
pub use planks::{PlankStack, planks_for};
