//! What has to be cut and carried.

use schemars::JsonSchema;
use serde::Serialize;

use crate::barrier::{Handling, Piece};
use crate::quantity::unit::{Mass, kilogram};
use crate::report::json::number::{metres, rounded};

/// Pieces that are cut alike.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonPiece {
    /// `plank`, `end post`, `intermediate post`, `corner post`.
    name: String,
    length_m: f64,
    /// Of one; null where it is not stated.
    mass_kg: Option<f64>,
    count: u32,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonHandling {
    /// How many there are to carry.
    pieces: u64,
    /// Of all whose mass is stated.
    total_mass_kg: f64,
    /// Null where no mass is stated.
    heaviest: Option<JsonPiece>,
    /// How many people lift it.
    people_for_heaviest: Option<u64>,
    /// The most for one person.
    limit_kg: f64,
    limit_source: String,
    /// Pieces whose mass is not stated.
    mass_not_stated: Vec<String>,
}

impl JsonPiece {
    pub(super) fn of(piece: &Piece) -> Self {
        Self {
            name: piece.name.clone(),
            length_m: metres(piece.length),
            mass_kg: piece.mass.map(kilograms),
            count: piece.count,
        }
    }
}

impl JsonHandling {
    pub(super) fn of(handling: &Handling) -> Self {
        Self {
            pieces: handling.pieces,
            total_mass_kg: kilograms(handling.total_mass),
            heaviest: handling.heaviest.as_ref().map(JsonPiece::of),
            people_for_heaviest: handling.people_for_heaviest,
            limit_kg: kilograms(handling.limit.mass),
            limit_source: handling.limit.citation.to_string(),
            mass_not_stated: handling.mass_not_stated.clone(),
        }
    }
}

fn kilograms(mass: Mass) -> f64 {
    rounded(mass.get::<kilogram>())
}
