//! Summaries of invented portfolios.

use sillmark::level::LevelSource;
use sillmark::portfolio::summary::{RowFigures, Summary};
use sillmark::quantity::unit::{Length, meter};
use sillmark::quantity::{AnnualChance, UnitSystem};
use sillmark::report::portfolio::RunFacts;
use sillmark::site::Location;
use sillmark::verdict::Verdict;

/// Numbers from 0 to 1 that only look random, the same on every machine.
pub(crate) struct Numbers(u64);

impl Numbers {
    pub(crate) fn next(&mut self) -> f64 {
        // The step of Knuth's MMIX generator.
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        f64::from(u32::try_from(self.0 >> 32).unwrap()) / 4_294_967_296.0
    }
}

pub(crate) fn run(units: UnitSystem) -> RunFacts {
    RunFacts {
        cautions: vec![sillmark::verdict::Caution::OccupancyNotStated],
        input: "homes.csv".to_owned(),
        zones: vec!["zones.gpkg:flood_hazard".to_owned()],
        levels: vec!["wse-100.tif".to_owned(), "sections.gpkg".to_owned()],
        terrain: vec!["dem-north.tif".to_owned(), "dem-south.tif".to_owned()],
        rule_id: "us-nfip-floodproofing".to_owned(),
        rule_name: "One foot above the flood level".to_owned(),
        event: AnnualChance::ONE_PERCENT,
        date: "2026-03-14".to_owned(),
        units,
        version: "0.1.0".to_owned(),
        rejects_file: Some("homes-rejects.csv".to_owned()),
        options: vec![("Terrain datum".to_owned(), "NAVD88".to_owned())],
    }
}

pub(crate) fn place(longitude: f64, latitude: f64) -> Option<Location> {
    Location::from_degrees(longitude, latitude).ok()
}

/// Houses along an invented river, more and lower ones near the water.
pub(crate) fn river(rows: u32) -> Summary {
    let mut numbers = Numbers(7);
    let mut summary = Summary::default();
    for row in 0..rows {
        let along = numbers.next();
        let off = (numbers.next() + numbers.next() + numbers.next() - 1.5) * 0.09;
        let longitude = -90.6 + along * 0.9;
        let latitude = 38.4 + (along * 7.0).sin() * 0.11 + along * 0.15 + off;
        let height = 1.6 - off.abs() * 38.0 + numbers.next() * 0.9;
        let chance = AnnualChance::new((0.01 + height.max(0.0) * 0.03).min(0.4));
        let (verdict, reason) = match numbers.next() {
            known if known < 0.03 => (Verdict::Unresolved, "no-flood-level"),
            _ if height <= 0.0 => (Verdict::Above, "sill-at-or-above"),
            _ if height > 1.2 => (Verdict::Engineer, "over-wall-limit"),
            _ => (Verdict::Protect, "sill-below"),
        };
        let unresolved = verdict == Verdict::Unresolved;
        let zone = match height {
            _ if unresolved => Some("A"),
            height if height > 1.5 => Some("AE floodway"),
            height if height > 0.2 => Some("AE"),
            height if height > -0.1 => Some("AO"),
            height if height > -1.9 => Some("X"),
            _ => None,
        };
        let source = match numbers.next() {
            _ if unresolved || zone.is_none() => None,
            part if part < 0.55 => Some(LevelSource::SurfaceRaster),
            part if part < 0.8 => Some(LevelSource::CrossSections),
            part if part < 0.97 => Some(LevelSource::LevelLines),
            _ => Some(LevelSource::BoundaryOnTerrain),
        };
        let cautions: &[&str] = match row % 9 {
            0 => &[
                "survey-sill",
                "map-not-forecast",
                "local-code",
                "wall-not-stated",
                "zone-edge",
            ],
            1..4 => &[
                "survey-sill",
                "map-not-forecast",
                "local-code",
                "wall-not-stated",
            ],
            _ => &["survey-sill", "map-not-forecast", "local-code"],
        };
        let id = format!("house-{row:05}");
        summary.add(&RowFigures {
            id: &id,
            location: if row % 50 == 0 {
                None
            } else {
                place(longitude, latitude)
            },
            verdict,
            zone,
            level_source: source,
            protection_height: source.map(|_| Length::new::<meter>(height)),
            chance_at_sill: chance.filter(|_| source == Some(LevelSource::SurfaceRaster)),
            threshold_is_estimate: row % 3 == 0,
            reason: Some(reason),
            cautions,
        });
        match row % 400 {
            11 => summary.reject("longitude", "is empty; a number of degrees is needed"),
            12 => summary.reject(
                "vertical_datum",
                "is not a vertical datum; NAVD88, NGVD29 and others are",
            ),
            13 if row % 800 == 13 => summary.reject("threshold", "is not a length"),
            _ => {}
        }
    }
    summary
}

pub(crate) fn row(
    id: &str,
    verdict: Verdict,
    height: f64,
    location: Option<Location>,
) -> RowFigures<'_> {
    RowFigures {
        id,
        location,
        verdict,
        zone: Some("AE"),
        level_source: Some(LevelSource::ZoneStatic),
        protection_height: Some(Length::new::<meter>(height)),
        chance_at_sill: None,
        threshold_is_estimate: false,
        reason: Some("sill-below"),
        cautions: &["survey-sill", "demonstration-kit"],
    }
}

pub(crate) fn one_row() -> Summary {
    let mut summary = Summary::default();
    summary.add(&row(
        "Lock Cottage",
        Verdict::Protect,
        0.64,
        place(-74.0335, 40.74),
    ));
    summary
}

pub(crate) fn all_rejected() -> Summary {
    let mut summary = Summary::default();
    for _ in 0..1250 {
        summary.reject("latitude", "is not a number between -90 and 90");
    }
    summary.reject("id", "is empty");
    summary
}

/// Islands on both sides of the meridian of 180 degrees.
pub(crate) fn antimeridian() -> Summary {
    let mut numbers = Numbers(3);
    let mut summary = Summary::default();
    for number in 0..400 {
        let longitude = 177.0 + numbers.next() * 5.0;
        let longitude = if longitude >= 180.0 {
            longitude - 360.0
        } else {
            longitude
        };
        let verdict = [Verdict::Above, Verdict::Protect, Verdict::Engineer][number % 3];
        let height = if verdict == Verdict::Above {
            -0.1
        } else {
            numbers.next() * 4.0
        };
        summary.add(&row(
            "isle",
            verdict,
            height,
            place(longitude, -18.5 + numbers.next() * 2.5),
        ));
    }
    summary
}

pub(crate) fn one_point() -> Summary {
    let mut summary = Summary::default();
    for number in 0..30 {
        let id = format!("unit {number:02}");
        summary.add(&row(&id, Verdict::Protect, 0.45, place(4.9041, 52.3676)));
    }
    summary
}

/// Ids, zones and problems that are too long, and that try to be markup.
pub(crate) fn long_names() -> Summary {
    let mut summary = Summary::default();
    for number in 0..60 {
        let id = format!(
            "<script>alert({number})</script>\"&' {}",
            "very-long-id-".repeat(20)
        );
        let zone =
            format!("{number:02} <b>zone with a long & winding name of its own, {number}</b>");
        summary.add(&RowFigures {
            zone: Some(&zone),
            ..row(
                &id,
                Verdict::Engineer,
                0.1 * f64::from(number),
                place(13.4 + f64::from(number) * 0.01, 52.5),
            )
        });
        summary.reject(
            &format!("field {} {number}", "x".repeat(60)),
            &"no <i>use</i> ".repeat(20),
        );
    }
    summary
}
