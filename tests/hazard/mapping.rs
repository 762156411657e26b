//! Mapping files: those that ship, those that users write, and their mistakes.

use std::path::{Path, PathBuf};

use approx::assert_abs_diff_eq;
use serde_json::json;
use sillmark::crs::{CrsDefinition, Projector};
use sillmark::hazard::{
    HazardError, Schema, SchemaChoice, ZoneClass, ZoneMap, ZoneRemark, ZoneStatement, read_zones_by,
};
use sillmark::quantity::unit::meter;
use sillmark::quantity::{AnnualChance, LengthUnit, VerticalDatum};
use sillmark::site::Location;
use sillmark::statement::{Place, Stated, StatementError};

use super::fixture::{attributes, feature, layer, place, polygon, square};

/// A mapping as a user may write it, for a layer that nobody here knows.
const COUNTY: &str = r#"
name = "county"
source = "data sheet of the county, 2024"
annual_chance = "1 in 100"
[attributes]
zone = ["Gefahr"]
level = ["HW100"]
depth = ["Tiefe"]
optional = ["depth"]
[constants]
level_datum = "DHHN2016"
length_unit = "m"
[no_value]
texts = ["k. A."]
numbers = [-99]
[range.level]
lowest = 0
highest = 800
unit = "m"
[[zone]]
codes = ["Überschwemmung", 3]
class = "detailed"
level = "expected"
[[zone]]
codes = ["flach"]
class = "sheet-flow"
constant_depth = "0.6 m"
[[zone]]
codes = ["selten", "2"]
class = "rare"
annual_chance = "0.1%"
"#;

fn read(schema: &Schema, path: &Path) -> Result<ZoneMap, HazardError> {
    read_zones_by(schema, path, None, &ZoneStatement::default(), None)
}

/// The only zone of a layer of one feature.
fn zone(schema: &str, pairs: &[(&str, serde_json::Value)]) -> sillmark::hazard::Zone {
    let scratch = tempfile::tempdir().unwrap();
    let geometry = polygon(&[square(0.0, 0.0, 0.1)]);
    let path = layer(scratch.path(), &[feature(&attributes(pairs), &geometry)]);
    let schema = Schema::from_toml("county.toml", schema).unwrap();
    let map = read(&schema, &path).unwrap();
    map.zones().next().unwrap().0.clone()
}

#[test]
fn a_users_mapping_gives_class_level_and_chance() {
    let wet = zone(
        COUNTY,
        &[
            ("GEFAHR", json!("überSCHWEMMUNG ")),
            ("hw100", json!("41.3")),
        ],
    );
    assert_eq!(wet.class, ZoneClass::Detailed);
    assert!(wet.level_expected && wet.remarks.is_empty(), "{wet:?}");
    let level = wet.level.unwrap();
    assert_eq!(level.datum(), VerticalDatum::Dhhn2016);
    assert_abs_diff_eq!(level.height().get::<meter>(), 41.3, epsilon = 1e-12);
    assert_eq!(wet.level_unit, Some(LengthUnit::Metre));
    assert_eq!(wet.annual_chance, AnnualChance::ONE_PERCENT);

    let numbered = zone(COUNTY, &[("Gefahr", json!(3)), ("HW100", json!(-99.0))]);
    assert_eq!(
        (numbered.class, numbered.level),
        (ZoneClass::Detailed, None)
    );

    let rare = zone(
        COUNTY,
        &[("Gefahr", json!("Selten")), ("HW100", json!("k. a."))],
    );
    assert_eq!(rare.class, ZoneClass::Rare);
    assert_eq!(Some(rare.annual_chance), AnnualChance::new(0.001));

    let unknown = zone(
        COUNTY,
        &[("Gefahr", json!("mittel")), ("HW100", json!(null))],
    );
    assert_eq!(unknown.class, ZoneClass::Unknown);
    assert!(matches!(
        unknown.remarks[..],
        [ZoneRemark::UnknownZone { .. }]
    ));
}

#[test]
fn the_depth_of_a_class_holds_where_the_feature_has_none() {
    let depth = |value: serde_json::Value| {
        let pairs = [
            ("Gefahr", json!("flach")),
            ("HW100", json!(null)),
            ("Tiefe", value),
        ];
        let zone = zone(COUNTY, &pairs);
        (
            zone.depth.map(|depth| depth.get::<meter>()),
            zone.remarks.len(),
        )
    };
    assert_eq!(depth(json!(null)), (Some(0.6), 0));
    assert_eq!(depth(json!(-99)), (Some(0.6), 0));
    assert_eq!(depth(json!(0.25)), (Some(0.25), 0));
    // Neither garbage nor an area is replaced in silence.
    assert_eq!(depth(json!("tief")), (None, 1));
    assert_eq!(depth(json!(52_310.5)), (None, 1));
}

