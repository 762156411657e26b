//! Many buildings: what is counted while their rows go by.

pub mod summary;
