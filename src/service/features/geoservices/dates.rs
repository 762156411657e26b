//! Dates, which are served as milliseconds since 1970.

use chrono::DateTime;
use serde_json::{Map, Value};

use super::layer::Field;

/// Puts the dates among attributes as ISO 8601 writes them, in universal time. A number beyond
/// the calendar stays one.
pub(super) fn write(attributes: &mut Map<String, Value>, fields: &[Field]) {
    for field in fields {
        if field.kind != "esriFieldTypeDate" {
            continue;
        }
        if let Some(value) = attributes.get_mut(&field.name)
            && let Some(date) = value.as_i64().and_then(DateTime::from_timestamp_millis)
        {
            *value = Value::String(format!("{date:?}"));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The numbers are those of `date -u -d @SECONDS +%FT%TZ` (GNU coreutils).
    #[test]
    fn milliseconds_become_a_date() {
        let field = |name: &str, kind: &str| Field {
            name: name.to_owned(),
            kind: kind.to_owned(),
        };
        let fields = [
            field("EFF", "esriFieldTypeDate"),
            field("OLD", "esriFieldTypeDate"),
            field("LATE", "esriFieldTypeDate"),
            field("NONE", "esriFieldTypeDate"),
            field("N", "esriFieldTypeInteger"),
        ];
        let text = r#"{"EFF":1291334400000,"OLD":-86399999,"LATE":9e18,"NONE":null,"N":5}"#;
        let mut attributes: Map<String, Value> = serde_json::from_str(text).unwrap();
        write(&mut attributes, &fields);
        let expected = r#"{"EFF":"2010-12-03T00:00:00Z","LATE":9e18,"N":5,"NONE":null,"OLD":"1969-12-31T00:00:00.001Z"}"#;
        let expected: Map<String, Value> = serde_json::from_str(expected).unwrap();
        assert_eq!(attributes, expected);
    }
}
