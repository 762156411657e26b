//! What the file says and what the user says, brought together.

use std::path::Path;

use super::{RasterRole, TerrainError};
use crate::crs::{CrsDefinition, HorizontalCrs, VerticalAxis, VerticalCrs};
use crate::quantity::{LengthUnit, VerticalDatum};

/// What a user states about a raster that does not say it itself; the options are those of a
/// terrain model, a water surface has `--surface-unit` and so on.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DemStatement {
    /// Unit of the heights (`--dem-unit`).
    pub unit: Option<LengthUnit>,
    /// Datum of the heights (`--dem-datum`).
    pub datum: Option<VerticalDatum>,
    /// Coordinate reference system (`--dem-crs`), such as `EPSG:26918`.
    pub crs: Option<String>,
}

/// Band units that say nothing.
const NO_UNIT: [&str; 4] = ["", "unknown", "none", "unspecified"];

/// The horizontal system, and the vertical one where there is one.
///
/// A stated system has to be the file's own, but where the file's own cannot be used it
/// stands in for it.
pub(super) fn crs(
    path: &Path,
    file: Option<Result<CrsDefinition, crate::crs::CrsError>>,
    statement: &DemStatement,
    role: RasterRole,
) -> Result<CrsDefinition, TerrainError> {
    let refused = |source| TerrainError::Crs {
        path: path.to_owned(),
        source,
        option: role.crs_option(),
    };
    let stated = statement
        .crs
        .as_deref()
        .map(CrsDefinition::from_text)
        .transpose()
        .map_err(refused)?;
    match (file, stated) {
        (None, None) => Err(TerrainError::NoCrs {
            path: path.to_owned(),
            option: role.crs_option(),
        }),
        (Some(file), None) => file.map_err(refused),
        (None | Some(Err(_)), Some(stated)) => Ok(stated),
        (Some(Ok(file)), Some(stated)) => {
            let known = crate::crs::Projector::new(file.horizontal.clone()).is_ok();
            if known && !is_same(&file.horizontal, &stated.horizontal) {
                return Err(TerrainError::Contradiction {
                    path: path.to_owned(),
                    what: "coordinate reference system",
                    file: file.horizontal.name().to_owned(),
                    option: role.crs_option(),
                    stated: stated.horizontal.name().to_owned(),
                });
            }
            Ok(CrsDefinition {
                horizontal: stated.horizontal,
                vertical: file.vertical.or(stated.vertical),
            })
        }
    }
}

fn is_same(file: &HorizontalCrs, stated: &HorizontalCrs) -> bool {
    file.definition() == stated.definition() || file.name() == stated.name()
}

/// The unit of the heights.
pub(super) fn unit(
    path: &Path,
    band: &str,
    vertical: Option<&VerticalCrs>,
    statement: &DemStatement,
    role: RasterRole,
) -> Result<LengthUnit, TerrainError> {
    let what = "vertical unit";
    let not_understood = |text: &str| TerrainError::NotUnderstood {
        path: path.to_owned(),
        what,
        text: text.to_owned(),
        accepted: LengthUnit::ACCEPTED,
    };
    let mut claims = Vec::new();
    let band = band.trim();
    if !NO_UNIT.contains(&band.to_ascii_lowercase().as_str()) {
        claims.push(band.parse().map_err(|_| not_understood(band))?);
    }
    if let Some(metres) = vertical.and_then(|vertical| vertical.metres_per_unit) {
        let axis = LengthUnit::from_metres(metres);
        let axis = axis.ok_or_else(|| not_understood(&format!("{metres} m")))?;
        if !claims.contains(&axis) {
            claims.push(axis);
        }
    }
    agreed(
        &claims,
        statement.unit,
        path,
        what,
        role.unit_option(),
        LengthUnit::ACCEPTED,
    )
}

