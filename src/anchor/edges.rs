//! The four sides of a group, and how far the edges are.

use std::fmt;

use crate::quantity::Length;
use crate::statement::Choice;

/// One of the four sides of a group: x runs along the wall, y across it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Where x is least.
    XMinus,
    /// Where x is greatest.
    XPlus,
    /// Where y is least.
    YMinus,
    /// Where y is greatest.
    YPlus,
}

impl Side {
    /// All four.
    pub const ALL: [Self; 4] = [Self::XMinus, Self::XPlus, Self::YMinus, Self::YPlus];

    /// The side across.
    #[must_use]
    pub fn opposite(self) -> Self {
        match self {
            Self::XMinus => Self::XPlus,
            Self::XPlus => Self::XMinus,
            Self::YMinus => Self::YPlus,
            Self::YPlus => Self::YMinus,
        }
    }

    /// The two sides that a force toward this one runs along.
    #[must_use]
    pub fn beside(self) -> [Self; 2] {
        if self.across_x() {
            [Self::YMinus, Self::YPlus]
        } else {
            [Self::XMinus, Self::XPlus]
        }
    }

    /// Whether x runs toward or away from it.
    pub(super) fn across_x(self) -> bool {
        matches!(self, Self::XMinus | Self::XPlus)
    }
}

impl Choice for Side {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("x-", Self::XMinus),
        ("x+", Self::XPlus),
        ("y-", Self::YMinus),
        ("y+", Self::YPlus),
    ];
}

impl fmt::Display for Side {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(self.word())
    }
}

/// How far the concrete reaches beyond the outermost anchors of a side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Edge {
    /// So far, from the centre of the outermost anchors.
    At(Length),
    /// So far that it takes no part.
    Far,
    /// Nobody said.
    Unstated,
}

/// The edges on the four sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edges {
    /// Beyond the least x.
    pub x_minus: Edge,
    /// Beyond the greatest x.
    pub x_plus: Edge,
    /// Beyond the least y.
    pub y_minus: Edge,
    /// Beyond the greatest y.
    pub y_plus: Edge,
}

impl Edges {
    /// No edge near.
    pub const FAR: Self = Self::all(Edge::Far);

    /// Nobody stated any.
    pub const UNSTATED: Self = Self::all(Edge::Unstated);

    const fn all(edge: Edge) -> Self {
        Self {
            x_minus: edge,
            x_plus: edge,
            y_minus: edge,
            y_plus: edge,
        }
    }

    /// The edge of a side.
    #[must_use]
    pub fn at(&self, side: Side) -> Edge {
        match side {
            Side::XMinus => self.x_minus,
            Side::XPlus => self.x_plus,
            Side::YMinus => self.y_minus,
            Side::YPlus => self.y_plus,
        }
    }

    pub(super) fn at_mut(&mut self, side: Side) -> &mut Edge {
        match side {
            Side::XMinus => &mut self.x_minus,
            Side::XPlus => &mut self.x_plus,
            Side::YMinus => &mut self.y_minus,
            Side::YPlus => &mut self.y_plus,
        }
    }
}

/// Which row the shear toward an edge breaks out from (R17.7.2.1, cases as numbered there).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShearCase {
    /// The row nearest the edge takes all the shear (case 3): the safe choice for a plate with
    /// clearance holes, and the only one where the rows stand closer than the edge distance.
    FrontRow,
    /// All rows are welded to the plate, so that the row farthest from the edge may be counted
    /// on for all the shear (case 2).
    WeldedBackRow,
}

impl Choice for ShearCase {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("front row", Self::FrontRow),
        ("welded back row", Self::WeldedBackRow),
    ];
}
