//! Rasters of water: surfaces and depths, wet and dry.

use sillmark::level::{LevelSource, RasterAnswer, RasterRemark, depth_level, surface_level};
use sillmark::quantity::{AnnualChance, Length, LengthUnit, VerticalDatum, unit::meter};
use sillmark::terrain::{Dem, DemStatement, DepthRaster, Gap, Ground};

use crate::terrain::fixture::{NORTH_UP, metres_navd88, place, raster};

/// Four by four cells of ten metres, the lower right half dry.
const DRY: f32 = -9999.0;
const CELLS: [f32; 16] = [
    10.0, 10.1, 10.2, DRY, //
    10.1, 10.2, DRY, DRY, //
    10.2, DRY, DRY, DRY, //
    DRY, DRY, DRY, DRY,
];

fn surface() -> Dem {
    let scratch = tempfile::tempdir().unwrap();
    let mut surface = raster(4, &CELLS);
    surface.no_data = Some(f64::from(DRY));
    let path = surface.write(scratch.path(), "wse.tif");
    Dem::open_surface(&path, &metres_navd88()).unwrap()
}

fn ask(surface: &Dem, east: f64, north: f64, ground: Option<&Ground>) -> RasterAnswer {
    let place = place(east, north);
    surface_level(surface, AnnualChance::ONE_PERCENT, place, ground, None).unwrap()
}

fn level(answer: &RasterAnswer) -> f64 {
    let candidate = answer.candidate.as_ref().unwrap();
    candidate.elevation.height().get::<meter>()
}

#[test]
fn between_four_wet_cells_it_is_bilinear() {
    let answer = ask(&surface(), 10.0, -10.0, None);
    assert!((level(&answer) - 10.1).abs() < 1e-4, "{answer:?}");
    assert_eq!(answer.remarks, []);
    let candidate = answer.candidate.unwrap();
    assert_eq!(candidate.source, LevelSource::SurfaceRaster);
    assert_eq!(candidate.sd, None);
    assert_eq!(candidate.reference, "wse.tif");
}

#[test]
fn at_the_wet_dry_edge_the_own_cell_answers_and_it_is_said() {
    // In the second cell of the second row, towards its dry neighbours.
    let answer = ask(&surface(), 18.0, -18.0, None);
    assert!((level(&answer) - 10.2).abs() < 1e-4, "{answer:?}");
    let text = answer.remarks[0].to_string();
    assert!(text.contains("at the wet/dry edge"), "{text}");
    // Just beyond, in a dry cell beside a wet one, there is no level.
    let answer = ask(&surface(), 22.0, -18.0, None);
    assert_eq!(answer.candidate, None);
    let text = answer.remarks[0].to_string();
    assert!(
        text.contains("no water there") && text.contains("edge"),
        "{text}"
    );
}

#[test]
fn a_dry_cell_is_no_statement_of_dry_ground() {
    let answer = ask(&surface(), 33.0, -33.0, None);
    assert_eq!(answer.candidate, None);
    let text = answer.remarks[0].to_string();
    assert!(text.contains("not a statement of dry ground"), "{text}");
    assert!(!text.contains("edge"), "{text}");
    let outside = ask(&surface(), 500.0, -33.0, None);
    assert!(matches!(
        outside.remarks.as_slice(),
        [RasterRemark::DoesNotReach { .. }]
    ));
}

fn ground(metres: f64, datum: VerticalDatum) -> Ground {
    Ground {
        elevation: sillmark::quantity::Elevation::new(Length::new::<meter>(metres), datum),
        no_data_nearby: false,
        at_rim: false,
        source: "dem.tif".into(),
    }
}

#[test]
fn ground_above_the_water_of_a_wet_cell_is_said() {
    let high = ground(11.0, VerticalDatum::Navd88);
    let answer = ask(&surface(), 10.0, -10.0, Some(&high));
    let [RasterRemark::GroundAboveWater { by, .. }] = answer.remarks.as_slice() else {
        panic!("{answer:?}");
    };
    assert!((by.get::<meter>() - 0.9).abs() < 1e-4);
    assert!((level(&answer) - 10.1).abs() < 1e-4);
    let low = ground(9.0, VerticalDatum::Navd88);
    assert_eq!(ask(&surface(), 10.0, -10.0, Some(&low)).remarks, []);
    // Two datums are never compared.
    let other = ground(99.0, VerticalDatum::Ngvd29);
    assert_eq!(ask(&surface(), 10.0, -10.0, Some(&other)).remarks, []);
}

