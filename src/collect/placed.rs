//! Whether features lie where they were asked for.

use geo::{BoundingRect, Geometry, Intersects, MultiPoint, Point, Rect};

use super::{CollectError, shapes};
use crate::crs::{HorizontalCrs, Projector};
use crate::service::{DegreeBox, ServedLayer};

/// Pieces of each side of an extent that are looked at.
const PIECES: u32 = 8;

/// Puts geometry east first.
///
/// A service says which system it answers in, and some give its axes in another order than the
/// system's authority. So the features are looked at: where none lies in the boxes and with the
/// axes in the other order some do, that order holds, and a remark says so.
///
/// # Errors
/// [`CollectError::Elsewhere`] where no feature lies in the boxes either way.
pub(super) fn east_first(
    layer: &mut ServedLayer,
    crs: &HorizontalCrs,
    boxes: &[DegreeBox],
) -> Result<(), CollectError> {
    let refused = |source| CollectError::Crs {
        address: layer.address.clone(),
        layer: layer.name.clone(),
        source,
    };
    let projector = Projector::new(crs.clone()).map_err(refused)?;
    let shapes = || {
        layer
            .features
            .iter()
            .filter_map(|feature| feature.geometry.as_ref())
    };
    let meets = |shape: &Geometry<f64>, swapped: bool| {
        let shape = if swapped {
            shapes::swapped(shape)
        } else {
            shape.clone()
        };
        let extent = shape
            .bounding_rect()
            .and_then(|extent| in_degrees(&projector, extent));
        extent.is_some_and(|extent| boxes.iter().any(|asked| asked.0.intersects(&extent)))
    };
    let stated = crs.is_north_first();
    let by_authority = shapes().any(|shape| meets(shape, stated));
    let swaps = match shapes().next() {
        None => return Ok(()),
        Some(_) if by_authority => stated,
        Some(_) if shapes().any(|shape| meets(shape, !stated)) => {
            let first = if stated { "east" } else { "north" };
            layer.remarks.push(format!(
                "its coordinates come {first} first, which is not the order of {}",
                crs.name()
            ));
            !stated
        }
        Some(_) => {
            return Err(CollectError::Elsewhere {
                address: layer.address.clone(),
                layer: layer.name.clone(),
                features: layer.features.len(),
                crs: crs.name().to_owned(),
            });
        }
    };
    if swaps {
        for geometry in layer
            .features
            .iter_mut()
            .filter_map(|feature| feature.geometry.as_mut())
        {
            *geometry = shapes::swapped(geometry);
        }
    }
    Ok(())
}

/// An extent in degrees, by points along its sides; `None` where none of them is a place.
fn in_degrees(projector: &Projector, extent: Rect<f64>) -> Option<Rect<f64>> {
    let (low, size) = (extent.min(), extent.max() - extent.min());
    let steps = (0..=PIECES).map(|piece| f64::from(piece) / f64::from(PIECES));
    let points = steps.flat_map(|share| [(share, 0.0), (share, 1.0), (0.0, share), (1.0, share)]);
    let places = points.filter_map(|(east, north)| {
        let place = projector.location(low.x + east * size.x, low.y + north * size.y);
        place
            .ok()
            .map(|place| Point::new(place.longitude(), place.latitude()))
    });
    MultiPoint::new(places.collect()).bounding_rect()
}
