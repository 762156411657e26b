//! The assessment as JSON, schema 1: metres and newtons, with the unit in each name.
//!
//! The published JSON Schema is `data/schema/assessment-1.json`; [`json_schema`] makes it.
//! Numbers are rounded to a millionth of their unit, so that the same input gives the same
//! bytes on every machine.

use schemars::JsonSchema;
use serde::Serialize;

use crate::assess::{
    Assessment, GroundAnswer, OpeningAssessment, Place, Step, YearlyChance, ZoneHere,
};
use crate::level::{Candidate, FloodLevel, LevelSource};
use crate::load::Hydrostatic;
use crate::quantity::unit::{Length, in_newtons_per_metre, meter, newton, pascal};
use crate::risk::ChanceAtLevel;
use crate::verdict::{CautionTexts, Reason};

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
    verdict: JsonVerdict,
    cautions: Vec<JsonCaution>,
    trail: Vec<JsonStep>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonSite {
    name: String,
    /// Degrees east, WGS 84.
    longitude: f64,
    /// Degrees north, WGS 84.
    latitude: f64,
    threshold_m: f64,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonZone {
    /// As the layer writes it.
    code: String,
    subtype: Option<String>,
    layer: String,
    feature: String,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonFloodLevel {
    value_m: f64,
    sd_m: Option<f64>,
    source: LevelSource,
    /// As a fraction: 0.01 for one percent.
    annual_chance: f64,
    /// Sources with less authority.
    others: Vec<JsonOtherLevel>,
    /// Levels of several floods, the most frequent first; empty where one at most is known.
    curve: Vec<JsonStage>,
}

/// The level of one flood.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonStage {
    annual_chance: f64,
    value_m: f64,
    sd_m: Option<f64>,
}

/// How often water reaches a height.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonYearlyChance {
    /// As a fraction; null where it lies outside the known floods.
    annual_chance: Option<f64>,
    /// Such as `rarer than 0.2 %`, where it lies outside the known floods.
    beyond: Option<String>,
    /// Years that `over_years` is for.
    years: u32,
    /// Chance of at least one such flood over the years.
    over_years: Option<f64>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonOtherLevel {
    source: LevelSource,
    value_m: f64,
    sd_m: Option<f64>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonDesignLevel {
    value_m: f64,
    /// Design level less flood level; null where the flood does not reach the place.
    freeboard_m: Option<f64>,
    /// Id of the freeboard rule.
    rule: String,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonOpening {
    id: String,
    width_m: f64,
    /// Null where nobody has measured it.
    sill_m: Option<f64>,
    /// Flood level less sill, not less than nothing.
    depth_m: Option<f64>,
    /// Design level less sill, not less than nothing.
    protection_height_m: Option<f64>,
    /// Protection height rounded up to whole planks.
    barrier_height_m: Option<f64>,
    planks: Option<u32>,
    /// Spans between posts; null: not worked out by this version.
    spans: Option<u32>,
    /// Posts between the end posts; null: not worked out by this version.
    intermediate_posts: Option<u32>,
    /// Pressure at the sill, still water at the design level.
    pressure_pa: Option<f64>,
    /// Force on each metre of width, still water at the design level.
    force_n_per_m: Option<f64>,
    /// Moment about the sill on each metre of width (N·m/m), still water at the design level.
    moment_n: Option<f64>,
    /// Still water at the top of the barrier: the governing case for strength.
    at_top: Option<JsonLoad>,
    /// Chance that the assessed event passes the top of the barrier.
    chance_over_top: Option<f64>,
    /// How often water reaches the sill; null where levels of one flood at most are known.
    water_at_sill: Option<JsonYearlyChance>,
    /// How often water reaches the top of the barrier.
    water_at_top: Option<JsonYearlyChance>,
    verdict: JsonVerdict,
    /// Sentences, the weightiest first.
    reasons: Vec<String>,
    /// What is known where the opening stands, if that is not where the site is.
    place: Option<JsonPlace>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonLoad {
    depth_m: f64,
    pressure_pa: f64,
    force_n_per_m: f64,
    moment_n: f64,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonPlace {
    longitude: f64,
    latitude: f64,
    zone: Option<JsonZone>,
    ground_m: Option<f64>,
    flood_level: Option<JsonFloodLevel>,
    design_level: Option<JsonDesignLevel>,
}

/// What has to happen, from the least to the most.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum JsonVerdict {
    /// The sill lies at or above the design level, or the map has no flood there.
    Above,
    /// A barrier within common limits.
    Protect,
    /// A licensed engineer has to design it.
    Engineer,
    /// A needed input is missing or refused.
    Unresolved,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonCaution {
    /// Stable over versions.
    code: String,
    text: String,
    reference: String,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonStep {
    quantity: String,
    /// A number in `unit`, a text where there is no unit, null where it is not known.
    value: JsonValue,
    unit: Option<String>,
    how: String,
    reference: String,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[serde(untagged)]
enum JsonValue {
    Number(f64),
    Words(String),
    Nothing,
}

/// The assessment as indented JSON with a line break at its end.
///
/// # Errors
/// [`serde_json::Error`], which does not happen for these types.
pub fn json(assessment: &Assessment, texts: &CautionTexts) -> Result<String, serde_json::Error> {
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
    fn new(assessment: &Assessment, texts: &CautionTexts) -> Self {
        let site = &assessment.site;
        let place = JsonPlace::new(&assessment.place, &assessment.method.rule.id);
        Self {
            schema: 1,
            software: concat!("sillmark ", env!("CARGO_PKG_VERSION")).to_owned(),
            site: JsonSite {
                name: site.name.clone(),
                longitude: place.longitude,
                latitude: place.latitude,
                threshold_m: metres(site.threshold.height()),
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
            verdict: JsonVerdict::from(assessment.verdict),
            cautions: assessment
                .cautions
                .iter()
                .map(|caution| JsonCaution {
                    code: caution.code().to_owned(),
                    text: texts.text(caution, assessment.method.units),
                    reference: texts.reference(caution),
                })
                .collect(),
            trail: assessment.trail.steps().iter().map(JsonStep::new).collect(),
        }
    }
}

impl JsonPlace {
    fn new(place: &Place, rule: &str) -> Self {
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
    fn new(here: &ZoneHere) -> Self {
        let zone = &here.worst;
        Self {
            code: zone.code.clone(),
            subtype: zone.subtype.clone(),
            layer: zone.layer.clone(),
            feature: zone.feature.clone(),
        }
    }
}

impl JsonFloodLevel {
    fn new(level: &FloodLevel, place: &Place) -> Self {
        let decided = &level.decided;
        Self {
            value_m: metres(decided.elevation.height()),
            sd_m: decided.sd.map(metres),
            source: decided.source,
            annual_chance: rounded(decided.chance.probability()),
            others: level
                .others
                .iter()
                .map(
                    |Candidate {
                         source,
                         elevation,
                         sd,
                         ..
                     }| JsonOtherLevel {
                        source: *source,
                        value_m: metres(elevation.height()),
                        sd_m: sd.map(metres),
                    },
                )
                .collect(),
            curve: place
                .curve
                .iter()
                .flat_map(|curve| curve.stages.levels())
                .map(|level| JsonStage {
                    annual_chance: rounded(level.chance.probability()),
                    value_m: metres(level.elevation.height()),
                    sd_m: level.sd.map(metres),
                })
                .collect(),
        }
    }
}

impl JsonOpening {
    fn new(opening: &OpeningAssessment, assessment: &Assessment) -> Self {
        let load = opening.at_design_level.as_ref().map(JsonLoad::new);
        Self {
            id: opening.opening.id.clone(),
            width_m: metres(opening.opening.width),
            sill_m: opening.sill.map(|sill| metres(sill.height())),
            depth_m: opening.depth.map(metres),
            protection_height_m: opening.protection_height.map(metres),
            barrier_height_m: opening.planks.map(|planks| metres(planks.height)),
            planks: opening.planks.map(|planks| planks.count),
            spans: None,
            intermediate_posts: None,
            pressure_pa: load.as_ref().map(|load| load.pressure_pa),
            force_n_per_m: load.as_ref().map(|load| load.force_n_per_m),
            moment_n: load.as_ref().map(|load| load.moment_n),
            at_top: opening.at_top.as_ref().map(JsonLoad::new),
            chance_over_top: opening.chance_over_top.map(rounded),
            water_at_sill: opening
                .water_at_sill
                .map(|chance| JsonYearlyChance::new(chance, assessment.method.years)),
            water_at_top: opening
                .water_at_top
                .map(|chance| JsonYearlyChance::new(chance, assessment.method.years)),
            verdict: JsonVerdict::from(opening.verdict),
            reasons: opening
                .reasons
                .iter()
                .map(|reason: &Reason| reason.text(assessment.method.units))
                .collect(),
            place: opening
                .place
                .as_ref()
                .map(|place| JsonPlace::new(place, &assessment.method.rule.id)),
        }
    }
}

impl JsonYearlyChance {
    fn new(chance: YearlyChance, years: u32) -> Self {
        let (annual_chance, beyond) = match chance.annual {
            ChanceAtLevel::Known { chance, .. } => (Some(rounded(chance.probability())), None),
            ChanceAtLevel::Beyond(beyond) => (None, Some(beyond.to_string())),
        };
        Self {
            annual_chance,
            beyond,
            years,
            over_years: chance.over_years.map(rounded),
        }
    }
}

impl JsonLoad {
    fn new(load: &Hydrostatic) -> Self {
        Self {
            depth_m: metres(load.depth),
            pressure_pa: rounded(load.pressure.get::<pascal>()),
            force_n_per_m: rounded(in_newtons_per_metre(load.force)),
            moment_n: rounded(load.moment.get::<newton>()),
        }
    }
}

impl JsonStep {
    fn new(step: &Step) -> Self {
        let figure = step.value.in_si();
        Self {
            quantity: step.quantity.clone(),
            value: match (&step.value, figure) {
                (_, Some((number, _))) => JsonValue::Number(rounded(number)),
                (crate::assess::Value::Words(words), None) => JsonValue::Words(words.clone()),
                _ => JsonValue::Nothing,
            },
            unit: figure.map(|(_, unit)| unit.to_owned()),
            how: step.how.clone(),
            reference: step.reference.clone(),
        }
    }
}

impl From<crate::verdict::Verdict> for JsonVerdict {
    fn from(verdict: crate::verdict::Verdict) -> Self {
        use crate::verdict::Verdict;
        match verdict {
            Verdict::Above => Self::Above,
            Verdict::Protect => Self::Protect,
            Verdict::Engineer => Self::Engineer,
            Verdict::Unresolved => Self::Unresolved,
        }
    }
}

fn metres(length: Length) -> f64 {
    rounded(length.get::<meter>())
}

/// To a millionth, and no minus before a zero.
fn rounded(number: f64) -> f64 {
    (number * 1e6).round() / 1e6 + 0.0
}
