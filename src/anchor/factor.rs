//! A strength and the factors that it is made of.

use crate::quantity::unit::{Area, Force, Length, Pressure, Ratio};
use crate::statement::Confidence;

/// One factor of a strength, for a calculation that can be followed.
#[derive(Clone, Debug, PartialEq)]
pub struct Factor {
    /// The symbol of ACI 318, such as "`psi_ed,N`".
    pub symbol: &'static str,
    /// Its value.
    pub value: FactorValue,
    /// The clause of ACI 318-19.
    pub clause: &'static str,
    /// Whether the clause was seen, or is from memory; `Stated` for what an approval or the
    /// user states, `Derived` for what is computed from the rest.
    pub confidence: Confidence,
}

/// The value of a factor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FactorValue {
    /// A number without unit, or a coefficient for inch-pound units.
    Number(f64),
    /// A length.
    Length(Length),
    /// An area.
    Area(Area),
    /// A force.
    Force(Force),
    /// A stress.
    Pressure(Pressure),
}

impl From<f64> for FactorValue {
    fn from(number: f64) -> Self {
        Self::Number(number)
    }
}

impl From<Ratio> for FactorValue {
    fn from(ratio: Ratio) -> Self {
        Self::Number(ratio.value)
    }
}

impl From<Length> for FactorValue {
    fn from(length: Length) -> Self {
        Self::Length(length)
    }
}

impl From<Area> for FactorValue {
    fn from(area: Area) -> Self {
        Self::Area(area)
    }
}

impl From<Force> for FactorValue {
    fn from(force: Force) -> Self {
        Self::Force(force)
    }
}

impl From<Pressure> for FactorValue {
    fn from(pressure: Pressure) -> Self {
        Self::Pressure(pressure)
    }
}

impl Factor {
    fn new(
        symbol: &'static str,
        value: impl Into<FactorValue>,
        clause: &'static str,
        confidence: Confidence,
    ) -> Self {
        Self {
            symbol,
            value: value.into(),
            clause,
            confidence,
        }
    }

    /// Its clause was seen.
    pub(super) fn seen(
        symbol: &'static str,
        value: impl Into<FactorValue>,
        clause: &'static str,
    ) -> Self {
        Self::new(symbol, value, clause, Confidence::Seen)
    }

    /// Its clause is from memory.
    pub(super) fn from_memory(
        symbol: &'static str,
        value: impl Into<FactorValue>,
        clause: &'static str,
    ) -> Self {
        Self::new(symbol, value, clause, Confidence::FromMemory)
    }

    /// An approval or the user states it; the clause says that they may.
    pub(super) fn stated(
        symbol: &'static str,
        value: impl Into<FactorValue>,
        clause: &'static str,
    ) -> Self {
        Self::new(symbol, value, clause, Confidence::Stated)
    }
}

impl Factor {
    /// Its number; 1 where it is a quantity, which is never asked for one.
    pub(super) fn number(&self) -> f64 {
        match self.value {
            FactorValue::Number(number) => number,
            _ => 1.0,
        }
    }
}

/// The strength of an anchorage in one mode.
#[derive(Clone, Debug, PartialEq)]
pub struct Strength {
    nominal: Force,
    phi: Factor,
    factors: Vec<Factor>,
}

impl Strength {
    pub(super) fn new(nominal: Force, phi: Factor, factors: Vec<Factor>) -> Self {
        Self {
            nominal,
            phi,
            factors,
        }
    }

    /// The nominal strength.
    #[must_use]
    pub fn nominal(&self) -> Force {
        self.nominal
    }

    /// The strength reduction factor φ.
    #[must_use]
    pub fn phi(&self) -> f64 {
        self.phi.number()
    }

    /// φ with its clause.
    #[must_use]
    pub fn phi_factor(&self) -> &Factor {
        &self.phi
    }

    /// The design strength, φ times the nominal one.
    #[must_use]
    pub fn design(&self) -> Force {
        self.nominal * self.phi()
    }

    /// All that the nominal strength is made of.
    #[must_use]
    pub fn factors(&self) -> &[Factor] {
        &self.factors
    }

    /// The value of one factor.
    #[must_use]
    pub fn factor(&self, symbol: &str) -> Option<FactorValue> {
        let mut factors = self.factors.iter();
        Some(factors.find(|factor| factor.symbol == symbol)?.value)
    }
}
