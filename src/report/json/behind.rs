//! What the barriers of a building together ask of a pump and of people.

use schemars::JsonSchema;
use serde::Serialize;

use super::barrier::JsonInflow;
use super::number::{finely, metres, rounded};
use crate::barrier::{BehindBarriers, InTime, twelve_hour_citation};
use crate::inflow::{Filling, FillingTime, Impermeability, ImpermeableVerdict, PumpDemand};
use crate::quantity::unit::{Time, cubic_meter_per_second, hour, minute};

/// All barriers of a building at once.
///
/// ```
/// use sillmark::report::JsonBehind;
/// let schema = schemars::schema_for!(JsonBehind);
/// assert!(schema.get("required").unwrap().to_string().contains("pump"));
/// ```
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(title = "sillmark behind barriers", deny_unknown_fields)]
pub struct JsonBehind {
    /// Leakage of every barrier, and the rain inside.
    inflow: JsonInflow,
    pump: JsonPump,
    /// Without a pump; null where floor or depth is not stated.
    filling: Option<JsonFilling>,
    /// Null where no floor is stated.
    impermeable: Option<JsonImpermeable>,
    fitting: JsonFitting,
}

/// What a pump has to carry, at the head that it works against.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonPump {
    /// Inflow times margin.
    capacity_m3_per_s: f64,
    margin: f64,
    /// Whether the capacity is too small, since a way in has no number.
    at_least: bool,
    reference: String,
    /// What nobody stated, and what was done about it.
    not_stated: Vec<String>,
}

/// When the water inside reaches the stated depth.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonFilling {
    /// Null: never.
    hours: Option<f64>,
    /// Since a way in has no number.
    may_be_sooner: bool,
    /// The formula.
    method: String,
}

/// Held against 4 in of water in 24 hours, without the rain.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonImpermeable {
    verdict: JsonImpermeableVerdict,
    /// On the floor, without a pump.
    depth_in_24_hours_m: f64,
    /// The inflow that just reaches 4 in.
    greatest_flow_m3_per_s: f64,
    reference: String,
}

#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum JsonImpermeableVerdict {
    Within,
    Exceeded,
    /// What has a number stays within, but a way in has none.
    Unknown,
}

/// The fitting held against the warning.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonFitting {
    /// That it takes; null where nobody stated how long a piece takes.
    minutes: Option<f64>,
    in_time: JsonInTime,
    /// Warning that is left over.
    spare_minutes: Option<f64>,
    /// Warning that is wanting.
    wanting_minutes: Option<f64>,
    not_stated: Option<String>,
    /// Of the rule of 12 hours, where that decides.
    reference: Option<String>,
}

#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum JsonInTime {
    Enough,
    /// The fitting takes longer than the warning.
    TooShort,
    /// Fitted in time, but with less than 12 hours of warning.
    TwelveHourRule,
    NotStated,
}

impl JsonBehind {
    /// The barriers of a building.
    #[must_use]
    pub fn of(behind: &BehindBarriers) -> Self {
        Self {
            inflow: JsonInflow::of(&behind.inflow),
            pump: JsonPump::of(&behind.pump),
            filling: behind.filling.as_ref().map(JsonFilling::of),
            impermeable: behind.impermeable.as_ref().map(JsonImpermeable::of),
            fitting: JsonFitting::of(behind),
        }
    }
}

impl JsonPump {
    fn of(pump: &PumpDemand) -> Self {
        Self {
            capacity_m3_per_s: finely(pump.capacity.get::<cubic_meter_per_second>()),
            margin: rounded(pump.margin),
            at_least: pump.is_at_least(),
            reference: pump.citation.to_string(),
            not_stated: pump.not_stated.iter().map(ToString::to_string).collect(),
        }
    }
}

impl JsonFilling {
    fn of(filling: &Filling) -> Self {
        Self {
            hours: match filling.time {
                FillingTime::After(time) => Some(rounded(time.get::<hour>())),
                FillingTime::Never => None,
            },
            may_be_sooner: filling.may_be_sooner(),
            method: filling.method.to_owned(),
        }
    }
}

impl JsonImpermeable {
    fn of(found: &Impermeability) -> Self {
        Self {
            verdict: match found.verdict {
                ImpermeableVerdict::Within => JsonImpermeableVerdict::Within,
                ImpermeableVerdict::Exceeded => JsonImpermeableVerdict::Exceeded,
                ImpermeableVerdict::Unknown => JsonImpermeableVerdict::Unknown,
            },
            depth_in_24_hours_m: metres(found.depth_in_24_hours),
            greatest_flow_m3_per_s: finely(found.greatest_flow.get::<cubic_meter_per_second>()),
            reference: found.citation.to_string(),
        }
    }
}

impl JsonFitting {
    fn of(behind: &BehindBarriers) -> Self {
        let minutes = |time: Time| rounded(time.get::<minute>());
        let nothing = Self {
            minutes: behind.fitting_time.map(minutes),
            in_time: JsonInTime::NotStated,
            spare_minutes: None,
            wanting_minutes: None,
            not_stated: None,
            reference: None,
        };
        match behind.in_time {
            InTime::Enough { spare } => Self {
                in_time: JsonInTime::Enough,
                spare_minutes: Some(minutes(spare)),
                ..nothing
            },
            InTime::TooShort { by } => Self {
                in_time: JsonInTime::TooShort,
                wanting_minutes: Some(minutes(by)),
                ..nothing
            },
            InTime::TwelveHourRule { by } => Self {
                in_time: JsonInTime::TwelveHourRule,
                wanting_minutes: Some(minutes(by)),
                reference: Some(twelve_hour_citation().to_string()),
                ..nothing
            },
            InTime::NotStated { what } => Self {
                not_stated: Some(what.to_string()),
                ..nothing
            },
        }
    }
}
