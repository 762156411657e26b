//! What the user states of a building.

mod hostile;
mod stated;
