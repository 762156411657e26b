//! Anchors: demand, and every way of failing that could be checked.

use schemars::JsonSchema;
use serde::Serialize;

use super::posts::JsonBase;
use crate::anchor::{
    AnchorCheck, Direction, Factor, FactorValue, Interaction, ModeCheck, Outcome, Unchecked,
};
use crate::barrier::PlateAnchors;
use crate::quantity::unit::{newton, pascal, square_meter};
use crate::report::json::number::{finely, metres, newtons, part, rounded};
use crate::statement::Choice;

/// The anchors under one base plate.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonPlateAnchors {
    /// The post that stands on the plate.
    post: String,
    /// Load factor of demand and check.
    factor: f64,
    /// Where the factor stands.
    reference: String,
    /// At the plate, without the factor.
    forces: JsonBase,
    /// On the row at the water side, with the factor.
    tension_on_row_n: f64,
    /// On each anchor of that row, with the factor.
    tension_on_anchor_n: f64,
    /// On each anchor, with the factor.
    shear_on_anchor_n: f64,
    /// From the row in tension to the row in compression; null for a single row.
    lever_arm_m: Option<f64>,
    /// Null where nobody stated what the plate stands on or how the anchors are fixed.
    check: Option<JsonAnchorCheck>,
}

/// The check of anchors by ACI 318-19 chapter 17.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonAnchorCheck {
    outcome: JsonOutcome,
    /// The greatest of all modes, and of tension and shear together; null where nothing could
    /// be checked.
    utilisation: Option<f64>,
    modes: Vec<JsonMode>,
    unchecked: Vec<JsonUnchecked>,
    /// Tension and shear together; null where one of them has no mode that was checked.
    interaction: Option<JsonInteraction>,
    /// What else to know.
    remarks: Vec<String>,
}

#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum JsonOutcome {
    /// Every mode was checked and holds.
    Holds,
    /// A mode, or tension and shear together, does not hold.
    Fails,
    /// What was checked holds, but not every mode was checked.
    Open,
    /// No mode could be checked.
    DemandOnly,
    /// There is no demand.
    NoDemand,
}

#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum JsonDirection {
    Tension,
    Shear,
}

/// A way of failing that was checked.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonMode {
    direction: JsonDirection,
    mode: String,
    /// With the load factor; of one anchor, or of those that fail together.
    demand_n: f64,
    nominal_n: f64,
    /// The strength reduction factor.
    phi: f64,
    /// Where phi stands.
    phi_clause: String,
    /// Phi times the nominal strength.
    design_n: f64,
    /// Demand over design strength; null where there is no strength.
    utilisation: Option<f64>,
    /// What the nominal strength is made of.
    factors: Vec<JsonFactor>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonFactor {
    /// The symbol of ACI 318.
    name: String,
    value: f64,
    /// m, m², N or Pa; null for a number without unit, and for a coefficient for inch-pound
    /// units.
    unit: Option<String>,
    /// Of ACI 318-19.
    clause: String,
    /// Whether the clause was seen, is from memory, or lets somebody state the value.
    confidence: String,
}

/// A way of failing that was not checked.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonUnchecked {
    direction: JsonDirection,
    mode: String,
    /// What to state.
    state: Vec<String>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonInteraction {
    /// Demand over design strength of the governing mode.
    tension: Option<f64>,
    /// The same.
    shear: Option<f64>,
    /// How far the limit of ACI 318-19 17.8 is used.
    utilisation: Option<f64>,
}

impl JsonPlateAnchors {
    pub(super) fn of(anchors: &PlateAnchors) -> Self {
        let demand = &anchors.demand;
        Self {
            post: anchors.post.to_owned(),
            factor: rounded(anchors.factor),
            reference: anchors.reference.clone(),
            forces: JsonBase::of(&anchors.forces),
            tension_on_row_n: newtons(demand.tension_on_row),
            tension_on_anchor_n: newtons(demand.tension_on_anchor),
            shear_on_anchor_n: newtons(demand.shear_on_anchor),
            lever_arm_m: demand.lever_arm.map(metres),
            check: anchors.check.as_ref().map(JsonAnchorCheck::of),
        }
    }
}

impl JsonAnchorCheck {
    pub(super) fn of(check: &AnchorCheck) -> Self {
        let directions = [
            (JsonDirection::Tension, &check.tension),
            (JsonDirection::Shear, &check.shear),
        ];
        let checked = |(direction, of): (JsonDirection, &Direction)| -> Vec<JsonMode> {
            let modes = of.checked.iter();
            modes.map(|mode| JsonMode::of(direction, mode)).collect()
        };
        let unchecked = |(direction, of): (JsonDirection, &Direction)| -> Vec<JsonUnchecked> {
            let modes = of.unchecked.iter();
            modes
                .map(|mode| JsonUnchecked::of(direction, mode))
                .collect()
        };
        Self {
            outcome: JsonOutcome::from(check.outcome()),
            utilisation: check.utilisation().and_then(part),
            modes: directions.into_iter().flat_map(checked).collect(),
            unchecked: directions.into_iter().flat_map(unchecked).collect(),
            interaction: check.interaction.as_ref().map(JsonInteraction::of),
            remarks: check.remarks.iter().map(ToString::to_string).collect(),
        }
    }
}

impl From<Outcome> for JsonOutcome {
    fn from(outcome: Outcome) -> Self {
        match outcome {
            Outcome::Holds => Self::Holds,
            Outcome::Fails => Self::Fails,
            Outcome::Open => Self::Open,
            Outcome::DemandOnly => Self::DemandOnly,
            Outcome::NoDemand => Self::NoDemand,
        }
    }
}

impl JsonMode {
    fn of(direction: JsonDirection, check: &ModeCheck) -> Self {
        let strength = &check.strength;
        Self {
            direction,
            mode: check.mode.to_string(),
            demand_n: newtons(check.demand),
            nominal_n: newtons(strength.nominal()),
            phi: rounded(strength.phi()),
            phi_clause: strength.phi_factor().clause.to_owned(),
            design_n: newtons(strength.design()),
            utilisation: part(check.utilisation()),
            factors: strength.factors().iter().map(JsonFactor::of).collect(),
        }
    }
}

impl JsonFactor {
    fn of(factor: &Factor) -> Self {
        let (value, unit) = match factor.value {
            FactorValue::Number(number) => (rounded(number), None),
            FactorValue::Length(length) => (metres(length), Some("m")),
            FactorValue::Area(area) => (finely(area.get::<square_meter>()), Some("m²")),
            FactorValue::Force(force) => (rounded(force.get::<newton>()), Some("N")),
            FactorValue::Pressure(stress) => (rounded(stress.get::<pascal>()), Some("Pa")),
        };
        Self {
            name: factor.symbol.to_owned(),
            value,
            unit: unit.map(str::to_owned),
            clause: factor.clause.to_owned(),
            confidence: factor.confidence.word().to_owned(),
        }
    }
}

impl JsonUnchecked {
    fn of(direction: JsonDirection, unchecked: &Unchecked) -> Self {
        Self {
            direction,
            mode: unchecked.mode.to_string(),
            state: unchecked.state.iter().map(ToString::to_string).collect(),
        }
    }
}

impl JsonInteraction {
    fn of(interaction: &Interaction) -> Self {
        Self {
            tension: part(interaction.tension),
            shear: part(interaction.shear),
            utilisation: part(interaction.utilisation()),
        }
    }
}
