//! What the user's address asks for itself.

use reqwest::Url;

/// The parameters of the address that the user names, such as a token: they go along with every
/// request to the same origin.
pub(super) struct OwnParameters {
    named: Url,
    pairs: Vec<(String, String)>,
}

/// Parameters that the program sets itself, to get all that meets a box, and those that would
/// keep it from coming whole: with coarser positions, without geometry, as a sum.
const OURS: [&str; 28] = [
    "bbox",
    "bbox-crs",
    "crs",
    "geometry",
    "geometryprecision",
    "geometrytype",
    "groupbyfieldsforstatistics",
    "insr",
    "limit",
    "maxallowableoffset",
    "objectids",
    "offset",
    "orderbyfields",
    "outfields",
    "outsr",
    "outstatistics",
    "quantizationparameters",
    "resultoffset",
    "resultrecordcount",
    "resulttype",
    "returncountonly",
    "returndistinctvalues",
    "returngeometry",
    "returnidsonly",
    "skipgeometry",
    "sortby",
    "spatialrel",
    "startindex",
];

impl OwnParameters {
    pub(super) fn of(url: &Url) -> Self {
        Self {
            named: url.clone(),
            pairs: url.query_pairs().into_owned().map(in_json).collect(),
        }
    }

    /// What the user says of a parameter; upper and lower case do not matter.
    pub(super) fn value(&self, name: &str) -> Option<&str> {
        self.pairs
            .iter()
            .find(|(own, _)| own.eq_ignore_ascii_case(name))
            .map(|(_, value)| value.as_str())
    }

    /// Those that do not go along.
    pub(super) fn left_out(&self) -> impl Iterator<Item = &str> {
        let names = self.pairs.iter().map(|(name, _)| name.as_str());
        names.filter(|name| is_ours(name))
    }

    /// Adds those that an address of the same origin lacks.
    pub(super) fn add_to(&self, url: &mut Url) {
        if url.origin() != self.named.origin() {
            return;
        }
        let lacking: Vec<_> = self
            .pairs
            .iter()
            .filter(|(name, _)| !is_ours(name))
            .filter(|(name, _)| {
                !url.query_pairs()
                    .any(|(there, _)| there.eq_ignore_ascii_case(name))
            })
            .collect();
        if !lacking.is_empty() {
            url.query_pairs_mut().extend_pairs(lacking);
        }
    }
}

/// A parameter as it stands, but for a format that is none of JSON: an address copied from a
/// browser may ask for a page.
fn in_json((name, value): (String, String)) -> (String, String) {
    let is_format = name.eq_ignore_ascii_case("f");
    if is_format && !value.to_ascii_lowercase().contains("json") {
        return (name, "json".to_owned());
    }
    (name, value)
}

fn is_ours(name: &str) -> bool {
    OURS.contains(&name.to_ascii_lowercase().as_str())
}
