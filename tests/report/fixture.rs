//! Barriers of the demonstration kit to tell of.

use sillmark::anchor::{
    Approval, BaseMaterial, Bedding, CastInShape, Category, Concrete, Ductility, Edge, Edges,
    Fixing, Pullout, Steel,
};
use sillmark::barrier::{
    BarrierAnswer, BarrierTask, DesignRules, Kit, MountPlace, Practice, Run, Surroundings,
};
use sillmark::load::{
    Behind, BreakingWaves, CombinationSet, Debris, LoadZone, RiskCategory, Salinity, WaterCase,
    WaveAction, WaveLevel,
};
use sillmark::quantity::unit::{
    Area, Force, Length, Pressure, Velocity, foot, foot_per_second, inch, pound_force,
    pound_per_square_inch,
};
use sillmark::site::{AnchorSetting, BraceSide, SillGap};

pub(crate) fn feet(number: f64) -> Length {
    Length::new::<foot>(number)
}

pub(crate) fn inches(number: f64) -> Length {
    Length::new::<inch>(number)
}

fn rules(zone: LoadZone) -> DesignRules {
    let practice = Practice::shipped().unwrap();
    let sets = CombinationSet::shipped().unwrap();
    DesignRules {
        combination: sets
            .into_iter()
            .find(|set| set.id == CombinationSet::DEFAULT)
            .unwrap(),
        zone,
        deflection: practice.deflection.clone(),
        practice,
    }
}

fn task(run: Run, height: Length) -> BarrierTask {
    BarrierTask {
        run,
        height,
        opening_height: None,
        place: MountPlace::default(),
        brace: None,
        water: WaterCase::still(height, feet(0.5), Salinity::Fresh),
    }
}

fn answer(task: &BarrierTask, zone: LoadZone, around: Surroundings<'_>) -> BarrierAnswer {
    let kit = Kit::demonstration().unwrap();
    BarrierAnswer::of(task, &kit, &rules(zone), around)
        .unwrap()
        .unwrap()
}

/// A 36 in door with a reveal of 6 in.
pub(crate) fn door() -> BarrierAnswer {
    let mut task = task(Run::straight(inches(36.0)), feet(2.1));
    task.place.reveal = Some(inches(6.0));
    answer(&task, LoadZone::Other, Surroundings::default())
}

/// The same door before anybody measured, with a gap under its planks, in water deeper than the
/// seals were tested at.
pub(crate) fn unmeasured_door() -> BarrierAnswer {
    let task = task(Run::straight(inches(36.0)), feet(3.5));
    let gap = SillGap {
        length: inches(36.0),
        height: inches(0.02),
    };
    let around = Surroundings {
        gap: Some(gap),
        ..Surroundings::default()
    };
    answer(&task, LoadZone::Other, around)
}

/// A 14 ft gate on the face of the wall, in water that flows and carries objects; the floor is
/// stated in full.
pub(crate) fn gate() -> BarrierAnswer {
    let mut task = task(Run::straight(feet(14.0)), feet(3.0));
    task.place.face = Some(inches(8.0));
    task.brace = Some(BraceSide::Water);
    task.water.velocity = Some(Velocity::new::<foot_per_second>(4.0));
    task.water.debris = Some(Debris::Normal);
    let floor = floor();
    let around = Surroundings {
        floor: Some(&floor),
        ..Surroundings::default()
    };
    answer(&task, LoadZone::Other, around)
}

/// Three legs around a flight of steps, with anchors of which a part is stated.
pub(crate) fn around_steps() -> BarrierAnswer {
    let run = Run::of_legs(vec![feet(4.0), feet(9.0), feet(5.0)]).unwrap();
    let task = task(run, feet(2.5));
    let (floor, jamb) = (floor(), jamb());
    let around = Surroundings {
        floor: Some(&floor),
        jamb: Some(&jamb),
        ..Surroundings::default()
    };
    answer(&task, LoadZone::Other, around)
}

/// A 13 ft opening where waves break; nobody said where a brace may stand.
pub(crate) fn waves() -> BarrierAnswer {
    let mut task = task(Run::straight(feet(13.0)), feet(1.5));
    task.place.reveal = Some(inches(4.0));
    task.water = WaterCase {
        salinity: Salinity::Salt,
        waves: Some(WaveAction::Breaking(BreakingWaves {
            category: RiskCategory::II,
            level: WaveLevel::Stillwater,
            behind: Behind::Dry,
        })),
        ..WaterCase::still(feet(1.0), feet(0.0), Salinity::Salt)
    };
    answer(&task, LoadZone::Coastal, Surroundings::default())
}

/// Too high for the kit, too high for the opening, with neither reveal nor face for a post.
pub(crate) fn too_high() -> BarrierAnswer {
    let mut task = task(Run::straight(feet(18.0)), feet(5.0));
    task.opening_height = Some(feet(4.5));
    task.place.reveal = Some(inches(1.0));
    task.place.face = Some(inches(2.0));
    answer(&task, LoadZone::Other, Surroundings::default())
}

fn square_inches(number: f64) -> Area {
    number * inches(1.0) * inches(1.0)
}

fn psi(number: f64) -> Pressure {
    Pressure::new::<pound_per_square_inch>(number)
}

fn bolts() -> Steel {
    Steel {
        area: Some(square_inches(0.334)),
        ultimate: Some(psi(58_000.0)),
        yield_strength: Some(psi(36_000.0)),
        ductility: Some(Ductility::Ductile),
    }
}

/// A slab with cast-in bolts, stated in full.
fn floor() -> AnchorSetting {
    AnchorSetting {
        base: BaseMaterial::Concrete(Concrete::normal_weight(psi(4000.0), inches(12.0))),
        fixing: Some(Fixing::CastIn {
            shape: CastInShape::HeadedBolt,
            head_bearing: Some(square_inches(0.654)),
        }),
        embedment: Some(inches(8.0)),
        steel: bolts(),
        bedding: Bedding::Direct,
        edges: Edges {
            y_plus: Edge::At(inches(10.0)),
            ..Edges::FAR
        },
    }
}

/// Concrete jambs with screws whose approval nobody has read yet, and edges that nobody measured.
fn jamb() -> AnchorSetting {
    AnchorSetting {
        base: BaseMaterial::Concrete(Concrete::normal_weight(psi(3000.0), inches(8.0))),
        fixing: Some(Fixing::PostInstalled {
            system: sillmark::anchor::AnchorSystem::Screw,
            approval: Approval {
                category: Some(Category::One),
                pullout: Pullout::Stated(Force::new::<pound_force>(1_500.0)),
                ..Approval::default()
            },
        }),
        embedment: None,
        steel: Steel {
            area: Some(square_inches(0.078)),
            ..bolts()
        },
        bedding: Bedding::Direct,
        edges: Edges::UNSTATED,
    }
}

/// Every barrier here, with its name.
pub(crate) fn all() -> [(&'static str, BarrierAnswer); 6] {
    [
        ("door", door()),
        ("unmeasured_door", unmeasured_door()),
        ("gate", gate()),
        ("around_steps", around_steps()),
        ("waves", waves()),
        ("too_high", too_high()),
    ]
}
