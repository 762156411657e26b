//! What was odd about a line, as data.

use crate::quantity::{LengthUnit, VerticalDatum};

/// Something about a line that a reader of the result has to know.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum LineRemark {
    /// By the layer's own word the line has no single level (coast, confluence).
    #[error("the layer says that it has no single level ({value})")]
    NoSingleLevel {
        /// The number as the layer writes it.
        value: String,
    },
    /// A level that does not say its datum: not used.
    #[error("level {value} has no vertical datum and is not used; state it with {option}-datum")]
    WithoutDatum {
        /// The number as the layer writes it.
        value: String,
        /// The option that names the layer.
        option: &'static str,
    },
    /// A level that does not say its unit: not used.
    #[error("level {value} has no unit and is not used; state it with {option}-unit")]
    WithoutUnit {
        /// The number as the layer writes it.
        value: String,
        /// The option that names the layer.
        option: &'static str,
    },
    /// A unit or datum that is not known here: the level is not used.
    #[error("{what} {text:?} is not understood; accepted: {accepted}")]
    NotUnderstood {
        /// What it is.
        what: &'static str,
        /// As the layer writes it.
        text: String,
        /// What would be.
        accepted: &'static str,
    },
    /// A text where a number should be: not used.
    #[error("level {text:?} is not a number and is not used")]
    NotANumber {
        /// As the layer writes it.
        text: String,
    },
    /// A number that cannot be a level: not used.
    #[error("level {value} is not used: accepted are {lowest} to {highest} {unit}")]
    OutOfRange {
        /// With its unit.
        value: String,
        /// The least that is accepted.
        lowest: f64,
        /// The greatest that is accepted.
        highest: f64,
        /// Unit of the bounds.
        unit: LengthUnit,
    },
    /// The layer states a datum, and the user another: the layer's is used.
    #[error("the layer states {written}; the stated {stated} is not used")]
    DatumAlreadyThere {
        /// The layer's datum.
        written: VerticalDatum,
        /// The user's.
        stated: VerticalDatum,
    },
    /// The layer states a unit, and the user another: the layer's is used.
    #[error("the layer states {written}; the stated {stated} is not used")]
    UnitAlreadyThere {
        /// The layer's unit.
        written: LengthUnit,
        /// The user's.
        stated: LengthUnit,
    },
}
