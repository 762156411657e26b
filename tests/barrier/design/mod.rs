//! The design of a barrier, held against figures worked out by hand on the kit of `kit.toml`:
//! planks of 6 in, S = I = 1.488 (in³, in⁴), Z = 1.693 in³, Av = 0.656 in², 6063-T6 (Fty
//! 25 ksi), E = 10,100 ksi; end posts 2 in wide, planks 1.5 in into their pockets; posts
//! between 4 in wide, planks 1.25 in into theirs. Fresh water weighs 62.4 lb/ft³.

mod anchors;
mod beyond;
mod brace;
mod corner;
mod door;
mod ends;
mod kits;
mod loads;
mod properties;
mod several_spans;
mod units;

use sillmark::barrier::{
    Amount, BarrierDesign, BarrierTask, Check, DesignRules, Kit, LoadCase, MountPlace, Practice,
    Run, design_barrier,
};
use sillmark::load::{CombinationSet, LoadZone, Salinity, WaterCase};
use sillmark::quantity::Length;
use sillmark::quantity::unit::{foot, inch, pound_force};
use sillmark::site::{BraceSide, Mount};

/// Kilograms.
const POUND: f64 = 0.453_592_37;

fn inches(number: f64) -> Length {
    Length::new::<inch>(number)
}

fn feet(number: f64) -> Length {
    Length::new::<foot>(number)
}

const KIT: &str = include_str!("kit.toml");

fn kit() -> Kit {
    Kit::from_toml("kit.toml", KIT).unwrap()
}

/// Load factor 1.0 with allowable stresses, 1.6 with design strengths; δ up to L/120.
fn rules() -> DesignRules {
    rules_of(CombinationSet::DEFAULT)
}

fn rules_of(id: &str) -> DesignRules {
    let practice = Practice::shipped().unwrap();
    let sets = CombinationSet::shipped().unwrap();
    DesignRules {
        combination: sets.into_iter().find(|set| set.id == id).unwrap(),
        zone: LoadZone::Other,
        deflection: practice.deflection.clone(),
        practice,
    }
}

/// A run with an inside mount before still water `depth` deep, as high as that.
fn task(run: Run, depth: Length) -> BarrierTask {
    BarrierTask {
        run,
        height: depth,
        opening_height: None,
        place: MountPlace {
            reveal: Some(inches(8.0)),
            face: None,
            asked: None,
        },
        brace: Some(BraceSide::Dry),
        water: WaterCase::still(depth, Length::default(), Salinity::Fresh),
    }
}

fn opening(width: Length, depth: Length) -> BarrierTask {
    task(Run::straight(width), depth)
}

/// The same on the face of the wall.
fn on_face(mut task: BarrierTask) -> BarrierTask {
    task.place = MountPlace {
        reveal: None,
        face: Some(inches(8.0)),
        asked: Some(Mount::Outside),
    };
    task
}

fn design(task: &BarrierTask, kit: &Kit) -> BarrierDesign {
    design_barrier(task, kit, &rules(), None, None)
        .unwrap()
        .unwrap()
}

/// The check of a kind of a part, with water at the top of the barrier.
fn check<'a>(design: &'a BarrierDesign, part: &str, what: &str) -> &'a Check {
    let wanted =
        |check: &&Check| check.part == part && check.what == what && check.case == LoadCase::Top;
    design.checks().find(wanted).unwrap()
}

fn foot_pounds(amount: Amount) -> f64 {
    amount.in_si() / (0.3048 * 4.448_221_615_260_5)
}

fn pounds(amount: Amount) -> f64 {
    amount.in_si() / 4.448_221_615_260_5
}

fn in_inches(amount: Amount) -> f64 {
    amount.in_si() / 0.0254
}

/// Within a part in a thousand of a figure that was rounded by hand.
#[track_caller]
fn about(found: f64, by_hand: f64) {
    within(found, by_hand, 1e-4);
}

#[track_caller]
fn within(found: f64, expected: f64, part: f64) {
    let room = part * expected.abs().max(f64::MIN_POSITIVE);
    assert!((found - expected).abs() <= room, "{found}, not {expected}");
}

#[track_caller]
fn about_pounds(found: sillmark::quantity::unit::Force, by_hand: f64) {
    about(found.get::<pound_force>(), by_hand);
}
