//! A definition taken apart: horizontal part, vertical part.

use gdal::spatial_ref::SpatialRef;
use serde_json::Value;

use super::vertical::VerticalAxis;
use super::{CrsError, HorizontalCrs, VerticalCrs};
use crate::gis;

/// A coordinate reference system as a file or a user states it.
#[derive(Clone, Debug, PartialEq)]
pub struct CrsDefinition {
    /// The part that places points on the earth.
    pub horizontal: HorizontalCrs,
    /// The part that counts heights, where there is one.
    pub vertical: Option<VerticalCrs>,
}

impl CrsDefinition {
    /// Takes apart the system that GDAL read from a file.
    ///
    /// # Errors
    /// [`CrsError`] where it does not place points on the earth.
    pub fn from_spatial_ref(spatial_ref: &SpatialRef) -> Result<Self, CrsError> {
        let (json, heard) = gis::heard(|| spatial_ref.to_projjson());
        let name = || spatial_ref.name().unwrap_or_default();
        let json = json.map_err(|error| CrsError::Unreadable {
            definition: name(),
            detail: if heard.is_empty() {
                error.to_string()
            } else {
                heard
            },
        })?;
        let json = serde_json::from_str(&json).map_err(|error| CrsError::Unreadable {
            definition: name(),
            detail: error.to_string(),
        })?;
        Self::from_projjson(&json)
    }

    /// Reads what a user wrote: `EPSG:26918`, `EPSG:4269+5703`, WKT, PROJJSON or a PROJ
    /// string.
    ///
    /// # Errors
    /// [`CrsError`] quoting the text.
    ///
    /// ```
    /// use sillmark::crs::CrsDefinition;
    /// let crs = CrsDefinition::from_text("EPSG:4269+5703")?;
    /// assert!(crs.horizontal.is_geographic());
    /// assert!(crs.vertical.is_some());
    /// # Ok::<(), sillmark::crs::CrsError>(())
    /// ```
    pub fn from_text(text: &str) -> Result<Self, CrsError> {
        gis::start();
        let unreadable = |detail: String| CrsError::Unreadable {
            definition: text.to_owned(),
            detail,
        };
        // GDAL would also take file names and addresses here.
        if !is_definition(text.trim()) {
            return Err(unreadable(String::new()));
        }
        let (spatial_ref, heard) = gis::heard(|| SpatialRef::from_definition(text.trim()));
        Self::from_spatial_ref(&spatial_ref.map_err(|_| unreadable(heard))?)
    }

    fn from_projjson(json: &Value) -> Result<Self, CrsError> {
        if json["type"] == "CompoundCRS" {
            let vertical = VerticalCrs::from_projjson(&json["components"][1]);
            return Ok(Self {
                horizontal: HorizontalCrs::from_projjson(&json["components"][0])?,
                vertical: Some(vertical),
            });
        }
        let axes = json["coordinate_system"]["axis"].as_array();
        let vertical = axes.and_then(|axes| axes.get(2)).map(|axis| VerticalCrs {
            name: json["name"].as_str().unwrap_or_default().to_owned(),
            datum: None,
            axis: VerticalAxis::Ellipsoidal,
            metres_per_unit: super::horizontal::unit_factor(&axis["unit"]),
        });
        Ok(Self {
            horizontal: HorizontalCrs::from_projjson(json)?,
            vertical,
        })
    }
}

/// Whether a text looks like a definition rather than a file name or an address.
fn is_definition(text: &str) -> bool {
    let code = text.split_once(':').is_some_and(|(authority, code)| {
        let plain = |character: char| {
            character.is_ascii_alphanumeric() || matches!(character, '+' | '_' | ':' | '.')
        };
        !authority.is_empty()
            && authority
                .chars()
                .all(|character| character.is_ascii_alphabetic())
            && !code.is_empty()
            && code.chars().all(plain)
    });
    let wkt = text.ends_with(']') && text.contains('[');
    code || wkt || text.starts_with('{') || text.starts_with('+')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn file_names_and_addresses_are_not_definitions() {
        for text in [
            "dem.prj",
            "/etc/passwd",
            "https://example.org/crs.wkt",
            "file:///x",
            "EPSG:",
            "",
        ] {
            assert!(CrsDefinition::from_text(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_compound_system_comes_apart() {
        let crs = CrsDefinition::from_text("EPSG:2263+6360").unwrap();
        assert_eq!(crs.horizontal.definition(), "EPSG:2263");
        assert!(!crs.horizontal.is_geographic());
        let vertical = crs.vertical.unwrap();
        assert_eq!(vertical.datum, Some(crate::quantity::VerticalDatum::Navd88));
        assert!((vertical.metres_per_unit.unwrap() - 1200.0 / 3937.0).abs() < 1e-12);
    }

    #[test]
    fn heights_above_the_ellipsoid_are_told_apart() {
        let crs = CrsDefinition::from_text("EPSG:4979").unwrap();
        assert_eq!(crs.vertical.unwrap().axis, VerticalAxis::Ellipsoidal);
    }

    #[test]
    fn earth_centred_systems_are_refused() {
        let error = CrsDefinition::from_text("EPSG:4978").unwrap_err();
        assert!(
            error.to_string().contains("geographic or projected"),
            "{error}"
        );
    }
}
