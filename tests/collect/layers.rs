use geo::{Geometry, LineString, MultiPolygon, Polygon, Rect, line_string, polygon};
use serde_json::{Map, Value, json};
use sillmark::collect::{ArrivedLayer, CollectError, WrittenLayer, write_layers};
use sillmark::gis::{AttributeValue, FeatureReader, GisError, open_vector};
use sillmark::hazard::{LayerContent, LineKind, ZoneStatement, read_zones};
use sillmark::service::{DegreeBox, ServedFeature, ServedLayer};
use sillmark::site::Location;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

fn attributes(value: Value) -> Map<String, Value> {
    match value {
        Value::Object(map) => map,
        other => panic!("{other}"),
    }
}

fn feature(id: &str, geometry: impl Into<Geometry<f64>>, value: Value) -> ServedFeature {
    ServedFeature {
        id: id.to_owned(),
        geometry: Some(geometry.into()),
        attributes: attributes(value),
    }
}

fn layer(name: &str, crs: &str, features: Vec<ServedFeature>) -> ServedLayer {
    let mut fields: Vec<String> = Vec::new();
    for name in features
        .iter()
        .flat_map(|feature| feature.attributes.keys())
    {
        if !fields.contains(name) {
            fields.push(name.clone());
        }
    }
    ServedLayer {
        name: name.to_owned(),
        address: "https://example.org/zones".to_owned(),
        fetched: "Wed, 25 Nov 2026 12:00:00 GMT".to_owned(),
        licence: None,
        crs: crs.to_owned(),
        fields,
        features,
        remarks: Vec::new(),
    }
}

fn arrived(read_for: LayerContent, served: ServedLayer) -> ArrivedLayer<'static> {
    ArrivedLayer {
        read_for,
        needed: Vec::new(),
        boxes: vec![asked()],
        served,
    }
}

/// About 10° E, 50° N, and the corner of the world that lines here lie in.
fn asked() -> DegreeBox {
    DegreeBox(Rect::new((-1.0, -1.0), (11.0, 51.0)))
}

fn write(layers: Vec<ArrivedLayer<'_>>) -> (TempDir, PathBuf, Vec<WrittenLayer>) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("collected.gpkg");
    let written = write_layers(layers, &path).unwrap();
    (folder, path, written)
}

/// A square of a degree about 10° E, 50° N, longitude first.
fn square() -> Polygon<f64> {
    polygon![(x: 9.5, y: 49.5), (x: 10.5, y: 49.5), (x: 10.5, y: 50.5), (x: 9.5, y: 50.5)]
}

fn zone(geometry: Polygon<f64>) -> Vec<ServedFeature> {
    let told = json!({"FLD_AR_ID": "7", "FLD_ZONE": "AE", "SFHA_TF": "T", "STATIC_BFE": 12.5,
        "V_DATUM": "NAVD88", "LEN_UNIT": "Feet"});
    vec![feature("7", geometry, told)]
}

fn values(path: &Path, layer: &str) -> Vec<Vec<AttributeValue>> {
    let dataset = open_vector(path).unwrap();
    let reader = FeatureReader::new(&dataset, path, layer).unwrap();
    let columns = reader.attributes().len();
    let mut rows = Vec::new();
    reader
        .read(|record| {
            rows.push((0..columns).map(|column| record.value(column)).collect());
            Ok::<(), GisError>(())
        })
        .unwrap();
    rows
}

#[test]
fn a_collected_layer_is_read_as_any_other_and_says_where_it_came_from() {
    let mut served = layer("S_FLD_HAZ_AR", "OGC:CRS84", zone(square()));
    served.licence = Some("as\u{202e} you like".to_owned());
    served.remarks = ["one thing", "another"].map(str::to_owned).to_vec();
    let (_folder, path, written) = write(vec![arrived(LayerContent::Zones, served)]);
    assert_eq!(written[0].features, 1);
    let map = read_zones(&path, None, &ZoneStatement::default(), None).unwrap();
    let fetched = map.origin().fetched.as_ref().unwrap();
    assert_eq!(fetched.from, "https://example.org/zones");
    assert_eq!(fetched.on, "2026-11-25T12:00:00Z");
    assert_eq!(fetched.licence.as_deref(), Some("as  you like"));
    assert_eq!(fetched.noted.as_deref(), Some("one thing; another"));
    let here = map.at(Location::from_degrees(10.0, 50.0).unwrap()).unwrap();
    let zone = here.zones.first().copied().unwrap();
    assert_eq!((zone.code.as_str(), zone.feature.as_str()), ("AE", "7"));
    assert_eq!(
        zone.record().as_ref(),
        "S_FLD_HAZ_AR, feature 7, of https://example.org/zones, fetched 2026-11-25\u{a0}12:00\u{a0}UTC"
    );
}

