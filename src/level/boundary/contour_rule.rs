//! The rule for printed contours.

use crate::quantity::{Elevation, IncomparableDatums, Length, unit::foot};

/// Two banks whose elevations do not go together.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BanksDisagree {
    /// They differ by more than half the contour interval.
    #[error(
        "the banks stand {:.2} ft apart; accepted: at most half the contour interval, {:.2} ft",
        by.get::<foot>(), accepted.get::<foot>()
    )]
    Apart {
        /// Their difference.
        by: Length,
        /// Half the contour interval.
        accepted: Length,
    },
    /// They stand on different datums.
    #[error(transparent)]
    Datums(#[from] IncomparableDatums),
}

/// The flood level from the elevations at which a zone's edge meets the contours of the left
/// and the right bank (of a lake: the highest and the lowest).
///
/// They may differ by at most half the contour interval; the level is the lower one plus half
/// the interval (FEMA 265, pages V-3 and V-5). Half an interval is what contours are good
/// for, so the level is on the safe side of it.
///
/// # Errors
/// [`BanksDisagree`] with their difference.
///
/// ```
/// use sillmark::level::level_between_contours;
/// use sillmark::quantity::{parse_elevation, parse_length};
/// let (left, right) = (parse_elevation("323 ft NGVD29")?, parse_elevation("325 ft NGVD29")?);
/// let level = level_between_contours(left, right, parse_length("5 ft")?)?;
/// assert_eq!(level, parse_elevation("325.5 ft NGVD29")?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn level_between_contours(
    one_bank: Elevation,
    other_bank: Elevation,
    interval: Length,
) -> Result<Elevation, BanksDisagree> {
    let accepted = interval / 2.0;
    let difference = one_bank.above(other_bank)?;
    let by = difference.abs();
    // A millionth of a metre is rounding of the conversion of units.
    if by.value > accepted.value + 1e-6 {
        return Err(BanksDisagree::Apart { by, accepted });
    }
    let lower = if difference.value > 0.0 {
        other_bank
    } else {
        one_bank
    };
    Ok(lower.raised(accepted))
}
