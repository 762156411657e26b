//! What lies in a square about a site.

pub(crate) mod fixture;

use approx::assert_abs_diff_eq;
use fixture::{look, site, sources, terrain};
use geo::{Area, Contains, Point};
use serde_json::{Value, json};
use sillmark::crs::DatumSettings;
use sillmark::hazard::{
    LevelLineMap, LineKind, LineStatement, ZoneClass, ZoneStatement, read_level_lines,
};
use sillmark::quantity::unit::meter;
use sillmark::quantity::{LengthUnit, VerticalDatum};
use sillmark::surroundings::{DatumShift, LineUse};
use sillmark::terrain::{Dem, DemStatement, Gap};

use crate::hazard::fixture::{feature, map, polygon};
use crate::terrain::fixture::{NORTH_UP, metres_navd88, place, raster};

/// Cells along a side of the terrain, of ten metres.
const SIDE: usize = 150;

/// A terrain of 1.5 km with the ground at so many metres east and south of its corner.
fn dem(ground: fn(f64, f64) -> f64, statement: &DemStatement) -> Dem {
    let scratch = tempfile::tempdir().unwrap();
    let cells: Vec<f32> = (0..SIDE * SIDE)
        .map(|index| {
            let (row, column) = ((index / SIDE) as f64, (index % SIDE) as f64);
            ground(10.0 * column + 5.0, 10.0 * row + 5.0) as f32
        })
        .collect();
    let mut raster = raster(SIDE, &cells);
    raster.transform = NORTH_UP;
    raster.no_data = Some(-1.0);
    Dem::open(&raster.write(scratch.path(), "dem.tif"), statement).unwrap()
}

/// Falls to the south, with a pond without heights.
fn slope(east: f64, south: f64) -> f64 {
    if (800.0..840.0).contains(&east) && (700.0..720.0).contains(&south) {
        return -1.0;
    }
    10.0 - south / 1000.0
}

/// A ring of degrees about a rectangle in metres east and south of the terrain's corner.
fn ring([west, east]: [f64; 2], [north, south]: [f64; 2]) -> Vec<[f64; 2]> {
    let corners = [
        (west, south),
        (east, south),
        (east, north),
        (west, north),
        (west, south),
    ];
    corners
        .map(|(east, south)| {
            let corner = place(east, -south);
            [corner.longitude(), corner.latitude()]
        })
        .to_vec()
}

fn zone(code: &str, rings: &[Vec<[f64; 2]>]) -> Value {
    feature(&json!({"FLD_ZONE": code}), &polygon(rings))
}

#[test]
fn nothing_but_a_site() {
    let site = site(place(750.0, -750.0), "");
    look(&site, &sources(DatumSettings::default()), |_, around| {
        assert_abs_diff_eq!(around.reach.get::<meter>(), 120.0);
        assert!(around.ground.is_none() && around.section.is_none());
        assert!(around.zones.is_empty() && around.lines.is_empty());
        assert!(around.rasters.is_empty() && around.origins.is_empty());
    });
}

#[test]
fn the_ground_of_the_grid_is_that_of_the_terrain() {
    let middle = place(750.0, -750.0);
    let maps = terrain(vec![dem(slope, &metres_navd88())]);
    look(&site(middle, ""), &maps, |_, around| {
        let grid = around.ground.as_ref().unwrap();
        let cell = grid.cell.get::<meter>();
        assert_eq!(grid.heights.len(), grid.side * grid.side);
        let mut voids = 0;
        for (column, row) in [(0, 0), (159, 3), (12, 150), (80, 80), (126, 48), (130, 50)] {
            // East and north of UTM differ from those of the site by the turn of its grid, of
            // less than a degree, and by its scale: by two metres at the corner.
            let east = (column as f64 + 0.5) * cell - 120.0;
            let north = 120.0 - (row as f64 + 0.5) * cell;
            let there = place(750.0 + east, -750.0 + north);
            match (
                maps.terrain.ground_at(there).unwrap(),
                grid.height(column, row),
            ) {
                (Ok(ground), Some(height)) => {
                    let apart = (ground.elevation.height() - height).get::<meter>();
                    assert_abs_diff_eq!(apart, 0.0, epsilon = 0.003);
                }
                (Err(Gap::Void), None) => voids += 1,
                other => panic!("{column}, {row}: {other:?}"),
            }
        }
        assert_eq!(voids, 2);
        assert!(grid.void_count() > 100);
        let raster = &around.rasters[0];
        assert_eq!(
            (raster.shift.clone(), raster.dated.clone()),
            (DatumShift::None, None)
        );
    });
}

