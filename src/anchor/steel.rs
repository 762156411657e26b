//! The steel of one anchor.

use crate::quantity::unit::{Area, Pressure};
use crate::statement::Choice;

/// The steel of one anchor; of a drop-in sleeve, the bolt's.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Steel {
    /// Effective area `A_se` in tension and shear: the tensile stress area where there is thread.
    pub area: Option<Area>,
    /// Specified tensile strength `f_uta`.
    pub ultimate: Option<Pressure>,
    /// Specified yield strength `f_ya`.
    pub yield_strength: Option<Pressure>,
    /// Whether it is a ductile steel element.
    pub ductility: Option<Ductility>,
}

/// Ductile: at least 14 % elongation and 30 % reduction of area in the tensile test (ACI 318-19
/// chapter 2, from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ductility {
    /// A ductile steel element.
    Ductile,
    /// Any other.
    Brittle,
}

impl Choice for Ductility {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("ductile", Self::Ductile), ("brittle", Self::Brittle)];
}

/// What lies between the plate and the concrete.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bedding {
    /// Nothing: the plate bears on the concrete.
    Direct,
    /// A built-up grout pad: the steel carries 0.8 times the shear (17.7.1.2.1).
    GroutPad,
}

impl Choice for Bedding {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("direct", Self::Direct), ("grout pad", Self::GroutPad)];
}
