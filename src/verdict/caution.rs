//! What a reader has to know beside the figures.

use std::collections::BTreeMap;

use super::GroundSource;
use crate::quantity::unit::Time;
use crate::quantity::{Elevation, Length, Pressure, UnitSystem, duration};
use crate::statement::{Citation, Document, StatementError};

/// A caution, with the figures of the case where it has some.
///
/// The sentences stand in `data/cautions.toml`, by [`Caution::code`].
#[derive(Clone, Debug, PartialEq)]
pub enum Caution {
    /// Dry floodproofing does not make a dwelling compliant.
    ResidentialCompliance,
    /// The use of the building is not stated.
    OccupancyNotStated,
    /// Coastal high-hazard zone: the level includes the wave crest.
    CoastalZone,
    /// The regulatory floodway.
    Floodway,
    /// A level is known and the zone is not: what the zone says of waves and flow is missing.
    ZoneUnknown {
        /// Why.
        why: String,
    },
    /// No freeboard was asked for.
    NoFreeboard,
    /// The rule names a level that may exist, and nobody stated it.
    LevelNotCompared {
        /// Which level.
        level: String,
    },
    /// The map puts the place outside the assessed flood.
    OutsideMappedFlood {
        /// The zone in words.
        zone: String,
    },
    /// More than one zone holds the place.
    ZonesOverlap {
        /// The zone that was taken.
        taken: String,
        /// The others.
        others: Vec<String>,
    },
    /// The place lies on the edge of a zone.
    ZoneEdge,
    /// Something odd about the zone's feature.
    ZoneRemark {
        /// What.
        remark: String,
    },
    /// The ground lies above the flood level although the zone is flooded.
    GroundAboveLevel {
        /// The ground.
        ground: Elevation,
        /// The flood level.
        level: Elevation,
    },
    /// No ground is known: what depends on it was not checked.
    GroundUnknown {
        /// Why.
        why: String,
    },
    /// Cells without a value next to the place.
    TerrainVoidNear {
        /// The terrain file.
        source: String,
    },
    /// The place lies in the outermost half cell of the terrain.
    TerrainRim {
        /// The terrain file.
        source: String,
    },
    /// The wall below the sill stands in more water than such a wall takes.
    WallBelowSill(WallWater),
    /// The wall around an opening is not stated.
    WallNotStated {
        /// The openings; none for a barrier alone.
        openings: Vec<String>,
    },
    /// Sources of the flood level differ by more than their uncertainty.
    LevelsDisagree {
        /// The source that decided.
        decided_by: &'static str,
        /// Its level.
        decided: Elevation,
        /// The source that differs most.
        other_source: &'static str,
        /// Its level.
        other: Elevation,
        /// By how much they differ.
        difference: Length,
    },
    /// Something to know of how a level was read.
    LevelRemark {
        /// What.
        remark: String,
    },
    /// How well the level is known is not stated.
    LevelUncertaintyUnknown,
    /// What the stated uncertainty covers.
    LevelUncertainty,
    /// The kit is the invented one.
    DemonstrationKit,
    /// What the force and the moment at the sill are of.
    StillWater,
    /// Water under the floor lifts it.
    UpliftUnderFloor {
        /// Depth of water over the lowest sill.
        depth: Length,
        /// Pressure that it makes at that height.
        pressure: Pressure,
    },
    /// The warning is shorter than the rule for closures that people fit asks for.
    ShortWarning {
        /// The warning.
        warning: Time,
    },
    /// The threshold is estimated from the ground of the terrain model.
    ThresholdEstimated,
    /// Depth and height were typed, not found.
    StatedDepth,
    /// Survey the sill.
    SurveySill,
    /// Short floods only.
    ShortDuration,
    /// A map is not a forecast.
    MapNotForecast,
    /// Local code and a licensed engineer decide.
    LocalCode,
}

/// Water against the wall below a sill.
#[derive(Clone, Debug, PartialEq)]
pub struct WallWater {
    /// The openings that it holds for.
    pub openings: Vec<String>,
    /// Depth from the ground to the design level.
    pub water: Length,
    /// What the wall takes.
    pub limit: Length,
    /// Who says where the ground is.
    pub ground: GroundSource,
}

/// Names in quotes.
fn quoted(names: &[String]) -> String {
    let quoted: Vec<String> = names.iter().map(|name| format!("\"{name}\"")).collect();
    quoted.join(", ")
}

/// The sentences and references of all cautions.
#[derive(Clone, Debug, PartialEq)]
pub struct CautionTexts {
    texts: BTreeMap<String, (String, Citation)>,
}

const CAUTIONS: &str = include_str!("../../data/cautions.toml");

impl Caution {
    /// The openings that it is about; none where it is about the site.
    #[must_use]
    pub fn openings(&self) -> &[String] {
        match self {
            Self::WallBelowSill(wall) => &wall.openings,
            Self::WallNotStated { openings } => openings,
            _ => &[],
        }
    }

