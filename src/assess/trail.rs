//! How each figure came about.

use crate::quantity::unit::{
    Force, Length, LineLoad, Mass, Moment, MomentPerLength, Pressure, Time, VolumeRate,
    cubic_meter_per_second, in_newton_metres, in_newtons_per_metre, kilogram, meter, newton,
    pascal, second,
};
use crate::quantity::{Elevation, UnitSystem, duration};

/// The steps of an assessment, in the order in which they were taken.
///
/// Where nobody reads it, it stays empty and its sentences are never made.
#[derive(Clone, Debug, PartialEq)]
pub struct Trail {
    steps: Vec<Step>,
    kept: bool,
}

impl Default for Trail {
    fn default() -> Self {
        Self {
            steps: Vec::new(),
            kept: true,
        }
    }
}

/// One figure: what it is, how it came about and where that stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What it is, with the opening it belongs to.
    pub quantity: String,
    /// The figure.
    pub value: Value,
    /// How it came about.
    pub how: String,
    /// Where the method or the figure stands; empty where it is plain arithmetic.
    pub reference: String,
    /// Whether it is a figure of one barrier, which stands in that barrier's sheet as well.
    pub in_sheet: bool,
}

/// A figure in the trail.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A height with its datum.
    Elevation(Elevation),
    /// A length.
    Length(Length),
    /// A pressure.
    Pressure(Pressure),
    /// A force on each unit of width.
    LineLoad(LineLoad),
    /// A moment on each unit of width.
    Moment(MomentPerLength),
    /// A force.
    Force(Force),
    /// A bending moment.
    BendingMoment(Moment),
    /// How far a part bends.
    Deflection(Length),
    /// A mass.
    Mass(Mass),
    /// A flow.
    Flow(VolumeRate),
    /// A time.
    Time(Time),
    /// A part of a capacity.
    Part(f64),
    /// A chance between 0 and 1.
    Chance(f64),
    /// A number of pieces.
    Count(u32),
    /// Words.
    Words(String),
    /// Nothing: `how` says why.
    Unknown,
}

impl Trail {
    /// A trail of which nothing is kept.
    #[must_use]
    pub const fn unread() -> Self {
        Self {
            steps: Vec::new(),
            kept: false,
        }
    }

    /// Whether somebody reads it.
    #[must_use]
    pub const fn is_kept(&self) -> bool {
        self.kept
    }

    /// Lets `write` add steps, where they are kept.
    pub(super) fn note(&mut self, write: impl FnOnce(&mut Self)) {
        if self.kept {
            write(self);
        }
    }

    /// Adds a step.
    pub fn add(
        &mut self,
        quantity: impl Into<String>,
        value: Value,
        how: impl Into<String>,
        reference: impl Into<String>,
    ) {
        self.steps.push(Step {
            quantity: quantity.into(),
            value,
            how: how.into(),
            reference: reference.into(),
            in_sheet: false,
        });
    }

    /// Adds the steps of one barrier.
    pub(super) fn add_barrier(&mut self, barrier: Self) {
        let steps = barrier.steps.into_iter();
        self.steps.extend(steps.map(|step| Step {
            in_sheet: true,
            ..step
        }));
    }

    /// The steps.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }
}

impl Value {
    /// The figure in SI units with the unit's symbol; words have neither.
    #[must_use]
    pub fn in_si(&self) -> Option<(f64, &'static str)> {
        Some(match self {
            Self::Elevation(elevation) => (elevation.height().get::<meter>(), "m"),
            Self::Length(length) | Self::Deflection(length) => (length.get::<meter>(), "m"),
            Self::Pressure(pressure) => (pressure.get::<pascal>(), "Pa"),
            Self::LineLoad(load) => (in_newtons_per_metre(*load), "N/m"),
            Self::Moment(moment) => (moment.get::<newton>(), "N·m/m"),
            Self::Force(force) => (force.get::<newton>(), "N"),
            Self::BendingMoment(moment) => (in_newton_metres(*moment), "N·m"),
            Self::Mass(mass) => (mass.get::<kilogram>(), "kg"),
            Self::Flow(flow) => (flow.get::<cubic_meter_per_second>(), "m³/s"),
            Self::Time(time) => (time.get::<second>(), "s"),
            Self::Chance(part) | Self::Part(part) => (*part, "1"),
            Self::Count(count) => (f64::from(*count), "1"),
            Self::Words(_) | Self::Unknown => return None,
        })
    }

    /// The figure for a person.
    #[must_use]
    pub fn text(&self, units: UnitSystem) -> String {
        match self {
            Self::Elevation(elevation) => units.elevation(*elevation),
            Self::Length(length) => units.height(*length),
            Self::Deflection(length) => units.deflection(*length),
            Self::Pressure(pressure) => units.pressure(*pressure),
            Self::LineLoad(load) => units.line_load(*load),
            Self::Moment(moment) => units.moment_per_length(*moment),
            Self::Force(force) => units.force(*force),
            Self::BendingMoment(moment) => units.moment(*moment),
            Self::Mass(mass) => units.mass(*mass),
            Self::Flow(flow) => units.flow(*flow),
            Self::Time(time) => duration(*time),
            Self::Part(part) => format!("{:.0} %", 100.0 * part),
            Self::Chance(chance) => percent(*chance),
            Self::Count(count) => count.to_string(),
            Self::Words(words) => words.clone(),
            Self::Unknown => "not known".to_owned(),
        }
    }
}

/// A chance for a person: `2.3 %`; a very small one as `less than 0.1 %`.
#[must_use]
pub(crate) fn percent(chance: f64) -> String {
    if chance < 0.001 {
        "less than 0.1 %".to_owned()
    } else {
        format!("{:.1} %", 100.0 * chance)
    }
}
