//! What holds of every barrier.

use super::{feet, inches, kit, on_face, opening, rules, task, within};
use proptest::prelude::*;
use sillmark::barrier::{
    BarrierDesign, BarrierTask, Basis, Check, Kit, LoadCase, PlankLoad, PostFit, Run, Shortfall,
    Upright, design_barrier, divide, plank_checks,
};
use sillmark::load::Debris;
use sillmark::quantity::Length;
use sillmark::quantity::unit::{Velocity, centimeter, foot_per_second, pounds_per_foot};

fn found(task: &BarrierTask, kit: &Kit) -> BarrierDesign {
    design_barrier(task, kit, &rules(), None, None)
        .unwrap()
        .unwrap()
}

/// A kit with the metal of its planks and posts scaled.
fn scaled_kit(planks: f64, posts: f64) -> Kit {
    let mut scaled = kit();
    scaled.plank.section.second_moment *= planks;
    let between = scaled
        .posts
        .intermediate
        .iter_mut()
        .chain(&mut scaled.posts.corner);
    for post in between {
        let section = &mut post.section;
        section.elastic_modulus *= posts;
        section.plastic_modulus = section.plastic_modulus.map(|plastic| plastic * posts);
    }
    scaled
}

/// What end posts and posts between take of a leg.
fn taken(kit: &Kit, task: &BarrierTask, leg: usize, found: &BarrierDesign) -> Length {
    let last = task.run.corners();
    let end = |at_wall: bool| match (at_wall, &kit.posts.inside, &kit.posts.corner) {
        (true, Some(_), _) if task.place.reveal.is_none() => Length::default(),
        (true, Some(inside), _) => inside.width,
        (false, _, Some(corner)) => corner.width / 2.0,
        _ => unreachable!(),
    };
    let between = kit.posts.intermediate.as_ref().unwrap().width;
    #[allow(clippy::cast_precision_loss)]
    let posts = (found.legs[leg].leg.spans.len() - 1) as f64;
    end(leg == 0) + end(leg == last) + between * posts
}

