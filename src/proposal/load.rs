//! `[opening.load]`: what a proposal says that the water does to a barrier.

use super::file::written;
use crate::load::RiskCategory;
use crate::quantity::unit::Force;
use crate::quantity::{
    Length, LineLoad, MomentPerLength, Pressure, parse_force, parse_length, parse_line_load,
    parse_moment_per_length, parse_pressure,
};
use crate::site::Waves;
use crate::statement::{StatementError, Table, Written};

/// The load of the water on a barrier, and the depth that it is the load of.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ProposedLoad {
    /// Depth of the water: over the sill; of the still water over the ground where waves break.
    pub depth: Option<Written<Length>>,
    /// The waves in the load; without them it is that of still water.
    pub waves: Option<Waves>,
    /// Risk category that the wave load is taken for.
    pub risk_category: Option<RiskCategory>,
    /// Greatest pressure.
    pub pressure: Option<Written<Pressure>>,
    /// Force on each unit of width.
    pub force_per_width: Option<Written<LineLoad>>,
    /// Moment about the foot on each unit of width.
    pub moment_per_width: Option<Written<MomentPerLength>>,
    /// Force on the whole width.
    pub force: Option<Written<Force>>,
}

impl ProposedLoad {
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow_or_nearest(&[
            "depth",
            "waves",
            "risk_category",
            "pressure",
            "force_per_width",
            "moment_per_width",
            "force",
        ])?;
        Ok(Self {
            depth: written(table, "depth", parse_length)?,
            waves: table.choice("waves")?,
            risk_category: table.choice("risk_category")?,
            pressure: written(table, "pressure", parse_pressure)?,
            force_per_width: written(table, "force_per_width", parse_line_load)?,
            moment_per_width: written(table, "moment_per_width", parse_moment_per_length)?,
            force: written(table, "force", parse_force)?,
        })
    }
}
