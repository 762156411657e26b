//! What part of a layer is asked for.

use std::fmt;

use geo::{BoundingRect as _, Coord, Geometry, Rect};

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

/// A full turn of longitude either way, in degrees.
const TURNS: [f64; 2] = [-360.0, 360.0];

impl DegreeBox {
    /// Whether the box around a geometry meets this one; `swapped` where its latitudes come
    /// first. What goes on across the antimeridian, as from 179 to 181 degrees, is looked for on
    /// both of its sides.
    pub(super) fn meets(&self, geometry: &Geometry<f64>, swapped: bool) -> bool {
        let Some((low, high)) = extent(geometry, swapped) else {
            return false;
        };
        let crosses = [-180.0, 180.0]
            .iter()
            .any(|edge| low.x < edge - ROUNDING && high.x > edge + ROUNDING);
        self.overlaps(low, high, 0.0)
            || (crosses && TURNS.iter().any(|turn| self.overlaps(low, high, *turn)))
    }

    /// Whether the box around a geometry would meet this one if its longitudes counted from
    /// elsewhere, as from 0 to 360 degrees.
    pub(super) fn meets_turned(&self, geometry: &Geometry<f64>) -> bool {
        extent(geometry, false).is_some_and(|(low, high)| {
            let is_beyond = low.x < -180.0 - ROUNDING || high.x > 180.0 + ROUNDING;
            is_beyond && TURNS.iter().any(|turn| self.overlaps(low, high, *turn))
        })
    }

    fn overlaps(&self, low: Coord<f64>, high: Coord<f64>, turn: f64) -> bool {
        let (own_low, own_high) = (self.0.min(), self.0.max());
        low.x + turn <= own_high.x + ROUNDING
            && high.x + turn >= own_low.x - ROUNDING
            && low.y <= own_high.y + ROUNDING
            && high.y >= own_low.y - ROUNDING
    }
}

/// The corners of the box around a geometry, longitude first.
fn extent(geometry: &Geometry<f64>, swapped: bool) -> Option<(Coord<f64>, Coord<f64>)> {
    let extent = geometry.bounding_rect()?;
    let (low, high) = (extent.min(), extent.max());
    Some(if swapped {
        ((low.y, low.x).into(), (high.y, high.x).into())
    } else {
        (low, high)
    })
}

impl fmt::Display for DegreeBox {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (low, high) = (self.0.min(), self.0.max());
        write!(formatter, "{},{},{},{}", low.x, low.y, high.x, high.y)
    }
}
