//! From one year to several, and back.

use crate::quantity::AnnualChance;

/// The chance that a flood of the annual chance comes at least once in so many years:
/// 1 − (1 − p)ⁿ, where one year does not depend on another.
///
/// ```
/// use sillmark::quantity::AnnualChance;
/// use sillmark::risk::chance_over_years;
/// // The length of a usual mortgage.
/// let chance = chance_over_years(AnnualChance::ONE_PERCENT, 30);
/// assert!((chance - 0.2603).abs() < 5e-5);
/// ```
#[must_use]
pub fn chance_over_years(chance: AnnualChance, years: u32) -> f64 {
    // Digits of a small chance are lost in 1 − p.
    -(f64::from(years) * (-chance.probability()).ln_1p()).exp_m1()
}

/// The mean number of years between floods of the annual chance, 1 / p. Not a time to wait:
/// two may come in one decade.
///
/// ```
/// use sillmark::quantity::AnnualChance;
/// use sillmark::risk::mean_years_between;
/// assert_eq!(mean_years_between(AnnualChance::ONE_PERCENT), 100.0);
/// ```
#[must_use]
pub fn mean_years_between(chance: AnnualChance) -> f64 {
    1.0 / chance.probability()
}

/// The chance that the greatest flood of a year lies between two: at least as rare as the
/// one, and not as rare as the other. The order of the two does not matter.
///
/// It weighs a class of floods when damage is summed over them (US Army Corps of Engineers,
/// National Economic Development procedures manual for urban flood damage, chapter V,
/// step 8: the differences of successive frequencies).
///
/// ```
/// use sillmark::quantity::AnnualChance;
/// use sillmark::risk::chance_between;
/// let share = chance_between(AnnualChance::ONE_PERCENT, AnnualChance::ONE_IN_500);
/// assert!((share - 0.008).abs() < 1e-12);
/// ```
#[must_use]
pub fn chance_between(one: AnnualChance, other: AnnualChance) -> f64 {
    (one.probability() - other.probability()).abs()
}
