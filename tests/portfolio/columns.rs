//! Which column means what.

use sillmark::portfolio::{Columns, Coordinates, Mapping, Role, StatedForAll, coordinate_names};
use sillmark::quantity::{LengthUnit, VerticalDatum};

fn names(text: &str) -> Vec<String> {
    text.split(',').map(str::to_owned).collect()
}

fn find(present: &str, mapping: &[&str], has_points: bool) -> Result<Columns, String> {
    let texts: Vec<String> = mapping.iter().map(|text| (*text).to_owned()).collect();
    let mapping = Mapping::read(&texts).map_err(|error| error.to_string())?;
    let for_all = StatedForAll {
        unit: Some(LengthUnit::Foot),
        datum: Some(VerticalDatum::Navd88),
    };
    Columns::find("t.csv", &names(present), &mapping, has_points, for_all)
        .map_err(|error| error.to_string())
}

#[test]
fn by_their_names_whatever_the_case() {
    let columns = find("Threshold,LATITUDE,longitude,ID", &[], false).unwrap();
    assert_eq!(columns.at(Role::Id), Some(3));
    assert_eq!(columns.at(Role::Threshold), Some(0));
    assert_eq!(columns.coordinates, Coordinates::Columns(2, 1));
    assert_eq!(coordinate_names(columns.degrees), ["longitude", "latitude"]);
    assert!(!columns.has_widths());
}

#[test]
fn an_exact_name_wins_and_two_inexact_ones_are_none() {
    let columns = find("ID,id,longitude,latitude,threshold", &[], false).unwrap();
    assert_eq!(columns.at(Role::Id), Some(1));
    let error = find("ID,Id,longitude,latitude,threshold", &[], false).unwrap_err();
    assert!(error.contains("there is no column id"), "{error}");
}

#[test]
fn by_a_mapping() {
    let mapping = ["threshold = ffe", "id=nr"];
    let columns = find("nr,x,y,ffe,threshold", &mapping, false).unwrap();
    assert_eq!(columns.at(Role::Threshold), Some(3));
    assert_eq!(coordinate_names(columns.degrees), ["x", "y"]);
    let missing = find("nr,x,y,threshold", &mapping, false).unwrap_err();
    assert!(missing.contains("there is no column ffe"), "{missing}");
    let twice = find("nr", &["id=a", "id=b"], false).unwrap_err();
    assert!(twice.contains("id is mapped twice"), "{twice}");
    let nothing = find("nr", &["id="], false).unwrap_err();
    assert!(
        nothing.contains("no column stands behind the ="),
        "{nothing}"
    );
    let no_sign = find("nr", &["id"], false).unwrap_err();
    assert!(no_sign.contains("it has no ="), "{no_sign}");
}

#[test]
fn points_do_without_columns() {
    let columns = find("id,threshold", &[], true).unwrap();
    assert_eq!(columns.coordinates, Coordinates::Point);
    // Half a pair is none.
    let columns = find("id,longitude,threshold", &[], true).unwrap();
    assert_eq!(columns.coordinates, Coordinates::Point);
    assert!(find("id,longitude,threshold", &[], false).is_err());
}

#[test]
fn every_role_is_found_by_its_name() {
    for role in Role::ALL {
        assert_eq!(Role::from_name(role.name()), Some(role));
    }
    assert_eq!(Role::from_name("Threshold"), None);
}
