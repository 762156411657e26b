//! Geometry of GeoServices REST in its own JSON.

use geo::{Geometry, LineString, MultiLineString, MultiPoint, MultiPolygon, Point};
use serde::Deserialize;
use serde_json::Value;

use super::rings;
use crate::service::features::shape::Axes;

/// A geometry, of whatever kind: one of the fields says which. What stands behind the second
/// number of a position is a height or a measure, and not used.
#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Shape {
    x: Option<Value>,
    y: Option<Value>,
    points: Option<Vec<Position>>,
    paths: Option<Vec<Vec<Position>>>,
    rings: Option<Vec<Vec<Position>>>,
    curve_paths: Option<Value>,
    curve_rings: Option<Value>,
}

type Position = Vec<Option<f64>>;

impl Shape {
    /// The geometry in degrees; `None` where it has no positions.
    pub(super) fn read(self) -> Result<Option<Geometry<f64>>, String> {
        if self.curve_paths.is_some() || self.curve_rings.is_some() {
            return Err(
                "it has curves, which are not read; a layer of straight lines is".to_owned(),
            );
        }
        if let Some(given) = self.rings {
            let mut polygons = rings::polygons(lines(&given)?)?;
            return Ok(match (polygons.pop(), polygons.is_empty()) {
                (None, _) => None,
                (Some(only), true) => Some(only.into()),
                (Some(last), false) => {
                    polygons.push(last);
                    Some(MultiPolygon(polygons).into())
                }
            });
        }
        if let Some(given) = self.paths {
            let mut lines = lines(&given)?;
            lines.retain(|line| !line.0.is_empty());
            return Ok(match (lines.pop(), lines.is_empty()) {
                (None, _) => None,
                (Some(only), true) => Some(only.into()),
                (Some(last), false) => {
                    lines.push(last);
                    Some(MultiLineString(lines).into())
                }
            });
        }
        if let Some(given) = self.points {
            let points = line(&given)?.0;
            let points = MultiPoint(points.into_iter().map(Point).collect());
            return Ok((!points.0.is_empty()).then(|| points.into()));
        }
        match (self.x, self.y) {
            // Of an empty point the numbers are null or "NaN".
            (None | Some(Value::Null | Value::String(_)), _) => Ok(None),
            (Some(x), Some(y)) => match (x.as_f64(), y.as_f64()) {
                (Some(x), Some(y)) => Ok(Some(Point(Axes::LongitudeFirst.position(x, y)?).into())),
                _ => Err(format!("the position {x}, {y} is none")),
            },
            (Some(_), None) => Err("a point has no y".to_owned()),
        }
    }
}

fn lines(given: &[Vec<Position>]) -> Result<Vec<LineString<f64>>, String> {
    given.iter().map(|positions| line(positions)).collect()
}

fn line(given: &[Position]) -> Result<LineString<f64>, String> {
    let positions = given.iter().map(|position| match position.as_slice() {
        [Some(x), Some(y), ..] => Axes::LongitudeFirst.position(*x, *y),
        _ => Err("a position lacks one of its two numbers".to_owned()),
    });
    Ok(LineString(positions.collect::<Result<_, _>>()?))
}
