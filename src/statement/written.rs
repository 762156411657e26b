//! A quantity with how it was written.

use uom::si::{Dimension, Quantity, SI};

use super::{Place, Stated, StatementError, Unreadable};
use crate::quantity::{Elevation, last_digit};

/// A quantity that somebody wrote: its value, its text, and how fine its last digit is.
#[derive(Clone, Debug, PartialEq)]
pub struct Written<Value> {
    /// The value.
    pub value: Value,
    /// As it was written.
    pub text: String,
    /// One unit in its last digit, in coherent SI units; nothing where that cannot be told.
    pub last_digit: f64,
    /// Where it stands.
    pub place: Place,
}

/// What has a number in coherent SI units.
pub trait InSi: Copy {
    /// The number: metres, newtons, seconds, and what is built of them.
    fn in_si(self) -> f64;
}

impl<Of: Dimension + ?Sized> InSi for Quantity<Of, SI<f64>, f64> {
    fn in_si(self) -> f64 {
        self.value
    }
}

impl InSi for Elevation {
    fn in_si(self) -> f64 {
        self.height().value
    }
}

impl<Value: InSi> Written<Value> {
    /// Reads a stated text with `parse`.
    ///
    /// # Errors
    /// [`StatementError`] with what `parse` says of the text.
    ///
    /// ```
    /// use sillmark::quantity::parse_length;
    /// use sillmark::statement::{Place, Stated, Written};
    /// let stated = Stated::new("depth", "2.5 m", Place::Option("--depth".into()));
    /// let depth = Written::read(&stated, parse_length)?;
    /// assert!((depth.last_digit - 0.1).abs() < 1e-12);
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn read<Problem: Into<Unreadable>>(
        stated: &Stated<'_>,
        parse: impl Fn(&str) -> Result<Value, Problem>,
    ) -> Result<Self, StatementError> {
        let value = stated.read(&parse)?;
        let digit = last_digit(stated.text()).and_then(|text| parse(&text).ok());
        Ok(Self {
            value,
            text: stated.text().trim().to_owned(),
            last_digit: digit.map_or(0.0, InSi::in_si),
            place: stated.place().clone(),
        })
    }

    /// Standard deviation of the rounding to the last digit, in coherent SI units: all errors
    /// within half a digit are taken as equally likely, so that it is the digit over √12.
    #[must_use]
    pub fn rounding_sd(&self) -> f64 {
        self.last_digit / 12.0_f64.sqrt()
    }
}
