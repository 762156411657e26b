#![allow(clippy::unwrap_used)]

use super::pressure;
use crate::barrier::{
    BarrierDesign, BarrierTask, DesignRules, Kit, MountPlace, Run, design_barrier,
};
use crate::load::{
    Behind, BreakingWaves, Debris, LoadZone, RiskCategory, Salinity, SoilGroup, WaterCase,
    WaveAction, WaveLevel,
};
use crate::quantity::unit::{Length, Velocity, foot, foot_per_second};
use crate::report::drawing::fixture::SYSTEMS;
use crate::report::drawing::legible::{assert_legible, texts};
use crate::site::LoadStatement;

fn feet(number: f64) -> Length {
    Length::new::<foot>(number)
}

fn design(height: f64, zone: LoadZone, water: WaterCase) -> BarrierDesign {
    let kit = Kit::demonstration().unwrap();
    let rules = DesignRules::of(&kit, &LoadStatement::default(), zone).unwrap();
    let task = BarrierTask {
        run: Run::straight(feet(3.0)),
        height: feet(height),
        opening_height: None,
        place: MountPlace::default(),
        brace: None,
        water,
    };
    design_barrier(&task, &kit, &rules, None, None)
        .unwrap()
        .unwrap()
}

fn still(height: f64, sill: f64) -> WaterCase {
    WaterCase::still(feet(height), feet(sill), Salinity::Fresh)
}

fn flowing() -> WaterCase {
    WaterCase {
        velocity: Some(Velocity::new::<foot_per_second>(4.0)),
        debris: Some(Debris::Normal),
        soil: Some(SoilGroup::CleanSandOrGravel),
        ..still(2.4, -1.5)
    }
}

fn waves() -> WaterCase {
    WaterCase {
        waves: Some(WaveAction::Breaking(BreakingWaves {
            category: RiskCategory::II,
            level: WaveLevel::Stillwater,
            behind: Behind::Dry,
        })),
        ..WaterCase::still(feet(1.0), feet(0.0), Salinity::Salt)
    }
}

#[test]
fn every_part_has_its_panel() {
    let cases = [
        (
            "still",
            design(2.1, LoadZone::Other, still(2.1, 0.5)),
            vec!["still water"],
        ),
        (
            "flow_and_soil",
            design(2.4, LoadZone::Other, flowing()),
            vec![
                "still water",
                "flowing water",
                "saturated soil",
                "all together",
            ],
        ),
        (
            "waves",
            design(1.5, LoadZone::Coastal, waves()),
            vec!["breaking waves"],
        ),
        (
            "plank",
            design(0.01, LoadZone::Other, still(0.01, 0.0)),
            vec!["still water"],
        ),
        (
            "high",
            design(66.0, LoadZone::Other, still(66.0, 0.5)),
            vec!["still water"],
        ),
        // Water over the top: nobody designs for it, but a drawing takes it.
        (
            "over",
            design(1.0, LoadZone::Other, still(9.0, 0.5)),
            vec!["still water"],
        ),
    ];
    for (name, design, parts) in cases {
        for (units, system) in SYSTEMS {
            let drawing = pressure("one", "goods bay", &design, units).unwrap();
            assert_legible(&format!("{name}, {system}"), &drawing);
            let said: Vec<String> = texts(&drawing).into_iter().map(|one| one.text).collect();
            for part in &parts {
                assert!(said.iter().any(|text| text == part), "{name}: {part}");
            }
            assert_eq!(drawing.matches("class=\"force\"").count(), parts.len());
            insta::assert_snapshot!(format!("{name}_{system}"), drawing);
        }
    }
}

/// 2.5 ft of fresh water at the top of the barrier: 62.4 · 2.5 = 156 psf at the sill, and
/// 62.4 · 2.5² / 2 = 195 lb/ft at a third of the height.
#[test]
fn figures_are_those_of_the_case_that_governs() {
    let design = design(2.1, LoadZone::Other, still(2.1, 0.5));
    let drawing = pressure("one", "door", &design, crate::quantity::UnitSystem::Us).unwrap();
    for text in ["195.0 lb/ft", "at 0.83 ft", "to 156.0 psf"] {
        assert!(drawing.contains(text), "{text}");
    }
    assert!(drawing.contains("water at the top of the barrier, the case that governs"));
}

#[test]
fn a_hostile_name_is_cut_and_harmless() {
    let design = design(2.1, LoadZone::Other, still(2.1, 0.5));
    let name = "<script>alert(1)</script>".repeat(8);
    for (units, system) in SYSTEMS {
        let drawing = pressure("one", &name, &design, units).unwrap();
        assert_legible(system, &drawing);
        assert!(!drawing.contains("<script"));
    }
}
