//! What cannot be is refused, with the value and what is accepted.

use sillmark::anchor::{
    AnchorError, AnchorGroup, Anchorage, BaseMaterial, Concrete, Demand, Edge, Edges, Fixing,
    ShearDemand, Side, TensionDemand,
};

use super::{expansion, four_bolts, inches, pounds, psi, water};

fn refused(change: impl Fn(&mut Anchorage)) -> String {
    let mut anchorage = four_bolts();
    change(&mut anchorage);
    anchorage.check(&water()).unwrap_err().to_string()
}

#[test]
fn numbers_that_cannot_be() {
    assert_eq!(
        refused(|anchorage| anchorage.embedment = Some(inches(0.0))),
        "embedment \"0 m\" is not above 0; accepted: a finite value above 0"
    );
    assert!(
        refused(|anchorage| anchorage.diameter = inches(f64::NAN))
            .starts_with("anchor diameter \"NaN m\"")
    );
    assert!(
        refused(|anchorage| anchorage.steel.ultimate = Some(psi(-1.0)))
            .starts_with("tensile strength")
    );
    assert!(
        refused(|anchorage| anchorage.group.edges.x_plus = Edge::At(inches(-2.0)))
            .starts_with("edge distance")
    );
    assert_eq!(
        refused(|anchorage| anchorage.embedment = Some(inches(100.0))),
        "embedment \"2.54 m\" is not less than the thickness; accepted: an embedment below \"0.3048 m\"".replace("0.3048", &inches(12.0).value.to_string())
    );
    assert_eq!(
        refused(|anchorage| {
            anchorage.base = BaseMaterial::Concrete(Concrete {
                lambda: 0.5,
                ..Concrete::unstated()
            });
        }),
        "lightweight factor \"0.5\" is out of range; accepted: 0.75 to 1 (ACI 318-19 19.2.4)"
    );
    assert_eq!(
        refused(|anchorage| {
            anchorage.fixing = expansion();
            if let Fixing::PostInstalled { approval, .. } = &mut anchorage.fixing {
                approval.coefficient_cracked = Some(27.0);
            }
        }),
        "breakout coefficient \"27\" is out of range; accepted: above 0 to 24 (ACI 318-19 17.6.2.2.1)"
    );
}

#[test]
fn groups_that_cannot_be() {
    let none = AnchorGroup::grid((0, inches(4.0)), (2, inches(4.0)), Edges::FAR);
    assert_eq!(none, Err(AnchorError::NoAnchors { what: "columns" }));
    assert!(AnchorGroup::grid((2, inches(0.0)), (1, inches(4.0)), Edges::FAR).is_err());
    let edges = Edges {
        y_minus: Edge::At(inches(f64::INFINITY)),
        ..Edges::FAR
    };
    assert!(AnchorGroup::single(edges).is_err());
}

#[test]
fn demands_that_cannot_be() {
    let anchorage = four_bolts();
    let mut tension = TensionDemand::on_row(Side::YMinus, pounds(3000.0), 2);
    tension.greatest = pounds(1000.0);
    let demand = Demand {
        tension: Some(tension),
        shear: None,
    };
    let message = anchorage.check(&demand).unwrap_err().to_string();
    assert!(
        message.starts_with("greatest tension of an anchor"),
        "{message}"
    );
    let shear = ShearDemand {
        eccentricity: inches(-1.0),
        ..ShearDemand::even(Side::YPlus, pounds(1.0), 4)
    };
    let demand = Demand {
        tension: None,
        shear: Some(shear),
    };
    assert!(anchorage.check(&demand).is_err());
    let demand = Demand {
        tension: Some(TensionDemand::even(pounds(-1.0), 4)),
        shear: None,
    };
    assert!(anchorage.check(&demand).is_err());
}
