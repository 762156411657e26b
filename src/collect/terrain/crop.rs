//! The crop: a small file of its own.

use std::io::{Seek as _, SeekFrom, Write as _};
use std::ops::Range;
use std::path::Path;

use tempfile::NamedTempFile;

use super::error::{Refusals, disk};
use super::part::{Bytes, Part};
use super::tiff::{Draft, HEADER_BYTES, Layout};
use super::{CollectTerrainError, MOST_AT_ONCE};
use crate::service::FileParts;

/// Bytes between two blocks that are read with them: a request costs more.
const GAP: u64 = 4 << 10;

/// A crop under way. Until it is whole its name is another one.
pub(super) struct Crop {
    file: NamedTempFile,
    /// The blocks to be fetched, each with where it goes.
    blocks: Vec<(Range<u64>, u64)>,
}

impl Crop {
    /// Begins a file in a folder: all but the blocks that are to be fetched.
    pub(super) fn begin(
        layout: Layout,
        parts: &[Part],
        folder: &Path,
        refusals: &Refusals,
    ) -> Result<Self, CollectTerrainError> {
        let mut end = HEADER_BYTES;
        let mut drafts = Vec::new();
        for part in parts {
            let draft = Draft::new(layout, end, part.fields.clone());
            end = draft.end();
            drafts.push(draft);
        }
        let file = tempfile::Builder::new()
            .prefix(".unfinished-")
            .suffix(".tif")
            .tempfile_in(folder)
            .map_err(disk(folder))?;
        let mut crop = Self {
            file,
            blocks: Vec::new(),
        };
        let first = drafts.first().map_or(0, Draft::start);
        crop.put(0, &layout.header(first))?;
        let next = drafts.iter().skip(1).map(Draft::start).chain([0]);
        for (draft, next) in drafts.iter().zip(next) {
            for (place, bytes) in draft.pieces(next) {
                crop.put(place, &bytes)?;
            }
        }
        for (part, draft) in parts.iter().zip(&drafts) {
            end = crop.place(part, draft, end)?;
        }
        if end > layout.longest() {
            return Err(refusals.too_much("the places need more of it than fits into such a file"));
        }
        // What nothing was written to is zeros: blocks that are not stored.
        let whole = crop.file.as_file().set_len(end);
        whole.map_err(disk(crop.file.path()))?;
        Ok(crop)
    }

    /// Settles where the blocks of a part go, from `start` on, and says so in the file.
    fn place(
        &mut self,
        part: &Part,
        draft: &Draft,
        start: u64,
    ) -> Result<u64, CollectTerrainError> {
        let each = part.layout.offset_bytes();
        let [offsets, counts] = part.places.map(|tag| draft.place(tag).unwrap_or(0));
        let mut end = start;
        let mut ones: Option<(u64, usize)> = None;
        for (number, bytes) in &part.blocks {
            let (place, length) = match bytes {
                Bytes::Served(range) => {
                    let length = range.end - range.start;
                    let place = end.next_multiple_of(2);
                    end = place + length;
                    self.blocks.push((range.clone(), place));
                    (place, length)
                }
                // Blocks of ones are all the same: one is written for all.
                Bytes::Ones(count) => {
                    let place = match ones {
                        Some((place, written)) if written >= *count => place,
                        _ => {
                            let place = end.next_multiple_of(2);
                            self.put(place, &vec![0xff; *count])?;
                            end = place + *count as u64;
                            ones = Some((place, *count));
                            place
                        }
                    };
                    (place, *count as u64)
                }
            };
            let within = number * each as u64;
            self.put(offsets + within, &part.layout.bytes(place, each))?;
            self.put(counts + within, &part.layout.bytes(length, each))?;
        }
        Ok(end)
    }

    /// Fetches the blocks.
    pub(super) async fn fill(&mut self, file: &FileParts<'_>) -> Result<(), CollectTerrainError> {
        let mut blocks = std::mem::take(&mut self.blocks);
        blocks.sort_by_key(|(range, _)| (range.start, range.end));
        let pieces = pieces(&blocks);
        let mut rest = blocks.as_slice();
        let take = |piece: Range<u64>, bytes: Vec<u8>| {
            let count = rest.partition_point(|(range, _)| range.start < piece.end);
            let (here, after) = rest.split_at(count);
            rest = after;
            for (range, place) in here {
                let within = |at: u64| usize::try_from(at - piece.start).ok();
                let part = within(range.start).zip(within(range.end));
                let part = part.and_then(|(start, end)| bytes.get(start..end));
                self.put(*place, part.unwrap_or_default())?;
            }
            Ok(())
        };
        file.read(pieces, take).await
    }

    fn put(&mut self, place: u64, bytes: &[u8]) -> Result<(), CollectTerrainError> {
        let file = self.file.as_file_mut();
        let put = file
            .seek(SeekFrom::Start(place))
            .and_then(|_| file.write_all(bytes));
        put.map_err(disk(self.file.path()))
    }

    /// Where it is as long as it is not whole.
    pub(super) fn path(&self) -> &Path {
        self.file.path()
    }

    /// Ends the file under its own name.
    pub(super) fn end(self, path: &Path) -> Result<(), CollectTerrainError> {
        let synced = self.file.as_file().sync_all();
        synced.map_err(disk(path))?;
        let named = self.file.persist_noclobber(path);
        named.map_err(|error| disk(path)(error.error))?;
        Ok(())
    }
}

/// What is asked for at once: blocks that lie together, in the order of the file.
fn pieces(blocks: &[(Range<u64>, u64)]) -> Vec<Range<u64>> {
    let mut pieces: Vec<Range<u64>> = Vec::new();
    for (range, _) in blocks {
        match pieces.last_mut() {
            // What begins within a piece ends with it too.
            Some(piece)
                if range.start < piece.end
                    || (range.start - piece.end <= GAP
                        && range.end - piece.start <= MOST_AT_ONCE) =>
            {
                piece.end = piece.end.max(range.end);
            }
            _ => pieces.push(range.clone()),
        }
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::{MOST_AT_ONCE, pieces};

    #[test]
    fn what_lies_together_is_asked_for_at_once() {
        let blocks = [10..20, 24..40, 30..50, 9_000..9_001].map(|range| (range, 0));
        assert_eq!(pieces(&blocks), [10..50, 9_000..9_001]);
        let large = [0..MOST_AT_ONCE, MOST_AT_ONCE..MOST_AT_ONCE + 1].map(|range| (range, 0));
        assert_eq!(pieces(&large).len(), 2);
        assert!(pieces(&[]).is_empty());
    }
}
