//! Quantities that nothing in the world can have, refused before anything is computed.

/// A number that cannot be: what it was given for, the number, and what is accepted.
///
/// Numbers are printed in the coherent SI unit that follows them.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Impossible {
    /// Infinite or not a number.
    #[error("{what} \"{}\": it is not finite; accepted: a finite number", with_unit(*value, unit))]
    NotFinite {
        /// What the number was given for.
        what: &'static str,
        /// The number.
        value: f64,
        /// Its unit.
        unit: &'static str,
    },
    /// Below zero.
    #[error("{what} \"{}\": it is negative; accepted: zero or more", with_unit(*value, unit))]
    Negative {
        /// What the number was given for.
        what: &'static str,
        /// The number.
        value: f64,
        /// Its unit.
        unit: &'static str,
    },
    /// Zero or below.
    #[error("{what} \"{}\": it is not above zero; accepted: more than zero", with_unit(*value, unit))]
    NotPositive {
        /// What the number was given for.
        what: &'static str,
        /// The number.
        value: f64,
        /// Its unit.
        unit: &'static str,
    },
    /// Outside what a formula or another number allows.
    #[error("{what} \"{}\": it is out of range; accepted: {accepted}", with_unit(*value, unit))]
    Outside {
        /// What the number was given for.
        what: &'static str,
        /// The number.
        value: f64,
        /// Its unit.
        unit: &'static str,
        /// What is accepted.
        accepted: String,
    },
}

/// Refuses what is infinite or not a number.
///
/// # Errors
/// [`Impossible::NotFinite`].
pub fn finite(what: &'static str, value: f64, unit: &'static str) -> Result<(), Impossible> {
    if value.is_finite() {
        Ok(())
    } else {
        Err(Impossible::NotFinite { what, value, unit })
    }
}

/// Refuses what is below zero or not finite.
///
/// # Errors
/// [`Impossible::NotFinite`] or [`Impossible::Negative`].
///
/// ```
/// use sillmark::quantity::not_negative;
/// let error = not_negative("water depth", -0.3, "m").unwrap_err();
/// assert_eq!(
///     error.to_string(),
///     "water depth \"-0.3 m\": it is negative; accepted: zero or more"
/// );
/// ```
pub fn not_negative(what: &'static str, value: f64, unit: &'static str) -> Result<(), Impossible> {
    finite(what, value, unit)?;
    if value < 0.0 {
        return Err(Impossible::Negative { what, value, unit });
    }
    Ok(())
}

/// Refuses what is zero, below zero or not finite.
///
/// # Errors
/// [`Impossible::NotFinite`] or [`Impossible::NotPositive`].
pub fn positive(what: &'static str, value: f64, unit: &'static str) -> Result<(), Impossible> {
    finite(what, value, unit)?;
    if value <= 0.0 {
        return Err(Impossible::NotPositive { what, value, unit });
    }
    Ok(())
}

/// A number without a unit stands alone.
fn with_unit(value: f64, unit: &str) -> String {
    format!("{value} {unit}").trim_end().to_owned()
}
