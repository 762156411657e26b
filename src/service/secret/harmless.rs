//! Parameters that tell nothing of who asks.

/// What the two protocols themselves use (OGC 17-069r4, OGC 18-058r1, OGC 19-079r2; GeoServices
/// REST), in small letters.
const HARMLESS: [&str; 40] = [
    "bbox",
    "bbox-crs",
    "crs",
    "datetime",
    "f",
    "filter",
    "filter-crs",
    "filter-lang",
    "geometry",
    "geometryprecision",
    "geometrytype",
    "havingclause",
    "insr",
    "lang",
    "limit",
    "maxallowableoffset",
    "objectids",
    "offset",
    "orderbyfields",
    "outfields",
    "outsr",
    "outstatistics",
    "properties",
    "resultoffset",
    "resultrecordcount",
    "resulttype",
    "returncountonly",
    "returndistinctvalues",
    "returnextentonly",
    "returngeometry",
    "returnidsonly",
    "returnm",
    "returnz",
    "skipgeometry",
    "sortby",
    "spatialrel",
    "startindex",
    "text",
    "time",
    "where",
];

/// Whether the value of a parameter may be shown. What is not known here may be a key: services
/// call theirs whatever they like.
pub(super) fn is_harmless(name: &str) -> bool {
    HARMLESS
        .binary_search(&name.to_ascii_lowercase().as_str())
        .is_ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_is_in_order() {
        assert!(HARMLESS.is_sorted());
        assert!(is_harmless("resultRecordCount") && !is_harmless("sig"));
    }
}
