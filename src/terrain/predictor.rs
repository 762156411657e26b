//! What a TIFF stores instead of the cells themselves, so that they pack better.

/// How the cells of a row follow from its bytes: TIFF 6.0, section 14, and Adobe's technical
/// note 3 on floating-point predictors.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Predictor {
    /// The cells.
    None,
    /// Differences of neighbours, as whole numbers of the cell's size.
    Differences,
    /// The first bytes of all cells, then all second ones and so on, the most significant
    /// first; and of these bytes the differences.
    Planes,
}

/// Which byte of a number comes first in the file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum ByteOrder {
    Little,
    Big,
}

impl ByteOrder {
    /// From the first two bytes of the file.
    pub(super) const fn from_mark(mark: [u8; 2]) -> Option<Self> {
        match &mark {
            b"II" => Some(Self::Little),
            b"MM" => Some(Self::Big),
            _ => None,
        }
    }
}

impl Predictor {
    /// From the value of its tag; a file without the tag has none.
    pub(super) fn from_tag(tag: Option<&str>) -> Option<Self> {
        match tag {
            None | Some("1") => Some(Self::None),
            Some("2") => Some(Self::Differences),
            Some("3") => Some(Self::Planes),
            Some(_) => None,
        }
    }

    /// The cells of a whole row from its bytes: for each its bytes, the least significant first.
    pub(super) fn undo<const BYTES: usize>(
        self,
        row: &[u8],
        order: ByteOrder,
        cells: &mut [[u8; BYTES]],
    ) {
        if self == Self::Planes {
            return from_planes(row, cells);
        }
        let (stored, _) = row.as_chunks::<BYTES>();
        for (cell, stored) in cells.iter_mut().zip(stored) {
            *cell = *stored;
            if order == ByteOrder::Big {
                cell.reverse();
            }
        }
        if self == Self::Differences {
            let mut sum = 0;
            for cell in cells {
                sum = whole(*cell).wrapping_add(sum);
                *cell = first_bytes(sum);
            }
        }
    }
}

/// The order of the file makes no difference to planes.
fn from_planes<const BYTES: usize>(row: &[u8], cells: &mut [[u8; BYTES]]) {
    let mut sum = 0_u8;
    let planes = row.chunks_exact(cells.len().max(1));
    for (plane, place) in planes.zip((0..BYTES).rev()) {
        for (cell, difference) in cells.iter_mut().zip(plane) {
            sum = sum.wrapping_add(*difference);
            cell[place] = sum;
        }
    }
}

fn whole<const BYTES: usize>(bytes: [u8; BYTES]) -> u64 {
    bytes
        .iter()
        .rev()
        .fold(0, |sum, byte| sum << 8 | u64::from(*byte))
}

fn first_bytes<const BYTES: usize>(number: u64) -> [u8; BYTES] {
    let bytes = number.to_le_bytes();
    std::array::from_fn(|place| bytes.get(place).copied().unwrap_or_default())
}
