use approx::assert_relative_eq;
use geo::{Contains, Destination, Distance, Geodesic, Point};
use proptest::prelude::*;
use sillmark::collect::Places;
use sillmark::quantity::{Length, unit::meter};
use sillmark::service::DegreeBox;
use sillmark::site::Location;

fn around(places: &[(f64, f64)], metres: f64) -> Vec<DegreeBox> {
    let mut all = Places::default();
    for (longitude, latitude) in places {
        all.add(Location::from_degrees(*longitude, *latitude).unwrap());
    }
    all.boxes(Length::new::<meter>(metres))
}

fn holds(boxes: &[DegreeBox], longitude: f64, latitude: f64) -> bool {
    boxes.iter().any(|DegreeBox(area)| {
        (area.min().x..=area.max().x).contains(&longitude)
            && (area.min().y..=area.max().y).contains(&latitude)
    })
}

proptest! {
    /// Points at the margin's distance along geodesics of the ellipsoid (Karney 2013, by the
    /// geographiclib of `geo`) lie within the boxes.
    #[test]
    fn the_margin_is_kept(
        places in prop::collection::vec((-180.0..180.0_f64, -88.0..88.0_f64), 1..90),
        bearing in 0.0..360.0_f64,
        metres in 1.0..20_000.0_f64,
    ) {
        let boxes = around(&places, metres);
        prop_assert!(boxes.len() <= 2 * 1024);
        for (longitude, latitude) in places {
            let far = Geodesic.destination(Point::new(longitude, latitude), bearing, metres);
            prop_assert!(holds(&boxes, far.x(), far.y()), "{far:?} of {longitude} {latitude}");
        }
    }
}

#[test]
fn no_box_is_much_larger_than_the_margin_asks_for() {
    let boxes = around(&[(-74.03, 40.74)], 2100.0);
    let [DegreeBox(area)] = boxes.as_slice() else {
        panic!("{boxes:?}")
    };
    // Degrees of the WGS 84 ellipsoid at 40.74° N: 111,049 m and 84,495 m (pyproj.Geod, inv).
    assert_relative_eq!(area.height() * 111_049.0, 4200.0, max_relative = 0.01);
    assert_relative_eq!(area.width() * 84_495.0, 4200.0, max_relative = 0.01);
    assert!(area.contains(&Point::new(-74.03, 40.74)));
}

#[test]
fn towns_far_apart_are_asked_for_one_by_one() {
    let places = [(-74.03, 40.74), (-74.02, 40.75), (5.9, 52.0), (5.91, 52.0)];
    assert_eq!(around(&places, 100.0).len(), 2);
}

#[test]
fn a_box_across_the_antimeridian_is_two() {
    let boxes = around(&[(179.99, -17.0)], 5000.0);
    assert_eq!(boxes.len(), 2);
    assert!(holds(&boxes, -179.99, -17.0) && holds(&boxes, 179.96, -17.0));
    assert!(!holds(&boxes, 0.0, -17.0));
}

#[test]
fn no_place_asks_for_nothing() {
    assert!(around(&[], 100.0).is_empty());
}

/// Also where there are so many that they are kept as cells: geodesics of `geo`.
#[test]
fn each_place_lies_near_a_spot() {
    for count in [100_u32, 12_000] {
        let mut all = Places::default();
        let place = |number: u32| {
            // A spiral over a town, and the two poles.
            let turn = f64::from(number) * 2.4;
            let reach = 0.2 * (f64::from(number) / f64::from(count)).sqrt();
            Location::from_degrees(10.0 + reach * turn.cos(), 65.0 + reach * turn.sin()).unwrap()
        };
        let poles = [(0.0, 90.0), (180.0, -90.0)];
        let poles = poles.map(|(x, y)| Location::from_degrees(x, y).unwrap());
        let placed: Vec<Location> = (0..count).map(place).chain(poles).collect();
        for place in &placed {
            all.add(*place);
        }
        let (spots, within) = all.spots();
        for place in placed.iter().step_by(97).chain(&poles) {
            let at = |place: &Location| Point::new(place.longitude(), place.latitude());
            let nearest = spots
                .iter()
                .map(|spot| Geodesic.distance(at(spot), at(place)));
            let nearest = nearest.fold(f64::INFINITY, f64::min);
            assert!(
                nearest <= within.get::<meter>() + 1e-6,
                "{place:?}: {nearest}"
            );
        }
    }
}
