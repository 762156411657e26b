//! An order of places in which neighbours come together.

use super::tiling::TileIndex;
use super::{Dem, Terrain, TerrainError};
use crate::site::Location;

/// Where a place stands in an order that visits each tile of a terrain once.
///
/// Rasters come one after the other, the finest first. Their tiles come row after row within
/// stripes so narrow that three rows of one, with a tile more on either side, are kept in
/// memory: places on the border of a tile need the tile beyond as well. Row after row over a
/// wide raster the tiles below would be long gone. Places outside all rasters come last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TileKey {
    raster: u32,
    stripe: u32,
    row: u32,
    column: u32,
}

impl TileKey {
    /// That of places outside all rasters, after every other.
    pub const OUTSIDE: Self = Self {
        raster: u32::MAX,
        stripe: u32::MAX,
        row: u32::MAX,
        column: u32::MAX,
    };

    /// The key in eight bytes, in the same order for terrain of up to 255 rasters with up to
    /// 65,535 stripes and a million tiles a side.
    #[must_use]
    pub fn packed(self) -> u64 {
        let part = |number: u32, bits: u32| u64::from(number).min((1 << bits) - 1);
        part(self.raster, 8) << 56
            | part(self.stripe, 16) << 40
            | part(self.row, 20) << 20
            | part(self.column, 20)
    }

    fn new(raster: u32, tile: TileIndex, stripe: u32) -> Self {
        Self {
            raster,
            stripe: tile.column / stripe.max(1),
            row: tile.row,
            column: tile.column,
        }
    }
}

impl Terrain {
    /// The tile that holds a place (or one beside it, a few metres from its border), in the
    /// finest raster that reaches there: places sorted by
    /// it are read with each tile decoded about once.
    ///
    /// # Errors
    /// [`TerrainError::Place`] where a transformation is not known. Nothing is read.
    pub fn tile_at(&self, location: Location) -> Result<TileKey, TerrainError> {
        for (number, dem) in (0..).zip(self.dems()) {
            if let Some(tile) = dem.tile_index_near(location)? {
                let stripe = self.stripe_of(dem);
                return Ok(TileKey::new(number, tile, stripe));
            }
        }
        Ok(TileKey::OUTSIDE)
    }

    /// Tiles across a stripe: of three rows with one more on either side all are kept, the
    /// row under way and those above and below it.
    fn stripe_of(&self, dem: &Dem) -> u32 {
        let kept = self.kept_bytes() / dem.tile_bytes().max(1);
        u32::try_from((kept / 3).saturating_sub(2)).unwrap_or(u32::MAX)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tiles_come_row_after_row_within_a_stripe() {
        let key = |row, column| TileKey::new(0, TileIndex { column, row }, 2);
        let mut tiles: Vec<(u32, u32)> = (0..3)
            .flat_map(|row| (0..4).map(move |column| (row, column)))
            .collect();
        tiles.sort_by_key(|(row, column)| key(*row, *column));
        assert_eq!(
            tiles[..7],
            [(0, 0), (0, 1), (1, 0), (1, 1), (2, 0), (2, 1), (0, 2)]
        );
        let packed: Vec<u64> = tiles
            .iter()
            .map(|(row, column)| key(*row, *column).packed())
            .collect();
        assert!(packed.is_sorted());
        assert!(key(u32::MAX, u32::MAX) < TileKey::OUTSIDE);
        assert!(packed.iter().all(|key| *key < TileKey::OUTSIDE.packed()));
    }
}
