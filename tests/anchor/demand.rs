//! From a plate or a post to the anchors.

use approx::assert_relative_eq;
use sillmark::anchor::{
    BasePlateForces, Demand, PlatePattern, ShearDemand, Side, TensionAnchors, TensionDemand,
    base_plate, tributary_shares,
};
use sillmark::beam::LinearLoad;
use sillmark::quantity::unit::{Force, Length, Moment, kilonewton, meter, newton};

fn metres(number: f64) -> Length {
    Length::new::<meter>(number)
}

fn kilonewtons(number: f64) -> Force {
    Force::new::<kilonewton>(number)
}

fn moment(number: f64) -> Moment {
    kilonewtons(number) * metres(1.0)
}

fn pattern() -> PlatePattern {
    PlatePattern {
        rows: 3,
        per_row: 2,
        row_spacing: metres(0.1),
    }
}

/// M/s on the outermost row, the row between not counted; half of the force along the post.
#[test]
fn tension_is_in_the_outermost_row() {
    let forces = |uplift| BasePlateForces {
        moment: moment(-4.0),
        shear: kilonewtons(-6.0),
        uplift: kilonewtons(uplift),
    };
    let plate = base_plate(&forces(0.0), &pattern()).unwrap();
    assert_relative_eq!(plate.lever_arm.unwrap().value, 0.2, epsilon = 1e-12);
    assert_relative_eq!(
        plate.tension_on_row.get::<kilonewton>(),
        20.0,
        epsilon = 1e-9
    );
    assert_relative_eq!(
        plate.tension_on_anchor.get::<kilonewton>(),
        10.0,
        epsilon = 1e-9
    );
    assert_relative_eq!(
        plate.shear_on_anchor.get::<kilonewton>(),
        1.0,
        epsilon = 1e-9
    );
    let lifted = base_plate(&forces(4.0), &pattern()).unwrap();
    assert_relative_eq!(
        lifted.tension_on_row.get::<kilonewton>(),
        22.0,
        epsilon = 1e-9
    );
    let pressed = base_plate(&forces(-100.0), &pattern()).unwrap();
    assert_eq!(pressed.tension_on_row, Force::default());
    assert_eq!(pressed.toward(Side::YPlus).tension, None);
}

#[test]
fn the_wet_row_is_pulled_and_the_shear_goes_to_the_dry_side() {
    let forces = BasePlateForces {
        moment: moment(4.0),
        shear: kilonewtons(6.0),
        uplift: Force::default(),
    };
    let plate = base_plate(&forces, &pattern()).unwrap();
    let expected = Demand {
        tension: Some(TensionDemand::on_row(Side::YMinus, plate.tension_on_row, 2)),
        shear: Some(ShearDemand::even(Side::YPlus, kilonewtons(6.0), 6)),
    };
    assert_eq!(plate.toward(Side::YPlus), expected);
}

#[test]
fn a_single_row_takes_no_moment() {
    let single = PlatePattern {
        rows: 1,
        ..pattern()
    };
    let forces = BasePlateForces {
        moment: moment(1.0),
        ..BasePlateForces::default()
    };
    assert_eq!(
        base_plate(&forces, &single).unwrap_err().to_string(),
        "moment \"1000 N·m\" on a single row of anchors has no lever arm; accepted: 2 rows or \
         more, or no moment"
    );
    let forces = BasePlateForces {
        uplift: kilonewtons(3.0),
        ..BasePlateForces::default()
    };
    assert_eq!(
        base_plate(&forces, &single).unwrap().tension_on_row,
        kilonewtons(3.0)
    );
    let none = PlatePattern {
        per_row: 0,
        ..pattern()
    };
    assert!(base_plate(&forces, &none).is_err());
}

/// No load is lost or made, wherever the anchors stand.
#[test]
fn shares_add_up_to_the_load() {
    let load = |number: f64| Force::new::<newton>(number) / metres(1.0);
    let bands = [
        LinearLoad {
            from: metres(0.0),
            to: metres(2.0),
            at_from: load(9000.0),
            at_to: load(0.0),
        },
        LinearLoad {
            from: metres(-0.1),
            to: metres(0.4),
            at_from: load(500.0),
            at_to: load(700.0),
        },
    ];
    let total = 9000.0 + 300.0;
    for heights in [
        vec![0.5],
        vec![0.1, 0.2, 1.9],
        vec![-1.0, 3.0],
        vec![0.25, 0.75, 1.25, 1.75],
    ] {
        let heights: Vec<_> = heights.into_iter().map(metres).collect();
        let shares = tributary_shares(&heights, &bands).unwrap();
        assert_eq!(shares.len(), heights.len());
        let sum: f64 = shares.iter().map(|share| share.shear.get::<newton>()).sum();
        assert_relative_eq!(sum, total, max_relative = 1e-12);
    }
    // By hand: of a triangle of 9 kN, below 1 m lie three quarters.
    let shares = tributary_shares(&[metres(0.5), metres(1.5)], &bands[..1]).unwrap();
    assert_relative_eq!(
        shares[0].shear.get::<newton>(),
        6750.0,
        max_relative = 1e-12
    );
}

#[test]
fn heights_have_to_rise() {
    let error = tributary_shares(&[metres(0.5), metres(0.5)], &[]).unwrap_err();
    assert_eq!(
        error.to_string(),
        "height \"0.5 m\" of an anchor is not above the one before it; accepted: heights that \
         rise from one to the next"
    );
    assert!(tributary_shares(&[], &[]).is_err());
    assert!(tributary_shares(&[metres(f64::NAN)], &[]).is_err());
}

/// Three rows 0.1 m apart, uplift 40 kN, moment 3 kN·m: the arm is 0.2 m, 3/0.2 = 15 kN, the wet
/// row carries 15 + 20 = 35 and the dry one 20 − 15 = 5 kN: all are pulled, together by 40 kN,
/// 3/40 = 0.075 m off their middle. With 5 kN·m the dry row is pressed, and the wet one alone
/// is pulled by 45 kN.
#[test]
fn a_plate_that_lifts_as_a_whole() {
    let forces = |turning| BasePlateForces {
        moment: moment(turning),
        shear: kilonewtons(6.0),
        uplift: kilonewtons(40.0),
    };
    let demand = base_plate(&forces(3.0), &pattern()).unwrap();
    let tension = demand.toward(Side::YPlus).tension.unwrap();
    assert_eq!(tension.anchors, TensionAnchors::All);
    assert_relative_eq!(
        tension.force.get::<kilonewton>(),
        40.0,
        max_relative = 1e-12
    );
    assert_relative_eq!(
        tension.greatest.get::<kilonewton>(),
        17.5,
        max_relative = 1e-12
    );
    assert_relative_eq!(
        tension.eccentricity_y.get::<meter>(),
        0.075,
        max_relative = 1e-12
    );
    assert_eq!(tension.eccentricity_x, metres(0.0));
    let demand = base_plate(&forces(5.0), &pattern()).unwrap();
    let tension = demand.toward(Side::YPlus).tension.unwrap();
    assert_eq!(tension.anchors, TensionAnchors::Outermost(Side::YMinus));
    assert_relative_eq!(
        tension.force.get::<kilonewton>(),
        45.0,
        max_relative = 1e-12
    );
}
