//! Inside, outside, on the edge, in two zones at once.

use serde_json::{Value, json};
use sillmark::hazard::{Part, ZoneStatement, read_zones};
use sillmark::quantity::{Length, unit::meter};

use super::fixture::{codes, feature, layer, map, place, polygon, square, zone};

#[test]
fn the_worse_of_two_zones_comes_first() {
    let map = map(&[
        zone("X", 0.0, 0.0, 0.3),
        zone("AE", 0.1, 0.1, 0.3),
        zone("VE", 0.2, 0.2, 0.3),
        zone("D", 0.0, 0.0, 0.5),
    ])
    .unwrap();
    assert_eq!(codes(&map, place(0.25, 0.25)), ["VE", "AE", "D", "X"]);
    assert_eq!(codes(&map, place(0.05, 0.05)), ["D", "X"]);
    assert!(codes(&map, place(0.7, 0.7)).is_empty());
}

#[test]
fn among_equals_the_higher_level_comes_first() {
    let with = |level: f64| {
        let attributes =
            json!({"FLD_ZONE": "AE", "STATIC_BFE": level, "V_DATUM": "NAVD88", "LEN_UNIT": "Feet"});
        feature(&attributes, &polygon(&[square(0.0, 0.0, 0.1)]))
    };
    let map = map(&[with(8.0), with(11.0), with(9.0)]).unwrap();
    let here = map.at(place(0.05, 0.05)).unwrap();
    let feet: Vec<_> = here
        .zones
        .iter()
        .map(|zone| zone.level.unwrap().height().value / 0.3048)
        .collect();
    assert!(feet.windows(2).all(|pair| pair[0] > pair[1]), "{feet:?}");
}

#[test]
fn a_hole_is_a_hole_however_it_is_wound() {
    let shell = square(0.0, 0.0, 0.3);
    let hole = square(0.1, 0.1, 0.1);
    let reversed: Vec<_> = hole.iter().rev().copied().collect();
    for hole in [hole, reversed] {
        let geometry = polygon(&[shell.clone(), hole]);
        let map = map(&[feature(&json!({"FLD_ZONE": "AE"}), &geometry)]).unwrap();
        assert_eq!(codes(&map, place(0.05, 0.15)), ["AE"]);
        assert!(codes(&map, place(0.15, 0.15)).is_empty(), "within the hole");
    }
}

#[test]
fn within_a_millimetre_of_an_edge_is_inside_and_said() {
    let map = map(&[zone("AE", 0.0, 0.0, 0.1), zone("X", 0.1, 0.0, 0.1)]).unwrap();
    // One metre is 1 / 85 394 degree of longitude and 1 / 111 035 of latitude at 40 N.
    let (east, north) = (1.0 / 85_394.0, 1.0 / 111_035.0);
    let at = |x: f64, y: f64| {
        let here = map.at(place(x, y)).unwrap();
        let codes: Vec<_> = here.zones.iter().map(|zone| zone.code.as_str()).collect();
        (codes.join(" "), here.on_edge)
    };
    let both = ("AE X".to_owned(), true);
    assert_eq!(at(0.1, 0.05), both);
    assert_eq!(at(0.1 + 0.0008 * east, 0.05), both);
    assert_eq!(at(0.1 - 0.0008 * east, 0.05), both);
    assert_eq!(at(0.1 + 0.0012 * east, 0.05), ("X".to_owned(), false));
    assert_eq!(at(0.1 - 0.0012 * east, 0.05), ("AE".to_owned(), false));
    assert_eq!(at(0.05, -0.0008 * north), ("AE".to_owned(), true));
    assert_eq!(at(0.05, -0.0012 * north), (String::new(), false));
    assert_eq!(at(0.05, 0.05), ("AE".to_owned(), false));
}

#[test]
fn features_without_area_are_counted() {
    let map = map(&[
        zone("AE", 0.0, 0.0, 0.1),
        feature(&json!({"FLD_ZONE": "AE"}), &Value::Null),
        feature(
            &json!({"FLD_ZONE": "AE"}),
            &json!({"type": "Polygon", "coordinates": []}),
        ),
    ])
    .unwrap();
    assert_eq!((map.zones().len(), map.without_area()), (1, 2));
}

#[test]
fn heights_in_the_coordinates_do_not_matter() {
    let rings: Vec<Vec<[f64; 3]>> = vec![
        square(0.0, 0.0, 0.1)
            .iter()
            .map(|[x, y]| [*x, *y, 7.0])
            .collect(),
    ];
    let geometry = json!({"type": "MultiPolygon", "coordinates": [rings]});
    let map = map(&[feature(&json!({"FLD_ZONE": "AE"}), &geometry)]).unwrap();
    assert_eq!(codes(&map, place(0.05, 0.05)), ["AE"]);
}

#[test]
fn a_line_in_the_layer_is_an_error_that_names_it() {
    let line = json!({"type": "LineString", "coordinates": [[-74.0, 40.0], [-74.1, 40.1]]});
    let attributes = json!({"FLD_ZONE": "AE", "FLD_AR_ID": "34017C_99"});
    let error = map(&[zone("X", 0.0, 0.0, 0.1), feature(&attributes, &line)]).map(|_| ());
    let error = error.unwrap_err().to_string();
    assert!(
        error.contains("34017C_99") && error.contains("LINESTRING"),
        "{error}"
    );
}

#[test]
fn a_part_of_the_layer_answers_as_the_whole_there() {
    let mut features = Vec::new();
    for column in 0..20_u8 {
        features.push(zone("AE", 0.01 * f64::from(column), 0.0, 0.01));
    }
    let scratch = tempfile::tempdir().unwrap();
    let path = layer(scratch.path(), &features);
    let location = place(0.055, 0.005);
    let around = Part::Around {
        location,
        margin: Length::new::<meter>(100.0),
    };
    let part = read_zones(&path, None, &ZoneStatement::default(), Some(around)).unwrap();
    let whole = read_zones(&path, None, &ZoneStatement::default(), None).unwrap();
    assert_eq!((part.zones().len(), whole.zones().len()), (1, 20));
    assert_eq!(part.at(location).unwrap(), whole.at(location).unwrap());
}
