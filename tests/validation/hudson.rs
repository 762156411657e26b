//! Hudson County, New Jersey: the National Flood Hazard Layer of 2006 and USGS elevations.

use std::collections::BTreeMap;
use std::path::Path;

use serde_json::Value;
use sillmark::hazard::{Zone, ZoneClass, ZoneMap, ZoneStatement, read_zones};
use sillmark::quantity::{LengthUnit, VerticalDatum, unit::meter};
use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement, Gap, Terrain};

use crate::support::{copy_as, open_data};

/// The files do not say so; their publisher's catalogue does.
fn metres_navd88() -> DemStatement {
    DemStatement {
        unit: Some(LengthUnit::Metre),
        datum: Some(VerticalDatum::Navd88),
        crs: None,
    }
}

fn zones(path: &Path) -> ZoneMap {
    read_zones(path, None, &ZoneStatement::default(), None).unwrap()
}

#[test]
fn the_six_points_of_the_oracle() {
    // Ground by a bilinear sum over the array and by PROJ's grid shift, zones by a
    // point-in-polygon of another library: hoboken-oracle.json.
    let (Some(oracle), Some(layer), Some(dem)) = (
        open_data("hudson/hoboken-oracle.json"),
        open_data("hudson/S_FLD_HAZ_AR.shp"),
        open_data("hudson/jersey_city_10m_dem.tif"),
    ) else {
        return;
    };
    let zones = zones(&layer);
    let numbered: Vec<_> = zones
        .zones()
        .map(|(zone, _)| zone.feature.clone())
        .collect();
    let dem = Dem::open(&dem, &metres_navd88()).unwrap();
    let oracle: Vec<Value> =
        serde_json::from_str(&std::fs::read_to_string(oracle).unwrap()).unwrap();
    assert_eq!(oracle.len(), 6);
    for point in oracle {
        let number = |name: &str| point[name].as_f64().unwrap();
        let location = Location::from_degrees(number("lon"), number("lat")).unwrap();
        let ground = dem.ground_at(location).unwrap().unwrap();
        let metres = ground.elevation.height().get::<meter>();
        let expected = number("bilinear_proj_vgridshift_m");
        assert!(
            (metres - expected).abs() < 1e-4,
            "{location:?}: {metres} and {expected}"
        );
        assert_eq!(ground.elevation.datum(), VerticalDatum::Navd88);

        let here = zones.at(location).unwrap();
        let expected = point["zone"].as_array().unwrap();
        assert_eq!(here.zones.len(), expected.len(), "{location:?}");
        for (zone, expected) in here.zones.iter().zip(expected) {
            let position = usize::try_from(expected[0].as_u64().unwrap()).unwrap();
            assert_eq!(zone.feature, numbered[position]);
            assert_eq!(zone.code, expected[1].as_str().unwrap());
            assert_eq!(zone.subtype.as_deref(), expected[2].as_str());
            let level = zone
                .level
                .map(|level| LengthUnit::Foot.read(level.height()));
            let expected = expected[3].as_f64().filter(|level| *level > -9000.0);
            assert_eq!(level.map(f64::round), expected);
        }
    }
}

/// Code, subtype, level in feet, class: how many polygons of each there are.
fn kinds(map: &ZoneMap) -> BTreeMap<(String, String, String), (usize, ZoneClass)> {
    let mut kinds = BTreeMap::new();
    for (zone, _) in map.zones() {
        let level = zone.level.map_or("none".to_owned(), |level| {
            assert_eq!(level.datum(), VerticalDatum::Navd88);
            format!("{:.3}", LengthUnit::Foot.read(level.height()))
        });
        let key = (
            zone.code.clone(),
            zone.subtype.clone().unwrap_or_default(),
            level,
        );
        kinds.entry(key).or_insert((0, zone.class)).0 += 1;
        assert!(zone.remarks.is_empty(), "{zone:?}");
        assert_eq!((zone.depth, zone.velocity), (None, None));
    }
    kinds
}

#[test]
fn every_kind_of_polygon() {
    let Some(layer) = open_data("hudson/S_FLD_HAZ_AR.shp") else {
        return;
    };
    // Counted with pandas over the attribute table (groupby FLD_ZONE, ZONE_SUBTY,
    // STATIC_BFE); levels in feet NAVD88 as the table says of each.
    let minimal = "AREA OF MINIMAL FLOOD HAZARD";
    let rare = "0.2 PCT ANNUAL CHANCE FLOOD HAZARD";
    let expected = [
        ("A", "", "none", 5, ZoneClass::Approximate),
        ("AE", "", "7.000", 1, ZoneClass::Detailed),
        ("AE", "", "8.000", 7, ZoneClass::Detailed),
        ("AE", "", "9.000", 4, ZoneClass::Detailed),
        ("AE", "", "10.000", 2, ZoneClass::Detailed),
        ("AH", "", "9.000", 4, ZoneClass::Detailed),
        ("AH", "", "12.000", 1, ZoneClass::Detailed),
        ("AH", "", "13.000", 2, ZoneClass::Detailed),
        ("AH", "", "14.000", 1, ZoneClass::Detailed),
        ("AH", "", "15.000", 4, ZoneClass::Detailed),
        ("AH", "", "30.000", 1, ZoneClass::Detailed),
        ("AH", "", "69.000", 1, ZoneClass::Detailed),
        ("AREA NOT INCLUDED", "", "none", 1, ZoneClass::Unknown),
        ("VE", "", "11.000", 1, ZoneClass::CoastalWave),
        ("X", rare, "none", 247, ZoneClass::Rare),
        ("X", minimal, "none", 123, ZoneClass::Minimal),
    ];
    let expected: BTreeMap<_, _> = expected
        .into_iter()
        .map(|(code, subtype, level, count, class)| {
            (
                (code.to_owned(), subtype.to_owned(), level.to_owned()),
                (count, class),
            )
        })
        .collect();
    assert_eq!(kinds(&zones(&layer)), expected);
}

