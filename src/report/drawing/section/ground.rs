//! The ground, and the water over it as far as a map says so.

use super::frame::Frame;
use super::{BOTTOM, TOP};
use crate::assess::Assessment;
use crate::report::drawing::sheet::{Point, Sheet};
use crate::report::drawing::texture::Texture;
use crate::surroundings::{SectionPoint, SiteSection};

/// What the section shows beside the ground.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Shown {
    /// Ground below the flood level within a zone of the flood.
    pub(super) water: bool,
    /// Ground below the flood level outside of such zones.
    pub(super) low_ground: bool,
    /// Stretches without a height.
    pub(super) voids: bool,
}

/// Less than this is not seen, pixels.
const SLIVER: f64 = 0.7;

/// How high the texture of a stretch without heights reaches, pixels.
const VOID: f64 = 36.0;

pub(super) fn draw(
    sheet: &mut Sheet,
    frame: &Frame,
    section: &SiteSection,
    assessment: &Assessment<'_>,
) -> Shown {
    let mut shown = Shown::default();
    let level = assessment.place.flood_level.as_ref();
    let level = level.map(|level| frame.height(level.decided.elevation));
    for stretch in section
        .points
        .chunk_by(|one, other| is_known(one) == is_known(other))
    {
        let Some(profile) = profile(frame, stretch) else {
            shown.voids = true;
            void(sheet, frame, stretch);
            continue;
        };
        if let Some(level) = level {
            let flooded: Vec<bool> = stretch.iter().map(|point| point.in_flooded_zone).collect();
            shown.water |= fill(sheet, &below(&profile, &flooded, level, true), None);
            let dry = below(&profile, &flooded, level, false);
            shown.low_ground |= fill(sheet, &dry, Some(Texture::Dots));
        }
        soil(sheet, &profile);
    }
    shown
}

const fn is_known(point: &SectionPoint) -> bool {
    point.ground.is_some()
}

/// The ground on the sheet; `None` where it is not known.
fn profile(frame: &Frame, stretch: &[SectionPoint]) -> Option<Vec<Point>> {
    let points = stretch.iter();
    points
        .map(|point| Some((frame.distance(point.along), frame.height(point.ground?))))
        .collect()
}

fn soil(sheet: &mut Sheet, profile: &[Point]) {
    let (Some(first), Some(last)) = (profile.first(), profile.last()) else {
        return;
    };
    let mut area = profile.to_vec();
    // Below the plot and cut off at it.
    let foot = BOTTOM + 5.0;
    area.extend([(last.0, foot), (first.0, foot)]);
    let area: Vec<Point> = area.into_iter().map(near_plot).collect();
    let top: Vec<Point> = profile.iter().copied().map(near_plot).collect();
    sheet.polygon("ground", &area);
    sheet.polyline("ground-line", &top);
}

/// Heights far beyond the plot are as good just beyond it.
fn near_plot((x, y): Point) -> Point {
    (x, y.clamp(TOP - 50.0, BOTTOM + 50.0))
}

fn void(sheet: &mut Sheet, frame: &Frame, stretch: &[SectionPoint]) {
    let (Some(first), Some(last)) = (stretch.first(), stretch.last()) else {
        return;
    };
    let (left, right) = (frame.distance(first.along), frame.distance(last.along));
    let top = BOTTOM - VOID;
    let area = [(left, top), (right, top), (right, BOTTOM), (left, BOTTOM)];
    sheet.textured("wet-texture", Texture::Void, &[(&area, true)]);
}

/// The areas between a level and lower ground, of points that are flooded or of those that are
/// not: each as far as the ground reaches up to the level.
fn below(profile: &[Point], flooded: &[bool], level: f64, wanted: bool) -> Vec<Vec<Point>> {
    let mut areas: Vec<Vec<Point>> = Vec::new();
    let mut open: Vec<Point> = Vec::new();
    let pairs = profile.windows(2).zip(flooded.windows(2));
    for (points, zones) in pairs {
        let ([from, to], [here, there]) = (points, zones) else {
            continue;
        };
        // Between two points the one before it counts.
        let lower = from.1 > level || to.1 > level;
        if *here != wanted || !lower {
            close(&mut open, &mut areas, level);
            continue;
        }
        if open.is_empty() {
            open.push(start(*from, *to, level));
        }
        open.push(start(*to, *from, level));
        if to.1 <= level || *there != wanted {
            close(&mut open, &mut areas, level);
        }
    }
    close(&mut open, &mut areas, level);
    areas
}

/// A point of the ground, or where the way to the next one goes through the level, where it
/// lies above it.
fn start(point: Point, next: Point, level: f64) -> Point {
    if point.1 >= level {
        return point;
    }
    let share = (level - point.1) / (next.1 - point.1);
    (point.0 + share * (next.0 - point.0), level)
}

fn close(open: &mut Vec<Point>, areas: &mut Vec<Vec<Point>>, level: f64) {
    let mut area = std::mem::take(open);
    let deepest = area.iter().map(|(_, y)| *y).fold(level, f64::max);
    if let (Some(first), Some(last)) = (area.first().copied(), area.last().copied())
        && deepest - level > SLIVER
        && last.0 - first.0 > SLIVER
    {
        area.extend([(last.0, level), (first.0, level)]);
        areas.push(area);
    }
}

/// Whether there was anything to fill.
fn fill(sheet: &mut Sheet, areas: &[Vec<Point>], texture: Option<Texture>) -> bool {
    let areas: Vec<Vec<Point>> = areas
        .iter()
        .map(|area| area.iter().copied().map(near_plot).collect())
        .collect();
    let parts: Vec<(&[Point], bool)> = areas.iter().map(|area| (&area[..], true)).collect();
    match texture {
        Some(texture) => sheet.textured("wet-texture", texture, &parts),
        None => sheet.path("water", &parts),
    }
    !areas.is_empty()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn water_ends_where_the_ground_comes_up_to_it() {
        // Down the sheet is down: the level at 10, the ground from above it to below it.
        let profile = [(0.0, 0.0), (10.0, 20.0), (20.0, 20.0), (30.0, 0.0)];
        let areas = below(&profile, &[true; 4], 10.0, true);
        let expected = vec![vec![
            (5.0, 10.0),
            (10.0, 20.0),
            (20.0, 20.0),
            (25.0, 10.0),
            (25.0, 10.0),
            (5.0, 10.0),
        ]];
        assert_eq!(areas, expected);
        assert!(below(&profile, &[true; 4], 10.0, false).is_empty());
    }

    #[test]
    fn water_ends_at_the_edge_of_its_zone() {
        let profile = [(0.0, 20.0), (10.0, 20.0), (20.0, 20.0)];
        let flooded = [true, false, false];
        let wet = below(&profile, &flooded, 10.0, true);
        assert_eq!(
            wet,
            [[(0.0, 20.0), (10.0, 20.0), (10.0, 10.0), (0.0, 10.0)]]
        );
        let dry = below(&profile, &flooded, 10.0, false);
        assert_eq!(
            dry,
            [[(10.0, 20.0), (20.0, 20.0), (20.0, 10.0), (10.0, 10.0)]]
        );
    }
}
