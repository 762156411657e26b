//! Side-face blowout of headed anchors near an edge (17.6.4).

use super::breakout::{Breakout, weakest};
use super::coefficient::{RootStrength, root_strength};
use super::demand::number;
use super::factor::Factor;
use super::line::Line;
use super::need::{Need, Needs};
use super::{AnchorGroup, Anchorage, Concrete, Edge, Fixing, Mode, ModeCheck};
use super::{Side, Strength, TensionDemand, Unchecked, phi};
use crate::quantity::Length;
use crate::quantity::unit::{Area, Force, inch, pound_force};

/// The check at one side; `None` where the anchors are not headed, or the edge is not so near
/// (`h_ef` at most 2.5 `c_a1`).
pub(super) fn check(
    anchorage: &Anchorage,
    concrete: &Concrete,
    demand: &TensionDemand,
    edge: Side,
) -> Option<Result<ModeCheck, Unchecked>> {
    let Fixing::CastIn { head_bearing, .. } = &anchorage.fixing else {
        return None;
    };
    let group = demand.part_of(&anchorage.group);
    let distance = match group.edges.at(edge) {
        Edge::Far => return None,
        Edge::At(distance) => Some(distance),
        Edge::Unstated => None,
    };
    let mode = Mode::SideFaceBlowout { edge };
    let mut needs = Needs::default();
    let known = needs.take(distance, Need::Edge(edge));
    let embedment = needs.take(anchorage.embedment, Need::Embedment);
    let (Some(distance), Some(embedment)) = (known, embedment) else {
        return Some(Err(needs.unchecked(mode)));
    };
    if embedment <= distance * 2.5 {
        return None;
    }
    let strength = needs.take(concrete.strength, Need::ConcreteStrength);
    let bearing = needs.take(*head_bearing, Need::HeadBearing);
    let row = needs.append(row(&group, edge).map_err(Needs::edges));
    let phi = phi::breakout_tension(&anchorage.fixing, concrete.supplementary);
    let phi = needs.append(phi.map_err(Needs::from));
    let (Some(_), Some(bearing), Some(row), Some(phi)) = (strength, bearing, row, phi) else {
        return Some(Err(needs.unchecked(mode)));
    };
    let face = Face {
        distance,
        bearing,
        root_strength: root_strength(concrete, &anchorage.fixing),
    };
    let parts = row.clusters(distance * 6.0);
    let burst = weakest(parts.iter().map(|part| face.burst(part)))?;
    Some(Ok(ModeCheck {
        mode,
        demand: burst.demand(demand.force, demand.greatest),
        strength: Strength::new(burst.nominal, phi, burst.factors),
    }))
}

/// The anchors nearest the side, along it.
fn row(group: &AnchorGroup, edge: Side) -> Result<Line, Vec<Side>> {
    group.outermost(edge).line(!edge.across_x())
}

struct Face {
    distance: Length,
    bearing: Area,
    root_strength: RootStrength,
}

impl Face {
    /// `N_sb` of one anchor, `N_sbg` of several.
    fn burst(&self, part: &Line) -> Breakout {
        let distance = self.distance.get::<inch>();
        let side = self.bearing.value.sqrt() / Length::new::<inch>(1.0).value;
        let single =
            Force::new::<pound_force>(160.0 * distance * side * self.root_strength.value());
        let (symbol, factor, clause) = if part.count() == 1 {
            let corner = part
                .edge_distances()
                .into_iter()
                .fold(self.distance * 3.0, Length::min);
            let ratio = (corner / self.distance).value.clamp(1.0, 3.0);
            ("corner", (1.0 + ratio) / 4.0, "17.6.4.1.1")
        } else {
            let along = (part.extent() / (self.distance * 6.0)).value;
            ("group", 1.0 + along, "17.6.4.2")
        };
        let mut factors = Vec::from(self.root_strength.factors());
        factors.extend([
            Factor::stated("c_a1", self.distance, "17.6.4.1"),
            Factor::stated("A_brg", self.bearing, "17.6.4.1"),
            Factor::seen("N_sb", single, "17.6.4.1"),
            Factor::seen(symbol, factor, clause),
        ]);
        Breakout {
            anchors: part.count(),
            // Other rows carry their part of the force of the group.
            whole: false,
            nominal: single * factor.min(number(part.count())),
            factors,
        }
    }
}
