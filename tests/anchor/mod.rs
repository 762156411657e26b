//! Anchorage to concrete.

mod demand;
mod factors;
mod narrow;
mod open;
mod parts;
mod properties;
mod refused;

use sillmark::anchor::{
    AnchorCheck, AnchorGroup, AnchorSystem, Anchorage, Approval, BaseMaterial, Bedding,
    CastInShape, Category, Concrete, Demand, Ductility, Edge, Edges, Fixing, Pullout, ShearCase,
    ShearDemand, Side, Steel, TensionDemand,
};
use sillmark::quantity::unit::{
    Area, Force, Length, Pressure, inch, pound_force, pound_per_square_inch,
};

fn inches(number: f64) -> Length {
    Length::new::<inch>(number)
}

fn psi(number: f64) -> Pressure {
    Pressure::new::<pound_per_square_inch>(number)
}

fn pounds(number: f64) -> Force {
    Force::new::<pound_force>(number)
}

fn square_inches(number: f64) -> Area {
    number * inches(1.0) * inches(1.0)
}

fn steel() -> Steel {
    Steel {
        area: Some(square_inches(0.226)),
        ultimate: Some(psi(58_000.0)),
        yield_strength: Some(psi(36_000.0)),
        ductility: Some(Ductility::Ductile),
    }
}

fn cast_in() -> Fixing {
    Fixing::CastIn {
        shape: CastInShape::HeadedBolt,
        head_bearing: Some(square_inches(0.454)),
    }
}

fn expansion() -> Fixing {
    Fixing::PostInstalled {
        system: AnchorSystem::TorqueControlled,
        approval: Approval {
            category: Some(Category::One),
            pullout: Pullout::DoesNotGovern,
            ..Approval::default()
        },
    }
}

/// Four 5/8 in bolts, 6 in each way, 5 in deep in a footing with edges all round.
fn four_bolts() -> Anchorage {
    let edges = Edges {
        x_minus: Edge::At(inches(9.0)),
        x_plus: Edge::At(inches(11.0)),
        y_minus: Edge::At(inches(12.0)),
        y_plus: Edge::At(inches(8.0)),
    };
    Anchorage {
        base: BaseMaterial::Concrete(Concrete::normal_weight(psi(4000.0), inches(12.0))),
        fixing: cast_in(),
        diameter: inches(0.625),
        embedment: Some(inches(5.0)),
        steel: steel(),
        bedding: Bedding::Direct,
        group: AnchorGroup::grid((2, inches(6.0)), (2, inches(6.0)), edges).unwrap(),
        shear_case: ShearCase::FrontRow,
    }
}

/// Tension on the row at y-, shear toward y+.
fn water() -> Demand {
    Demand {
        tension: Some(TensionDemand::on_row(Side::YMinus, pounds(3000.0), 2)),
        shear: Some(ShearDemand::even(Side::YPlus, pounds(2000.0), 4)),
    }
}

fn check(anchorage: &Anchorage) -> AnchorCheck {
    anchorage.check(&water()).unwrap()
}
