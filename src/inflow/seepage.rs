//! Seepage through and under a wall or bank, by remembered guidance that a user may choose.

use super::{InflowPart, Way};
use crate::quantity::unit::{Area, VolumeRate, square_foot, us_gallon_per_hour};
use crate::quantity::{Impossible, Velocity, not_negative};
use crate::statement::{Choice, Citation, Confidence};

/// Seepage that FEMA P-259 is remembered to give where nothing was analysed. Not seen in its
/// text: nothing uses these unless a user chooses them by name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RememberedSeepage {
    /// 1 US gallon an hour for each square foot of floodwall below the flood level.
    Floodwall,
    /// 2 US gallons an hour for each square foot of levee below the flood level.
    Levee,
}

impl Choice for RememberedSeepage {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("floodwall", Self::Floodwall), ("levee", Self::Levee)];
}

impl RememberedSeepage {
    /// Flow through each unit of wetted area.
    #[must_use]
    pub fn rate(self) -> Velocity {
        VolumeRate::new::<us_gallon_per_hour>(match self {
            Self::Floodwall => 1.0,
            Self::Levee => 2.0,
        }) / Area::new::<square_foot>(1.0)
    }
}

/// The seepage through `wetted_area` of a wall or bank by the guidance that the user chose.
///
/// # Errors
/// [`Impossible`] for an area that is negative or not finite.
///
/// ```
/// use sillmark::inflow::{RememberedSeepage, seepage_flow};
/// use sillmark::quantity::unit::{Area, square_foot, us_gallon_per_hour};
/// let part = seepage_flow(RememberedSeepage::Levee, Area::new::<square_foot>(50.0))?;
/// assert!((part.flow.get::<us_gallon_per_hour>() - 100.0).abs() < 1e-9);
/// assert!(part.citation.to_string().ends_with("(from memory)"));
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn seepage_flow(
    chosen: RememberedSeepage,
    wetted_area: Area,
) -> Result<InflowPart, Impossible> {
    not_negative("wetted area", wetted_area.value, "m²")?;
    let part = InflowPart {
        way: Way::Seepage,
        flow: wetted_area * chosen.rate(),
        method: "Q = rate · wetted area",
        citation: Citation {
            source: "FEMA P-259, seepage where nothing was analysed".into(),
            confidence: Confidence::FromMemory,
        },
        not_stated: Vec::new(),
    };
    part.checked()
}