/// EPSG:4326 has latitude first (EPSG dataset, coordinate system 6422), OGC:CRS84 longitude
/// (OGC 17-069r4, 6.2): the same square in both orders is the same zone.
#[test]
fn latitude_first_comes_out_longitude_first() {
    let swapped =
        polygon![(x: 49.5, y: 9.5), (x: 49.5, y: 10.5), (x: 50.5, y: 10.5), (x: 50.5, y: 9.5)];
    for (crs, shape) in [("OGC:CRS84", square()), ("EPSG:4326", swapped)] {
        let served = layer("zones", crs, zone(shape));
        let (_folder, path, _) = write(vec![arrived(LayerContent::Zones, served)]);
        let map = read_zones(&path, None, &ZoneStatement::default(), None).unwrap();
        let here = map.at(Location::from_degrees(10.2, 49.7).unwrap()).unwrap();
        assert!(!here.zones.is_empty(), "{crs}");
        let other = map.at(Location::from_degrees(49.7, 10.2).unwrap()).unwrap();
        assert!(other.zones.is_empty(), "{crs}");
    }
}

/// New Zealand's and Europe's plane systems have north first (EPSG:2193, EPSG:3035), and servers
/// that send their store as it is put east first: the features themselves tell. Coordinates by
/// pyproj: 172.6° E, 43.5° S in EPSG:2193.
#[test]
fn the_order_of_plane_coordinates_is_that_which_lies_in_the_boxes() {
    let (east, north) = (1_567_662.0, 5_183_581.0);
    let about = |x: f64, y: f64| polygon![(x: x - 50.0, y: y - 50.0), (x: x + 50.0, y: y - 50.0), (x: x + 50.0, y: y + 50.0), (x: x - 50.0, y: y + 50.0)];
    let there = DegreeBox(Rect::new((172.5, -43.6), (172.7, -43.4)));
    for (x, y, odd) in [(north, east, false), (east, north, true)] {
        let mut layer = arrived(
            LayerContent::Zones,
            layer("zones", "EPSG:2193", zone(about(x, y))),
        );
        layer.boxes = vec![there];
        let (_folder, path, written) = write(vec![layer]);
        assert_eq!(written[0].fetched.noted.is_some(), odd);
        let map = read_zones(&path, None, &ZoneStatement::default(), None).unwrap();
        let here = map
            .at(Location::from_degrees(172.6, -43.5).unwrap())
            .unwrap();
        assert_eq!(here.zones.len(), 1, "{x} {y}");
    }
    let elsewhere = layer("zones", "EPSG:2193", zone(about(1.0e6, 4.8e6)));
    let mut elsewhere = arrived(LayerContent::Zones, elsewhere);
    elsewhere.boxes = vec![there];
    let folder = tempfile::tempdir().unwrap();
    let error = write_layers(vec![elsewhere], &folder.path().join("x.gpkg")).unwrap_err();
    assert!(matches!(error, CollectError::Elsewhere { .. }), "{error}");
}

#[test]
fn values_keep_their_kind() {
    let shape = line_string![(x: 0.0, y: 0.0), (x: 1.0, y: 1.0)];
    let rows = [
        json!({"whole": 1, "mixed": 1, "real": 1, "text": "a", "odd": true, "none": null, "big": 9_007_199_254_740_993_i64}),
        json!({"whole": -2, "mixed": "b", "real": 2.5, "text": null, "odd": {"a": 1}}),
    ];
    let features = rows.map(|row| feature("", shape.clone(), row)).to_vec();
    let lines = LayerContent::Lines(LineKind::LevelLines);
    let served = layer("lines", "OGC:CRS84", features);
    let mut names = served.fields.clone();
    names.sort();
    let (_folder, path, _) = write(vec![arrived(lines, served)]);
    let dataset = open_vector(&path).unwrap();
    let reader = FeatureReader::new(&dataset, &path, "lines").unwrap();
    let mut read = reader.attributes().to_vec();
    read.sort();
    assert_eq!(read, names);
    let at = |name: &str| reader.attribute(name).unwrap();
    let rows = values(&path, "lines");
    let text = |text: &str| AttributeValue::Text(text.to_owned());
    let number = AttributeValue::Number;
    assert_eq!(
        [&rows[0][at("whole")], &rows[1][at("whole")]],
        [&number(1.0), &number(-2.0)]
    );
    assert_eq!(
        [&rows[0][at("mixed")], &rows[1][at("mixed")]],
        [&text("1"), &text("b")]
    );
    assert_eq!(
        [&rows[0][at("real")], &rows[1][at("real")]],
        [&number(1.0), &number(2.5)]
    );
    assert_eq!(
        [&rows[0][at("text")], &rows[1][at("text")]],
        [&text("a"), &AttributeValue::Missing]
    );
    assert_eq!(
        [&rows[0][at("odd")], &rows[1][at("odd")]],
        [&text("true"), &text("{\"a\":1}")]
    );
    assert_eq!(rows[1][at("big")], AttributeValue::Missing);
}

