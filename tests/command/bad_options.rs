//! Command lines that cannot be understood.

use insta::assert_snapshot;

use super::scratch::Scratch;

fn refused(arguments: &[&str]) -> String {
    Scratch::new().refused(arguments)
}

const HOUSE: [&str; 4] = ["site", "site.toml", "--zones", "zones.geojson"];

#[test]
fn nothing_at_all() {
    assert_snapshot!(refused(&[]), @"
    Which openings of a building need a flood barrier, how high, and what the water does to it

    Usage: sillmark [OPTIONS] <COMMAND>

    Commands:
      site       Assess one building: its openings, the flood level, and what each opening needs
      portfolio  Assess many buildings: a table in, a table out
      review     Hold somebody's proposal for one building against an assessment, point by point
      barrier    Work out one barrier for a width, a height and a depth of water that you state: loads,
                 spans, posts, anchors, pieces. No maps
      collect    Fetch what public services hold around a site or a table of sites into a GeoPackage,
                 which the other commands read
      catalog    List the rules, limits, kits, datums, sources and cautions that answers rest on
      help       Print this message or the help of the given subcommand(s)

    Options:
          --verbose  Say on stderr what the map libraries report
      -h, --help     Print help (see more with '--help')
      -V, --version  Print version
    ");
}

#[test]
fn an_unknown_command() {
    assert_snapshot!(refused(&["sight"]), @r"
    error: unrecognized subcommand 'sight'

    Usage: sillmark [OPTIONS] <COMMAND>

    For more information, try '--help'.
    ");
}

#[test]
fn an_unknown_option() {
    assert_snapshot!(refused(&["site", "site.toml", "--zone", "zones.geojson"]), @r"
    error: unexpected argument '--zone' found

      tip: a similar argument exists: '--zones'

    Usage: sillmark site --zones <PATH|ADDRESS> <FILE>

    For more information, try '--help'.
    ");
}

#[test]
fn an_unknown_format() {
    assert_snapshot!(refused(&[&HOUSE[..], &["--format", "xml"]].concat()), @r"
    error: invalid value 'xml' for '--format <FORMAT>'
      [possible values: text, json, html, csv, gpkg]

      tip: a similar value exists: 'html'

    For more information, try '--help'.
    ");
}

#[test]
fn unknown_units() {
    assert_snapshot!(refused(&[&HOUSE[..], &["--units", "metric"]].concat()), @r"
    error: invalid value 'metric' for '--units <UNITS>'
      [possible values: us, si]

    For more information, try '--help'.
    ");
}

#[test]
fn an_unknown_rule() {
    assert_snapshot!(refused(&[&HOUSE[..], &["--rule", "one foot"]].concat()), @r#"error: option --rule: rule "one foot": there is no such rule; accepted: none, us-nfip-minimum, us-nfip-floodproofing, us-floodproofing-class-1-2-3, us-floodproofing-class-4, us-residential-code-r322, us-ffrms-freeboard, us-levee-65-10, england-good-model, england-weak-model"#);
}

#[test]
fn an_unknown_catalogue() {
    assert_snapshot!(refused(&["catalog", "prices"]), @"
    error: invalid value 'prices' for '<LIST>'
      [possible values: rules, limits, kits, datums, sources, uncertainty, schemas, services, materials, combinations, practice, reasons, cautions, json-schema, barrier-schema, summary-schema, review-schema]

      tip: a similar value exists: 'practice'

    For more information, try '--help'.
    ");
}

#[test]
fn neither_file_nor_place() {
    assert_snapshot!(refused(&["site", "--threshold", "8.1 ft NAVD88", "--opening", "door=36 in"]), @"error: option --at: it is missing; accepted: longitude and latitude in degrees, such as --at -74.0335,40.7400, or a site file instead");
}

#[test]
fn a_place_without_a_threshold() {
    assert_snapshot!(refused(&["site", "--at", "-74,40", "--opening", "door=36 in"]), @r#"error: option --threshold: it is missing; accepted: a height with its unit and vertical datum, such as --threshold "8.1 ft NAVD88""#);
}

#[test]
fn a_place_without_an_opening() {
    assert_snapshot!(refused(&["site", "--at", "-74,40", "--threshold", "8.1 ft NAVD88"]), @r#"error: option --opening: opening: it is missing; accepted: a name and a width, such as --opening "front door=36 in""#);
}

#[test]
fn file_and_quick_form_mixed() {
    assert_snapshot!(refused(&["site", "site.toml", "--at", "-74,40", "--threshold", "8 ft NAVD88"]), @r"
    error: the argument '[FILE]' cannot be used with:
      --at <LON,LAT>
      --threshold <ELEVATION>

    Usage: sillmark site <FILE>

    For more information, try '--help'.
    ");
}

fn quick(at: &str, threshold: &str, opening: &str) -> String {
    refused(&[
        "site",
        "--at",
        at,
        "--threshold",
        threshold,
        "--opening",
        opening,
    ])
}

#[test]
fn half_a_place() {
    assert_snapshot!(quick("-74", "8 ft NAVD88", "door=36 in"), @r#"error: option --at: location "-74": it is not two numbers with a comma between; accepted: longitude and latitude in degrees, such as --at -74.0335,40.7400"#);
}

#[test]
fn a_place_that_is_not_a_number() {
    assert_snapshot!(quick("nan,40", "8 ft NAVD88", "door=36 in"), @r#"error: option --at: location "nan,40": longitude NaN is not between -180 and 180 degrees; accepted: longitude and latitude in degrees, such as --at -74.0335,40.7400"#);
}

#[test]
fn a_place_off_the_earth() {
    assert_snapshot!(quick("-74,91", "8 ft NAVD88", "door=36 in"), @r#"error: option --at: location "-74,91": latitude 91 is not between -90 and 90 degrees; accepted: longitude and latitude in degrees, such as --at -74.0335,40.7400"#);
}

#[test]
fn a_threshold_without_a_datum() {
    assert_snapshot!(quick("-74,40", "8 ft", "door=36 in"), @r#"error: option --threshold: threshold "8 ft": it has no vertical datum; accepted: a height with its unit and vertical datum, such as "8.1 ft NAVD88" or "2.47 m EPSG:5703""#);
}

#[test]
fn an_opening_without_a_width() {
    assert_snapshot!(quick("-74,40", "8 ft NAVD88", "door 36 in"), @r#"error: option --opening: opening "door 36 in": it has no = between name and width; accepted: a name and a width, such as --opening "front door=36 in""#);
}

#[test]
fn an_opening_of_a_negative_width() {
    assert_snapshot!(quick("-74,40", "8 ft NAVD88", "door=-36 in"), @r#"error: option --opening: opening width "-36 in": it is negative; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
}

#[test]
fn an_opening_without_a_name() {
    assert_snapshot!(quick("-74,40", "8 ft NAVD88", "=36 in"), @r#"error: option --opening: opening name "": it is blank; accepted: a text"#);
}

#[test]
fn two_openings_of_one_name() {
    let message = refused(&[
        "site",
        "--at",
        "-74,40",
        "--threshold",
        "8 ft NAVD88",
        "--opening",
        "door=36 in",
        "--opening",
        "door=30 in",
    ]);
    assert_snapshot!(message, @r#"error: option --opening: opening "door=30 in": another opening has the same id; accepted: a different id for each opening"#);
}

fn kit(text: &str) -> String {
    let scratch = Scratch::new();
    scratch.write("kit.toml", text);
    scratch.refused(&[&HOUSE[..], &["--kit", "kit.toml"]].concat())
}

#[test]
fn a_kit_of_impossible_planks() {
    let text = "id = \"k\"\nname = \"K\"\nsource = \"sheet 3\"\nconfidence = \"stated\"\n[plank]\ncover_height = \"0 in\"\n";
    assert_snapshot!(kit(text), @r#"error: kit.toml, line 6: plank.cover_height "0 in": no plank is that high or that low; accepted: a length from "1 cm" to "1 m""#);
}

#[test]
fn a_kit_without_planks() {
    let text = "id = \"k\"\nname = \"K\"\nsource = \"sheet 3\"\nconfidence = \"stated\"\n";
    assert_snapshot!(kit(text), @"error: kit.toml, line 1: plank: it is missing; accepted: [plank] with cover_height");
}

#[test]
fn a_kit_that_is_missing() {
    assert_snapshot!(refused(&[&HOUSE[..], &["--kit", "nowhere.toml"]].concat()), @"error: nowhere.toml: cannot be read: No such file or directory (os error 2); accepted: a kit file (TOML in UTF-8)");
}
