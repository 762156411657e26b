//! Lines of known level, and the line of the section.

use geo::{Coord, LineString, MultiLineString};

use super::{LABEL, Map};
use crate::assess::Assessment;
use crate::report::drawing::clear::{Area, Clearing};
use crate::report::drawing::sheet::{Anchor, Point, Sheet};
use crate::surroundings::{LineShape, LineUse, SiteSection, Surroundings};

/// Where along a line its label is tried.
const SHARES: [f64; 9] = [0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6, 0.08, 0.92];

pub(super) const fn class(line: &LineShape) -> &'static str {
    match line.used {
        LineUse::Decides | LineUse::Compared => "level-line",
        LineUse::None => "level-line-other",
    }
}

pub(super) fn draw(sheet: &mut Sheet, map: Map, surroundings: &Surroundings) {
    for line in &surroundings.lines {
        let parts: Vec<Vec<Point>> = (line.shape.iter())
            .map(|part| map.points(&part.0))
            .collect();
        let parts: Vec<(&[Point], bool)> = parts.iter().map(|part| (&part[..], false)).collect();
        sheet.path(class(line), &parts);
    }
}

/// The level of each line that was used, and the letters of the section, which come first.
pub(super) fn label(
    sheet: &mut Sheet,
    map: Map,
    assessment: &Assessment<'_>,
    surroundings: &Surroundings,
    clearing: &mut Clearing,
) {
    let mut lines: Vec<&LineShape> = surroundings.lines.iter().collect();
    lines.sort_by_key(|line| line.used);
    for line in lines {
        let Some(level) = line.level else { continue };
        let (text, class) = match line.used {
            LineUse::None => (
                assessment.method.units.height(level.height()),
                "small soft halo",
            ),
            _ => (
                assessment.method.units.elevation(level),
                "small strong halo",
            ),
        };
        let places = SHARES.iter().filter_map(|share| along(&line.shape, *share));
        let places: Vec<Point> = places.map(|place| map.at(place)).collect();
        if let Some(at) = clearing.take_text(places, &text, LABEL) {
            sheet.text(class, at, Anchor::Middle, &text);
        }
    }
}

/// The point that lies such a share along the longest part of a line.
fn along(line: &MultiLineString<f64>, share: f64) -> Option<Coord<f64>> {
    let length = |part: &LineString<f64>| -> f64 {
        let pieces = part.lines();
        pieces
            .map(|piece| piece.delta().x.hypot(piece.delta().y))
            .sum()
    };
    let longest = line
        .iter()
        .max_by(|one, other| length(one).total_cmp(&length(other)))?;
    let mut left = share * length(longest);
    for piece in longest.lines() {
        let long = piece.delta().x.hypot(piece.delta().y);
        if long > 0.0 && left <= long {
            return Some(piece.start + piece.delta() * (left / long));
        }
        left -= long;
    }
    longest.0.last().copied()
}

/// The line of the section from A to A′.
pub(super) fn section(sheet: &mut Sheet, map: Map, section: &SiteSection, clearing: &mut Clearing) {
    let (sine, cosine) = section.bearing.to_radians().sin_cos();
    let way = Coord { x: sine, y: cosine };
    let edge = map.reach / way.x.abs().max(way.y.abs());
    let ends = [(way * -edge, "A"), (way * edge, "A′")];
    let [from, to] = ends.map(|(end, _)| map.at(end));
    sheet.line("cut", from, to);
    for (end, letter) in ends {
        // Beside the line, a little within the frame.
        let inner = end * 0.93;
        let beside = Coord {
            x: way.y,
            y: -way.x,
        } * (14.0 * map.metres_a_pixel());
        let places = [inner + beside, inner - beside].map(|place| map.at(place));
        if let Some(at) = clearing.take(places, (22.0, 22.0)) {
            sheet.circle("plate", at, 10.0);
            sheet.text("strong", (at.0, at.1 + 4.6), Anchor::Middle, letter);
        }
    }
    // Labels do not lie across the line near the site.
    let (x, y) = map.at(Coord { x: 0.0, y: 0.0 });
    clearing.keep(Area::about((x, y), 16.0, 16.0));
}
