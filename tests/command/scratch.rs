//! A folder to run the program in, with a site and a zone that go together.

use std::path::{Path, PathBuf};

use gdal::DriverManager;
use gdal::raster::Buffer;
use gdal::spatial_ref::SpatialRef;
use serde_json::{Value, json};
use tempfile::TempDir;

use super::json_schema;

/// A house of one door at −74, 40, its threshold 8.1 ft above NAVD88.
pub(crate) const SITE: &str = r#"name = "Test House"
location = { longitude = -74.0, latitude = 40.0 }
threshold = "8.1 ft NAVD88"
occupancy = "commercial"
rule = "us-nfip-floodproofing"

[[opening]]
id = "door"
width = "36 in"
"#;

/// The current folder of a run, so that no message holds a path of this machine.
pub(crate) struct Scratch(TempDir);

/// Cells on a side of a raster of [`Scratch::dem`].
const SIDE: usize = 100;

/// What a run gave.
#[derive(Debug)]
pub(crate) struct Outcome {
    pub(crate) status: i32,
    pub(crate) stdout: String,
    pub(crate) stderr: String,
}

impl Scratch {
    /// With `site.toml` ([`SITE`]) and `zones.geojson` (AE, 9 ft NAVD88, around the house).
    pub(crate) fn new() -> Self {
        let scratch = Self(tempfile::tempdir().unwrap());
        scratch.write("site.toml", SITE);
        scratch.zones(&[zone(&json!({}))]);
        scratch
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.0.path().join(name)
    }

    pub(crate) fn folder(&self) -> &Path {
        self.0.path()
    }

    pub(crate) fn write(&self, name: &str, text: impl AsRef<[u8]>) {
        std::fs::write(self.path(name), text).unwrap();
    }

    pub(crate) fn read(&self, name: &str) -> String {
        std::fs::read_to_string(self.path(name)).unwrap()
    }

    /// `site.toml` with a piece of [`SITE`] replaced.
    pub(crate) fn site_with(&self, old: &str, new: &str) {
        assert!(SITE.contains(old), "{old}");
        self.write("site.toml", SITE.replace(old, new));
    }

    /// `site.toml` with more lines at its end, which are those of the door.
    pub(crate) fn site_and(&self, more: &str) {
        self.write("site.toml", format!("{SITE}{more}\n"));
    }

    /// `zones.geojson` with these features.
    pub(crate) fn zones(&self, features: &[Value]) {
        let collection = json!({"type": "FeatureCollection", "features": features});
        self.write("zones.geojson", collection.to_string());
    }

    /// A raster of 100 by 100 cells of a thousandth of a degree around the house, in an EPSG
    /// system; NaN is a void.
    pub(crate) fn dem(&self, name: &str, crs: &str, height: impl Fn(usize, usize) -> f32) {
        sillmark::gis::start();
        let cells = (0..SIDE * SIDE).map(|cell| height(cell % SIDE, cell / SIDE));
        let mut dataset = DriverManager::get_driver_by_name("GTiff")
            .unwrap()
            .create_with_band_type::<f32, _>(self.path(name), SIDE, SIDE, 1)
            .unwrap();
        dataset
            .set_geo_transform(&[-74.05, 0.001, 0.0, 40.05, 0.0, -0.001])
            .unwrap();
        let crs = SpatialRef::from_definition(crs).unwrap();
        dataset.set_spatial_ref(&crs).unwrap();
        let mut buffer = Buffer::new((SIDE, SIDE), cells.collect());
        let mut band = dataset.rasterband(1).unwrap();
        band.write((0, 0), (SIDE, SIDE), &mut buffer).unwrap();
        dataset.close().unwrap();
    }

    /// Runs the program here.
    pub(crate) fn run(&self, arguments: &[&str]) -> Outcome {
        let output = self.command(arguments).output().unwrap();
        let outcome = Outcome {
            status: output.status.code().expect("not killed"),
            stdout: String::from_utf8(output.stdout).unwrap(),
            stderr: String::from_utf8(output.stderr).unwrap(),
        };
        for sign in ["panicked", "RUST_BACKTRACE", "stack backtrace"] {
            assert!(!outcome.stderr.contains(sign), "{}", outcome.stderr);
        }
        let here = self.folder().to_string_lossy().into_owned();
        assert!(!outcome.stderr.contains(&here), "{}", outcome.stderr);
        outcome
    }

