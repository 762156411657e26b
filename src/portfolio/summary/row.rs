//! What a summary takes from one row.

use crate::level::LevelSource;
use crate::quantity::{AnnualChance, Length};
use crate::site::Location;
use crate::verdict::Verdict;

/// The figures of one row of the result table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RowFigures<'a> {
    /// The row's id, as the input writes it.
    pub id: &'a str,
    /// Where it stands, in degrees of WGS 84.
    pub location: Option<Location>,
    /// What has to happen.
    pub verdict: Verdict,
    /// Code of the flood zone, as the layer writes it.
    pub zone: Option<&'a str>,
    /// Where the flood level comes from; `None` where there is none.
    pub level_source: Option<LevelSource>,
    /// Design level over the sill; `None` where one of the two is not known.
    pub protection_height: Option<Length>,
    /// Chance in any one year that water reaches the sill, where a curve of levels is known.
    pub chance_at_sill: Option<AnnualChance>,
    /// Whether the threshold was estimated, not measured.
    pub threshold_is_estimate: bool,
    /// Code of the reason that decided.
    pub reason: Option<&'static str>,
    /// Codes of the row's cautions, as in `data/cautions.toml`.
    pub cautions: &'a [&'static str],
}
