//! The parts of the file in which its directories lie, page by page.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

use super::error::Refusals;
use super::{CollectTerrainError, MOST_AT_ONCE};
use crate::service::FileParts;

/// Bytes of a page: what is read of a file to begin with.
const PAGE: u64 = 64 << 10;

/// Most bytes of pages: the places of some ten million blocks.
const MOST: u64 = 256 << 20;

/// Pages of a file that were read so far.
pub(super) struct Pages<'file> {
    file: &'file FileParts<'file>,
    refusals: &'file Refusals,
    held: BTreeMap<u64, Vec<u8>>,
}

impl<'file> Pages<'file> {
    pub(super) fn new(file: &'file FileParts<'file>, refusals: &'file Refusals) -> Self {
        let mut held = BTreeMap::new();
        let start = file.start();
        // A page that is not whole is the end of the file.
        let pages = (0..).zip(start.chunks(usize::try_from(PAGE).unwrap_or(usize::MAX)));
        held.extend(pages.map(|(page, bytes)| (page, bytes.to_vec())));
        Self {
            file,
            refusals,
            held,
        }
    }

    pub(super) const fn refusals(&self) -> &'file Refusals {
        self.refusals
    }

    /// Bytes of the whole file.
    pub(super) const fn length(&self) -> u64 {
        self.file.length()
    }

    /// The bytes of a range, read where they are not at hand.
    pub(super) async fn bytes(
        &mut self,
        range: Range<u64>,
    ) -> Result<Vec<u8>, CollectTerrainError> {
        self.read([range.clone()]).await?;
        self.held(&range)
    }

    /// Reads the pages of ranges, those that lie together at once.
    pub(super) async fn read(
        &mut self,
        ranges: impl IntoIterator<Item = Range<u64>>,
    ) -> Result<(), CollectTerrainError> {
        let length = self.file.length();
        let mut missing = BTreeSet::new();
        for range in ranges {
            if range.end > length || range.start > range.end {
                return Err(self.beyond(&range));
            }
            if range.end - range.start > MOST {
                return Err(self.too_large());
            }
            for page in range.start / PAGE..range.end.div_ceil(PAGE) {
                if !self.held.contains_key(&page) {
                    missing.insert(page);
                }
            }
            if (self.held.len() + missing.len()) as u64 * PAGE > MOST {
                return Err(self.too_large());
            }
        }
        let mut runs: Vec<Range<u64>> = Vec::new();
        for page in missing {
            let (start, end) = (page * PAGE, ((page + 1) * PAGE).min(length));
            match runs.last_mut() {
                Some(run) if run.end == start && end - run.start <= MOST_AT_ONCE => run.end = end,
                _ => runs.push(start..end),
            }
        }
        let held = &mut self.held;
        let take = |range: Range<u64>, bytes: Vec<u8>| {
            let pages = bytes.chunks(usize::try_from(PAGE).unwrap_or(usize::MAX));
            held.extend((range.start / PAGE..).zip(pages.map(<[u8]>::to_vec)));
            Ok::<_, CollectTerrainError>(())
        };
        self.file.read(runs, take).await
    }

    /// The bytes of a range whose pages are at hand.
    pub(super) fn held(&self, range: &Range<u64>) -> Result<Vec<u8>, CollectTerrainError> {
        let mut bytes = Vec::new();
        for page in range.start / PAGE..range.end.div_ceil(PAGE) {
            let held = self.held.get(&page).map_or(&[][..], Vec::as_slice);
            let within = |at: u64| usize::try_from(at.saturating_sub(page * PAGE)).ok();
            let (start, end) = (within(range.start), within(range.end));
            let (Some(start), Some(end)) = (start, end) else {
                return Err(self.beyond(range));
            };
            let part = held.get(start..end.min(held.len()));
            bytes.extend_from_slice(part.ok_or_else(|| self.beyond(range))?);
        }
        if bytes.len() as u64 == range.end - range.start {
            Ok(bytes)
        } else {
            Err(self.beyond(range))
        }
    }

    fn beyond(&self, range: &Range<u64>) -> CollectTerrainError {
        self.refusals.damaged(format!(
            "its directory leads to bytes {} to {}, and it has {}",
            range.start,
            range.end,
            self.file.length()
        ))
    }

    fn too_large(&self) -> CollectTerrainError {
        let most = MOST >> 20;
        self.refusals
            .too_much(format!("its directory is larger than {most} MiB"))
    }
}
