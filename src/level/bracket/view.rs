//! The lines around a place, in its plane.

use geo::{Coord, Intersects, Line};

use crate::crs::LocalFrame;
use crate::hazard::{LevelLine, LevelLineMap, Piece};
use crate::quantity::{Elevation, IncomparableDatums};

/// The lines within a radius of the place, which is the origin; the nearest first.
pub(super) struct View<'map> {
    /// Lines with a level.
    pub(super) sights: Vec<Sight<'map>>,
    /// Pieces of lines with a level, by distance.
    pieces: Vec<(f64, Piece)>,
    /// Lines without a level, and their pieces.
    blank: Vec<(&'map LevelLine, Piece)>,
}

/// A line as the place sees it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Sight<'map> {
    pub(super) line: &'map LevelLine,
    pub(super) level: Elevation,
    /// Position in the map.
    position: usize,
    /// Metres.
    pub(super) distance: f64,
    /// The nearest point of the line.
    pub(super) foot: Coord<f64>,
    /// The piece that the foot lies on.
    piece: Line<f64>,
}

/// A connector ends this far before the line that it leads to, metres, so that a line which
/// only touches that line at the same point does not hide it.
const SHORT_OF_FOOT: f64 = 0.001;

impl<'map> View<'map> {
    pub(super) fn new(map: &'map LevelLineMap, frame: &LocalFrame, radius: f64) -> Self {
        let origin = Coord { x: 0.0, y: 0.0 };
        let mut pieces = Vec::new();
        let mut blank = Vec::new();
        let mut nearest = Vec::new();
        for piece in map.pieces_near(frame, radius) {
            let Some(line) = map.lines().get(piece.line) else {
                continue;
            };
            let Some(level) = line.level else {
                blank.push((line, piece));
                continue;
            };
            let foot = foot(piece.shape, origin);
            let distance = foot.x.hypot(foot.y);
            // A box reaches farther at its corners than at its sides: beyond the radius only
            // some of the lines are known.
            if distance > radius {
                continue;
            }
            pieces.push((distance, piece));
            nearest.push(Sight {
                line,
                level,
                position: piece.line,
                distance,
                foot,
                piece: piece.shape,
            });
        }
        pieces.sort_by(|(one, _), (two, _)| one.total_cmp(two));
        nearest.sort_by(|one, two| {
            let by_line = one.position.cmp(&two.position);
            by_line.then(one.distance.total_cmp(&two.distance))
        });
        nearest.dedup_by_key(|sight| sight.position);
        nearest.sort_by(|one, two| one.distance.total_cmp(&two.distance));
        Self {
            sights: nearest,
            pieces,
            blank,
        }
    }

    /// The lines that are seen on the other side than `nearest`, by distance.
    pub(super) fn opposite<'view>(
        &'view self,
        nearest: &'view Sight<'map>,
    ) -> impl Iterator<Item = &'view Sight<'map>> {
        self.sights.iter().filter(move |sight| {
            let cosine = sight.foot.x * nearest.foot.x + sight.foot.y * nearest.foot.y;
            cosine < 0.0 && self.sees(sight)
        })
    }

    /// Whether the connector of a line crosses no other line.
    pub(super) fn sees(&self, sight: &Sight<'_>) -> bool {
        let connector = sight.connector();
        // What the connector crosses is nearer than its end.
        self.pieces
            .iter()
            .take_while(|(distance, _)| *distance < sight.distance)
            .filter(|(_, piece)| piece.line != sight.position)
            .all(|(_, piece)| !piece.shape.intersects(&connector))
    }

    /// The next line behind `sight`: of those whose point nearest to its foot lies on its far
    /// side, the nearest to the foot, with that distance in metres.
    pub(super) fn behind(&self, sight: &Sight<'map>) -> Option<(Sight<'map>, f64)> {
        let own = sight.side(Coord { x: 0.0, y: 0.0 });
        if own.abs() < super::ON_LINE_METRES {
            return None; // beyond the end of a straight line neither side is far
        }
        let mut nearest: Vec<Option<(Coord<f64>, f64)>> = vec![None; self.sights.len()];
        let mut positions: Vec<_> = self.sights.iter().enumerate().collect();
        positions.sort_by_key(|(_, sight)| sight.position);
        for (_, piece) in &self.pieces {
            let found = positions.binary_search_by_key(&piece.line, |(_, sight)| sight.position);
            let Some((index, _)) = found.ok().and_then(|found| positions.get(found)) else {
                continue;
            };
            let point = foot(piece.shape, sight.foot);
            let distance = (point - sight.foot).x.hypot((point - sight.foot).y);
            if let Some(best) = nearest.get_mut(*index)
                && best.is_none_or(|(_, best)| distance < best)
            {
                *best = Some((point, distance));
            }
        }
        self.sights
            .iter()
            .zip(nearest)
            .filter(|(other, _)| other.position != sight.position)
            .filter_map(|(other, nearest)| Some((*other, nearest?)))
            .filter(|(_, (point, _))| sight.side(*point) * own < 0.0)
            .map(|(other, (_, distance))| (other, distance))
            .min_by(|(_, one), (_, two)| one.total_cmp(two))
    }

    /// A line without a level that a connector crosses.
    pub(super) fn blank_before(&self, sight: &Sight<'_>) -> Option<&'map LevelLine> {
        let connector = sight.connector();
        self.blank
            .iter()
            .find(|(_, piece)| piece.shape.intersects(&connector))
            .map(|(line, _)| *line)
    }
}

impl Sight<'_> {
    /// How far the other line's level lies above this one's, metres.
    pub(super) fn rise_to(&self, other: &Self) -> Result<f64, IncomparableDatums> {
        // Levels of one rounding are equal or apart by far more than binary digits.
        let rise = other.level.above(self.level)?.value;
        Ok(if rise.abs() < 1e-6 { 0.0 } else { rise })
    }

    /// Whether both levels are known to be equal.
    pub(super) fn is_level_with(&self, other: &Self) -> bool {
        self.rise_to(other).is_ok_and(|rise| rise == 0.0)
    }

    fn connector(&self) -> Line<f64> {
        let share = 1.0 - (SHORT_OF_FOOT / self.distance).min(0.5);
        Line::new(Coord { x: 0.0, y: 0.0 }, self.foot * share)
    }

    /// How far left (positive) or right of the piece with the foot, lengthened, a point lies.
    fn side(&self, point: Coord<f64>) -> f64 {
        let along = self.piece.end - self.piece.start;
        let to = point - self.piece.start;
        let length = along.x.hypot(along.y);
        if length > 0.0 {
            (along.x * to.y - along.y * to.x) / length
        } else {
            0.0
        }
    }
}

/// The point of a piece nearest to a point.
fn foot(piece: Line<f64>, point: Coord<f64>) -> Coord<f64> {
    let (along, to) = (piece.end - piece.start, point - piece.start);
    let square = along.x * along.x + along.y * along.y;
    let share = if square > 0.0 {
        ((to.x * along.x + to.y * along.y) / square).clamp(0.0, 1.0)
    } else {
        0.0
    };
    piece.start + along * share
}
