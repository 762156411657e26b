//! Lengths, pressures and forces with their units, and elevations with their datum.
//!
//! Every quantity in this crate is a [`uom`] quantity: the unit is chosen where a
//! number enters (`Length::new::<foot>(8.1)`) and where it leaves
//! (`depth.get::<meter>()`), never in between. Heights above a vertical datum are an
//! [`Elevation`], which cannot be subtracted from another one unless both stand on
//! the same [`VerticalDatum`].
//!
//! ```
//! use sillmark::quantity::{Elevation, Length, VerticalDatum, parse_elevation, unit::foot};
//!
//! let level = Elevation::new(Length::new::<foot>(10.0), VerticalDatum::Navd88);
//! let sill = parse_elevation("8.1 ft NAVD88")?;
//! let protection = level.above(sill)?;
//! assert!((protection.get::<foot>() - 1.9).abs() < 1e-12);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod chance;
mod datum;
mod display;
mod display_structures;
mod elevation;
mod fixed;
mod impossible;
mod length_unit;
mod parse;
mod size;
pub mod unit;

pub use chance::AnnualChance;
pub use datum::{UnknownDatum, VerticalDatum};
pub use display::{UnitSystem, duration};
pub use elevation::{Elevation, IncomparableDatums};
pub use fixed::push_fixed;
pub use impossible::{Impossible, finite, not_negative, positive};
pub use length_unit::{LengthUnit, UnknownLengthUnit};
pub use parse::{
    QuantityError, is_height_of_land, last_digit, parse_annual_chance, parse_area, parse_density,
    parse_duration, parse_elevation, parse_flow, parse_flow_per_length, parse_force, parse_length,
    parse_line_load, parse_mass, parse_mass_per_length, parse_moment, parse_moment_per_length,
    parse_part, parse_pressure, parse_rain, parse_ratio_of_span, parse_second_moment,
    parse_section_modulus, parse_signed_length, parse_stress, parse_velocity, parse_volume,
};
pub use unit::{Length, LineLoad, MomentPerLength, Pressure, SpecificWeight, Velocity, Volume};