#[test]
fn the_section_runs_down_to_the_water() {
    let maps = terrain(vec![dem(slope, &metres_navd88())]);
    look(&site(place(750.0, -750.0), ""), &maps, |_, around| {
        let section = around.section.as_ref().unwrap();
        // South, and none of the water in sight is lower than that along the diagonal.
        assert!(
            (130.0..=230.0).contains(&section.bearing),
            "{}",
            section.bearing
        );
        let ground: Vec<f64> = (section.points.iter())
            .filter_map(|point| Some(point.ground?.height().get::<meter>()))
            .collect();
        assert!(ground.first() > ground.last());
        let middle = section.points.len() / 2;
        assert_abs_diff_eq!(section.points[middle].along.get::<meter>(), 0.0);
        assert!(section.points.iter().all(|point| !point.in_flooded_zone));
    });
}

#[test]
fn heights_on_another_datum_are_moved_or_left_out() {
    let ngvd29 = DemStatement {
        datum: Some(VerticalDatum::Ngvd29),
        ..metres_navd88()
    };
    let stated = "[[datum_offset]]\noffset = \"NGVD29 -> NAVD88 = -0.5 m\"\nsource = \"study\"\n";
    let site = site(place(750.0, -750.0), stated);
    let settings = DatumSettings {
        stated_offsets: site.datum_offsets.clone(),
        ..DatumSettings::default()
    };
    let height = |around: &sillmark::surroundings::Surroundings| {
        let height = around.ground.as_ref().unwrap().height(80, 80);
        height.unwrap().get::<meter>()
    };
    let plain = look(
        &site,
        &terrain(vec![dem(slope, &metres_navd88())]),
        |_, around| height(around),
    );
    let mut maps = sources(settings);
    maps.terrain = sillmark::terrain::Terrain::new(vec![dem(slope, &ngvd29)]);
    look(&site, &maps, |_, around| {
        assert_abs_diff_eq!(height(around), plain - 0.5, epsilon = 1e-9);
        assert_eq!(around.datum, VerticalDatum::Navd88);
        let DatumShift::By(shift, how) = &around.rasters[0].shift else {
            panic!("{:?}", around.rasters);
        };
        assert_abs_diff_eq!(shift.get::<meter>(), -0.5);
        assert!(!how.is_empty());
        // The section stands on it too.
        let section = around.section.as_ref().unwrap();
        let datums = section.points.iter().filter_map(|point| point.ground);
        assert!(
            datums
                .map(sillmark::quantity::Elevation::datum)
                .all(|datum| datum == VerticalDatum::Navd88)
        );
    });
    // The place has its ground from the first terrain; what lies beyond it, on a datum that
    // cannot be converted, is left out.
    let other = DemStatement {
        datum: Some(VerticalDatum::Epsg(5705)),
        ..metres_navd88()
    };
    let pond = |_: f64, _: f64| 50.0;
    let maps = terrain(vec![dem(slope, &metres_navd88()), dem(pond, &other)]);
    look(&site, &maps, |_, around| {
        assert!(matches!(around.rasters[1].shift, DatumShift::Refused(_)));
        let grid = around.ground.as_ref().unwrap();
        assert!(grid.void_count() > 100, "the pond has no height on NAVD88");
        let heights = grid.heights.iter().flatten();
        assert!(heights.copied().all(|height| height.get::<meter>() < 20.0));
    });
}

