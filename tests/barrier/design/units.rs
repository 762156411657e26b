//! The same barrier stated in feet and pounds and in metres and newtons.

use super::{KIT, feet, inches, kit, opening, rules, within};
use proptest::prelude::*;
use sillmark::barrier::{BarrierDesign, BarrierTask, Kit, Open, Shortfall, design_barrier};
use sillmark::quantity::unit::meter;
use sillmark::quantity::{Length, parse_length};

/// SI unit and factor of the customary units of the kit file.
const UNITS: [(&str, &str, f64); 9] = [
    ("in", "mm", 25.4),
    ("ft", "m", 0.3048),
    ("in2", "mm2", 645.16),
    ("in3", "mm3", 16_387.064),
    ("in4", "mm4", 416_231.425_6),
    ("lb/ft", "kg/m", 0.453_592_37 / 0.3048),
    ("lb", "N", 4.448_221_615_260_5),
    ("gal/h/ft", "L/h/m", 3.785_411_784 / 0.3048),
    ("ksi", "MPa", 6.894_757_293_168),
];

/// The kit file with every quantity converted.
fn metric_kit() -> Kit {
    let mut converted = 0;
    let texts: Vec<String> = KIT
        .split('"')
        .enumerate()
        .map(|(position, text)| {
            let quoted = position % 2 == 1;
            match text.split_once(' ').filter(|_| quoted) {
                Some((number, unit)) => {
                    let known = UNITS.iter().find(|(customary, ..)| *customary == unit);
                    match (number.parse::<f64>(), known) {
                        (Ok(number), Some((_, metric, factor))) => {
                            converted += 1;
                            format!("{} {metric}", number * factor)
                        }
                        _ => text.to_owned(),
                    }
                }
                None => text.to_owned(),
            }
        })
        .collect();
    assert!(converted > 150, "{converted}");
    Kit::from_toml("metric.toml", &texts.join("\"")).unwrap()
}

/// What a design found, without its figures.
fn findings(design: &BarrierDesign) -> (Vec<String>, Vec<String>) {
    let shortfalls = design.shortfalls.iter().map(|shortfall| match shortfall {
        Shortfall::Fails(check) => format!("{} {} {:?}", check.part, check.what, check.case),
        other => format!("{:?}", std::mem::discriminant(other)),
    });
    let open = design.open.iter().map(|open| match open {
        Open::Mount { missing } => format!(
            "{:?}",
            missing.iter().map(|missing| missing.0).collect::<Vec<_>>()
        ),
        other => format!("{other:?}"),
    });
    (shortfalls.collect(), open.collect())
}

fn same(customary: &BarrierDesign, metric: &BarrierDesign) {
    assert_eq!(findings(customary), findings(metric));
    assert_eq!(customary.spans(), metric.spans());
    assert_eq!(customary.stack.count, metric.stack.count);
    let (one, other): (Vec<_>, Vec<_>) = (customary.checks().collect(), metric.checks().collect());
    assert_eq!(one.len(), other.len());
    for (one, other) in one.into_iter().zip(other) {
        assert_eq!(
            (&one.part, one.what, one.case),
            (&other.part, other.what, other.case)
        );
        within(other.ratio(), one.ratio(), 1e-9);
    }
    for (one, other) in customary.pieces.iter().zip(&metric.pieces) {
        assert_eq!((&one.name, one.count), (&other.name, other.count));
        within(other.length.value, one.length.value, 1e-9);
    }
    assert_eq!(customary.pieces.len(), metric.pieces.len());
    for (one, other) in [
        (customary.longest_span, metric.longest_span),
        (customary.greatest_depth, metric.greatest_depth),
    ] {
        within(other.unwrap().value, one.unwrap().value, 1e-8);
    }
}

fn both(task: &BarrierTask, metric: &BarrierTask) {
    let of = |task, kit: &Kit| {
        design_barrier(task, kit, &rules(), None, None)
            .unwrap()
            .unwrap()
    };
    same(&of(task, &kit()), &of(metric, &metric_kit()));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Inches in quarters and feet in tenths, as people write them, and the same in metres.
    #[test]
    fn customary_and_metric_agree(quarters in 40..1600_u32, tenths in 3..50_u32) {
        let (width, depth) = (f64::from(quarters) / 4.0, f64::from(tenths) / 10.0);
        let written = parse_length(&format!("{} mm", width * 25.4)).unwrap();
        let metric = opening(written, Length::new::<meter>(depth * 0.3048));
        both(&opening(inches(width), feet(depth)), &metric);
    }
}

/// Limits that are met exactly: reveal 3 in = 76.2 mm, opening 30 in, kit 4 ft.
#[test]
fn limits_that_are_just_met() {
    for planks in [5.0, 8.0] {
        let mut task = opening(feet(10.0), feet(planks / 2.0));
        task.place.reveal = Some(inches(3.0));
        task.opening_height = Some(feet(planks / 2.0));
        let mut metric = opening(
            Length::new::<meter>(3.048),
            Length::new::<meter>(planks * 0.1524),
        );
        metric.place.reveal = Some(parse_length("76.2 mm").unwrap());
        metric.opening_height = Some(parse_length(&format!("{} mm", planks * 152.4)).unwrap());
        both(&task, &metric);
        let found = design_barrier(&metric, &kit(), &rules(), None, None)
            .unwrap()
            .unwrap();
        assert!(found.shortfalls.is_empty(), "{:?}", found.shortfalls);
    }
}
