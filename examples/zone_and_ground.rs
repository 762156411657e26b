//! The library at its simplest: which zone holds a point, and how high the ground is there.
//!
//! ```text
//! cargo run --release --example zone_and_ground -- ZONES DEM DATUM UNIT LON LAT
//! ```

#![allow(clippy::print_stdout)] // an example prints

use std::error::Error;

use sillmark::hazard::{LayerPath, ZoneStatement, read_zones};
use sillmark::quantity::UnitSystem;
use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement};

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [zones, dem, datum, unit, longitude, latitude] = arguments.as_slice() else {
        return Err("usage: zone_and_ground ZONES DEM DATUM UNIT LON LAT".into());
    };
    let place = Location::from_degrees(longitude.parse()?, latitude.parse()?)?;

    let layer = LayerPath::split(zones);
    let zones = read_zones(
        &layer.path,
        layer.layer.as_deref(),
        &ZoneStatement::default(),
        None,
    )?;
    let statement = DemStatement {
        unit: Some(unit.parse()?),
        datum: Some(datum.parse()?),
        crs: None,
    };
    let dem = Dem::open(dem.as_ref(), &statement)?;

    for zone in zones.at(place)?.zones {
        let level = zone.level.map_or_else(
            || "no level of its own".to_owned(),
            |level| UnitSystem::Us.elevation(level),
        );
        println!("zone {} ({}): {level}", zone.title(), zone.record());
    }
    match dem.ground_at(place)? {
        Ok(ground) => println!("ground: {}", UnitSystem::Us.elevation(ground.elevation)),
        Err(gap) => println!("ground: not known, {gap}"),
    }
    Ok(())
}
