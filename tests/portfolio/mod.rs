//! Many buildings.

mod summary;
