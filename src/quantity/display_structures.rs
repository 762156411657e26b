//! Printing the quantities of structures and of water in US customary or SI units.

use super::UnitSystem;
use super::fixed::fixed;
use super::size::{
    FOOT, GALLON, HOUR, INCH, LITRE, MINUTE, POUND_FORCE, POUND_MASS, POUND_PER_SQUARE_INCH,
};
use super::unit::{
    Area, FlowPerLength, Force, Length, LinearMassDensity, Mass, Moment, Pressure, SecondMoment,
    SectionModulus, Velocity, Volume, VolumeRate,
};

impl UnitSystem {
    /// A force, to 1 lb or 10 N.
    ///
    /// ```
    /// use sillmark::quantity::{UnitSystem, parse_force};
    /// assert_eq!(UnitSystem::Si.force(parse_force("1000 lb")?), "4.45 kN");
    /// # Ok::<(), sillmark::quantity::QuantityError>(())
    /// ```
    #[must_use]
    pub fn force(self, force: Force) -> String {
        match self {
            Self::Us => format!("{} lb", fixed(force.value / POUND_FORCE, 0)),
            Self::Si => format!("{} kN", fixed(force.value / 1e3, 2)),
        }
    }

    /// A moment, to 1 ft-lb or 1 N·m.
    #[must_use]
    pub fn moment(self, moment: Moment) -> String {
        match self {
            Self::Us => format!("{} ft-lb", fixed(moment.value / (POUND_FORCE * FOOT), 0)),
            Self::Si => format!("{} kN·m", fixed(moment.value / 1e3, 3)),
        }
    }

    /// A stress, a strength or a modulus, to four digits.
    #[must_use]
    pub fn stress(self, stress: Pressure) -> String {
        match self {
            Self::Us => format!("{} psi", digits(stress.value / POUND_PER_SQUARE_INCH)),
            Self::Si => format!("{} MPa", digits(stress.value / 1e6)),
        }
    }

    /// The area of a section, to four digits.
    #[must_use]
    pub fn section_area(self, area: Area) -> String {
        match self {
            Self::Us => format!("{} in²", digits(area.value / (INCH * INCH))),
            Self::Si => format!("{} mm²", digits(area.value / 1e-6)),
        }
    }

    /// A floor or another ground area, to 1 ft² or 0.1 m².
    #[must_use]
    pub fn area(self, area: Area) -> String {
        match self {
            Self::Us => format!("{} ft²", fixed(area.value / (FOOT * FOOT), 0)),
            Self::Si => format!("{} m²", fixed(area.value, 1)),
        }
    }

    /// A section modulus, to four digits.
    #[must_use]
    pub fn section_modulus(self, modulus: SectionModulus) -> String {
        match self {
            Self::Us => format!("{} in³", digits(modulus.value / INCH.powi(3))),
            Self::Si => format!("{} cm³", digits(modulus.value / 1e-6)),
        }
    }

    /// A second moment of area, to four digits.
    #[must_use]
    pub fn second_moment(self, moment: SecondMoment) -> String {
        match self {
            Self::Us => format!("{} in⁴", digits(moment.value / INCH.powi(4))),
            Self::Si => format!("{} cm⁴", digits(moment.value / 1e-8)),
        }
    }

    /// How far something bends, to 0.01 in or 0.1 mm.
    ///
    /// ```
    /// use sillmark::quantity::{UnitSystem, parse_length};
    /// assert_eq!(UnitSystem::Us.deflection(parse_length("1 mm")?), "0.04 in");
    /// # Ok::<(), sillmark::quantity::QuantityError>(())
    /// ```
    #[must_use]
    pub fn deflection(self, length: Length) -> String {
        match self {
            Self::Us => format!("{} in", fixed(length.value / INCH, 2)),
            Self::Si => format!("{} mm", fixed(length.value / 1e-3, 1)),
        }
    }

