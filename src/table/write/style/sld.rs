//! The style as OGC Styled Layer Descriptor 1.1.

use std::fmt::Write;

use super::{ClassStyle, SIZE, StyleClass, escaped};

/// The document for a layer.
pub(super) fn document(layer: &str, style: &ClassStyle) -> String {
    let layer = escaped(layer);
    let rules: String = style
        .classes
        .iter()
        .map(|class| rule(&style.column, class))
        .collect();
    format!(
        r#"<?xml version="1.0" encoding="UTF-8"?>
<StyledLayerDescriptor version="1.1.0" xmlns="http://www.opengis.net/sld" xmlns:se="http://www.opengis.net/se" xmlns:ogc="http://www.opengis.net/ogc">
<NamedLayer>
<se:Name>{layer}</se:Name>
<UserStyle>
<se:Name>{layer}</se:Name>
<se:FeatureTypeStyle>
{rules}</se:FeatureTypeStyle>
</UserStyle>
</NamedLayer>
</StyledLayerDescriptor>
"#
    )
}

fn rule(column: &str, class: &StyleClass) -> String {
    let (column, value, label) = (
        escaped(column),
        escaped(&class.value),
        escaped(&class.label),
    );
    let mut colour = "#".to_owned();
    for part in class.colour {
        // Writing to memory does not fail.
        let _ = write!(colour, "{part:02x}");
    }
    format!(
        r#"<se:Rule>
<se:Name>{value}</se:Name>
<se:Description><se:Title>{label}</se:Title></se:Description>
<ogc:Filter><ogc:PropertyIsEqualTo><ogc:PropertyName>{column}</ogc:PropertyName><ogc:Literal>{value}</ogc:Literal></ogc:PropertyIsEqualTo></ogc:Filter>
<se:PointSymbolizer><se:Graphic>
<se:Mark><se:WellKnownName>circle</se:WellKnownName><se:Fill><se:SvgParameter name="fill">{colour}</se:SvgParameter></se:Fill></se:Mark>
<se:Size>{SIZE}</se:Size>
</se:Graphic></se:PointSymbolizer>
</se:Rule>
"#
    )
}
