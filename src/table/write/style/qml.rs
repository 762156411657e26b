//! The style as a QML document: one symbol for each class.

use super::{ClassStyle, SIZE, escaped};

/// The document for the points of a layer.
pub(super) fn document(style: &ClassStyle) -> String {
    let column = escaped(&style.column);
    let (mut categories, mut symbols) = (String::new(), String::new());
    for (index, class) in style.classes.iter().enumerate() {
        let (value, label) = (escaped(&class.value), escaped(&class.label));
        let [red, green, blue] = class.colour;
        categories += &format!(
            r#"<category value="{value}" label="{label}" symbol="{index}" type="string" render="true"/>
"#
        );
        symbols += &format!(
            r#"<symbol type="marker" name="{index}" alpha="1"><layer class="SimpleMarker" enabled="1" locked="0" pass="0"><Option type="Map"><Option name="name" type="QString" value="circle"/><Option name="color" type="QString" value="{red},{green},{blue},255"/><Option name="size" type="QString" value="{SIZE}"/><Option name="size_unit" type="QString" value="Pixel"/></Option></layer></symbol>
"#
        );
    }
    format!(
        r#"<qgis version="3.0" styleCategories="Symbology">
<renderer-v2 type="categorizedSymbol" attr="{column}" symbollevels="0" enableorderby="0" forceraster="0">
<categories>
{categories}</categories>
<symbols>
{symbols}</symbols>
</renderer-v2>
</qgis>
"#
    )
}
