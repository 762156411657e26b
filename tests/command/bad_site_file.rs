//! Site files that cannot be used.

use insta::assert_snapshot;

use super::scratch::{SITE, Scratch};

#[test]
fn missing() {
    let scratch = Scratch::new();
    assert_snapshot!(scratch.refused(&["site", "nowhere.toml"]), @"error: nowhere.toml: cannot be read: No such file or directory (os error 2); accepted: a site file (TOML in UTF-8)");
}

#[test]
fn a_folder() {
    let scratch = Scratch::new();
    assert_snapshot!(scratch.refused(&["site", "."]), @"error: .: cannot be read: Is a directory (os error 21); accepted: a site file (TOML in UTF-8)");
}

#[test]
fn endless() {
    let scratch = Scratch::new();
    scratch.write("site.toml", vec![b'#'; (1 << 20) + 1]);
    assert_snapshot!(scratch.site_refused(), @"error: site.toml: is longer than a mebibyte; accepted: a site file (TOML in UTF-8)");
}

#[test]
fn not_text() {
    let scratch = Scratch::new();
    scratch.write("site.toml", b"name = \"Lock\"\nthreshold = \"\xff\"\n");
    assert_snapshot!(scratch.site_refused(), @"error: site.toml, line 2: it is not UTF-8 text; accepted: a site file (TOML in UTF-8)");
}

#[test]
fn not_toml() {
    let scratch = Scratch::new();
    scratch.site_with("\"Test House\"", "Test House");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 1: text "name = Test House": string values must be quoted, expected literal string; accepted: TOML (toml.io), such as: name = "a text""#);
}

