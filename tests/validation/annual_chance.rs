//! The annual chance of flooding at the ground, against a flood risk study's own raster of it.

use std::fmt::Write as _;
use std::path::Path;

use rstar::RTree;
use rstar::primitives::GeomWithData;
use sillmark::quantity::unit::foot;
use sillmark::quantity::{AnnualChance, Elevation, LengthUnit, VerticalDatum, parse_annual_chance};
use sillmark::risk::{ChanceAtLevel, ChanceLevel, StageChance};
use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement};

use crate::support::open_data;

/// Rasters of the study, the most frequent flood first ("02pct" is 0.2 %).
const SURFACES: [(&str, &str); 4] = [
    ("10%", "wse_10pct"),
    ("2%", "wse_2pct"),
    ("1%", "wse_1pct"),
    ("0.2%", "wse_02pct"),
];
const GROUND: &str = "houston/ned19_n29x75_w095x50_tx_houstoncity_2008_clipped_feet.tif";

/// Places looked at: within the bounds of the rasters, in degrees, about one to a cell of
/// 3.3 m.
const WEST_SOUTH: [f64; 2] = [-95.3025, 29.6651];
const EAST_NORTH: [f64; 2] = [-95.2867, 29.6753];

/// What is known at one place.
struct Sample {
    metres: [f64; 2],
    ground: Option<Elevation>,
    /// The ground 16 ft to the west and 8 ft to the south.
    ground_beside: Option<Elevation>,
    levels: [Option<Elevation>; 4],
    /// The study's own chance, as a fraction.
    chance: Option<f64>,
}

fn open(relative: &str, unit: LengthUnit) -> Option<Dem> {
    let statement = DemStatement {
        unit: Some(unit),
        datum: Some(VerticalDatum::Navd88),
        crs: None,
    };
    Some(Dem::open(&open_data(relative)?, &statement).unwrap())
}

fn samples() -> Option<Vec<Sample>> {
    let ground = open(GROUND, LengthUnit::Foot)?;
    let mut surfaces = Vec::new();
    for (_, name) in SURFACES {
        let path = format!("houston/{name}_clipped_resampled.tif");
        surfaces.push(open(&path, LengthUnit::Foot)?);
    }
    // Fractions read as heights in metres come back as they are.
    let chances = open(
        "houston/pctannchance_clipped_resampled.tif",
        LengthUnit::Metre,
    )?;
    let read = |dem: &Dem, place| {
        let found = dem.ground_at(place).unwrap().ok();
        found.map(|found| found.elevation)
    };
    let mut samples = Vec::new();
    for row in 0..ROWS {
        for column in 0..COLUMNS {
            let (place, metres) = place(column, row);
            let level = |index: usize| read(&surfaces[index], place);
            samples.push(Sample {
                metres,
                ground: read(&ground, place),
                ground_beside: read(&ground, beside(place)),
                levels: [level(0), level(1), level(2), level(3)],
                chance: read(&chances, place).map(|found| found.height().value),
            });
        }
    }
    Some(samples)
}

/// Where the study's own terrain fits ours best: found with another library, by the least
/// spread of the heights that the study's chances ask for less our ground, over offsets of
/// 4 ft.
fn beside(place: Location) -> Location {
    let (west, south) = (16.0 * 0.3048 / 96_700.0, 8.0 * 0.3048 / 110_850.0);
    Location::from_degrees(place.longitude() - west, place.latitude() - south).unwrap()
}

const COLUMNS: u16 = 465;
const ROWS: u16 = 338;

fn place(column: u16, row: u16) -> (Location, [f64; 2]) {
    let share = |index: u16, count: u16| (f64::from(index) + 0.5) / f64::from(count);
    let between =
        |axis: usize, share: f64| WEST_SOUTH[axis] + share * (EAST_NORTH[axis] - WEST_SOUTH[axis]);
    let longitude = between(0, share(column, COLUMNS));
    let latitude = between(1, share(row, ROWS));
    let metres = [longitude * 96_700.0, latitude * 110_850.0];
    (Location::from_degrees(longitude, latitude).unwrap(), metres)
}

fn chance(text: &str) -> AnnualChance {
    parse_annual_chance(text).unwrap()
}

fn curve(levels: impl IntoIterator<Item = (usize, Elevation)>) -> Option<StageChance> {
    let levels = levels.into_iter().map(|(index, elevation)| ChanceLevel {
        chance: chance(SURFACES[index].0),
        elevation,
        sd: None,
    });
    StageChance::new(levels).ok()
}

/// Our chance less the study's, both as fractions, and by how much our ground would have to
/// rise to give the study's chance, where that lies between the mapped floods too.
struct Difference {
    chance: f64,
    relative: f64,
    ground_feet: Option<f64>,
}

fn difference(curve: &StageChance, ground: Elevation, theirs: f64) -> Option<Difference> {
    // 0.2 % and 10 % are where the study's raster ends: beyond them it says no number.
    let theirs =
        AnnualChance::new(theirs).filter(|one| (0.002..0.1).contains(&one.probability()))?;
    let ChanceAtLevel::Known { chance: ours, .. } = curve.chance_at(ground).ok()? else {
        return None;
    };
    let level = curve.level_at(theirs).ok();
    Some(Difference {
        chance: ours.probability() - theirs.probability(),
        relative: ours.probability() / theirs.probability() - 1.0,
        ground_feet: level.map(|level| level.elevation.above(ground).unwrap().get::<foot>()),
    })
}