    /// A mass, to 0.1 lb or 0.1 kg.
    #[must_use]
    pub fn mass(self, mass: Mass) -> String {
        match self {
            Self::Us => format!("{} lb", fixed(mass.value / POUND_MASS, 1)),
            Self::Si => format!("{} kg", fixed(mass.value, 1)),
        }
    }

    /// A mass per length, to 0.01 lb/ft or 0.01 kg/m.
    #[must_use]
    pub fn mass_per_length(self, mass: LinearMassDensity) -> String {
        match self {
            Self::Us => format!("{} lb/ft", fixed(mass.value / (POUND_MASS / FOOT), 2)),
            Self::Si => format!("{} kg/m", fixed(mass.value, 2)),
        }
    }

    /// A volume of water, to 1 gal (US) or 1 L.
    #[must_use]
    pub fn volume(self, volume: Volume) -> String {
        match self {
            Self::Us => format!("{} gal", fixed(volume.value / GALLON, 0)),
            Self::Si => format!("{} L", fixed(volume.value / LITRE, 0)),
        }
    }

    /// A flow of water in gal/min (US) or L/s, to three digits; in gal/h or L/h where it is
    /// less than one gallon a minute.
    ///
    /// ```
    /// use sillmark::quantity::{UnitSystem, parse_flow};
    /// assert_eq!(UnitSystem::Us.flow(parse_flow("3 L/s")?), "47.6 gal/min");
    /// assert_eq!(UnitSystem::Si.flow(parse_flow("9.5 gal/h")?), "36.0 L/h");
    /// # Ok::<(), sillmark::quantity::QuantityError>(())
    /// ```
    #[must_use]
    pub fn flow(self, flow: VolumeRate) -> String {
        let small = flow.value != 0.0 && flow.value.abs() < GALLON / MINUTE;
        let (unit, symbol) = match (self, small) {
            (Self::Us, false) => (GALLON / MINUTE, "gal/min"),
            (Self::Us, true) => (GALLON / HOUR, "gal/h"),
            (Self::Si, false) => (LITRE, "L/s"),
            (Self::Si, true) => (LITRE / HOUR, "L/h"),
        };
        format!("{} {symbol}", significant(flow.value / unit, 3))
    }

    /// The leakage of each length of seal in gal/h/ft (US) or L/h/m, to three digits.
    #[must_use]
    pub fn flow_per_length(self, flow: FlowPerLength) -> String {
        match self {
            Self::Us => {
                let unit = GALLON / HOUR / FOOT;
                format!("{} gal/h/ft", significant(flow.value / unit, 3))
            }
            Self::Si => format!("{} L/h/m", significant(flow.value / (LITRE / HOUR), 3)),
        }
    }

    /// A rainfall, to 0.01 in/h or 0.1 mm/h.
    #[must_use]
    pub fn rain(self, rain: Velocity) -> String {
        match self {
            Self::Us => format!("{} in/h", fixed(rain.value / (INCH / HOUR), 2)),
            Self::Si => format!("{} mm/h", fixed(rain.value / (1e-3 / HOUR), 1)),
        }
    }
}

fn digits(value: f64) -> String {
    significant(value, 4)
}

/// A number to so many digits, whole beyond them.
fn significant(value: f64, digits: i32) -> String {
    if value == 0.0 || !value.is_finite() {
        return fixed(value, 0);
    }
    // Rounded first: 99.96 to three digits is 100, which has no decimal.
    let before = |number: f64| number.abs().log10().floor();
    let unit = 10.0_f64.powf(before(value) - f64::from(digits - 1));
    let rounded = (value / unit).round() * unit;
    let decimals = f64::from(digits - 1) - before(rounded);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let decimals = decimals.clamp(0.0, 12.0) as usize;
    fixed(value, decimals)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_do_not_depend_on_the_size() {
        for (value, text) in [
            (0.0, "0"),
            (0.001_234_56, "0.001235"),
            (1.0, "1.000"),
            (99.996, "100.0"),
            (-2.5, "-2.500"),
            (25_000.0, "25000"),
        ] {
            assert_eq!(significant(value, 4), text);
        }
    }
}
