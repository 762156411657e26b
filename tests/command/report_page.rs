//! `sillmark site --format html` and `csv`: what a reader of the result meets.

use std::fmt::Write as _;
use std::path::PathBuf;

use gdal::vector::LayerAccess as _;

use super::browser;
use super::scratch::{SITE, Scratch};
use super::support::open_data;

/// The demonstration, from its folder.
fn demonstration(scratch: &Scratch, more: &[&str]) -> String {
    let here = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/alder-lock");
    for file in ["site.toml", "zones.geojson", "terrain.tif"] {
        std::fs::copy(format!("{here}/{file}"), scratch.path(file)).unwrap();
    }
    let asked = [
        "site",
        "site.toml",
        "--zones",
        "zones.geojson",
        "--dem",
        "terrain.tif",
    ];
    scratch.answer(&[&asked, more].concat())
}

/// The house of the scratch folder as a page.
fn page(scratch: &Scratch, name: &str) -> PathBuf {
    let asked = ["site", "site.toml", "--zones", "zones.geojson"];
    let form = ["--format", "html", "--output", name];
    assert_eq!(scratch.answer(&[&asked[..], &form].concat()), "");
    scratch.path(name)
}

#[test]
fn the_demonstration_opens_and_prints() {
    let scratch = Scratch::new();
    for units in ["us", "si"] {
        let name = format!("{units}.html");
        let form = ["--units", units, "--format", "html", "--output", &name];
        demonstration(&scratch, &form);
    }
    browser::opens(&[scratch.path("us.html"), scratch.path("si.html")]);
}

#[test]
fn the_summary_of_a_portfolio_opens_and_prints() {
    let scratch = Scratch::new();
    let here = concat!(env!("CARGO_MANIFEST_DIR"), "/examples/alder-lock");
    let table = format!("{here}/buildings.csv");
    let (zones, dem) = (
        format!("{here}/zones.geojson"),
        format!("{here}/terrain.tif"),
    );
    scratch.answer(&[
        "portfolio",
        &table,
        "--zones",
        &zones,
        "--dem",
        &dem,
        "--rule",
        "us-nfip-floodproofing",
        "--output",
        "openings.csv",
        "--summary",
        "summary.html",
    ]);
    browser::opens(&[scratch.path("summary.html")]);
}

#[test]
fn forty_openings_with_long_names_find_their_room() {
    let scratch = Scratch::new();
    let mut site = SITE.replace("Test House", &"A house whose name does not end ".repeat(12));
    for number in 1..40 {
        let name = match number % 3 {
            0 => format!(
                "{number} {}",
                "Donaudampfschifffahrtsgesellschaft".repeat(6)
            ),
            1 => format!("{number} the door beside the long wall of the yard to the north"),
            _ => number.to_string(),
        };
        let width = 12 * (number % 15 + 1);
        let sill = 5.5 + f64::from(number) * 0.13;
        write!(
            site,
            "\n[[opening]]\nid = \"{name}\"\nwidth = \"{width} in\"\nsill = \"{sill:.2} ft NAVD88\"\n"
        )
        .unwrap();
    }
    scratch.write("site.toml", site);
    browser::opens(&[page(&scratch, "forty.html")]);
}

#[test]
fn a_hostile_name_is_a_name_in_every_format() {
    let scratch = Scratch::new();
    let hostile = "<script>alert(1)</script>";
    let site = SITE
        .replace("Test House", hostile)
        .replace("id = \"door\"", "id = \"=cmd()\"");
    scratch.write("site.toml", site);
    let html = page(&scratch, "hostile.html");
    let text = std::fs::read_to_string(&html).unwrap();
    assert!(!text.contains("<script"), "a script stands in the page");
    assert!(text.contains("&#60;script&#62;alert(1)") && text.contains("=cmd()"));
    browser::opens(&[html]);
    let csv = scratch.answer(&[
        "site",
        "site.toml",
        "--zones",
        "zones.geojson",
        "--format",
        "csv",
    ]);
    let mut rows = csv::Reader::from_reader(csv.as_bytes());
    let rows: Vec<_> = rows.records().map(Result::unwrap).collect();
    assert_eq!((&rows[0][0], &rows[0][1]), (hostile, "'=cmd()"));
    // Text and JSON carry it as it is: a terminal and a parser run nothing.
    assert_eq!(scratch.site_json()["openings"][0]["id"], "=cmd()");
}

#[test]
fn the_grid_of_a_datum_is_among_the_files_that_were_read() {
    let Some(grid) = open_data("grids/us_noaa_vertcone.tif") else {
        return;
    };
    let scratch = Scratch::new();
    scratch.write("site.toml", SITE.replace("8.1 ft NAVD88", "9.1 ft NGVD29"));
    let folder = grid.parent().unwrap().display().to_string();
    let html = scratch.answer(&[
        "site",
        "site.toml",
        "--zones",
        "zones.geojson",
        "--grids",
        &folder,
        "--format",
        "html",
    ]);
    let row = html
        .lines()
        .find(|line| line.contains("<td>vertical grid</td>"));
    assert!(row.unwrap().contains("us_noaa_vertcone.tif</th>"));
    assert!(!html.contains("us_noaa_vertconw"));
}

