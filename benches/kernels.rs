//! The steps that a portfolio repeats a million times, on the demonstration scenario.
#![allow(clippy::unwrap_used, missing_docs)]

use std::hint::black_box;
use std::path::{Path, PathBuf};

use criterion::{Criterion, criterion_group, criterion_main};
use sillmark::assess::{Detail, Method, Sources, Uncertainty, assess};
use sillmark::barrier::{BarrierTask, DesignRules, Kit, MountPlace, Run, design_barrier};
use sillmark::crs::{DatumSettings, Datums};
use sillmark::design::rules;
use sillmark::hazard::{
    LevelLineMap, LineKind, LineStatement, ZoneStatement, read_level_lines, read_zones,
};
use sillmark::level::LevelMaps;
use sillmark::level::bracket::bracket;
use sillmark::load::{LoadZone, Salinity, WaterCase};
use sillmark::quantity::unit::{Length, foot, meter};
use sillmark::quantity::{AnnualChance, UnitSystem, parse_elevation};
use sillmark::site::{LoadStatement, Location, Site};
use sillmark::terrain::{Dem, DemStatement, Terrain};
use sillmark::verdict::Limits;

fn kept(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("examples/alder-lock")
        .join(name)
}

fn kernels(criterion: &mut Criterion) {
    let text = std::fs::read_to_string(kept("site.toml")).unwrap();
    let site = Site::from_toml("site.toml", &text).unwrap();
    let zones = read_zones(
        &kept("zones.geojson"),
        None,
        &ZoneStatement::default(),
        None,
    )
    .unwrap();
    let dem = Dem::open(&kept("terrain.tif"), &DemStatement::default()).unwrap();
    let radius = Length::new::<meter>(10.0);

    criterion.bench_function("read an elevation", |bench| {
        bench.iter(|| parse_elevation(black_box("612.9 ft NAVD88")));
    });
    criterion.bench_function("read a site file", |bench| {
        bench.iter(|| Site::from_toml("site.toml", black_box(&text)));
    });
    criterion.bench_function("zones at a place", |bench| {
        bench.iter(|| {
            zones
                .at(black_box(site.location))
                .map(|here| here.zones.len())
        });
    });
    criterion.bench_function("ground at a place", |bench| {
        bench.iter(|| dem.ground_at(black_box(site.location)));
    });
    criterion.bench_function("grade around a place", |bench| {
        bench.iter(|| dem.grade_around(black_box(site.location), radius));
    });

    let barrier = garage();
    let kit = Kit::demonstration().unwrap();
    let stated = LoadStatement::default();
    let design_rules = DesignRules::of(&kit, &stated, LoadZone::Other).unwrap();
    criterion.bench_function("design a barrier of sixteen feet", |bench| {
        bench.iter(|| design_barrier(black_box(&barrier), &kit, &design_rules, None, None));
    });

    let folder = tempfile::tempdir().unwrap();
    let lines = parallel_lines(folder.path());
    criterion.bench_function("level between two of 10 000 lines", |bench| {
        let place = Location::from_degrees(-74.0 + 0.0137, 40.0 + 0.0171).unwrap();
        bench.iter(|| bracket(&lines, black_box(place)).is_ok());
    });

    let method = Method {
        rule: rules().unwrap().remove(0),
        kit,
        rules: design_rules,
        limits: Limits::shipped().unwrap(),
        event: AnnualChance::ONE_PERCENT,
        grade_radius: radius,
        uncertainty: Uncertainty::of(&site.uncertainty, None).unwrap(),
        years: 30,
        units: UnitSystem::Us,
        detail: Detail::Full,
    };
    let sources = Sources {
        zones: vec![zones],
        terrain: Terrain::new(vec![dem]),
        levels: LevelMaps::default(),
        datums: Datums::new(DatumSettings::default()).unwrap(),
    };
    criterion.bench_function("assess a building of seven openings", |bench| {
        bench.iter(|| assess(black_box(&site), &sources, &method).is_ok());
    });
}

/// A garage door of 16 ft behind four feet of planks: two spans, a post between.
fn garage() -> BarrierTask {
    let (width, depth) = (Length::new::<foot>(16.0), Length::new::<foot>(4.0));
    BarrierTask {
        run: Run::straight(width),
        height: depth,
        opening_height: None,
        place: MountPlace {
            reveal: Some(Length::new::<foot>(0.5)),
            face: None,
            asked: None,
        },
        brace: None,
        water: WaterCase::still(depth, Length::default(), Salinity::Fresh),
    }
}

/// A hundred rivers about 400 m apart, each of a hundred cross-sections 150 m apart.
fn parallel_lines(folder: &Path) -> LevelLineMap {
    let mut features = Vec::new();
    for river in 0..100_u8 {
        for line in 0..100_u8 {
            let (east, north) = (
                -74.0 + 0.0018 * f64::from(line),
                40.0 + 0.0036 * f64::from(river),
            );
            features.push(format!(
                r#"{{"type":"Feature","properties":{{"WTR_NM":"R{river}","WSEL_REG":{},"LEN_UNIT":"Feet","V_DATUM":"NAVD88"}},"geometry":{{"type":"LineString","coordinates":[[{east},{north}],[{east},{}]]}}}}"#,
                600.0 + f64::from(line),
                north + 0.0027
            ));
        }
    }
    let path = folder.join("sections.geojson");
    let text = format!(
        r#"{{"type":"FeatureCollection","features":[{}]}}"#,
        features.join(",")
    );
    std::fs::write(&path, text).unwrap();
    read_level_lines(
        LineKind::CrossSections,
        &path,
        None,
        &LineStatement::default(),
        None,
    )
    .unwrap()
}

criterion_group!(benches, kernels);
criterion_main!(benches);