    /// Its code, stable over versions.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::ResidentialCompliance => "residential-compliance",
            Self::OccupancyNotStated => "occupancy-not-stated",
            Self::CoastalZone => "coastal-zone",
            Self::Floodway => "floodway",
            Self::ZoneUnknown { .. } => "zone-unknown",
            Self::NoFreeboard => "no-freeboard",
            Self::LevelNotCompared { .. } => "level-not-compared",
            Self::OutsideMappedFlood { .. } => "outside-mapped-flood",
            Self::ZonesOverlap { .. } => "zones-overlap",
            Self::ZoneEdge => "zone-edge",
            Self::ZoneRemark { .. } => "zone-remark",
            Self::GroundAboveLevel { .. } => "ground-above-level",
            Self::GroundUnknown { .. } => "ground-unknown",
            Self::TerrainVoidNear { .. } => "terrain-void-near",
            Self::TerrainRim { .. } => "terrain-rim",
            Self::WallBelowSill(_) => "wall-below-sill",
            Self::WallNotStated { .. } => "wall-not-stated",
            Self::LevelsDisagree { .. } => "levels-disagree",
            Self::LevelRemark { .. } => "level-remark",
            Self::LevelUncertaintyUnknown => "level-uncertainty-unknown",
            Self::LevelUncertainty => "level-uncertainty",
            Self::DemonstrationKit => "demonstration-kit",
            Self::StillWater => "still-water",
            Self::UpliftUnderFloor { .. } => "uplift-under-floor",
            Self::ShortWarning { .. } => "short-warning",
            Self::ThresholdEstimated => "threshold-estimated",
            Self::StatedDepth => "stated-depth",
            Self::SurveySill => "survey-sill",
            Self::ShortDuration => "short-duration",
            Self::MapNotForecast => "map-not-forecast",
            Self::LocalCode => "local-code",
        }
    }

    /// The figures of the case, as a phrase to stand behind the sentence.
    #[must_use]
    pub fn detail(&self, units: UnitSystem) -> Option<String> {
        Some(match self {
            Self::LevelNotCompared { level } => format!("not stated: {level}"),
            Self::OutsideMappedFlood { zone } => format!("the map says: {zone}"),
            Self::ZonesOverlap { taken, others } => {
                format!("taken: {taken}; also here: {}", others.join(", "))
            }
            Self::ZoneRemark { remark } | Self::LevelRemark { remark } => remark.clone(),
            Self::GroundAboveLevel { ground, level } => {
                format!(
                    "ground {}, flood level {}",
                    units.elevation(*ground),
                    units.elevation(*level)
                )
            }
            Self::GroundUnknown { why } | Self::ZoneUnknown { why } => why.clone(),
            Self::TerrainVoidNear { source } | Self::TerrainRim { source } => {
                format!("in {source}")
            }
            Self::WallBelowSill(wall) => format!(
                "{}: {} of water above the lowest ground{}, limit {}",
                quoted(&wall.openings),
                units.height(wall.water),
                match wall.ground {
                    GroundSource::Surveyed => "",
                    GroundSource::Terrain => " in the terrain model",
                },
                units.height(wall.limit),
            ),
            Self::WallNotStated { openings } if openings.is_empty() => return None,
            Self::WallNotStated { openings } => quoted(openings),
            Self::UpliftUnderFloor { depth, pressure } => format!(
                "at the lowest sill, {} below the design level: {}",
                units.height(*depth),
                units.pressure(*pressure)
            ),
            Self::ShortWarning { warning } => format!("stated: {}", duration(*warning)),
            Self::LevelsDisagree {
                decided_by,
                decided,
                other_source,
                other,
                difference,
            } => format!(
                "{decided_by} {}, {other_source} {}; they differ by {}",
                units.elevation(*decided),
                units.elevation(*other),
                units.height(*difference),
            ),
            _ => return None,
        })
    }
}

impl CautionTexts {
    /// The texts that ship with the project.
    ///
    /// # Errors
    /// [`StatementError`] if our own data file is broken; a test reads it.
    pub fn shipped() -> Result<Self, StatementError> {
        let document = Document::parse("data/cautions.toml", CAUTIONS)?;
        document.root().allow(&["caution"])?;
        let mut texts = BTreeMap::new();
        for table in document.root().tables("caution")? {
            table.allow(&["code", "text", "source", "confidence"])?;
            let code = table.required("code", "a code")?.name()?;
            let text = table.required("text", "a sentence")?.name()?;
            texts.insert(code, (text, Citation::read(&table)?));
        }
        Ok(Self { texts })
    }

    /// The sentence of a caution with its figures.
    #[must_use]
    pub fn text(&self, caution: &Caution, units: UnitSystem) -> String {
        let sentence = self
            .texts
            .get(caution.code())
            .map_or_else(|| caution.code(), |(text, _)| text);
        match caution.detail(units) {
            Some(detail) => format!("{sentence} ({detail})"),
            None => sentence.to_owned(),
        }
    }

    /// Where a caution stands; empty for one that is ours.
    #[must_use]
    pub fn reference(&self, caution: &Caution) -> String {
        self.texts
            .get(caution.code())
            .map(|(_, citation)| citation.to_string())
            .unwrap_or_default()
    }

    /// Codes, sentences and references, by code.
    pub fn all(&self) -> impl Iterator<Item = (&str, &str, &Citation)> {
        self.texts
            .iter()
            .map(|(code, (text, citation))| (code.as_str(), text.as_str(), citation))
    }
}
