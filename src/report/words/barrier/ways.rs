//! Ways for water to get in: those without a number, and what would give them one.

use crate::barrier::FittingMissing;
use crate::inflow::{Missing, NotCounted, Reason, Way};
use crate::quantity::UnitSystem;

use super::words::list;

/// That some water at a barrier has no number, each way once; nothing where all has.
pub(super) fn not_known(all: &[NotCounted]) -> Option<String> {
    let mut ways: Vec<String> = Vec::new();
    for other in all {
        let way = other.way.to_string();
        if !ways.contains(&way) {
            ways.push(way);
        }
    }
    (!ways.is_empty()).then(|| format!("how much water gets {} is not known", list(&ways)))
}

/// The ways without a number, each once however many barriers there are.
pub(super) fn ways(all: &[NotCounted]) -> Vec<String> {
    let mut ways: Vec<String> = Vec::new();
    for other in all {
        let way = match other.way {
            Way::Rain => "the rain inside".to_owned(),
            way => format!("the water {way}"),
        };
        if !ways.contains(&way) {
            ways.push(way);
        }
    }
    ways
}

/// What would give a way its number.
pub(super) fn task(other: &NotCounted, units: UnitSystem) -> Option<String> {
    match other.reason {
        Reason::NotStated(missing) => statement(missing),
        Reason::NotCovered {
            depth,
            tested_depth,
        } => Some(format!(
            "have the kit's maker state the leakage at {} of water: the stated one is for {}",
            units.height(depth),
            units.height(tested_depth)
        )),
    }
}

/// What to state; nothing where no field takes it.
pub(super) fn statement(missing: Missing) -> Option<String> {
    let task = match missing {
        Missing::LeakageRate => {
            "have the kit's maker state the leakage of each length of its seals"
        }
        Missing::TestedDepth => {
            "have the kit's maker state the depth of water that its leakage was tested at: until then it is taken for any depth"
        }
        Missing::RainArea => {
            "state the area that the rain runs off from, or the floor ([inside] rain_area, floor_area)"
        }
        Missing::RunoffCoefficient => {
            "state the part of the rain that runs off ([inside] runoff): until then all of it is taken to run to the pump"
        }
        Missing::PumpMargin => {
            "state how much more than the inflow a pump should carry ([inside] pump_margin): until then nothing is added"
        }
        Missing::PumpHead => {
            "have the pump chosen by its maker's curve, for the height and the pipes that it works against"
        }
        Missing::PlankCover | Missing::DischargeCoefficient => return None,
    };
    Some(task.to_owned())
}

/// What to state of the fitting.
pub(super) fn fitting(missing: FittingMissing) -> String {
    let what = match missing {
        FittingMissing::TimeAPlank => "how long a plank takes to fit ([fitting] time_a_plank)",
        FittingMissing::TimeAPost => "how long a post takes to fit ([fitting] time_a_post)",
        FittingMissing::Parties => "how many parties fit the barriers ([fitting] parties)",
        FittingMissing::WarningTime => {
            "the time between the warning and the water ([water] warning)"
        }
    };
    format!("state {what}: until then nobody knows whether all is up before the water")
}
