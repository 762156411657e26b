//! What a raster does not say, the user says; what both say, agrees.

use sillmark::quantity::{LengthUnit, VerticalDatum};
use sillmark::terrain::{Dem, DemStatement, TerrainError};

use super::fixture::{metres, metres_navd88, place, raster};
use crate::support::open_data;

fn opened(crs: &str, statement: &DemStatement) -> Result<Dem, TerrainError> {
    let scratch = tempfile::tempdir().unwrap();
    let mut raster = raster(4, &[10.0_f32; 16]);
    raster.crs = crs;
    Dem::open(&raster.write(scratch.path(), "dem.tif"), statement)
}

fn refusal(crs: &str, statement: &DemStatement) -> String {
    let error = opened(crs, statement).map(|_| ()).unwrap_err().to_string();
    assert!(error.contains("dem.tif"), "{error}");
    error
}

#[test]
fn there_is_no_default() {
    let nothing = DemStatement::default();
    let error = refusal("EPSG:26918", &nothing);
    assert!(
        error.contains("does not state its vertical unit") && error.contains("--dem-unit"),
        "{error}"
    );
    let unit = DemStatement {
        unit: Some(LengthUnit::Metre),
        ..nothing.clone()
    };
    let error = refusal("EPSG:26918", &unit);
    assert!(
        error.contains("does not state its vertical datum") && error.contains("--dem-datum"),
        "{error}"
    );
    let error = refusal("", &metres_navd88());
    assert!(error.contains("--dem-crs"), "{error}");
}

#[test]
fn a_compound_system_states_unit_and_datum() {
    let dem = opened("EPSG:26918+6360", &DemStatement::default()).unwrap();
    assert_eq!(dem.datum(), VerticalDatum::Navd88);
    assert_eq!(dem.unit(), LengthUnit::SurveyFoot);
    let ground = metres(&dem, place(20.0, -20.0)).unwrap();
    assert!((ground - 10.0 * 1200.0 / 3937.0).abs() < 1e-9, "{ground}");
}

#[test]
fn contradictions_are_quoted() {
    let error = refusal("EPSG:26918+6360", &metres_navd88());
    assert!(
        error.contains("\"ftUS\"") && error.contains("\"m\""),
        "{error}"
    );
    let ngvd29 = DemStatement {
        datum: Some(VerticalDatum::Ngvd29),
        ..DemStatement::default()
    };
    let error = refusal("EPSG:26918+5703", &ngvd29);
    assert!(
        error.contains("\"NAVD88\"") && error.contains("\"NGVD29\""),
        "{error}"
    );
    let crs = DemStatement {
        crs: Some("EPSG:2263".into()),
        ..metres_navd88()
    };
    let error = refusal("EPSG:26918", &crs);
    assert!(
        error.contains("UTM zone 18N") && error.contains("Long Island"),
        "{error}"
    );
}

#[test]
fn heights_above_the_ellipsoid_are_no_elevations() {
    let error = refusal("EPSG:4979", &metres_navd88());
    assert!(error.contains("above the ellipsoid"), "{error}");
}

#[test]
fn an_unknown_ellipsoid_is_refused_until_the_system_is_stated() {
    let Some(path) = open_data("awkward/unknown_ellipsoid_dem.tif") else {
        return;
    };
    let error = Dem::open(&path, &metres_navd88())
        .map(|_| ())
        .unwrap_err()
        .to_string();
    assert!(
        error.contains("unknown_ellipsoid_dem.tif") && error.contains("--dem-crs"),
        "{error}"
    );
    let stated = DemStatement {
        crs: Some("EPSG:4269".into()),
        ..metres_navd88()
    };
    assert!(Dem::open(&path, &stated).is_ok());
}
