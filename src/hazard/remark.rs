//! What was odd about a zone, as data.

use crate::quantity::{LengthUnit, VerticalDatum};

/// Something about a feature that a reader of the result has to know.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ZoneRemark {
    /// A level that does not say its datum: not used.
    #[error("level {value} has no vertical datum and is not used; state it with --zones-datum")]
    LevelWithoutDatum {
        /// The number as the layer writes it.
        value: String,
    },
    /// A level, depth or velocity that does not say its unit: not used.
    #[error("{what} {value} has no unit and is not used; state it with {option}")]
    WithoutUnit {
        /// `level`, `depth` or `velocity`.
        what: &'static str,
        /// The number as the layer writes it.
        value: String,
        /// What states it.
        option: &'static str,
    },
    /// A unit or datum that is not known here: what depends on it is not used.
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
    #[error("{what} {text:?} is not a number and is not used")]
    NotANumber {
        /// What it is.
        what: &'static str,
        /// As the layer writes it.
        text: String,
    },
    /// A number that cannot be what it is called: not used.
    #[error("{what} {value} is not used: accepted are {lowest} to {highest} {unit}")]
    OutOfRange {
        /// What it is.
        what: &'static str,
        /// With its unit.
        value: String,
        /// The least that is accepted.
        lowest: f64,
        /// The greatest that is accepted.
        highest: f64,
        /// Unit of the bounds.
        unit: String,
    },
    /// The layer's own flag for being inside the flood says otherwise than the zone.
    #[error(
        "the zone {code:?} is contradicted by the layer's own flag {flag:?}; the worse is taken"
    )]
    FlagContradicts {
        /// The code.
        code: String,
        /// The flag as the layer writes it.
        flag: String,
    },
    /// A code of an older edition.
    #[error("zone {code:?} is of an older edition of the map; today it would be {today:?}")]
    Legacy {
        /// The code.
        code: String,
        /// The code of today.
        today: String,
    },
    /// A code, or a code with its subtype, that the schema does not know.
    #[error("zone {code:?} with subtype {subtype:?} is not known: taken as unknown, never as dry")]
    UnknownZone {
        /// The code.
        code: String,
        /// The subtype, empty where there is none.
        subtype: String,
    },
    /// A level in a zone that has none by its definition.
    #[error("level {value} stands in a zone that has none by its definition")]
    UnexpectedLevel {
        /// The level.
        value: String,
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
