//! How many whole planks reach a height.

use super::Kit;
use super::limit::{ROUNDING_METRES, exceeds};
use crate::quantity::Length;

/// Whole planks, one on the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlankStack {
    /// How many.
    pub count: u32,
    /// Their height together: the barrier height.
    pub height: Length,
}

impl PlankStack {
    /// Whether water of a depth over the sill stands above the barrier. Water that just
    /// reaches its top does not, whatever the last binary digits say.
    ///
    /// ```
    /// use sillmark::barrier::{Kit, planks_for};
    /// use sillmark::quantity::{Length, unit::foot};
    /// let depth = Length::new::<foot>(3.0);
    /// let stack = planks_for(depth, &Kit::demonstration()?);
    /// assert!(!stack.is_overtopped_by(depth));
    /// assert!(stack.is_overtopped_by(depth * 1.01));
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    #[must_use]
    pub fn is_overtopped_by(self, depth: Length) -> bool {
        exceeds(depth, self.height)
    }
}

/// The fewest whole planks of `kit` that reach `protection_height`; none for no height.
///
/// ```
/// use sillmark::barrier::{Kit, planks_for};
/// use sillmark::quantity::{Length, unit::{foot, inch}};
/// let kit = Kit::demonstration()?; // 6 in planks
/// let stack = planks_for(Length::new::<foot>(1.9), &kit);
/// assert_eq!(stack.count, 4);
/// assert!((stack.height.get::<inch>() - 24.0).abs() < 1e-9);
/// # Ok::<(), sillmark::statement::StatementError>(())
/// ```
#[must_use]
pub fn planks_for(protection_height: Length, kit: &Kit) -> PlankStack {
    let cover = kit.plank.cover;
    let height = (protection_height.value - ROUNDING_METRES).max(0.0);
    // A kit's planks are at least a centimetre high and a stated height at most a kilometre,
    // so the count fits.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let count = (height / cover.value).ceil() as u32;
    PlankStack {
        count,
        height: cover * f64::from(count),
    }
}
