//! The edge of a zone on made-up valleys, whose level is known.

use serde_json::{Value, json};
use sillmark::level::{BoundaryAnswer, BoundaryLevel, BoundaryRefusal, boundary_level};
use sillmark::quantity::{AnnualChance, LengthUnit, VerticalDatum, unit::foot, unit::meter};
use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement, Terrain};

use crate::hazard::fixture::{feature, map, polygon};
use crate::terrain::fixture::{NORTH_UP, metres_navd88, place, raster};

/// Cells along a side of the terrain, of ten metres.
const SIDE: usize = 150;

/// Metres of ground at so many metres east and south of the terrain's corner.
type Ground = fn(f64, f64) -> f64;

/// Banks of one in twenty on both sides of a river 750 m east, 100 m high.
fn valley(east: f64, _: f64) -> f64 {
    100.0 + (east - 750.0).abs() / 20.0
}

fn dem(ground: Ground, first_column: usize, columns: usize, statement: &DemStatement) -> Dem {
    let scratch = tempfile::tempdir().unwrap();
    #[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation)]
    let cells: Vec<f32> = (0..SIDE * columns)
        .map(|index| {
            let (row, column) = (index / columns, first_column + index % columns);
            ground(10.0 * column as f64 + 5.0, 10.0 * row as f64 + 5.0) as f32
        })
        .collect();
    let mut raster = raster(columns, &cells);
    raster.transform = NORTH_UP;
    #[allow(clippy::cast_precision_loss)]
    let moved = 10.0 * first_column as f64;
    raster.transform[0] += moved;
    Dem::open(&raster.write(scratch.path(), "dem.tif"), statement).unwrap()
}

fn terrain(ground: Ground) -> Terrain {
    Terrain::new(vec![dem(ground, 0, SIDE, &metres_navd88())])
}

/// A rectangle of a zone, in metres east and south of the terrain's corner; stored in degrees.
fn zone(code: &str, [west, east]: [f64; 2], [north, south]: [f64; 2]) -> Value {
    let corners = [
        (west, south),
        (east, south),
        (east, north),
        (west, north),
        (west, south),
    ];
    let ring = corners.map(|(east, south)| {
        let corner = place(east, -south);
        [corner.longitude(), corner.latitude()]
    });
    feature(&json!({"FLD_ZONE": code}), &polygon(&[ring.to_vec()]))
}

fn ask_at(terrain: &Terrain, zones: &[Value], at: Location) -> BoundaryAnswer {
    let map = map(zones).unwrap();
    boundary_level(&map, terrain, AnnualChance::ONE_PERCENT, at, None).unwrap()
}

fn ask(terrain: &Terrain, zones: &[Value]) -> BoundaryAnswer {
    ask_at(terrain, zones, place(700.0, -750.0))
}

fn level(answer: BoundaryAnswer) -> BoundaryLevel {
    match answer {
        BoundaryAnswer::Level(level) => *level,
        other => panic!("{other:?}"),
    }
}

fn metres(level: &BoundaryLevel) -> f64 {
    level.candidate.elevation.height().get::<meter>()
}

/// From above the terrain to below it: the ends of the zone lie beyond its rim.
const ALONG: [f64; 2] = [-50.0, 1550.0];

#[test]
fn the_water_stood_where_the_edge_meets_the_ground() {
    let found = level(ask(&terrain(valley), &[zone("A", [550.0, 950.0], ALONG)]));
    assert!((metres(&found) - 110.0).abs() < 0.02, "{found:?}");
    assert_eq!(found.candidate.elevation.datum(), VerticalDatum::Navd88);
    assert!(found.candidate.sd.unwrap().get::<meter>() < 0.3);
    // Both banks, without the ends at the rim.
    assert!((250..300).contains(&found.samples), "{found:?}");
    assert!((found.nearest.get::<meter>() - 150.0).abs() < 10.0);
}

#[test]
fn a_zone_that_lies_shifted_reads_the_same_level() {
    // Six metres too far east: 0.3 m too high on one bank and too low on the other.
    let found = level(ask(&terrain(valley), &[zone("A", [556.0, 956.0], ALONG)]));
    assert!((metres(&found) - 110.0).abs() < 0.03, "{found:?}");
    // The shift itself is held towards nothing.
    assert!(
        (-6.0..-4.0).contains(&found.shift[0].get::<meter>()),
        "{found:?}"
    );
    assert!(found.shift[1].get::<meter>().abs() < 1.0, "{found:?}");
}

#[test]
fn common_edges_of_flooded_zones_are_no_shore() {
    // The river's own edge of each half lies on ground of 100 m.
    let halves = [
        zone("A", [550.0, 750.0], ALONG),
        zone("A", [750.0, 950.0], ALONG),
    ];
    let found = level(ask(&terrain(valley), &halves));
    assert!((metres(&found) - 110.0).abs() < 0.02, "{found:?}");
    assert!((250..300).contains(&found.samples), "{found:?}");
}

