//! Units: the quantities of this crate and the exact definitions that [`uom`] rounds.
//!
//! `uom` 0.38 carries the pound-force, the psi and the US survey foot to six or seven
//! digits. A flood level that was typed in feet and printed in feet has to come back as
//! it was typed, so the exact definitions stand here:
//!
//! | unit | definition | source |
//! | --- | --- | --- |
//! | foot | 0.3048 m | International yard and pound agreement, 1959 |
//! | US survey foot | 1200 / 3937 m | NIST SP 811, appendix B.6 |
//! | pound (mass) | 0.453 592 37 kg | International yard and pound agreement, 1959 |
//! | pound-force | 4.448 221 615 260 5 N | NIST SP 811, appendix B.8 |
//! | US gallon | 231 in³ | NIST Handbook 44, appendix C |
//!
//! All other customary units are built from these.

use uom::si::{ISQ, Quantity, SI};
use uom::typenum::{N1, N2, P1, P2, P3, P4, Z0};

pub use uom::si::acceleration::foot_per_second_squared;
pub use uom::si::f64::{
    Acceleration, Area, Force, Length, LinearMassDensity, Mass, MassDensity, Pressure, Ratio, Time,
    Velocity, Volume, VolumeRate,
};
pub use uom::si::force::{kilonewton, newton};
pub use uom::si::length::{centimeter, foot, inch, kilometer, meter, millimeter};
pub use uom::si::pressure::{kilopascal, pascal};
pub use uom::si::time::{day, hour, minute, second};
pub use uom::si::velocity::{foot_per_second, meter_per_second};

/// Weight of a volume of water, N/m³ (dimension M·L⁻²·T⁻²).
pub type SpecificWeight = Quantity<ISQ<N2, P1, N2, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

/// Force on each metre of an opening's width, N/m (dimension M·T⁻²).
pub type LineLoad = Quantity<ISQ<Z0, P1, N2, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

/// Moment on each metre of an opening's width, N·m/m, which is N (dimension M·L·T⁻²).
pub type MomentPerLength = Force;

/// A bending moment or a moment about a base plate, N·m (dimension M·L²·T⁻²).
pub type Moment = Quantity<ISQ<P2, P1, N2, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

/// Second moment of area of a section, m⁴.
pub type SecondMoment = Quantity<ISQ<P4, Z0, Z0, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

/// Elastic or plastic section modulus, m³.
pub type SectionModulus = Volume;

/// Flexural rigidity E·I of a member, N·m² (dimension M·L³·T⁻²).
pub type FlexuralRigidity = Quantity<ISQ<P3, P1, N2, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

/// Flow of water through each metre of a seal, m³/s/m (dimension L²·T⁻¹).
pub type FlowPerLength = Quantity<ISQ<P2, Z0, N1, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

pub use exact::force::pound_force;
pub use exact::length::survey_foot;
pub use exact::mass::pound_mass;
pub use exact::pressure::{pound_per_square_foot, pound_per_square_inch};
pub use exact::volume_rate::{us_gallon_per_hour, us_gallon_per_minute};
pub use uom::si::area::{square_foot, square_meter};
pub use uom::si::mass::kilogram;
pub use uom::si::volume_rate::{cubic_foot_per_second, cubic_meter_per_second, liter_per_second};

/// One module a quantity, as the macro of `uom` asks for.
mod exact {
    pub(super) mod length {
        unit! {
            system: uom::si;
            quantity: uom::si::length;

            @survey_foot: 1.2_E3 / 3.937_E3; "ftUS", "US survey foot", "US survey feet";
        }
    }

    pub(super) mod force {
        unit! {
            system: uom::si;
            quantity: uom::si::force;

            @pound_force: 4.448_221_615_260_5_E0; "lb", "pound-force", "pounds-force";
        }
    }

