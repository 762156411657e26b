//! Why an elevation cannot be put on another datum.

use std::fmt;
use std::path::PathBuf;

use crate::quantity::VerticalDatum;

/// A conversion between vertical datums that is refused, or settings that cannot be used.
///
/// Nothing here ever becomes a shift of zero.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DatumError {
    /// A grid folder that is not there.
    #[error(
        "{named_by}: {path:?} is not a folder that can be read; accepted: a folder of PROJ grids such as us_noaa_vertcone.tif"
    )]
    Folder {
        /// The option or environment variable.
        named_by: &'static str,
        /// The folder.
        path: PathBuf,
    },
    /// Grids were to be fetched, and this build cannot.
    #[error(
        "grids cannot be fetched over the network: this build's PROJ has no network support; accepted: {}",
        HOW_TO_GIVE_A_GRID
    )]
    NoNetwork,
    /// PROJ does not start.
    #[error("PROJ cannot open its database of coordinate systems")]
    NoDatabase,
    /// Two stated offsets between the same datums.
    #[error(
        "two offsets are stated between {from} and {to}: from {first:?} and from {second:?}; accepted: one"
    )]
    TwoOffsets {
        /// One datum.
        from: VerticalDatum,
        /// The other.
        to: VerticalDatum,
        /// Source of the first offset.
        first: String,
        /// Source of the second.
        second: String,
    },
    /// A tidal datum, which is another surface at each gauge.
    #[error(
        "{tidal} is another surface at each tide gauge, so no grid converts {from} to {to}; accepted: the offset at the gauge with its source (--datum-offset, or [[datum_offset]] in the site file), such as \"{from} -> {to} = -1.1 ft\""
    )]
    Tidal {
        /// Datum of the elevation.
        from: VerticalDatum,
        /// Datum that was asked for.
        to: VerticalDatum,
        /// Which of them is tidal.
        tidal: VerticalDatum,
    },
    /// A code that is not a vertical system of the EPSG Dataset.
    #[error(
        "EPSG:{code} is not a vertical coordinate system of the EPSG Dataset; accepted: {}",
        VerticalDatum::ACCEPTED
    )]
    NotVertical {
        /// The code.
        code: u32,
    },
    /// No transformation is known between the two.
    #[error(
        "no transformation from {from} to {to} is known; accepted: the offset with its source (--datum-offset, or [[datum_offset]] in the site file), such as \"{from} -> {to} = -1.1 ft\""
    )]
    NoOperation {
        /// What the height was counted from.
        from: String,
        /// Datum that was asked for.
        to: String,
    },
    /// The grids that the transformation reads are not here.
    #[error(
        "{from} to {to} at longitude {longitude}, latitude {latitude} needs {}, not found in {}; accepted: {}; or the offset with its source (--datum-offset, or [[datum_offset]] in the site file), such as \"{from} -> {to} = -1.1 ft\"",
        listed(files),
        folders_listed(folders),
        HOW_TO_GIVE_A_GRID
    )]
    MissingGrid {
        /// What the height was counted from.
        from: String,
        /// Datum that was asked for.
        to: String,
        /// Degrees east.
        longitude: f64,
        /// Degrees north.
        latitude: f64,
        /// The files that are missing, by their exact names.
        files: Vec<NeededGrid>,
        /// Where they were looked for.
        folders: Vec<PathBuf>,
    },
    /// No transformation reaches the place.
    #[error(
        "{from} to {to} is not defined at longitude {longitude}, latitude {latitude}: {detail}; accepted: a place within, or the offset with its source (--datum-offset, or [[datum_offset]] in the site file), such as \"{from} -> {to} = -1.1 ft\""
    )]
    Outside {
        /// What the height was counted from.
        from: String,
        /// Datum that was asked for.
        to: String,
        /// Degrees east.
        longitude: f64,
        /// Degrees north.
        latitude: f64,
        /// The areas that are covered, or the grid that has no value there.
        detail: String,
    },
    /// A shift that no two datums have, so that the grid is not what it should be.
    #[error(
        "{from} to {to} would shift by {shift:.3} m by {files}, which no grid between two datums does; accepted: an undamaged grid in the unit that PROJ expects"
    )]
    Absurd {
        /// What the height was counted from.
        from: String,
        /// Datum that was asked for.
        to: String,
        /// Metres.
        shift: f64,
        /// The grids that were read.
        files: String,
    },
}

/// How a user makes a grid known, for messages.
pub(super) const HOW_TO_GIVE_A_GRID: &str =
    "every file it needs in a folder named by --grids, SILLMARK_GRIDS or PROJ_DATA";

/// A grid file that is missing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NeededGrid {
    /// Its exact name.
    pub file: String,
    /// Where PROJ's project offers it; `None` where it does not.
    pub address: Option<String>,
}

impl fmt::Display for NeededGrid {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.address {
            Some(address) => write!(formatter, "{} ({address})", self.file),
            None => formatter.write_str(&self.file),
        }
    }
}

fn listed(files: &[NeededGrid]) -> String {
    let files: Vec<String> = files.iter().map(ToString::to_string).collect();
    files.join(" and ")
}

fn folders_listed(folders: &[PathBuf]) -> String {
    if folders.is_empty() {
        return "any folder: none is named".to_owned();
    }
    let folders: Vec<String> = folders
        .iter()
        .map(|folder| format!("{}", folder.display()))
        .collect();
    folders.join(", ")
}
