//! Printing forces, moments, masses and flows.

use super::UnitSystem;
use super::display::fixed;
use super::unit::{
    Area, Force, Length, Mass, Moment, Pressure, VolumeRate, foot, in_newton_metres, kilogram,
    kilonewton, megapascal, pound_force, pound_per_square_inch,
};

/// Kilograms of one avoirdupois pound (NIST SP 811, appendix B.8).
const POUND_KILOGRAMS: f64 = 0.453_592_37;

/// Cubic metres of one US gallon, 231 cubic inches (NIST SP 811, appendix B.8).
const GALLON_CUBIC_METRES: f64 = 231.0 * 0.0254 * 0.0254 * 0.0254;

impl UnitSystem {
    /// A force in lb or kN.
    #[must_use]
    pub fn force(self, force: Force) -> String {
        match self {
            Self::Us => format!("{} lb", fixed(force.get::<pound_force>(), 0)),
            Self::Si => format!("{} kN", fixed(force.get::<kilonewton>(), 3)),
        }
    }

    /// A bending moment in ft-lb or kN·m.
    #[must_use]
    pub fn moment(self, moment: Moment) -> String {
        match self {
            Self::Us => {
                let arm = Length::new::<foot>(1.0);
                format!("{} ft-lb", fixed((moment / arm).get::<pound_force>(), 0))
            }
            Self::Si => format!("{} kN·m", fixed(in_newton_metres(moment) / 1000.0, 3)),
        }
    }

    /// A stress in psi or MPa.
    #[must_use]
    pub fn stress(self, stress: Pressure) -> String {
        match self {
            Self::Us => format!("{} psi", fixed(stress.get::<pound_per_square_inch>(), 0)),
            Self::Si => format!("{} MPa", fixed(stress.get::<megapascal>(), 1)),
        }
    }

    /// A mass that somebody lifts, in lb or kg.
    #[must_use]
    pub fn mass(self, mass: Mass) -> String {
        let kilograms = mass.get::<kilogram>();
        match self {
            Self::Us => format!("{} lb", fixed(kilograms / POUND_KILOGRAMS, 0)),
            Self::Si => format!("{} kg", fixed(kilograms, 1)),
        }
    }

    /// A flow that a pump has to keep up with, in gal/min or L/s.
    #[must_use]
    pub fn flow(self, flow: VolumeRate) -> String {
        match self {
            Self::Us => format!("{} gal/min", fixed(flow.value * 60.0 / GALLON_CUBIC_METRES, 2)),
            Self::Si => format!("{} L/s", fixed(flow.value * 1000.0, 3)),
        }
    }

    /// A floor area in ft² or m².
    #[must_use]
    pub fn area(self, area: Area) -> String {
        match self {
            Self::Us => {
                let square = Length::new::<foot>(1.0) * Length::new::<foot>(1.0);
                format!("{} ft²", fixed((area / square).value, 0))
            }
            Self::Si => format!("{} m²", fixed(area.value, 1)),
        }
    }
}
