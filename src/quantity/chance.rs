//! The chance that a flood is reached or passed in any one year.

use std::fmt;

/// An annual exceedance probability, between 0 and 1 (both excluded).
///
/// Never "the 100-year flood": that name makes people think of an interval.
///
/// ```
/// use sillmark::quantity::parse_annual_chance;
/// let chance = parse_annual_chance("1 in 100")?;
/// assert_eq!(chance.to_string(), "1 %");
/// assert_eq!(chance, parse_annual_chance("1%")?);
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct AnnualChance(f64);

impl AnnualChance {
    /// One percent, the event of the regulatory flood in the United States (44 CFR 59.1,
    /// "base flood").
    pub const ONE_PERCENT: Self = Self(0.01);
    /// A fifth of a percent.
    pub const ONE_IN_500: Self = Self(0.002);

    /// The chance `probability`, if it lies between 0 and 1.
    #[must_use]
    pub fn new(probability: f64) -> Option<Self> {
        (probability > 0.0 && probability < 1.0).then_some(Self(probability))
    }

    /// As a fraction: 0.01 for one percent.
    #[must_use]
    pub const fn probability(self) -> f64 {
        self.0
    }

    /// Whether the two name the same event; they may have been written as a percentage and
    /// as one in so many years.
    #[must_use]
    pub fn same_event(self, other: Self) -> bool {
        (self.0 / other.0 - 1.0).abs() < 1e-9
    }
}

impl fmt::Display for AnnualChance {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        // Rounded first: 0.002 × 100 is 0.2 and a few digits of binary noise.
        let percent = (self.0 * 1e8).round() / 1e6;
        write!(formatter, "{percent} %")
    }
}
