//! A result in a file: whole, or not there.

use std::fs;

use insta::assert_snapshot;

use super::scratch::Scratch;

const HOUSE: [&str; 5] = ["site", "site.toml", "--zones", "zones.geojson", "-o"];

fn refused(scratch: &Scratch, output: &str) -> String {
    scratch.refused(&[&HOUSE[..], &[output]].concat())
}

/// The files of the folder; the empty folder of grids is the test's own.
fn names(scratch: &Scratch) -> Vec<String> {
    let mut names: Vec<_> = fs::read_dir(scratch.folder())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter(|name| name != "grids")
        .collect();
    names.sort();
    names
}

#[test]
fn it_holds_what_stdout_would() {
    let scratch = Scratch::new();
    let printed = scratch.answer(&HOUSE[..4]);
    scratch.write("result.txt", "yesterday's");
    assert_eq!(scratch.answer(&[&HOUSE[..], &["result.txt"]].concat()), "");
    assert_eq!(scratch.read("result.txt"), printed);
    assert_eq!(
        names(&scratch),
        ["result.txt", "site.toml", "zones.geojson"]
    );
}

#[test]
fn a_run_that_fails_leaves_the_old_file_as_it_was() {
    let scratch = Scratch::new();
    scratch.write("result.txt", "yesterday's");
    // At each stage of the run: the site, the method, the zones, the datums.
    for [option, value] in [
        ["--rule", "none at all"],
        ["--kit", "nowhere.toml"],
        ["--zones", "nowhere.gpkg"],
        ["--dem", "nowhere.tif"],
    ] {
        let arguments = [&HOUSE[..], &["result.txt", option, value]].concat();
        scratch.refused(&arguments);
        assert_eq!(scratch.read("result.txt"), "yesterday's");
    }
    scratch.site_with("NAVD88", "NGVD29");
    refused(&scratch, "result.txt");
    assert_eq!(scratch.read("result.txt"), "yesterday's");
    assert_eq!(
        names(&scratch),
        ["result.txt", "site.toml", "zones.geojson"]
    );
}

#[test]
fn a_run_that_fails_leaves_no_new_file() {
    let scratch = Scratch::new();
    scratch.site_with("NAVD88", "NGVD29");
    refused(&scratch, "result.txt");
    assert_eq!(names(&scratch), ["site.toml", "zones.geojson"]);
}

#[test]
fn a_folder_that_does_not_exist() {
    assert_snapshot!(refused(&Scratch::new(), "no/such/result.txt"), @r#"error: option --output: "no/such/result.txt" lies in a folder that does not exist; accepted: the path of a file in a folder that exists and can be written to"#);
}

#[test]
fn a_file_for_a_folder() {
    assert_snapshot!(refused(&Scratch::new(), "site.toml/result.txt"), @r#"error: option --output: "site.toml/result.txt" lies in something that is not a folder; accepted: the path of a file in a folder that exists and can be written to"#);
}

#[test]
fn a_folder_for_a_file() {
    assert_snapshot!(refused(&Scratch::new(), "."), @r#"error: option --output: "." is a folder; accepted: the path of a file"#);
}

#[test]
fn an_input_is_not_written_over() {
    let scratch = Scratch::new();
    let before = scratch.read("site.toml");
    assert_snapshot!(refused(&scratch, "./site.toml"), @r#"error: option --output: "./site.toml" is read by this run and would be written over; accepted: the path of another file"#);
    assert_eq!(scratch.read("site.toml"), before);
    assert_snapshot!(refused(&scratch, "zones.geojson"), @r#"error: option --output: "zones.geojson" is read by this run and would be written over; accepted: the path of another file"#);
}

#[cfg(unix)]
#[test]
fn what_is_not_a_regular_file_is_not_replaced() {
    use std::os::unix::fs::FileTypeExt as _;
    let scratch = Scratch::new();
    let _socket = std::os::unix::net::UnixListener::bind(scratch.path("socket")).unwrap();
    assert_snapshot!(refused(&scratch, "socket"), @r#"error: option --output: "socket" is not a regular file; accepted: the path of a file, or no --output for stdout"#);
    assert!(
        fs::metadata(scratch.path("socket"))
            .unwrap()
            .file_type()
            .is_socket()
    );
}

#[cfg(unix)]
#[test]
fn the_permissions_are_those_of_any_new_file() {
    use std::os::unix::fs::PermissionsExt as _;
    let scratch = Scratch::new();
    scratch.answer(&[&HOUSE[..], &["result.txt"]].concat());
    let mode = |name| {
        fs::metadata(scratch.path(name))
            .unwrap()
            .permissions()
            .mode()
    };
    assert_eq!(mode("result.txt"), mode("zones.geojson"));
}
