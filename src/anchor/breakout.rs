//! Concrete breakout in tension (17.6.2).

use super::coefficient::{Coefficient, RootStrength, root_strength};
use super::demand::number;
use super::factor::Factor;
use super::line::Line;
use super::need::{Need, Needs};
use super::{AnchorGroup, AnchorSystem, Anchorage, Concrete, Cracking, Fixing};
use super::{Mode, ModeCheck, Strength, TensionDemand, Unchecked, phi};
use crate::quantity::Length;
use crate::quantity::unit::{Force, inch, pound_force};

/// The strength of anchors that break out together.
pub(super) struct Breakout {
    /// How many they are.
    pub anchors: usize,
    /// Whether they are all of the group.
    pub whole: bool,
    /// Their nominal strength.
    pub nominal: Force,
    /// What it is made of.
    pub factors: Vec<Factor>,
}

impl Breakout {
    /// The strength for each anchor, by which the weakest part of a group is found.
    pub(super) fn per_anchor(&self) -> Force {
        self.nominal / number(self.anchors)
    }

    /// What they have to carry: the force of the group, or, for a part of it, the greatest
    /// share of an anchor for each of them.
    pub(super) fn demand(&self, force: Force, greatest: Force) -> Force {
        if self.whole {
            force
        } else {
            greatest * number(self.anchors)
        }
    }
}

/// The weakest of some parts.
pub(super) fn weakest(parts: impl Iterator<Item = Breakout>) -> Option<Breakout> {
    parts.min_by(|one, other| one.per_anchor().value.total_cmp(&other.per_anchor().value))
}

/// The check of breakout in tension.
pub(super) fn check(
    anchorage: &Anchorage,
    concrete: &Concrete,
    demand: &TensionDemand,
) -> Result<ModeCheck, Unchecked> {
    let mode = Mode::TensionBreakout;
    let group = demand.part_of(&anchorage.group);
    let eccentricity = [demand.eccentricity_x, demand.eccentricity_y];
    let mut needs = Needs::default();
    let phi = phi::breakout_tension(&anchorage.fixing, concrete.supplementary);
    let phi = needs.append(phi.map_err(Needs::from));
    let breakout = needs.append(strength(anchorage, concrete, &group, eccentricity));
    let (Some(phi), Some(breakout)) = (phi, breakout) else {
        return Err(needs.unchecked(mode));
    };
    Ok(ModeCheck {
        mode,
        demand: breakout.demand(demand.force, demand.greatest),
        strength: Strength::new(breakout.nominal, phi, breakout.factors),
    })
}

/// The nominal breakout strength of a group, or of its weakest part where anchors stand 3 `h_ef`
/// or more apart and do not act together (17.5.1.3).
pub(super) fn strength(
    anchorage: &Anchorage,
    concrete: &Concrete,
    group: &AnchorGroup,
    eccentricity: [Length; 2],
) -> Result<Breakout, Needs> {
    let mut needs = Needs::default();
    let strength = needs.take(concrete.strength, Need::ConcreteStrength);
    let embedment = needs.take(anchorage.embedment, Need::Embedment);
    let x = needs.append(group.line(true).map_err(Needs::edges));
    let y = needs.append(group.line(false).map_err(Needs::edges));
    let coefficient = Coefficient::of(&anchorage.fixing, concrete.cracking);
    let coefficient = needs.append(coefficient.map_err(Needs::from));
    let (Some(_), Some(embedment), Some(x), Some(y), Some(coefficient)) =
        (strength, embedment, x, y, coefficient)
    else {
        return Err(needs);
    };
    let cone = Cone {
        fixing: &anchorage.fixing,
        root_strength: root_strength(concrete, &anchorage.fixing),
        uncracked: concrete.cracking == Cracking::Uncracked,
        embedment,
        coefficient,
    };
    let (x_parts, y_parts) = (x.clusters(embedment * 3.0), y.clusters(embedment * 3.0));
    let whole = x_parts.len() * y_parts.len() == 1;
    // The greatest share of an anchor already holds the eccentricity of a parted group.
    let eccentricity = if whole {
        eccentricity
    } else {
        Default::default()
    };
    let parts = x_parts
        .iter()
        .flat_map(|x| y_parts.iter().map(move |y| (x, y)))
        .map(|(x, y)| cone.breakout(x, y, eccentricity, whole));
    weakest(parts).ok_or(needs)
}

/// What all parts of a group have in common.
struct Cone<'a> {
    fixing: &'a Fixing,
    root_strength: RootStrength,
    uncracked: bool,
    embedment: Length,
    coefficient: Coefficient,
}

