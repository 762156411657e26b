//! From degrees to pixels: an equirectangular map, true to scale at its middle latitude.

use super::extent::Extent;

/// The part of the earth that a map shows, and its size in pixels.
pub(super) struct Frame {
    /// Longitude of the western edge, in degrees; it may lie beyond 180.
    pub(super) west: f64,
    /// Latitude of the northern edge.
    pub(super) north: f64,
    /// Degrees of latitude down the map.
    pub(super) degrees_down: f64,
    /// Degrees of longitude across the map.
    pub(super) degrees_across: f64,
    pub(super) width: f64,
    pub(super) height: f64,
}

/// Width of every map, in pixels.
pub(super) const WIDTH: f64 = 620.0;
/// Fewest cells across and up, so that a single one does not fill the map.
const FEWEST: f64 = 9.0;
/// Heights of a map for its width.
const ASPECTS: (f64, f64) = (0.45, 0.85);
/// Beyond 84 degrees of latitude a degree of longitude is drawn as there.
const LEAST_COSINE: f64 = 0.1;

impl Frame {
    pub(super) fn around(extent: &Extent) -> Self {
        let cell = extent.lattice.cell_degrees();
        let middle = |start: i32, number: i32| (f64::from(start) + f64::from(number) / 2.0) * cell;
        let latitude = middle(extent.south, extent.rows);
        let longitude = middle(extent.west, extent.columns);
        let cosine = shrink(latitude);
        // In degrees of latitude, half a cell beyond the outermost on each side.
        let across = (f64::from(extent.columns) + 1.0).max(FEWEST) * cell * cosine;
        let down = (f64::from(extent.rows) + 1.0).max(FEWEST) * cell;
        let aspect = (down / across).clamp(ASPECTS.0, ASPECTS.1);
        let across = across.max(down / aspect);
        let down = across * aspect;
        Self {
            west: longitude - across / cosine / 2.0,
            north: latitude + down / 2.0,
            degrees_down: down,
            degrees_across: across / cosine,
            width: WIDTH,
            height: WIDTH * aspect,
        }
    }

    /// Pixels from the left.
    pub(super) fn x(&self, longitude: f64) -> f64 {
        (longitude - self.west) / self.degrees_across * self.width
    }

    /// Pixels from the top.
    pub(super) fn y(&self, latitude: f64) -> f64 {
        (self.north - latitude) / self.degrees_down * self.height
    }

    pub(super) fn pixels_for_a_degree_of_latitude(&self) -> f64 {
        self.height / self.degrees_down
    }

    pub(super) fn pixels_for_a_degree_of_longitude(&self) -> f64 {
        self.width / self.degrees_across
    }

    pub(super) fn middle_latitude(&self) -> f64 {
        self.north - self.degrees_down / 2.0
    }
}

/// Length of a degree of longitude over that of a degree of latitude, on a sphere.
fn shrink(latitude: f64) -> f64 {
    latitude.to_radians().cos().max(LEAST_COSINE)
}
