//! Makes the terrain, the flood zones and the table of buildings of the demonstration
//! scenario, Alder Lock.
//!
//! ```text
//! cargo run --release --example make_alder_lock -- examples/alder-lock
//! ```
//!
//! The place is invented: a mill on a river that would flow through the middle of Lake
//! Superior, so that nobody can take it for a real one. The same program gives the same
//! heights, polygons and buildings every time; `tests/validation/demonstration.rs` compares them with
//! the files that are kept.

mod buildings;

use std::error::Error;
use std::fs;
use std::path::Path;

use gdal::DriverManager;
use gdal::raster::{Buffer, RasterCreationOptions};
use gdal::spatial_ref::SpatialRef;

/// Cells of a side, one metre each.
const SIDE: u16 = 240;
/// Lower left corner, NAD83 / UTM zone 16N.
const WEST: f64 = 462_500.0;
const SOUTH: f64 = 5_294_000.0;
/// NAD83 / UTM zone 16N with heights on NAVD88 in metres.
const CRS: &str = "EPSG:26916+5703";
const FOOT: f64 = 0.3048;
const NO_DATA: f32 = -9999.0;

/// The middle of the river, metres from the lower left corner.
fn river_east(north: f64) -> f64 {
    42.0 + 9.0 * (north / 70.0).sin()
}

/// Height of the ground in feet, `east` and `north` in metres from the lower left corner: a
/// river bed in the west, a towpath bank, a mill yard that rises to the east.
fn ground_feet(east: f64, north: f64) -> f64 {
    let from_river = (east - river_east(north)).abs();
    let valley =
        604.0 + 0.062 * from_river.min(120.0) + 0.0011 * (from_river - 60.0).max(0.0).powi(2);
    let bank = 1.3 * (-((from_river - 34.0) / 7.0).powi(2)).exp();
    let roughness = 0.12 * (east / 5.3).sin() * (north / 7.9).cos();
    valley + bank + roughness
}

fn main() -> Result<(), Box<dyn Error>> {
    let folder = std::env::args()
        .nth(1)
        .unwrap_or_else(|| "examples/alder-lock".to_owned());
    let folder = Path::new(&folder);
    terrain(&folder.join("terrain.tif"))?;
    fs::write(folder.join("zones.geojson"), zones())?;
    fs::write(folder.join("buildings.csv"), buildings::buildings()?)?;
    Ok(())
}

fn terrain(path: &Path) -> Result<(), Box<dyn Error>> {
    let side = usize::from(SIDE);
    let mut heights = Vec::new();
    for row in 0..SIDE {
        for column in 0..SIDE {
            let (east, north) = (f64::from(column) + 0.5, f64::from(SIDE - row) - 0.5);
            // The laser of the survey saw no ground below the canal's roof.
            let void = (150.0..162.0).contains(&east) && (200.0..214.0).contains(&north);
            let centimetres = (ground_feet(east, north) * FOOT * 100.0).round();
            #[allow(clippy::cast_possible_truncation)] // a height in single precision
            let height = (centimetres / 100.0) as f32;
            heights.push(if void { NO_DATA } else { height });
        }
    }
    let options = RasterCreationOptions::from_iter([
        "COMPRESS=DEFLATE",
        "PREDICTOR=3",
        "TILED=YES",
        "BLOCKXSIZE=64",
        "BLOCKYSIZE=64",
    ]);
    let mut dataset = DriverManager::get_driver_by_name("GTiff")?
        .create_with_band_type_with_options::<f32, _>(path, side, side, 1, &options)?;
    dataset.set_spatial_ref(&SpatialRef::from_definition(CRS)?)?;
    dataset.set_geo_transform(&[WEST, 1.0, 0.0, SOUTH + f64::from(SIDE), 0.0, -1.0])?;
    let mut band = dataset.rasterband(1)?;
    band.set_no_data_value(Some(f64::from(NO_DATA)))?;
    band.write(
        (0, 0),
        (side, side),
        &mut Buffer::new((side, side), heights),
    )?;
    dataset.flush_cache()?;
    Ok(())
}

/// One zone: code, subtype, level in feet, ring in metres from the lower left corner.
type Zone = (
    &'static str,
    Option<&'static str>,
    Option<f64>,
    Vec<[f64; 2]>,
);

fn zones() -> String {
    let river = |north: f64, off: f64| [river_east(north) + off, north];
    let strip = |from: f64, to: f64| -> Vec<[f64; 2]> {
        let steps = || (0..=24).map(|step| f64::from(step) * 10.0);
        let up = steps().map(|north| river(north, from));
        let down = steps().rev().map(|north| river(north, to));
        up.chain(down).collect()
    };
    let shaded = Some("0.2 PCT ANNUAL CHANCE FLOOD HAZARD");
    let list: [Zone; 6] = [
        ("AE", Some("FLOODWAY"), Some(614.0), strip(-40.0, 40.0)),
        ("AE", None, Some(614.0), strip(40.0, 112.0)),
        ("X", shaded, None, strip(112.0, 122.0)),
        (
            "X",
            Some("AREA OF MINIMAL FLOOD HAZARD"),
            None,
            strip(122.0, 160.0),
        ),
        ("A", None, None, strip(160.0, 172.0)),
        ("D", None, None, strip(172.0, 190.0)),
    ];
    let features: Vec<String> = list
        .iter()
        .enumerate()
        .map(|(index, zone)| feature(index + 1, zone))
        .collect();
    format!(
        "{{\"type\": \"FeatureCollection\",\n \"name\": \"flood_zones\",\n \"crs\": {{\"type\": \"name\", \"properties\": {{\"name\": \"urn:ogc:def:crs:EPSG::26916\"}}}},\n \"features\": [\n{}\n]}}\n",
        features.join(",\n")
    )
}

fn feature(number: usize, (code, subtype, level, ring): &Zone) -> String {
    let text =
        |text: Option<&str>| text.map_or_else(|| "null".to_owned(), |text| format!("\"{text}\""));
    let closed = ring.iter().chain(ring.first());
    let points: Vec<String> = closed
        .map(|[east, north]| format!("[{:.2}, {:.2}]", WEST + east, SOUTH + north))
        .collect();
    let level_text = level.map_or_else(|| "-9999".to_owned(), |level| level.to_string());
    let (datum, unit) = if level.is_some() {
        (Some("NAVD88"), Some("Feet"))
    } else {
        (None, None)
    };
    let inside = if matches!(*code, "AE" | "A") {
        "T"
    } else {
        "F"
    };
    format!(
        "{{\"type\": \"Feature\", \"properties\": {{\"FLD_AR_ID\": \"ALDER_{number}\", \"FLD_ZONE\": \"{code}\", \"ZONE_SUBTY\": {}, \"SFHA_TF\": \"{inside}\", \"STATIC_BFE\": {level_text}, \"V_DATUM\": {}, \"DEPTH\": -9999, \"LEN_UNIT\": {}}}, \"geometry\": {{\"type\": \"Polygon\", \"coordinates\": [[{}]]}}}}",
        text(*subtype),
        text(datum),
        text(unit),
        points.join(", ")
    )
}
