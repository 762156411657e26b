//! No number makes the room panic or answer with what is no number.

use proptest::prelude::*;
use sillmark::inflow::{
    Coefficient, Crest, FillingCase, FillingTime, Finding, Gap, Inflow, NotchStep,
    RememberedSeepage, RisingWater, StatedLeakage, WeirCoefficient, WettedSeal, critical_depth,
    gap_flow, impermeability, overtopping, pump_demand, rain_flow, seal_leakage, seepage_flow,
    small_gap_flow, stepped_notch, time_to_fill, time_to_fill_while_rising, weir_flow,
};
use sillmark::quantity::unit::{
    Area, FlowPerLength, Length, Time, Velocity, VolumeRate, cubic_meter_per_second, meter,
    meter_per_second, second, square_meter,
};
use sillmark::statement::{Citation, Confidence};

fn citation() -> Citation {
    Citation {
        source: "a sheet".into(),
        confidence: Confidence::Stated,
    }
}

/// Any number, and the ones that are most often forgotten.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        any::<f64>(),
        Just(0.0),
        Just(-0.0),
        Just(f64::NAN),
        Just(f64::INFINITY),
        Just(f64::NEG_INFINITY),
        Just(f64::MAX),
        Just(f64::MIN_POSITIVE),
        -2.0..2.0,
    ]
}

fn sound(flow: VolumeRate) -> bool {
    flow.value.is_finite() && flow.value >= 0.0
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn gaps_and_seals(numbers in prop::array::uniform5(number()), joints: bool) {
        let [a, b, c, d, e] = numbers;
        let lengths = numbers.map(Length::new::<meter>);
        let used = Coefficient { value: e, citation: citation() };
        let gap = Gap { width: lengths[0], from: lengths[1], to: lengths[2] };
        for coefficient in [None, Some(&used)] {
            if let Ok(part) = gap_flow(&gap, lengths[3], coefficient) {
                prop_assert!(sound(part.flow), "{part:?}");
            }
        }
        if let Ok(flow) = small_gap_flow(Area::new::<square_meter>(a), lengths[1], c) {
            prop_assert!(sound(flow));
        }
        let seal = WettedSeal {
            width: lengths[0], height: lengths[1], depth: lengths[2], plank_cover: Some(lengths[3]),
        };
        let stated = StatedLeakage {
            rate: VolumeRate::new::<cubic_meter_per_second>(e) / Length::new::<meter>(1.0),
            tested_depth: (d > b).then_some(lengths[3]),
            counts_plank_joints: joints,
            citation: citation(),
        };
        if let Ok(Finding::Counted(part)) = seal_leakage(&seal, Some(&stated)) {
            prop_assert!(sound(part.flow), "{part:?}");
        }
    }

    #[test]
    fn weirs(numbers in prop::array::uniform4(number())) {
        let lengths = numbers.map(Length::new::<meter>);
        let stated = Coefficient { value: numbers[3], citation: citation() };
        for crest in [
            Crest::Broad,
            Crest::Sharp,
            Crest::SharpContracted { crest_height: lengths[2] },
            Crest::Stated(stated.clone()),
        ] {
            if let Ok(part) = weir_flow(&crest, lengths[0], lengths[1]) {
                prop_assert!(sound(part.flow), "{part:?}");
            }
        }
        if let Ok(part) = overtopping(lengths[0], lengths[1], lengths[2]) {
            prop_assert!(sound(part.flow), "{part:?}");
        }
        let steps = [
            NotchStep { width: lengths[0], height: lengths[1] },
            NotchStep { width: lengths[1], height: lengths[0] },
        ];
        if let Ok(part) = stepped_notch(&steps, lengths[2], &stated) {
            prop_assert!(sound(part.flow), "{part:?}");
        }
        let flow: FlowPerLength =
            VolumeRate::new::<cubic_meter_per_second>(numbers[0]) / Length::new::<meter>(1.0);
        if let Ok(depth) = critical_depth(flow) {
            prop_assert!(depth.value.is_finite() && depth.value >= 0.0);
        }
    }

    #[test]
    fn rain_pumps_and_floors(numbers in prop::array::uniform5(number())) {
        let [a, b, c, d, e] = numbers;
        let area = Area::new::<square_meter>(b);
        let mut inflow = Inflow::default();
        if let Ok(part) = rain_flow(Velocity::new::<meter_per_second>(a), area, Some(c)) {
            prop_assert!(sound(part.flow), "{part:?}");
            inflow.add(part);
        }
        if let Ok(part) = seepage_flow(RememberedSeepage::Levee, Area::new::<square_meter>(d)) {
            prop_assert!(sound(part.flow), "{part:?}");
            inflow.add(part);
        }
        if let Ok(pump) = pump_demand(&inflow, Some(e)) {
            prop_assert!(sound(pump.capacity) && pump.capacity >= pump.inflow);
        }
        let flood = Time::new::<second>(d);
        if let Ok(found) = impermeability(&inflow, area, Some(flood)) {
            prop_assert!(found.depth_in_24_hours.value.is_finite());
            prop_assert!(found.depth_in_flood.unwrap().value.is_finite());
        }
        if let Ok(filling) = time_to_fill(&inflow, area, Length::new::<meter>(e))
            && let FillingTime::After(time) = filling.time
        {
            prop_assert!(time.value.is_finite() && time.value >= 0.0);
        }
    }

    #[test]
    fn rising_water(
        room in prop::array::uniform5(number()),
        outside in prop::array::uniform3(number()),
    ) {
        let case = FillingCase {
            floor_area: Area::new::<square_meter>(room[0]),
            depth: Length::new::<meter>(room[1]),
            steady: Inflow::default(),
            pump: VolumeRate::new::<cubic_meter_per_second>(room[2]),
            crest_length: Length::new::<meter>(room[3]),
            coefficient: WeirCoefficient::from_si(room[4]),
        };
        let river = RisingWater {
            start: Length::new::<meter>(outside[0]),
            rate: Velocity::new::<meter_per_second>(outside[1]),
            highest: Length::new::<meter>(outside[2]),
        };
        if let Ok(filling) = time_to_fill_while_rising(&case, &river)
            && let FillingTime::After(time) = filling.time
        {
            prop_assert!(time.value.is_finite() && time.value >= 0.0, "{case:?} {river:?}");
        }
    }
}

#[test]
fn what_is_refused_is_named_with_its_value() {
    let gap = Gap {
        width: Length::new::<meter>(1.0),
        from: Length::new::<meter>(0.3),
        to: Length::new::<meter>(0.2),
    };
    let deep = Length::new::<meter>(1.0);
    let error = gap_flow(&gap, deep, None).unwrap_err().to_string();
    assert!(error.starts_with("height of the gap \"-0.0"), "{error}");
    let error = pump_demand(&Inflow::default(), Some(0.5)).unwrap_err();
    assert_eq!(
        error.to_string(),
        "margin of the pump \"0.5\": it is out of range; accepted: a factor of 1 or more, such as 1.5"
    );
    let error = rain_flow(Velocity::default(), Area::default(), Some(1.2)).unwrap_err();
    assert_eq!(
        error.to_string(),
        "runoff coefficient \"1.2\": it is out of range; accepted: 0 to 1"
    );
}
