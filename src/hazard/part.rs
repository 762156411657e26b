//! Which part of a layer is read.

use geo::{BoundingRect, Coord, MultiPoint, Rect};

use crate::crs::{CrsError, LocalFrame, Projector};
use crate::quantity::{Length, unit::meter};
use crate::site::Location;

/// A part of a layer: the features whose box meets it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Part {
    /// What lies within a margin of a place.
    Around {
        /// The middle.
        location: Location,
        /// How far around it.
        margin: Length,
    },
    /// What lies within a margin of a box of degrees, such as the extent of many places.
    ///
    /// Where the layer's system cannot express the whole box, or its west lies east of its
    /// east (across the antimeridian), the whole layer is read.
    Box {
        /// The lowest longitude and latitude.
        south_west: Location,
        /// The highest longitude and latitude.
        north_east: Location,
        /// How far around the box.
        margin: Length,
    },
}

/// Into so many pieces each side of a box is cut: a parallel is no straight line on most maps.
const PIECES: u32 = 16;

/// How far around a place its zones are read, metres: further than the farthest opening of a
/// building and the reach of the edge of a zone that is read on the terrain.
const REACH_METRES: f64 = 2100.0;

impl Part {
    /// What an assessment of the place may ask of a layer.
    #[must_use]
    pub fn around(location: Location) -> Self {
        Self::Around {
            location,
            margin: Self::reach(),
        }
    }

    /// What assessments of places within a box of degrees may ask of a layer.
    #[must_use]
    pub fn around_box(south_west: Location, north_east: Location) -> Self {
        Self::Box {
            south_west,
            north_east,
            margin: Self::reach(),
        }
    }

    /// How far around a place its zones are read.
    #[must_use]
    pub fn reach() -> Length {
        Length::new::<meter>(REACH_METRES)
    }

    /// The part as a box of the layer's coordinates; `None` for all of the layer.
    pub(super) fn area(self, projector: &Projector) -> Result<Option<Rect<f64>>, CrsError> {
        match self {
            Self::Around { location, margin } => {
                let frame = LocalFrame::new(projector, location)?;
                Ok(Some(frame.box_around(margin)))
            }
            Self::Box {
                south_west,
                north_east,
                margin,
            } => around_box(projector, south_west, north_east, margin),
        }
    }
}

fn around_box(
    projector: &Projector,
    south_west: Location,
    north_east: Location,
    margin: Length,
) -> Result<Option<Rect<f64>>, CrsError> {
    let (west, south) = (south_west.longitude(), south_west.latitude());
    let (east, north) = (north_east.longitude(), north_east.latitude());
    if west > east || south > north {
        return Ok(None);
    }
    let corner = |x, y| Coord { x, y };
    let corners = [
        corner(west, south),
        corner(east, south),
        corner(east, north),
        corner(west, north),
    ];
    let mut bounds: Option<Rect<f64>> = None;
    let (mut bulge, mut failed, mut worked) = (Coord::zero(), None, false);
    for (start, end) in corners.iter().zip(corners.iter().cycle().skip(1)) {
        let mut side = Vec::new();
        for piece in 0..=PIECES {
            let share = f64::from(piece) / f64::from(PIECES);
            let place = *start * (1.0 - share) + *end * share;
            let frame = Location::from_degrees(place.x, place.y)
                .ok()
                .map(|place| LocalFrame::new(projector, place));
            match frame {
                Some(Ok(frame)) => {
                    worked = true;
                    side.push(frame.origin());
                    bounds = joined(bounds, frame.box_around(margin));
                }
                Some(Err(error)) => failed = Some(error),
                None => {}
            }
        }
        for three in side.windows(3) {
            // Half as long a chord leaves a quarter of this.
            let off = three[1] - (three[0] + three[2]) / 2.0;
            bulge.x = off.x.abs().max(bulge.x);
            bulge.y = off.y.abs().max(bulge.y);
        }
    }
    match failed {
        Some(error) if !worked => Err(error),
        Some(_) => Ok(None),
        None => Ok(bounds.map(|area| Rect::new(area.min() - bulge, area.max() + bulge))),
    }
}

fn joined(one: Option<Rect<f64>>, other: Rect<f64>) -> Option<Rect<f64>> {
    let points = one.into_iter().chain([other]);
    let corners = points.flat_map(|area| [area.min().into(), area.max().into()]);
    MultiPoint::new(corners.collect()).bounding_rect()
}
