//! An elevation: a height and the datum it is counted from.

use super::{Length, VerticalDatum};

/// A height above a vertical datum.
///
/// There is no `Sub`, no `PartialOrd` and no way to reach the bare height of two
/// elevations and forget the datum in passing: compare with [`above`](Self::above),
/// which refuses two datums.
///
/// ```compile_fail
/// use sillmark::quantity::parse_elevation;
/// let level = parse_elevation("9 ft NAVD88").unwrap();
/// let sill = parse_elevation("8.1 ft NGVD29").unwrap();
/// let depth = level - sill; // elevations do not subtract
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elevation {
    height: Length,
    datum: VerticalDatum,
}

/// Two elevations whose datums do not allow a comparison.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum IncomparableDatums {
    /// The datums differ and no conversion was applied.
    #[error(
        "{left} and {right} are different vertical datums: their heights cannot be compared without a conversion"
    )]
    Different {
        /// Datum of the first elevation.
        left: VerticalDatum,
        /// Datum of the second elevation.
        right: VerticalDatum,
    },
    /// Both name the same tidal datum, which means another surface at each gauge.
    #[error(
        "{datum} is another surface at each tide gauge: heights on it cannot be compared until the gauge and its offset are stated"
    )]
    Tidal {
        /// The tidal datum.
        datum: VerticalDatum,
    },
}

impl Elevation {
    /// The elevation `height` above `datum`.
    #[must_use]
    pub const fn new(height: Length, datum: VerticalDatum) -> Self {
        Self { height, datum }
    }

    /// Height above the datum, for printing beside the datum.
    #[must_use]
    pub const fn height(self) -> Length {
        self.height
    }

    /// The datum.
    #[must_use]
    pub const fn datum(self) -> VerticalDatum {
        self.datum
    }

    /// How far this elevation lies above `other`; negative where it lies below.
    ///
    /// # Errors
    /// [`IncomparableDatums`] where the two do not stand on one surface.
    pub fn above(self, other: Self) -> Result<Length, IncomparableDatums> {
        self.datum_shared_with(other)?;
        Ok(self.height - other.height)
    }

    /// This elevation moved up by `by` (down where negative).
    #[must_use]
    pub fn raised(self, by: Length) -> Self {
        Self::new(self.height + by, self.datum)
    }

    /// The higher of the two.
    ///
    /// # Errors
    /// [`IncomparableDatums`] where the two do not stand on one surface.
    pub fn higher_of(self, other: Self) -> Result<Self, IncomparableDatums> {
        self.datum_shared_with(other)?;
        Ok(if other.height > self.height {
            other
        } else {
            self
        })
    }

    fn datum_shared_with(self, other: Self) -> Result<(), IncomparableDatums> {
        if self.datum != other.datum {
            Err(IncomparableDatums::Different {
                left: self.datum,
                right: other.datum,
            })
        } else if self.datum.is_one_surface() {
            Ok(())
        } else {
            Err(IncomparableDatums::Tidal { datum: self.datum })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit::foot;

    fn feet(height: f64, datum: VerticalDatum) -> Elevation {
        Elevation::new(Length::new::<foot>(height), datum)
    }

    #[test]
    fn two_datums_never_give_a_number() {
        let level = feet(9.0, VerticalDatum::Navd88);
        let sill = feet(8.1, VerticalDatum::Ngvd29);
        assert_eq!(
            level.above(sill),
            Err(IncomparableDatums::Different {
                left: VerticalDatum::Navd88,
                right: VerticalDatum::Ngvd29
            })
        );
        assert!(level.higher_of(sill).is_err());
    }

    #[test]
    fn a_tidal_datum_is_not_comparable_even_with_itself() {
        let level = feet(9.0, VerticalDatum::LocalTidal);
        assert_eq!(
            level.above(level),
            Err(IncomparableDatums::Tidal {
                datum: VerticalDatum::LocalTidal
            })
        );
    }

    #[test]
    fn the_higher_of_two() {
        let low = feet(9.0, VerticalDatum::Navd88);
        let high = low.raised(Length::new::<foot>(1.0));
        assert_eq!(low.higher_of(high), Ok(high));
        assert_eq!(high.higher_of(low), Ok(high));
    }
}
