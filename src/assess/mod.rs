//! The spine: one building in, one assessment out.
//!
//! [`assess`] is the only place where the chain is put together. For the site, and for each
//! opening that stands elsewhere, it
//!
//! 1. asks the zone maps which zones hold the place, the worst first;
//! 2. asks the terrain for the ground there and around;
//! 3. asks every source for the flood level and ranks them ([`crate::level`]);
//! 4. applies the freeboard rule ([`crate::design`]);
//!
//! and for each opening it
//!
//! 5. takes the depth and the protection height from the sill;
//! 6. counts whole planks and designs the barrier: loads, spans, posts, anchors, leakage
//!    ([`crate::barrier`], [`crate::load`]);
//! 7. weighs the evidence ([`crate::verdict`]).
//!
//! Last, all barriers of the building together ask something of a pump and of people.
//!
//! Every figure leaves a [`Step`] in the trail.

mod alone;
mod assessment;
mod barrier;
mod barrier_trail;
mod behind;
mod cautions;
mod chances;
mod error;
mod freeboard;
mod ground;
mod maps_read;
mod opening;
mod place;
mod readings;
mod study;
mod trail;
mod uncertainty;
mod water;
mod zones;

pub use alone::{BarrierAssessment, BarrierMethod, assess_barrier};
pub use assessment::{Assessment, OpeningAssessment};
pub use chances::YearlyChance;
pub use error::{AssessError, OtherDatum};
pub use maps_read::MapRead;
pub use place::{GroundAnswer, LowestGround, Place, ZoneHere};
pub use readings::{Asked, Readings, SillAsked, read_place};
pub(crate) use trail::percent;
pub use trail::{Step, Trail, Value};
pub use uncertainty::Uncertainty;

use study::{Spot, Study};

use crate::barrier::{DesignRules, Kit};
use crate::crs::Datums;
use crate::design::Rule;
use crate::hazard::ZoneMap;
use crate::level::LevelMaps;
use crate::quantity::{AnnualChance, Length, UnitSystem};
use crate::site::Site;
use crate::terrain::Terrain;
use crate::verdict::{Limits, Verdict};

/// The maps that the answer is read from.
pub struct Sources {
    /// Flood-zone layers.
    pub zones: Vec<ZoneMap>,
    /// Rasters, cross-sections and lines that state levels.
    pub levels: LevelMaps,
    /// Terrain models, possibly none.
    pub terrain: Terrain,
    /// What puts heights of one vertical datum on another.
    pub datums: Datums,
}

/// How the answer is worked out.
#[derive(Clone, Debug)]
pub struct Method {
    /// The freeboard rule.
    pub rule: Rule,
    /// The barrier system.
    pub kit: Kit,
    /// How a barrier is designed; its zone is that of each place.
    pub rules: DesignRules,
    /// What walls and barriers take.
    pub limits: Limits,
    /// The assessed event.
    pub event: AnnualChance,
    /// How far around a place the terrain is searched for the ground against the walls.
    pub grade_radius: Length,
    /// How well heights are known.
    pub uncertainty: Uncertainty,
    /// Over how many years chances are shown.
    pub years: u32,
    /// The units of sentences; figures carry their own.
    pub units: UnitSystem,
    /// How much is told beside the figures.
    pub detail: Detail,
}

/// How much an assessment tells beside its figures, verdicts and reasons.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Detail {
    /// Everything: the trail, all sources of the level, all cautions.
    Full,
    /// Cautions about the case alone, no trail, no chance over the top of a barrier, and the
    /// slowest source of a level only where no other has one: for many buildings.
    Figures,
}

/// Assesses one building.
///
/// What is missing or refused makes an opening unresolved with the reason; an error is what
/// the user has to mend first.
///
/// # Errors
/// [`AssessError`] where the levels or the terrain stand on another datum than the threshold,
/// or a source cannot be read.
pub fn assess<'a>(
    site: &'a Site,
    sources: &'a Sources,
    method: &'a Method,
) -> Result<Assessment<'a>, AssessError> {
    let asked = Asked {
        location: site.location,
        outline: site.footprint.as_ref(),
        sill: None,
    };
    let readings = read_place(asked, sources, method)?;
    assess_read(site, readings, sources, method)
}

/// Assesses one building whose place was read before by [`read_place`]; [`assess`] does both.
///
/// # Errors
/// As [`assess`].
pub fn assess_read<'a>(
    site: &'a Site,
    readings: Readings<'a>,
    sources: &'a Sources,
    method: &'a Method,
) -> Result<Assessment<'a>, AssessError> {
    let mut study = Study {
        site,
        sources,
        method,
        trail: match method.detail {
            Detail::Full => Trail::default(),
            Detail::Figures => Trail::unread(),
        },
        threshold: None,
    };
    let spot = Spot {
        location: site.location,
        whose: "",
    };
    let place = study.conclude(spot, readings)?;
    study.threshold = site.threshold.elevation(place.ground.elevation());
    // An answer is large: gathered in a loop it is not copied from hand to hand.
    let mut openings = Vec::with_capacity(site.openings.len());
    for opening in &site.openings {
        openings.push(study.opening(opening, &place)?);
    }
    let behind = study.behind(&mut openings)?;
    let verdict = openings
        .iter()
        .map(|opening| opening.verdict)
        .max()
        .unwrap_or(Verdict::Unresolved);
    let cautions = cautions::gather(site, &place, &openings, method);
    let maps = match method.detail {
        Detail::Full => sources.maps_read(),
        Detail::Figures => Vec::new(),
    };
    Ok(Assessment {
        site,
        threshold: study.threshold,
        place,
        openings,
        verdict,
        behind,
        cautions,
        maps,
        trail: study.trail,
        method,
    })
}
