//! The directory of one image: what is said of it, tag by tag.

use std::collections::BTreeMap;
use std::ops::Range;

use super::Layout;

/// An entry of a directory, its value not yet read.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Entry {
    pub(crate) kind: u16,
    pub(crate) count: u64,
    /// The value itself where it is short enough, else where it lies.
    place: Vec<u8>,
}

/// The entries by their tags. Of a tag that comes twice the first one counts, as for `libtiff`.
pub(crate) type Directory = BTreeMap<u16, Entry>;

/// Bytes of a value of a type (TIFF 6.0, section 2; `BigTIFF` adds 16 to 18); `None` where it is
/// unknown, and an entry to be passed over.
pub(crate) const fn bytes_of_kind(kind: u16) -> Option<u64> {
    match kind {
        1 | 2 | 6 | 7 => Some(1),
        3 | 8 => Some(2),
        4 | 9 | 11 | 13 => Some(4),
        5 | 10 | 12 | 16 | 17 | 18 => Some(8),
        _ => None,
    }
}

/// Where the value of an entry is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Value<'a> {
    /// In the entry.
    Here(&'a [u8]),
    /// In these bytes of the file.
    There(Range<u64>),
}

impl Entry {
    fn read(layout: Layout, bytes: &[u8]) -> Option<(u16, Self)> {
        let field = layout.offset_bytes();
        let short = |range| Some(u16::try_from(layout.number(bytes.get(range)?)).unwrap_or(0));
        let entry = Self {
            kind: short(2..4)?,
            count: layout.number(bytes.get(4..4 + field)?),
            place: bytes.get(4 + field..4 + 2 * field)?.to_vec(),
        };
        Some((short(0..2)?, entry))
    }

    /// Where its value is; `None` where its type is unknown or it ends beyond all files.
    pub(crate) fn value(&self, layout: Layout) -> Option<Value<'_>> {
        let bytes = self.count.checked_mul(bytes_of_kind(self.kind)?)?;
        let here = usize::try_from(bytes).ok();
        if let Some(here) = here.and_then(|count| self.place.get(..count)) {
            return Some(Value::Here(here));
        }
        let start = layout.number(&self.place);
        Some(Value::There(start..start.checked_add(bytes)?))
    }

    /// Its value where that is one whole number without a sign.
    pub(crate) fn number(&self, layout: Layout) -> Option<u64> {
        match (self.kind, self.value(layout)?) {
            (1 | 3 | 4 | 16, Value::Here(bytes)) if self.count == 1 => Some(layout.number(bytes)),
            _ => None,
        }
    }
}

/// How many entries the directory has whose first bytes these are.
pub(crate) fn entries(layout: Layout, bytes: &[u8]) -> Option<u64> {
    Some(layout.number(bytes.get(..layout.count_bytes())?))
}

/// A directory and where the next one lies (0: there is none), from all its bytes.
pub(crate) fn read(layout: Layout, bytes: &[u8]) -> Option<(Directory, u64)> {
    let end = bytes.len().checked_sub(layout.offset_bytes())?;
    let mut directory = Directory::new();
    let entries = bytes.get(layout.count_bytes()..end)?;
    for entry in entries.chunks_exact(layout.entry_bytes()) {
        let (tag, entry) = Entry::read(layout, entry)?;
        directory.entry(tag).or_insert(entry);
    }
    Some((directory, layout.number(&bytes[end..])))
}
