//! A row is answered as `sillmark site` answers the same house.

use std::fmt::Write as _;

use serde_json::Value;

use super::{Answers, MAPS, alder_lock};
use crate::scratch::Scratch;

/// A house of one opening.
struct House {
    longitude: f64,
    latitude: f64,
    /// A bare number, its unit, its datum.
    threshold: [&'static str; 3],
    /// As a site file states them, and a table of openings too.
    opening: &'static [(&'static str, &'static str)],
}

const fn house(longitude: f64, latitude: f64, threshold: [&'static str; 3]) -> House {
    House {
        longitude,
        latitude,
        threshold,
        opening: &[("width", "36 in")],
    }
}

impl House {
    fn site(&self) -> String {
        let [number, unit, datum] = self.threshold;
        let mut text = format!(
            "name = \"house\"\nlocation = {{ longitude = {}, latitude = {} }}\n\
             threshold = \"{number} {unit} {datum}\"\noccupancy = \"commercial\"\n\
             [[opening]]\nid = \"door\"\n",
            self.longitude, self.latitude
        );
        for (name, value) in self.opening {
            writeln!(text, "{name} = \"{value}\"").unwrap();
        }
        text
    }

    fn row(&self, number: usize, columns: &[&str]) -> String {
        let [height, unit, datum] = self.threshold;
        let (longitude, latitude) = (self.longitude, self.latitude);
        let mut row =
            format!("h{number},{longitude},{latitude},{height},{unit},{datum},door,commercial");
        for column in columns {
            let stated = self.opening.iter().find(|(name, _)| name == column);
            row.push(',');
            row.push_str(stated.map_or("", |(_, value)| value));
        }
        row + "\n"
    }
}

const OF_OPENINGS: [&str; 5] = ["width", "sill_above_threshold", "reveal", "face", "wall"];

fn table(houses: &[House]) -> String {
    let mut text = "id,longitude,latitude,threshold,threshold_unit,vertical_datum,opening,\
                    occupancy,width,sill_above_threshold,reveal,face,wall\n"
        .to_owned();
    for (number, house) in houses.iter().enumerate() {
        text.push_str(&house.row(number, &OF_OPENINGS));
    }
    text
}

/// The figure that a column shows, as the column writes it.
fn figure(value: &Value, decimals: usize) -> String {
    value
        .as_f64()
        .map_or_else(String::new, |number| format!("{number:.decimals$}"))
}

fn word(value: &Value) -> &str {
    value.as_str().unwrap_or_default()
}

/// Compares one row with the JSON of the house alone.
fn same(answers: &Answers, row: usize, site: &Value) {
    let opening = &site["openings"][0];
    let reasons: Vec<&str> = opening["reasons"]
        .as_array()
        .unwrap()
        .iter()
        .map(word)
        .collect();
    let expected = [
        ("zone", word(&site["zone"]["code"]).to_owned()),
        ("zone_subtype", word(&site["zone"]["subtype"]).to_owned()),
        (
            "level_source",
            word(&site["flood_level"]["source"]).to_owned(),
        ),
        ("flood_level_m", figure(&site["flood_level"]["value_m"], 4)),
        ("flood_level_sd_m", figure(&site["flood_level"]["sd_m"], 4)),
        ("ground_m", figure(&site["ground_m"], 4)),
        ("vertical_datum", word(&site["datum"]).to_owned()),
        (
            "freeboard_m",
            figure(&site["design_level"]["freeboard_m"], 4),
        ),
        (
            "design_level_m",
            figure(&site["design_level"]["value_m"], 4),
        ),
        ("threshold_m", figure(&site["site"]["threshold_m"], 4)),
        ("depth_m", figure(&opening["depth_m"], 4)),
        (
            "protection_height_m",
            figure(&opening["protection_height_m"], 4),
        ),
        ("force_n_per_m", figure(&opening["force_n_per_m"], 2)),
        ("verdict", word(&opening["verdict"]).to_owned()),
        ("reasons", reasons.join("; ")),
        ("width_m", figure(&opening["width_m"], 4)),
    ];
    for (column, expected) in expected {
        assert_eq!(
            answers.get(row, column),
            expected,
            "row {row}, {column}: {site:#}"
        );
    }
}

fn alone(scratch: &Scratch, house: &House) -> Value {
    scratch.write("house.toml", house.site());
    scratch.json(&[&["site", "house.toml"][..], &MAPS].concat())
}

#[test]
fn every_row_as_its_house_alone() {
    const WALL: (&str, &str) = ("wall", "reinforced concrete");
    let houses = [
        // The mill itself, in zone AE.
        house(-87.498_762, 47.799_353, ["612.9", "ft", "NAVD88"]),
        // The floodway, in metres.
        house(-87.5006, 47.7993, ["186.2", "m", "NAVD88"]),
        // Zone X, shaded and not.
        house(-87.498_56, 47.799_35, ["616", "ft", "NAVD88"]),
        house(-87.4981, 47.7993, ["616", "ft", "NAVD88"]),
        // Zone A without a level: the edge on the terrain.
        house(-87.4978, 47.7993, ["188", "m", "NAVD88"]),
        // Zone D, and a void of the terrain.
        house(-87.497_72, 47.799_358, ["620.6", "ft", "NAVD88"]),
        house(-87.498_771, 47.800_132, ["612.9", "ft", "NAVD88"]),
        // Survey feet and inches.
        house(-87.498_762, 47.799_353, ["612.9", "ftUS", "NAVD88"]),
        house(-87.498_762, 47.799_353, ["7354.8", "in", "NAVD88"]),
        // Openings.
        House {
            opening: &[
                ("width", "36 in"),
                ("reveal", "6 in"),
                ("face", "8 in"),
                WALL,
            ],
            ..house(-87.498_762, 47.799_353, ["612.9", "ft", "NAVD88"])
        },
        House {
            opening: &[("width", "14 ft"), ("sill_above_threshold", "-4 in"), WALL],
            ..house(-87.498_762, 47.799_353, ["612.9", "ft", "NAVD88"])
        },
        House {
            opening: &[("width", "1.2 m"), ("wall", "unsupported panel")],
            ..house(-87.4995, 47.7993, ["186.9", "m", "NAVD88"])
        },
    ];
    let scratch = alder_lock();
    scratch.write("houses.csv", table(&houses));
    let answers = scratch.portfolio("houses.csv", &[]);
    assert_eq!(answers.len(), houses.len());
    for (row, house) in houses.iter().enumerate() {
        let alone = alone(&scratch, house);
        same(&answers, row, &alone);
        barriers(&answers, row, &alone);
    }
    without_openings(&scratch, &houses, &answers);
    let verdicts: std::collections::BTreeSet<_> = answers.column("verdict").into_iter().collect();
    let sources: std::collections::BTreeSet<_> =
        answers.column("level_source").into_iter().collect();
    assert!(verdicts.len() >= 3, "{verdicts:?}");
    assert!(sources.len() >= 3, "{sources:?}");
}

#[test]
fn places_all_over_the_maps_as_houses_alone() {
    let scratch = alder_lock();
    let mut table = String::from(
        "id,longitude,latitude,threshold,threshold_unit,vertical_datum,opening,occupancy,width,\
         sill_above_threshold,reveal,face,wall\n",
    );
    let places = super::parts::places(40);
    for row in places.lines() {
        writeln!(table, "{row},door,commercial,36 in,,,,").unwrap();
    }
    scratch.write("places.csv", table);
    let answers = scratch.portfolio("places.csv", &[]);
    let mut compared = 0;
    for row in 0..answers.len() {
        let number = |column: &str| -> f64 { answers.get(row, column).parse().unwrap() };
        let height = places.lines().nth(row).unwrap().split(',').nth(3).unwrap();
        let site = format!(
            "name = \"house\"\nlocation = {{ longitude = {}, latitude = {} }}\n\
             threshold = \"{height} m NAVD88\"\noccupancy = \"commercial\"\n\
             [[opening]]\nid = \"door\"\nwidth = \"36 in\"\n",
            number("longitude"),
            number("latitude"),
        );
        scratch.write("house.toml", site);
        let outcome =
            scratch.run(&[&["site", "house.toml"][..], &MAPS, &["--format", "json"]].concat());
        // One house on terrain that does not reach it is a mistake, one of many is not.
        if outcome.stderr.contains("terrain.tif: does not reach") {
            assert_eq!(answers.get(row, "ground_m"), "");
            continue;
        }
        compared += 1;
        let alone = serde_json::from_str(&outcome.stdout).unwrap();
        same(&answers, row, &alone);
        barriers(&answers, row, &alone);
    }
    assert!(compared >= 20, "{compared}");
}

/// A table of thresholds alone has the same figures.
fn without_openings(scratch: &Scratch, houses: &[House], answers: &Answers) {
    let plain: Vec<&House> = houses
        .iter()
        .filter(|house| house.opening.len() == 1)
        .collect();
    let mut text = super::HEADER.to_owned();
    for (number, house) in plain.iter().enumerate() {
        let [height, unit, datum] = house.threshold;
        let (longitude, latitude) = (house.longitude, house.latitude);
        writeln!(
            text,
            "h{number},{longitude},{latitude},{height},{unit},{datum}"
        )
        .unwrap();
    }
    scratch.write("plain.csv", text);
    let alone = scratch.portfolio("plain.csv", &[]);
    for column in [
        "zone",
        "flood_level_m",
        "ground_m",
        "threshold_m",
        "depth_m",
        "force_n_per_m",
    ] {
        assert_eq!(
            alone.column(column),
            answers.column(column)[..plain.len()],
            "{column}"
        );
    }
}

fn barriers(answers: &Answers, row: usize, site: &Value) {
    let opening = &site["openings"][0];
    // Where there is no barrier the table has no figures of one; JSON counts its planks as 0.
    let has_barrier = !opening["barrier"].is_null();
    let number = |name: &str| match &opening[name] {
        value if has_barrier && !value.is_null() => value.to_string(),
        _ => String::new(),
    };
    let height = if has_barrier {
        figure(&opening["barrier_height_m"], 4)
    } else {
        String::new()
    };
    assert_eq!(answers.get(row, "barrier_height_m"), height, "row {row}");
    for name in ["planks", "spans", "intermediate_posts"] {
        assert_eq!(answers.get(row, name), number(name), "row {row}, {name}");
    }
}
