//! The layers of a site, read by another library.

use std::path::Path;

use sillmark::crs::DatumSettings;
use sillmark::hazard::{LineKind, LineStatement, ZoneStatement, read_level_lines, read_zones};
use sillmark::quantity::{LengthUnit, VerticalDatum};
use sillmark::report::write_site_layers;
use sillmark::site::Site;
use sillmark::terrain::{Dem, DemStatement, Terrain};

use crate::peer;
use crate::site_fixture::{look, sources};

const LINES: &str = r#"{"type": "FeatureCollection", "features": [
{"type": "Feature", "properties": {"WSEL_REG": 613.0}, "geometry":
 {"type": "LineString", "coordinates": [[-87.4995, 47.799], [-87.498, 47.799]]}},
{"type": "Feature", "properties": {"WSEL_REG": 615.0}, "geometry":
 {"type": "LineString", "coordinates": [[-87.4995, 47.8], [-87.498, 47.8]]}}]}"#;

#[test]
fn another_library_reads_the_layers_of_a_site() {
    let folder = Path::new("examples/alder-lock");
    let text = std::fs::read_to_string(folder.join("site.toml")).unwrap();
    let site = Site::from_toml("site.toml", &text).unwrap();
    let scratch = tempfile::tempdir().unwrap();
    let lines = scratch.path().join("lines.geojson");
    std::fs::write(&lines, LINES).unwrap();
    let statement = LineStatement {
        unit: Some(LengthUnit::Foot),
        datum: Some(VerticalDatum::Navd88),
        ..LineStatement::default()
    };
    let statement_of_zones = ZoneStatement::default();
    let zones = folder.join("zones.geojson");
    let dem = Dem::open(&folder.join("terrain.tif"), &DemStatement::default()).unwrap();
    let mut maps = sources(DatumSettings::default());
    maps.zones = vec![read_zones(&zones, None, &statement_of_zones, None).unwrap()];
    maps.terrain = Terrain::new(vec![dem]);
    maps.levels.lines =
        vec![read_level_lines(LineKind::CrossSections, &lines, None, &statement, None).unwrap()];
    let target = scratch.path().join("site.gpkg");
    look(&site, &maps, |assessment, around| {
        write_site_layers(&target, assessment, around).unwrap();
    });
    let (longitude, latitude) = (site.location.longitude(), site.location.latitude());
    let (longitude, latitude) = (longitude.to_string(), latitude.to_string());
    let arguments = [target.as_os_str(), longitude.as_ref(), latitude.as_ref()];
    let Some(told) = peer::run("site_layers.py", &arguments) else {
        return;
    };
    // The site and nine of its ten openings stand there; the tenth is in a zone of its own.
    // Both lines were read for comparison: the zone's own level goes before them.
    assert_eq!(
        told,
        [
            "points|EPSG:4326|Point|11|True|10|kind,id,opening,longitude,latitude,zone,\
             zone_subtype,level_source,flood_level_m,flood_level_sd_m,ground_m,threshold_m,\
             vertical_datum,freeboard_m,design_level_m,depth_m,protection_height_m,\
             force_n_per_m,verdict,reasons,cautions,threshold_source,chance_at_sill,sill_m,\
             width_m,barrier_height_m,planks,spans,intermediate_posts",
            "zones|EPSG:4326|MultiPolygon|2|True|1|zone,zone_subtype,class,decides,layer,\
             feature,date",
            "lines|EPSG:4326|MultiLineString|2|True|0|kind,name,level_m,vertical_datum,used,\
             distance_m,bearing_degrees,layer,feature",
        ]
    );
}
