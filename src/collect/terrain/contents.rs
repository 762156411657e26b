//! The images of the file: the terrain, and its mask where it has one.

use std::collections::HashSet;

use super::CollectTerrainError;
use super::pages::Pages;
use super::tiff::{self, Directory, HEADER_BYTES, Layout, tag};

/// Images of one file: a terrain model has smaller copies and masks of them, some thirty.
const MOST_IMAGES: usize = 100;

/// Entries of a directory; those of real files have some thirty.
const MOST_ENTRIES: u64 = 1000;

/// The directories that count. Smaller copies of the terrain are left out, and further pages,
/// which are not read from a file on the disk either.
pub(super) struct Contents {
    pub(super) layout: Layout,
    pub(super) terrain: Directory,
    pub(super) mask: Option<Directory>,
}

impl Contents {
    pub(super) async fn read(pages: &mut Pages<'_>) -> Result<Self, CollectTerrainError> {
        let refusals = pages.refusals();
        let header = pages.held(&(0..HEADER_BYTES)).ok();
        let header = header.and_then(|header| Layout::of_header(&header));
        let (layout, mut place) = header.ok_or_else(|| refusals.damaged("it is no TIFF file"))?;
        let mut seen = HashSet::new();
        let (mut terrain, mut mask) = (None, None);
        while place != 0 {
            if !seen.insert(place) {
                return Err(refusals.damaged("its directories lead in a circle"));
            }
            if seen.len() > MOST_IMAGES {
                let problem = format!("it has more than {MOST_IMAGES} images");
                return Err(refusals.damaged(problem));
            }
            let (directory, next) = read_directory(pages, layout, place).await?;
            if terrain.is_none() {
                terrain = Some(directory);
            } else if is_mask(layout, &directory) && mask.is_none() {
                mask = Some(directory);
            }
            place = next;
        }
        Ok(Self {
            layout,
            terrain: terrain.ok_or_else(|| refusals.damaged("it holds no image"))?,
            mask,
        })
    }
}

async fn read_directory(
    pages: &mut Pages<'_>,
    layout: Layout,
    place: u64,
) -> Result<(Directory, u64), CollectTerrainError> {
    let refusals = pages.refusals();
    let far = || refusals.damaged("its directory lies beyond all files");
    let count_end = place
        .checked_add(layout.count_bytes() as u64)
        .ok_or_else(far)?;
    let count = pages.bytes(place..count_end).await?;
    let count = tiff::entries(layout, &count).unwrap_or(0);
    if count > MOST_ENTRIES {
        let problem = format!("a directory of it has {count} entries, more than {MOST_ENTRIES}");
        return Err(refusals.damaged(problem));
    }
    let rest = count * layout.entry_bytes() as u64 + layout.offset_bytes() as u64;
    let end = count_end.checked_add(rest).ok_or_else(far)?;
    let bytes = pages.bytes(place..end).await?;
    tiff::read(layout, &bytes).ok_or_else(|| refusals.damaged("a directory of it is cut short"))
}

fn is_mask(layout: Layout, directory: &Directory) -> bool {
    let kind = directory.get(&tag::NEW_SUBFILE_TYPE);
    let kind = kind.and_then(|kind| kind.number(layout)).unwrap_or(0);
    kind & tag::MASK != 0 && kind & tag::REDUCED == 0
}
