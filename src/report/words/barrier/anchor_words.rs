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
            format!("side-face blowout, edge on the {}", side(edge).0)
        }
        Mode::ShearBreakout { edge, toward: true } => {
            format!("breakout in shear, edge on the {}", side(edge).0)
        }
        Mode::ShearBreakout {
            edge,
            toward: false,
        } => format!("breakout along the edge on the {}", side(edge).0),
        other => other.to_string(),
    }
}

/// What has to be stated, the distances to all edges as one thing.
pub(super) fn needs(all: &[Need]) -> String {
    let fields: Vec<&str> = all
        .iter()
        .filter_map(|need| match need {
            Need::Edge(edge) => Some(side(*edge).1),
            _ => None,
        })
        .collect();
    let mut needs: Vec<String> = all
        .iter()
        .filter(|need| !matches!(need, Need::Edge(_)))
        .map(ToString::to_string)
        .collect();
    if !fields.is_empty() {
        needs.push(format!(
            "how far the edges are from the anchors, or that they are far ({})",
            fields.join(", ")
        ));
    }
    needs.join("; ")
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
