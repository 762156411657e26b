//! Many buildings.

mod columns;
mod summary;
