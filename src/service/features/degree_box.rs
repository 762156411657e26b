//! What part of a layer is asked for.

use geo::Rect;

/// A box of degrees, longitude first (OGC:CRS84): the features that meet it are asked for.
///
/// It does not cross the antimeridian; what does is two boxes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DegreeBox(pub Rect<f64>);
