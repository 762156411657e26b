//! Medians that outliers do not move.

/// From a median absolute deviation to the standard deviation of a normal distribution:
/// 1 / Φ⁻¹(3/4).
pub(super) const MAD_TO_SD: f64 = 1.4826;

/// The value that half of the weight lies below; `None` without weight.
pub(super) fn weighted_median(mut values: Vec<(f64, f64)>) -> Option<f64> {
    values.retain(|(value, weight)| value.is_finite() && *weight > 0.0);
    values.sort_by(|(one, _), (two, _)| one.total_cmp(two));
    let half = 0.5 * values.iter().map(|(_, weight)| weight).sum::<f64>();
    let mut below = 0.0;
    values
        .into_iter()
        .find(|(_, weight)| {
            below += weight;
            below >= half
        })
        .map(|(value, _)| value)
}

/// The scaled median absolute value: a standard deviation about zero.
pub(super) fn spread(values: Vec<(f64, f64)>) -> f64 {
    let absolute = values
        .into_iter()
        .map(|(value, weight)| (value.abs(), weight));
    MAD_TO_SD * weighted_median(absolute.collect()).unwrap_or(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weight_decides_where_the_middle_is() {
        let values = vec![(3.0, 1.0), (1.0, 1.0), (2.0, 1.0)];
        assert_eq!(weighted_median(values), Some(2.0));
        assert_eq!(
            weighted_median(vec![(1.0, 1.0), (9.0, 5.0), (f64::NAN, 99.0)]),
            Some(9.0)
        );
        assert_eq!(weighted_median(vec![(1.0, 0.0)]), None);
    }

    #[test]
    fn one_outlier_does_not_count() {
        let values = [-1.0, 1.0, 1.0, -1.0, 500.0].map(|value| (value, 1.0));
        assert!((spread(values.to_vec()) - MAD_TO_SD).abs() < 1e-12);
    }
}
