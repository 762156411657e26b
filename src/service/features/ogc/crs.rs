//! Coordinate reference systems of OGC API - Features part 2 (OGC 18-058r1).

use crate::service::features::shape::Axes;

/// Longitude and latitude on WGS 84, what is served where nothing else is asked for.
pub(super) const CRS84: &str = "http://www.opengis.net/def/crs/OGC/1.3/CRS84";

/// A system by an authority's code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Crs {
    /// As the service names it.
    pub(super) uri: String,
    /// Such as `EPSG:27700`.
    pub(super) code: String,
}

impl Crs {
    /// Reads a name: a URI, a URN, or `AUTHORITY:CODE`, in brackets of `Content-Crs` or not.
    pub(super) fn read(name: &str) -> Option<Self> {
        let uri = name.trim().trim_matches(['<', '>', '[', ']']).to_owned();
        let lower = uri.to_ascii_lowercase();
        let at = |start: &str| lower.starts_with(start).then_some(start.len());
        let (authority, code) = if let Some(start) =
            at("http://www.opengis.net/def/crs/").or_else(|| at("https://www.opengis.net/def/crs/"))
        {
            parts(&uri[start..], '/')?
        } else if let Some(start) = at("urn:ogc:def:crs:") {
            parts(&uri[start..], ':')?
        } else {
            uri.split_once(':')?
        };
        let is_word = |text: &str| {
            !text.is_empty() && text.chars().all(|letter| letter.is_ascii_alphanumeric())
        };
        if !is_word(authority) || !is_word(code) {
            return None;
        }
        let code = format!("{}:{code}", authority.to_ascii_uppercase());
        Some(Self { uri, code })
    }

    pub(super) fn crs84() -> Self {
        Self {
            uri: CRS84.to_owned(),
            code: "OGC:CRS84".to_owned(),
        }
    }

    /// Whether it is CRS84, with ellipsoidal heights or not.
    pub(super) fn is_crs84(&self) -> bool {
        matches!(self.code.as_str(), "OGC:CRS84" | "OGC:CRS84h")
    }

    /// Whether it differs from CRS84 in no more than the order of its axes, and heights.
    pub(super) fn is_wgs84(&self) -> bool {
        self.is_crs84() || matches!(self.code.as_str(), "EPSG:4326" | "EPSG:4979")
    }

    pub(super) fn axes(&self) -> Axes {
        if self.is_crs84() {
            Axes::LongitudeFirst
        } else if self.is_wgs84() {
            Axes::LatitudeFirst
        } else {
            Axes::Any
        }
    }
}

/// `AUTHORITY VERSION CODE`; the version may be empty.
fn parts(text: &str, separator: char) -> Option<(&str, &str)> {
    let (authority, rest) = text.split_once(separator)?;
    let (_, code) = rest.split_once(separator)?;
    Some((authority, code))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The forms of OGC 18-058r1, requirement 5, and of OGC 09-048r5.
    #[test]
    fn a_system_is_known_by_any_of_its_names() {
        for (name, code) in [
            (CRS84, Some("OGC:CRS84")),
            (
                "<http://www.opengis.net/def/crs/EPSG/0/26910>",
                Some("EPSG:26910"),
            ),
            (
                "https://www.opengis.net/def/crs/EPSG/9.9.1/27700",
                Some("EPSG:27700"),
            ),
            ("urn:ogc:def:crs:EPSG::4326", Some("EPSG:4326")),
            ("urn:ogc:def:crs:OGC:1.3:CRS84", Some("OGC:CRS84")),
            ("[EPSG:2056]", Some("EPSG:2056")),
            ("epsg:2056", Some("EPSG:2056")),
            ("#/crs", None),
            ("http://example.org/grid", None),
            ("http://www.opengis.net/def/crs/EPSG", None),
            ("", None),
        ] {
            let read = Crs::read(name).map(|crs| crs.code);
            assert_eq!(read.as_deref(), code, "{name}");
        }
    }
}
