//! `PATH[:LAYER]` as typed on a command line.

use std::path::PathBuf;

/// A vector file and, where the user names one, its layer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LayerPath {
    /// The file or folder.
    pub path: PathBuf,
    /// The layer's name.
    pub layer: Option<String>,
}

/// Endings of the formats that are opened; a layer can follow only on one of them, so that
/// a colon elsewhere in a path stays part of it.
const ENDINGS: [&str; 7] = [
    ".shp", ".gpkg", ".geojson", ".json", ".fgb", ".gdb", ".gdb/",
];

impl LayerPath {
    /// Splits the text at the first colon that follows the ending of a vector format.
    ///
    /// ```
    /// use sillmark::hazard::LayerPath;
    /// let split = LayerPath::split("C:\\maps 12:30\\county.gdb:S_FLD_HAZ_AR");
    /// assert_eq!(split.path.to_str(), Some("C:\\maps 12:30\\county.gdb"));
    /// assert_eq!(split.layer.as_deref(), Some("S_FLD_HAZ_AR"));
    /// assert_eq!(LayerPath::split("a:b/zones.shp").layer, None);
    /// ```
    #[must_use]
    pub fn split(text: &str) -> Self {
        let found = text.match_indices(':').find_map(|(position, _)| {
            let (path, layer) = (&text[..position], &text[position + 1..]);
            let lower = path.to_ascii_lowercase();
            let ends = ENDINGS.iter().any(|ending| lower.ends_with(ending));
            // "x.gdb:y/z.shp" is a folder of a strange name, not a layer.
            (ends && !layer.is_empty() && !layer.contains(['/', '\\'])).then_some((path, layer))
        });
        match found {
            Some((path, layer)) => Self {
                path: path.into(),
                layer: Some(layer.to_owned()),
            },
            None => Self {
                path: text.into(),
                layer: None,
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parts(text: &str) -> (String, Option<String>) {
        let split = LayerPath::split(text);
        (split.path.display().to_string(), split.layer)
    }

    #[test]
    fn a_colon_splits_only_behind_a_format() {
        let layer = |text: &str| Some(text.to_owned());
        assert_eq!(parts("z.gpkg:zones"), ("z.gpkg".into(), layer("zones")));
        assert_eq!(
            parts("z.GPKG:ns:zones"),
            ("z.GPKG".into(), layer("ns:zones"))
        );
        assert_eq!(parts("z.gdb/:zones"), ("z.gdb/".into(), layer("zones")));
        for whole in [
            "zones",
            "at 12:30/zones.shp",
            "C:/zones.gpkg",
            "z.gpkg:",
            "a.gdb:b/z.shp",
            "nothing:layer",
        ] {
            assert_eq!(parts(whole), (whole.to_owned(), None));
        }
    }
}