impl Cone<'_> {
    fn breakout(&self, x: &Line, y: &Line, eccentricity: [Length; 2], whole: bool) -> Breakout {
        let embedment = self.effective_embedment(x, y);
        let reach = embedment * 1.5;
        let anchors = x.count() * y.count();
        let single = embedment * embedment * 9.0;
        let projected = (x.covered(reach) * y.covered(reach)).min(single * number(anchors));
        let nearest = edge_distances(x, y).into_iter().fold(reach, Length::min);
        let edge = 0.7 + 0.3 * (nearest / reach).value;
        let [off_x, off_y] = eccentricity.map(|off| 1.0 / (1.0 + (off / reach).value));
        let basic = self.basic(embedment);
        let mut factors = Vec::from(self.root_strength.factors());
        factors.push(self.coefficient.k.clone());
        factors.push(self.embedment_factor(embedment));
        factors.extend([
            Factor::seen("A_Nc", projected, "17.6.2.1.1"),
            Factor::seen("A_Nco", single, "17.6.2.1.4"),
            Factor::seen("psi_ec,N,x", off_x, "17.6.2.3.1"),
            Factor::seen("psi_ec,N,y", off_y, "17.6.2.3.1"),
            Factor::seen("psi_ed,N", edge, "17.6.2.4.1"),
        ]);
        factors.push(self.coefficient.psi_cracking.clone());
        let splitting = self.splitting(x, y, embedment);
        factors.push(Factor::seen("psi_cp,N", splitting, "17.6.2.6.1"));
        factors.push(basic.1);
        let psi_cracking = self.coefficient.psi_cracking.number();
        let nominal = basic.0 * (projected / single).value;
        Breakout {
            anchors,
            whole,
            nominal: nominal * off_x * off_y * edge * psi_cracking * splitting,
            factors,
        }
    }

    /// `N_b`, and as a factor.
    fn basic(&self, embedment: Length) -> (Force, Factor) {
        let depth = embedment.get::<inch>();
        let deep = matches!(self.fixing, Fixing::CastIn { .. }) && (11.0..=25.0).contains(&depth);
        let (pounds, clause) = if deep {
            (16.0 * depth.powf(5.0 / 3.0), "17.6.2.2.3")
        } else {
            (self.coefficient.k.number() * depth.powf(1.5), "17.6.2.2.1")
        };
        let basic = Force::new::<pound_force>(pounds * self.root_strength.value());
        (basic, Factor::seen("N_b", basic, clause))
    }

    /// In a narrow member, closer than 1.5 `h_ef` to three edges or four, cones of the full depth
    /// do not form: `h_ef` is at most the greater of `c_a,max`/1.5 and s/3 (17.6.2.1.2, from memory).
    fn effective_embedment(&self, x: &Line, y: &Line) -> Length {
        let reach = self.embedment * 1.5;
        let near = edge_distances(x, y)
            .into_iter()
            .filter(|edge| *edge < reach);
        let near: Vec<_> = near.collect();
        if near.len() < 3 {
            return self.embedment;
        }
        let widest = near.into_iter().fold(Length::default(), Length::max);
        let spacing = x.greatest_spacing().max(y.greatest_spacing());
        (widest / 1.5).max(spacing / 3.0).min(self.embedment)
    }

    fn embedment_factor(&self, used: Length) -> Factor {
        if used < self.embedment {
            Factor::from_memory("h_ef", used, "17.6.2.1.2")
        } else {
            Factor::stated("h_ef", used, "17.6.2.2.1")
        }
    }

    /// `ψ_cp,N`: splitting of uncracked concrete by post-installed anchors near an edge.
    fn splitting(&self, x: &Line, y: &Line, embedment: Length) -> f64 {
        let Some(critical) = self.critical_edge().filter(|_| self.uncracked) else {
            return 1.0;
        };
        let nearest = edge_distances(x, y).into_iter().fold(critical, Length::min);
        (nearest.max(embedment * 1.5) / critical).value.min(1.0)
    }

    /// `c_ac`, from the approval or by 17.9.5; `None` for a cast-in anchor.
    fn critical_edge(&self) -> Option<Length> {
        let system = self.fixing.system()?;
        let tested = self
            .fixing
            .approval()
            .and_then(|approval| approval.critical_edge);
        let by_code = self.embedment * AnchorSystem::critical_edge_in_embedments(system);
        Some(tested.unwrap_or(by_code))
    }
}

fn edge_distances(x: &Line, y: &Line) -> [Length; 4] {
    let [[west, east], [near, far]] = [x.edge_distances(), y.edge_distances()];
    [west, east, near, far]
}
