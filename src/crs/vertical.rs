//! The part of a coordinate reference system that counts heights.

use serde_json::Value;

use super::horizontal::unit_factor;
use crate::quantity::VerticalDatum;

/// What a vertical axis counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum VerticalAxis {
    /// Heights above a vertical datum, upwards.
    Height,
    /// Depths below it, downwards.
    Depth,
    /// Heights above the ellipsoid, which are not elevations.
    Ellipsoidal,
}

/// The vertical part of a compound system, or the third axis of one with three.
#[derive(Clone, Debug, PartialEq)]
pub struct VerticalCrs {
    /// Its name, for messages.
    pub name: String,
    /// Its datum, where it is known here.
    pub datum: Option<VerticalDatum>,
    /// What it counts.
    pub axis: VerticalAxis,
    /// Metres in one unit.
    pub metres_per_unit: Option<f64>,
}

impl VerticalCrs {
    pub(super) fn from_projjson(json: &Value) -> Self {
        let bare = if json["type"] == "BoundCRS" {
            &json["source_crs"]
        } else {
            json
        };
        let name = bare["name"].as_str().unwrap_or("unnamed").to_owned();
        let axis = &bare["coordinate_system"]["axis"][0];
        let by_code = bare["id"]["code"]
            .as_u64()
            .filter(|_| bare["id"]["authority"] == "EPSG")
            .and_then(|code| u32::try_from(code).ok())
            .map(VerticalDatum::from_epsg);
        // "NAVD88 height (ftUS)" names the datum before the word; the reference frame has
        // it in full. A known name wins over a code that is only a number here.
        let frame = bare["datum"]["name"]
            .as_str()
            .or(bare["datum_ensemble"]["name"].as_str());
        let by_name = name
            .split(" height")
            .next()
            .into_iter()
            .chain(frame)
            .find_map(|text| text.parse().ok());
        let ellipsoidal = name.to_ascii_lowercase().contains("ellipsoid")
            || frame.is_some_and(|frame| frame.to_ascii_lowercase().contains("ellipsoid"));
        let datum = match by_code {
            Some(VerticalDatum::Epsg(code)) => by_name.or(Some(VerticalDatum::Epsg(code))),
            Some(known) => Some(known),
            None => by_name,
        };
        Self {
            name,
            datum: datum.filter(|_| !ellipsoidal),
            axis: if ellipsoidal {
                VerticalAxis::Ellipsoidal
            } else if axis["direction"] == "down" {
                VerticalAxis::Depth
            } else {
                VerticalAxis::Height
            },
            metres_per_unit: unit_factor(&axis["unit"]),
        }
    }
}
