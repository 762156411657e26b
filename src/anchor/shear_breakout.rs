//! Concrete breakout in shear (17.7.2).

use super::breakout::{Breakout, weakest};
use super::coefficient::{RootStrength, root_strength};
use super::demand::number;
use super::factor::Factor;
use super::line::Line;
use super::need::{Need, Needs};
use super::{Anchorage, Concrete, Cracking, EdgeReinforcement, Mode, ModeCheck};
use super::{ShearCase, ShearDemand, Side, Strength, Unchecked, phi};
use crate::quantity::Length;
use crate::quantity::unit::{Force, inch, pound_force};

/// The check of breakout to one edge; `None` where the edge is far.
pub(super) fn check(
    anchorage: &Anchorage,
    concrete: &Concrete,
    demand: &ShearDemand,
    edge: Side,
) -> Option<Result<ModeCheck, Unchecked>> {
    let toward = edge == demand.toward;
    let mode = Mode::ShearBreakout { edge, toward };
    let wedge = match Wedge::known(anchorage, concrete, demand, edge) {
        Ok(wedge) if wedge.edge_distance.value.is_infinite() => return None,
        Ok(wedge) => wedge,
        Err(needs) => return Some(Err(needs.unchecked(mode))),
    };
    let breakout = wedge.weakest()?;
    // The row that breaks out takes the shear of all rows.
    let rows = anchorage.group.count() / wedge.row.count();
    let greatest = demand.greatest * number(rows);
    Some(Ok(ModeCheck {
        mode,
        demand: breakout.demand(demand.force, greatest),
        strength: Strength::new(
            breakout.nominal,
            phi::breakout_shear(concrete.supplementary),
            breakout.factors,
        ),
    }))
}

/// The row that breaks out, and what all parts of it have in common.
struct Wedge {
    row: Line,
    edge_distance: Length,
    thickness: Length,
    embedment: Length,
    diameter: Length,
    root_strength: RootStrength,
    cracking: Factor,
    eccentricity: Length,
    parallel: bool,
}

impl Wedge {
    fn known(
        anchorage: &Anchorage,
        concrete: &Concrete,
        demand: &ShearDemand,
        edge: Side,
    ) -> Result<Self, Needs> {
        let mut needs = Needs::default();
        let parallel = edge != demand.toward;
        let strength = needs.take(concrete.strength, Need::ConcreteStrength);
        let thickness = needs.take(concrete.thickness, Need::Thickness);
        let embedment = needs.take(anchorage.embedment, Need::Embedment);
        let across = anchorage.group.line(edge.across_x());
        // The edge behind the force takes no part.
        let across = across.or_else(|sides| {
            if sides.contains(&edge) {
                Err(Needs::from(Need::Edge(edge)))
            } else {
                anchorage
                    .group
                    .line_without_edge(edge.opposite())
                    .map_err(Needs::edges)
            }
        });
        let across = needs.append(across);
        let row = anchorage.group.line(!edge.across_x()).map_err(Needs::edges);
        let row = needs.append(row);
        let (Some(_), Some(thickness), Some(embedment), Some(across), Some(row)) =
            (strength, thickness, embedment, across, row)
        else {
            return Err(needs);
        };
        let [before, after] = across.edge_distances();
        let nearest = if matches!(edge, Side::XMinus | Side::YMinus) {
            before
        } else {
            after
        };
        let behind = match anchorage.shear_case {
            ShearCase::WeldedBackRow if !parallel => across.extent(),
            _ => Length::default(),
        };
        Ok(Self {
            row,
            edge_distance: nearest + behind,
            thickness,
            embedment,
            diameter: anchorage.diameter,
            root_strength: root_strength(concrete, &anchorage.fixing),
            cracking: cracking(concrete),
            eccentricity: demand.eccentricity,
            parallel,
        })
    }

    /// The weakest part of the row, where anchors stand 3 `c_a1` or more apart and do not act
    /// together (17.5.1.3).
    fn weakest(&self) -> Option<Breakout> {
        let parts = self.row.clusters(self.edge_distance * 3.0);
        let whole = parts.len() == 1;
        weakest(parts.iter().map(|part| self.breakout(part, whole)))
    }