fn tasks() -> impl Strategy<Value = BarrierTask> {
    let run = prop_oneof![
        (0.5..60.0_f64).prop_map(|width| Run::straight(feet(width))),
        prop::collection::vec(1.0..30.0_f64, 2..6)
            .prop_map(|legs| Run::of_legs(legs.into_iter().map(feet).collect()).unwrap()),
    ];
    (run, 0.1..6.0_f64, 0.0..9.0_f64, any::<bool>(), 0..3_u8).prop_map(
        |(run, depth, speed, outside, debris)| {
            let mut task = task(run, feet(depth));
            if outside && task.run.corners() == 0 {
                task = on_face(task);
            }
            task.water.velocity = Some(Velocity::new::<foot_per_second>(speed));
            task.water.debris =
                [None, Some(Debris::Normal), Some(Debris::Special)][usize::from(debris)];
            task
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn lengths_add_up(task in tasks(), planks in 0.2..5.0_f64, posts in 0.05..2.0_f64) {
        let kit = scaled_kit(planks, posts);
        let found = found(&task, &kit);
        for (leg, planned) in found.legs.iter().enumerate() {
            let clear: Length = planned.leg.spans.iter().map(|span| span.clear).sum();
            let whole = clear + taken(&kit, &task, leg, &found);
            within(whole.value, task.run.legs()[leg].value, 1e-12);
            for span in &planned.leg.spans {
                prop_assert!(span.clear < span.bearing && span.bearing < span.cut);
            }
        }
        let planks: u32 = found.pieces.iter().filter(|piece| piece.name == "plank").map(|piece| piece.count).sum();
        prop_assert_eq!(planks, found.stack.count * found.spans());
    }

    /// A check that fails is a shortfall, and no shortfall of strength is without a failing check.
    #[test]
    fn failing_is_said(task in tasks(), planks in 0.05..5.0_f64, posts in 0.01..2.0_f64) {
        let found = found(&task, &scaled_kit(planks, posts));
        let failing: Vec<_> = found.checks().filter(|check| !check.holds()).collect();
        let said: Vec<_> = found.shortfalls.iter().filter_map(|shortfall| match shortfall {
            Shortfall::Fails(check) => Some(check),
            _ => None,
        }).collect();
        prop_assert_eq!(failing, said);
        if let Some(governing) = found.governing() {
            prop_assert_eq!(governing.holds(), found.checks().all(Check::holds));
        }
        if found.legs.len() < task.run.legs().len() {
            let no_room = |shortfall: &Shortfall| matches!(shortfall, Shortfall::NoRoom { .. });
            prop_assert!(found.shortfalls.iter().any(no_room));
        }
        for planned in &found.legs {
            prop_assert_eq!(planned.divided_because.is_empty(), planned.leg.spans.len() == 1);
        }
    }

    /// All demands grow with the depth.
    #[test]
    fn force_grows_with_depth(width in 1.0..20.0_f64, shallow in 0.1..4.0_f64, more in 0.0..2.0_f64) {
        let force = |depth: f64| {
            let found = found(&opening(feet(width), feet(depth)), &kit());
            let load = found.load(LoadCase::DesignLevel).unwrap();
            load.on_barrier.resultant().force
        };
        prop_assert!(force(shallow + more) >= force(shallow));
    }

    /// One more post between never loads a plank more.
    #[test]
    fn another_post_relieves_the_planks(length in 30.0..600.0_f64, spans in 1..20_u32, load in 1.0..500.0_f64) {
        let end = PostFit { taken: inches(2.0), engagement: inches(1.5) };
        let between = PostFit { taken: inches(4.0), engagement: inches(1.25) };
        let of = |spans| divide(inches(length), [end, end], Some(between), spans);
        if let (Some(fewer), Some(more)) = (of(spans), of(spans + 1)) {
            let (rules, plank) = (rules(), kit().plank);
            let basis = Basis::of(&plank.material, &rules.combination, rules.zone, &rules.deflection).unwrap();
            let load = PlankLoad { water: pounds_per_foot(load), blow: None };
            let checks = |bearing| plank_checks(&plank, "plank", bearing, load, &basis, LoadCase::Top).unwrap();
            let (fewer, more) = (checks(fewer.longest_bearing()), checks(more.longest_bearing()));
            for (fewer, more) in fewer.iter().zip(&more) {
                prop_assert!(more.ratio() <= fewer.ratio());
                prop_assert!(more.demand.in_si() <= fewer.demand.in_si());
            }
        }
    }

    /// Twice the width is never less work: spans, posts, planks and the whole force. (A single
    /// piece may well be shorter, since it is one of more.)
    #[test]
    fn twice_the_width_is_no_less(width in 1.0..30.0_f64, depth in 0.3..4.0_f64, posts in 0.05..1.0_f64) {
        let kit = scaled_kit(1.0, posts);
        let of = |width: f64| {
            let found = found(&opening(feet(width), feet(depth)), &kit);
            let force = found.load(LoadCase::Top).unwrap().on_barrier.resultant().force * feet(width);
            let planks = found.pieces.iter().filter(|piece| piece.name == "plank");
            let length: f64 = planks.map(|piece| piece.length.value * f64::from(piece.count)).sum();
            let fails = found.shortfalls.iter().any(|shortfall| matches!(shortfall, Shortfall::Fails(_)));
            (found.spans(), found.count(Upright::Intermediate), force, length, fails)
        };
        let (one, two) = (of(width), of(2.0 * width));
        prop_assert!(one.4 || two.4 || (two.0 >= one.0 && two.1 >= one.1));
        prop_assert!(two.2 > one.2 && two.3 > one.3);
    }

    /// The longest span passes, and a thousandth more does not, unless it is the longest piece.
    #[test]
    fn the_longest_span_is_the_longest(
        depth in 0.3..8.0_f64,
        speed in 0.0..9.0_f64,
        debris in any::<bool>(),
        planks in 0.1..5.0_f64,
    ) {
        let kit = scaled_kit(planks, 1.0);
        let mut task = opening(inches(36.0), feet(depth));
        task.water.velocity = Some(Velocity::new::<foot_per_second>(speed));
        task.water.debris = debris.then_some(Debris::Normal);
        let design = found(&task, &kit);
        let Some(longest) = design.longest_span else { return Ok(()) };
        // An opening whose one span bears over that length: the end posts take 2 in each and
        // hold half of 1.5 in of plank each.
        let with_bearing = |bearing: Length| {
            let mut task = task.clone();
            task.run = Run::straight(bearing + inches(2.5));
            let mut rules = rules();
            rules.practice.wider_than = feet(1000.0);
            design_barrier(&task, &kit, &rules, None, None).unwrap().unwrap()
        };
        prop_assert_eq!(with_bearing(longest * (1.0 - 1e-9)).spans(), 1);
        let beyond = with_bearing(longest * 1.001);
        prop_assert!(beyond.spans() > 1 || !beyond.checks().all(Check::holds));
        if longest + inches(1.5) < kit.plank.longest - inches(0.001) {
            let reason = beyond.legs[0].divided_because.iter().all(|reason| !reason.contains("that long"));
            prop_assert!(reason);
        }
    }
}

/// 1 cm to 100 m, one plank to sixty: it ends, and every design is whole.
#[test]
fn from_a_slit_to_a_quay() {
    let high = Kit {
        greatest_height: None,
        ..kit()
    };
    for width in [1.0, 10.0, 100.0, 1000.0, 10_000.0] {
        for planks in [1, 2, 8, 20, 60] {
            for debris in [None, Some(Debris::Normal), Some(Debris::Special)] {
                let height = inches(6.0) * f64::from(planks);
                let mut task = opening(Length::new::<centimeter>(width), height);
                task.water.debris = debris;
                task.water.velocity = Some(Velocity::new::<foot_per_second>(4.0));
                let design = found(&task, &high);
                assert_eq!(design.stack.count, planks);
                let holds = design.checks().all(Check::holds);
                assert!(holds && !design.legs.is_empty() || !design.shortfalls.is_empty());
                let long = design
                    .legs
                    .iter()
                    .any(|planned| planned.leg.longest_cut() > high.plank.longest);
                assert!(!long);
            }
        }
    }
}
