//! A pressure that varies evenly with the height.

use crate::quantity::{Length, LineLoad, MomentPerLength, Pressure};

/// Pressure on an upright surface between two heights, varying evenly between its ends.
///
/// Heights are measured up from the sill; the ground below it is negative.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureBand {
    /// Lower end.
    pub from: Length,
    /// Upper end.
    pub to: Length,
    /// Pressure at the lower end.
    pub at_from: Pressure,
    /// Pressure at the upper end.
    pub at_to: Pressure,
}

impl PressureBand {
    /// Force on each unit of width: the height times the mean of the end pressures.
    ///
    /// ```
    /// use sillmark::load::PressureBand;
    /// use sillmark::quantity::unit::{Length, Pressure, foot, in_pounds_per_foot, pound_per_square_foot};
    /// let band = PressureBand {
    ///     from: Length::new::<foot>(1.0),
    ///     to: Length::new::<foot>(3.0),
    ///     at_from: Pressure::new::<pound_per_square_foot>(100.0),
    ///     at_to: Pressure::new::<pound_per_square_foot>(50.0),
    /// };
    /// assert!((in_pounds_per_foot(band.force()) - 150.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn force(&self) -> LineLoad {
        (self.at_from + self.at_to) * (self.to - self.from) / 2.0
    }

    /// Moment of that force about the height `axis`, on each unit of width; positive where
    /// the force lies above the axis.
    #[must_use]
    pub fn moment_about(&self, axis: Length) -> MomentPerLength {
        let (low, high) = (self.from - axis, self.to - axis);
        let weighted = self.at_from * (low * 2.0 + high) + self.at_to * (low + high * 2.0);
        weighted * (self.to - self.from) / 6.0
    }

    /// The pressure on the straight line through both ends, at a height between them.
    pub(super) fn on_the_line(&self, height: Length) -> Pressure {
        let part = ((height - self.from) / (self.to - self.from)).value;
        self.at_from * (1.0 - part) + self.at_to * part
    }

    /// The same load with its lower end first; `None` where it has no height.
    pub(super) fn upright(self) -> Option<Self> {
        if self.from < self.to {
            Some(self)
        } else if self.to < self.from {
            Some(Self {
                from: self.to,
                to: self.from,
                at_from: self.at_to,
                at_to: self.at_from,
            })
        } else {
            None
        }
    }

    /// The part between two heights, with the pressures that it has at the cuts.
    pub(super) fn clipped(&self, from: Length, to: Length) -> Option<Self> {
        let (low, high) = (self.from.max(from), self.to.min(to));
        (low < high).then(|| Self {
            from: low,
            to: high,
            at_from: if low > self.from {
                self.on_the_line(low)
            } else {
                self.at_from
            },
            at_to: if high < self.to {
                self.on_the_line(high)
            } else {
                self.at_to
            },
        })
    }
}
