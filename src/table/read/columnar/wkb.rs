//! The point in well-known binary.

use crate::gis::WellKnownBinary;

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

/// The point's x and y; `None` for an empty one. What it is instead, where it is none.
pub(super) fn point(bytes: &[u8]) -> Result<Option<(f64, f64)>, String> {
    let mut binary = WellKnownBinary::of(bytes);
    let head = binary.head()?;
    if head.kind != 1 {
        let name = usize::try_from(head.kind)
            .ok()
            .and_then(|kind| KINDS.get(kind));
        let kind = || format!("geometry of type {}", head.kind);
        return Err(name.map_or_else(kind, ToString::to_string));
    }
    let (x, y) = binary.vertex(head)?;
    checked(x, y)
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
