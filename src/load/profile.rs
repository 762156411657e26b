//! Pressure over the height of an upright surface.

use super::PressureBand;
use crate::quantity::{Length, LineLoad, MomentPerLength, Pressure, SpecificWeight};

/// Pressure over the height, for each unit of width: the sum of its bands.
///
/// Heights are measured up from the sill. A profile may begin below the sill, where the
/// ground lies lower, and end above the barrier: what a barrier takes of it is
/// [`clipped`](Self::clipped) from the sill to the barrier's top. All sums are exact, no
/// profile is cut into steps. The default is no load.
///
/// ```
/// use sillmark::load::{PressureProfile, Salinity};
/// use sillmark::quantity::unit::{Length, foot, in_pounds_per_foot, pound_per_square_foot};
/// let feet = |number| Length::new::<foot>(number);
/// let water = PressureProfile::still_water(feet(5.0), Salinity::Salt.specific_weight());
/// let barrier = water.clipped(feet(0.0), feet(3.0)); // the water stands over its top
/// assert!((barrier.pressure_at(feet(3.0)).get::<pound_per_square_foot>() - 128.0).abs() < 1e-9);
/// assert!((in_pounds_per_foot(barrier.resultant().force) - 672.0).abs() < 1e-9);
/// let lowest_plank = water.force_between(feet(0.0), feet(0.5));
/// assert!((in_pounds_per_foot(lowest_plank) - 152.0).abs() < 1e-9);
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PressureProfile {
    bands: Vec<PressureBand>,
}

/// One force in place of a [`PressureProfile`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Resultant {
    /// Force on each unit of width.
    pub force: LineLoad,
    /// Height of the force above the sill; the sill where there is no force.
    pub height: Length,
    /// Moment about the sill on each unit of width.
    pub moment: MomentPerLength,
}

impl PressureProfile {
    /// One band; ends in the wrong order are put right, a band without height is no load.
    #[must_use]
    pub fn band(band: PressureBand) -> Self {
        Self {
            bands: band.upright().into_iter().collect(),
        }
    }

    /// Still water from the sill up to `depth_above_sill`: a triangle from γ·h at the sill to
    /// nothing at the surface. A depth that is not above the sill is no load.
    #[must_use]
    pub fn still_water(depth_above_sill: Length, weight: SpecificWeight) -> Self {
        Self::still_water_down_to(Length::default(), depth_above_sill, weight)
    }

    /// Still water from the height `foot`, such as the ground below the sill, to `surface`.
    #[must_use]
    pub fn still_water_down_to(foot: Length, surface: Length, weight: SpecificWeight) -> Self {
        if surface <= foot {
            return Self::default();
        }
        Self::band(PressureBand {
            from: foot,
            to: surface,
            at_from: weight * (surface - foot),
            at_to: Pressure::default(),
        })
    }

    /// The same pressure from one height to another.
    #[must_use]
    pub fn uniform(from: Length, to: Length, pressure: Pressure) -> Self {
        Self::band(PressureBand {
            from,
            to,
            at_from: pressure,
            at_to: pressure,
        })
    }

    /// Both loads together.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        Self {
            bands: [self.bands.as_slice(), other.bands.as_slice()].concat(),
        }
    }

    /// The load between two heights, given in either order.
    #[must_use]
    pub fn clipped(&self, from: Length, to: Length) -> Self {
        let (low, high) = (from.min(to), from.max(to));
        let bands = self.bands.iter();
        Self {
            bands: bands.filter_map(|band| band.clipped(low, high)).collect(),
        }
    }

    /// The load times a factor.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        let scale = |band: &PressureBand| PressureBand {
            at_from: band.at_from * factor,
            at_to: band.at_to * factor,
            ..*band
        };
        Self {
            bands: self.bands.iter().map(scale).collect(),
        }
    }

    /// The pressure at a height. At a step, such as the surface of flowing water, it is the
    /// greater of both sides.
    #[must_use]
    pub fn pressure_at(&self, height: Length) -> Pressure {
        let sum = |touches: fn(&PressureBand, Length) -> bool| {
            self.bands
                .iter()
                .filter(|band| touches(band, height))
                .fold(Pressure::default(), |sum, band| {
                    sum + band.on_the_line(height)
                })
        };
        let just_below = sum(|band, height| band.from < height && height <= band.to);
        let just_above = sum(|band, height| band.from <= height && height < band.to);
        just_below.max(just_above)
    }

    /// The greatest pressure and the lowest height that has it; no pressure at the sill
    /// where nothing presses.
    #[must_use]
    pub fn greatest(&self) -> (Pressure, Length) {
        // Between the ends of bands the sum is straight, so the greatest is at one of them.
        let mut greatest = (Pressure::default(), Length::default());
        for height in self.bands.iter().flat_map(|band| [band.from, band.to]) {
            let pressure = self.pressure_at(height);
            let as_great = pressure > Pressure::default() && pressure >= greatest.0;
            if pressure > greatest.0 || (as_great && height < greatest.1) {
                greatest = (pressure, height);
            }
        }
        greatest
    }

    /// Force on each unit of width of the strip between two heights, such as a plank.
    #[must_use]
    pub fn force_between(&self, from: Length, to: Length) -> LineLoad {
        self.clipped(from, to).force()
    }

    /// Moment of the load between two heights about the lower of them, on each unit of
    /// width: divided by [`force_between`](Self::force_between), the height of that force
    /// above the strip's lower edge.
    #[must_use]
    pub fn moment_between(&self, from: Length, to: Length) -> MomentPerLength {
        self.clipped(from, to).moment_about(from.min(to))
    }

    /// Moment about the height `axis` on each unit of width.
    #[must_use]
    pub fn moment_about(&self, axis: Length) -> MomentPerLength {
        let bands = self.bands.iter();
        bands.fold(MomentPerLength::default(), |sum, band| {
            sum + band.moment_about(axis)
        })
    }

    /// The whole load as one force.
    #[must_use]
    pub fn resultant(&self) -> Resultant {
        let (force, moment) = (self.force(), self.moment_about(Length::default()));
        let height = if force == LineLoad::default() {
            Length::default()
        } else {
            moment / force
        };
        Resultant {
            force,
            height,
            moment,
        }
    }

    /// The bands, lower end first in each; overlapping ones add.
    #[must_use]
    pub fn bands(&self) -> &[PressureBand] {
        &self.bands
    }

    /// Whether nothing presses.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.bands.is_empty()
    }

    fn force(&self) -> LineLoad {
        let bands = self.bands.iter();
        bands.fold(LineLoad::default(), |sum, band| sum + band.force())
    }
}
