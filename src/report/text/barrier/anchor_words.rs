//! Anchors in words: the sides of a group by where they lie on the site.

use crate::anchor::{AnchorCheck, Mode, Need, Outcome, Side};

use super::words::percent;

/// The side of a group that an edge lies at, as a person on the dry side sees it, and the field
/// of the site file that states how far the edge is.
const fn side(side: Side) -> (&'static str, &'static str) {
    match side {
        Side::XMinus => ("left", "edge_left"),
        Side::XPlus => ("right", "edge_right"),
        Side::YMinus => ("water side", "edge_water"),
        Side::YPlus => ("dry side", "edge_dry"),
    }
}

/// A way of failing.
pub(super) fn mode(mode: Mode) -> String {
    match mode {
        Mode::SideFaceBlowout { edge } => {
            format!("side-face blowout at the edge on the {}", side(edge).0)
        }
        Mode::ShearBreakout { edge, toward: true } => {
            format!(
                "concrete breakout in shear to the edge on the {}",
                side(edge).0
            )
        }
        Mode::ShearBreakout {
            edge,
            toward: false,
        } => format!(
            "concrete breakout to the edge on the {}, along it",
            side(edge).0
        ),
        other => other.to_string(),
    }
}

/// A thing that has to be stated.
pub(super) fn need(need: Need) -> String {
    match need {
        Need::Edge(edge) => {
            let (place, field) = side(edge);
            format!(
                "the distance from the anchors to the edge on the {place}, or that it is far ({field})"
            )
        }
        other => other.to_string(),
    }
}

/// What a check came to, in short; nothing where nothing could be checked.
pub(super) fn outcome(check: Option<&AnchorCheck>) -> Option<String> {
    let check = check?;
    let used = percent(check.utilisation().unwrap_or_default());
    match check.outcome() {
        Outcome::Holds => Some(format!("they hold, used {used}")),
        Outcome::Fails => Some(format!("they do not hold, used {used}")),
        Outcome::Open => Some(format!("used {used} of what could be checked")),
        Outcome::DemandOnly | Outcome::NoDemand => None,
    }
}
