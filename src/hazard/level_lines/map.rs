//! The lines of a layer, by place.

use geo::{Coord, Line, LineString, LinesIter, MultiLineString};
use rstar::primitives::GeomWithData;
use rstar::{AABB, RTree};

use super::{LevelLine, LineKind};
use crate::crs::{CrsError, HorizontalCrs, LocalFrame, Projector};
use crate::hazard::LayerOrigin;
use crate::quantity::{Length, unit::meter};
use crate::site::Location;

/// The lines of one layer, or of a part of it.
///
/// Neither `Send` nor `Sync`: a thread reads its own.
pub struct LevelLineMap {
    kind: LineKind,
    projector: Projector,
    origin: LayerOrigin,
    lines: Vec<LevelLine>,
    index: RTree<GeomWithData<Line<f64>, Number>>,
    without_shape: usize,
}

/// Which line a piece is of, and its number along it.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Number {
    line: u32,
    piece: u32,
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

    /// [`SEARCH_LIMIT_METRES`](Self::SEARCH_LIMIT_METRES) as a length.
    #[must_use]
    pub fn search_limit() -> Length {
        Length::new::<meter>(Self::SEARCH_LIMIT_METRES)
    }

    /// A map of lines in the coordinates of `projector`.
    pub(crate) fn new(
        kind: LineKind,
        projector: Projector,
        origin: LayerOrigin,
        features: Vec<(LevelLine, Option<MultiLineString<f64>>)>,
    ) -> Self {
        let count = features.len();
        let (mut lines, mut pieces) = (Vec::new(), Vec::new());
        for (line, shape) in features {
            let Some(shape) = shape else { continue };
            // No layer that fits into memory has more lines than 32 bits count.
            let number = u32::try_from(lines.len()).unwrap_or(u32::MAX);
            pieces.extend((0..).zip(shape.lines_iter()).map(|(piece, straight)| {
                let number = Number {
                    line: number,
                    piece,
                };
                GeomWithData::new(straight, number)
            }));
            lines.push(line);
        }
        Self {
            kind,
            projector,
            origin,
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

    /// Where they were read from.
    #[must_use]
    pub const fn origin(&self) -> &LayerOrigin {
        &self.origin
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

    /// The whole shape of the line at a position of [`lines`](Self::lines), in the layer's
    /// coordinates; empty where there are fewer.
    ///
    /// Pieces lie in the index alone, which is gone through: for the few lines of one place.
    #[must_use]
    pub fn shape(&self, position: usize) -> MultiLineString<f64> {
        let wanted = |number: &Number| usize::try_from(number.line).is_ok_and(|it| it == position);
        let mut pieces: Vec<(u32, Line<f64>)> = (self.index.iter())
            .filter(|piece| wanted(&piece.data))
            .map(|piece| (piece.data.piece, *piece.geom()))
            .collect();
        pieces.sort_by_key(|(number, _)| *number);
        let mut parts: Vec<Vec<Coord<f64>>> = Vec::new();
        for (_, piece) in pieces {
            match parts.last_mut() {
                Some(part) if part.last() == Some(&piece.start) => part.push(piece.end),
                _ => parts.push(vec![piece.start, piece.end]),
            }
        }
        MultiLineString(parts.into_iter().map(LineString).collect())
    }

    /// The plane at a place: between metres and the layer's coordinates.
    ///
    /// # Errors
    /// [`CrsError`] where the place has no coordinates in the layer's system.
    pub fn frame(&self, location: Location) -> Result<LocalFrame, CrsError> {
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
                line: usize::try_from(piece.data.line).unwrap_or(usize::MAX),
                shape: Line::new(
                    frame.metres(piece.geom().start),
                    frame.metres(piece.geom().end),
                ),
            })
            .collect()
    }
}
