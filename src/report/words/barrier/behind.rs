//! Pump, filling and fitting of all barriers together.

use super::ways::{self, task, ways};
use super::words::{duration, list};
use crate::barrier::{BarrierAnswer, BehindBarriers, FittingMissing, InTime, twelve_hours};
use crate::inflow::{
    Filling, FillingTime, Impermeability, ImpermeableVerdict, Missing, Way, impermeable_depth,
};
use crate::quantity::UnitSystem;

/// What the barriers of a building ask of a pump and of people, in a few lines. What is still
/// to be stated ([`behind_tasks`]) is not in them.
#[must_use]
pub fn behind_lines(behind: &BehindBarriers, units: UnitSystem) -> Vec<String> {
    let mut lines = vec![pump(behind, units)];
    lines.extend(behind.filling.as_ref().and_then(filling));
    let impermeable = behind.impermeable.as_ref();
    lines.extend(impermeable.and_then(|found| impermeable_space(found, units)));
    lines.extend(fitting(behind));
    lines
}

/// The same beside the short answer of the only barrier: what a pump has to carry is left out
/// where it is no more than what leaks past that barrier.
pub(in crate::report) fn behind_lines_beside(
    behind: &BehindBarriers,
    barrier: &BarrierAnswer,
    units: UnitSystem,
) -> Vec<String> {
    let mut lines = behind_lines(behind, units);
    if behind.inflow == barrier.inflow && behind.pump.margin <= 1.0 {
        lines.remove(0);
    }
    lines
}

/// What would answer what [`behind_lines`] leaves open; leakage of a barrier stands with the
/// barrier ([`open_lines`](super::open_lines)).
#[must_use]
pub fn behind_tasks(behind: &BehindBarriers, units: UnitSystem) -> Vec<String> {
    let rain = |missing: &Missing| matches!(missing, Missing::RunoffCoefficient);
    let of_parts = behind.inflow.parts.iter().flat_map(|part| &part.not_stated);
    let of_parts = of_parts.copied().filter(rain);
    let pump = behind.pump.not_stated.iter().copied();
    let pump = pump.filter(|missing| match missing {
        Missing::PumpMargin | Missing::PumpHead => behind.pump.capacity.value > 0.0,
        _ => false,
    });
    let mut tasks: Vec<String> = behind
        .inflow
        .not_counted
        .iter()
        .filter(|other| other.way == Way::Rain)
        .filter_map(|other| task(other, units))
        .collect();
    tasks.extend(of_parts.chain(pump).filter_map(ways::statement));
    if let InTime::NotStated { what } = behind.in_time {
        tasks.push(ways::fitting(what));
    }
    tasks
}

fn pump(behind: &BehindBarriers, units: UnitSystem) -> String {
    let pump = &behind.pump;
    let unknown = ways(&pump.not_counted);
    let at_least = if pump.is_at_least() { "at least " } else { "" };
    let not_in_it = if unknown.is_empty() {
        String::new()
    } else {
        format!("; not in it: {}", list(&unknown))
    };
    let margin = if pump.margin > 1.0 {
        format!(
            ", {} times the {} that get in",
            pump.margin,
            units.flow(pump.inflow)
        )
    } else {
        String::new()
    };
    if pump.capacity.value > 0.0 {
        format!(
            "a pump has to carry {at_least}{}{margin}{not_in_it}",
            units.flow(pump.capacity)
        )
    } else if unknown.is_empty() {
        "no water gets past the barriers".to_owned()
    } else {
        format!(
            "what a pump has to carry is not known, since a number is missing for {}",
            list(&unknown)
        )
    }
}

fn filling(filling: &Filling) -> Option<String> {
    match (filling.time, filling.may_be_sooner()) {
        (FillingTime::After(time), sooner) => Some(format!(
            "without a pump the water inside reaches the stated depth after {}{}",
            duration(time),
            if sooner { " or sooner" } else { "" }
        )),
        (FillingTime::Never, false) => {
            Some("what gets in does not bring the water inside to the stated depth".to_owned())
        }
        // No way in is counted, which the line of the pump says.
        (FillingTime::Never, true) => None,
    }
}

/// What gathers on the floor in a day, where enough is counted to say so.
fn impermeable_space(found: &Impermeability, units: UnitSystem) -> Option<String> {
    let (at_least, verdict) = match found.verdict {
        ImpermeableVerdict::Within => ("", "within"),
        ImpermeableVerdict::Exceeded if found.not_counted.is_empty() => ("", "more than"),
        ImpermeableVerdict::Exceeded => ("at least ", "more than"),
        ImpermeableVerdict::Unknown => return None,
    };
    Some(format!(
        "without pump and rain {at_least}{} of water gather on the floor in 24 h, {verdict} the {} of a substantially impermeable space",
        units.dimension(found.depth_in_24_hours),
        units.dimension(impermeable_depth())
    ))
}

fn fitting(behind: &BehindBarriers) -> Option<String> {
    let takes = format!("fitting takes {}", duration(behind.fitting_time?));
    match behind.in_time {
        InTime::Enough { spare } => Some(format!(
            "{takes}, done {} before the water",
            duration(spare)
        )),
        InTime::TooShort { by } => {
            Some(format!("{takes}, {} longer than the warning", duration(by)))
        }
        // A caution says what the rule is.
        InTime::TwelveHourRule { by } => {
            let spare = twelve_hours() - by - behind.fitting_time?;
            Some(format!(
                "{takes}, done {} before the water, but the warning is {} short of the {} that the rule for such closures asks for",
                duration(spare),
                duration(by),
                duration(twelve_hours())
            ))
        }
        InTime::NotStated {
            what: FittingMissing::WarningTime,
        } => Some(takes),
        InTime::NotStated { .. } => None,
    }
}
