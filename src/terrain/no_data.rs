//! Which stored values stand for no value.

use gdal::raster::{GdalDataType, RasterBand};

/// The rule by which a band marks cells without a value.
///
/// Whatever the band says, what is not a finite number is no value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum NoData {
    /// Every finite number is a value.
    Unmarked,
    /// One whole number, in a band of whole numbers.
    Whole(f64),
    /// One number in single precision.
    Single(f32),
    /// One number in double precision.
    Double(f64),
}

/// Relative tolerances: the mark may have gone through a text with six or fifteen digits.
const SINGLE_TOLERANCE: f32 = 1e-6;
const DOUBLE_TOLERANCE: f64 = 1e-12;

impl NoData {
    pub(super) fn of_band(band: &RasterBand<'_>) -> Self {
        let kind = band.band_type();
        #[allow(clippy::cast_precision_loss)] // a height has far fewer digits
        let mark = match kind {
            GdalDataType::Int64 => band.no_data_value_i64().map(|mark| mark as f64),
            GdalDataType::UInt64 => band.no_data_value_u64().map(|mark| mark as f64),
            _ => band.no_data_value(),
        };
        Self::new(kind, mark)
    }

    fn new(kind: GdalDataType, mark: Option<f64>) -> Self {
        let Some(mark) = mark.filter(|mark| mark.is_finite()) else {
            return Self::Unmarked;
        };
        match kind {
            #[allow(clippy::cast_possible_truncation)] // in the band's own type
            GdalDataType::Float32 => Self::Single(mark as f32),
            GdalDataType::Float64 => Self::Double(mark),
            // A mark that the type cannot hold marks no cell.
            _ if mark.fract() == 0.0 && whole_range(kind).contains(&mark) => Self::Whole(mark),
            _ => Self::Unmarked,
        }
    }

    /// Whether a value between two bounds may stand for none.
    pub(super) fn may_mark_within(self, low: f64, high: f64) -> bool {
        let mark = match self {
            Self::Unmarked => return false,
            Self::Whole(mark) | Self::Double(mark) => mark,
            Self::Single(mark) => mark.into(),
        };
        // Wider than the tolerance of any kind of mark.
        let slack = 0.5 + 1e-5 * mark.abs();
        low - slack <= mark && mark <= high + slack
    }

    /// Whether a stored value stands for none.
    pub(super) fn marks(self, value: f64) -> bool {
        if !value.is_finite() {
            return true;
        }
        match self {
            Self::Unmarked => false,
            Self::Whole(mark) => (value - mark).abs() < 0.5,
            Self::Single(mark) => {
                #[allow(clippy::cast_possible_truncation)] // it was read from single
                let value = value as f32;
                (value - mark).abs() <= SINGLE_TOLERANCE * mark.abs()
            }
            Self::Double(mark) => (value - mark).abs() <= DOUBLE_TOLERANCE * mark.abs(),
        }
    }
}

/// The whole numbers that a type holds, as far as they are exact in double precision.
fn whole_range(kind: GdalDataType) -> std::ops::RangeInclusive<f64> {
    let signed = |bits: i32| -(2_f64.powi(bits - 1))..=2_f64.powi(bits - 1) - 1.0;
    let unsigned = |bits: i32| 0.0..=2_f64.powi(bits) - 1.0;
    match kind {
        GdalDataType::UInt8 => unsigned(8),
        GdalDataType::Int8 => signed(8),
        GdalDataType::UInt16 => unsigned(16),
        GdalDataType::Int16 => signed(16),
        GdalDataType::UInt32 => unsigned(32),
        GdalDataType::Int32 => signed(32),
        GdalDataType::UInt64 => unsigned(64),
        _ => signed(64),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mark_that_the_type_cannot_hold_marks_nothing() {
        for mark in [-9999.0, 65536.0, 12.5, f64::NAN] {
            let rule = NoData::new(GdalDataType::UInt16, Some(mark));
            assert_eq!(rule, NoData::Unmarked, "{mark}");
        }
        let rule = NoData::new(GdalDataType::Int16, Some(-9999.0));
        assert!(rule.marks(-9999.0) && !rule.marks(-9998.0));
    }

    #[test]
    fn single_precision_is_compared_as_such() {
        // As met in water-surface rasters: neither is the lowest single-precision number.
        let rule = NoData::new(GdalDataType::Float32, Some(-3.402_823_060_737_096_5e38));
        assert!(rule.marks(f64::from(f32::MIN)));
        let rule = NoData::new(GdalDataType::Float32, Some(-9999.9));
        assert!(rule.marks(f64::from(-9999.9_f32)));
        assert!(!rule.marks(12.0));
    }

    #[test]
    fn what_is_not_finite_is_no_value() {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(NoData::Unmarked.marks(value));
        }
        assert!(NoData::new(GdalDataType::Float64, Some(f64::NAN)).marks(f64::NAN));
        let zero = NoData::new(GdalDataType::Float64, Some(0.0));
        assert!(zero.marks(0.0) && !zero.marks(1e-6));
    }
}
