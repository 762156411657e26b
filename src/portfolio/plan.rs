//! What a run does, the same for every thread.

use super::{Columns, ToPlace};
use crate::assess::{Method, Sources};
use crate::crs::HorizontalCrs;
use crate::quantity::{UnitSystem, VerticalDatum};

/// What a run does, the same for every row and every thread.
#[derive(Clone, Debug)]
pub struct Plan {
    /// The columns of the input.
    pub columns: Columns,
    /// The system of its coordinates; `None` for degrees of WGS 84.
    pub crs: Option<HorizontalCrs>,
    /// How each row is assessed; units of sentences are those of the row where it says none.
    pub method: Method,
    /// The units of sentences, where the user asks for them.
    pub units: Option<UnitSystem>,
    /// The datum of thresholds estimated from the ground, where a row names none: that of all
    /// terrain.
    pub terrain_datum: Option<VerticalDatum>,
    /// Threads that assess.
    pub threads: usize,
    /// Memory for rows under way, bytes.
    pub batch_bytes: usize,
}

/// What a thread has to open for itself: rasters and transformations cannot be shared.
pub struct Own {
    /// Maps and terrain.
    pub sources: Sources,
    /// From the table's coordinates to places; `None` for degrees of WGS 84.
    pub places: Option<Box<ToPlace<'static>>>,
}
