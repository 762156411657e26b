//! The end posts and the wall that holds them.

use super::water::CaseLoad;
use crate::anchor::{LoadBand, tributary_shares};
use crate::barrier::{DesignError, LoadCase, Post};
use crate::quantity::unit::Force;
use crate::quantity::{Length, LineLoad, Pressure};
use crate::site::Mount;

/// How the ends of a barrier meet the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// End posts in the reveal or on the face.
    Mounted(Mount),
    /// The ends of a run that stands out from the wall: their posts stand with their backs to
    /// its face.
    AgainstWall,
}

/// What one end post hands over to the wall, without load factors.
#[derive(Clone, Debug, PartialEq)]
pub struct EndPostDesign {
    /// How it meets the wall; `None` until somebody has measured on site.
    pub ends: Option<Ends>,
    /// Width of barrier whose water it carries.
    pub tributary: Length,
    /// In each case.
    pub forces: Vec<EndForces>,
    /// Shear on the anchor that carries most, by tributary height; `None` where the post bears
    /// on the face of the wall, and where the kit does not say where its anchors are.
    pub greatest_anchor_shear: Option<Force>,
}

/// Forces on the jamb at one end of a barrier, without load factors.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndForces {
    /// The case.
    pub case: LoadCase,
    /// The whole force.
    pub force: Force,
    /// Height over the sill at which it acts.
    pub height: Length,
    /// The greatest force on a unit of the jamb's height.
    pub greatest: LineLoad,
    /// The greatest pressure of the post on the face of the wall; none in the reveal, where
    /// anchors carry the force.
    pub bearing: Option<Pressure>,
}

impl EndPostDesign {
    /// What an end post hands over.
    ///
    /// In the reveal, and against the wall, the water slides the post along the wall: its
    /// anchors carry shear toward the edge of the wall, each the force nearer to it than to
    /// its neighbours. On the face the water presses the post onto the wall: it bears over its
    /// width, the anchors only keep it in its place, and nothing lifts.
    pub(super) fn of(
        ends: Option<Ends>,
        post: &Post,
        tributary: Length,
        height: Length,
        loads: &[CaseLoad],
    ) -> Result<Self, DesignError> {
        let on_face = ends == Some(Ends::Mounted(Mount::Outside));
        let mut forces = Vec::new();
        let mut greatest_anchor_shear: Option<Force> = None;
        for load in loads {
            let water = load.on_barrier.resultant();
            let (pressure, _) = load.on_barrier.greatest();
            let greatest = pressure * tributary;
            forces.push(EndForces {
                case: load.case,
                force: water.force * tributary,
                height: water.height,
                greatest,
                bearing: on_face.then(|| greatest / post.width),
            });
            if on_face {
                continue;
            }
            if let Some(anchors) = post.wall_anchors {
                let bands: Vec<LoadBand> = load
                    .on_upright(tributary, height)
                    .into_iter()
                    .filter(|band| band.to > band.from)
                    .map(|band| LoadBand {
                        from: band.from,
                        to: band.to,
                        at_from: band.at_from,
                        at_to: band.at_to,
                    })
                    .collect();
                for share in tributary_shares(&anchors.heights(height), &bands)? {
                    let most = greatest_anchor_shear.unwrap_or_default();
                    greatest_anchor_shear = Some(most.max(share.shear));
                }
            }
        }
        Ok(Self {
            ends,
            tributary,
            forces,
            greatest_anchor_shear,
        })
    }
}