#[test]
fn names_that_differ_in_case_alone_stay_apart() {
    let row = json!({"Zone": "AE", "ZONE": "X", "fid": "f", "geom": "g"});
    let served = layer("zones", "OGC:CRS84", vec![feature("1", square(), row)]);
    let (_folder, path, _) = write(vec![arrived(LayerContent::Zones, served)]);
    let mut read = values(&path, "zones").remove(0);
    read.sort_by_key(|value| format!("{value:?}"));
    let texts = ["AE", "X", "f", "g"].map(|text| AttributeValue::Text(text.to_owned()));
    assert_eq!(read, texts);
}

#[test]
fn layers_of_one_name_stand_side_by_side() {
    let zones = |code: &str| {
        let row = json!({"FLD_ZONE": code});
        arrived(
            LayerContent::Zones,
            layer("Zones", "OGC:CRS84", vec![feature("1", square(), row)]),
        )
    };
    let (_folder, path, written) = write(vec![zones("AE"), zones("X")]);
    assert_eq!([&written[0].name, &written[1].name], ["Zones", "Zones 2"]);
    assert_eq!(
        values(&path, "Zones 2")[0][0],
        AttributeValue::Text("X".to_owned())
    );
    assert_ne!(written[0].content, written[1].content);
}

#[test]
fn what_is_no_area_is_no_zone() {
    let road = line_string![(x: 0.0, y: 0.0), (x: 1.0, y: 1.0)];
    let served = layer("roads", "OGC:CRS84", vec![feature("r1", road, json!({}))]);
    let folder = tempfile::tempdir().unwrap();
    let error = write_layers(
        vec![arrived(LayerContent::Zones, served)],
        &folder.path().join("x.gpkg"),
    )
    .unwrap_err();
    assert!(matches!(error, CollectError::Shape { .. }));
    assert_eq!(
        error.to_string(),
        "https://example.org/zones: layer \"roads\", feature \"r1\": it is a line; accepted: polygons"
    );
}

#[test]
fn a_system_that_is_not_known_is_refused() {
    let served = layer("zones", "EPSG:999999", zone(square()));
    let folder = tempfile::tempdir().unwrap();
    let error = write_layers(
        vec![arrived(LayerContent::Zones, served)],
        &folder.path().join("x.gpkg"),
    )
    .unwrap_err();
    assert!(error.to_string().contains("EPSG:999999"), "{error}");
}

#[test]
fn an_empty_layer_has_the_attributes_that_are_needed() {
    let needed = ["FLD_ZONE".to_owned(), "ZONE".to_owned()];
    let served = layer("zones", "OGC:CRS84", Vec::new());
    let (_folder, path, written) = write(vec![ArrivedLayer {
        read_for: LayerContent::Zones,
        needed: vec![&needed],
        boxes: vec![asked()],
        served,
    }]);
    assert_eq!(written[0].features, 0);
    let dataset = open_vector(&path).unwrap();
    let reader = FeatureReader::new(&dataset, &path, "zones").unwrap();
    assert_eq!(reader.attributes(), ["FLD_ZONE"]);
}

#[test]
fn the_digest_tells_contents_apart_and_not_times() {
    let of = |served: ServedLayer| {
        let (_folder, _, written) = write(vec![arrived(LayerContent::Zones, served)]);
        written[0].content.clone()
    };
    let first = layer("zones", "OGC:CRS84", zone(square()));
    let mut later = first.clone();
    later.fetched = "Thu, 26 Nov 2026 12:00:00 GMT".to_owned();
    assert_eq!(of(first.clone()), of(later));
    let mut moved = first.clone();
    let shell = LineString::from(vec![
        (9.5, 49.5),
        (10.5, 49.5),
        (10.5, 50.500_001),
        (9.5, 50.5),
    ]);
    moved.features[0].geometry = Some(MultiPolygon::new(vec![Polygon::new(shell, vec![])]).into());
    assert_ne!(of(first.clone()), of(moved));
    let mut renamed = first.clone();
    renamed.features[0].attributes["FLD_ZONE"] = json!("VE");
    assert_ne!(of(first), of(renamed));
}
