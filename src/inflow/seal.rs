//! Leakage through seals that touch, at the rate their maker states.

use super::{Finding, InflowPart, Missing, NotCounted, Reason, Way};
use crate::quantity::unit::FlowPerLength;
use crate::quantity::{Impossible, Length, not_negative, positive};
use crate::statement::Citation;

/// A maker's statement on leakage.
#[derive(Clone, Debug, PartialEq)]
pub struct StatedLeakage {
    /// Flow through each metre of wetted seal.
    pub rate: FlowPerLength,
    /// Depth of the water in the test; the statement covers no deeper water.
    pub tested_depth: Option<Length>,
    /// Whether the metres of the statement count the joints between planks too.
    pub counts_plank_joints: bool,
    /// Where it is stated.
    pub citation: Citation,
}

/// The seal of one opening and the water before it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WettedSeal {
    /// Width of the opening: the length of the seal on the sill.
    pub width: Length,
    /// Height of the barrier above the sill: no seal stands higher.
    pub height: Length,
    /// Depth of the water above the sill.
    pub depth: Length,
    /// Height that one plank adds, where there are planks.
    pub plank_cover: Option<Length>,
}

/// A joint at the water's surface, to a micrometre, is not wet, and water as deep as the
/// maker's to a micrometre is covered.
const SURFACE_METRES: f64 = 1e-6;

impl WettedSeal {
    /// Length of the wetted perimeter: the sill and both sides up to the water,
    /// width + 2 × depth, and no higher than the barrier. Without water, none.
    #[must_use]
    pub fn perimeter(&self) -> Length {
        let wet = self.wet_height();
        if wet.value > 0.0 {
            self.width + wet * 2.0
        } else {
            Length::default()
        }
    }

    /// Length of the joints between planks below the water; `None` where the height of a
    /// plank is not stated.
    #[must_use]
    pub fn joints(&self) -> Option<Length> {
        let cover = self.plank_cover?;
        let planks = ((self.wet_height().value - SURFACE_METRES) / cover.value).ceil();
        Some(self.width * (planks - 1.0).max(0.0))
    }

    fn wet_height(&self) -> Length {
        self.depth.min(self.height)
    }
}

/// The leakage of one opening, Q = q·(b + 2·h), with q the maker's rate for each metre of
/// wetted seal, b the width and h the depth of water; joints between planks are added only
/// where the maker's metres count them.
///
/// There is no rate by default, and none for water deeper than the maker tested: both are
/// given as the reason why the leakage is not counted. Where the maker states no depth, the
/// rate is used and the gap in the statement is listed.
///
/// # Errors
/// [`Impossible`] for a length or rate that cannot be.
///
/// ```
/// use sillmark::inflow::{Finding, StatedLeakage, WettedSeal, seal_leakage};
/// use sillmark::quantity::unit::{Length, liter_per_second, litres_per_hour_per_metre, meter};
/// use sillmark::statement::{Citation, Confidence};
/// let metres = Length::new::<meter>;
/// let door = WettedSeal {
///     width: metres(1.0), height: metres(0.8), depth: metres(0.5), plank_cover: None,
/// };
/// let stated = StatedLeakage {
///     rate: litres_per_hour_per_metre(1.8),
///     tested_depth: Some(metres(0.6)),
///     counts_plank_joints: false,
///     citation: Citation { source: "maker's sheet 3".into(), confidence: Confidence::Stated },
/// };
/// let Finding::Counted(part) = seal_leakage(&door, Some(&stated))? else { panic!() };
/// assert!((part.flow.get::<liter_per_second>() - 0.001).abs() < 1e-12); // 2 m of seal
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn seal_leakage(
    seal: &WettedSeal,
    stated: Option<&StatedLeakage>,
) -> Result<Finding, Impossible> {
    check(seal)?;
    let not_counted = |reason| {
        Ok(Finding::NotCounted(NotCounted {
            way: Way::Seal,
            reason,
        }))
    };
    let Some(stated) = stated else {
        return not_counted(Reason::NotStated(Missing::LeakageRate));
    };
    not_negative("leakage for each metre of seal", stated.rate.value, "m²/s")?;
    let mut not_stated = Vec::new();
    match stated.tested_depth {
        Some(tested_depth) => {
            positive("depth of the leakage test", tested_depth.value, "m")?;
            if seal.depth.value > tested_depth.value + SURFACE_METRES {
                return not_counted(Reason::NotCovered {
                    depth: seal.depth,
                    tested_depth,
                });
            }
        }
        None => not_stated.push(Missing::TestedDepth),
    }
    let mut length = seal.perimeter();
    if stated.counts_plank_joints {
        match seal.joints() {
            Some(joints) => length += joints,
            None => return not_counted(Reason::NotStated(Missing::PlankCover)),
        }
    }
    let part = InflowPart {
        way: Way::Seal,
        flow: stated.rate * length,
        method: if stated.counts_plank_joints {
            "Q = q·(b + 2·h + wetted joints between planks)"
        } else {
            "Q = q·(b + 2·h)"
        },
        citation: stated.citation.clone(),
        not_stated,
    };
    part.checked().map(Finding::Counted)
}

fn check(seal: &WettedSeal) -> Result<(), Impossible> {
    positive("width of the opening", seal.width.value, "m")?;
    positive("height of the barrier", seal.height.value, "m")?;
    not_negative("water depth", seal.depth.value, "m")?;
    seal.plank_cover.map_or(Ok(()), |cover| {
        positive("height of a plank", cover.value, "m")
    })
}
