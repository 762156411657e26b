//! Narrow members: the examples of the figures to the commentary of ACI 318, from memory, with
//! all numbers worked out by hand.

use approx::assert_abs_diff_eq;
use sillmark::anchor::{
    AnchorGroup, Anchorage, BaseMaterial, Concrete, Demand, Edge, Edges, FactorValue, Mode,
    ModeCheck, ShearDemand, Side, TensionDemand,
};
use sillmark::quantity::unit::inch;
use sillmark::statement::Confidence;

use super::{four_bolts, inches, pounds, psi, square_inches};

fn length(check: &ModeCheck, symbol: &str) -> f64 {
    match check.strength.factor(symbol) {
        Some(FactorValue::Length(length)) => length.get::<inch>(),
        other => panic!("{symbol}: {other:?}"),
    }
}

fn area(check: &ModeCheck, symbol: &str) -> f64 {
    match check.strength.factor(symbol) {
        Some(FactorValue::Area(area)) => (area / square_inches(1.0)).value,
        other => panic!("{symbol}: {other:?}"),
    }
}

fn said(check: &ModeCheck, symbol: &str) -> Confidence {
    let mut factors = check.strength.factors().iter();
    factors
        .find(|factor| factor.symbol == symbol)
        .unwrap()
        .confidence
}

/// Two anchors 9 in apart, 5.5 in deep, 4, 6 and 5 in from three edges: `h_ef` counts as
/// max(6/1.5, 9/3) = 4 in, and `A_Nc` = (6 + 4)(5 + 9 + 1.5 · 4) = 200 in².
#[test]
fn three_edges_reduce_the_embedment() {
    let edges = Edges {
        x_minus: Edge::At(inches(4.0)),
        x_plus: Edge::At(inches(6.0)),
        y_minus: Edge::At(inches(5.0)),
        y_plus: Edge::Far,
    };
    let anchorage = Anchorage {
        embedment: Some(inches(5.5)),
        group: AnchorGroup::grid((1, inches(1.0)), (2, inches(9.0)), edges).unwrap(),
        ..four_bolts()
    };
    let demand = Demand {
        tension: Some(TensionDemand::even(pounds(1000.0), 2)),
        shear: None,
    };
    let check = anchorage.check(&demand).unwrap();
    let breakout = check.tension.mode(Mode::TensionBreakout).unwrap();
    assert_abs_diff_eq!(length(breakout, "h_ef"), 4.0, epsilon = 1e-9);
    assert_abs_diff_eq!(area(breakout, "A_Nc"), 200.0, epsilon = 1e-9);
    assert_abs_diff_eq!(area(breakout, "A_Nco"), 144.0, epsilon = 1e-9);
    assert_eq!(said(breakout, "h_ef"), Confidence::FromMemory);
}

/// Two anchors 9 in apart, 12 in from the edge, 5 and 7 in from the corners, 8 in thick: `c_a1`
/// counts as max(7/1.5, 8/1.5, 9/3) = 5.33 in, and `A_Vc` = (5 + 9 + 7) · 1.5 · 5.33 = 168 in².
#[test]
fn narrow_and_thin_reduces_the_edge_distance() {
    let anchorage = |thickness| Anchorage {
        base: BaseMaterial::Concrete(Concrete::normal_weight(psi(4000.0), inches(thickness))),
        group: AnchorGroup::grid(
            (2, inches(9.0)),
            (1, inches(1.0)),
            Edges {
                x_minus: Edge::At(inches(5.0)),
                x_plus: Edge::At(inches(7.0)),
                y_minus: Edge::Far,
                y_plus: Edge::At(inches(12.0)),
            },
        )
        .unwrap(),
        ..four_bolts()
    };
    let demand = Demand {
        tension: None,
        shear: Some(ShearDemand::even(Side::YPlus, pounds(1000.0), 2)),
    };
    let toward = Mode::ShearBreakout {
        edge: Side::YPlus,
        toward: true,
    };
    let check = anchorage(8.0).check(&demand).unwrap();
    let breakout = check.shear.mode(toward).unwrap();
    assert_abs_diff_eq!(length(breakout, "c_a1"), 16.0 / 3.0, epsilon = 1e-9);
    assert_abs_diff_eq!(area(breakout, "A_Vc"), 168.0, epsilon = 1e-9);
    assert_eq!(said(breakout, "c_a1"), Confidence::FromMemory);
    // Thick enough, it is narrow alone and the whole 12 in count.
    let check = anchorage(18.0).check(&demand).unwrap();
    let breakout = check.shear.mode(toward).unwrap();
    assert_abs_diff_eq!(length(breakout, "c_a1"), 12.0, epsilon = 1e-9);
}
