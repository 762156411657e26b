//! Where something stands.

use super::super::Location;
use super::LOCATION;
use crate::statement::{Stated, StatementError, Table};

pub(super) fn location(table: &Table<'_, '_>) -> Result<Option<Location>, StatementError> {
    let inner = table.table("location").map_err(|error| StatementError {
        accepted: LOCATION.to_owned(),
        ..error
    })?;
    let Some(inner) = inner else {
        return Ok(None);
    };
    inner.allow(&["longitude", "latitude"])?;
    let longitude = inner.required("longitude", "degrees east, such as -74.0335")?;
    let latitude = inner.required("latitude", "degrees north, such as 40.7400")?;
    let degrees = |stated: &Stated<'_>, least: f64, greatest: f64| {
        stated
            .text()
            .trim()
            .parse::<f64>()
            .ok()
            .filter(|degrees| (least..=greatest).contains(degrees))
            .ok_or_else(|| {
                stated.refuse(
                    "it is not a number of degrees in range",
                    format!("a number from {least} to {greatest}"),
                )
            })
    };
    let east = degrees(&longitude, -180.0, 180.0)?;
    let north = degrees(&latitude, -90.0, 90.0)?;
    Location::from_degrees(east, north)
        .map(Some)
        .map_err(|error| longitude.refuse(error.to_string(), LOCATION))
}
