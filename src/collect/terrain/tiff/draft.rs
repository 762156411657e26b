//! A directory to be written.

use super::{Layout, bytes_of_kind};

/// What a directory says of one tag.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Field {
    pub(crate) tag: u16,
    pub(crate) kind: u16,
    pub(crate) count: u64,
    /// The value as the file writes it; `None` leaves room for it, filled with zeros.
    pub(crate) value: Option<Vec<u8>>,
}

impl Field {
    /// A value of a type.
    pub(crate) fn of(tag: u16, kind: u16, value: Vec<u8>) -> Self {
        let each = bytes_of_kind(kind).unwrap_or(1);
        Self {
            tag,
            kind,
            count: value.len() as u64 / each,
            value: Some(value),
        }
    }

    /// Room for so many numbers of a type.
    pub(crate) const fn room(tag: u16, kind: u16, count: u64) -> Self {
        Self {
            tag,
            kind,
            count,
            value: None,
        }
    }

    fn bytes(&self) -> u64 {
        self.count
            .saturating_mul(bytes_of_kind(self.kind).unwrap_or(1))
    }
}

/// A directory whose place in its file is settled.
#[derive(Debug)]
pub(crate) struct Draft {
    layout: Layout,
    start: u64,
    /// Each field with the place of its value.
    fields: Vec<(Field, u64)>,
    end: u64,
}

impl Draft {
    /// Lays out a directory that begins at `start`.
    pub(crate) fn new(layout: Layout, start: u64, mut fields: Vec<Field>) -> Self {
        fields.sort_by_key(|field| field.tag);
        let entry = layout.entry_bytes() as u64;
        let within = layout.offset_bytes() as u64;
        let first = start + layout.count_bytes() as u64;
        let mut end = first + entry * fields.len() as u64 + within;
        let mut placed = Vec::with_capacity(fields.len());
        for (number, field) in (0_u64..).zip(fields) {
            let bytes = field.bytes();
            let place = if bytes <= within {
                first + entry * number + entry - within
            } else {
                let place = even(end);
                end = place.saturating_add(bytes);
                place
            };
            placed.push((field, place));
        }
        Self {
            layout,
            start,
            fields: placed,
            end: even(end),
        }
    }

    /// Where it begins.
    pub(crate) const fn start(&self) -> u64 {
        self.start
    }

    /// Where the next thing may begin.
    pub(crate) const fn end(&self) -> u64 {
        self.end
    }

    /// Where the value of a tag lies.
    pub(crate) fn place(&self, tag: u16) -> Option<u64> {
        let mut fields = self.fields.iter();
        fields
            .find(|(field, _)| field.tag == tag)
            .map(|(_, place)| *place)
    }

    /// What is to be written, and where; the next directory lies at `next`.
    pub(crate) fn pieces(&self, next: u64) -> Vec<(u64, Vec<u8>)> {
        let Self { layout, start, .. } = *self;
        let within = layout.offset_bytes();
        let mut entries = layout.bytes(self.fields.len() as u64, layout.count_bytes());
        let mut pieces = Vec::new();
        for (field, place) in &self.fields {
            entries.extend(layout.bytes(field.tag.into(), 2));
            entries.extend(layout.bytes(field.kind.into(), 2));
            entries.extend(layout.bytes(field.count, within));
            let mut here = vec![0; within];
            if field.bytes() > within as u64 {
                here = layout.bytes(*place, within);
                pieces.extend(field.value.clone().map(|value| (*place, value)));
            } else if let Some(value) = &field.value {
                here[..value.len()].copy_from_slice(value);
            }
            entries.extend(here);
        }
        entries.extend(layout.bytes(next, within));
        pieces.push((start, entries));
        pieces
    }
}

/// The next even place: values begin at a word (TIFF 6.0, section 2).
pub(crate) const fn even(place: u64) -> u64 {
    place.next_multiple_of(2)
}
