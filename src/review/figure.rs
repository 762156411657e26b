//! A figure that is held against another.

use crate::quantity::unit::{FlowPerLength, Force, Time, VolumeRate};
use crate::quantity::{
    AnnualChance, Elevation, Length, LineLoad, MomentPerLength, Pressure, UnitSystem, duration,
};

/// A figure of an assessment or of a proposal.
#[derive(Clone, Debug, PartialEq)]
pub enum Figure {
    /// A height over a datum.
    Elevation(Elevation),
    /// A height or a depth.
    Height(Length),
    /// A length that is cut or measured with a tape.
    Dimension(Length),
    /// A pressure.
    Pressure(Pressure),
    /// A force on each unit of width.
    LineLoad(LineLoad),
    /// A moment on each unit of width.
    MomentPerWidth(MomentPerLength),
    /// A force.
    Force(Force),
    /// A flow of water.
    Flow(VolumeRate),
    /// A leakage through each length of seal.
    FlowPerLength(FlowPerLength),
    /// A time.
    Time(Time),
    /// A number of pieces.
    Count(u32),
    /// The chance of a flood in any one year.
    Chance(AnnualChance),
    /// What has no number.
    Words(String),
}

impl Figure {
    /// In words, with its unit.
    #[must_use]
    pub fn text(&self, units: UnitSystem) -> String {
        match self {
            Self::Elevation(elevation) => units.elevation(*elevation),
            Self::Height(length) => units.height(*length),
            Self::Dimension(length) => units.dimension(*length),
            Self::Pressure(pressure) => units.pressure(*pressure),
            Self::LineLoad(load) => units.line_load(*load),
            Self::MomentPerWidth(moment) => units.moment_per_length(*moment),
            Self::Force(force) => units.force(*force),
            Self::Flow(flow) => units.flow(*flow),
            Self::FlowPerLength(flow) => units.flow_per_length(*flow),
            Self::Time(time) => duration(*time),
            Self::Count(count) => count.to_string(),
            Self::Chance(chance) => chance.to_string(),
            Self::Words(words) => words.clone(),
        }
    }

    /// Its number in coherent SI units, and that unit; `None` where it has none.
    #[must_use]
    pub fn in_si(&self) -> Option<(f64, &'static str)> {
        Some(match self {
            Self::Elevation(elevation) => (elevation.height().value, "m"),
            Self::Height(length) | Self::Dimension(length) => (length.value, "m"),
            Self::Pressure(pressure) => (pressure.value, "Pa"),
            Self::LineLoad(load) => (load.value, "N/m"),
            Self::MomentPerWidth(moment) => (moment.value, "N·m/m"),
            Self::Force(force) => (force.value, "N"),
            Self::Flow(flow) => (flow.value, "m³/s"),
            Self::FlowPerLength(flow) => (flow.value, "m³/s/m"),
            Self::Time(time) => (time.value, "s"),
            Self::Count(count) => (f64::from(*count), ""),
            Self::Chance(chance) => (chance.probability(), ""),
            Self::Words(_) => return None,
        })
    }

    /// A difference of two figures of this kind, from its number in coherent SI units; `None`
    /// for a kind that has no differences.
    #[must_use]
    pub fn difference(&self, si: f64) -> Option<Self> {
        Some(match self {
            Self::Elevation(_) | Self::Height(_) => Self::Height(metres(si)),
            Self::Dimension(_) => Self::Dimension(metres(si)),
            Self::Pressure(pressure) => Self::Pressure(Pressure {
                value: si,
                ..*pressure
            }),
            Self::LineLoad(load) => Self::LineLoad(LineLoad { value: si, ..*load }),
            Self::MomentPerWidth(moment) => Self::MomentPerWidth(MomentPerLength {
                value: si,
                ..*moment
            }),
            Self::Force(force) => Self::Force(Force {
                value: si,
                ..*force
            }),
            Self::Flow(flow) => Self::Flow(VolumeRate { value: si, ..*flow }),
            Self::FlowPerLength(flow) => Self::FlowPerLength(FlowPerLength { value: si, ..*flow }),
            Self::Time(time) => Self::Time(Time { value: si, ..*time }),
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // two counts
            Self::Count(_) => Self::Count(si.abs().round() as u32),
            Self::Chance(_) | Self::Words(_) => return None,
        })
    }
}

fn metres(number: f64) -> Length {
    Length::new::<crate::quantity::unit::meter>(number)
}
