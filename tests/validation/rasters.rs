//! Ground over rasters of other kinds: projected, in feet, of whole numbers.

use sillmark::quantity::{LengthUnit, VerticalDatum};
use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement, Gap};

use crate::support::open_data;

/// Compares the ground at random points; returns how many heights, voids and outsides.
fn compare(relative: &str, unit: LengthUnit) -> Option<[usize; 3]> {
    let path = open_data(relative)?;
    let lines = crate::peer::lines("ground_points.py", &path, 1000)?;
    let statement = DemStatement {
        unit: Some(unit),
        datum: Some(VerticalDatum::Navd88),
        crs: None,
    };
    let dem = Dem::open(&path, &statement).unwrap();
    let mut seen = [0; 3];
    for line in lines {
        let fields: Vec<_> = line.split(';').collect();
        let number = |index: usize| fields[index].parse::<f64>().unwrap();
        let location = Location::from_degrees(number(0), number(1)).unwrap();
        let kind = match (dem.ground_at(location).unwrap(), fields[2]) {
            (Err(Gap::Void), "void") => 1,
            (Err(Gap::Outside), "outside") => 2,
            (Ok(ground), theirs) => {
                let theirs: f64 = theirs.parse().unwrap();
                let mine = unit.read(ground.elevation.height());
                assert!((mine - theirs).abs() < 1e-4, "{relative} {line}: {mine}");
                0
            }
            (mine, _) => panic!("{relative} {line}: {mine:?}"),
        };
        seen[kind] += 1;
    }
    Some(seen)
}

#[test]
fn a_projected_raster_in_feet() {
    let dem = "houston/ned19_n29x75_w095x50_tx_houstoncity_2008_clipped_feet.tif";
    if let Some([heights, _, outside]) = compare(dem, LengthUnit::Foot) {
        assert!(heights > 800 && outside > 20, "{heights} {outside}");
    }
}

#[test]
fn a_water_surface_with_an_odd_mark_for_none() {
    let surface = "houston/wse_1pct_clipped_resampled.tif";
    if let Some([heights, voids, _]) = compare(surface, LengthUnit::Foot) {
        assert!(heights > 50 && voids > 50, "{heights} {voids}");
    }
}

#[test]
fn a_raster_of_whole_feet() {
    if let Some([heights, _, _]) = compare("muncy/Muncy_dem_resampled.tif", LengthUnit::Foot) {
        assert!(heights > 800, "{heights}");
    }
}
