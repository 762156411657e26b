//! The formats of a table, by name and by ending.

use std::path::Path;

use super::TableError;

/// A format that tables are read and written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TableFormat {
    /// Comma-separated values, RFC 4180, UTF-8.
    Csv,
    /// OGC GeoPackage.
    GeoPackage,
    /// GeoJSON, RFC 7946.
    GeoJson,
    /// FlatGeobuf.
    FlatGeobuf,
    /// Apache Parquet, plain or `GeoParquet`.
    Parquet,
}

impl TableFormat {
    /// Every format.
    pub const ALL: [Self; 5] = [
        Self::Csv,
        Self::GeoPackage,
        Self::GeoJson,
        Self::FlatGeobuf,
        Self::Parquet,
    ];

    /// The format that a path's ending stands for; upper and lower case do not matter.
    ///
    /// # Errors
    /// [`TableError::UnknownFormat`] with the endings that are accepted.
    ///
    /// ```
    /// use sillmark::table::TableFormat;
    /// assert_eq!(TableFormat::from_path("sites.GPKG".as_ref())?, TableFormat::GeoPackage);
    /// let error = TableFormat::from_path("sites.xls".as_ref()).unwrap_err();
    /// assert_eq!(
    ///     error.to_string(),
    ///     "sites.xls: the format of a table is not known from the ending \"xls\"; accepted: \
    ///      csv, gpkg, geojson, json, fgb, parquet, geoparquet"
    /// );
    /// # Ok::<(), sillmark::table::TableError>(())
    /// ```
    pub fn from_path(path: &Path) -> Result<Self, TableError> {
        let ending = path.extension().unwrap_or_default().to_string_lossy();
        Self::ALL
            .into_iter()
            .find(|format| {
                let mut endings = format.endings().iter();
                endings.any(|known| known.eq_ignore_ascii_case(&ending))
            })
            .ok_or_else(|| TableError::UnknownFormat {
                path: path.to_owned(),
                ending: ending.into_owned(),
                accepted: Self::ALL
                    .iter()
                    .flat_map(|format| format.endings())
                    .copied()
                    .collect::<Vec<_>>()
                    .join(", "),
            })
    }

    /// The format of that [name](Self::name).
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|format| format.name() == name)
    }

    /// The name by which a user asks for it: `csv`, `gpkg`, `geojson`, `fgb`, `parquet`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Csv => "csv",
            Self::GeoPackage => "gpkg",
            Self::GeoJson => "geojson",
            Self::FlatGeobuf => "fgb",
            Self::Parquet => "parquet",
        }
    }

    /// The endings of its files, the usual one first.
    #[must_use]
    pub const fn endings(self) -> &'static [&'static str] {
        match self {
            Self::Csv => &["csv"],
            Self::GeoPackage => &["gpkg"],
            Self::GeoJson => &["geojson", "json"],
            Self::FlatGeobuf => &["fgb"],
            Self::Parquet => &["parquet", "geoparquet"],
        }
    }

    /// Its name in a sentence.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Csv => "CSV",
            Self::GeoPackage => "GeoPackage",
            Self::GeoJson => "GeoJSON",
            Self::FlatGeobuf => "FlatGeobuf",
            Self::Parquet => "Parquet",
        }
    }
}
