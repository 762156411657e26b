//! Numbers and units that cannot be used.

use insta::assert_snapshot;

use super::scratch::Scratch;

fn threshold(text: &str) -> String {
    let scratch = Scratch::new();
    scratch.site_with("8.1 ft NAVD88", text);
    scratch.site_refused()
}

fn width(text: &str) -> String {
    let scratch = Scratch::new();
    scratch.site_with("\"36 in\"", text);
    scratch.site_refused()
}

#[test]
fn a_longitude_that_is_not_a_number() {
    let scratch = Scratch::new();
    scratch.site_with("-74.0", "nan");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 2: location.longitude "nan": it is not a number of degrees in range; accepted: a number from -180 to 180"#);
}

#[test]
fn a_latitude_beyond_the_pole() {
    let scratch = Scratch::new();
    scratch.site_with("40.0", "91");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 2: location.latitude "91": it is not a number of degrees in range; accepted: a number from -90 to 90"#);
}

#[test]
fn an_infinite_latitude() {
    let scratch = Scratch::new();
    scratch.site_with("40.0", "inf");
    assert_snapshot!(scratch.site_refused(), @r#"error: site.toml, line 2: location.latitude "inf": it is not a number of degrees in range; accepted: a number from -90 to 90"#);
}

#[test]
fn a_threshold_in_the_sky() {
    assert_snapshot!(threshold("1000000000 ft NAVD88"), @r#"error: site.toml, line 3: threshold "1000000000 ft NAVD88": no dry land lies that high or low; accepted: a height with its unit and vertical datum, such as "8.1 ft NAVD88" or "2.47 m EPSG:5703""#);
}

#[test]
fn a_threshold_in_scientific_notation() {
    assert_snapshot!(threshold("1e9 ft NAVD88"), @r#"error: site.toml, line 3: threshold "1e9 ft NAVD88": it is in scientific notation; write it out; accepted: a height with its unit and vertical datum, such as "8.1 ft NAVD88" or "2.47 m EPSG:5703""#);
}

#[test]
fn an_infinite_threshold() {
    assert_snapshot!(threshold("inf ft NAVD88"), @r#"error: site.toml, line 3: threshold "inf ft NAVD88": it does not begin with a number; accepted: a height with its unit and vertical datum, such as "8.1 ft NAVD88" or "2.47 m EPSG:5703""#);
}

#[test]
fn a_threshold_without_a_unit() {
    assert_snapshot!(threshold("8.1 NAVD88"), @r#"error: site.toml, line 3: threshold "8.1 NAVD88": it has no unit; accepted: a height with its unit and vertical datum, such as "8.1 ft NAVD88" or "2.47 m EPSG:5703""#);
}

#[test]
fn an_unknown_unit() {
    assert_snapshot!(threshold("8.1 furlong NAVD88"), @r#"error: site.toml, line 3: threshold "8.1 furlong NAVD88": "furlong" is not a unit of length (those are m, cm, mm, ft, in, ftUS); accepted: a height with its unit and vertical datum, such as "8.1 ft NAVD88" or "2.47 m EPSG:5703""#);
}

#[test]
fn an_endless_threshold() {
    let message = threshold(&"8".repeat(10_000));
    assert!(message.len() < 500, "{message}");
}

#[test]
fn a_width_as_a_number() {
    assert_snapshot!(width("36"), @r#"error: site.toml, line 9: opening.width "36": it has no unit; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
}

#[test]
fn a_width_in_scientific_notation() {
    assert_snapshot!(width("\"1e3 in\""), @r#"error: site.toml, line 9: opening.width "1e3 in": it is in scientific notation; write it out; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
}

#[test]
fn a_negative_width() {
    assert_snapshot!(width("\"-36 in\""), @r#"error: site.toml, line 9: opening.width "-36 in": it is negative; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
}

#[test]
fn a_width_of_nothing() {
    assert_snapshot!(width("\"0 in\""), @r#"error: site.toml, line 9: opening.width "0 in": an opening has a width; accepted: a length with its unit, such as "36 in""#);
}

#[test]
fn a_width_wider_than_any_barrier() {
    assert_snapshot!(width("\"101 m\""), @r#"error: site.toml, line 9: opening.width "101 m": it is wider than 100 m (328 ft); accepted: the width of one opening, such as "36 in""#);
}

#[test]
fn a_width_that_divides_infinity() {
    let endless = "9".repeat(400);
    let message = width(&format!("\"{endless}/{endless} in\""));
    assert!(message.contains("opening.width \"999"), "{message}");
    assert!(
        message.contains("it is absurdly large; accepted: "),
        "{message}"
    );
}

#[test]
fn a_comma_for_a_point() {
    assert_snapshot!(width("\"3,5 ft\""), @r#"error: site.toml, line 9: opening.width "3,5 ft": it has a comma; write a point for decimals and no thousands separator; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
}

#[test]
fn inches_beyond_a_foot() {
    assert_snapshot!(width("\"3 ft 14 in\""), @r#"error: site.toml, line 9: opening.width "3 ft 14 in": the inches behind the feet are not between 0 and 12; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
}
