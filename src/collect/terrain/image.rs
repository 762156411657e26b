//! One image of the file: how it is cut into blocks, and what else is said of it.

use super::CollectTerrainError;
use super::error::Refusals;
use super::pages::Pages;
use super::tiff::{Directory, Entry, Field, Layout, Value, bytes_of_kind, tag};

/// Bytes of all values of a directory but the places of blocks; GDAL's are a few kilobytes.
const MOST_VALUE_BYTES: u64 = 16 << 20;

/// Bytes of a block when it is unpacked.
const MOST_BLOCK_BYTES: u64 = 256 << 20;

/// An image by its blocks: tiles, or strips as wide as the image.
pub(super) struct Image {
    pub(super) layout: Layout,
    pub(super) size: Size,
    pub(super) block: Size,
    pub(super) is_tiled: bool,
    /// Bytes of an unpacked block.
    pub(super) block_bytes: u64,
    /// Where the places and the lengths of the blocks are told.
    pub(super) offsets: Entry,
    pub(super) counts: Entry,
    /// All other values.
    pub(super) fields: Vec<Field>,
}

/// Columns and rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Size {
    pub(super) columns: u64,
    pub(super) rows: u64,
}

impl Size {
    /// How many blocks of a size cover this one, across and down.
    pub(super) const fn in_blocks(self, block: Self) -> Self {
        Self {
            columns: self.columns.div_ceil(block.columns),
            rows: self.rows.div_ceil(block.rows),
        }
    }
}

impl Image {
    pub(super) async fn read(
        pages: &mut Pages<'_>,
        layout: Layout,
        directory: &Directory,
    ) -> Result<Self, CollectTerrainError> {
        let refusals = pages.refusals();
        let about = About {
            layout,
            directory,
            refusals,
        };
        let size = Size {
            columns: about.side(tag::IMAGE_WIDTH)?,
            rows: about.side(tag::IMAGE_LENGTH)?,
        };
        let is_tiled = directory.contains_key(&tag::TILE_WIDTH);
        let block = about.block(size, is_tiled)?;
        let [offsets, counts] = places(is_tiled);
        let fields = about.fields(pages, [offsets, counts]).await?;
        let bits = about.number_or(tag::BITS_PER_SAMPLE, 1)?;
        let block_bytes = (block.columns.saturating_mul(bits).div_ceil(8))
            .saturating_mul(block.rows)
            .max(1);
        if block_bytes > MOST_BLOCK_BYTES {
            return Err(refusals.too_much(format!(
                "it is cut into blocks of {} × {} cells, more than {} MiB each",
                block.columns,
                block.rows,
                MOST_BLOCK_BYTES >> 20
            )));
        }
        let image = Self {
            layout,
            size,
            block,
            is_tiled,
            block_bytes,
            offsets: about.blocks(offsets, size.in_blocks(block), pages)?,
            counts: about.blocks(counts, size.in_blocks(block), pages)?,
            fields,
        };
        Ok(image)
    }
}

/// The tags of the places and lengths of blocks.
pub(super) const fn places(is_tiled: bool) -> [u16; 2] {
    if is_tiled {
        [tag::TILE_OFFSETS, tag::TILE_BYTE_COUNTS]
    } else {
        [tag::STRIP_OFFSETS, tag::STRIP_BYTE_COUNTS]
    }
}

/// What a directory says.
struct About<'a> {
    layout: Layout,
    directory: &'a Directory,
    refusals: &'a Refusals,
}

impl About<'_> {
    fn number(&self, tag: u16) -> Result<Option<u64>, CollectTerrainError> {
        let Some(entry) = self.directory.get(&tag) else {
            return Ok(None);
        };
        let number = entry.number(self.layout);
        let wrong = || {
            self.refusals
                .damaged(format!("its tag {tag} is not one number"))
        };
        number.map(Some).ok_or_else(wrong)
    }

    fn number_or(&self, tag: u16, usual: u64) -> Result<u64, CollectTerrainError> {
        Ok(self.number(tag)?.unwrap_or(usual))
    }

    /// Columns or rows: GDAL counts them in 31 bits.
    fn side(&self, tag: u16) -> Result<u64, CollectTerrainError> {
        let side = self.number(tag)?;
        let side = side.filter(|side| (1..1 << 31).contains(side));
        side.ok_or_else(|| {
            self.refusals
                .damaged(format!("its tag {tag} is no number of columns or rows"))
        })
    }

    fn block(&self, size: Size, is_tiled: bool) -> Result<Size, CollectTerrainError> {
        if is_tiled {
            return Ok(Size {
                columns: self.side(tag::TILE_WIDTH)?,
                rows: self.side(tag::TILE_LENGTH)?,
            });
        }
        let rows = self.number_or(tag::ROWS_PER_STRIP, size.rows)?;
        Ok(Size {
            columns: size.columns,
            rows: rows.clamp(1, size.rows),
        })
    }

    /// Where the places or lengths of the blocks are told.
    fn blocks(
        &self,
        tag: u16,
        blocks: Size,
        pages: &Pages<'_>,
    ) -> Result<Entry, CollectTerrainError> {
        let wrong = |problem: &str| self.refusals.damaged(format!("its tag {tag} {problem}"));
        let entry = self.directory.get(&tag);
        let entry = entry.ok_or_else(|| wrong("is missing: where its blocks lie"))?;
        if !matches!(entry.kind, tag::SHORT | tag::LONG | tag::LONG8) {
            return Err(wrong("holds no whole numbers"));
        }
        if entry.count < blocks.columns.saturating_mul(blocks.rows) {
            return Err(wrong("tells of fewer blocks than the image has"));
        }
        let within = match entry.value(self.layout) {
            Some(Value::Here(_)) => true,
            Some(Value::There(range)) => range.end <= pages.length(),
            None => false,
        };
        within
            .then(|| entry.clone())
            .ok_or_else(|| wrong("reaches beyond the end of the file"))
    }

    /// The values of all other tags that do not lead elsewhere in the file.
    async fn fields(
        &self,
        pages: &mut Pages<'_>,
        places: [u16; 2],
    ) -> Result<Vec<Field>, CollectTerrainError> {
        let mut fields = Vec::new();
        let mut ranges = Vec::new();
        let mut bytes = 0_u64;
        for (tag, entry) in self.directory {
            let leads = tag::LEADING_ELSEWHERE.contains(tag)
                || matches!(entry.kind, tag::IFD | tag::IFD8)
                || places.contains(tag);
            if leads || bytes_of_kind(entry.kind).is_none() {
                continue;
            }
            let value = entry.value(self.layout).ok_or_else(|| {
                self.refusals
                    .damaged(format!("its tag {tag} is longer than any file"))
            })?;
            let mut field = Field::room(*tag, entry.kind, entry.count);
            match value {
                Value::Here(here) => field.value = Some(here.to_vec()),
                Value::There(range) => {
                    bytes = bytes.saturating_add(range.end - range.start);
                    ranges.push((fields.len(), range));
                }
            }
            fields.push(field);
            if bytes > MOST_VALUE_BYTES {
                let most = MOST_VALUE_BYTES >> 20;
                let problem = format!("what its directory says is longer than {most} MiB");
                return Err(self.refusals.too_much(problem));
            }
        }
        let wanted: Vec<_> = ranges.iter().map(|(_, range)| range.clone()).collect();
        pages.read(wanted).await?;
        for (position, range) in ranges {
            fields[position].value = Some(pages.held(&range)?);
        }
        Ok(fields)
    }
}
