//! Drag coefficients of a wall in fast water.

use crate::quantity::Length;

/// How the drag coefficient was found from the ratio of width to depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DragCoefficient {
    /// Width across the flow over depth of the water; infinite where no width is stated.
    pub ratio: f64,
    /// The coefficient.
    pub value: f64,
    /// Where in the table the ratio lies.
    pub found: DragRow,
}

/// Where a ratio of width to depth lies in the table of drag coefficients.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DragRow {
    /// In one of the bands.
    Within,
    /// Between two bands, which the table ends with whole numbers: the higher one is taken.
    BetweenBands,
    /// Below the table, which begins at 1: the value of a square pile is taken.
    BelowTable,
    /// Nobody stated the width: the greatest of the table is taken.
    WidthNotStated,
}

/// Upper end of each band and its coefficient; the band begins where the one before it ends.
/// FEMA P-55 (2011) vol. II table 8-2 (from memory).
const BANDS: [(f64, f64); 6] = [
    (12.0, 1.25),
    (20.0, 1.30),
    (32.0, 1.40),
    (40.0, 1.50),
    (80.0, 1.75),
    (120.0, 1.80),
];

/// Beyond the last band, from the same table.
const WIDEST: f64 = 2.0;

/// A square pile, FEMA P-55 (2011) vol. II, notes to Eq. 8.8.
const SQUARE_PILE: f64 = 2.0;

/// A ratio this little over a band's end got there by rounding.
const ROUNDING: f64 = 1e-9;

impl DragCoefficient {
    /// The coefficient for a wall of `width` in water of `depth`, both above zero.
    ///
    /// | width/depth | 1–12 | 13–20 | 21–32 | 33–40 | 41–80 | 81–120 | over 120 |
    /// | --- | --- | --- | --- | --- | --- | --- | --- |
    /// | coefficient | 1.25 | 1.30 | 1.40 | 1.50 | 1.75 | 1.80 | 2.00 |
    ///
    /// The bands end with whole numbers and leave gaps, such as from 12 to 13, of which the
    /// source says nothing: there the higher band is taken. Below 1, what stands in the
    /// water is narrower than the water is deep, a pile rather than a wall: 2.0, the value
    /// of a square pile, is taken. [`DragRow`] records both.
    ///
    /// Reference: FEMA P-55 (2011) vol. II table 8-2 (from memory); the pile from the notes
    /// to Eq. 8.8 there.
    ///
    /// ```
    /// use sillmark::load::{DragCoefficient, DragRow};
    /// use sillmark::quantity::unit::{Length, foot};
    /// let feet = |number| Length::new::<foot>(number);
    /// let drag = DragCoefficient::of(feet(37.5), feet(3.0)); // a ratio of 12.5
    /// assert_eq!((drag.value, drag.found), (1.30, DragRow::BetweenBands));
    /// ```
    #[must_use]
    pub fn of(width: Length, depth: Length) -> Self {
        let ratio = (width / depth).value;
        let (value, found) = if ratio < 1.0 - ROUNDING {
            (SQUARE_PILE, DragRow::BelowTable)
        } else {
            in_table(ratio)
        };
        Self {
            ratio,
            value,
            found,
        }
    }

    /// The greatest coefficient of the table, 2.00, for a wall whose width nobody stated: no
    /// width gives more.
    #[must_use]
    pub const fn of_unknown_width() -> Self {
        Self {
            ratio: f64::INFINITY,
            value: WIDEST,
            found: DragRow::WidthNotStated,
        }
    }
}

fn in_table(ratio: f64) -> (f64, DragRow) {
    let reaches = |end: f64| ratio <= end * (1.0 + ROUNDING);
    let Some(band) = BANDS.iter().position(|(end, _)| reaches(*end)) else {
        return (WIDEST, DragRow::Within);
    };
    let begins = match band.checked_sub(1) {
        Some(before) => BANDS[before].0 + 1.0,
        None => 1.0,
    };
    let found = if ratio < begins * (1.0 - ROUNDING) {
        DragRow::BetweenBands
    } else {
        DragRow::Within
    };
    (BANDS[band].1, found)
}
