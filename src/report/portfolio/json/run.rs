//! The run that was summed up.

use schemars::JsonSchema;
use serde::Serialize;

use crate::report::portfolio::RunFacts;

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonRun {
    /// The table with the rows.
    input: String,
    /// Flood-zone layers.
    zones: Vec<String>,
    /// Rasters, lines and sections that give flood levels.
    levels: Vec<String>,
    /// Terrain models.
    terrain: Vec<String>,
    rule: String,
    rule_name: String,
    /// Annual chance of the assessed flood, as a fraction.
    annual_chance: f64,
    /// The day of the run.
    date: String,
    /// Where the rejected rows stand; null where there is no such file.
    rejects_file: Option<String>,
    options: Vec<JsonOption>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonOption {
    name: String,
    value: String,
}

impl JsonRun {
    pub(super) fn of(run: &RunFacts) -> Self {
        let options = run.options.iter();
        Self {
            input: run.input.clone(),
            zones: run.zones.clone(),
            levels: run.levels.clone(),
            terrain: run.terrain.clone(),
            rule: run.rule_id.clone(),
            rule_name: run.rule_name.clone(),
            annual_chance: run.event.probability(),
            date: run.date.clone(),
            rejects_file: run.rejects_file.clone(),
            options: options
                .map(|(name, value)| JsonOption {
                    name: name.clone(),
                    value: value.clone(),
                })
                .collect(),
        }
    }
}
