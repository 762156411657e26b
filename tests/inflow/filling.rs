//! Filling times against a plain integration in small steps.

use approx::assert_relative_eq;
use proptest::prelude::*;
use sillmark::inflow::{
    FillingCase, FillingTime, Inflow, RisingWater, WeirCoefficient, rain_flow, time_to_fill,
    time_to_fill_while_rising,
};
use sillmark::quantity::unit::{Velocity, VolumeRate, cubic_meter_per_second, meter_per_second};

use super::{floor, metres};

/// An inflow of so many cubic metres a second.
fn steady(flow: f64) -> Inflow {
    let mut inflow = Inflow::default();
    let intensity = Velocity::new::<meter_per_second>(flow);
    inflow.add(rain_flow(intensity, floor(1.0), Some(1.0)).unwrap());
    inflow
}

fn room(steady_flow: f64, pump: f64) -> FillingCase {
    FillingCase {
        floor_area: floor(40.0),
        depth: metres(0.2),
        steady: steady(steady_flow),
        pump: VolumeRate::new::<cubic_meter_per_second>(pump),
        crest_length: metres(1.5),
        coefficient: WeirCoefficient::francis(),
    }
}

fn river(start: f64, rate: f64, highest: f64) -> RisingWater {
    RisingWater {
        start: metres(start),
        rate: Velocity::new::<meter_per_second>(rate),
        highest: metres(highest),
    }
}

fn seconds(room: &FillingCase, river: &RisingWater) -> Option<f64> {
    match time_to_fill_while_rising(room, river).unwrap().time {
        FillingTime::After(time) => Some(time.value),
        FillingTime::Never => None,
    }
}

/// The water in the room after `time`, step by step, with a pump that stops when dry.
fn gathered(room: &FillingCase, river: &RisingWater, time: f64) -> f64 {
    let steps = 200_000;
    let step = time / f64::from(steps);
    let mut volume = 0.0_f64;
    for index in 0..steps {
        let now = (f64::from(index) + 0.5) * step;
        let level = (river.start.value + river.rate.value * now).min(river.highest.value);
        let over = room
            .coefficient
            .flow(room.crest_length, metres(level))
            .value;
        let net = room.steady.total().value - room.pump.value + over;
        volume = (volume + net * step).max(0.0);
    }
    volume
}

#[test]
fn standing_water_fills_at_the_rate_of_the_weir() {
    let room = room(0.001, 0.0);
    let flow = 0.001 + room.coefficient.flow(metres(1.5), metres(0.1)).value;
    let time = seconds(&room, &river(0.1, 0.0, 0.1)).unwrap();
    assert_relative_eq!(time, 8.0 / flow, max_relative = 1e-8);
}

#[test]
fn no_water_over_the_crest_is_steady_filling() {
    let FillingTime::After(plain) = time_to_fill(&steady(0.002), floor(40.0), metres(0.2))
        .unwrap()
        .time
    else {
        panic!();
    };
    let rising = seconds(&room(0.002, 0.0), &river(-1.0, 1e-6, -0.5)).unwrap();
    assert_relative_eq!(rising, plain.value, max_relative = 1e-8);
}

#[test]
fn a_pump_that_keeps_up_is_never_passed() {
    assert_eq!(seconds(&room(0.001, 0.001), &river(-1.0, 1e-4, 0.0)), None);
    let most = room(0.0, 0.0)
        .coefficient
        .flow(metres(1.5), metres(0.1))
        .value;
    assert_eq!(
        seconds(&room(0.0, most * 1.001), &river(0.0, 1e-4, 0.1)),
        None
    );
    assert!(seconds(&room(0.0, most * 0.999), &river(0.0, 1e-4, 0.1)).is_some());
    let nothing = time_to_fill(&Inflow::default(), floor(1.0), metres(0.1)).unwrap();
    assert_eq!(nothing.time, FillingTime::Never);
}

#[test]
fn a_room_that_is_asked_for_no_depth_has_it_already() {
    let mut room = room(0.0, 1.0);
    room.depth = metres(0.0);
    assert_eq!(seconds(&room, &river(-1.0, 0.0, 0.0)), Some(0.0));
}

#[test]
fn a_rise_too_slow_for_any_time_is_standing_water() {
    let time = seconds(&room(0.0, 0.0), &river(0.1, 1e-320, 0.2)).unwrap();
    let standing = seconds(&room(0.0, 0.0), &river(0.1, 0.0, 0.1)).unwrap();
    assert_relative_eq!(time, standing, max_relative = 1e-8);
    let slow = seconds(&room(0.0, 0.0), &river(0.1, 1e-18, 0.2)).unwrap();
    assert_relative_eq!(slow, standing, max_relative = 1e-8);
}

#[test]
fn a_level_that_falls_is_refused() {
    let error = time_to_fill_while_rising(&room(0.0, 0.0), &river(0.2, 1e-4, 0.1)).unwrap_err();
    assert_eq!(
        error.to_string(),
        "highest level \"0.1 m\": it is out of range; accepted: the level at the start, 0.2 m, or more"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn at_the_time_given_the_room_holds_the_depth(
        start in -0.2..0.1,
        rise in 0.0..0.3,
        rate in 1e-5..1e-3,
        steady_flow in 0.0..0.005,
        pump in 0.0..0.02,
    ) {
        let (room, river) = (room(steady_flow, pump), river(start, rate, start + rise));
        if let Some(time) = seconds(&room, &river) {
            let held = gathered(&room, &river, time);
            prop_assert!((held / 8.0 - 1.0).abs() < 1e-3, "{held} m³ after {time} s");
        } else {
            prop_assert!(gathered(&room, &river, 1e6) < 1e-6);
        }
    }

    #[test]
    fn water_that_stands_higher_fills_no_later(start in -0.2..0.1, rise in 0.0..0.3, more in 0.0..0.3) {
        let later = seconds(&room(1e-4, 0.0), &river(start, 1e-4, start + rise));
        let sooner = seconds(&room(1e-4, 0.0), &river(start, 1e-4, start + rise + more));
        prop_assert!(sooner.unwrap() <= later.unwrap() * (1.0 + 1e-8));
    }
}
