//! What a barrier, and what stands behind barriers, is told as.

mod behind;
mod fixture;
mod json;
mod portfolio;
mod portfolio_cases;
mod sheet;
mod short;
mod site_layers;
