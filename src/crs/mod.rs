//! From longitude and latitude to the coordinates of a layer or raster, and from one
//! vertical datum to another.
//!
//! One constructor, one axis order: [`Projector`] always takes WGS 84 longitude and
//! latitude and gives x (east) and y (north) as the file stores them, whatever order its
//! coordinate reference system prescribes; and back, from x and y to a place. A transformation that PROJ could only guess at
//! (its "ballpark" transformations, which ignore the datum) is refused. So is a shift between
//! two vertical datums for which no grid is here: see [`Datums`].

mod datums;
mod definition;
mod error;
mod horizontal;
mod lattice;
mod local_frame;
mod operation;
mod projector;
mod vertical;

pub use datums::{
    COMMON_DATUM_PAIRS, Conversion, DatumError, DatumSettings, Datums, GRIDS_VARIABLE, GridStatus,
    NeededGrid, UseArea,
};
pub use definition::CrsDefinition;
pub use error::CrsError;
pub use horizontal::HorizontalCrs;
pub use local_frame::LocalFrame;
pub use projector::Projector;
pub use vertical::{VerticalAxis, VerticalCrs};