    pub(crate) fn command(&self, arguments: &[&str]) -> assert_cmd::Command {
        let mut command = assert_cmd::Command::new(env!("CARGO_BIN_EXE_sillmark"));
        // An empty folder of grids, so that no grid of this machine takes part.
        let _ = std::fs::create_dir(self.path("grids"));
        command
            .args(arguments)
            .current_dir(self.folder())
            .env("SILLMARK_GRIDS", "grids");
        command
    }

    /// What the program says on stderr when it ends with status 1 and no result.
    pub(crate) fn refused(&self, arguments: &[&str]) -> String {
        let outcome = self.run(arguments);
        assert_eq!((outcome.status, outcome.stdout.as_str()), (1, ""));
        outcome.stderr
    }

    /// As [`Self::refused`], of the house on its zone.
    pub(crate) fn site_refused(&self) -> String {
        self.refused(&["site", "site.toml", "--zones", "zones.geojson"])
    }

    /// The result on stdout of a run that says nothing else but notes.
    pub(crate) fn answer(&self, arguments: &[&str]) -> String {
        let outcome = self.run(arguments);
        let said = outcome
            .stderr
            .lines()
            .filter(|line| !line.starts_with("note: "));
        assert_eq!((outcome.status, said.collect::<Vec<_>>()), (0, Vec::new()));
        outcome.stdout
    }

    /// The JSON result, which has to fit the published schema.
    pub(crate) fn json(&self, arguments: &[&str]) -> Value {
        let arguments = [arguments, &["--format", "json"]].concat();
        let result = serde_json::from_str(&self.answer(&arguments)).unwrap();
        json_schema::check(&result);
        result
    }

    /// The JSON result of `sillmark barrier`, which has to fit its published schema.
    pub(crate) fn barrier_json(&self, options: &[&str]) -> Value {
        let arguments = [&["barrier"], options, &["--format", "json"]].concat();
        let result = serde_json::from_str(&self.answer(&arguments)).unwrap();
        json_schema::check_barrier(&result);
        result
    }

    /// The JSON result of the house on its zone.
    pub(crate) fn site_json(&self) -> Value {
        self.json(&["site", "site.toml", "--zones", "zones.geojson"])
    }
}

/// The kit of the demonstration, to be changed.
pub(crate) fn demonstration_kit() -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/kits/demonstration.toml");
    std::fs::read_to_string(path).unwrap()
}

/// A TOML text without some of its tables, and without those below them.
pub(crate) fn without_tables(text: &str, tables: &[&str]) -> String {
    let mut keeps = true;
    let mut kept = String::new();
    for line in text.lines() {
        if let Some(name) = line.strip_prefix('[') {
            let name = name.split([']', '.']).next().unwrap();
            keeps = !tables.contains(&name);
        }
        if keeps {
            kept.push_str(line);
            kept.push('\n');
        }
    }
    assert!(
        tables
            .iter()
            .all(|table| text.contains(&format!("[{table}]")))
    );
    kept
}

/// A zone of 0.02 degrees a side around the house: AE, 9 ft NAVD88, but for what is given.
pub(crate) fn zone(attributes: &Value) -> Value {
    zone_over(attributes, [-74.01, 39.99, -73.99, 40.01])
}

/// A zone over west, south, east, north.
pub(crate) fn zone_over(attributes: &Value, bounds: [f64; 4]) -> Value {
    let mut properties = json!({
        "FLD_AR_ID": "Z1", "FLD_ZONE": "AE", "ZONE_SUBTY": null, "SFHA_TF": "T",
        "STATIC_BFE": 9, "V_DATUM": "NAVD88", "DEPTH": -9999, "LEN_UNIT": "Feet",
    });
    for (name, value) in attributes.as_object().unwrap() {
        properties[name] = value.clone();
    }
    let [west, south, east, north] = bounds;
    let ring = json!([
        [west, south],
        [east, south],
        [east, north],
        [west, north],
        [west, south]
    ]);
    json!({
        "type": "Feature", "properties": properties,
        "geometry": {"type": "Polygon", "coordinates": [ring]},
    })
}
