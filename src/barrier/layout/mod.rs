//! How posts and planks divide an opening.
//!
//! An opening is a [`Run`] of one or more straight legs; two legs meet at a right angle in a
//! corner post. Each leg is divided into equal spans by intermediate posts. Lengths along a
//! leg add up exactly:
//!
//! leg = what the end posts take + spans × clear width + posts between × their width

mod divide;
mod mount;
mod run;

pub use divide::{Leg, PostFit, Span, divide};
pub use mount::{MountChoice, Needs as MountNeeds, Place as MountPlace, TooSmall, choose_mount};
pub use run::Run;
