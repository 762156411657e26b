//! Anchors that stand too far apart to act together: each part answers for itself.

use approx::assert_relative_eq;
use sillmark::anchor::{
    AnchorGroup, Anchorage, BaseMaterial, Concrete, Demand, Edge, Edges, Mode, ShearDemand, Side,
    TensionDemand,
};
use sillmark::quantity::unit::pound_force;

use super::{four_bolts, inches, pounds, psi};

/// Two anchors 4 in deep, the first 3 in from a corner's edge, at 11.9 and at 12 in (3 `h_ef`).
/// By hand: `N_b` = 24 · √4000 · 4^1.5 = 12,143 lb, `ψ_ed,N` = 0.7 + 0.3 · 3/6 = 0.85. Together:
/// `A_Nc`/`A_Nco` = (3 + 11.9 + 6) · 12 / 144. Apart the first alone: (3 + 6) · 12 / 144 = 0.75.
#[test]
fn beyond_three_embedments_the_edge_anchor_governs_alone() {
    let breakout = |spacing| {
        let edges = Edges {
            x_minus: Edge::At(inches(3.0)),
            ..Edges::FAR
        };
        let anchorage = Anchorage {
            base: BaseMaterial::Concrete(Concrete::normal_weight(psi(4000.0), inches(20.0))),
            embedment: Some(inches(4.0)),
            group: AnchorGroup::new([inches(spacing)], [], edges).unwrap(),
            ..four_bolts()
        };
        let demand = TensionDemand {
            eccentricity_x: inches(0.6),
            greatest: pounds(700.0),
            ..TensionDemand::even(pounds(1000.0), 2)
        };
        let demand = Demand {
            tension: Some(demand),
            shear: None,
        };
        let check = anchorage.check(&demand).unwrap();
        let breakout = check.tension.mode(Mode::TensionBreakout).unwrap();
        let pounds = |force: sillmark::quantity::unit::Force| force.get::<pound_force>();
        (pounds(breakout.strength.nominal()), pounds(breakout.demand))
    };
    let basic = 24.0 * 4000.0_f64.sqrt() * 8.0;
    let (together, demand) = breakout(11.9);
    let eccentric = 1.0 / (1.0 + 0.6 / 6.0);
    assert_relative_eq!(
        together,
        basic * 0.85 * 20.9 / 12.0 * eccentric,
        max_relative = 1e-9
    );
    assert_relative_eq!(demand, 1000.0, max_relative = 1e-9);
    // Apart, the greatest share stands for the eccentricity.
    let (apart, demand) = breakout(12.0);
    assert_relative_eq!(apart, basic * 0.85 * 0.75, max_relative = 1e-9);
    assert_relative_eq!(demand, 700.0, max_relative = 1e-9);
}

/// The same in shear: two anchors 4 in from the edge, 2 in from a corner, 12 in apart; the row
/// takes the shear of both rows. By hand: `c_a1` = 4, 1.5 `c_a1` = 6, `ψ_ed,V` = 0.7 + 0.3 · 2/6 = 0.8;
/// `A_Vc`/`A_Vco` = (2 + 6) · 6 / 72.
#[test]
fn beyond_three_edge_distances_the_corner_governs_alone() {
    let edges = Edges {
        x_minus: Edge::At(inches(2.0)),
        y_plus: Edge::At(inches(4.0)),
        ..Edges::FAR
    };
    let anchorage = Anchorage {
        base: BaseMaterial::Concrete(Concrete::normal_weight(psi(4000.0), inches(20.0))),
        group: AnchorGroup::new([inches(12.0)], [inches(3.0)], edges).unwrap(),
        ..four_bolts()
    };
    let demand = Demand {
        tension: None,
        shear: Some(ShearDemand::even(Side::YPlus, pounds(4000.0), 4)),
    };
    let check = anchorage.check(&demand).unwrap();
    let toward = Mode::ShearBreakout {
        edge: Side::YPlus,
        toward: true,
    };
    let breakout = check.shear.mode(toward).unwrap();
    // l_e/d_a = 8: 7 · 8^0.2 · √0.625 = 8.388 of √f'c c_a1^1.5, less than 9.
    let basic = 7.0 * 8.0_f64.powf(0.2) * 0.625_f64.sqrt() * 4000.0_f64.sqrt() * 8.0;
    let nominal = breakout.strength.nominal().get::<pound_force>();
    assert_relative_eq!(nominal, basic * 0.8 * 48.0 / 72.0, max_relative = 1e-9);
    assert_relative_eq!(
        breakout.demand.get::<pound_force>(),
        2000.0,
        max_relative = 1e-9
    );
}
