//! The style in a `GeoPackage`.

use gdal::Dataset;
use gdal::vector::LayerAccess;
use sillmark::table::{ClassStyle, StyleClass, TableFormat, convert};

use super::formats::{WORK, columns, points};
use super::{csv, rows_in};

#[test]
fn the_style_is_beside_the_layer_and_its_documents_are_well_formed() {
    let folder = tempfile::tempdir().unwrap();
    let work = csv(&folder, WORK);
    let target = folder.path().join("out.gpkg");
    let class = |value: &str, label: &str, colour| StyleClass {
        value: value.to_owned(),
        label: label.to_owned(),
        colour,
    };
    let style = ClassStyle {
        column: "id".to_owned(),
        classes: vec![
            class("007", "seven & <more>", [1, 128, 255]),
            class("\"quoted\" 'value'", "b", [0, 0, 0]),
        ],
    };
    let points = points("EPSG:4326");
    let format = TableFormat::GeoPackage;
    convert(
        &work,
        &columns(),
        Some(&points),
        &target,
        format,
        "openings",
        Some(&style),
    )
    .unwrap();
    // The table of styles is no second layer to choose from.
    assert_eq!(rows_in(&target, format, 1000).len(), 4);

    let file = Dataset::open(&target).unwrap();
    let mut table = file.layer_by_name("layer_styles").unwrap();
    let row = table.features().next().unwrap();
    let text = |name: &str| {
        let index = row.field_index(name).unwrap();
        row.field_as_string(index).unwrap().unwrap()
    };
    assert_eq!(text("f_table_name"), "openings");
    assert_eq!(text("f_geometry_column"), "geom");
    assert_eq!(text("useAsDefault"), "1");
    assert!(text("styleSLD").contains("<se:SvgParameter name=\"fill\">#0180ff</se:SvgParameter>"));
    assert!(text("styleQML").contains("value=\"1,128,255,255\""));
    for document in [text("styleSLD"), text("styleQML")] {
        assert_well_formed(&document);
        assert!(document.contains("seven &amp; &lt;more&gt;"));
    }
}

/// Every element that is opened is closed in its turn, and nothing is left unescaped.
fn assert_well_formed(document: &str) {
    let mut open = Vec::new();
    let mut rest = document;
    while let Some(start) = rest.find('<') {
        assert!(!rest[..start].contains('>'), "{}", &rest[..start]);
        let end = start + rest[start..].find('>').unwrap();
        let tag = &rest[start + 1..end];
        rest = &rest[end + 1..];
        if let Some(name) = tag.strip_prefix('/') {
            assert_eq!(open.pop(), Some(name));
        } else if !tag.starts_with('?') {
            assert_eq!(tag.matches('"').count() % 2, 0, "{tag}");
            if !tag.ends_with('/') {
                open.push(tag.split_whitespace().next().unwrap());
            }
        }
    }
    assert!(open.is_empty() && rest.trim().is_empty(), "{open:?}");
    let mut entities = document.split('&').skip(1);
    let known = ["amp;", "lt;", "gt;", "quot;", "apos;"];
    assert!(entities.all(|rest| known.iter().any(|name| rest.starts_with(name))));
}