    pub(super) mod pressure {
        unit! {
            system: uom::si;
            quantity: uom::si::pressure;

            @pound_per_square_foot: 4.448_221_615_260_5_E0 / (3.048_E-1 * 3.048_E-1);
                "psf", "pound-force per square foot", "pounds-force per square foot";
            @pound_per_square_inch: 4.448_221_615_260_5_E0 / (2.54_E-2 * 2.54_E-2);
                "psi", "pound-force per square inch", "pounds-force per square inch";
        }
    }

    pub(super) mod mass {
        unit! {
            system: uom::si;
            quantity: uom::si::mass;

            @pound_mass: 4.535_923_7_E-1; "lb", "pound", "pounds";
        }
    }

    pub(super) mod volume_rate {
        unit! {
            system: uom::si;
            quantity: uom::si::volume_rate;

            @us_gallon_per_minute: 3.785_411_784_E-3 / 6.0_E1; "gpm", "US gallon per minute",
                "US gallons per minute";
            @us_gallon_per_hour: 3.785_411_784_E-3 / 3.6_E3; "gph", "US gallon per hour",
                "US gallons per hour";
        }
    }
}

/// A specific weight given in pounds-force per cubic foot (pcf).
///
/// ```
/// use sillmark::quantity::unit::pounds_per_cubic_foot;
/// assert!((pounds_per_cubic_foot(62.4).value - 9802.3).abs() < 0.1); // N/m³
/// ```
#[must_use]
pub fn pounds_per_cubic_foot(value: f64) -> SpecificWeight {
    let edge = Length::new::<foot>(1.0);
    Force::new::<pound_force>(value) / (edge * edge * edge)
}

/// A specific weight given in newtons per cubic metre.
#[must_use]
pub fn newtons_per_cubic_metre(value: f64) -> SpecificWeight {
    let edge = Length::new::<meter>(1.0);
    Force::new::<newton>(value) / (edge * edge * edge)
}

/// A mass density given in slugs per cubic foot; a slug is one lb·s²/ft.
///
/// ```
/// use sillmark::quantity::unit::slugs_per_cubic_foot;
/// assert!((slugs_per_cubic_foot(1.94).value - 999.8).abs() < 0.1); // kg/m³
/// ```
#[must_use]
pub fn slugs_per_cubic_foot(value: f64) -> MassDensity {
    pounds_per_cubic_foot(value) / Acceleration::new::<foot_per_second_squared>(1.0)
}

/// A line load given in pounds-force per foot.
#[must_use]
pub fn pounds_per_foot(value: f64) -> LineLoad {
    Force::new::<pound_force>(value) / Length::new::<foot>(1.0)
}

/// A line load read in pounds-force per foot.
#[must_use]
pub fn in_pounds_per_foot(load: LineLoad) -> f64 {
    (load * Length::new::<foot>(1.0)).get::<pound_force>()
}

/// A line load read in newtons per metre.
#[must_use]
pub fn in_newtons_per_metre(load: LineLoad) -> f64 {
    (load * Length::new::<meter>(1.0)).get::<newton>()
}

/// A line load given in newtons per metre.
///
/// ```
/// use sillmark::quantity::unit::{in_newtons_per_metre, newtons_per_metre};
/// assert!((in_newtons_per_metre(newtons_per_metre(500.0)) - 500.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn newtons_per_metre(value: f64) -> LineLoad {
    Force::new::<newton>(value) / Length::new::<meter>(1.0)
}

/// A bending moment given in newton metres.
#[must_use]
pub fn newton_metres(value: f64) -> Moment {
    Force::new::<newton>(value) * Length::new::<meter>(1.0)
}

/// A bending moment read in newton metres.
///
/// ```
/// use sillmark::quantity::unit::{in_newton_metres, newton_metres};
/// assert!((in_newton_metres(newton_metres(250.0)) - 250.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn in_newton_metres(moment: Moment) -> f64 {
    (moment / Length::new::<meter>(1.0)).get::<newton>()
}

/// A flexural rigidity given in newton square metres.
#[must_use]
pub fn newton_square_metres(value: f64) -> FlexuralRigidity {
    newton_metres(value) * Length::new::<meter>(1.0)
}

