//! What is stated of the rooms behind the barriers.

use crate::quantity::unit::{Area, Length, Ratio, Velocity};

/// `[inside]` of a site file, as far as somebody states it: what water gets past a barrier,
/// and where it goes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct InsideStatement {
    /// Floor that the water spreads over.
    pub floor_area: Option<Area>,
    /// Depth of water inside that must not be passed.
    pub greatest_depth: Option<Length>,
    /// Rain on the ground or roof that drains behind the barriers.
    pub rain: Option<Velocity>,
    /// The area that it falls on.
    pub rain_area: Option<Area>,
    /// The part of it that runs off; all of it where nothing is stated.
    pub runoff: Option<Ratio>,
    /// How much more than the inflow the pump has to manage, such as 1.5.
    pub pump_margin: Option<f64>,
}

/// An open gap along the sill of a barrier, where a seal does not touch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SillGap {
    /// Its length along the sill.
    pub length: Length,
    /// Its height.
    pub height: Length,
}
