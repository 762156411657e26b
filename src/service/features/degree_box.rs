//! What part of a layer is asked for.

use std::fmt;

use geo::{BoundingRect as _, Geometry, Rect};

/// A box of degrees, longitude first (OGC:CRS84): the features that meet it are asked for.
///
/// It does not cross the antimeridian; what does is two boxes. It is shown as services take it:
/// west, south, east, north.
///
/// ```
/// use geo::Rect;
/// use sillmark::service::DegreeBox;
/// let part = DegreeBox(Rect::new((-123.2, 45.85), (-123.19, 45.86)));
/// assert_eq!(part.to_string(), "-123.2,45.85,-123.19,45.86");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DegreeBox(pub Rect<f64>);

/// How far a feature may lie outside, in degrees: servers round coordinates, to no less than six
/// decimals where they do (about 0.1 m; common practice, no source).
const ROUNDING: f64 = 1e-6;

impl DegreeBox {
    /// Whether the box around a geometry meets this one; `swapped` where its latitudes come
    /// first.
    pub(super) fn meets(&self, geometry: &Geometry<f64>, swapped: bool) -> bool {
        let Some(extent) = geometry.bounding_rect() else {
            return false;
        };
        let (mut low, mut high) = (extent.min(), extent.max());
        if swapped {
            (low, high) = ((low.y, low.x).into(), (high.y, high.x).into());
        }
        let (own_low, own_high) = (self.0.min(), self.0.max());
        low.x <= own_high.x + ROUNDING
            && high.x >= own_low.x - ROUNDING
            && low.y <= own_high.y + ROUNDING
            && high.y >= own_low.y - ROUNDING
    }
}

impl fmt::Display for DegreeBox {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (low, high) = (self.0.min(), self.0.max());
        write!(formatter, "{},{},{},{}", low.x, low.y, high.x, high.y)
    }
}