/// FEMA's rasters of four floods at Houston: the curve of elevation and chance is drawn.
#[test]
fn several_floods_open_and_print() {
    let Some(folder) = open_data("houston") else {
        return;
    };
    let folder = folder.display();
    let scratch = Scratch::new();
    let garage = "id = \"door\"\nsill = \"26.0 ft NAVD88\"";
    let site = SITE
        .replace(
            "longitude = -74.0, latitude = 40.0",
            "longitude = -95.29655, latitude = 29.67252",
        )
        .replace("8.1 ft", "27.1 ft")
        .replace("id = \"door\"", garage);
    scratch.write("site.toml", site);
    let dem = format!("{folder}/ned19_n29x75_w095x50_tx_houstoncity_2008_clipped_feet.tif");
    let surfaces = [
        ("10%", "10pct"),
        ("2%", "2pct"),
        ("1%", "1pct"),
        ("0.2%", "02pct"),
    ];
    let surfaces = surfaces.map(|(chance, name)| {
        format!("--surface={chance}={folder}/wse_{name}_clipped_resampled.tif")
    });
    let stated = ["dem", "surface"].map(|what| {
        [
            format!("--{what}-unit=ft"),
            format!("--{what}-datum=NAVD88"),
        ]
    });
    let mut asked = vec!["site", "site.toml", "--dem", &dem, "--format", "html"];
    asked.extend(
        surfaces
            .iter()
            .chain(stated.iter().flatten())
            .map(String::as_str),
    );
    let page = scratch.answer(&asked);
    assert!(page.contains("How often"), "the curve is not in the page");
    scratch.write("houston.html", page);
    browser::opens(&[scratch.path("houston.html")]);
}

#[test]
fn two_runs_give_the_same_bytes() {
    let scratch = Scratch::new();
    for form in ["html", "csv"] {
        let form = ["--format", form];
        assert_eq!(
            demonstration(&scratch, &form),
            demonstration(&scratch, &form)
        );
    }
}

#[test]
fn the_table_says_what_the_json_says() {
    let scratch = Scratch::new();
    let csv = demonstration(&scratch, &["--format", "csv"]);
    let json: serde_json::Value =
        serde_json::from_str(&demonstration(&scratch, &["--format", "json"])).unwrap();
    let mut rows = csv::Reader::from_reader(csv.as_bytes());
    let header = rows.headers().unwrap().clone();
    let openings = json["openings"].as_array().unwrap();
    let mut seen = 0;
    for (row, opening) in rows.records().zip(openings) {
        let row = row.unwrap();
        let cell = |name: &str| {
            let column = header.iter().position(|known| known == name).unwrap();
            &row[column]
        };
        assert_eq!(cell("opening"), opening["id"]);
        assert_eq!(cell("verdict"), opening["verdict"]);
        for name in ["sill_m", "width_m", "depth_m", "protection_height_m"] {
            match opening[name].as_f64() {
                Some(metres) => {
                    let told: f64 = cell(name).parse().unwrap();
                    approx::assert_abs_diff_eq!(told, metres, epsilon = 5e-5);
                    seen += 1;
                }
                None => assert_eq!(cell(name), "", "{name} of {}", opening["id"]),
            }
        }
    }
    assert_eq!((openings.len(), seen), (10, 35));
}

#[test]
fn the_page_names_what_it_was_read_from() {
    let scratch = Scratch::new();
    let page = demonstration(&scratch, &["--format", "html"]);
    // SHA-256 of the file by another implementation.
    let output = std::process::Command::new("sha256sum")
        .arg(scratch.path("terrain.tif"))
        .output()
        .unwrap();
    let told = String::from_utf8(output.stdout).unwrap();
    let sum = told.split_whitespace().next().unwrap();
    assert!(page.contains(sum), "{sum}");
    assert!(
        page.contains(
            "sillmark site site.toml --zones zones.geojson --dem terrain.tif --format html"
        )
    );
}

#[test]
fn the_map_layers_hold_the_openings() {
    let scratch = Scratch::new();
    demonstration(&scratch, &["--format", "gpkg", "--output", "mill.gpkg"]);
    let file = gdal::Dataset::open(scratch.path("mill.gpkg")).unwrap();
    let mut points = file.layer_by_name("points").unwrap();
    assert_eq!(points.features().count(), 11, "the site and ten openings");
    for layer in ["zones", "lines"] {
        file.layer_by_name(layer).unwrap();
    }
    // Nothing is left beside the result.
    let left: Vec<_> = std::fs::read_dir(scratch.folder())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| name.starts_with('.'))
        .collect();
    assert_eq!(left, Vec::<String>::new());
}

#[test]
fn map_layers_need_a_file() {
    let scratch = Scratch::new();
    let said = scratch.refused(&[
        "site",
        "site.toml",
        "--zones",
        "zones.geojson",
        "--format",
        "gpkg",
    ]);
    insta::assert_snapshot!(said, @"error: option --output: it is missing; accepted: the path of a file, such as site.gpkg, since the result is no text");
}
