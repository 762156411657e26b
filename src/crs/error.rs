//! What can go wrong with a coordinate reference system.

/// A coordinate reference system that cannot be used, or a place that it cannot express.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum CrsError {
    /// A definition that cannot be read.
    #[error(
        "{definition:?} is not a coordinate reference system{}; accepted: an authority's code such as EPSG:26918, WKT, PROJJSON or a PROJ string",
        because(detail)
    )]
    Unreadable {
        /// The definition as it was written.
        definition: String,
        /// What GDAL or PROJ says.
        detail: String,
    },
    /// A system that does not place points on the earth.
    #[error(
        "{name:?} is of type {kind:?}; accepted: a geographic or projected coordinate reference system"
    )]
    NotHorizontal {
        /// The system's name.
        name: String,
        /// Its type.
        kind: String,
    },
    /// No transformation from WGS 84 is known.
    #[error(
        "no transformation from WGS 84 to {name:?} is known{}",
        because(detail)
    )]
    NoTransformation {
        /// The system's name.
        name: String,
        /// What PROJ says.
        detail: String,
    },
    /// A place that the system cannot express.
    #[error(
        "longitude {longitude}, latitude {latitude} has no coordinates in {name:?}{}",
        because(detail)
    )]
    OutsideDomain {
        /// The system's name.
        name: String,
        /// Degrees east.
        longitude: f64,
        /// Degrees north.
        latitude: f64,
        /// What PROJ says.
        detail: String,
    },
    /// Coordinates of the system that are no place on the earth.
    #[error("x {x}, y {y} of {name:?} is no place{}", because(detail))]
    NoPlace {
        /// The system's name.
        name: String,
        /// East, in the system's unit.
        x: f64,
        /// North, in the system's unit.
        y: f64,
        /// What is wrong.
        detail: String,
    },
    /// A place for which PROJ would ignore the datum.
    #[error(
        "at longitude {longitude}, latitude {latitude} the transformation from WGS 84 to {name:?} would have to be guessed: no known one covers the place"
    )]
    Guess {
        /// The system's name.
        name: String,
        /// Degrees east.
        longitude: f64,
        /// Degrees north.
        latitude: f64,
    },
}

fn because(detail: &str) -> String {
    if detail.is_empty() {
        String::new()
    } else {
        format!(" ({detail})")
    }
}
