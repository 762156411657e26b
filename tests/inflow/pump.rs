//! Sums keep what was not stated, and an incomplete sum passes no limit.

use approx::assert_relative_eq;
use sillmark::inflow::{
    Finding, Gap, ImpermeableVerdict, Inflow, Missing, Way, WettedSeal, gap_flow, impermeability,
    pump_demand, rain_flow, seal_leakage, time_to_fill,
};
use sillmark::quantity::unit::{Time, Velocity, day, hour, inch, meter_per_second};

use super::{floor, metres};

fn rain(metres_an_hour: f64, area: f64) -> Finding {
    let intensity = Velocity::new::<meter_per_second>(metres_an_hour / 3600.0);
    rain_flow(intensity, floor(area), Some(1.0)).unwrap().into()
}

fn unstated_seal() -> Finding {
    let door = WettedSeal {
        width: metres(1.0),
        height: metres(1.0),
        depth: metres(0.5),
        plank_cover: None,
    };
    seal_leakage(&door, None).unwrap()
}

#[test]
fn the_sum_is_the_sum_of_its_parts() {
    let gap = Gap {
        width: metres(1.0),
        from: metres(0.0),
        to: metres(0.001),
    };
    let mut inflow = Inflow::default();
    inflow.add(gap_flow(&gap, metres(0.5), None).unwrap());
    inflow.add(rain(0.05, 100.0));
    inflow.add(rain(0.01, 10.0));
    let flows: Vec<_> = inflow.parts.iter().map(|part| part.flow.value).collect();
    assert_eq!(flows.len(), 3);
    let total = inflow.total().value;
    assert_relative_eq!(total, flows[0] + flows[1] + flows[2], epsilon = 1e-18);
    let pump = pump_demand(&inflow, Some(1.5)).unwrap();
    assert_relative_eq!(pump.capacity.value, 1.5 * total, epsilon = 1e-18);
    assert!(!pump.is_at_least());
    assert_eq!(
        pump.not_stated,
        [Missing::DischargeCoefficient, Missing::PumpHead]
    );
}

#[test]
fn a_pump_without_a_margin_carries_the_sum_and_says_so() {
    let mut inflow = Inflow::default();
    inflow.add(rain(0.05, 100.0));
    let pump = pump_demand(&inflow, None).unwrap();
    assert_relative_eq!(pump.capacity.value, inflow.total().value);
    assert_eq!(pump.not_stated, [Missing::PumpMargin, Missing::PumpHead]);
}

#[test]
fn a_way_in_without_a_number_makes_every_sum_a_lower_bound() {
    let mut inflow = Inflow::default();
    inflow.add(rain(0.0001, 10.0));
    inflow.add(unstated_seal());
    inflow.add(unstated_seal());
    let pump = pump_demand(&inflow, Some(2.0)).unwrap();
    assert!(pump.is_at_least());
    assert_eq!(pump.not_counted.len(), 2);
    assert_eq!(pump.not_counted[0].way, Way::Seal);
    assert_eq!(pump.not_stated, [Missing::LeakageRate, Missing::PumpHead]);
    let found = impermeability(&inflow, floor(100.0), None).unwrap();
    assert_eq!(found.verdict, ImpermeableVerdict::Unknown);
    let filling = time_to_fill(&inflow, floor(100.0), metres(0.1)).unwrap();
    assert!(filling.may_be_sooner());
}

#[test]
fn what_has_a_number_may_exceed_the_limit_alone() {
    let mut inflow = Inflow::default();
    inflow.add(rain(0.01, 100.0));
    inflow.add(unstated_seal());
    let found = impermeability(&inflow, floor(100.0), None).unwrap();
    assert_eq!(found.verdict, ImpermeableVerdict::Exceeded);
}

/// 4 in in 24 h exactly is within; a part in a million more is not.
#[test]
fn the_limit_itself_is_within() {
    let limit_an_hour = 4.0 * 0.0254 / 24.0;
    for (factor, expected) in [
        (1.0, ImpermeableVerdict::Within),
        (1.000_001, ImpermeableVerdict::Exceeded),
    ] {
        let mut inflow = Inflow::default();
        inflow.add(rain(limit_an_hour * factor, 80.0));
        let found = impermeability(&inflow, floor(80.0), Some(Time::new::<day>(2.0))).unwrap();
        assert_eq!(found.verdict, expected);
        assert_relative_eq!(
            found.depth_in_24_hours.get::<inch>(),
            4.0 * factor,
            epsilon = 1e-9
        );
        let in_flood = found.depth_in_flood.unwrap().get::<inch>();
        assert_relative_eq!(in_flood, 8.0 * factor, epsilon = 1e-9);
    }
}

#[test]
fn a_short_flood_does_not_soften_the_definition() {
    let mut inflow = Inflow::default();
    inflow.add(rain(0.1, 80.0));
    let found = impermeability(&inflow, floor(80.0), Some(Time::new::<hour>(0.5))).unwrap();
    assert_eq!(found.verdict, ImpermeableVerdict::Exceeded);
    assert_relative_eq!(found.depth_in_flood.unwrap().value, 0.05, epsilon = 1e-12);
}
