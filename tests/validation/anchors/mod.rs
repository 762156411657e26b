//! Worked examples of anchorage to concrete with printed intermediate results.
//!
//! Guide A: a public design guide to breakout in shear by ACI 318-19 chapter 17, October 2025,
//! viewer.joomag.com, document 0323980001758646474; pages as cited. Its `k_c` of 17 is the code's,
//! its 21 an approval's. It rounds on the way, so tolerances follow its last printed digits.
//!
//! Guide B: a public design guide to ACI 318-19 chapter 17, July 2022, viewer.joomag.com,
//! document 0546853001659024142, which quotes clauses and tables.
//!
//! CCD: numbers of ACI 349.2R-07, examples A1 to A3 (concrete capacity design with the same
//! equations), as the tests of the public repository xcfem/xc carry them
//! (`verif/tests/materials/aci/test_aci_anchor_*.py`).

mod rods;
mod shear;
mod tension;
mod whole;

use sillmark::anchor::{
    AnchorCheck, AnchorGroup, AnchorSystem, Anchorage, Approval, BaseMaterial, Bedding,
    CastInShape, Category, Concrete, Demand, FactorValue, Fixing, Mode, ModeCheck, Pullout,
    ShearCase, ShearDemand, Side, Steel, TensionDemand,
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

/// A factor in the units of the guides: in, in², lb.
fn factor(check: &ModeCheck, symbol: &str) -> f64 {
    match check.strength.factor(symbol).expect(symbol) {
        FactorValue::Number(number) => number,
        FactorValue::Length(length) => length.get::<inch>(),
        FactorValue::Area(area) => (area / square_inches(1.0)).value,
        FactorValue::Force(force) => force.get::<pound_force>(),
        FactorValue::Pressure(pressure) => pressure.get::<pound_per_square_inch>(),
    }
}

fn nominal(check: &ModeCheck) -> f64 {
    check.strength.nominal().get::<pound_force>()
}

fn design(check: &ModeCheck) -> f64 {
    check.strength.design().get::<pound_force>()
}

fn tension(force: f64, count: u32) -> Demand {
    Demand {
        tension: Some(TensionDemand::even(pounds(force), count)),
        shear: None,
    }
}

fn shear(toward: Side, force: f64, count: u32) -> Demand {
    Demand {
        tension: None,
        shear: Some(ShearDemand::even(toward, pounds(force), count)),
    }
}

fn category_1(pullout: Pullout) -> Approval {
    Approval {
        category: Some(Category::One),
        pullout,
        ..Approval::default()
    }
}

/// Anchors in shear toward y-, of which only the breakout counts.
fn wedge(
    concrete: Concrete,
    (diameter, embedment): (f64, f64),
    group: AnchorGroup,
    shear_case: ShearCase,
    eccentricity: f64,
) -> AnchorCheck {
    let anchorage = Anchorage {
        base: BaseMaterial::Concrete(concrete),
        fixing: Fixing::PostInstalled {
            system: AnchorSystem::Adhesive,
            approval: category_1(Pullout::Unstated),
        },
        diameter: inches(diameter),
        embedment: Some(inches(embedment)),
        steel: Steel::default(),
        bedding: Bedding::Direct,
        shear_case,
        group,
    };
    let demand = ShearDemand {
        eccentricity: inches(eccentricity),
        greatest: pounds(1000.0),
        ..ShearDemand::even(Side::YMinus, pounds(1000.0), 1)
    };
    let demand = Demand {
        tension: None,
        shear: Some(demand),
    };
    anchorage.check(&demand).unwrap()
}

const TOWARD: Mode = Mode::ShearBreakout {
    edge: Side::YMinus,
    toward: true,
};

/// One anchor far from all edges, or a group of them, in tension.
fn cone(fixing: Fixing, concrete: Concrete, embedment: f64, group: AnchorGroup) -> ModeCheck {
    let anchorage = Anchorage {
        base: BaseMaterial::Concrete(concrete),
        fixing,
        diameter: inches(0.5),
        embedment: Some(inches(embedment)),
        steel: Steel::default(),
        bedding: Bedding::Direct,
        shear_case: ShearCase::FrontRow,
        group,
    };
    let check = anchorage.check(&tension(1000.0, 1)).unwrap();
    check.tension.mode(Mode::TensionBreakout).unwrap().clone()
}

fn post_installed(system: AnchorSystem) -> Fixing {
    Fixing::PostInstalled {
        system,
        approval: category_1(Pullout::Unstated),
    }
}

fn headed_stud() -> Fixing {
    Fixing::CastIn {
        shape: CastInShape::HeadedStud,
        head_bearing: None,
    }
}

fn thick(strength: f64) -> Concrete {
    Concrete::normal_weight(psi(strength), inches(60.0))
}
