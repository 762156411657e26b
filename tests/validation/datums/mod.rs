//! Vertical datums against published examples, the Ordnance Survey's test points and another
//! build of PROJ.

mod any_epsg_code;
mod environment;
mod epsg_method_9658;
mod ordnance_survey;
mod peer_points;
mod report;
mod stated;
mod without_a_grid;

use std::collections::BTreeMap;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;

use VerticalDatum::{Dhhn2016, Egm96, Egm2008, Nap, Navd88, NgfIgn69, Ngvd29, Odn};
use approx::assert_abs_diff_eq;
use sillmark::crs::{
    COMMON_DATUM_PAIRS, Conversion, DatumError, DatumSettings, Datums, GRIDS_VARIABLE,
};
use sillmark::quantity::unit::{Length, foot, meter, millimeter};
use sillmark::quantity::{Elevation, VerticalDatum, parse_elevation};
use sillmark::site::{Location, StatedOffset};
use sillmark::statement::Document;

use crate::peer;
use crate::support::open_data;

const ETRS89: u32 = 4937;
const RGF93_V2B: u32 = 9781;

fn datums_in(folder: &Path) -> Datums {
    Datums::new(DatumSettings {
        grid_folders: vec![folder.to_owned()],
        ..DatumSettings::default()
    })
    .unwrap()
}

/// With every grid of the open data.
fn datums() -> Option<Datums> {
    open_data("grids").map(|folder| datums_in(&folder))
}

/// With an empty folder, whatever the environment names.
fn no_grids() -> Datums {
    let folder = tempfile::tempdir().unwrap();
    datums_in(folder.path())
}

fn with_offsets(folder: &Path, offsets: &str) -> Result<Datums, DatumError> {
    let document = Document::parse("site.toml", offsets).unwrap();
    Datums::new(DatumSettings {
        grid_folders: vec![folder.to_owned()],
        network: false,
        stated_offsets: StatedOffset::read_all(&document.root()).unwrap(),
    })
}

fn place(longitude: f64, latitude: f64) -> Location {
    Location::from_degrees(longitude, latitude).unwrap()
}

fn metres(height: f64, datum: VerticalDatum) -> Elevation {
    Elevation::new(Length::new::<meter>(height), datum)
}

fn height(conversion: &Conversion) -> f64 {
    conversion.elevation.height().get::<meter>()
}

fn shift(conversion: &Conversion) -> f64 {
    conversion.shift.get::<meter>()
}

/// A line on the terminal, past the capture of the test runner.
fn say(line: &str) {
    let _ = std::io::stderr().write_all(format!("{line}\n").as_bytes());
}

/// Only the files named, in a folder of their own.
fn copied(names: &[&str]) -> Option<tempfile::TempDir> {
    let folder = tempfile::tempdir().unwrap();
    for name in names {
        let source = open_data(&format!("grids/{name}"))?;
        fs::copy(source, folder.path().join(name)).unwrap();
    }
    Some(folder)
}

/// PROJ 9.6.2, `test/unit/test_network.cpp`, `curl_vgridshift_vertcon`: EPSG:4269+7968 to
/// EPSG:4269+5703 at 40 N, 80 W, 0 m gives −0.15 m within 1e-2.
#[test]
fn proj_unit_value_at_40_n_80_w() {
    let Some(datums) = datums() else { return };
    let converted = datums
        .convert(metres(0.0, Ngvd29), Navd88, place(-80.0, 40.0))
        .unwrap();
    assert_abs_diff_eq!(height(&converted), -0.15, epsilon = 1e-2);
    assert!(converted.how.contains("us_noaa_vertcone.tif"));
}
