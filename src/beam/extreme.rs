//! Where a response is greatest.

use super::polynomial::Polynomial;
use super::solve::Bent;
use crate::quantity::unit::Length;

/// By how much of itself a value has to be greater to take the place of one nearer the start:
/// two that are equal but for rounding are one.
const ROUNDING: f64 = 1e-12;

/// The greatest magnitude of a response along the member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extreme<Quantity> {
    /// The magnitude, never negative.
    pub value: Quantity,
    /// Where it occurs, from the start: of equal ones the first. 0 where nothing loads the
    /// member.
    pub at: Length,
}

/// The greatest magnitude and its place in metres. On each piece it stands at an end, where
/// the response may jump, or where its derivative changes sign.
pub(super) fn greatest(
    bent: &[Bent],
    value: impl Fn(&Bent) -> &Polynomial,
    derivative: impl Fn(&Bent) -> &Polynomial,
) -> (f64, f64) {
    let mut highest = (0.0, 0.0);
    for one in bent {
        for t in [0.0]
            .into_iter()
            .chain(derivative(one).roots())
            .chain([1.0])
        {
            let magnitude = value(one).at(t).abs();
            if magnitude > highest.0 * (1.0 + ROUNDING) {
                highest = (magnitude, one.piece.place(t));
            }
        }
    }
    highest
}
