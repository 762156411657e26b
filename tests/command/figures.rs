//! Numbers of a JSON result beside numbers that were worked out by hand.

use approx::assert_relative_eq;
use serde_json::Value;

/// Metres of a foot (international yard and pound agreement, 1959).
pub(crate) const FOOT: f64 = 0.3048;

/// Metres of an inch.
pub(crate) const INCH: f64 = FOOT / 12.0;

/// Newtons of a pound-force (NIST SP 811, appendix B.8).
pub(crate) const POUND: f64 = 4.448_221_615_260_5;

/// Pascals of a pound on a square foot.
pub(crate) const POUND_PER_SQUARE_FOOT: f64 = POUND / (FOOT * FOOT);

/// The number at a JSON pointer.
pub(crate) fn number(result: &Value, way: &str) -> f64 {
    let found = result.pointer(way).and_then(Value::as_f64);
    found.unwrap_or_else(|| panic!("{way} is no number in {result:#}"))
}

/// Holds the number at a pointer against one in SI units, to six digits: the JSON is rounded
/// to a millionth.
pub(crate) fn is(result: &Value, way: &str, expected: f64) {
    let found = number(result, way);
    assert_relative_eq!(found, expected, max_relative = 1e-6, epsilon = 1e-6);
}

/// The first member of the list at a pointer whose `field` has a value.
pub(crate) fn one<'a>(result: &'a Value, way: &str, field: &str, value: &str) -> &'a Value {
    let list = result.pointer(way).and_then(Value::as_array).unwrap();
    let found = list.iter().find(|each| each[field] == value);
    found.unwrap_or_else(|| panic!("no {value} in {list:#?}"))
}

/// The texts of the list at a pointer, one a line.
pub(crate) fn lines(result: &Value, way: &str) -> String {
    let list = result.pointer(way).and_then(Value::as_array).unwrap();
    let texts: Vec<&str> = list.iter().filter_map(Value::as_str).collect();
    texts.join("\n")
}

/// What two results do not have in common, with the way to it: numbers that differ by more
/// than a millionth, other values, and members that one of them lacks. Sentences may differ in
/// their last digit and are not compared, verdicts are.
pub(crate) fn differences(one: &Value, other: &Value, way: &str) -> Vec<String> {
    let differ = || vec![format!("{way}: {one} and {other}")];
    match (one, other) {
        (Value::Object(of_one), Value::Object(of_other)) => {
            let mut names: Vec<&String> = of_one.keys().chain(of_other.keys()).collect();
            names.sort();
            names.dedup();
            let each = |name: &&String| {
                let member = |of: &serde_json::Map<String, Value>| of.get(*name).cloned();
                match (member(of_one), member(of_other)) {
                    (Some(one), Some(other)) => differences(&one, &other, &format!("{way}/{name}")),
                    _ => vec![format!("{way}/{name}: only in one")],
                }
            };
            names.iter().flat_map(each).collect()
        }
        (Value::Array(of_one), Value::Array(of_other)) if of_one.len() == of_other.len() => {
            let pairs = of_one.iter().zip(of_other).enumerate();
            pairs
                .flat_map(|(index, (one, other))| {
                    differences(one, other, &format!("{way}/{index}"))
                })
                .collect()
        }
        (Value::Number(of_one), Value::Number(of_other)) => {
            let (one, other) = (of_one.as_f64().unwrap(), of_other.as_f64().unwrap());
            let near = (one - other).abs() <= 1e-6 * one.abs().max(other.abs()).max(2.0);
            if near { Vec::new() } else { differ() }
        }
        (Value::String(_), Value::String(_)) if !way.ends_with("verdict") => Vec::new(),
        _ if one == other => Vec::new(),
        _ => differ(),
    }
}