#[test]
fn zones_are_cut_at_the_square_with_their_holes() {
    let hole = ring([700.0, 720.0], [700.0, 720.0]);
    let outer = ring([0.0, 800.0], [0.0, 1500.0]);
    let far = ring([1400.0, 1500.0], [0.0, 100.0]);
    let mut maps = sources(DatumSettings::default());
    maps.zones = vec![
        map(&[
            zone("A", &[outer, hole.clone()]),
            zone("X", &[hole]),
            zone("D", &[far]),
        ])
        .unwrap(),
    ];
    look(&site(place(750.0, -750.0), ""), &maps, |_, around| {
        let classes: Vec<ZoneClass> = around.zones.iter().map(|zone| zone.class).collect();
        assert_eq!(classes, [ZoneClass::Approximate, ZoneClass::Unspecified]);
        let [zone, inner] = around.zones.as_slice() else {
            unreachable!()
        };
        // 170 m by 240 m less the hole of 20 m by 20 m; UTM shrinks lengths by up to 4 in
        // 10 000, and turns the rectangle.
        assert_abs_diff_eq!(
            zone.area.unsigned_area(),
            170.0 * 240.0 - 400.0,
            epsilon = 250.0
        );
        assert_abs_diff_eq!(inner.area.unsigned_area(), 400.0, epsilon = 1.0);
        assert!(zone.decides && zone.holds && !inner.holds);
        assert!(!zone.area.contains(&Point::new(-40.0, 40.0)));
        // In degrees the part that is seen, where the building stands in it.
        let here = around.location;
        assert!(
            zone.degrees
                .contains(&Point::new(here.longitude(), here.latitude()))
        );
        assert!(inner.degrees.0.is_empty());
        let origin = &around.origins[0].origin;
        assert_eq!(
            (origin.file_name().as_str(), origin.dated.clone()),
            ("zones.geojson", None)
        );
    });
}

#[test]
fn a_record_may_state_its_day() {
    let schema = std::fs::read_to_string("data/schemas/nfhl.toml").unwrap();
    let schema = schema.replace(
        "\n[attributes]\n",
        "\n[attributes]\ndate = [\"EFF_DATE\"]\n",
    );
    let schema = schema.replace("\noptional = [", "\noptional = [\"date\", ");
    let schema = sillmark::hazard::Schema::from_toml("own.toml", &schema).unwrap();
    let outer = ring([0.0, 800.0], [0.0, 1500.0]);
    let attributes = json!({"FLD_ZONE": "A", "EFF_DATE": "2006-08-16"});
    let scratch = tempfile::tempdir().unwrap();
    let path =
        crate::hazard::fixture::layer(scratch.path(), &[feature(&attributes, &polygon(&[outer]))]);
    let zones =
        sillmark::hazard::read_zones_by(&schema, &path, None, &ZoneStatement::default(), None)
            .unwrap();
    let mut maps = sources(DatumSettings::default());
    maps.zones = vec![zones];
    look(&site(place(750.0, -750.0), ""), &maps, |_, around| {
        // As GDAL prints a date.
        assert_eq!(around.zones[0].date.as_deref(), Some("2006/08/16"));
    });
}

/// Lines across from west to east, so many metres south of the terrain's corner, with their
/// levels in metres.
fn lines(drawn: &[(f64, f64)]) -> LevelLineMap {
    let features: Vec<Value> = drawn
        .iter()
        .map(|(south, level)| {
            let corners = [500.0, 760.0, 1000.0].map(|east| {
                let corner = place(east, -south);
                [corner.longitude(), corner.latitude()]
            });
            let shape = json!({"type": "LineString", "coordinates": corners});
            feature(&json!({"WSEL_REG": level}), &shape)
        })
        .collect();
    let collection = json!({"type": "FeatureCollection", "features": features});
    let scratch = tempfile::tempdir().unwrap();
    let path = crate::support::write(scratch.path(), "lines.geojson", &collection.to_string());
    let statement = LineStatement {
        unit: Some(LengthUnit::Metre),
        datum: Some(VerticalDatum::Navd88),
        ..LineStatement::default()
    };
    read_level_lines(LineKind::CrossSections, &path, None, &statement, None).unwrap()
}

