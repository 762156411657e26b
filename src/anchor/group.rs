//! Where the anchors stand.

use super::error::above_zero;
use super::line::Line;
use super::{AnchorError, Edge, Edges, Side};
use crate::quantity::Length;
use crate::quantity::unit::meter;

/// A rectangular group of anchors: every column has every row.
#[derive(Clone, Debug, PartialEq)]
pub struct AnchorGroup {
    x_spacings: Vec<Length>,
    y_spacings: Vec<Length>,
    /// The edges beyond the outermost anchors.
    pub edges: Edges,
}

impl AnchorGroup {
    /// A group from the spacings between its columns and between its rows.
    ///
    /// # Errors
    /// [`AnchorError`] where a spacing or edge distance is not a length above 0.
    ///
    /// ```
    /// use sillmark::anchor::{AnchorGroup, Edges};
    /// use sillmark::quantity::unit::{Length, inch};
    /// let nine = Length::new::<inch>(9.0);
    /// let group = AnchorGroup::new([nine, nine, nine], [nine], Edges::FAR)?;
    /// assert_eq!(group.count(), 8);
    /// assert!(AnchorGroup::new([-nine], [], Edges::FAR).is_err());
    /// # Ok::<(), sillmark::anchor::AnchorError>(())
    /// ```
    pub fn new(
        x_spacings: impl IntoIterator<Item = Length>,
        y_spacings: impl IntoIterator<Item = Length>,
        edges: Edges,
    ) -> Result<Self, AnchorError> {
        let group = Self {
            x_spacings: x_spacings.into_iter().collect(),
            y_spacings: y_spacings.into_iter().collect(),
            edges,
        };
        group.validate()?;
        Ok(group)
    }

    /// A group of so many columns and rows, each with one spacing.
    ///
    /// # Errors
    /// [`AnchorError`] as for [`AnchorGroup::new`], and where a number is 0.
    pub fn grid(
        (columns, column_spacing): (u32, Length),
        (rows, row_spacing): (u32, Length),
        edges: Edges,
    ) -> Result<Self, AnchorError> {
        let spacings = |count: u32, spacing, what| match count.checked_sub(1) {
            Some(gaps) => Ok(vec![spacing; gaps as usize]),
            None => Err(AnchorError::NoAnchors { what }),
        };
        Self::new(
            spacings(columns, column_spacing, "columns")?,
            spacings(rows, row_spacing, "rows")?,
            edges,
        )
    }

    /// One anchor.
    ///
    /// # Errors
    /// [`AnchorError`] where an edge distance is not a length above 0.
    pub fn single(edges: Edges) -> Result<Self, AnchorError> {
        Self::new([], [], edges)
    }

    /// How many anchors there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.columns() * self.rows()
    }

    /// How many columns, along x.
    #[must_use]
    pub fn columns(&self) -> usize {
        self.x_spacings.len() + 1
    }

    /// How many rows, along y.
    #[must_use]
    pub fn rows(&self) -> usize {
        self.y_spacings.len() + 1
    }

    /// The outermost row or column at a side, as a group of its own with the edges it sees.
    ///
    /// ```
    /// use sillmark::anchor::{AnchorGroup, Edge, Edges, Side};
    /// use sillmark::quantity::unit::{Length, inch};
    /// let inches = Length::new::<inch>;
    /// let edges = Edges { y_plus: Edge::At(inches(6.0)), ..Edges::FAR };
    /// let group = AnchorGroup::grid((3, inches(4.0)), (2, inches(8.0)), edges)?;
    /// let wet = group.outermost(Side::YMinus);
    /// assert_eq!(wet.count(), 3);
    /// assert_eq!(wet.edges.y_plus, Edge::At(inches(14.0)));
    /// # Ok::<(), sillmark::anchor::AnchorError>(())
    /// ```
    #[must_use]
    pub fn outermost(&self, side: Side) -> Self {
        let mut row = self.clone();
        let spacings = if side.across_x() {
            &mut row.x_spacings
        } else {
            &mut row.y_spacings
        };
        let beyond = spacings
            .drain(..)
            .fold(Length::default(), |sum, gap| sum + gap);
        if let Edge::At(distance) = row.edges.at_mut(side.opposite()) {
            *distance += beyond;
        }
        row
    }

    /// The group along x, or along y; `Err` with the sides whose edge nobody stated.
    pub(super) fn line(&self, along_x: bool) -> Result<Line, Vec<Side>> {
        let (spacings, sides) = if along_x {
            (&self.x_spacings, [Side::XMinus, Side::XPlus])
        } else {
            (&self.y_spacings, [Side::YMinus, Side::YPlus])
        };
        let [before, after] = sides.map(|side| match self.edges.at(side) {
            Edge::At(distance) => Ok(distance),
            Edge::Far => Ok(Length::new::<meter>(f64::INFINITY)),
            Edge::Unstated => Err(side),
        });
        match (before, after) {
            (Ok(before), Ok(after)) => Ok(Line::new(spacings, before, after)),
            (before, after) => Err([before.err(), after.err()].into_iter().flatten().collect()),
        }
    }

    /// The same across a side that takes no part, wherever its edge is.
    pub(super) fn line_without_edge(&self, side: Side) -> Result<Line, Vec<Side>> {
        let mut group = self.clone();
        *group.edges.at_mut(side) = Edge::Far;
        group.line(side.across_x())
    }

    pub(super) fn validate(&self) -> Result<(), AnchorError> {
        for spacing in self.x_spacings.iter().chain(&self.y_spacings) {
            above_zero("spacing", *spacing)?;
        }
        for side in Side::ALL {
            if let Edge::At(distance) = self.edges.at(side) {
                above_zero("edge distance", distance)?;
            }
        }
        Ok(())
    }
}