#[test]
fn every_format_gives_the_same_answers() {
    let Some(source) = open_data("hudson/S_FLD_HAZ_AR.shp") else {
        return;
    };
    let original = zones(&source);
    let scratch = tempfile::tempdir().unwrap();
    for (driver, name) in [
        ("ESRI Shapefile", "zones.shp"),
        ("GPKG", "zones.gpkg"),
        ("GeoJSON", "zones.geojson"),
        ("FlatGeobuf", "zones.fgb"),
        ("OpenFileGDB", "zones.gdb"),
    ] {
        let path = scratch.path().join(name);
        copy_as(&source, driver, &path);
        let copy = zones(&path);
        assert_eq!(copy.zones().len(), 405, "{driver}");
        assert_eq!(kinds(&copy), kinds(&original), "{driver}");
        // Points of a grid over the county.
        let mut found = 0;
        for column in 0..40_u8 {
            for row in 0..40_u8 {
                let longitude = -74.16 + 0.0043 * f64::from(column);
                let latitude = 40.645 + 0.0044 * f64::from(row);
                let location = Location::from_degrees(longitude, latitude).unwrap();
                let answer = |map: &ZoneMap| -> Vec<Zone> {
                    let here = map.at(location).unwrap().zones.into_iter().cloned();
                    here.map(|mut zone| {
                        zone.layer.clear();
                        zone
                    })
                    .collect()
                };
                assert_eq!(answer(&copy), answer(&original), "{driver} {location:?}");
                found += answer(&copy).len();
            }
        }
        assert!(found > 300, "{driver}: {found}");
    }
}

#[test]
fn a_void_in_one_raster_is_filled_from_another() {
    // Both are of one grid of a third of an arc second; the first has no value at the last
    // point of the oracle's list but one.
    let (Some(first), Some(second)) = (
        open_data("hudson/hoboken_dem.tif"),
        open_data("hudson/jersey_city_10m_dem.tif"),
    ) else {
        return;
    };
    let open = |path: &Path| Dem::open(path, &metres_navd88()).unwrap();
    // 1/10800 degree at 40.75 N: 10.3 m by 7.8 m.
    let size = open(&first).cell_size().get::<meter>();
    assert!((size - 8.97).abs() < 0.1, "{size}");
    let terrain = Terrain::new(vec![open(&first), open(&second)]);
    let ground = |longitude: f64, latitude: f64| {
        let location = Location::from_degrees(longitude, latitude).unwrap();
        terrain
            .ground_at(location)
            .unwrap()
            .map(|ground| ground.source)
    };
    assert_eq!(ground(-74.0335, 40.74), Ok("hoboken_dem.tif".into()));
    assert_eq!(
        ground(-74.038, 40.753),
        Ok("jersey_city_10m_dem.tif".into())
    );
    assert_eq!(ground(-74.2, 40.753), Err(Gap::Outside));
    let void = Location::from_degrees(-74.038, 40.753).unwrap();
    assert_eq!(open(&first).ground_at(void).unwrap(), Err(Gap::Void));
}

/// Points that the other library is asked for.
const POINTS: usize = 2000;

#[test]
fn random_points_by_another_library() {
    let Some(layer) = open_data("hudson/S_FLD_HAZ_AR.shp") else {
        return;
    };
    let folder = layer.parent().unwrap();
    let Some(lines) = crate::peer::lines("hudson_points.py", folder, POINTS) else {
        return;
    };
    let map = zones(&layer);
    let identities: Vec<_> = map.zones().map(|(zone, _)| zone.feature.clone()).collect();
    let dem = Dem::open(&folder.join("jerseycity_dem.tif"), &metres_navd88()).unwrap();
    let (mut compared, mut heights, mut voids, mut outside) = (0, 0, 0, 0);
    let mut worst: f64 = 0.0;
    for line in &lines {
        let fields: Vec<_> = line.split(';').collect();
        let number = |index: usize| fields[index].parse::<f64>().unwrap();
        let location = Location::from_degrees(number(0), number(1)).unwrap();

        let here = map.at(location).unwrap();
        let mut mine: Vec<_> = here.zones.iter().map(|zone| zone.feature.clone()).collect();
        let mut theirs: Vec<_> = fields[2]
            .split(',')
            .filter(|number| !number.is_empty())
            .map(|number| identities[number.parse::<usize>().unwrap()].clone())
            .collect();
        mine.sort();
        theirs.sort();
        if number(3) > 0.001 {
            assert_eq!(mine, theirs, "{line}");
            assert!(!here.on_edge, "{line}");
        }

        match (dem.ground_at(location).unwrap(), fields[4]) {
            (Err(Gap::Void), "void") => voids += 1,
            (Err(Gap::Outside), "outside") => outside += 1,
            (Ok(ground), theirs) => {
                let theirs: f64 = theirs.parse().unwrap();
                let apart = (ground.elevation.height().get::<meter>() - theirs).abs();
                assert!(apart < 1e-4, "{line}: {apart} m apart");
                worst = worst.max(apart);
                heights += 1;
            }
            (mine, _) => panic!("{line}: {mine:?}"),
        }
        compared += 1;
    }
    assert_eq!(compared, POINTS);
    // The random points have to touch every case.
    assert!(
        heights > 500 && voids > 300 && outside > 50,
        "{heights} {voids} {outside}"
    );
    // What is left is the last digit that the script prints.
    assert!(worst < 1e-6, "{worst}");
}
