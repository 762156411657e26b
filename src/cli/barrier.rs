//! `sillmark barrier`: one barrier for water that the user states.

use sillmark::assess::{BarrierMethod, assess_barrier};
use sillmark::barrier::DesignRules;
use sillmark::load::LoadZone;
use sillmark::quantity::UnitSystem;
use sillmark::report::{TextOptions, barrier_json, barrier_text};
use sillmark::site::{BarrierForm, BarrierQuestion, Conditions};
use sillmark::verdict::{CautionTexts, Limits};

use super::arguments::{BarrierOptions, Format};
use super::failure::Failure;
use super::inputs;
use super::output::Target;
use super::site::COLUMNS;

pub(super) fn run(options: &BarrierOptions) -> Result<(), Failure> {
    let files: Vec<_> = options
        .kit
        .iter()
        .chain(&options.conditions)
        .cloned()
        .collect();
    let target = Target::open(options.output.output.as_deref(), &files)?;
    let question = question(options)?;
    let kit = inputs::kit(options.kit.as_deref())?;
    let method = BarrierMethod {
        rules: DesignRules::of(&kit, &question.conditions.loads, LoadZone::Other)
            .map_err(Failure::input)?,
        kit,
        limits: Limits::shipped().map_err(Failure::other)?,
        units: options
            .output
            .units
            .map_or(question.units, UnitSystem::from),
    };
    let assessment = assess_barrier(&question, &method).map_err(Failure::input)?;
    let cautions = CautionTexts::shipped().map_err(Failure::other)?;
    let result = match options.format {
        Format::Text => barrier_text(
            &assessment,
            &cautions,
            TextOptions {
                trail: options.trail,
                columns: COLUMNS,
            },
        ),
        Format::Json => barrier_json(&assessment, &cautions).map_err(Failure::other)?,
    };
    target.write(&result)
}

fn question(options: &BarrierOptions) -> Result<BarrierQuestion, Failure> {
    let conditions = match &options.conditions {
        Some(path) => {
            let text = inputs::text_file(path, "a conditions file (TOML in UTF-8)")?;
            Conditions::from_toml(&path.display().to_string(), &text).map_err(Failure::input)?
        }
        None => Conditions::default(),
    };
    BarrierForm {
        width: options.width.as_deref(),
        run: options.run.as_deref(),
        height: options.height.as_deref(),
        depth: options.depth.as_deref(),
        opening_height: options.opening_height.as_deref(),
        reveal: options.reveal.as_deref(),
        face: options.face.as_deref(),
        mount: options.mount.as_deref(),
        brace: options.brace.as_deref(),
        wall: options.wall.as_deref(),
        sill_above_ground: options.sill_above_ground.as_deref(),
        soil: options.soil.as_deref(),
        velocity: options.velocity.as_deref(),
        salinity: options.salinity.as_deref(),
        waves: options.waves.as_deref(),
        wave_level: options.wave_level.as_deref(),
    }
    .question(conditions)
    .map_err(Failure::input)
}
