//! Open data: the ground at points is that of the file.

use sillmark::collect::terrain;
use sillmark::crs::{CrsDefinition, Projector};
use sillmark::quantity::{LengthUnit, VerticalDatum};
use sillmark::service::{Answers, Connection};
use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement};

use super::fixture::{about, limits, metres, served};
use crate::support::open_data;

/// Terrain models of FEMA's and USGS's open data (see the README of the folder), each with a place
/// within: strips in LZW, tiles without a mark for no value, tiles that are not packed.
const MODELS: [(&str, LengthUnit, [f64; 2]); 4] = [
    (
        "hudson/hoboken_dem.tif",
        LengthUnit::Metre,
        [-74.0335, 40.7440],
    ),
    (
        "hudson/jerseycity_dem.tif",
        LengthUnit::Metre,
        [-74.0700, 40.7200],
    ),
    (
        "houston/ned19_n29x75_w095x50_tx_houstoncity_2008_clipped_feet.tif",
        LengthUnit::Foot,
        [f64::NAN, f64::NAN],
    ),
    (
        "muncy/Muncy_dem_resampled.tif",
        LengthUnit::Foot,
        [f64::NAN, f64::NAN],
    ),
];

/// The middle of a raster whose coordinates are no degrees, by bisection over its projector.
fn middle(path: &std::path::Path) -> Location {
    let dataset = sillmark::gis::open_raster(path).unwrap();
    let [x, column, _, y, _, row] = dataset.geo_transform().unwrap();
    let (columns, rows) = dataset.raster_size();
    let (x, y) = (
        x + column * columns as f64 / 2.0,
        y + row * rows as f64 / 2.0,
    );
    let crs = CrsDefinition::from_spatial_ref(&dataset.spatial_ref().unwrap()).unwrap();
    let projector = Projector::new(crs.horizontal).unwrap();
    let (mut longitude, mut latitude) = (-86.0, 35.0);
    for _ in 0..200 {
        let here = Location::from_degrees(longitude, latitude).unwrap();
        let found = projector.project(here).unwrap();
        longitude += (x - found.x) / 500_000.0;
        latitude += (y - found.y) / 500_000.0;
    }
    Location::from_degrees(longitude, latitude).unwrap()
}

#[test]
fn real_models_say_the_same_in_part_as_whole() {
    for (name, unit, [longitude, latitude]) in MODELS {
        let Some(path) = open_data(name) else {
            return;
        };
        let site = if longitude.is_nan() {
            middle(&path)
        } else {
            Location::from_degrees(longitude, latitude).unwrap()
        };
        let server = served(&path);
        let address = server.address();
        let folder = tempfile::tempdir().unwrap();
        let connection = Connection::open(&address, Answers::Fetched, limits()).unwrap();
        let statement = DemStatement {
            unit: Some(unit),
            datum: Some(VerticalDatum::Navd88),
            crs: None,
        };
        let margin = metres(120.0);
        let collected = terrain(
            &connection,
            &address,
            &statement,
            &about(&[site], margin),
            folder.path(),
        )
        .unwrap();
        assert!(collected.bytes_read < collected.bytes_total);
        let whole = Dem::open(&path, &statement).unwrap();
        let crop = Dem::open(&collected.file.unwrap(), &statement).unwrap();
        assert_eq!(whole.cell_size(), crop.cell_size());
        let mut compared = 0;
        for step in -10..=10 {
            for other in -10..=10 {
                let (east, north) = (f64::from(step) * 1e-4, f64::from(other) * 1e-4);
                let at = Location::from_degrees(site.longitude() + east, site.latitude() + north);
                let at = at.unwrap();
                let ground = |dem: &Dem| {
                    let ground = dem.ground_at(at).unwrap().ok();
                    ground.map(|ground| ground.elevation.height() / metres(1.0))
                };
                match (ground(&whole), ground(&crop)) {
                    (Some(one), Some(other)) => {
                        // Between cells that differ by metres, rounding of the position.
                        assert!((one - other).value.abs() < 1e-6, "{name}");
                        compared += 1;
                    }
                    (one, other) => assert_eq!(one.is_some(), other.is_some(), "{name}"),
                }
            }
        }
        assert!(compared > 100, "{name}: {compared}");
    }
}
