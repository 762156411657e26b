//! Stored values of cells, in the precision that their band needs.

use std::ops::Range;

use gdal::raster::GdalDataType;

/// The precision that holds every value of a band exactly.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Precision {
    Single,
    Double,
}

impl Precision {
    pub(super) fn of(kind: GdalDataType) -> Self {
        match kind {
            GdalDataType::Float32
            | GdalDataType::UInt8
            | GdalDataType::Int8
            | GdalDataType::UInt16
            | GdalDataType::Int16 => Self::Single,
            _ => Self::Double,
        }
    }

    /// Bytes of one value.
    pub(super) const fn bytes(self) -> usize {
        match self {
            Self::Single => size_of::<f32>(),
            Self::Double => size_of::<f64>(),
        }
    }
}

/// Values as the file stores them, row after row; NaN where there is none.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Values {
    Single(Vec<f32>),
    Double(Vec<f64>),
}

impl Values {
    /// The value at `index`; NaN beyond the last.
    pub(super) fn get(&self, index: usize) -> f64 {
        match self {
            Self::Single(values) => values.get(index).map_or(f64::NAN, |value| (*value).into()),
            Self::Double(values) => values.get(index).copied().unwrap_or(f64::NAN),
        }
    }

    /// Lowest and highest value; `None` where a cell has none, or none that is finite.
    pub(super) fn range(&self) -> Option<(f64, f64)> {
        let mut spread = Spread::default();
        match self {
            Self::Single(values) => spread.single.add(values),
            Self::Double(values) => spread.double.add(values),
        }
        let range = spread
            .range()
            .filter(|(low, high)| low.is_finite() && high.is_finite());
        range.filter(|_| spread.voids() == 0)
    }

    /// Takes the value of every cell that `is_value` refuses.
    pub(super) fn retain(&mut self, is_value: impl Fn(usize, f64) -> bool) {
        match self {
            Self::Single(values) => {
                for (index, value) in values.iter_mut().enumerate() {
                    if !is_value(index, (*value).into()) {
                        *value = f32::NAN;
                    }
                }
            }
            Self::Double(values) => {
                for (index, value) in values.iter_mut().enumerate() {
                    if !is_value(index, *value) {
                        *value = f64::NAN;
                    }
                }
            }
        }
    }

    /// Adds a run of values to what has been looked at.
    pub(super) fn survey(&self, run: Range<usize>, spread: &mut Spread) {
        match self {
            Self::Single(values) => spread.single.add(values.get(run).unwrap_or_default()),
            Self::Double(values) => spread.double.add(values.get(run).unwrap_or_default()),
        }
    }
}

/// Lowest and highest of the stored values looked at, and how many cells there were.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spread {
    single: Lanes<f32>,
    double: Lanes<f64>,
}

impl Default for Spread {
    fn default() -> Self {
        Self {
            single: Lanes::new(f32::INFINITY, f32::NEG_INFINITY),
            double: Lanes::new(f64::INFINITY, f64::NEG_INFINITY),
        }
    }
}

impl Spread {
    /// Lowest and highest value; `None` where no cell had one.
    pub(super) fn range(&self) -> Option<(f64, f64)> {
        let (low, high) = self.single.range();
        let (lowest, highest) = self.double.range();
        let (lowest, highest) = (lowest.min(low), highest.max(high));
        (lowest <= highest).then_some((lowest, highest))
    }

    /// Cells looked at.
    pub(super) const fn cells(&self) -> usize {
        self.single.cells + self.double.cells
    }

    /// Those of them without a value.
    pub(super) fn voids(&self) -> usize {
        let count = |voids: [u32; LANES]| voids.iter().map(|one| *one as usize).sum::<usize>();
        count(self.single.voids) + count(self.double.voids)
    }
}

/// Cells that are compared at a time: as many single-precision numbers as a register of every
/// processor holds.
const LANES: usize = 4;

#[derive(Clone, Copy, Debug)]
struct Lanes<T> {
    lowest: [T; LANES],
    highest: [T; LANES],
    voids: [u32; LANES],
    cells: usize,
}

impl<T: Copy + PartialOrd + Into<f64>> Lanes<T> {
    const fn new(lowest: T, highest: T) -> Self {
        Self {
            lowest: [lowest; LANES],
            highest: [highest; LANES],
            voids: [0; LANES],
            cells: 0,
        }
    }

    #[inline]
    fn add(&mut self, values: &[T]) {
        self.cells += values.len();
        let (whole, rest) = values.as_chunks::<LANES>();
        let Self {
            mut lowest,
            mut highest,
            mut voids,
            ..
        } = *self;
        for four in whole {
            for lane in 0..LANES {
                look(
                    four[lane],
                    &mut lowest[lane],
                    &mut highest[lane],
                    &mut voids[lane],
                );
            }
        }
        for (lane, value) in rest.iter().enumerate() {
            look(
                *value,
                &mut lowest[lane],
                &mut highest[lane],
                &mut voids[lane],
            );
        }
        (self.lowest, self.highest, self.voids) = (lowest, highest, voids);
    }

    fn range(&self) -> (f64, f64) {
        let lowest = self.lowest.iter().map(|value| (*value).into());
        let highest = self.highest.iter().map(|value| (*value).into());
        (
            lowest.fold(f64::INFINITY, f64::min),
            highest.fold(f64::NEG_INFINITY, f64::max),
        )
    }
}

/// NaN is neither less nor greater, and not equal to itself.
#[inline]
#[allow(clippy::eq_op)]
fn look<T: Copy + PartialOrd>(value: T, lowest: &mut T, highest: &mut T, voids: &mut u32) {
    *lowest = if value < *lowest { value } else { *lowest };
    *highest = if value > *highest { value } else { *highest };
    *voids += u32::from(value != value);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn voids_are_counted_and_do_not_hide_the_extremes() {
        let cells = [3.0, f32::NAN, -2.0, 7.5, f32::NAN, 4.0, 9.0];
        let mut spread = Spread::default();
        let values = Values::Single(cells.to_vec());
        values.survey(0..5, &mut spread);
        assert_eq!(spread.range(), Some((-2.0, 7.5)));
        values.survey(5..7, &mut spread);
        assert_eq!(spread.range(), Some((-2.0, 9.0)));
        assert_eq!((spread.cells(), spread.voids()), (7, 2));
    }

    #[test]
    fn nothing_but_voids_has_no_range() {
        let mut spread = Spread::default();
        Values::Double(vec![f64::NAN; 9]).survey(0..9, &mut spread);
        assert_eq!((spread.range(), spread.voids()), (None, 9));
    }
}
