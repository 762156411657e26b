//! A place: where it is, its zone, its ground, its levels.

use schemars::JsonSchema;
use serde::Serialize;

use super::flood_level::JsonFloodLevel;
use super::number::metres;
use crate::assess::{GroundAnswer, Place, ZoneHere};

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonSite {
    pub(super) name: String,
    /// Degrees east, WGS 84.
    pub(super) longitude: f64,
    /// Degrees north, WGS 84.
    pub(super) latitude: f64,
    /// Null where it is estimated from the ground and no ground is known.
    pub(super) threshold_m: Option<f64>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonZone {
    /// As the layer writes it.
    pub(super) code: String,
    pub(super) subtype: Option<String>,
    pub(super) layer: String,
    pub(super) feature: String,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonDesignLevel {
    pub(super) value_m: f64,
    /// Design level less flood level; null where the flood does not reach the place.
    pub(super) freeboard_m: Option<f64>,
    /// Id of the freeboard rule.
    pub(super) rule: String,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonPlace {
    pub(super) longitude: f64,
    pub(super) latitude: f64,
    pub(super) zone: Option<JsonZone>,
    pub(super) ground_m: Option<f64>,
    pub(super) flood_level: Option<JsonFloodLevel>,
    pub(super) design_level: Option<JsonDesignLevel>,
}

impl JsonPlace {
    pub(super) fn new(place: &Place<'_>, rule: &str) -> Self {
        Self {
            longitude: place.location.longitude(),
            latitude: place.location.latitude(),
            zone: place.zone.as_ref().map(JsonZone::new),
            ground_m: match &place.ground {
                GroundAnswer::Known(ground) => Some(metres(ground.elevation.height())),
                GroundAnswer::Gap(_) | GroundAnswer::NotAsked => None,
            },
            flood_level: place
                .flood_level
                .as_ref()
                .map(|level| JsonFloodLevel::new(level, place)),
            design_level: place.design_level.as_ref().map(|design| JsonDesignLevel {
                value_m: metres(design.elevation.height()),
                freeboard_m: design.freeboard.map(metres),
                rule: rule.to_owned(),
            }),
        }
    }
}

impl JsonZone {
    pub(super) fn new(here: &ZoneHere<'_>) -> Self {
        let zone = &here.worst;
        Self {
            code: zone.code.clone(),
            subtype: zone.subtype.clone(),
            layer: zone.layer.clone(),
            feature: zone.feature.clone(),
        }
    }
}
