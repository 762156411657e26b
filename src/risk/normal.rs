//! The standard normal distribution, by upper tail.

use std::f64::consts::SQRT_2;

use libm::erfc;
use statrs::function::erf::erfc_inv;

/// The deviate that is passed with probability `tail`: 2.3263 for 0.01.
pub(crate) fn deviate(tail: f64) -> f64 {
    SQRT_2 * erfc_inv(2.0 * tail)
}

/// The probability that `deviate` is passed.
pub(super) fn tail(deviate: f64) -> f64 {
    erfc(deviate / SQRT_2) / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Deviates of the annual chances that flood studies use, and of the far tail; computed
    /// with `scipy.stats.norm.isf`.
    #[test]
    fn deviates_are_exact_to_a_billionth() {
        for (chance, expected) in [
            (0.5, 0.0),
            (0.1, 1.281_551_565_544_600_4),
            (0.04, 1.750_686_071_252_17),
            (0.02, 2.053_748_910_631_823),
            (0.01, 2.326_347_874_040_840_8),
            (0.005, 2.575_829_303_548_901),
            (0.002, 2.878_161_739_095_483),
            (0.99, -2.326_347_874_040_840_8),
            (1e-6, 4.753_424_308_822_899),
            (1e-12, 7.034_483_825_301_131),
        ] {
            assert!((deviate(chance) - expected).abs() < 1e-9, "{chance}");
            assert!((tail(expected) / chance - 1.0).abs() < 1e-9, "{chance}");
        }
    }
}