#[test]
fn lines_that_were_used_are_told_from_those_that_lie_there() {
    let mut maps = sources(DatumSettings::default());
    maps.levels.lines = vec![lines(&[
        (650.0, 11.0),
        (700.0, 10.5),
        (1000.0, 10.0),
        (9000.0, 9.0),
    ])];
    look(
        &site(place(750.0, -750.0), ""),
        &maps,
        |assessment, around| {
            let level = assessment.place.flood_level.as_ref().unwrap();
            assert_eq!(level.decided.source.code(), "cross-sections");
            // 250 m to the farther of the two, and a margin.
            assert_abs_diff_eq!(around.reach.get::<meter>(), 290.0);
            let used: Vec<LineUse> = around.lines.iter().map(|line| line.used).collect();
            assert_eq!(used, [LineUse::None, LineUse::Decides, LineUse::Decides]);
            let nearer = &around.lines[1];
            assert_abs_diff_eq!(nearer.distance.get::<meter>(), 50.0, epsilon = 0.1);
            // Of the turn of the grid of UTM.
            let off = (nearer.bearing + 180.0).rem_euclid(360.0) - 180.0;
            assert_abs_diff_eq!(off, 0.0, epsilon = 1.0);
            assert_abs_diff_eq!(around.lines[2].bearing, 180.0, epsilon = 1.0);
            // Cut off at the square on the plan, whole for a map.
            let corner = place(500.0, -700.0);
            let whole = nearer.degrees.0[0].0.clone();
            assert_eq!(whole.len(), 3);
            assert_abs_diff_eq!(whole[0].x, corner.longitude(), epsilon = 1e-9);
            assert!(around.lines[0].degrees.0.is_empty());
        },
    );
}

#[test]
fn a_line_beyond_the_square_is_told_with_its_way() {
    let mut maps = sources(DatumSettings::default());
    maps.levels.lines = vec![lines(&[(700.0, 10.5), (3000.0, 10.0)])];
    look(&site(place(750.0, -750.0), ""), &maps, |_, around| {
        assert_abs_diff_eq!(around.reach.get::<meter>(), 120.0);
        let far = &around.lines[1];
        assert!(far.shape.0.is_empty() && far.used == LineUse::Decides);
        assert_abs_diff_eq!(far.distance.get::<meter>(), 2250.0, epsilon = 2.0);
    });
}

#[test]
fn a_zone_of_a_more_frequent_flood_is_flooded_too() {
    let frequent = sillmark::quantity::AnnualChance::new(0.05).unwrap();
    let schema = sillmark::hazard::Schema::extent(frequent).unwrap();
    let scratch = tempfile::tempdir().unwrap();
    let features = [zone("", &[ring([700.0, 800.0], [0.0, 1500.0])])];
    let path = crate::hazard::fixture::layer(scratch.path(), &features);
    let zones =
        sillmark::hazard::read_zones_by(&schema, &path, None, &ZoneStatement::default(), None)
            .unwrap();
    let mut maps = terrain(vec![dem(slope, &metres_navd88())]);
    maps.zones = vec![zones];
    // The assessed flood is that of 1 %.
    look(&site(place(750.0, -750.0), ""), &maps, |_, around| {
        let section = around.section.as_ref().unwrap();
        let middle = section.points[section.points.len() / 2];
        assert!(middle.in_flooded_zone);
    });
}

#[test]
fn zones_of_layers_with_one_name_are_told_apart() {
    let mut maps = sources(DatumSettings::default());
    let near = |west: f64| {
        let area = ring([west, west + 100.0], [700.0, 800.0]);
        map(&[zone("A", &[area])]).unwrap()
    };
    maps.zones = vec![near(600.0), near(700.0)];
    look(&site(place(750.0, -750.0), ""), &maps, |_, around| {
        let told = around.zones.iter().map(|zone| (zone.origin, zone.holds));
        assert_eq!(told.collect::<Vec<_>>(), [(0, false), (1, true)]);
    });
}
