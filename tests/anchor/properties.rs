//! What holds whatever the numbers.

use proptest::prelude::*;
use sillmark::anchor::{
    AnchorGroup, Anchorage, BaseMaterial, Concrete, Cracking, Demand, Edge, Edges, FactorValue,
    Fixing, Interaction, Mode, ModeCheck, ShearDemand, Side, TensionDemand,
};
use sillmark::quantity::unit::{Length, Pressure, millimeter, pascal};

use super::{cast_in, expansion, four_bolts, inches, pounds, psi, square_inches};

/// What is varied, in inches and psi.
#[derive(Clone, Debug)]
struct Varied {
    edges: [f64; 4],
    spacing: f64,
    columns: u32,
    rows: u32,
    embedment: f64,
    thickness: f64,
    strength: f64,
    fixing: Fixing,
    cracking: Cracking,
}

fn varied() -> impl Strategy<Value = Varied> {
    let numbers = (
        prop::array::uniform4(2.0..40.0),
        3.0..12.0,
        1_u32..4,
        1_u32..4,
        2.0..10.0,
        11.0..40.0,
        2500.0..8000.0,
    );
    let fixing = prop_oneof![Just(cast_in()), Just(expansion())];
    let cracking = prop_oneof![Just(Cracking::Cracked), Just(Cracking::Uncracked)];
    (numbers, fixing, cracking).prop_map(|(numbers, fixing, cracking)| {
        let (edges, spacing, columns, rows, embedment, thickness, strength) = numbers;
        Varied {
            edges,
            spacing,
            columns,
            rows,
            embedment,
            thickness,
            strength,
            fixing,
            cracking,
        }
    })
}

impl Varied {
    fn anchorage(&self) -> Anchorage {
        let [x_minus, x_plus, y_minus, y_plus] = self.edges.map(|edge| Edge::At(inches(edge)));
        let edges = Edges {
            x_minus,
            x_plus,
            y_minus,
            y_plus,
        };
        let spacing = inches(self.spacing);
        Anchorage {
            base: BaseMaterial::Concrete(Concrete {
                cracking: self.cracking,
                ..Concrete::normal_weight(psi(self.strength), inches(self.thickness))
            }),
            fixing: self.fixing.clone(),
            embedment: Some(inches(self.embedment)),
            group: AnchorGroup::grid((self.columns, spacing), (self.rows, spacing), edges).unwrap(),
            ..four_bolts()
        }
    }

    fn demand(&self) -> Demand {
        let count = self.columns * self.rows;
        Demand {
            tension: Some(TensionDemand::even(pounds(1000.0), count)),
            shear: Some(ShearDemand::even(Side::YPlus, pounds(1000.0), count)),
        }
    }

    fn checks(&self) -> Vec<ModeCheck> {
        let check = self.anchorage().check(&self.demand()).unwrap();
        assert!(check.tension.unchecked.is_empty() && check.shear.unchecked.is_empty());
        [check.tension.checked, check.shear.checked].concat()
    }

    /// Whether cones of the full depth do not form (17.6.2.1.2).
    fn is_narrow(&self) -> bool {
        let near = self
            .edges
            .iter()
            .filter(|edge| **edge < 1.5 * self.embedment);
        near.count() >= 3
    }

    /// Demand over strength of each mode. A mode that is not there (far edge) uses nothing.
    fn utilisation(&self, mode: Mode) -> f64 {
        let checks = self.checks();
        let found = checks.iter().find(|check| check.mode == mode);
        found.map_or(0.0, ModeCheck::utilisation)
    }

    /// No mode of `greater` is used more than here.
    fn never_worse(&self, greater: &Self) -> Result<(), TestCaseError> {
        for check in self.checks() {
            let (before, after) = (check.utilisation(), greater.utilisation(check.mode));
            prop_assert!(
                after <= before * (1.0 + 1e-9),
                "{}: {before} to {after}",
                check.mode
            );
        }
        Ok(())
    }
}

proptest! {
    #[test]
    fn a_stronger_concrete_is_never_worse(varied in varied(), more in 1.0..2.0) {
        let greater = Varied { strength: varied.strength * more, ..varied.clone() };
        varied.never_worse(&greater)?;
    }

    #[test]
    fn a_thicker_member_is_never_worse(varied in varied(), more in 1.0..3.0) {
        let greater = Varied { thickness: varied.thickness * more, ..varied.clone() };
        varied.never_worse(&greater)?;
    }

    /// In a narrow member the clause itself lets `ψ_ed,N` fall a little faster than the rest
    /// grows (17.6.2.1.2 raises `h_ef` with the farthest of the near edges).
    #[test]
    fn a_farther_edge_is_never_worse(varied in varied(), side in 0_usize..4, more in 1.0..3.0) {
        let mut greater = varied.clone();
        greater.edges[side] *= more;
        if !varied.is_narrow() {
            varied.never_worse(&greater)?;
        }
    }

    /// As long as the anchors act together: beyond, the corner alone may govern.
    #[test]
    fn a_wider_spacing_is_never_worse(varied in varied(), one in 0.1..0.99, other in 0.1..0.99) {
        let nearest = varied.edges.into_iter().fold(varied.embedment, f64::min);
        let at = |part: f64| Varied { spacing: 3.0 * nearest * part, ..varied.clone() };
        let (less, more) = (f64::min(one, other), f64::max(one, other));
        at(less).never_worse(&at(more))?;
    }

    #[test]
    fn projected_areas_are_never_over_one_for_each_anchor(varied in varied()) {
        let area = |check: &ModeCheck, symbol| match check.strength.factor(symbol) {
            Some(FactorValue::Area(area)) => (area / square_inches(1.0)).value,
            _ => 0.0,
        };
        let count = f64::from(varied.columns * varied.rows);
        for check in varied.checks() {
            prop_assert!(area(&check, "A_Nc") <= count * area(&check, "A_Nco") * (1.0 + 1e-12));
            prop_assert!(area(&check, "A_Vc") <= count * area(&check, "A_Vco") * (1.0 + 1e-12));
        }
    }

    /// The same numbers typed in millimetres and pascals.
    #[test]
    fn both_systems_of_units_agree(varied in varied()) {
        let metric = |length: Length| Length::new::<millimeter>(length.get::<millimeter>());
        let mut anchorage = varied.anchorage();
        let one = anchorage.check(&varied.demand()).unwrap().utilisation().unwrap();
        anchorage.diameter = metric(anchorage.diameter);
        anchorage.embedment = anchorage.embedment.map(metric);
        if let BaseMaterial::Concrete(concrete) = &mut anchorage.base {
            concrete.thickness = concrete.thickness.map(metric);
            concrete.strength = concrete.strength.map(|strength| Pressure::new::<pascal>(strength.get::<pascal>()));
        }
        let other = anchorage.check(&varied.demand()).unwrap().utilisation().unwrap();
        prop_assert!((other / one - 1.0).abs() < 1e-9);
    }

    #[test]
    fn more_of_either_force_is_never_better(
        tension in 0.0..2.0, shear in 0.0..2.0, more in 0.0..1.0,
    ) {
        let less = Interaction { tension, shear };
        for more in [
            Interaction { tension: tension + more, shear },
            Interaction { tension, shear: shear + more },
        ] {
            prop_assert!(more.utilisation() >= less.utilisation());
            prop_assert!(more.power_sum() >= less.power_sum());
        }
        // Neither alone nor together is better than alone.
        prop_assert!(less.utilisation() >= tension.max(shear));
    }
}