#[test]
fn a_level_outside_the_stated_range_is_refused() {
    let high = zone(COUNTY, &[("Gefahr", json!(3)), ("HW100", json!(812.0))]);
    assert_eq!(high.level, None);
    let remark = high.remarks[0].to_string();
    assert_eq!(remark, "level 812 m is not used: accepted are 0 to 800 m");
}

#[test]
fn a_layer_without_a_named_attribute_is_refused() {
    let scratch = tempfile::tempdir().unwrap();
    let geometry = polygon(&[square(0.0, 0.0, 0.1)]);
    let there = json!({"Gefahr": "selten", "WSP_100": 41.3});
    let path = layer(scratch.path(), &[feature(&there, &geometry)]);
    let schema = Schema::from_toml("county.toml", COUNTY).unwrap();
    let error = read(&schema, &path).map(|_| ()).unwrap_err().to_string();
    let expected = "has no attribute \"HW100\" (county); it has: Gefahr, WSP_100";
    assert!(error.ends_with(expected), "{error}");
}

#[test]
fn an_option_may_not_contradict_the_mapping() {
    let scratch = tempfile::tempdir().unwrap();
    let geometry = polygon(&[square(0.0, 0.0, 0.1)]);
    let there = json!({"Gefahr": 3, "HW100": 41.3});
    let path = layer(scratch.path(), &[feature(&there, &geometry)]);
    let schema = Schema::from_toml("county.toml", COUNTY).unwrap();
    let reading = |datum| {
        let statement = ZoneStatement {
            datum: Some(datum),
            ..ZoneStatement::default()
        };
        read_zones_by(&schema, &path, None, &statement, None).map(|_| ())
    };
    assert_eq!(reading(VerticalDatum::Dhhn2016), Ok(()));
    let error = reading(VerticalDatum::Navd88).unwrap_err().to_string();
    let words = ["--zones-datum", "\"NAVD88\"", "\"DHHN2016\"", "county"];
    assert!(words.iter().all(|word| error.contains(word)), "{error}");
}

#[test]
fn mistakes_in_a_mapping_name_line_field_and_what_is_accepted() {
    let mistake = |from: &str, to: &str| {
        assert!(COUNTY.contains(from), "{from}");
        let text = COUNTY.replacen(from, to, 1);
        Schema::from_toml("county.toml", &text)
            .unwrap_err()
            .to_string()
    };
    for (from, to, expected) in [
        (
            "annual_chance = \"1 in 100\"",
            "annual_chance = 0.01",
            "county.toml, line 4: annual_chance \"0.01\": it is neither a percentage nor \"1 in\" a number of years; accepted: a percentage between 0% and 100%",
        ),
        (
            "annual_chance = \"1 in 100\"\n",
            "",
            "county.toml, line 1: annual_chance: it is missing; accepted: of the flood",
        ),
        (
            "zone = [\"Gefahr\"]",
            "zones = [\"Gefahr\"]",
            "county.toml, line 6: attributes.zones: there is no such field here; accepted: zone, subtype, identity",
        ),
        (
            "level = [\"HW100\"]",
            "level = \"HW100\"",
            "county.toml, line 7: attributes.level \"\\\"HW100\\\"\": it is not a list of texts; accepted: [",
        ),
        (
            "optional = [\"depth\"]",
            "optional = [\"velocity\"]",
            "county.toml, line 9: attributes.optional \"velocity\": [attributes] names no attribute for it",
        ),
        (
            "\"DHHN2016\"",
            "\"DHHN\"",
            "county.toml, line 11: constants.level_datum \"DHHN\": it is not a known vertical datum; accepted: ",
        ),
        (
            "numbers = [-99]",
            "numbers = [\"keine\"]",
            "county.toml, line 15: no_value.numbers \"keine\": it is not a number",
        ),
        (
            "highest = 800",
            "highest = -800",
            "county.toml, line 18: level.highest \"-800\": it is not greater than the lowest, 0",
        ),
        (
            "class = \"detailed\"",
            "class = \"wet\"",
            "county.toml, line 22: zone.class \"wet\": it is not one of the choices; accepted: minimal, unspecified, rare",
        ),
        (
            "codes = [\"flach\"]\n",
            "",
            "county.toml, line 24: zone.codes: it is missing; accepted: codes = [\"A\", \"B\"], or any = true",
        ),
        (
            "codes = [\"flach\"]",
            "codes = [\"flach\", \"Selten\"]",
            "county.toml, line 28: zone.codes \"selten\": an earlier row takes it already",
        ),
        (
            "codes = [\"flach\"]",
            "codes = [\"A1..B3\"]",
            "county.toml, line 25: zone.codes \"A1..B3\": it is not a series of codes; accepted: a code, or",
        ),
        (
            "codes = [\"flach\"]",
            "any = true",
            "county.toml, line 28: zone.codes: an earlier row takes it already",
        ),
        (
            "constant_depth = \"0.6 m\"",
            "constant_depth = 0.6",
            "county.toml, line 27: zone.constant_depth \"0.6\": it has no unit",
        ),
        (
            "class = \"rare\"",
            "class = \"rare\"\nsubtypes = [\"x\"]",
            "county.toml, line 31: zone.subtypes \"x\": [attributes] names no subtype to compare it with",
        ),
        (
            "annual_chance = \"0.1%\"",
            "annual_chance = \"110%\"",
            "county.toml, line 31: zone.annual_chance \"110%\": it is not between 0% and 100%",
        ),
    ] {
        let error = mistake(from, to);
        assert!(error.starts_with(expected), "{error}\n{expected}");
    }
}

