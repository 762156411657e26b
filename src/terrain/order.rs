//! An order of places in which neighbours come together.

use super::tiling::TileIndex;
use super::{Dem, Terrain, TerrainError};
use crate::site::Location;

/// Where a place stands in an order that visits each tile of a terrain once.
///
/// Rasters come one after the other, the finest first. Their tiles come row after row within
/// stripes so narrow that the row above is still in memory: places on the border of a tile need
/// the tile beyond as well, and come with the later of the two. Row after row over a wide
/// raster the tiles above would be long gone. Within a tile places come so that near ones
/// follow each other, because zones are looked up in the same order. Places outside all
/// rasters come last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TileKey {
    raster: u32,
    stripe: u32,
    row: u32,
    column: u32,
    /// Where in the tile, along a curve of squares within squares.
    within: u16,
}

impl TileKey {
    /// That of places outside all rasters, after every other.
    pub const OUTSIDE: Self = Self {
        raster: u32::MAX,
        stripe: u32::MAX,
        row: u32::MAX,
        column: u32::MAX,
        within: u16::MAX,
    };

    /// Bits of a packed key that tell where in the tile a place lies.
    pub const WITHIN_BITS: u32 = 12;

    /// What a packed key says of the tile alone.
    #[must_use]
    pub const fn tile_of(packed: u64) -> u64 {
        packed >> Self::WITHIN_BITS
    }

    /// The key in eight bytes, in the same order for terrain of up to 255 rasters with up to
    /// 4,095 stripes and 65,535 rows and columns of tiles.
    #[must_use]
    pub fn packed(self) -> u64 {
        let part = |number: u32, bits: u32| u64::from(number).min((1 << bits) - 1);
        part(self.raster, 8) << 56
            | part(self.stripe, 12) << 44
            | part(self.row, 16) << 28
            | part(self.column, 16) << Self::WITHIN_BITS
            | part(self.within.into(), Self::WITHIN_BITS)
    }

    fn new(raster: u32, place: PlaceInTile, stripe: u32) -> Self {
        let PlaceInTile { tile, right, down } = place;
        Self {
            raster,
            stripe: tile.column / stripe.max(1),
            row: tile.row,
            column: tile.column,
            within: spread(down) << 1 | spread(right),
        }
    }
}

/// A tile, and the part of its width and height that lies before a place.
#[derive(Clone, Copy, Debug)]
pub(super) struct PlaceInTile {
    pub(super) tile: TileIndex,
    pub(super) right: f64,
    pub(super) down: f64,
}

/// A part of one in 64ths, its six bits each followed by an empty one.
fn spread(part: f64) -> u16 {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 to 63
    let steps = (part * 64.0).clamp(0.0, 63.0) as u16;
    (0..6).map(|bit| (steps >> bit & 1) << (2 * bit)).sum()
}

impl Terrain {
    /// The last tile that is read for a place: the one that holds it, or below or right of it
    /// where that is a few cells away, in the finest raster that reaches there. Places sorted
    /// by it are read with each tile decoded about once.
    ///
    /// # Errors
    /// [`TerrainError::Place`] where a transformation is not known. Nothing is read.
    pub fn tile_at(&self, location: Location) -> Result<TileKey, TerrainError> {
        for (number, dem) in (0..).zip(self.dems()) {
            if let Some(place) = dem.place_near(location)? {
                let stripe = self.stripe_of(dem);
                return Ok(TileKey::new(number, place, stripe));
            }
        }
        Ok(TileKey::OUTSIDE)
    }

    /// Tiles across a stripe. Of the row above the one under way only what is still ahead is
    /// needed, so that about one row is kept, with the tile before in both and those left of
    /// the stripe.
    fn stripe_of(&self, dem: &Dem) -> u32 {
        let kept = self.kept_bytes() / dem.tile_bytes().max(1);
        u32::try_from(kept.saturating_sub(4)).unwrap_or(u32::MAX)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tiles_come_row_after_row_within_a_stripe() {
        let key = |row, column| {
            let tile = TileIndex { column, row };
            TileKey::new(
                0,
                PlaceInTile {
                    tile,
                    right: 0.5,
                    down: 0.5,
                },
                2,
            )
        };
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
