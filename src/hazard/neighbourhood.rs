//! Which zones lie around the places that are asked one after the other.

use geo::Rect;
use rstar::{AABB, RTree};
use smallvec::SmallVec;

use super::shared::Indexed;
use crate::crs::LocalFrame;
use crate::quantity::{Length, unit::meter};

/// The boxes of the zones in a square around a place asked before.
///
/// Places that follow each other mostly lie together, and looking at a few boxes costs less
/// than going down an index. How large the square is follows from how many zones it holds.
pub(super) struct Neighbourhood {
    /// From the middle of the square to its sides.
    reach: Length,
    /// The square; `None` before the first place.
    bounds: Option<Rect<f64>>,
    zones: SmallVec<[(Rect<f64>, u32); MOST]>,
}

/// Zones that a square holds, unless they all meet in one place.
const MOST: usize = 12;

/// With fewer zones the next square is larger.
const FEW: usize = 3;

/// What the first square reaches, metres.
const REACH_METRES: f64 = 64.0;

impl Default for Neighbourhood {
    fn default() -> Self {
        Self {
            reach: Length::new::<meter>(REACH_METRES),
            bounds: None,
            zones: SmallVec::new(),
        }
    }
}

impl Neighbourhood {
    /// The numbers of the zones of an index whose boxes meet `near`, a box around the place of
    /// a frame.
    pub(super) fn meeting(
        &mut self,
        near: Rect<f64>,
        frame: &LocalFrame,
        index: &RTree<Indexed>,
    ) -> impl Iterator<Item = u32> + '_ {
        if !self.bounds.is_some_and(|bounds| holds(bounds, near)) {
            self.move_to(near, frame, index);
        }
        let zones = self.zones.iter();
        zones.filter_map(move |(area, number)| meet(*area, near).then_some(*number))
    }

    fn move_to(&mut self, near: Rect<f64>, frame: &LocalFrame, index: &RTree<Indexed>) {
        // One zone more than a square may hold tells that it is too large.
        self.gather(frame.box_around(self.reach), index, MOST + 1);
        if self.zones.len() > MOST {
            self.reach /= 2.0;
            self.gather(near, index, usize::MAX);
        } else if self.zones.len() < FEW {
            self.reach *= 2.0;
        }
    }

    fn gather(&mut self, bounds: Rect<f64>, index: &RTree<Indexed>, most: usize) {
        let around = AABB::from_corners(bounds.min().into(), bounds.max().into());
        let found = index.locate_in_envelope_intersecting(&around).take(most);
        self.zones.clear();
        self.zones.extend(found.map(|zone| {
            let area = zone.geom();
            (Rect::new(area.lower(), area.upper()), zone.data)
        }));
        self.bounds = Some(bounds);
    }
}

fn holds(whole: Rect<f64>, part: Rect<f64>) -> bool {
    let (low, high) = (whole.min(), whole.max());
    low.x <= part.min().x
        && low.y <= part.min().y
        && part.max().x <= high.x
        && part.max().y <= high.y
}

fn meet(one: Rect<f64>, other: Rect<f64>) -> bool {
    let (low, high) = (one.min(), one.max());
    low.x <= other.max().x
        && low.y <= other.max().y
        && other.min().x <= high.x
        && other.min().y <= high.y
}
