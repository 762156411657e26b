//! The line that a barrier follows.

use crate::quantity::Length;

/// The line of a barrier seen from above: straight legs with a right angle between.
///
/// A door or a garage is one leg. A barrier that stands out from the wall around a bay or a
/// flight of steps has three: out, along, back.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    legs: Vec<Length>,
}

impl Run {
    /// One straight leg.
    ///
    /// ```
    /// use sillmark::barrier::Run;
    /// use sillmark::quantity::{Length, unit::inch};
    /// assert_eq!(Run::straight(Length::new::<inch>(36.0)).corners(), 0);
    /// ```
    #[must_use]
    pub fn straight(length: Length) -> Self {
        Self { legs: vec![length] }
    }

    /// Legs in their order along the barrier, each measured to the middle of its corner posts;
    /// `None` where there is none, or one of them has no length.
    #[must_use]
    pub fn of_legs(legs: Vec<Length>) -> Option<Self> {
        let all_have_a_length = legs.iter().all(|leg| leg.value > 0.0);
        (!legs.is_empty() && all_have_a_length).then_some(Self { legs })
    }

    /// The legs.
    #[must_use]
    pub fn legs(&self) -> &[Length] {
        &self.legs
    }

    /// How many right angles there are.
    #[must_use]
    pub fn corners(&self) -> usize {
        self.legs.len() - 1
    }

    /// All legs together.
    #[must_use]
    pub fn length(&self) -> Length {
        self.legs.iter().copied().sum()
    }
}
