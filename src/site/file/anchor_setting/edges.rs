//! How far the edges are.

use super::super::fields::word_or;
use crate::anchor::{Edge, Edges};
use crate::quantity::{Length, parse_length, unit::millimeter};
use crate::statement::{StatementError, Table};

/// The fields, as seen from the dry side.
pub(super) const FIELDS: [&str; 4] = ["edge_dry", "edge_water", "edge_left", "edge_right"];

const ACCEPTED: &str = "the distance from the centre of the outermost anchors to the edge, at least 0.2 in (5 mm), such as \"8 in\", or \"far\" where the edge takes no part";

/// Nearer than this no anchor can stand (common practice, no source).
const NEAREST_MILLIMETRES: f64 = 5.0;

pub(super) fn read(table: &Table<'_, '_>) -> Result<Edges, StatementError> {
    Ok(Edges {
        x_minus: edge(table, "edge_left")?,
        x_plus: edge(table, "edge_right")?,
        y_minus: edge(table, "edge_water")?,
        y_plus: edge(table, "edge_dry")?,
    })
}

fn edge(table: &Table<'_, '_>, key: &'static str) -> Result<Edge, StatementError> {
    let edge = word_or(table, key, ("far", Edge::Far), ACCEPTED, |text| {
        parse_length(text).map(Edge::At)
    })?;
    match edge {
        Some(Edge::At(distance)) if distance < Length::new::<millimeter>(NEAREST_MILLIMETRES) => {
            let stated = table.required(key, ACCEPTED)?;
            Err(stated.refuse("no anchor stands that near to an edge", ACCEPTED))
        }
        Some(edge) => Ok(edge),
        None => Ok(Edge::Unstated),
    }
}
