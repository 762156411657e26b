//! Still water against an upright surface.

use crate::quantity::{Length, LineLoad, MomentPerLength, Pressure, SpecificWeight};

/// Pressure of still water at `depth` below its surface, p = γ·h (ASCE 7-10 section 5.4.2;
/// FEMA P-55 section 8.5.3).
///
/// ```
/// use sillmark::load::hydrostatic_pressure;
/// use sillmark::quantity::{Length, unit::{foot, pound_per_square_foot, pounds_per_cubic_foot}};
/// let pressure = hydrostatic_pressure(Length::new::<foot>(5.0), pounds_per_cubic_foot(64.0));
/// assert!((pressure.get::<pound_per_square_foot>() - 320.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn hydrostatic_pressure(depth: Length, weight: SpecificWeight) -> Pressure {
    weight * depth
}

/// The load of still water on each unit of width of an upright surface, dry behind.
///
/// The pressure grows as a triangle from nothing at the water surface to γ·h at the foot:
///
/// | quantity | formula |
/// | --- | --- |
/// | pressure at the foot | p = γ·h |
/// | force | f = γ·h²/2 |
/// | height of the force above the foot | h/3 |
/// | moment about the foot | m = γ·h³/6 |
///
/// References: ASCE 7-10 section 5.4.2; FEMA P-55 (2011) vol. II Eq. 8.3 (equation number
/// from memory). The moment is force times lever arm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hydrostatic {
    /// Depth of the water above the foot.
    pub depth: Length,
    /// Pressure at the foot.
    pub pressure: Pressure,
    /// Force on each unit of width.
    pub force: LineLoad,
    /// Height of the force above the foot.
    pub lever_arm: Length,
    /// Moment about the foot on each unit of width.
    pub moment: MomentPerLength,
}

impl Hydrostatic {
    /// The load of water standing `depth` above the foot; a negative depth is no load.
    ///
    /// ```
    /// use sillmark::load::{Hydrostatic, Salinity};
    /// use sillmark::quantity::{Length, unit::{foot, in_pounds_per_foot}};
    /// let load = Hydrostatic::of_depth(Length::new::<foot>(3.0), Salinity::Fresh.specific_weight());
    /// assert!((in_pounds_per_foot(load.force) - 280.8).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn of_depth(depth: Length, weight: SpecificWeight) -> Self {
        let depth = depth.max(Length::default());
        let pressure = hydrostatic_pressure(depth, weight);
        let force: LineLoad = pressure * depth / 2.0;
        let lever_arm = depth / 3.0;
        Self {
            depth,
            pressure,
            force,
            lever_arm,
            moment: force * lever_arm,
        }
    }
}
