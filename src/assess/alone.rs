//! A barrier without a building: the engineering alone, for a stated depth of water.

use super::barrier::Request;
use super::behind::behind_trail;
use super::cautions::{short_warning, uplift};
use super::{AssessError, Trail, Value};
use crate::barrier::{BarrierAnswer, BehindBarriers, DesignRules, Kit, WaterBefore};
use crate::load::WaveLevel;
use crate::quantity::{Length, UnitSystem};
use crate::site::{BarrierQuestion, WallKind, Waves};
use crate::statement::Choice;
use crate::verdict::{Caution, Limits, Reason, Verdict, judge_stated};

/// How a barrier alone is worked out.
#[derive(Clone, Debug)]
pub struct BarrierMethod {
    /// The barrier system.
    pub kit: Kit,
    /// How it is designed.
    pub rules: DesignRules,
    /// What walls and barriers take.
    pub limits: Limits,
    /// The units of sentences.
    pub units: UnitSystem,
}

/// The answer for one barrier alone.
#[derive(Clone, Debug)]
pub struct BarrierAssessment {
    /// What was asked.
    pub question: BarrierQuestion,
    /// The barrier; `None` where no plank is needed.
    pub barrier: Option<BarrierAnswer>,
    /// What it asks of a pump and of people.
    pub behind: Option<BehindBarriers>,
    /// The worst that the reasons ask for.
    pub verdict: Verdict,
    /// Why, the weightiest first.
    pub reasons: Vec<Reason>,
    /// What to know beside the figures.
    pub cautions: Vec<Caution>,
    /// How each figure came about.
    pub trail: Trail,
    /// How it was worked out.
    pub method: BarrierMethod,
}

/// Assesses one barrier for a stated height and depth of water, by the same steps as
/// [`assess`](super::assess) takes once it knows both.
///
/// # Errors
/// [`AssessError`] for numbers that cannot be, and for load factors that do not go with the
/// kit's material.
///
/// ```
/// use sillmark::assess::{BarrierMethod, assess_barrier};
/// use sillmark::barrier::{DesignRules, Kit};
/// use sillmark::load::LoadZone;
/// use sillmark::quantity::UnitSystem;
/// use sillmark::site::{BarrierForm, Conditions};
/// use sillmark::verdict::{Limits, Verdict};
/// let form = BarrierForm { width: Some("36 in"), depth: Some("2 ft"), reveal: Some("6 in"), ..BarrierForm::default() };
/// let question = form.question(Conditions::default())?;
/// let kit = Kit::demonstration()?;
/// let method = BarrierMethod {
///     rules: DesignRules::of(&kit, &question.conditions.loads, LoadZone::Other)?,
///     kit,
///     limits: Limits::shipped()?,
///     units: UnitSystem::Us,
/// };
/// let answer = assess_barrier(&question, &method)?;
/// assert_eq!(answer.verdict, Verdict::Protect);
/// assert_eq!(answer.barrier.unwrap().design.stack.count, 4);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn assess_barrier(
    question: &BarrierQuestion,
    method: &BarrierMethod,
) -> Result<BarrierAssessment, AssessError> {
    let mut trail = Trail::default();
    for (quantity, value, how) in [
        ("height to reach", question.height, "as stated"),
        ("depth of water over the sill", question.depth, "as stated"),
    ] {
        trail.add(quantity, Value::Length(value), how, "");
    }
    let conditions = &question.conditions;
    let breaking = conditions.water.waves == Some(Waves::Breaking);
    let request = Request {
        opening: &question.opening,
        conditions,
        kit: &method.kit,
        rules: &method.rules,
        units: method.units,
        height: question.height,
        water: WaterBefore {
            depth: question.depth,
            sill_above_ground: question.sill_above_ground,
            velocity: conditions.water.velocity,
            coastal: breaking.then(|| question.wave_level.unwrap_or(WaveLevel::Stillwater)),
            soil: question.opening.soil,
        },
    };
    let barrier = request.answer(&mut trail, &String::new)?;
    let alone: Vec<&BarrierAnswer> = barrier.as_deref().into_iter().collect();
    let warning = conditions.water.warning;
    let behind = BehindBarriers::of(&alone, &conditions.inside, &conditions.fitting, warning)
        .map_err(Box::new)?;
    if let Some(behind) = &behind {
        behind_trail(&mut trail, behind);
    }
    let reasons = reasons(question, method, barrier.as_deref(), behind.as_ref());
    let verdict = Verdict::of(&reasons);
    trail.add(
        "verdict",
        Value::Words(verdict.word().to_owned()),
        "the worst that the reasons ask for",
        "data/limits.toml",
    );
    Ok(BarrierAssessment {
        question: question.clone(),
        cautions: cautions(question, method),
        barrier: barrier.map(|answer| *answer),
        behind,
        verdict,
        reasons,
        trail,
        method: method.clone(),
    })
}

fn reasons(
    question: &BarrierQuestion,
    method: &BarrierMethod,
    barrier: Option<&BarrierAnswer>,
    behind: Option<&BehindBarriers>,
) -> Vec<Reason> {
    let water = &question.conditions.water;
    let above_sill = question.height.max(question.depth);
    let mut reasons = judge_stated(
        above_sill,
        question.sill_above_ground.map(|sill| above_sill + sill),
        question.opening.wall,
        water.velocity,
        water.waves,
        &method.limits,
    );
    if let Some(by) = question.sill_above_ground.filter(|above| above.value < 0.0) {
        reasons.push(Reason::BelowGround {
            by: Length::default() - by,
            ground: crate::verdict::GroundSource::Surveyed,
        });
    }
    let shortfalls = barrier.iter().flat_map(|answer| &answer.design.shortfalls);
    reasons.extend(shortfalls.cloned().map(Reason::Barrier));
    reasons.extend(behind.and_then(|behind| Reason::not_in_time(behind, water.warning)));
    Reason::weightiest_first(&mut reasons);
    reasons
}

fn cautions(question: &BarrierQuestion, method: &BarrierMethod) -> Vec<Caution> {
    let mut cautions = vec![Caution::StatedDepth];
    if method.kit.is_invented() {
        cautions.push(Caution::DemonstrationKit);
    }
    let weakest = method.limits.wall(Some(WallKind::UnsupportedPanel)).depth;
    let above_sill = question.height.max(question.depth);
    let below_sill = question.sill_above_ground.unwrap_or_default();
    let on_wall = above_sill + below_sill.max(Length::default());
    if question.opening.wall.is_none() && on_wall > weakest.unwrap_or_default() {
        cautions.push(Caution::WallNotStated {
            openings: Vec::new(),
        });
    }
    let water = &question.conditions.water;
    cautions.extend(short_warning(water));
    cautions.extend([
        Caution::StillWater,
        uplift(water, question.depth),
        Caution::ShortDuration,
        Caution::LocalCode,
    ]);
    cautions
}
