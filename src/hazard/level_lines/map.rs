//! The lines of a layer, by place.

use geo::{Line, LinesIter, MultiLineString};
use rstar::primitives::GeomWithData;
use rstar::{AABB, RTree};

use super::{LevelLine, LineKind};
use crate::crs::{CrsError, HorizontalCrs, LocalFrame, Projector};
use crate::quantity::{Length, unit::meter};
use crate::site::Location;

/// The lines of one layer, or of a part of it.
///
/// Neither `Send` nor `Sync`: a thread reads its own.
pub struct LevelLineMap {
    kind: LineKind,
    projector: Projector,
    lines: Vec<LevelLine>,
    index: RTree<GeomWithData<Line<f64>, usize>>,
    without_shape: usize,
}

/// A straight piece of a line, in metres east and north of a place.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    /// Position of the line in the map.
    pub(crate) line: usize,
    /// The piece.
    pub(crate) shape: Line<f64>,
}

impl LevelLineMap {
    /// A line farther away than this says nothing about a place, metres. A judgement, no
    /// source: it leaves room for rivers that fall by a foot in five kilometres or more, and
    /// within it the tangent plane is good to a part in a thousand.
    pub const SEARCH_LIMIT_METRES: f64 = 5_000.0;

    /// A map of lines in the coordinates of `projector`.
    pub(crate) fn new(
        kind: LineKind,
        projector: Projector,
        features: Vec<(LevelLine, Option<MultiLineString<f64>>)>,
    ) -> Self {
        let count = features.len();
        let (mut lines, mut pieces) = (Vec::new(), Vec::new());
        for (line, shape) in features {
            let Some(shape) = shape else { continue };
            let position = lines.len();
            pieces.extend(
                shape
                    .lines_iter()
                    .map(|piece| GeomWithData::new(piece, position)),
            );
            lines.push(line);
        }
        Self {
            kind,
            projector,
            without_shape: count - lines.len(),
            lines,
            index: RTree::bulk_load(pieces),
        }
    }

    /// What the lines are.
    #[must_use]
    pub const fn kind(&self) -> LineKind {
        self.kind
    }

    /// The layer's coordinate reference system.
    #[must_use]
    pub const fn crs(&self) -> &HorizontalCrs {
        self.projector.target()
    }

    /// The lines that have a geometry, in the order of the layer.
    #[must_use]
    pub fn lines(&self) -> &[LevelLine] {
        &self.lines
    }

    /// How many features had no geometry or an empty one.
    #[must_use]
    pub const fn without_shape(&self) -> usize {
        self.without_shape
    }

    /// The plane at a place.
    pub(crate) fn frame(&self, location: Location) -> Result<LocalFrame, CrsError> {
        LocalFrame::new(&self.projector, location)
    }

    /// The pieces whose box meets the box of half the side `radius` (metres) around the place of
    /// a frame: all that are nearer, and some that are not.
    pub(crate) fn pieces_near(&self, frame: &LocalFrame, radius: f64) -> Vec<Piece> {
        let near = frame.box_around(Length::new::<meter>(radius));
        let near = AABB::from_corners(near.min().into(), near.max().into());
        self.index
            .locate_in_envelope_intersecting(&near)
            .map(|piece| Piece {
                line: piece.data,
                shape: Line::new(
                    frame.metres(piece.geom().start),
                    frame.metres(piece.geom().end),
                ),
            })
            .collect()
    }
}