#[test]
fn edges_beside_what_the_map_does_not_say_are_left_out() {
    // The study ends along the river; only the western bank is a shore.
    let unknown = [
        zone("A", [550.0, 750.0], ALONG),
        zone("AREA NOT INCLUDED", [750.0, 1500.0], ALONG),
    ];
    let found = level(ask(&terrain(valley), &unknown));
    assert!((metres(&found) - 110.0).abs() < 0.05, "{found:?}");
    assert!((125..150).contains(&found.samples), "{found:?}");
    // So it is with a gap in a map that otherwise names the land.
    let gap = [
        zone("A", [550.0, 750.0], ALONG),
        zone("X", [0.0, 550.0], ALONG),
    ];
    let found = level(ask(&terrain(valley), &gap));
    assert!((125..150).contains(&found.samples), "{found:?}");
}

#[test]
fn banks_that_disagree_are_refused_and_it_is_said_by_how_much() {
    // The edges lie on 106 m and on 110 m.
    let answer = ask(&terrain(valley), &[zone("A", [630.0, 950.0], ALONG)]);
    let BoundaryAnswer::Refused(refusal) = answer else {
        panic!("{answer:?}");
    };
    assert!(
        matches!(
            refusal,
            BoundaryRefusal::BanksDisagree { .. } | BoundaryRefusal::SamplesDisagree { .. }
        ),
        "{refusal}"
    );
    let text = refusal.to_string();
    assert!(text.contains("accepted: at most"), "{text}");
}

#[test]
fn too_short_an_edge_is_refused() {
    // A rectangle of 40 m by 60 m: samples a little less than ten metres apart.
    let answer = ask(
        &terrain(valley),
        &[zone("A", [680.0, 720.0], [720.0, 780.0])],
    );
    let BoundaryAnswer::Refused(refusal @ BoundaryRefusal::TooFewSamples { .. }) = answer else {
        panic!("{answer:?}");
    };
    let text = refusal.to_string();
    assert!(
        text.contains("only 21 points") && text.contains("50 or more"),
        "{text}"
    );
}

#[test]
fn a_place_outside_or_without_ground_has_no_level() {
    let zones = [zone("A", [550.0, 950.0], ALONG)];
    let outside = ask_at(&terrain(valley), &zones, place(100.0, -750.0));
    assert_eq!(outside, BoundaryAnswer::NoZone);
    let beyond = ask_at(&terrain(valley), &zones, place(700.0, 30.0));
    assert_eq!(beyond, BoundaryAnswer::Refused(BoundaryRefusal::NoGround));
    // Waves and sheet flow end for other reasons than the height of the ground.
    let sheet = ask(&terrain(valley), &[zone("AO", [550.0, 950.0], ALONG)]);
    assert_eq!(sheet, BoundaryAnswer::NoZone);
}

#[test]
fn tiles_of_one_product_are_one_terrain() {
    let half = SIDE / 2;
    let tiles = vec![
        dem(valley, 0, half, &metres_navd88()),
        dem(valley, half, half, &metres_navd88()),
    ];
    let found = level(ask(
        &Terrain::new(tiles),
        &[zone("A", [550.0, 950.0], ALONG)],
    ));
    assert!((metres(&found) - 110.0).abs() < 0.02, "{found:?}");
    assert!((250..300).contains(&found.samples), "{found:?}");
}

/// The same valley in whole feet.
fn whole_feet(east: f64, south: f64) -> f64 {
    (valley(east, south) / 0.3048).round()
}

#[test]
fn a_terrain_of_whole_feet_is_less_certain() {
    let feet = DemStatement {
        unit: Some(LengthUnit::Foot),
        datum: Some(VerticalDatum::Navd88),
        crs: None,
    };
    let zones = [zone("A", [550.0, 950.0], ALONG)];
    let coarse = Terrain::new(vec![dem(whole_feet, 0, SIDE, &feet)]);
    let coarse = level(ask(&coarse, &zones));
    assert!((metres(&coarse) - 110.0).abs() < 0.2, "{coarse:?}");
    assert!(
        coarse.candidate.sd.unwrap().get::<foot>() > 1.5,
        "{coarse:?}"
    );
}

#[test]
fn a_stated_deviation_of_the_terrain_is_added() {
    let map = map(&[zone("A", [550.0, 950.0], ALONG)]).unwrap();
    let at = place(700.0, -750.0);
    let sd = |terrain_sd: Option<f64>| {
        let terrain_sd = terrain_sd.map(sillmark::quantity::Length::new::<meter>);
        let chance = AnnualChance::ONE_PERCENT;
        let answer = boundary_level(&map, &terrain(valley), chance, at, terrain_sd).unwrap();
        level(answer).candidate.sd.unwrap().get::<meter>()
    };
    assert!((sd(Some(0.5)) - sd(None).hypot(0.5)).abs() < 1e-9);
}
