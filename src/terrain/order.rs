//! An order of places in which neighbours come together.

use super::tiling::TileIndex;
use super::{Terrain, TerrainError};
use crate::site::Location;

/// Where a place stands in an order that visits each tile of a terrain once.
///
/// Rasters come one after the other, the finest first. Their tiles come along a Z-order
/// curve: in quarters of quarters, so that the tiles beside one, which places on its border
/// need as well, are mostly still kept. Row after row the tiles below would be long gone in
/// a wide raster. Places outside all rasters come last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TileKey {
    raster: u32,
    along_curve: u64,
}

impl TileKey {
    /// That of places outside all rasters, after every other.
    pub const OUTSIDE: Self = Self {
        raster: u32::MAX,
        along_curve: u64::MAX,
    };

    /// The key in eight bytes, in the same order for terrain of up to 65,535 rasters with up
    /// to sixteen million tiles a side.
    #[must_use]
    pub fn packed(self) -> u64 {
        (u64::from(self.raster.min(0xFFFF)) << 48) | (self.along_curve & 0xFFFF_FFFF_FFFF)
    }

    fn new(raster: u32, tile: TileIndex) -> Self {
        Self {
            raster,
            along_curve: spread(tile.row) << 1 | spread(tile.column),
        }
    }
}

impl Terrain {
    /// The tile that holds a place, in the finest raster that reaches there: places sorted by
    /// it are read with each tile decoded about once.
    ///
    /// # Errors
    /// [`TerrainError::Place`] where a transformation is not known. Nothing is read.
    pub fn tile_at(&self, location: Location) -> Result<TileKey, TerrainError> {
        for (number, dem) in (0..).zip(self.dems()) {
            if let Some(tile) = dem.tile_index_at(location)? {
                return Ok(TileKey::new(number, tile));
            }
        }
        Ok(TileKey::OUTSIDE)
    }
}

/// The bits of a number, each followed by an empty one.
fn spread(number: u32) -> u64 {
    let mut bits = u64::from(number);
    for (shift, mask) in [
        (16, 0x0000_ffff_0000_ffff),
        (8, 0x00ff_00ff_00ff_00ff),
        (4, 0x0f0f_0f0f_0f0f_0f0f),
        (2, 0x3333_3333_3333_3333),
        (1, 0x5555_5555_5555_5555),
    ] {
        bits = (bits | bits << shift) & mask;
    }
    bits
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tiles_come_in_quarters_of_quarters() {
        let mut tiles: Vec<(u32, u32)> = (0..4)
            .flat_map(|row| (0..4).map(move |c| (row, c)))
            .collect();
        tiles.sort_by_key(|(row, column)| {
            TileKey::new(
                0,
                TileIndex {
                    column: *column,
                    row: *row,
                },
            )
        });
        assert_eq!(tiles[..5], [(0, 0), (0, 1), (1, 0), (1, 1), (0, 2)]);
        assert_eq!(spread(u32::MAX), 0x5555_5555_5555_5555);
        let last = TileIndex {
            column: u32::MAX,
            row: u32::MAX,
        };
        assert!(TileKey::new(u32::MAX - 1, last) < TileKey::OUTSIDE);
    }
}
