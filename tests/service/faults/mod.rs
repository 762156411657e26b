//! Hundreds of random schedules of faults: each run ends with the right features or in an error,
//! never with fewer or others, and leaves a cache that the next run can use.

mod asked;
mod kept;
mod processes;
mod schedules;

use super::features::{geoservices_double, ogc_double};
use super::proxy::Kind;
use crate::support::skip;

use self::asked::Asked;

/// Of the doubles.
const OGC_LAYER: &str = "/ogc/collections/zones";
const GEOSERVICES_LAYER: &str = "/rest/services/flood/FeatureServer/3";

#[test]
fn ogc_api_features_come_right_or_not_at_all() {
    schedules::run_all(&ogc(), &[]);
}

#[test]
fn geoservices_come_right_or_not_at_all() {
    // It has no links.
    schedules::run_all(&geoservices(), &[Kind::NextLoops]);
}

fn ogc() -> Asked {
    match address("SILLMARK_OGC_SERVER") {
        Some(address) => Asked::real(&address, "/collections/s_fld_haz_ar"),
        None => Asked::double(&ogc_double::server(|_| None), OGC_LAYER),
    }
}

fn geoservices() -> Asked {
    let layer = "/file-geojson/rest/services/nfhl/FeatureServer/0";
    match address("SILLMARK_GEOSERVICES_SERVER") {
        Some(address) => Asked::real(&address, layer),
        None => Asked::double(&geoservices_double::server(|_| None), GEOSERVICES_LAYER),
    }
}

/// Where `tests/run` has a real server; without it a double is asked.
fn address(variable: &str) -> Option<String> {
    let address = std::env::var(variable).ok();
    if address.is_none() {
        skip(&format!(
            "faults: {variable} names no server; a double is asked"
        ));
    }
    address
}