#[test]
fn choosing_a_schema() {
    let choose = |text: &str| -> Result<SchemaChoice, StatementError> {
        let place = Place::Option("option --zones-schema".into());
        SchemaChoice::read(&Stated::new("zones schema", text, place))
    };
    let name = |text: &str| match choose(text).unwrap() {
        SchemaChoice::Shipped(schema) => schema.name.clone(),
        SchemaChoice::File(path) => path.display().to_string(),
    };
    assert_eq!(name("NFHL"), "nfhl");
    assert_eq!(name("england"), "england");
    assert_eq!(name("Extent:0.5%"), "extent");
    assert_eq!(name("maps/County.TOML"), "maps/County.TOML");
    for (text, problem) in [
        ("extent", "it does not say the annual chance"),
        ("extent:", "it is empty"),
        ("extent:1", "it is neither a percentage"),
        ("extent:0%", "it is not between 0% and 100%"),
        ("wales", "there is no such schema"),
        ("", "there is no such schema"),
    ] {
        let error = choose(text).unwrap_err().to_string();
        let start = format!("option --zones-schema: zones schema {text:?}: {problem}");
        assert!(error.starts_with(&start), "{error}");
        assert!(error.contains("nfhl, england, extent:CHANCE"), "{error}");
    }
}

#[test]
fn any_polygon_is_flooded() {
    let scratch = tempfile::tempdir().unwrap();
    let square = polygon(&[square(0.0, 0.0, 0.1)]);
    let path = layer(scratch.path(), &[feature(&json!({"id": 7}), &square)]);
    let chance = AnnualChance::new(0.005).unwrap();
    let map = read(&Schema::extent(chance).unwrap(), &path).unwrap();
    let here = map.at(place(0.05, 0.05)).unwrap();
    let [zone] = here.zones[..] else {
        panic!("{here:?}")
    };
    assert!(
        zone.class.is_inside() && zone.remarks.is_empty(),
        "{zone:?}"
    );
    assert_eq!((zone.annual_chance, zone.level), (chance, None));
    // Beyond the extent nothing is known.
    assert!(map.at(place(0.2, 0.05)).unwrap().zones.is_empty());
}

/// Squares of 100 m side by side along the national grid of Great Britain, from 530 000 E,
/// 180 000 N to the east, with attribute names in the case of one of the services.
fn england(folder: &Path, names: [&str; 3], rows: &[[&str; 3]]) -> PathBuf {
    let features: Vec<_> = rows
        .iter()
        .enumerate()
        .map(|(position, values)| {
            let west = 530_000.0 + 100.0 * f64::from(u8::try_from(position).unwrap());
            let (south, side) = (180_000.0, 100.0);
            let ring = vec![
                [west, south],
                [west + side, south],
                [west + side, south + side],
                [west, south + side],
                [west, south],
            ];
            let pairs: Vec<_> = names
                .iter()
                .zip(values)
                .map(|(name, value)| (*name, json!(value)))
                .collect();
            feature(&attributes(&pairs), &polygon(&[ring]))
        })
        .collect();
    let collection = json!({
        "type": "FeatureCollection",
        "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::27700"}},
        "features": features,
    });
    crate::support::write(folder, "Flood_Zones_2_3.geojson", &collection.to_string())
}

