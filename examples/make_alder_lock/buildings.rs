//! The buildings around Alder Lock: a small table that holds a row of every kind.

use std::error::Error;
use std::fmt::Write as _;

use sillmark::crs::{CrsDefinition, Projector};

use super::{CRS, FOOT, SOUTH, WEST, ground_feet, river_east};

const HEADER: &str =
    "id,longitude,latitude,threshold,threshold_unit,vertical_datum,threshold_above_ground\n";

/// A street of houses, one every so many metres to the north.
struct Street {
    name: &'static str,
    /// Metres east of the river's middle.
    from_river: f64,
    first_north: f64,
    apart: f64,
    /// Thresholds above the ground, feet.
    steps: &'static [f64],
    thresholds: Thresholds,
}

/// How the thresholds of a street are known.
#[derive(Clone, Copy)]
enum Thresholds {
    SurveyedInFeet,
    SurveyedInMetres,
    /// Somebody counted steps; nobody surveyed.
    Estimated,
}

use Thresholds::{Estimated, SurveyedInFeet, SurveyedInMetres};

#[rustfmt::skip] // a table
const STREETS: [Street; 8] = [
    street("Towpath", 31.0, 20.0, 54.0, &[1.1, 4.5, 8.3, 10.5], SurveyedInFeet),
    street("Malt Lane", 92.0, 14.0, 27.0, &[0.5, 1.4, -0.7, 1.9, 2.6, 4.9, 0.8, 3.3], SurveyedInFeet),
    street("Sluice Terrace", 99.0, 22.0, 30.0, &[0.7, 0.4, 1.9, 3.6, 0.1, 2.2, 0.8], SurveyedInMetres),
    street("Fuller Row", 106.0, 30.0, 40.0, &[0.5, 1.5, 2.5, 1.0], Estimated),
    street("Kiln Rise", 117.0, 45.0, 40.0, &[0.4, 1.2, -2.0, 0.7], SurveyedInFeet),
    street("Orchard Rise", 141.0, 60.0, 40.0, &[0.5, 1.0, 0.7, 0.9], SurveyedInMetres),
    street("Teasel Yard", 166.0, 50.0, 60.0, &[0.6, -1.5], SurveyedInFeet),
    street("Quarry Lane", 181.0, 70.0, 60.0, &[0.5, 1.1], SurveyedInFeet),
];

const fn street(
    name: &'static str,
    from_river: f64,
    first_north: f64,
    apart: f64,
    steps: &'static [f64],
    thresholds: Thresholds,
) -> Street {
    Street {
        name,
        from_river,
        first_north,
        apart,
        steps,
        thresholds,
    }
}

/// The table, as CSV.
pub(super) fn buildings() -> Result<String, Box<dyn Error>> {
    let projector = Projector::new(CrsDefinition::from_text(CRS)?.horizontal)?;
    let mut table = HEADER.to_owned();
    let mut add =
        |id: &str, east: f64, north: f64, threshold: &str| -> Result<(), Box<dyn Error>> {
            let place = projector.location(WEST + east, SOUTH + north)?;
            let (longitude, latitude) = (place.longitude(), place.latitude());
            writeln!(table, "{id},{longitude:.6},{latitude:.6},{threshold}")?;
            Ok(())
        };
    for street in &STREETS {
        let mut north = street.first_north;
        for (number, step) in (1..).zip(street.steps) {
            let east = river_east(north) + street.from_river;
            let feet = ground_feet(east, north) + step;
            let threshold = match street.thresholds {
                SurveyedInFeet => format!("{feet:.1},ft,NAVD88,"),
                SurveyedInMetres => format!("{:.2},m,NAVD88,", feet * FOOT),
                Estimated => format!(",ft,NAVD88,{step:.1}"),
            };
            add(
                &format!("{} {number}", street.name),
                east,
                north,
                &threshold,
            )?;
            north += street.apart;
        }
    }
    // Under the canal's roof no ground is known, so an estimate above it is none either.
    add("Roofed Wharf", 156.0, 207.0, ",ft,NAVD88,1.5")?;
    add("Boat Shed", 156.0, 210.0, "613.5,ft,NAVD88,")?;
    // Beyond the maps.
    add("Far Meadow Barn", 330.0, 120.0, "617.0,ft,NAVD88,")?;
    // Somebody has still to survey it: the one row that is rejected.
    add("Lock Chapel", 128.0, 96.0, "to be surveyed,ft,NAVD88,")?;
    Ok(table)
}