    fn breakout(&self, part: &Line, whole: bool) -> Breakout {
        let distance = self.effective_edge_distance(part);
        let reach = distance * 1.5;
        let single = distance * distance * 4.5;
        let projected = part.covered(reach) * reach.min(self.thickness);
        let projected = projected.min(single * number(part.count()));
        let corner = part.edge_distances().into_iter().fold(reach, Length::min);
        let edge = if self.parallel {
            1.0
        } else {
            0.7 + 0.3 * (corner / reach).value
        };
        let off = if whole {
            self.eccentricity
        } else {
            Length::default()
        };
        let off = 1.0 / (1.0 + (off / reach).value);
        let thin = (reach / self.thickness).value.sqrt().max(1.0);
        let along = if self.parallel { 2.0 } else { 1.0 };
        let (basic, basic_factors) = self.basic(distance);
        let cracking = self.cracking.number();
        let nominal = basic * (projected / single).value * off * edge * cracking * thin * along;
        let mut factors = Vec::from(self.root_strength.factors());
        factors.push(self.distance_factor(distance));
        factors.extend([
            Factor::seen("A_Vc", projected, "17.7.2.1.1"),
            Factor::seen("A_Vco", single, "17.7.2.1.3"),
            Factor::seen("psi_ec,V", off, "17.7.2.3.1"),
            Factor::seen("psi_ed,V", edge, "17.7.2.4.1"),
            self.cracking.clone(),
            Factor::seen("psi_h,V", thin, "17.7.2.6.1"),
            Factor::seen("parallel", along, "17.7.2.1(c)"),
        ]);
        factors.extend(basic_factors);
        Breakout {
            anchors: part.count(),
            whole,
            nominal,
            factors,
        }
    }

    /// `V_b`, and with what it was chosen from. The 8 that 17.7.2.2.2 gives studs welded to a
    /// stiff plate is not used: the 7 is safe for them.
    fn basic(&self, distance: Length) -> (Force, [Factor; 4]) {
        let bearing = self.embedment.min(self.diameter * 8.0);
        let diameter = self.diameter.get::<inch>();
        let slender = 7.0 * (bearing / self.diameter).value.powf(0.2) * diameter.sqrt();
        let pounds = self.root_strength.value() * distance.get::<inch>().powf(1.5);
        let by_steel = Force::new::<pound_force>(slender * pounds);
        let by_concrete = Force::new::<pound_force>(9.0 * pounds);
        let basic = by_steel.min(by_concrete);
        let factors = [
            Factor::seen("l_e", bearing, "17.7.2.2.1"),
            Factor::seen("V_b(a)", by_steel, "17.7.2.2.1(a)"),
            Factor::seen("V_b(b)", by_concrete, "17.7.2.2.1(b)"),
            Factor::seen("V_b", basic, "17.7.2.2.1"),
        ];
        (basic, factors)
    }

    /// In a narrow and thin member `c_a1` is at most the greatest of `c_a2`/1.5, `h_a`/1.5 and s/3
    /// (17.7.2.1.2, from memory).
    fn effective_edge_distance(&self, part: &Line) -> Length {
        let reach = self.edge_distance * 1.5;
        let corners = part.edge_distances();
        let narrow = corners.iter().all(|corner| *corner < reach) && self.thickness < reach;
        if !narrow {
            return self.edge_distance;
        }
        let widest = corners.into_iter().fold(self.thickness, Length::max);
        (widest / 1.5)
            .max(part.greatest_spacing() / 3.0)
            .min(self.edge_distance)
    }

    fn distance_factor(&self, used: Length) -> Factor {
        if used < self.edge_distance {
            Factor::from_memory("c_a1", used, "17.7.2.1.2")
        } else {
            Factor::stated("c_a1", used, "17.7.2.2.1")
        }
    }
}

/// `ψ_c,V`.
fn cracking(concrete: &Concrete) -> Factor {
    let psi = match (concrete.cracking, concrete.edge_reinforcement) {
        (Cracking::Uncracked, _) | (Cracking::Cracked, EdgeReinforcement::BarInStirrups) => 1.4,
        (Cracking::Cracked, EdgeReinforcement::Bar) => 1.2,
        (Cracking::Cracked, EdgeReinforcement::NoneOrSmall) => 1.0,
    };
    Factor::seen("psi_c,V", psi, "17.7.2.5.1")
}
