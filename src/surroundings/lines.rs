//! Lines of known level: those within the square, and those that a level was read from.

use geo::{BooleanOps, Closest, ClosestPoint, Coord, MapCoords, MultiLineString, Point, Rect};

use super::plane::Degrees;
use crate::assess::{Assessment, Place};
use crate::crs::CrsError;
use crate::hazard::{LevelLineMap, LineKind};
use crate::level::bracket::bracket;
use crate::level::{Candidate, LevelSource};
use crate::quantity::{Elevation, Length, LengthUnit, unit::meter};
use crate::site::Location;

/// A line of known level.
#[derive(Clone, Debug, PartialEq)]
pub struct LineShape {
    /// What it is.
    pub kind: LineKind,
    /// Its name in words.
    pub title: String,
    /// The layer's name.
    pub layer: String,
    /// The feature's identifier.
    pub feature: String,
    /// Its level on its own datum; `None` where none could be used.
    pub level: Option<Elevation>,
    /// The unit that the level is written in.
    pub unit: Option<LengthUnit>,
    /// What it was used for.
    pub used: LineUse,
    /// The shortest way to it from the site.
    pub distance: Length,
    /// Where the nearest point of it lies, degrees clockwise from north.
    pub bearing: f64,
    /// Metres east and north of the site, cut off at the square; empty where it lies outside.
    pub shape: MultiLineString<f64>,
    /// The whole line in degrees of WGS 84, where a level was read from it; else empty.
    pub degrees: MultiLineString<f64>,
}

/// What a line was used for, the most first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LineUse {
    /// The level that decides at the site, or at an opening that stands elsewhere, was read
    /// from it.
    Decides,
    /// A level was read from it that is compared with the deciding one.
    Compared,
    /// It lies there.
    None,
}

/// A line that a level was read from.
pub(super) struct UsedLine {
    map: usize,
    line: usize,
    used: LineUse,
    /// From the place whose level was read.
    pub(super) distance: Length,
}

/// The lines that levels of the assessment were read from.
pub(super) fn used(assessment: &Assessment<'_>, maps: &[LevelLineMap]) -> Vec<UsedLine> {
    let own = assessment.openings.iter();
    let own = own.filter_map(|opening| opening.place.as_deref());
    let places = std::iter::once(&assessment.place).chain(own);
    let mut found = Vec::new();
    for place in places {
        for (number, map) in maps.iter().enumerate() {
            // The same lines as at the assessment: it is the same question.
            let Ok(Some(bracketed)) = bracket(map, place.location) else {
                continue;
            };
            let used = use_of(
                place,
                LevelSource::of_lines(map.kind()),
                &bracketed.reference(),
            );
            if used == LineUse::None {
                continue;
            }
            found.extend(bracketed.position.lines().filter_map(|neighbour| {
                let mut lines = map.lines().iter();
                Some(UsedLine {
                    map: number,
                    line: lines.position(|line| std::ptr::eq(line, neighbour.line))?,
                    used,
                    distance: neighbour.distance,
                })
            }));
        }
    }
    found
}

/// What a reading of lines was used for, known again by its source and its records.
fn use_of(place: &Place<'_>, source: LevelSource, reference: &str) -> LineUse {
    let is_it = |candidate: &Candidate| {
        candidate.source == source && candidate.reference.starts_with(reference)
    };
    let level = place.flood_level.as_ref();
    if level.is_some_and(|level| is_it(&level.decided)) {
        return LineUse::Decides;
    }
    let others = level.iter().flat_map(|level| &level.others);
    if others.chain(place.beside.as_deref()).any(is_it) {
        LineUse::Compared
    } else {
        LineUse::None
    }
}

/// The lines of all layers within the square, and those that were used.
pub(super) fn within(
    reach: f64,
    location: Location,
    maps: &[LevelLineMap],
    used: &[UsedLine],
) -> Result<Vec<LineShape>, CrsError> {
    let corner = Coord { x: reach, y: reach };
    let square = Rect::new(-corner, corner).to_polygon();
    let mut shapes = Vec::new();
    for (number, map) in maps.iter().enumerate() {
        let frame = match map.frame(location) {
            Ok(frame) => frame,
            Err(CrsError::OutsideDomain { .. }) => continue,
            Err(error) => return Err(error),
        };
        let degrees = Degrees::from(map.crs())?;
        let of_map = || used.iter().filter(|used| used.map == number);
        let near = map.pieces_near(&frame, reach).into_iter();
        let mut positions: Vec<usize> = near.map(|piece| piece.line).collect();
        positions.extend(of_map().map(|used| used.line));
        positions.sort_unstable();
        positions.dedup();
        for position in positions {
            let Some(line) = map.lines().get(position) else {
                continue;
            };
            let used = of_map().filter(|used| used.line == position);
            let used = used.map(|used| used.used).min().unwrap_or(LineUse::None);
            let whole = map.shape(position);
            let metres = whole.map_coords(|point| frame.metres(point));
            let shape = square.clip(&metres, false);
            if shape.0.is_empty() && used == LineUse::None {
                continue;
            }
            let nearest = match metres.closest_point(&Point::new(0.0, 0.0)) {
                Closest::Intersection(point) | Closest::SinglePoint(point) => point.0,
                Closest::Indeterminate => continue,
            };
            shapes.push(LineShape {
                kind: line.kind,
                title: line.title(),
                layer: line.layer.clone(),
                feature: line.feature.clone(),
                level: line.level,
                unit: line.unit,
                used,
                distance: Length::new::<meter>(nearest.x.hypot(nearest.y)),
                bearing: nearest.x.atan2(nearest.y).to_degrees().rem_euclid(360.0),
                shape,
                degrees: if used == LineUse::None {
                    MultiLineString(Vec::new())
                } else {
                    degrees.of(&whole)?
                },
            });
        }
    }
    Ok(shapes)
}
