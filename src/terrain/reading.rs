//! What a raster says at a place, where a cell without a value says something too.

use crate::quantity::Length;

/// A reading of a raster whose empty cells mean something: of water, that there is none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CellReading {
    /// Bilinear between the four nearest cell centres, which all have a value.
    Between(Length),
    /// The value of the cell that holds the place; one beside it has none.
    AtEdge(Length),
    /// The cell that holds the place has no value.
    Void {
        /// Whether one of the nearest four has.
        beside_value: bool,
    },
    /// The raster does not reach the place.
    Outside,
}
