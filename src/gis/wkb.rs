//! Well-known binary (OGC 06-103r4, clause 8.2), also with heights, measures or the identifier
//! of a system, from front to back.

/// What is said of bytes that are something else.
const NO_BINARY: &str = "bytes that are no well-known binary";
/// What is said of bytes that end too early.
const CUT_SHORT: &str = "well-known binary that is cut short";

/// Bits that some writers set for height, measure and an identifier before the coordinates.
const EXTENDED: u32 = 0xE000_0000;
const HAS_HEIGHT: u32 = 0x8000_0000;
const HAS_MEASURE: u32 = 0x4000_0000;
const HAS_IDENTIFIER: u32 = 0x2000_0000;

/// Well-known binary under way; an error is what it is instead.
pub(crate) struct WellKnownBinary<'bytes> {
    rest: &'bytes [u8],
    little: bool,
}

/// What a geometry or a member of one begins with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Head {
    /// Its kind: 1 for a point, 2 for a line, 3 for a polygon, and three more for several.
    pub(crate) kind: u32,
    /// Numbers of a vertex: x, y, and what else there is.
    numbers: usize,
}

impl<'bytes> WellKnownBinary<'bytes> {
    pub(crate) const fn of(bytes: &'bytes [u8]) -> Self {
        let (rest, little) = (bytes, true);
        Self { rest, little }
    }

    /// The head that comes next; its order of bytes holds for what follows.
    pub(crate) fn head(&mut self) -> Result<Head, &'static str> {
        self.little = match self.rest.split_off_first() {
            Some(0) => false,
            Some(1) => true,
            _ => return Err(NO_BINARY),
        };
        let code = self.whole()?;
        if code & HAS_IDENTIFIER != 0 {
            self.whole()?;
        }
        let plain = code & !EXTENDED;
        let thousands = plain / 1000;
        let height = code & HAS_HEIGHT != 0 || matches!(thousands, 1 | 3);
        let measure = code & HAS_MEASURE != 0 || matches!(thousands, 2 | 3);
        Ok(Head {
            kind: plain % 1000,
            numbers: 2 + usize::from(height) + usize::from(measure),
        })
    }

    /// How many members, rings or vertices follow.
    pub(crate) fn count(&mut self) -> Result<usize, &'static str> {
        usize::try_from(self.whole()?).map_err(|_| CUT_SHORT)
    }

    /// The x and y of the next vertex.
    pub(crate) fn vertex(&mut self, head: Head) -> Result<(f64, f64), &'static str> {
        self.vertices(head, 1)?.next().ok_or(CUT_SHORT)
    }

    /// The x and y of the next vertices, as many as a count before them says.
    pub(crate) fn line(
        &mut self,
        head: Head,
    ) -> Result<impl Iterator<Item = (f64, f64)> + use<'bytes>, &'static str> {
        let count = self.count()?;
        self.vertices(head, count)
    }

    fn vertices(
        &mut self,
        head: Head,
        count: usize,
    ) -> Result<impl Iterator<Item = (f64, f64)> + use<'bytes>, &'static str> {
        let bytes = head.numbers * size_of::<f64>();
        let all = count.checked_mul(bytes);
        let all = all.and_then(|all| self.rest.split_off(..all));
        let little = self.little;
        // A number that is not there is none; whole vertices were cut out, so that each is.
        let number = move |bytes: &[u8]| match bytes.first_chunk() {
            Some(bytes) if little => f64::from_le_bytes(*bytes),
            Some(bytes) => f64::from_be_bytes(*bytes),
            None => f64::NAN,
        };
        let vertices = all.ok_or(CUT_SHORT)?.chunks_exact(bytes);
        Ok(vertices.map(move |vertex| {
            let (x, y) = vertex.split_at(size_of::<f64>());
            (number(x), number(y))
        }))
    }

    fn whole(&mut self) -> Result<u32, &'static str> {
        let (bytes, rest) = self.rest.split_first_chunk().ok_or(CUT_SHORT)?;
        self.rest = rest;
        Ok(if self.little {
            u32::from_le_bytes(*bytes)
        } else {
            u32::from_be_bytes(*bytes)
        })
    }
}