#[test]
fn no_data_that_is_not_equal_to_itself_is_dry() {
    let scratch = tempfile::tempdir().unwrap();
    let cells = CELLS.map(|cell| {
        if (cell - DRY).abs() < 1.0 {
            f32::NAN
        } else {
            cell
        }
    });
    let mut surface = raster(4, &cells);
    surface.no_data = Some(f64::NAN);
    let path = surface.write(scratch.path(), "wse.tif");
    let surface = Dem::open_surface(&path, &metres_navd88()).unwrap();
    assert_eq!(ask(&surface, 33.0, -33.0, None).candidate, None);
    assert!((level(&ask(&surface, 10.0, -10.0, None)) - 10.1).abs() < 1e-4);
}

#[test]
fn a_surface_asks_for_its_own_options() {
    let scratch = tempfile::tempdir().unwrap();
    let path = raster(4, &CELLS).write(scratch.path(), "wse.tif");
    let error = Dem::open_surface(&path, &DemStatement::default());
    let error = error.map(|_| ()).unwrap_err().to_string();
    assert!(error.contains("--surface-unit"), "{error}");
    let unit = DemStatement {
        unit: Some(LengthUnit::Metre),
        ..DemStatement::default()
    };
    let error = Dem::open_surface(&path, &unit);
    let error = error.map(|_| ()).unwrap_err().to_string();
    assert!(error.contains("--surface-datum"), "{error}");
    let error = DepthRaster::open(&path, &DemStatement::default());
    let error = error.map(|_| ()).unwrap_err().to_string();
    assert!(error.contains("--depth-unit"), "{error}");
}

fn depths(cells: &[f32; 16], shifted: f64) -> DepthRaster {
    let scratch = tempfile::tempdir().unwrap();
    let mut depths = raster(4, cells);
    depths.no_data = Some(f64::from(DRY));
    depths.transform = NORTH_UP;
    depths.transform[0] += shifted;
    let path = depths.write(scratch.path(), "depth.tif");
    // A depth has a unit and needs no datum.
    let unit = DemStatement {
        unit: Some(LengthUnit::Metre),
        ..DemStatement::default()
    };
    DepthRaster::open(&path, &unit).unwrap()
}

fn on(depths: &DepthRaster, ground: &Result<Ground, Gap>, sds: [Option<f64>; 2]) -> RasterAnswer {
    let [sd, ground_sd] = sds.map(|sd| sd.map(Length::new::<meter>));
    let place = place(10.0, -10.0);
    let chance = AnnualChance::ONE_PERCENT;
    depth_level(depths, chance, place, ground, sd, ground_sd).unwrap()
}

#[test]
fn a_depth_stands_on_the_ground_and_its_datum() {
    let ground = Ok(ground(5.0, VerticalDatum::Odn));
    let answer = on(&depths(&[1.5; 16], 2.5), &ground, [Some(0.3), Some(0.4)]);
    assert!((level(&answer) - 6.5).abs() < 1e-9, "{answer:?}");
    let candidate = answer.candidate.unwrap();
    assert_eq!(candidate.elevation.datum(), VerticalDatum::Odn);
    assert!((candidate.sd.unwrap().get::<meter>() - 0.5).abs() < 1e-9);
    assert_eq!(candidate.reference, "depth.tif on dem.tif");
    // Half a standard deviation is none.
    let answer = on(&depths(&[1.5; 16], 0.0), &ground, [Some(0.3), None]);
    assert_eq!(answer.candidate.unwrap().sd, None);
}

#[test]
fn a_depth_of_nothing_is_said_and_one_below_is_not_used() {
    let ground = Ok(ground(5.0, VerticalDatum::Odn));
    let answer = on(&depths(&[0.0; 16], 0.0), &ground, [None, None]);
    assert!((level(&answer) - 5.0).abs() < 1e-9);
    assert!(matches!(
        answer.remarks.as_slice(),
        [RasterRemark::DepthOfNothing { .. }]
    ));
    let answer = on(&depths(&[-0.2; 16], 0.0), &ground, [None, None]);
    assert_eq!(answer.candidate, None);
    let text = answer.remarks[0].to_string();
    assert!(
        text.contains("-0.20 m") && text.contains("accepted"),
        "{text}"
    );
}

#[test]
fn a_depth_without_ground_is_no_level() {
    let answer = on(&depths(&[1.5; 16], 0.0), &Err(Gap::Void), [None, None]);
    assert_eq!(answer.candidate, None);
    let text = answer.remarks[0].to_string();
    assert!(text.contains("the terrain has no value there"), "{text}");
}
