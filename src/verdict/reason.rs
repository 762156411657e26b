//! Why an opening has its verdict.

use std::fmt::Write as _;

use crate::barrier::{BehindBarriers, InTime, Shortfall};
use crate::design::Base;
use crate::quantity::unit::Time;
use crate::quantity::{AnnualChance, Elevation, Length, UnitSystem, Velocity, duration};
use crate::site::WallKind;
use crate::statement::Choice;

/// One reason, with the figures it rests on.
#[derive(Clone, Debug, PartialEq)]
pub enum Reason {
    /// The sill lies at or above the design level.
    SillAtOrAbove {
        /// How far above.
        by: Length,
    },
    /// The map has no flood of the assessed event there.
    OutsideMappedFlood {
        /// The zone's code.
        zone: String,
    },
    /// The sill lies below the design level.
    SillBelow {
        /// How far below.
        by: Length,
    },
    /// More water would stand on the wall than it takes without a design.
    OverWallLimit {
        /// The wall, where it is stated.
        wall: Option<WallKind>,
        /// Water up to the design level.
        water: Length,
        /// What the wall takes.
        limit: Length,
        /// Where the water is measured from: the sill or surveyed ground.
        above_ground: bool,
    },
    /// Nobody knows what the wall takes.
    NoWallLimit {
        /// The wall.
        wall: WallKind,
    },
    /// Breaking waves: the map's coastal high-hazard zone.
    CoastalWaves {
        /// The zone's code.
        zone: String,
    },
    /// Waves that the user states.
    StatedWaves,
    /// The regulatory floodway: deep and fast water, and debris in it.
    Floodway,
    /// The water is faster than a barrier without a design stands.
    FastWater {
        /// Its speed.
        velocity: Velocity,
        /// The limit.
        limit: Velocity,
    },
    /// The sill lies below the lowest ground near it.
    BelowGround {
        /// How far below.
        by: Length,
        /// Who says where the ground is.
        ground: GroundSource,
    },
    /// No barrier of the kit is an answer by itself.
    Barrier(Shortfall),
    /// The barriers are not up before the water comes.
    NotInTime {
        /// How long the fitting of all of them takes.
        takes: Time,
        /// Time between the warning and the water.
        warning: Time,
    },
    /// Something that is needed is not known.
    Missing(Missing),
}

/// Where the height of the ground comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GroundSource {
    /// Stated as the lowest adjacent grade.
    Surveyed,
    /// Read from the terrain model.
    Terrain,
}

/// What an unresolved answer lacks.
#[derive(Clone, Debug, PartialEq)]
pub enum Missing {
    /// Nobody has measured the sill.
    Sill,
    /// The sill is an estimate from the ground, and no ground is known.
    GroundUnderSill,
    /// The sill lies so far from the ground of the terrain that one of the two is wrong.
    FarFromGround {
        /// How far: above the ground, or negative below it.
        by: Length,
    },
    /// No flood-zone layer was given and no level stated.
    Zones {
        /// What the sources say that were asked.
        why: Vec<String>,
    },
    /// No polygon of any layer holds the place.
    ZoneHere,
    /// The place is not studied, not included, or its code is not known.
    KnownZone {
        /// The zone's code.
        zone: String,
    },
    /// The zone's only safety is a levee.
    LeveeLevel {
        /// The zone's code.
        zone: String,
    },
    /// The map says there is water of the assessed event, and not how high.
    LevelInZone {
        /// The zone's code.
        zone: String,
        /// What was refused, or what would give a level.
        why: String,
    },
    /// The map puts the place outside the flood, and the river beside it stands above the sill.
    RiverAbove {
        /// The level beside the place.
        level: Elevation,
        /// Its source in words.
        source: &'static str,
        /// How far above the sill.
        by: Length,
    },
    /// The assessed flood is rarer than those that the map rules out for the zone.
    LevelOfEvent {
        /// The assessed flood.
        event: AnnualChance,
        /// The zone's code.
        zone: String,
        /// Why there is no level.
        why: String,
    },
    /// A sheet-flow zone: its level is counted from the highest adjacent grade.
    HighestGrade {
        /// The zone's code.
        zone: String,
    },
    /// The rule also needs a level that nobody stated.
    RuleLevel {
        /// Which.
        base: Base,
        /// The design level is not lower than this.
        at_least: Option<Elevation>,
    },
    /// The rule depends on the use of the building.
    Occupancy,
}

impl Reason {
    /// Puts the weightiest first; those of one weight keep their order.
    pub fn weightiest_first(reasons: &mut [Self]) {
        reasons.sort_by_key(|reason| std::cmp::Reverse(reason.verdict()));
    }

    /// That all barriers together are not up within the stated warning, if they are not.
    #[must_use]
    pub fn not_in_time(behind: &BehindBarriers, warning: Option<Time>) -> Option<Self> {
        match (behind.in_time, behind.fitting_time, warning) {
            (InTime::TooShort { .. }, Some(takes), Some(warning)) => {
                Some(Self::NotInTime { takes, warning })
            }
            _ => None,
        }
    }

    /// The reason as a sentence without its full stop.
    #[must_use]
    pub fn text(&self, units: UnitSystem) -> String {
        let mut text = String::new();
        self.push_text(&mut text, units);
        text
    }

