//! How far two figures may lie apart before they differ.

use crate::quantity::unit::{Length, foot, survey_foot};

/// How far a proposed figure may lie from ours and still be the same: two standard deviations
/// of what both are uncertain by, and what units leave open. It is never a percentage that
/// somebody picked.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tolerance {
    /// What it is made of.
    pub parts: Vec<TolerancePart>,
    /// What belongs in it and is not known: it is too small by that.
    pub not_known: Vec<Contribution>,
}

/// One thing that two figures may differ by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TolerancePart {
    /// What.
    pub of: Contribution,
    /// How much, in coherent SI units.
    pub size: Size,
}

/// How large a part is, in coherent SI units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Size {
    /// A standard deviation.
    Deviation(f64),
    /// No more than that.
    AtMost(f64),
}

/// What two figures may differ by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Contribution {
    /// How well our flood level is known.
    OurLevel,
    /// How well our sill is known.
    OurSill,
    /// How well our ground is known.
    OurGround,
    /// The last digit of a figure of theirs.
    LastDigit,
    /// How well the shift between two datums is known.
    DatumShift,
    /// Foot and US survey foot.
    FootDefinition,
    /// The weight of water as books print it in pounds and in newtons.
    WaterWeight,
}

impl Contribution {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::OurLevel => "our flood level",
            Self::OurSill => "our sill",
            Self::OurGround => "our ground",
            Self::LastDigit => "the last digit as written",
            Self::DatumShift => "the shift between the datums",
            Self::FootDefinition => "foot or US survey foot",
            Self::WaterWeight => "the weight of water as printed in lb/ft³ and in kN/m³",
        }
    }
}

/// What is left of two equal numbers that came about by different ways.
const BINARY_DIGITS: f64 = 1e-9;

impl Tolerance {
    /// Adds a standard deviation, in coherent SI units; `None` where it is not known.
    #[must_use]
    pub(super) fn and(mut self, of: Contribution, sd: Option<f64>) -> Self {
        match sd {
            Some(0.0) => {}
            Some(sd) => self.parts.push(TolerancePart {
                of,
                size: Size::Deviation(sd),
            }),
            None if self.not_known.contains(&of) => {}
            None => self.not_known.push(of),
        }
        self
    }

    /// Adds what is no more than a bound.
    #[must_use]
    pub(super) fn and_at_most(mut self, of: Contribution, bound: f64) -> Self {
        self.parts.push(TolerancePart {
            of,
            size: Size::AtMost(bound.abs()),
        });
        self
    }

    /// Adds the two parts in a million between foot and US survey foot.
    #[must_use]
    pub(super) fn and_foot(self, height: f64) -> Self {
        let longer = Length::new::<survey_foot>(1.0) / Length::new::<foot>(1.0);
        self.and_at_most(Contribution::FootDefinition, height * (longer.value - 1.0))
    }

    /// The same with the last digit of the proposed figure worth `factor` times as much.
    #[must_use]
    pub(super) fn with_last_digit_times(mut self, factor: f64) -> Self {
        for part in &mut self.parts {
            if let (Contribution::LastDigit, Size::Deviation(sd)) = (part.of, part.size) {
                part.size = Size::Deviation(sd * factor);
            }
        }
        self
    }

    /// Half its width in coherent SI units: twice the root of the sum of the squares of the
    /// standard deviations, and the bounds.
    #[must_use]
    pub fn half_width(&self) -> f64 {
        let (mut squares, mut bounds) = (0.0, 0.0);
        for part in &self.parts {
            match part.size {
                Size::Deviation(sd) => squares += sd * sd,
                Size::AtMost(bound) => bounds += bound,
            }
        }
        2.0 * f64::sqrt(squares) + bounds
    }

    /// Whether two numbers are the same.
    #[must_use]
    pub fn takes(&self, one: f64, other: f64) -> bool {
        let binary = BINARY_DIGITS * one.abs().max(other.abs());
        (one - other).abs() <= self.half_width() + binary
    }
}