/// A flow through each metre of a seal given in litres per hour.
///
/// ```
/// use sillmark::quantity::unit::litres_per_hour_per_metre;
/// assert!((litres_per_hour_per_metre(3600.0).value - 1e-3).abs() < 1e-18); // m³/s/m
/// ```
#[must_use]
pub fn litres_per_hour_per_metre(value: f64) -> FlowPerLength {
    VolumeRate::new::<liter_per_second>(value / 3600.0) / Length::new::<meter>(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn derived_units_equal_the_quotient_of_their_parts() {
        let foot_squared = Length::new::<foot>(1.0) * Length::new::<foot>(1.0);
        let square_inch = Length::new::<inch>(1.0) * Length::new::<inch>(1.0);
        let pound = Force::new::<pound_force>(1.0);
        assert_relative_eq!(
            (pound / foot_squared).get::<pound_per_square_foot>(),
            1.0,
            epsilon = 1e-15
        );
        assert_relative_eq!(
            (pound / square_inch).get::<pound_per_square_inch>(),
            1.0,
            epsilon = 1e-15
        );
        assert_relative_eq!(
            Pressure::new::<pound_per_square_inch>(1.0).get::<pound_per_square_foot>(),
            144.0,
            epsilon = 1e-12
        );
    }

    #[test]
    fn line_load_is_pressure_times_height() {
        let load: LineLoad =
            Pressure::new::<pound_per_square_foot>(100.0) * Length::new::<foot>(2.0);
        assert_relative_eq!(in_pounds_per_foot(load), 200.0, epsilon = 1e-12);
        let load: LineLoad = Pressure::new::<pascal>(100.0) * Length::new::<meter>(2.0);
        assert_relative_eq!(in_newtons_per_metre(load), 200.0, epsilon = 1e-12);
    }

    #[test]
    fn moments_and_rigidities_are_products_of_their_parts() {
        let metre = Length::new::<meter>(1.0);
        let by_hand: Moment = Force::new::<kilonewton>(2.0) * Length::new::<centimeter>(50.0);
        assert_relative_eq!(in_newton_metres(by_hand), 1000.0, epsilon = 1e-9);
        assert_relative_eq!(newton_metres(1000.0).value, by_hand.value, epsilon = 1e-9);
        // 70 GPa and 100 cm⁴.
        let second_moment: SecondMoment = metre * metre * metre * metre * 1e-6;
        let rigidity: FlexuralRigidity = Pressure::new::<pascal>(70e9) * second_moment;
        assert_relative_eq!(
            newton_square_metres(70_000.0).value,
            rigidity.value,
            max_relative = 1e-12
        );
        assert_relative_eq!(newtons_per_metre(3.0).value, 3.0);
    }

    #[test]
    fn specific_weight_of_water_is_the_same_in_both_systems() {
        // NIST SP 811 appendix B.8: 1 lbf/ft³ = 157.0875 N/m³.
        assert_relative_eq!(pounds_per_cubic_foot(1.0).value, 157.0875, epsilon = 5e-5);
        assert_relative_eq!(newtons_per_cubic_metre(9810.0).value, 9810.0);
    }

    #[test]
    fn a_us_gallon_is_231_cubic_inches() {
        let edge = Length::new::<inch>(1.0);
        let gallon: Volume = edge * edge * edge * 231.0;
        let flow: VolumeRate = gallon / Time::new::<minute>(1.0);
        assert_relative_eq!(flow.get::<us_gallon_per_minute>(), 1.0, epsilon = 1e-14);
        assert_relative_eq!(flow.get::<us_gallon_per_hour>(), 60.0, epsilon = 1e-12);
    }

    #[test]
    fn survey_foot_is_two_parts_in_a_million_longer() {
        let ratio = Length::new::<survey_foot>(1.0) / Length::new::<foot>(1.0);
        assert_relative_eq!(ratio.value, 1.000_002, epsilon = 1e-11);
    }
}
