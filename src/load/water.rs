//! Water as a load: its weight.

use crate::quantity::SpecificWeight;
use crate::quantity::unit::{
    Acceleration, MassDensity, foot_per_second_squared, pounds_per_cubic_foot, slugs_per_cubic_foot,
};
use crate::statement::Choice;

/// How salt the water is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Salinity {
    /// Rivers, lakes and rain: 62.4 pcf (9.802 kN/m³).
    Fresh,
    /// The sea: 64.0 pcf (10.054 kN/m³).
    Salt,
}

/// The clause that both weights were seen in.
pub const WATER_WEIGHT_SOURCE: &str =
    "FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt";

impl Choice for Salinity {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("fresh", Self::Fresh), ("salt", Self::Salt)];
}

impl Salinity {
    /// The weight of a unit of volume, FEMA P-55 (2011) vol. II, notes to Eq. 8.6.
    ///
    /// ```
    /// use sillmark::load::Salinity;
    /// assert!((Salinity::Fresh.specific_weight().value - 9802.3).abs() < 0.1); // N/m³
    /// ```
    #[must_use]
    pub fn specific_weight(self) -> SpecificWeight {
        pounds_per_cubic_foot(match self {
            Self::Fresh => 62.4,
            Self::Salt => 64.0,
        })
    }

    /// The mass of a unit of volume as drag formulas round it: 1.94 slug/ft³ fresh, 1.99
    /// salt (FEMA P-55 (2011) vol. II, notes to Eq. 8.8, from memory).
    ///
    /// ```
    /// use sillmark::load::Salinity;
    /// assert!((Salinity::Fresh.density().value - 999.8).abs() < 0.1); // kg/m³
    /// ```
    #[must_use]
    pub fn density(self) -> MassDensity {
        slugs_per_cubic_foot(match self {
            Self::Fresh => 1.94,
            Self::Salt => 1.99,
        })
    }
}

/// Acceleration of gravity as the customary load formulas round it, 32.2 ft/s².
#[must_use]
pub fn standard_gravity() -> Acceleration {
    Acceleration::new::<foot_per_second_squared>(32.2)
}
