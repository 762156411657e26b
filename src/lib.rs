//! sillmark
pub mod quantity;
pub mod site;
