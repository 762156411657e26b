//! From the evidence on one opening to its reasons.

use super::{GroundSource, Limits, Missing, Reason, Verdict};
use crate::quantity::{Elevation, IncomparableDatums, Length, Velocity};
use crate::site::{WallKind, Waves};

/// What is known about one opening and the water before it.
#[derive(Clone, Debug, PartialEq)]
pub struct Evidence {
    /// The sill; `None` where nobody has measured it.
    pub sill: Option<Elevation>,
    /// Whether the sill is an estimate from the ground: without ground there is none.
    pub needs_ground: bool,
    /// The design level, that the map has no flood there, or what is missing.
    pub design: MapStatement,
    /// Code of the zone where waves break.
    pub coastal_zone: Option<String>,
    /// The level of the river beside a place that the map puts outside the flood, and its
    /// source in words.
    pub river_beside: Option<(Elevation, &'static str)>,
    /// Whether the place lies in a regulatory floodway.
    pub floodway: bool,
    /// Waves as stated.
    pub waves: Option<Waves>,
    /// Speed of the water, as stated or as the zone gives it.
    pub velocity: Option<Velocity>,
    /// The wall around the opening.
    pub wall: Option<WallKind>,
    /// The lowest ground near the opening and who says so.
    pub lowest_ground: Option<(Elevation, GroundSource)>,
}

/// What map, study and rule together say about the water.
#[derive(Clone, Debug, PartialEq)]
pub enum MapStatement {
    /// Openings are to be kept dry up to this level.
    DesignLevel(Elevation),
    /// The assessed flood does not reach the place, by the map (the zone's code).
    NoFlood(String),
    /// No answer, because something is missing.
    Unresolved(Missing),
}

/// Weighs the evidence:
///
/// 1. without a design level or a sill the opening is unresolved, and so it is where the sill
///    lies so far from the ground of the terrain that one of the two must be wrong;
/// 2. where the map has no flood, a sill that is not below ground is above; it is unresolved
///    where the river beside the place stands higher than the sill;
/// 3. a sill at or above the design level is above;
/// 4. any other sill needs a barrier, and an engineer where a limit is passed: water on the
///    wall (from the sill; from the ground too where the ground is surveyed), waves, floodway,
///    fast water, a sill below the ground.
///
/// The reasons are those of the worst verdict first; the verdict is [`Verdict`] of the first.
///
/// # Errors
/// [`IncomparableDatums`] where sill, level and ground do not share a datum.
pub fn judge(evidence: &Evidence, limits: &Limits) -> Result<Vec<Reason>, IncomparableDatums> {
    let mut reasons = Vec::new();
    let far = far_from_ground(evidence)?;
    if let Some(far) = far {
        return Ok(vec![far]);
    }
    let below_ground = below_ground(evidence)?;
    match (&evidence.design, evidence.sill) {
        (MapStatement::Unresolved(missing), _) => reasons.push(Reason::Missing(missing.clone())),
        (MapStatement::NoFlood(zone), _) => {
            reasons.push(Reason::OutsideMappedFlood { zone: zone.clone() });
            reasons.extend(river_above(evidence)?);
            reasons.extend(below_ground);
        }
        (MapStatement::DesignLevel(_), None) => {
            reasons.push(Reason::Missing(if evidence.needs_ground {
                Missing::GroundUnderSill
            } else {
                Missing::Sill
            }));
        }
        (MapStatement::DesignLevel(level), Some(sill)) => {
            let by = level.above(sill)?;
            if by.value <= ROUNDING_METRES {
                reasons.push(Reason::SillAtOrAbove {
                    by: (-by).max(Length::default()),
                });
            } else {
                reasons.push(Reason::SillBelow { by });
                reasons.extend(over_wall_limit(evidence, *level, by, limits)?);
                reasons.extend(water_reasons(evidence, limits));
                reasons.extend(below_ground);
            }
        }
    }
    Reason::weightiest_first(&mut reasons);
    Ok(reasons)
}

/// A sill and a level that were stated as the same height in two units differ in the last
/// binary digits; a micrometre is not a difference.
const ROUNDING_METRES: f64 = 1e-6;

/// The map says that the flood stays away, and the river beside the place stands higher than
/// the sill: one of the two is wrong.
fn river_above(evidence: &Evidence) -> Result<Option<Reason>, IncomparableDatums> {
    let (Some((level, source)), Some(sill)) = (evidence.river_beside, evidence.sill) else {
        return Ok(None);
    };
    let by = level.above(sill)?;
    Ok(
        (by.value > ROUNDING_METRES).then_some(Reason::Missing(Missing::RiverAbove {
            level,
            source,
            by,
        })),
    )
}

/// Farther than this from the ground no sill lies, metres: a judgement, no source. The same
/// holds for a barrier alone.
const FARTHEST_METRES: f64 = 30.0;

/// A sill far from the ground of the terrain: nothing that follows from it is of use.
fn far_from_ground(evidence: &Evidence) -> Result<Option<Reason>, IncomparableDatums> {
    let (Some((ground, GroundSource::Terrain)), Some(sill)) =
        (evidence.lowest_ground, evidence.sill)
    else {
        return Ok(None);
    };
    let by = sill.above(ground)?;
    let far = by.abs().value > FARTHEST_METRES;
    Ok(far.then_some(Reason::Missing(Missing::FarFromGround { by })))
}

fn below_ground(evidence: &Evidence) -> Result<Option<Reason>, IncomparableDatums> {
    let (Some((ground, source)), Some(sill)) = (evidence.lowest_ground, evidence.sill) else {
        return Ok(None);
    };
    let by = ground.above(sill)?;
    Ok((by.value > ROUNDING_METRES).then_some(Reason::BelowGround { by, ground: source }))
}

/// The wall's limit, on the water above the sill and, where the ground is surveyed, on the
/// water above the ground: the wall below the sill stands in it too. Ground from a terrain
/// model is not at the wall, so it makes a caution, not a verdict.
fn over_wall_limit(
    evidence: &Evidence,
    level: Elevation,
    above_sill: Length,
    limits: &Limits,
) -> Result<Option<Reason>, IncomparableDatums> {
    let limit = limits.wall(evidence.wall);
    let Some(depth) = limit.depth else {
        return Ok(evidence.wall.map(|wall| Reason::NoWallLimit { wall }));
    };
    let over = |water: Length, above_ground| {
        (water.value > depth.value + ROUNDING_METRES).then_some(Reason::OverWallLimit {
            wall: evidence.wall,
            water,
            limit: depth,
            above_ground,
        })
    };
    let from_sill = over(above_sill, false);
    match evidence.lowest_ground {
        Some((ground, GroundSource::Surveyed)) if from_sill.is_none() => {
            Ok(over(level.above(ground)?, true))
        }
        _ => Ok(from_sill),
    }
}

fn water_reasons(evidence: &Evidence, limits: &Limits) -> Vec<Reason> {
    let mut reasons = Vec::new();
    if let Some(zone) = &evidence.coastal_zone {
        reasons.push(Reason::CoastalWaves { zone: zone.clone() });
    }
    if matches!(evidence.waves, Some(Waves::Breaking | Waves::NonBreaking)) {
        reasons.push(Reason::StatedWaves);
    }
    if evidence.floodway {
        reasons.push(Reason::Floodway);
    }
    if let Some(velocity) = evidence
        .velocity
        .filter(|velocity| *velocity > limits.velocity)
    {
        reasons.push(Reason::FastWater {
            velocity,
            limit: limits.velocity,
        });
    }
    reasons
}

/// Weighs a barrier alone, for water that the user states: the wall's limit, on the water above
/// the sill and above the ground where that is stated, waves and fast water. The reasons are in
/// the order of [`judge`]'s.
#[must_use]
pub fn judge_stated(
    above_sill: Length,
    above_ground: Option<Length>,
    wall: Option<WallKind>,
    velocity: Option<Velocity>,
    waves: Option<Waves>,
    limits: &Limits,
) -> Vec<Reason> {
    let evidence = Evidence {
        sill: None,
        needs_ground: false,
        design: MapStatement::NoFlood(String::new()),
        coastal_zone: None,
        river_beside: None,
        floodway: false,
        waves,
        velocity,
        wall,
        lowest_ground: None,
    };
    let mut reasons = vec![Reason::SillBelow { by: above_sill }];
    let limit = limits.wall(wall);
    match (limit.depth, wall) {
        (Some(depth), _) => {
            let from_sill = (above_sill, false);
            let from_ground = above_ground.map(|water| (water, true));
            let over = std::iter::once(from_sill)
                .chain(from_ground)
                .find(|(water, _)| water.value > depth.value + ROUNDING_METRES);
            reasons.extend(over.map(|(water, above_ground)| Reason::OverWallLimit {
                wall,
                water,
                limit: depth,
                above_ground,
            }));
        }
        (None, Some(wall)) => reasons.push(Reason::NoWallLimit { wall }),
        (None, None) => {}
    }
    reasons.extend(water_reasons(&evidence, limits));
    Reason::weightiest_first(&mut reasons);
    reasons
}

impl Verdict {
    /// The worst verdict that the reasons ask for.
    #[must_use]
    pub fn of(reasons: &[Reason]) -> Self {
        reasons
            .iter()
            .map(Reason::verdict)
            .max()
            .unwrap_or(Self::Unresolved)
    }
}