/// The datum of the heights.
pub(super) fn datum(
    path: &Path,
    vertical: Option<&VerticalCrs>,
    statement: &DemStatement,
    role: RasterRole,
) -> Result<VerticalDatum, TerrainError> {
    let what = "vertical datum";
    let mut claims = Vec::new();
    if let Some(vertical) = vertical {
        let not_elevations = |found| TerrainError::NotElevations {
            path: path.to_owned(),
            found,
            name: vertical.name.clone(),
        };
        match vertical.axis {
            VerticalAxis::Ellipsoidal => return Err(not_elevations("above the ellipsoid")),
            VerticalAxis::Depth => return Err(not_elevations("depths, counted downwards")),
            VerticalAxis::Height => {}
        }
        let datum = vertical.datum.ok_or_else(|| TerrainError::NotUnderstood {
            path: path.to_owned(),
            what,
            text: vertical.name.clone(),
            accepted: VerticalDatum::ACCEPTED,
        })?;
        claims.push(datum);
    }
    agreed(
        &claims,
        statement.datum,
        path,
        what,
        role.datum_option(),
        VerticalDatum::ACCEPTED,
    )
}

/// What the file claims, in one or several places, against what the user states. Where the
/// file contradicts itself the user decides between its claims.
fn agreed<T: Copy + PartialEq + std::fmt::Display>(
    claims: &[T],
    stated: Option<T>,
    path: &Path,
    what: &'static str,
    option: &'static str,
    accepted: &'static str,
) -> Result<T, TerrainError> {
    match (claims, stated) {
        ([], None) => Err(TerrainError::NotStated {
            path: path.to_owned(),
            what,
            option,
            accepted,
        }),
        ([], Some(stated)) => Ok(stated),
        (claims, Some(stated)) if claims.contains(&stated) => Ok(stated),
        ([first, rest @ ..], None) if rest.iter().all(|claim| claim == first) => Ok(*first),
        (claims, stated) => Err(TerrainError::Contradiction {
            path: path.to_owned(),
            what,
            file: claims
                .iter()
                .map(ToString::to_string)
                .collect::<Vec<_>>()
                .join(" and "),
            option,
            stated: stated.map_or_else(|| "nothing".to_owned(), |stated| stated.to_string()),
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path() -> &'static Path {
        Path::new("dem.tif")
    }

    fn stating(unit: Option<LengthUnit>) -> DemStatement {
        DemStatement {
            unit,
            ..DemStatement::default()
        }
    }

    #[test]
    fn nothing_is_assumed() {
        let error = unit(path(), "", None, &stating(None), RasterRole::Terrain).unwrap_err();
        assert!(error.to_string().contains("--dem-unit"), "{error}");
        let error = datum(path(), None, &stating(None), RasterRole::Terrain).unwrap_err();
        assert!(error.to_string().contains("--dem-datum"), "{error}");
    }

    #[test]
    fn file_and_user_have_to_agree() {
        let foot = Some(LengthUnit::Foot);
        assert_eq!(
            unit(path(), "ft", None, &stating(foot), RasterRole::Terrain),
            Ok(LengthUnit::Foot)
        );
        let error = unit(path(), "metre", None, &stating(foot), RasterRole::Terrain).unwrap_err();
        let text = error.to_string();
        assert!(text.contains("\"m\"") && text.contains("\"ft\""), "{text}");
    }

    #[test]
    fn a_unit_that_is_no_length_is_refused() {
        assert!(
            unit(
                path(),
                "arc-second",
                None,
                &stating(Some(LengthUnit::Metre)),
                RasterRole::Terrain
            )
            .is_err()
        );
    }

    #[test]
    fn a_file_that_contradicts_itself_is_settled_by_the_user() {
        let vertical = CrsDefinition::from_text("EPSG:2263+6360").unwrap().vertical;
        let vertical = vertical.as_ref();
        let metre = Some(LengthUnit::Metre);
        assert!(unit(path(), "m", vertical, &stating(None), RasterRole::Terrain).is_err());
        assert_eq!(
            unit(path(), "m", vertical, &stating(metre), RasterRole::Terrain),
            Ok(LengthUnit::Metre)
        );
    }
}
