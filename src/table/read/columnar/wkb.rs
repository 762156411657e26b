//! The point in well-known binary (OGC 06-103r4, clause 8.2), also with height, measure or
//! the identifier of a system.

/// Kinds of geometry by their codes.
const KINDS: [&str; 8] = [
    "GEOMETRY",
    "POINT",
    "LINESTRING",
    "POLYGON",
    "MULTIPOINT",
    "MULTILINESTRING",
    "MULTIPOLYGON",
    "GEOMETRYCOLLECTION",
];

/// Bits that some writers set for height, measure and an identifier before the coordinates.
const EXTENDED: u32 = 0xE000_0000;
const HAS_IDENTIFIER: u32 = 0x2000_0000;

/// The point's x and y; `None` for an empty one. What it is instead, where it is none.
pub(super) fn point(bytes: &[u8]) -> Result<Option<(f64, f64)>, String> {
    let broken = || "well-known binary that is cut short".to_owned();
    let little = match bytes.first() {
        Some(0) => false,
        Some(1) => true,
        _ => return Err("bytes that are no well-known binary".to_owned()),
    };
    let code: [u8; 4] = part(bytes, 1).ok_or_else(broken)?;
    let code = if little {
        u32::from_le_bytes(code)
    } else {
        u32::from_be_bytes(code)
    };
    let kind = (code & !EXTENDED) % 1000;
    if kind != 1 {
        let name = usize::try_from(kind).ok().and_then(|kind| KINDS.get(kind));
        return Err(name.map_or_else(|| format!("geometry of type {kind}"), ToString::to_string));
    }
    let start = if code & HAS_IDENTIFIER == 0 { 5 } else { 9 };
    let number = |at| {
        let bytes: [u8; 8] = part(bytes, at).ok_or_else(broken)?;
        Ok::<f64, String>(if little {
            f64::from_le_bytes(bytes)
        } else {
            f64::from_be_bytes(bytes)
        })
    };
    checked(number(start)?, number(start + 8)?)
}

/// A point from its coordinates: both not a number is how an empty one is written.
pub(super) fn checked(x: f64, y: f64) -> Result<Option<(f64, f64)>, String> {
    if x.is_nan() && y.is_nan() {
        Ok(None)
    } else if x.is_finite() && y.is_finite() {
        Ok(Some((x, y)))
    } else {
        Err(format!("{x}, {y}"))
    }
}

fn part<const LENGTH: usize>(bytes: &[u8], at: usize) -> Option<[u8; LENGTH]> {
    bytes.get(at..at + LENGTH)?.try_into().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn encoded(order: u8, code: u32, rest: &[f64]) -> Vec<u8> {
        let mut bytes = vec![order];
        let little = order == 1;
        bytes.extend(if little {
            code.to_le_bytes()
        } else {
            code.to_be_bytes()
        });
        for number in rest {
            bytes.extend(if little {
                number.to_le_bytes()
            } else {
                number.to_be_bytes()
            });
        }
        bytes
    }

    #[test]
    fn points_of_every_dress_are_read() {
        for order in [0, 1] {
            for (code, rest) in [
                (1, &[-74.5, 40.25][..]),
                (1001, &[-74.5, 40.25, 3.0]),
                (2001, &[-74.5, 40.25, 3.0]),
                (3001, &[-74.5, 40.25, 3.0, 4.0]),
                (0x8000_0001, &[-74.5, 40.25, 3.0]),
            ] {
                let found = point(&encoded(order, code, rest));
                assert_eq!(found, Ok(Some((-74.5, 40.25))), "{order} {code}");
            }
        }
        let mut with_identifier = encoded(1, 0x2000_0001, &[]);
        with_identifier.extend(4326_u32.to_le_bytes());
        with_identifier.extend((-74.5_f64).to_le_bytes());
        with_identifier.extend(40.25_f64.to_le_bytes());
        assert_eq!(point(&with_identifier), Ok(Some((-74.5, 40.25))));
        assert_eq!(point(&encoded(1, 1, &[f64::NAN, f64::NAN])), Ok(None));
    }

    #[test]
    fn what_is_no_point_says_what_it_is() {
        assert_eq!(point(&encoded(1, 3, &[])), Err("POLYGON".to_owned()));
        assert_eq!(point(&encoded(0, 1004, &[])), Err("MULTIPOINT".to_owned()));
        assert!(
            point(&encoded(1, 1, &[1.0]))
                .unwrap_err()
                .contains("cut short")
        );
        assert!(point(b"").is_err() && point(b"\x07").is_err());
        assert!(point(&encoded(1, 1, &[f64::INFINITY, 1.0])).is_err());
    }
}