fn quantile(values: impl Iterator<Item = f64>, share: f64) -> f64 {
    let mut sorted: Vec<f64> = values.collect();
    sorted.sort_by(f64::total_cmp);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_precision_loss
    )]
    let index = (share * (sorted.len() - 1) as f64).round() as usize;
    sorted[index]
}

/// Median and spread of a set, as lines of the report.
fn describe(report: &mut String, title: &str, found: &[Difference]) -> f64 {
    let median = |read: fn(&Difference) -> f64| quantile(found.iter().map(read), 0.5);
    let chance = median(|one| one.chance);
    writeln!(report, "{title}: {} places", found.len()).unwrap();
    writeln!(
        report,
        "  median difference {:+.3} percentage points",
        100.0 * chance
    )
    .unwrap();
    writeln!(
        report,
        "  median size of the difference {:.3} percentage points, relative {:.0} % (signed {:+.0} %)",
        100.0 * median(|one| one.chance.abs()),
        100.0 * median(|one| one.relative.abs()),
        100.0 * median(|one| one.relative)
    )
    .unwrap();
    let feet = |share| quantile(found.iter().filter_map(|one| one.ground_feet), share);
    writeln!(
        report,
        "  as height of the ground: median {:+.2} ft, 5 % to 95 % {:+.2} to {:+.2} ft",
        feet(0.5),
        feet(0.05),
        feet(0.95)
    )
    .unwrap();
    chance
}

const WHY: &str = "\
Why they differ: the study's raster was made on its own terrain, ours is another, resampled,
with cells shifted by a quarter. Where the water of both floods that bracket the ground is
mapped, the place lies on the bank of the bayou; reading our ground some 18 ft (5 m) aside,
where the two terrains fit best, takes away half of the difference there. On the even ground
between the edges of the 1 % and the 0.2 % flood the two agree to a fifth of a foot of ground.
There the 1 % surface is carried on level from the nearest place where it is mapped, as the
study has to have done: its raster of chances has values where its 1 % surface has none.
";

/// Percent annual chance raster of the Houston study against the chance at our ground from
/// its four water surfaces.
#[test]
fn houston_percent_annual_chance() {
    let Some(samples) = samples() else { return };

    // Two neighbouring surfaces are mapped at the place.
    let mapped = |ground: fn(&Sample) -> Option<Elevation>| -> Vec<_> {
        let found = samples.iter().filter_map(|sample| {
            let levels = sample.levels.iter().copied().enumerate();
            let curve = curve(levels.filter_map(|(index, level)| Some((index, level?))))?;
            difference(&curve, ground(sample)?, sample.chance?)
        });
        found.collect()
    };
    let at_place = mapped(|sample| sample.ground);
    let beside = mapped(|sample| sample.ground_beside);

    // Only the rarest is mapped; the surface before it is that of the nearest mapped place.
    let wet = samples
        .iter()
        .filter_map(|sample| Some((sample.metres, sample.levels[2]?)));
    let wet = wet.map(|(metres, level)| GeomWithData::new(metres, level));
    let wet = RTree::bulk_load(wet.collect::<Vec<_>>());
    let carried: Vec<_> = samples
        .iter()
        .filter(|sample| sample.levels[2].is_none())
        .filter_map(|sample| {
            let nearest = wet.nearest_neighbor(&sample.metres)?.data;
            let curve = curve([(2, nearest), (3, sample.levels[3]?)])?;
            difference(&curve, sample.ground?, sample.chance?)
        })
        .collect();

    let mut report = String::new();
    let steep = describe(&mut report, "both surfaces mapped (banks)", &at_place);
    let fitted = describe(
        &mut report,
        "the same, our ground read 16 ft to the west and 8 ft to the south",
        &beside,
    );
    let even = describe(
        &mut report,
        "1 % surface carried on level (even ground)",
        &carried,
    );
    report.push_str(WHY);
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join("annual-chance-houston.txt");
    std::fs::write(path, &report).unwrap();

    assert!(at_place.len() >= 500 && carried.len() >= 5000, "{report}");
    // Measured with another library (SciPy: norm.isf and norm.sf, bilinear ground; surfaces
    // and chances between four cells for the banks, in the cell for the rest): −0.33, −0.18
    // and +0.02 percentage points.
    assert!((100.0 * steep + 0.33).abs() < 0.05, "{report}");
    assert!((100.0 * fitted + 0.18).abs() < 0.05, "{report}");
    assert!((100.0 * even - 0.02).abs() < 0.02, "{report}");
    let relative = quantile(carried.iter().map(|one| one.relative.abs()), 0.5);
    assert!(relative < 0.20, "{report}");
    let ground = quantile(carried.iter().filter_map(|one| one.ground_feet), 0.5);
    assert!(ground.abs() < 0.25, "{report}");
}
