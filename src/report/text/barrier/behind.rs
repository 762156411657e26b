//! Pump, filling and fitting of all barriers together.

use super::short::not_counted;
use super::words::duration;
use crate::barrier::{BehindBarriers, FittingMissing, InTime, twelve_hour_citation, twelve_hours};
use crate::inflow::{
    Filling, FillingTime, Impermeability, ImpermeableVerdict, NotCounted, impermeable_depth,
};
use crate::quantity::UnitSystem;

/// What the barriers of a building ask of a pump and of people, in a few lines.
#[must_use]
pub fn behind_lines(behind: &BehindBarriers, units: UnitSystem) -> Vec<String> {
    let mut lines = pump(behind, units);
    lines.extend(behind.filling.as_ref().map(filling));
    lines.extend(
        behind
            .impermeable
            .as_ref()
            .map(|found| impermeable(found, units)),
    );
    lines.push(fitting(behind));
    lines
}

fn pump(behind: &BehindBarriers, units: UnitSystem) -> Vec<String> {
    let pump = &behind.pump;
    let at_least = if pump.is_at_least() { "at least " } else { "" };
    let margin = if pump.margin > 1.0 {
        format!(
            ": {} that get in, times the margin of {}",
            units.flow(pump.inflow),
            pump.margin
        )
    } else {
        String::new()
    };
    let mut lines = Vec::new();
    if pump.capacity.value > 0.0 {
        lines.push(format!(
            "a pump has to carry {at_least}{}{margin} ({})",
            units.flow(pump.capacity),
            pump.citation
        ));
    } else if pump.not_counted.is_empty() {
        lines.push("no water gets past the barriers at the design level".to_owned());
    } else {
        lines.push("what a pump has to carry is not known".to_owned());
    }
    let missing = once(&pump.not_counted, units);
    if !missing.is_empty() {
        lines.push(format!("not counted: {}", missing.join("; ")));
    }
    // What keeps a way in from being counted has been said.
    let said = |text: &str| missing.iter().any(|line| line.contains(text));
    let assumed: Vec<String> = pump
        .not_stated
        .iter()
        .map(ToString::to_string)
        .filter(|text| !said(text))
        .collect();
    if !assumed.is_empty() && pump.capacity.value > 0.0 {
        lines.push(assumed.join("; "));
    }
    lines
}

/// Ways in without a number, each once however many barriers there are.
fn once(all: &[NotCounted], units: UnitSystem) -> Vec<String> {
    let mut lines = Vec::new();
    for other in all {
        let line = not_counted(other, units);
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
    lines
}

fn filling(filling: &Filling) -> String {
    match (filling.time, filling.may_be_sooner()) {
        (FillingTime::After(time), false) => format!(
            "without a pump the water inside reaches the stated depth after {}",
            duration(time)
        ),
        (FillingTime::After(time), true) => format!(
            "without a pump the water inside reaches the stated depth after {} or sooner, since not every way in is counted",
            duration(time)
        ),
        (FillingTime::Never, false) => {
            "what gets in does not bring the water inside to the stated depth".to_owned()
        }
        (FillingTime::Never, true) => {
            "when the water inside reaches the stated depth is not known, since no way in is counted"
                .to_owned()
        }
    }
}

fn impermeable(found: &Impermeability, units: UnitSystem) -> String {
    let limit = units.dimension(impermeable_depth());
    let verdict = match found.verdict {
        ImpermeableVerdict::Within => format!("within the {limit} of"),
        ImpermeableVerdict::Exceeded => format!("more than the {limit} of"),
        ImpermeableVerdict::Unknown => {
            format!("too little is counted to hold that against the {limit} of")
        }
    };
    let at_least = if found.not_counted.is_empty() {
        ""
    } else {
        "at least "
    };
    format!(
        "without pump and rain {at_least}{} of water gather on the floor in 24 hours: {verdict} a substantially impermeable space ({})",
        units.dimension(found.depth_in_24_hours),
        found.citation
    )
}

fn fitting(behind: &BehindBarriers) -> String {
    let takes = behind
        .fitting_time
        .map(|time| format!("fitting all barriers takes {}", duration(time)));
    let takes = takes.unwrap_or_else(|| "how long the fitting takes is not known".to_owned());
    match behind.in_time {
        InTime::Enough { spare } => {
            format!("{takes}, done {} before the water", duration(spare))
        }
        InTime::TooShort { by } => format!("{takes}, {} longer than the warning", duration(by)),
        InTime::TwelveHourRule { by } => format!(
            "{takes} and is done in time, but the warning is {} short of the {} that barriers fitted by people ask for ({})",
            duration(by),
            duration(twelve_hours()),
            twelve_hour_citation()
        ),
        InTime::NotStated {
            what: FittingMissing::WarningTime,
        } => format!(
            "{takes}; whether that is in time is not known: {}",
            FittingMissing::WarningTime
        ),
        InTime::NotStated { what } => {
            format!("whether all barriers are up in time is not known: {what}")
        }
    }
}
