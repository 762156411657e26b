//! What holds for every feature of a layer.

use super::VelocityUnit;
use super::row::constant;
use crate::quantity::{
    Elevation, Length, LengthUnit, Velocity, VerticalDatum, parse_length, parse_velocity,
};
use crate::statement::{StatementError, Table};

/// Values for features whose attributes do not give them.
#[derive(Clone, Debug, Default)]
pub(in crate::hazard) struct Constants {
    /// With the unit that it is rounded in.
    pub(in crate::hazard) level: Option<(Elevation, LengthUnit)>,
    pub(in crate::hazard) depth: Option<Length>,
    pub(in crate::hazard) velocity: Option<Velocity>,
    pub(in crate::hazard) level_datum: Option<VerticalDatum>,
    pub(in crate::hazard) length_unit: Option<LengthUnit>,
    pub(in crate::hazard) velocity_unit: Option<VelocityUnit>,
}

impl Constants {
    /// Reads `[constants]`.
    pub(super) fn read(root: &Table<'_, '_>) -> Result<Self, StatementError> {
        let Some(table) = root.table("constants")? else {
            return Ok(Self::default());
        };
        table.allow(&[
            "level",
            "depth",
            "velocity",
            "level_datum",
            "length_unit",
            "velocity_unit",
        ])?;
        let level = table.optional("level")?;
        let depth = table.optional("depth")?;
        let velocity = table.optional("velocity")?;
        let datum = table.optional("level_datum")?;
        let unit = table.optional("length_unit")?;
        let velocity_unit = table.optional("velocity_unit")?;
        Ok(Self {
            level: level.as_ref().map(constant).transpose()?,
            depth: depth.map(|stated| stated.read(parse_length)).transpose()?,
            velocity: velocity
                .map(|stated| stated.read(parse_velocity))
                .transpose()?,
            level_datum: datum
                .map(|stated| stated.read(str::parse::<VerticalDatum>))
                .transpose()?,
            length_unit: unit
                .map(|stated| stated.read(str::parse::<LengthUnit>))
                .transpose()?,
            velocity_unit: velocity_unit.map(|stated| stated.choose()).transpose()?,
        })
    }
}
