//! One site file with every field, read completely.

use sillmark::anchor::{
    AnchorSystem, Approval, BaseMaterial, Bedding, CastInShape, Category, Concrete, Cracking,
    Ductility, Edge, EdgeReinforcement, Edges, Fixing, Pullout, Steel, SupplementaryReinforcement,
};
use sillmark::load::{Debris, FactorBasis, LoadZone, RiskCategory, Salinity, SoilGroup};
use sillmark::quantity::{
    Length, parse_area, parse_duration, parse_force, parse_length, parse_mass, parse_part,
    parse_rain, parse_ratio_of_span, parse_stress, parse_velocity,
};
use sillmark::site::{
    AnchorSetting, CombinationChoice, Conditions, FittingStatement, InsideStatement, SillGap, Site,
    WaterConditions, Waves,
};

const TEXT: &str = include_str!("every_field.toml");

fn site() -> Site {
    Site::from_toml("osier.toml", TEXT).unwrap()
}

fn length(text: &str) -> Length {
    parse_length(text).unwrap()
}

#[test]
fn water_and_loads() {
    let conditions = site().conditions;
    let water = WaterConditions {
        velocity: Some(parse_velocity("2 ft/s").unwrap()),
        salinity: Some(Salinity::Salt),
        waves: Some(Waves::NonBreaking),
        warning: Some(parse_duration("18 h").unwrap()),
        wall_width: Some(length("35 ft")),
    };
    assert_eq!(conditions.water, water);
    let loads = conditions.loads;
    assert_eq!(loads.risk_category, Some(RiskCategory::III));
    assert_eq!(loads.debris, Some(Debris::Normal));
    assert_eq!(loads.extra_depth, Some(length("1 ft")));
    assert_eq!(loads.deflection, parse_ratio_of_span("1/180").ok());
    let Some(CombinationChoice::Written(set)) = loads.combination else {
        panic!("{:?}", loads.combination);
    };
    assert_eq!(set.name, "Town");
    let factor = |basis| set.factor(LoadZone::Other, basis).map(|(factor, _)| factor);
    assert_eq!(factor(FactorBasis::Allowable), Some(1.2));
    assert_eq!(factor(FactorBasis::Strength), Some(1.6));
}

#[test]
fn the_floor() {
    let floor = AnchorSetting {
        base: BaseMaterial::Concrete(Concrete {
            strength: Some(parse_stress("4000 psi").unwrap()),
            thickness: Some(length("12 in")),
            lambda: 0.85,
            cracking: Cracking::Uncracked,
            edge_reinforcement: EdgeReinforcement::Bar,
            supplementary: SupplementaryReinforcement::Present,
        }),
        fixing: Some(Fixing::DropInSleeve {
            approval: Approval {
                category: Some(Category::Two),
                coefficient_cracked: Some(17.0),
                coefficient_uncracked: Some(24.0),
                critical_edge: Some(length("9 in")),
                pullout: Pullout::Stated(parse_force("3200 lb").unwrap()),
                bond: None,
                steel_tension: Some(parse_force("12 kN").unwrap()),
                steel_shear: Some(parse_force("9 kN").unwrap()),
            },
        }),
        embedment: Some(length("3 in")),
        steel: Steel {
            area: Some(parse_area("0.142 in2").unwrap()),
            ultimate: Some(parse_stress("58 ksi").unwrap()),
            yield_strength: Some(parse_stress("36 ksi").unwrap()),
            ductility: Some(Ductility::Ductile),
        },
        bedding: Bedding::Direct,
        edges: Edges {
            x_minus: Edge::At(length("1 ft 2 in")),
            x_plus: Edge::Far,
            y_minus: Edge::Far,
            y_plus: Edge::At(length("8 in")),
        },
    };
    assert_eq!(site().conditions.floor, Some(floor));
}

#[test]
fn the_jamb_and_what_is_not_stated_of_it() {
    let jamb = AnchorSetting {
        base: BaseMaterial::Masonry,
        fixing: Some(Fixing::PostInstalled {
            system: AnchorSystem::Adhesive,
            approval: Approval {
                category: Some(Category::One),
                bond: Some(parse_force("18 kN").unwrap()),
                ..Approval::default()
            },
        }),
        embedment: Some(length("90 mm")),
        steel: Steel::default(),
        bedding: Bedding::GroutPad,
        edges: Edges {
            y_plus: Edge::At(length("100 mm")),
            ..Edges::UNSTATED
        },
    };
    assert_eq!(site().conditions.jamb, Some(jamb));
}

#[test]
fn rooms_and_people() {
    let conditions = site().conditions;
    let inside = InsideStatement {
        floor_area: parse_area("600 ft2").ok(),
        greatest_depth: Some(length("4 in")),
        rain: parse_rain("2 in/h").ok(),
        rain_area: parse_area("55 m2").ok(),
        runoff: parse_part("90%").ok(),
        pump_margin: Some(1.5),
    };
    assert_eq!(conditions.inside, inside);
    let fitting = FittingStatement {
        time_a_plank: parse_duration("2 min").ok(),
        time_a_post: parse_duration("0.25 h").ok(),
        parties: Some(2),
        lift: parse_mass("50 lb").ok(),
    };
    assert_eq!(conditions.fitting, fitting);
}

#[test]
fn an_opening_with_a_floor_and_a_jamb_of_its_own() {
    let site = site();
    let door = &site.openings[0];
    assert_eq!(door.soil, Some(SoilGroup::SoftClay));
    let gap = SillGap {
        length: length("24 in"),
        height: length("0.1 in"),
    };
    assert_eq!(door.gap, Some(gap));
    let nothing = AnchorSetting {
        base: BaseMaterial::Unstated,
        fixing: None,
        embedment: None,
        steel: Steel::default(),
        bedding: Bedding::GroutPad,
        edges: Edges::UNSTATED,
    };
    // In the place of the site's as a whole: nothing of the site's floor comes through.
    let floor = AnchorSetting {
        base: BaseMaterial::Concrete(Concrete::unstated()),
        fixing: Some(Fixing::CastIn {
            shape: CastInShape::HeadedStud,
            head_bearing: parse_area("180 mm2").ok(),
        }),
        ..nothing.clone()
    };
    assert_eq!(door.floor, Some(floor));
    assert_eq!(door.jamb, Some(nothing));
    let gate = &site.openings[1];
    assert_eq!((gate.soil, &gate.floor, &gate.jamb), (None, &None, &None));
    // As long as the run, which is longer than the width.
    assert_eq!(gate.gap.map(|gap| gap.length), Some(length("17 ft")));
}

#[test]
fn the_same_tables_alone_give_the_same_conditions() {
    let after = TEXT.split_once("[water]").unwrap().1;
    let tables = format!("[water]{}", after.split_once("[[opening]]").unwrap().0);
    let alone = Conditions::from_toml("osier.toml", &tables).unwrap();
    assert_eq!(alone, site().conditions);
}
