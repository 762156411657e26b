//! Where the wanted blocks of an image lie in the file.

use std::ops::Range;

use super::CollectTerrainError;
use super::image::Image;
use super::pages::Pages;
use super::tiff::{Entry, Layout, Value, bytes_of_kind};
use super::units::{Units, Window};

/// Most blocks of one image.
const MOST: usize = 1 << 21;

/// A wanted block.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Block {
    /// Its column and row among the blocks of the image.
    pub(super) column: u64,
    pub(super) row: u64,
    /// Its bytes in the file; empty where it is not stored, so that all its cells are void.
    pub(super) bytes: Range<u64>,
}

/// The blocks of the wanted units.
pub(super) async fn wanted(
    pages: &mut Pages<'_>,
    image: &Image,
    units: &Units,
) -> Result<Vec<Block>, CollectTerrainError> {
    let refusals = pages.refusals();
    let across = image.size.in_blocks(image.block).columns;
    let mut rows = Vec::new();
    let mut count = 0_u64;
    for Window {
        columns,
        rows: down,
    } in units.blocks(image.block)
    {
        count = count.saturating_add((columns.end - columns.start) * (down.end - down.start));
        if count > MOST as u64 {
            return Err(refusals.too_much(format!("the places need more than {MOST} blocks of it")));
        }
        rows.extend(down.map(|row| (row, columns.clone())));
    }
    let offsets = Numbers::of(image.layout, &image.offsets);
    let counts = Numbers::of(image.layout, &image.counts);
    let needed = rows.iter().flat_map(|(row, columns)| {
        let numbers = row * across + columns.start..row * across + columns.end;
        [offsets.range(&numbers), counts.range(&numbers)]
    });
    pages.read(needed.flatten().collect::<Vec<_>>()).await?;
    let mut blocks = Vec::new();
    for (row, columns) in rows {
        let numbers = row * across + columns.start..row * across + columns.end;
        let offsets = offsets.read(pages, &numbers)?;
        let counts = counts.read(pages, &numbers)?;
        for ((column, offset), count) in columns.zip(offsets).zip(counts) {
            let place = format!(
                "its block in column {} and row {} of blocks",
                column + 1,
                row + 1
            );
            if count > 0 && offset == 0 {
                return Err(refusals.damaged(format!("{place} has a length and no place")));
            }
            // No writer packs a block to twice what it holds.
            if count > 2 * image.block_bytes + 1024 {
                let most = image.block_bytes;
                let problem =
                    format!("{place} has {count} bytes, and its cells no more than {most}");
                return Err(refusals.damaged(problem));
            }
            let end = offset
                .checked_add(count)
                .filter(|end| *end <= pages.length());
            let end = end.ok_or_else(|| {
                refusals.damaged(format!("{place} reaches beyond the end of the file"))
            })?;
            blocks.push(Block {
                column,
                row,
                bytes: offset..end,
            });
        }
    }
    Ok(blocks)
}

/// Whole numbers in the file, one after the other.
struct Numbers<'a> {
    layout: Layout,
    each: u64,
    value: Option<Value<'a>>,
}

impl<'a> Numbers<'a> {
    fn of(layout: Layout, entry: &'a Entry) -> Self {
        Self {
            layout,
            each: bytes_of_kind(entry.kind).unwrap_or(1),
            value: entry.value(layout),
        }
    }

    /// Where some of them lie, if not in the directory itself.
    fn range(&self, numbers: &Range<u64>) -> Option<Range<u64>> {
        match &self.value {
            Some(Value::There(all)) => {
                Some(all.start + numbers.start * self.each..all.start + numbers.end * self.each)
            }
            _ => None,
        }
    }

    fn read(
        &self,
        pages: &Pages<'_>,
        numbers: &Range<u64>,
    ) -> Result<Vec<u64>, CollectTerrainError> {
        let bytes = match (&self.value, self.range(numbers)) {
            (_, Some(range)) => pages.held(&range)?,
            (Some(Value::Here(here)), None) => {
                let within = |number: u64| usize::try_from(number * self.each).ok();
                let part = within(numbers.start).zip(within(numbers.end));
                let part = part.and_then(|(start, end)| here.get(start..end));
                part.unwrap_or_default().to_vec()
            }
            (_, None) => Vec::new(),
        };
        let each = usize::try_from(self.each).unwrap_or(8);
        Ok(bytes
            .chunks_exact(each)
            .map(|bytes| self.layout.number(bytes))
            .collect())
    }
}
