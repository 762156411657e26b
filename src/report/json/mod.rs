//! The assessment as JSON, schema 1: metres and newtons, with the unit in each name.
//!
//! The published JSON Schema is `data/schema/assessment-1.json`; [`json_schema`] makes it.
//! Numbers are rounded to a millionth of their unit (flows and areas to a thousandth of that),
//! so that the same input gives the same bytes on every machine.

mod alone;
mod barrier;
mod behind;
mod flood_level;
mod number;
mod opening;
mod place;
mod source;
mod trail;
pub(super) mod verdict;

pub use alone::{JsonBarrierReport, barrier_json, barrier_json_schema};
pub use barrier::JsonBarrier;
pub use behind::JsonBehind;

use schemars::JsonSchema;
use serde::Serialize;

use self::flood_level::JsonFloodLevel;
use self::number::metres;
use self::opening::JsonOpening;
use self::place::{JsonDesignLevel, JsonPlace, JsonSite, JsonZone};
use self::source::JsonSource;
use self::trail::JsonStep;
use self::verdict::{JsonCaution, JsonVerdict};
use crate::assess::Assessment;
use crate::verdict::CautionTexts;

/// One building's assessment.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(title = "sillmark assessment", deny_unknown_fields)]
pub struct JsonReport {
    /// Version of this schema.
    schema: u32,
    /// The program that wrote it.
    software: String,
    site: JsonSite,
    /// Vertical datum of every elevation here.
    datum: String,
    /// The worst zone that holds the site; null where no polygon does.
    zone: Option<JsonZone>,
    /// Ground at the site; null where it is not known.
    ground_m: Option<f64>,
    /// Standard deviation of the ground; null where it is not known.
    ground_sd_m: Option<f64>,
    /// Flood level of the assessed event; null where no source has one.
    flood_level: Option<JsonFloodLevel>,
    /// Flood level and freeboard by the rule; null where there is none.
    design_level: Option<JsonDesignLevel>,
    openings: Vec<JsonOpening>,
    /// What all barriers together ask of a pump and of people; null without a barrier.
    behind: Option<JsonBehind>,
    verdict: JsonVerdict,
    cautions: Vec<JsonCaution>,
    /// What the answer was read from: zones, rasters, lines, terrain.
    sources: Vec<JsonSource>,
    trail: Vec<JsonStep>,
}

/// The assessment as indented JSON with a line break at its end.
///
/// # Errors
/// [`serde_json::Error`], which does not happen for these types.
pub fn json(
    assessment: &Assessment<'_>,
    texts: &CautionTexts,
) -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&JsonReport::new(assessment, texts))?;
    text.push('\n');
    Ok(text)
}

/// The JSON Schema of [`JsonReport`], indented.
///
/// # Errors
/// [`serde_json::Error`], which does not happen for these types.
pub fn json_schema() -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&schemars::schema_for!(JsonReport))?;
    text.push('\n');
    Ok(text)
}

impl JsonReport {
    fn new(assessment: &Assessment<'_>, texts: &CautionTexts) -> Self {
        let site = &assessment.site;
        let place = JsonPlace::new(&assessment.place, &assessment.method.rule.id);
        Self {
            schema: 1,
            software: concat!("sillmark ", env!("CARGO_PKG_VERSION")).to_owned(),
            site: JsonSite {
                name: site.name.clone(),
                longitude: place.longitude,
                latitude: place.latitude,
                threshold_m: assessment
                    .threshold
                    .map(|threshold| metres(threshold.height())),
            },
            datum: site.threshold.datum().to_string(),
            zone: place.zone,
            ground_m: place.ground_m,
            ground_sd_m: assessment
                .method
                .uncertainty
                .terrain_sd()
                .filter(|_| place.ground_m.is_some())
                .map(metres),
            flood_level: place.flood_level,
            design_level: place.design_level,
            openings: assessment
                .openings
                .iter()
                .map(|opening| JsonOpening::new(opening, assessment))
                .collect(),
            behind: assessment.behind.as_deref().map(JsonBehind::of),
            verdict: JsonVerdict::from(assessment.verdict),
            cautions: JsonCaution::all(&assessment.cautions, texts, assessment.method.units),
            sources: assessment.maps.iter().map(JsonSource::of).collect(),
            trail: assessment.trail.steps().iter().map(JsonStep::new).collect(),
        }
    }
}
