//! What a barrier, and what stands behind barriers, is told as.

mod behind;
mod fixture;
mod json;
mod sheet;
mod short;
