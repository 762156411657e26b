//! How a TIFF file writes its numbers (TIFF 6.0, section 2; the `BigTIFF` design of 2004).

/// Order of bytes and width of offsets of one file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Layout {
    big_endian: bool,
    /// `BigTIFF`: offsets and counts of eight bytes.
    wide: bool,
}

/// Bytes of the longest header.
pub(crate) const HEADER_BYTES: u64 = 16;

impl Layout {
    /// The layout that a header states, and where the first directory lies; `None` where it is
    /// no TIFF file.
    pub(crate) fn of_header(header: &[u8]) -> Option<(Self, u64)> {
        let big_endian = match header.get(..2)? {
            b"II" => false,
            b"MM" => true,
            _ => return None,
        };
        let narrow = Self {
            big_endian,
            wide: false,
        };
        let wide = Self {
            big_endian,
            wide: true,
        };
        match narrow.number(header.get(2..4)?) {
            42 => Some((narrow, narrow.number(header.get(4..8)?))),
            // The width of offsets, and nothing.
            43 if narrow.number(header.get(4..6)?) == 8
                && narrow.number(header.get(6..8)?) == 0 =>
            {
                Some((wide, wide.number(header.get(8..16)?)))
            }
            _ => None,
        }
    }

    /// The header of a file whose first directory lies at `first`.
    pub(crate) fn header(self, first: u64) -> Vec<u8> {
        let mark = if self.big_endian { b"MM" } else { b"II" };
        let mut header = mark.to_vec();
        if self.wide {
            header.extend(self.bytes(43, 2));
            header.extend(self.bytes(8, 2));
            header.extend(self.bytes(0, 2));
        } else {
            header.extend(self.bytes(42, 2));
        }
        header.extend(self.bytes(first, self.offset_bytes()));
        header
    }

    /// Bytes of an offset, and of the place for a value within an entry.
    pub(crate) const fn offset_bytes(self) -> usize {
        if self.wide { 8 } else { 4 }
    }

    /// Bytes of the number of entries of a directory.
    pub(crate) const fn count_bytes(self) -> usize {
        if self.wide { 8 } else { 2 }
    }

    /// Bytes of an entry: tag, type, count, value.
    pub(crate) const fn entry_bytes(self) -> usize {
        4 + 2 * self.offset_bytes()
    }

    /// The largest file.
    pub(crate) const fn longest(self) -> u64 {
        if self.wide { u64::MAX } else { u32::MAX as u64 }
    }

    /// A whole number of at most eight bytes.
    pub(crate) fn number(self, bytes: &[u8]) -> u64 {
        let join = |number: u64, byte: &u8| number << 8 | u64::from(*byte);
        if self.big_endian {
            bytes.iter().fold(0, join)
        } else {
            bytes.iter().rev().fold(0, join)
        }
    }

    /// A whole number as so many bytes.
    pub(crate) fn bytes(self, number: u64, count: usize) -> Vec<u8> {
        if self.big_endian {
            number.to_be_bytes()[8 - count..].to_vec()
        } else {
            number.to_le_bytes()[..count].to_vec()
        }
    }

    /// Numbers of double precision.
    pub(crate) fn doubles(self, bytes: &[u8]) -> Vec<f64> {
        let numbers = bytes.chunks_exact(8).map(|bytes| self.number(bytes));
        numbers.map(f64::from_bits).collect()
    }

    /// Numbers of double precision as bytes.
    pub(crate) fn bytes_of_doubles(self, numbers: &[f64]) -> Vec<u8> {
        let numbers = numbers.iter();
        numbers
            .flat_map(|number| self.bytes(number.to_bits(), 8))
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_header_reads_back() {
        for mark in [false, true] {
            for wide in [false, true] {
                let layout = Layout {
                    big_endian: mark,
                    wide,
                };
                let header = layout.header(0x0102_0304);
                assert_eq!(Layout::of_header(&header), Some((layout, 0x0102_0304)));
                assert_eq!(Layout::of_header(&header[..7]), None);
            }
        }
        assert_eq!(Layout::of_header(b"<html><body>Hello"), None);
    }

    #[test]
    fn numbers_follow_the_order_of_the_file() {
        // TIFF 6.0, section 2: 'II' from the least significant byte, 'MM' from the most.
        let (least_first, _) = Layout::of_header(b"II\x2a\0\x08\0\0\0").unwrap();
        let (most_first, _) = Layout::of_header(b"MM\0\x2a\0\0\0\x08").unwrap();
        assert_eq!(least_first.number(&[1, 2, 3, 4]), 0x0403_0201);
        assert_eq!(most_first.number(&[1, 2, 3, 4]), 0x0102_0304);
        for layout in [least_first, most_first] {
            let bytes = layout.bytes_of_doubles(&[0.1, -7e300]);
            assert_eq!(layout.doubles(&bytes), [0.1, -7e300]);
        }
    }
}
