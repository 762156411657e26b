//! What a site file may say of outline and uncertainty.

use sillmark::quantity::unit::meter;
use sillmark::risk::{Deviation, Measured};
use sillmark::site::{GivenValue, Site};

fn site(more: &str) -> Result<Site, String> {
    let text = format!(
        "name = \"Lock\"\nlocation = {{ longitude = -74.0335, latitude = 40.74 }}\nthreshold = \"8.1 ft NAVD88\"\n{more}\n[[opening]]\nid = \"door\"\nwidth = \"36 in\"\n"
    );
    Site::from_toml("lock.toml", &text).map_err(|error| error.to_string())
}

#[test]
fn an_outline_is_read_open_or_closed() {
    for closing in ["", ", [-74.0336, 40.7400]"] {
        let footprint = format!(
            "[building]\nfootprint = [[-74.0336, 40.7400], [-74.0334, 40.7400], [-74.0334, 40.7402]{closing}]"
        );
        let site = site(&footprint).unwrap();
        assert_eq!(site.footprint.unwrap().corners().len(), 3);
    }
    assert_eq!(site("").unwrap().footprint, None);
}

#[test]
fn what_is_no_outline_is_refused_with_its_line() {
    for (footprint, expected) in [
        (
            "[]",
            "lock.toml, line 5: building.footprint \"[]\": 0 corners do not make an outline; accepted: [[",
        ),
        (
            "[[-74.0336, 40.74], [-74.0334, 40.74], [-74.0336, 40.74]]",
            "lock.toml, line 5: building.footprint \"[[-74.0336, 40.74], [-74.0334, 40.74], [-74.0336, 40.74]]\": 2 corners",
        ),
        (
            "\"round\"",
            "lock.toml, line 5: building.footprint \"\\\"round\\\"\": it is not a list of pairs",
        ),
        (
            "[[-74.0336, 40.74, 3.0]]",
            "lock.toml, line 5: building.footprint \"[-74.0336, 40.74, 3.0]\": it is not a pair",
        ),
        (
            "[[-74.0336, \"north\"]]",
            "lock.toml, line 5: building.footprint \"[-74.0336, \\\"north\\\"]\": it is not two numbers",
        ),
        // Latitude first.
        (
            "[[40.74, -74.0336]]",
            "lock.toml, line 5: building.footprint \"[40.74, -74.0336]\": it lies ",
        ),
        (
            "[[-74.0336, 140.74]]",
            "lock.toml, line 5: building.footprint \"[-74.0336, 140.74]\": latitude 140.74 is not between",
        ),
        (
            "[[-74.0336, 40.84]]",
            "lock.toml, line 5: building.footprint \"[-74.0336, 40.84]\": it lies 11.1 km from the building's location -74.0335, 40.74; accepted: ",
        ),
    ] {
        let error = site(&format!("[building]\nfootprint = {footprint}")).unwrap_err();
        assert!(error.starts_with(expected), "{error}\n{expected}");
    }
    let crossed = "[building]\nfootprint = [[-74.0336, 40.7400], [-74.0334, 40.7402], [-74.0334, 40.7400], [-74.0336, 40.7402]]";
    let error = site(crossed).unwrap_err();
    assert!(error.contains("not the outline of a building"), "{error}");
}

#[test]
fn uncertainties_are_lengths_or_names_of_the_catalogue() {
    let stated =
        site("[uncertainty]\nterrain = \"ql2\"\nsill = \"1 in\"\nzone_static = \"0.5 ft\"");
    let stated = stated.unwrap().uncertainty;
    let terrain = Deviation::of_given(&stated.terrain.unwrap(), Measured::Terrain).unwrap();
    assert_eq!(
        (terrain.id.as_str(), terrain.sd.get::<meter>()),
        ("QL2", 0.10)
    );
    assert!(terrain.citation.to_string().ends_with("(from memory)"));
    let sill = Deviation::of_given(&stated.sill.unwrap(), Measured::Sill).unwrap();
    assert_eq!(sill.citation.to_string(), "stated in lock.toml, line 6");
    assert!(matches!(
        stated.levels["zone-static"].value,
        GivenValue::Length(_)
    ));
    assert_eq!(stated.levels.len(), 1);
}

#[test]
fn uncertainties_that_cannot_be_are_refused() {
    for (field, expected) in [
        (
            "terrain = 0.1",
            "lock.toml, line 5: uncertainty.terrain \"0.1\": it has no unit",
        ),
        (
            "sill = \"0 ft\"",
            "lock.toml, line 5: uncertainty.sill \"0 ft\": nothing is measured without error",
        ),
        (
            "sill = \"-1 ft\"",
            "lock.toml, line 5: uncertainty.sill \"-1 ft\": it is negative",
        ),
        (
            "level = \"1 ft\"",
            "lock.toml, line 5: uncertainty.level: there is no such field here; accepted: terrain, sill, surface_raster",
        ),
        (
            "terrain = \"\"",
            "lock.toml, line 5: uncertainty.terrain \"\": it is blank",
        ),
    ] {
        let error = site(&format!("[uncertainty]\n{field}")).unwrap_err();
        assert!(error.starts_with(expected), "{error}\n{expected}");
    }
    // A row of another thing does not do.
    let stated = site("[uncertainty]\nsill = \"QL2\"").unwrap().uncertainty;
    let error = Deviation::of_given(&stated.sill.unwrap(), Measured::Sill).unwrap_err();
    assert_eq!(
        error.to_string(),
        "lock.toml, line 5: uncertainty.sill \"QL2\": it is neither a length nor a known uncertainty of the sill; accepted: a standard deviation such as \"0.15 m\", or one of: surveyed, estimated"
    );
}
