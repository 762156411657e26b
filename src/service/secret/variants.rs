//! The forms in which a value may be repeated.

use std::borrow::Cow;

use percent_encoding::percent_decode_str;
use reqwest::Url;

/// Forms of a value as it stands in an address.
pub(super) fn of_encoded(raw: &str) -> Vec<String> {
    let spaced = raw.replace('+', " ");
    let mut forms = vec![raw.to_owned()];
    for text in [raw, &spaced] {
        forms.extend(of_plain(&decoded(text)));
    }
    forms
}

/// Forms of a value as it is meant: itself, as JSON writes it with and without its slashes
/// escaped, and as an address writes it.
pub(super) fn of_plain(value: &str) -> Vec<String> {
    let quoted = serde_json::to_string(value).unwrap_or_default();
    let inside = quoted
        .strip_prefix('"')
        .and_then(|text| text.strip_suffix('"'));
    let json = inside.unwrap_or_default().to_owned();
    let encoded = encoded(value);
    vec![
        value.to_owned(),
        json.replace('/', "\\/"),
        json,
        with_small_figures(&encoded),
        encoded,
    ]
}

fn decoded(text: &str) -> Cow<'_, str> {
    percent_decode_str(text).decode_utf8_lossy()
}

fn encoded(value: &str) -> String {
    let form = Url::parse_with_params("http://h/", [("v", value)]);
    let query = form.ok().and_then(|url| url.query().map(str::to_owned));
    query.map_or_else(String::new, |query| query["v=".len()..].to_owned())
}

/// `%2F` as `%2f`.
fn with_small_figures(encoded: &str) -> String {
    let mut pieces = encoded.split('%');
    let mut small = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        let (figures, others) = piece.split_at_checked(2).unwrap_or((piece, ""));
        small.push('%');
        small.push_str(&figures.to_ascii_lowercase());
        small.push_str(others);
    }
    small
}
