//! What presses on a member.

use crate::quantity::unit::{Force, Length, LineLoad};

/// A load that varies linearly between two places of a member, N/m; in the direction of the
/// water where positive. It may cover a part of the member, and loads that overlap add.
///
/// A load that begins where it ends has no resultant and does nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LinearLoad {
    /// Where it begins, from the member's start.
    pub from: Length,
    /// Where it ends, not before it begins.
    pub to: Length,
    /// Its value where it begins.
    pub at_from: LineLoad,
    /// Its value where it ends.
    pub at_to: LineLoad,
}

impl LinearLoad {
    /// The same load everywhere between two places.
    ///
    /// ```
    /// use sillmark::beam::LinearLoad;
    /// use sillmark::quantity::unit::{Length, meter, newtons_per_metre};
    /// let metres = Length::new::<meter>;
    /// let load = LinearLoad::uniform(metres(0.5), metres(1.5), newtons_per_metre(100.0));
    /// assert_eq!(load.at_from, load.at_to);
    /// ```
    #[must_use]
    pub fn uniform(from: Length, to: Length, load: LineLoad) -> Self {
        Self {
            from,
            to,
            at_from: load,
            at_to: load,
        }
    }
}

/// A load at one place of a member, N; in the direction of the water where positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointLoad {
    /// Where it acts, from the member's start.
    pub at: Length,
    /// The force.
    pub force: Force,
}
