//! What the user states of a building.

mod conditions;
mod every_field;
mod hostile;
mod refused_anchors;
mod refused_conditions;
mod stated;
