//! The part of a coordinate reference system that places points on the earth.

use gdal::spatial_ref::SpatialRef;
use serde_json::Value;

use super::CrsError;
use crate::gis;

/// A geographic or projected coordinate reference system.
#[derive(Clone, Debug, PartialEq)]
pub struct HorizontalCrs {
    definition: String,
    name: String,
    is_geographic: bool,
    is_north_first: bool,
    metres_per_unit: Option<f64>,
}

impl HorizontalCrs {
    /// The text that PROJ is given: the authority's code, or PROJJSON where it has none.
    #[must_use]
    pub fn definition(&self) -> &str {
        &self.definition
    }

    /// The system's name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Whether coordinates are degrees of longitude and latitude.
    #[must_use]
    pub const fn is_geographic(&self) -> bool {
        self.is_geographic
    }

    /// Whether its authority puts latitude or northing first. Files store x (east) first all
    /// the same.
    pub(crate) const fn is_north_first(&self) -> bool {
        self.is_north_first
    }

    /// Metres in one unit of a projected system; `None` for a geographic one.
    #[must_use]
    pub const fn metres_per_unit(&self) -> Option<f64> {
        self.metres_per_unit
    }

    /// The system as PROJJSON, for files that state it so.
    ///
    /// # Errors
    /// [`CrsError::Unreadable`] where PROJ does not know the code.
    pub fn to_projjson(&self) -> Result<Value, CrsError> {
        let (json, heard) = gis::heard(|| {
            SpatialRef::from_definition(&self.definition).and_then(|crs| crs.to_projjson())
        });
        let unreadable = |detail: String| CrsError::Unreadable {
            definition: self.definition.clone(),
            detail,
        };
        let json = json.map_err(|_| unreadable(heard))?;
        serde_json::from_str(&json).map_err(|error| unreadable(error.to_string()))
    }

    pub(super) fn from_projjson(json: &Value) -> Result<Self, CrsError> {
        // A bound system carries its own transformation to WGS 84, so that it is PROJ's
        // definition, while its source has the name and the axes.
        let bare = if json["type"] == "BoundCRS" {
            &json["source_crs"]
        } else {
            json
        };
        let name = bare["name"].as_str().unwrap_or("unnamed").to_owned();
        let kind = bare["type"].as_str().unwrap_or_default();
        let system = &bare["coordinate_system"];
        let is_geographic = match kind {
            "GeographicCRS" | "DerivedGeographicCRS" => true,
            "GeodeticCRS" if system["subtype"] == "ellipsoidal" => true,
            "ProjectedCRS" | "DerivedProjectedCRS" => false,
            _ => {
                return Err(CrsError::NotHorizontal {
                    name,
                    kind: kind.to_owned(),
                });
            }
        };
        let unit = unit_factor(&system["axis"][0]["unit"]);
        let direction = system["axis"][0]["direction"].as_str().unwrap_or_default();
        let id = &json["id"];
        let code = match &id["code"] {
            Value::Number(code) => Some(code.to_string()),
            Value::String(code) => Some(code.clone()),
            _ => None,
        };
        let definition = match (id["authority"].as_str(), code) {
            (Some(authority), Some(code)) => format!("{authority}:{code}"),
            _ => json.to_string(),
        };
        Ok(Self {
            definition,
            name,
            is_geographic,
            is_north_first: matches!(direction, "north" | "south"),
            metres_per_unit: unit.filter(|_| !is_geographic),
        })
    }
}

/// A unit of a PROJJSON axis in metres (or radians for an angle): a name, or an object with
/// its factor.
pub(super) fn unit_factor(unit: &Value) -> Option<f64> {
    match unit {
        Value::String(name) if name == "metre" => Some(1.0),
        Value::Object(unit) => unit.get("conversion_factor").and_then(Value::as_f64),
        _ => None,
    }
}