    /// Appends [`text`](Self::text) to another.
    pub fn push_text(&self, text: &mut String, units: UnitSystem) {
        // A string takes everything.
        let _ = self.write(text, units);
    }

    fn write(&self, text: &mut String, units: UnitSystem) -> std::fmt::Result {
        match self {
            Self::SillAtOrAbove { by } if units.rounds_to_nothing(*by) => text.write_str("the sill lies at the design level"),
            Self::SillAtOrAbove { by } => write!(text, "the sill lies {} above the design level", units.shown_height(*by)),
            Self::OutsideMappedFlood { zone } => {
                write!(text, "the map puts the place outside the assessed flood (zone {zone}) and gives no level to compare with")
            }
            Self::SillBelow { by } if units.rounds_to_nothing(*by) => write!(text, "the sill lies less than {} below the design level", units.shown_height(units.smallest_height())),
            Self::SillBelow { by } => write!(text, "the sill lies {} below the design level", units.shown_height(*by)),
            Self::OverWallLimit { wall, water, limit, above_ground } => {
                write!(
                    text,
                    "{} of water above {} is more than the {} that ",
                    units.shown_height(*water),
                    if *above_ground { "the lowest adjacent grade" } else { "the sill" },
                    units.shown_height(*limit),
                )?;
                match wall {
                    Some(wall) => write!(text, "the wall ({})", wall.word())?,
                    None => text.push_str("a wall of ordinary masonry (the wall is not stated)"),
                }
                text.write_str(" takes without a licensed design")
            }
            Self::NoWallLimit { wall } => write!(text, "no depth is known that such a wall ({}) takes without a licensed design", wall.word()),
            Self::CoastalWaves { zone } => write!(text, "breaking waves: zone {zone} is a coastal high-hazard area"),
            Self::StatedWaves => text.write_str("waves are stated, and wave loads need a licensed design"),
            Self::Floodway => text.write_str("the place lies in the regulatory floodway: fast water and debris need a licensed design"),
            Self::FastWater { velocity, limit } => write!(
                text,
                "water at {} is faster than the {} limit for a barrier without a licensed design",
                units.velocity(*velocity),
                units.velocity(*limit),
            ),
            Self::BelowGround { by, ground } => write!(
                text,
                "the sill lies {} below the lowest ground near it{}: soil and groundwater press as well",
                units.shown_height(*by),
                match ground {
                    GroundSource::Surveyed => "",
                    GroundSource::Terrain => " in the terrain model",
                },
            ),
            Self::Barrier(shortfall) => text.write_str(&shortfall.text(units)),
            Self::NotInTime { takes, warning } => write!(
                text,
                "putting up the barriers takes {}, the warning is {}: they are not up before the water",
                duration(*takes),
                duration(*warning),
            ),
            Self::Missing(missing) => text.write_str(&missing.text(units)),
        }
    }
}

impl Missing {
    fn text(&self, units: UnitSystem) -> String {
        match self {
            Self::Sill => "unresolved, because the sill has not been measured".to_owned(),
            Self::GroundUnderSill => "unresolved, because the sill is estimated as a height above the ground, and no ground is known there".to_owned(),
            Self::FarFromGround { by } => format!(
                "unresolved, because the sill lies {} {} the ground of the terrain near it: is its unit, its datum or its place wrong?",
                units.height(by.abs()),
                if by.value < 0.0 { "below" } else { "above" },
            ),
            Self::Zones { why } => {
                let known = "unresolved, because no flood zones were given and no other source has a level".to_owned();
                [known].into_iter().chain(why.iter().cloned()).collect::<Vec<_>>().join("; ")
            }
            Self::ZoneHere => "unresolved, because no polygon of the flood zones holds the place; that is not the same as dry".to_owned(),
            Self::KnownZone { zone } => {
                format!("unresolved, because zone \"{zone}\" says that the flood hazard is not known there; that is not the same as dry")
            }
            Self::LeveeLevel { zone } => {
                format!("unresolved, because zone {zone} relies on a levee and states no level for the day it fails")
            }
            Self::LevelInZone { zone, why } => format!("unresolved, because zone {zone} is flooded and its level is not known: {why}"),
            Self::RiverAbove { level, source, by } => format!(
                "unresolved, because the map puts the place outside the flood, but the {source} beside it stand at {}, {} above the sill; \
                 have the ground between surveyed, and state the level as [[flood_level]]",
                units.elevation(*level),
                units.height(*by),
            ),
            Self::LevelOfEvent { event, zone, why } => {
                format!("unresolved, because no source has the level of the {event} annual chance flood in zone {zone}: {why}")
            }
            Self::HighestGrade { zone } => format!(
                "unresolved, because the level in zone {zone} is counted from the highest ground against the wall; state highest_adjacent_grade, or give a terrain model"
            ),
            Self::RuleLevel { base, at_least } => {
                let bound = at_least.map(|level| format!("; the design level is {} or higher", units.elevation(level)));
                format!("unresolved, because the rule also needs the {base}, which is not stated{}", bound.unwrap_or_default())
            }
            Self::Occupancy => "unresolved, because the rule depends on the use of the building; state occupancy".to_owned(),
        }
    }
}