#[test]
fn a_zone_layer_in_its_place() {
    let scratch = Scratch::new();
    assert_snapshot!(scratch.refused(&["site", "zones.geojson"]), @r#"error: zones.geojson, line 1: text "{\"features\":[{\"geometry\":{\"coordinates\":[[[-74.01,39.99],[-73.99,39.99],[-73.99,40.01],[-74.01,40.01"…: invalid key-value pair, expected key; accepted: TOML (toml.io), such as: name = "a text""#);
}

#[test]
fn nested_without_end() {
    let scratch = Scratch::new();
    scratch.write("site.toml", format!("name = {}", "[".repeat(100_000)));
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 1: text "name = [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["…: cannot recurse further; max recursion depth met; accepted: TOML (toml.io), such as: name = "a text""#);
}

#[test]
fn misspelt_field() {
    let scratch = Scratch::new();
    scratch.site_with("width", "widht");
    assert_snapshot!(scratch.site_refused(), @"error: site.toml, line 9: opening.widht: there is no such field here; accepted: id, kind, width, height, run, sill, sill_above_threshold, reveal, face, mount, brace, soil, gap, floor, jamb, wall, location");
}

#[test]
fn missing_field() {
    let scratch = Scratch::new();
    scratch.site_with("width = \"36 in\"\n", "");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 7: opening.width: it is missing; accepted: a length with its unit, such as "36 in""#);
}

#[test]
fn no_location() {
    let scratch = Scratch::new();
    scratch.site_with("location = { longitude = -74.0, latitude = 40.0 }\n", "");
    assert_snapshot!(scratch.site_refused(), @"error: site.toml, line 1: location: it is missing; accepted: { longitude = -74.0335, latitude = 40.7400 }, in degrees");
}

#[test]
fn a_location_as_a_list() {
    let scratch = Scratch::new();
    scratch.site_with("{ longitude = -74.0, latitude = 40.0 }", "[-74.0, 40.0]");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 2: location "[-74.0, 40.0]": it is not a table; accepted: { longitude = -74.0335, latitude = 40.7400 }, in degrees"#);
}

#[test]
fn no_openings() {
    let scratch = Scratch::new();
    let (head, _) = SITE.split_once("[[opening]]").unwrap();
    scratch.write("site.toml", head);
    assert_snapshot!(scratch.site_refused(), @"error: site.toml, line 1: opening: it is missing; accepted: at least one [[opening]] with id and width");
}

#[test]
fn an_empty_list_of_openings() {
    let scratch = Scratch::new();
    let (head, _) = SITE.split_once("[[opening]]").unwrap();
    scratch.write("site.toml", format!("{head}opening = []\n"));
    assert_snapshot!(scratch.site_refused(), @"error: site.toml, line 1: opening: it is missing; accepted: at least one [[opening]] with id and width");
}

#[test]
fn one_opening_without_the_double_brackets() {
    let scratch = Scratch::new();
    scratch.site_with("[[opening]]", "[opening]");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 7: opening "[opening]": it is not a list of tables; accepted: [[opening]] and its fields below it"#);
}

#[test]
fn two_openings_of_one_id() {
    let scratch = Scratch::new();
    scratch.site_and("[[opening]]\nid = \"door\"\nwidth = \"3 ft\"");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 11: opening.id "door": another opening has the same id; accepted: a different id for each opening"#);
}

#[test]
fn an_unknown_use() {
    let scratch = Scratch::new();
    scratch.site_with("commercial", "shop");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 4: occupancy "shop": it is not one of the choices; accepted: residential, commercial, critical"#);
}

#[test]
fn an_unknown_wall() {
    let scratch = Scratch::new();
    scratch.site_and("wall = \"mud\"");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 10: opening.wall "mud": it is not one of the choices; accepted: reinforced concrete, reinforced masonry, unreinforced masonry, brick veneer, unsupported panel, frame"#);
}

#[test]
fn an_unknown_rule() {
    let scratch = Scratch::new();
    scratch.site_with("us-nfip-floodproofing", "us-nfip");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 5: rule "us-nfip": there is no such rule; accepted: none, us-nfip-minimum, us-nfip-floodproofing, us-floodproofing-class-1-2-3, us-floodproofing-class-4, us-residential-code-r322, us-ffrms-freeboard, us-levee-65-10, england-good-model, england-weak-model"#);
}

#[test]
fn two_statements_of_one_sill() {
    let scratch = Scratch::new();
    scratch.site_and("sill = \"8 ft NAVD88\"\nsill_above_threshold = \"0 in\"");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 10: opening.sill "8 ft NAVD88": both sill and sill_above_threshold are stated; accepted: one of the two"#);
}

#[test]
fn a_sill_of_another_building() {
    let scratch = Scratch::new();
    scratch.site_and("sill = \"810 ft NAVD88\"");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 10: opening.sill "810 ft NAVD88": it is not a sill of the same building: the threshold lies too far above or below it; accepted: a sill within 100 m (328 ft) of the threshold's height"#);
}

#[test]
fn an_opening_of_another_building() {
    let scratch = Scratch::new();
    scratch.site_and("location = { longitude = -74.1, latitude = 40.0 }");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 10: opening.location "-74.1, 40": it lies 8518.0 m from the building; accepted: a place within 500 m of the building's location"#);
}

#[test]
fn highest_grade_below_the_lowest() {
    let scratch = Scratch::new();
    scratch.site_with(
        "occupancy",
        "lowest_adjacent_grade = \"7 ft NAVD88\"\nhighest_adjacent_grade = \"6 ft NAVD88\"\noccupancy",
    );
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 5: highest_adjacent_grade "6 ft NAVD88": it is lower than lowest_adjacent_grade; accepted: the highest ground against the walls"#);
}

#[test]
fn a_flood_by_years() {
    let scratch = Scratch::new();
    scratch.site_and(
        "[[flood_level]]\nevent = \"100-year\"\nlevel = \"9 ft NAVD88\"\nsource = \"study\"",
    );
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 11: flood_level.event "100-year": it is neither a percentage nor "1 in" a number of years; accepted: an annual chance such as "1%" or "0.2%", "record" or "community""#);
}

#[test]
fn one_flood_stated_twice() {
    let scratch = Scratch::new();
    scratch.site_and(
        "[[flood_level]]\nevent = \"1%\"\nlevel = \"9 ft NAVD88\"\nsource = \"study\"\n\
         [[flood_level]]\nevent = \"1 in 100\"\nlevel = \"8 ft NAVD88\"\nsource = \"hearsay\"",
    );
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 15: flood_level.event "1 in 100": a level for this event is stated twice; accepted: one [[flood_level]] an event"#);
}
