//! Printing quantities in US customary or SI units.

use std::fmt::{Display, Formatter};

use super::fixed::fixed;
use super::unit::{
    Length, LineLoad, MomentPerLength, Pressure, Time, Velocity, foot, foot_per_second,
    in_newtons_per_metre, in_pounds_per_foot, inch, kilonewton, kilopascal, meter,
    meter_per_second, millimeter, minute, pound_force, pound_per_square_foot,
};
use super::{Elevation, LengthUnit};

/// The units that a person reads: `--units us` or `--units si`.
///
/// ```
/// use sillmark::quantity::{UnitSystem, parse_elevation};
/// let level = parse_elevation("9 ft NAVD88")?;
/// assert_eq!(UnitSystem::Us.elevation(level), "9.00 ft NAVD88");
/// assert_eq!(UnitSystem::Si.elevation(level), "2.743 m NAVD88");
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnitSystem {
    /// Feet, inches and pounds-force.
    Us,
    /// Metres and newtons.
    Si,
}

/// A number with so many decimals, and its unit behind a blank.
struct Shown(f64, usize, &'static str);

impl Display for Shown {
    fn fmt(&self, formatter: &mut Formatter<'_>) -> std::fmt::Result {
        let Self(number, decimals, unit) = *self;
        formatter.write_str(&fixed(number, decimals))?;
        formatter.write_str(unit)
    }
}

impl UnitSystem {
    /// The system that a stated quantity is written in: SI where its unit is metric.
    ///
    /// ```
    /// use sillmark::quantity::UnitSystem;
    /// assert_eq!(UnitSystem::of_text("2.47 m NAVD88"), UnitSystem::Si);
    /// assert_eq!(UnitSystem::of_text("8.1 ft NAVD88"), UnitSystem::Us);
    /// ```
    #[must_use]
    pub fn of_text(text: &str) -> Self {
        let units =
            text.split(|character: char| character.is_whitespace() || character.is_ascii_digit());
        let metric = units
            .filter_map(|word| word.parse::<LengthUnit>().ok())
            .any(|unit| !unit.is_customary());
        if metric { Self::Si } else { Self::Us }
    }

    /// An elevation with unit and datum.
    #[must_use]
    pub fn elevation(self, elevation: Elevation) -> String {
        format!("{} {}", self.height(elevation.height()), elevation.datum())
    }

    /// A height or depth, to 0.01 ft or 1 mm.
    #[must_use]
    pub fn height(self, length: Length) -> String {
        self.shown_height(length).to_string()
    }

    /// A [`height`](Self::height) as part of a sentence.
    pub(crate) fn shown_height(self, length: Length) -> impl Display {
        match self {
            Self::Us => Shown(length.get::<foot>(), 2, " ft"),
            Self::Si => Shown(length.get::<meter>(), 3, " m"),
        }
    }

    /// The last digit of a [`height`](Self::height).
    pub(crate) fn smallest_height(self) -> Length {
        match self {
            Self::Us => Length::new::<foot>(0.01),
            Self::Si => Length::new::<millimeter>(1.0),
        }
    }

    /// Whether a [`height`](Self::height) reads as nothing.
    pub(crate) fn rounds_to_nothing(self, length: Length) -> bool {
        length.abs() < self.smallest_height() * 0.5
    }

    /// A dimension that is cut or measured with a tape: to 0.1 in or 1 mm.
    #[must_use]
    pub fn dimension(self, length: Length) -> String {
        match self {
            Self::Us => format!("{} in", fixed(length.get::<inch>(), 1)),
            Self::Si => format!("{} m", fixed(length.get::<meter>(), 3)),
        }
    }

    /// A distance on the ground, to 1 ft or 0.1 m.
    #[must_use]
    pub fn distance(self, length: Length) -> String {
        match self {
            Self::Us => format!("{} ft", fixed(length.get::<foot>(), 0)),
            Self::Si => format!("{} m", fixed(length.get::<meter>(), 1)),
        }
    }

    /// A pressure in psf or kPa.
    #[must_use]
    pub fn pressure(self, pressure: Pressure) -> String {
        match self {
            Self::Us => format!("{} psf", fixed(pressure.get::<pound_per_square_foot>(), 1)),
            Self::Si => format!("{} kPa", fixed(pressure.get::<kilopascal>(), 2)),
        }
    }

    /// A force on each unit of width, in lb/ft or kN/m.
    #[must_use]
    pub fn line_load(self, load: LineLoad) -> String {
        match self {
            Self::Us => format!("{} lb/ft", fixed(in_pounds_per_foot(load), 1)),
            Self::Si => format!("{} kN/m", fixed(in_newtons_per_metre(load) / 1000.0, 3)),
        }
    }

    /// A moment on each unit of width, in ft-lb/ft or kN·m/m.
    #[must_use]
    pub fn moment_per_length(self, moment: MomentPerLength) -> String {
        match self {
            Self::Us => format!("{} ft-lb/ft", fixed(moment.get::<pound_force>(), 1)),
            Self::Si => format!("{} kN·m/m", fixed(moment.get::<kilonewton>(), 3)),
        }
    }

    /// A speed in ft/s or m/s.
    #[must_use]
    pub fn velocity(self, velocity: Velocity) -> String {
        match self {
            Self::Us => format!("{} ft/s", fixed(velocity.get::<foot_per_second>(), 1)),
            Self::Si => format!("{} m/s", fixed(velocity.get::<meter_per_second>(), 2)),
        }
    }
}

/// A time for a person: minutes below two hours, else hours and minutes.
///
/// ```
/// use sillmark::quantity::{duration, parse_duration};
/// assert_eq!(duration(parse_duration("90 min")?), "90 min");
/// assert_eq!(duration(parse_duration("18.5 h")?), "18 h 30 min");
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
#[must_use]
pub fn duration(time: Time) -> String {
    let minutes = time.get::<minute>().round();
    if minutes < 120.0 {
        return format!("{} min", fixed(minutes, 0));
    }
    let (hours, rest) = ((minutes / 60.0).floor(), minutes % 60.0);
    if rest < 0.5 {
        format!("{hours} h")
    } else {
        format!("{hours} h {rest} min")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rounded_zero_has_no_sign() {
        assert_eq!(
            UnitSystem::Si.height(Length::new::<meter>(-0.0001)),
            "0.000 m"
        );
        assert_eq!(
            UnitSystem::Si.height(Length::new::<meter>(-0.001)),
            "-0.001 m"
        );
    }
}
