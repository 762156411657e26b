//! How far the edges are.

use super::super::fields::{Bounds, word_or};
use crate::anchor::{Edge, Edges};
use crate::quantity::parse_length;
use crate::statement::{StatementError, Table};

/// The fields, as seen from the dry side.
pub(super) const FIELDS: [&str; 4] = ["edge_dry", "edge_water", "edge_left", "edge_right"];

/// Nearer no anchor can stand, and beyond the farthest an edge is far.
const DISTANCE: Bounds = Bounds {
    range: 0.005..=1000.0,
    problem: "no anchor stands that near to an edge",
    accepted: "the distance from the centre of the outermost anchors to the edge, at least 0.2 in (5 mm), such as \"8 in\", or \"far\" where the edge takes no part",
};

pub(super) fn read(table: &Table<'_, '_>) -> Result<Edges, StatementError> {
    Ok(Edges {
        x_minus: edge(table, "edge_left")?,
        x_plus: edge(table, "edge_right")?,
        y_minus: edge(table, "edge_water")?,
        y_plus: edge(table, "edge_dry")?,
    })
}

fn edge(table: &Table<'_, '_>, key: &'static str) -> Result<Edge, StatementError> {
    let far = ("far", Edge::Far);
    let edge = word_or(table, key, far, DISTANCE.accepted, |text| {
        parse_length(text).map(Edge::At)
    })?;
    match edge {
        Some(Edge::At(distance)) if !DISTANCE.take(distance.value) => {
            let stated = table.required(key, DISTANCE.accepted)?;
            Err(stated.refuse(DISTANCE.problem, DISTANCE.accepted))
        }
        Some(edge) => Ok(edge),
        None => Ok(Edge::Unstated),
    }
}