/// The place so many metres east of 530 000 E on the line 180 050 N, by bisection over the
/// library's own projector.
fn on_the_grid(east: f64) -> Location {
    let crs = CrsDefinition::from_text("EPSG:27700").unwrap().horizontal;
    let projector = Projector::new(crs).unwrap();
    let (mut longitude, mut latitude) = (-0.12, 51.5);
    for _ in 0..20 {
        let here = Location::from_degrees(longitude, latitude).unwrap();
        let found = projector.project(here).unwrap();
        longitude += (530_000.0 + east - found.x) / 69_000.0;
        latitude += (180_050.0 - found.y) / 111_000.0;
    }
    Location::from_degrees(longitude, latitude).unwrap()
}

#[test]
fn englands_flood_zones_whatever_the_case() {
    let rows = [
        ["modelled", "FZ3", "river"],
        ["recorded", "fz3", "Sea"],
        ["modelled", "FZ3", "River and Sea"],
        ["local evidence", "FZ3", "undefined"],
        ["modelled", "FZ2", "river"],
        ["modelled", "FZ9", "river"],
    ];
    for names in [
        ["Origin", "Flood_zone", "Flood_source"],
        ["origin", "flood_zone", "flood_source"],
    ] {
        let scratch = tempfile::tempdir().unwrap();
        let path = england(scratch.path(), names, &rows);
        let map = read(&Schema::england().unwrap(), &path).unwrap();
        let at = |east: f64| {
            let here = map.at(on_the_grid(east)).unwrap();
            let zones = here.zones.iter();
            let zones: Vec<_> = zones
                .map(|zone| {
                    (
                        zone.class,
                        zone.annual_chance.to_string(),
                        zone.origin.clone(),
                    )
                })
                .collect();
            zones
        };
        let one = |class, chance: &str, origin: &str| {
            vec![(class, chance.to_owned(), Some(origin.to_owned()))]
        };
        assert_eq!(at(50.0), one(ZoneClass::Approximate, "1 %", "modelled"));
        assert_eq!(at(150.0), one(ZoneClass::Approximate, "0.5 %", "recorded"));
        assert_eq!(at(250.0), one(ZoneClass::Approximate, "1 %", "modelled"));
        assert_eq!(
            at(350.0),
            one(ZoneClass::Approximate, "1 %", "local evidence")
        );
        assert_eq!(at(450.0), one(ZoneClass::Rare, "0.1 %", "modelled"));
        assert_eq!(at(550.0), one(ZoneClass::Unknown, "1 %", "modelled"));
        // No polygon: unknown, not Flood Zone 1.
        assert_eq!(at(650.0), []);
    }
}

#[test]
fn a_cut_down_copy_of_englands_zones_is_read() {
    let scratch = tempfile::tempdir().unwrap();
    let path = england(
        scratch.path(),
        ["origin", "flood_zone", "note"],
        &[["modelled", "FZ3", ""]],
    );
    let map = read(&Schema::england().unwrap(), &path).unwrap();
    assert!(
        map.at(on_the_grid(50.0)).unwrap().zones[0]
            .class
            .is_inside()
    );
    let path = england(
        scratch.path(),
        ["origin", "zone", "note"],
        &[["modelled", "FZ3", ""]],
    );
    let error = read(&Schema::england().unwrap(), &path)
        .map(|_| ())
        .unwrap_err();
    let error = error.to_string();
    assert!(
        error.contains("\"Flood_zone\"") && error.contains("it has: note, origin, zone"),
        "{error}"
    );
}

#[test]
fn every_shipped_schema_can_be_chosen() {
    let names: Vec<_> = Schema::shipped()
        .unwrap()
        .into_iter()
        .map(|schema| schema.name)
        .collect();
    assert_eq!(names, ["nfhl", "england", "extent"]);
    for name in names {
        assert!(SchemaChoice::ACCEPTED.contains(&name), "{name}");
    }
}

#[test]
fn the_shipped_zones_outside_the_main_flood_say_their_own() {
    let nfhl = Schema::nfhl().unwrap();
    let chance = |code, subtype| nfhl.row(code, subtype).unwrap().annual_chance;
    let rare = Some(AnnualChance::ONE_IN_500);
    assert_eq!(chance("X", "0.2 PCT ANNUAL CHANCE FLOOD HAZARD"), rare);
    assert_eq!(chance("B", ""), rare);
    assert_eq!(chance("AE", ""), None);
    assert_eq!(nfhl.annual_chance, AnnualChance::ONE_PERCENT);
}
