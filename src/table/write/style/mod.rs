//! A style in a `GeoPackage`, so that a desktop GIS draws the layer at once.
//!
//! The style lies in a table `layer_styles`, as desktop GIS programs share it; it is no part
//! of the OGC standard. It holds the style twice: as OGC Styled Layer Descriptor 1.1
//! (05-078r4) with Symbology Encoding 1.1 (05-077r4), and as a QML document.

mod qml;
mod sld;

use gdal::Dataset;
use gdal::errors::GdalError;
use gdal::vector::{Defn, Feature, FieldDefn, LayerAccess, LayerOptions};
use gdal_sys::{OGRFieldType, OGRwkbGeometryType};

/// A colour for each value of a column. Rows with another value are not drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClassStyle {
    /// The column's name.
    pub column: String,
    /// The classes, in the order of the legend.
    pub classes: Vec<StyleClass>,
}

/// One value of a column, and how it is drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StyleClass {
    /// The value in the column.
    pub value: String,
    /// What the legend calls it.
    pub label: String,
    /// Red, green and blue.
    pub colour: [u8; 3],
}

/// Diameter of a point on the map, pixels (common practice, no source).
const SIZE: u8 = 8;

/// The table's name.
pub(in crate::table) const TABLE: &str = "layer_styles";

/// Adds the style of a layer to the file that the layer is in.
///
/// # Errors
/// What GDAL says.
pub fn add_style(file: &mut Dataset, layer: &str, style: &ClassStyle) -> Result<(), GdalError> {
    let geometry = geometry_of(file, layer)?;
    let table = file.create_layer(LayerOptions {
        name: TABLE,
        srs: None,
        ty: OGRwkbGeometryType::wkbNone,
        options: Some(&["FID=id"]),
    })?;
    let (qml, sld) = (qml::document(style), sld::document(layer, style));
    let texts = [
        ("f_table_catalog", ""),
        ("f_table_schema", ""),
        ("f_table_name", layer),
        ("f_geometry_column", &geometry),
        ("styleName", layer),
        ("styleQML", &qml),
        ("styleSLD", &sld),
        ("description", "a colour for each class"),
        ("owner", ""),
        ("ui", ""),
    ];
    for (name, _) in texts {
        FieldDefn::new(name, OGRFieldType::OFTString)?.add_to_layer(&table)?;
    }
    FieldDefn::new("useAsDefault", OGRFieldType::OFTInteger)?.add_to_layer(&table)?;
    FieldDefn::new("update_time", OGRFieldType::OFTDateTime)?.add_to_layer(&table)?;
    let defn = Defn::from_layer(&table);
    let mut row = Feature::new(&defn)?;
    for (index, (_, text)) in texts.iter().enumerate() {
        row.set_field_string(index, text)?;
    }
    row.set_field_integer(texts.len(), 1)?;
    row.create(&table)
}

fn geometry_of(file: &Dataset, layer: &str) -> Result<String, GdalError> {
    let layer = file.layer_by_name(layer)?;
    let name = layer.defn().geom_fields().next().map(|field| field.name());
    Ok(name.unwrap_or_default())
}

/// A text within an XML element or attribute.
fn escaped(text: &str) -> String {
    text.chars()
        // Other control characters have no form in XML 1.0.
        .filter(|character| !character.is_control() || matches!(character, '\t' | '\n' | '\r'))
        .map(|character| match character {
            '&' => "&amp;".to_owned(),
            '<' => "&lt;".to_owned(),
            '>' => "&gt;".to_owned(),
            '"' => "&quot;".to_owned(),
            '\'' => "&apos;".to_owned(),
            other => other.to_string(),
        })
        .collect()
}
