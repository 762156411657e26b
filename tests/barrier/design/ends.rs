//! What end posts hand over to the wall.

use super::{about, about_pounds, design, feet, inches, kit, on_face, opening};
use sillmark::barrier::{Ends, LoadCase, MountPlace, Open, Shortfall};
use sillmark::load::Debris;
use sillmark::quantity::unit::{
    Velocity, foot_per_second, in_pounds_per_foot, inch, pound_force, pound_per_square_inch,
};
use sillmark::site::Mount;

/// Half of 32 in and the post's own 2 in: 18 in = 1.5 ft of barrier. 62.4·2.5²/2·1.5 = 292.5 lb
/// at 2.5/3 ft. Anchors 2, 14, 26 and 28 in up; the second carries from 8 to 20 in, the lowest
/// from the foot to 8 in: 62.4/1728·18·(30·8 − 8²/2) = 0.65·208 = 135.2 lb, the second
/// 0.65·(30·12 − (20² − 8²)/2) = 124.8 lb.
#[test]
fn shear_up_the_reveal() {
    let found = design(&opening(inches(36.0), feet(2.5)), &kit());
    let end = found.end_post.unwrap();
    assert_eq!(end.ends, Some(Ends::Mounted(Mount::Inside)));
    about(end.tributary.get::<inch>(), 18.0);
    let top = end
        .forces
        .iter()
        .find(|forces| forces.case == LoadCase::Top)
        .unwrap();
    about_pounds(top.force, 292.5);
    about(top.height.get::<inch>(), 10.0);
    about(in_pounds_per_foot(top.greatest), 234.0);
    assert_eq!(top.bearing, None);
    let anchors = end.anchors.unwrap();
    assert_eq!(anchors.heights.len(), 4);
    about_pounds(anchors.greatest_shear, 135.2);
    about(anchors.factor, 1.6);
}

/// On the face planks span all of the 36 in: tributary 18 + 2 = 20 in. 62.4·2.5 = 156 lb/ft² at
/// the sill, 156·20/12 = 260 lb/ft, over 2 in of post 260/12/2 = 10.833 psi.
#[test]
fn bearing_on_the_face() {
    let found = design(&on_face(opening(inches(36.0), feet(2.5))), &kit());
    about(found.legs[0].leg.spans[0].clear.get::<inch>(), 36.0);
    about(found.legs[0].leg.spans[0].cut.get::<inch>(), 39.0);
    let end = found.end_post.unwrap();
    about(end.tributary.get::<inch>(), 20.0);
    assert_eq!(end.anchors, None);
    let top = end
        .forces
        .iter()
        .find(|forces| forces.case == LoadCase::Top)
        .unwrap();
    about(in_pounds_per_foot(top.greatest), 260.0);
    about(top.bearing.unwrap().get::<pound_per_square_inch>(), 10.8333);
}

/// Debris of 310.6 lb on 1 ft² strikes an end post in full: about the lowest anchor it adds
/// what of it falls below 8 in, 8/12 of it: 207.07 lb. Flow of 5 ft/s adds 0.4852 ft of head:
/// 62.4·0.48525/144 = 0.210275 psi·18·8 = 30.28 lb. 135.2 + 207.07 + 30.28 = 372.55 lb.
#[test]
fn debris_on_the_lowest_anchor() {
    let mut task = opening(inches(36.0), feet(2.5));
    task.water.velocity = Some(Velocity::new::<foot_per_second>(5.0));
    task.water.debris = Some(Debris::Normal);
    let found = design(&task, &kit());
    let anchors = found.end_post.unwrap().anchors.unwrap();
    // The second one, struck from 8 to 20 in, carries all of it: 124.8 + 310.56 +
    // 0.210275·18·12 = 480.78 lb.
    super::within(anchors.greatest_shear.get::<pound_force>(), 480.78, 1e-3);
}

#[test]
fn nobody_measured() {
    let mut task = opening(inches(36.0), feet(2.5));
    task.place = MountPlace::default();
    let found = design(&task, &kit());
    assert!(
        found
            .open
            .iter()
            .any(|open| matches!(open, Open::Mount { missing } if missing.len() == 2))
    );
    assert_eq!(found.end_post.as_ref().unwrap().ends, None);
    // The wider of both: planks on the face.
    about(found.legs[0].leg.longest_cut().get::<inch>(), 39.0);
    // Where the face is too narrow only the reveal is left to measure, and to plan with.
    task.place.face = Some(inches(1.0));
    let found = design(&task, &kit());
    about(found.legs[0].leg.longest_cut().get::<inch>(), 35.0);
    assert!(
        found
            .open
            .iter()
            .any(|open| matches!(open, Open::Mount { missing } if missing.len() == 1))
    );
}

#[test]
fn nothing_fits() {
    let mut task = opening(inches(36.0), feet(2.5));
    task.place.reveal = Some(inches(2.9));
    task.place.face = Some(inches(3.9));
    let found = design(&task, &kit());
    let no_mount = |shortfall: &Shortfall| matches!(shortfall, Shortfall::NoMount { too_small } if too_small.len() == 2);
    assert!(found.shortfalls.iter().any(no_mount));
}
