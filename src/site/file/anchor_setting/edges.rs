//! How far the edges are.

use super::super::fields::{Bounds, word_or};
use crate::anchor::{Edge, Edges};
use crate::quantity::parse_length;
use crate::statement::{StatementError, Table};

/// The fields of a setting, from the edge where x is least: x runs along the anchors of a
/// plate or up those of a jamb, y from the water side to the dry side.
pub(super) type Fields = [&'static str; 4];

/// Of a floor, as seen from the dry side.
pub(super) const FLOOR: Fields = ["edge_left", "edge_right", "edge_water", "edge_dry"];

/// Of a jamb.
pub(super) const JAMB: Fields = ["edge_below", "edge_above", "edge_water", "edge_dry"];

/// Nearer no anchor can stand, and beyond the farthest an edge is far.
const DISTANCE: Bounds = Bounds {
    range: 0.005..=1000.0,
    problem: "no anchor stands that near to an edge",
    accepted: "the distance from the centre of the outermost anchors to the edge, at least 0.2 in (5 mm), such as \"8 in\", or \"far\" where the edge takes no part",
};

pub(super) fn read(table: &Table<'_, '_>, fields: Fields) -> Result<Edges, StatementError> {
    let [x_minus, x_plus, y_minus, y_plus] = fields;
    Ok(Edges {
        x_minus: edge(table, x_minus)?,
        x_plus: edge(table, x_plus)?,
        y_minus: edge(table, y_minus)?,
        y_plus: edge(table, y_plus)?,
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
