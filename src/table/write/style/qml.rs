//! The style as a QML document: one symbol for each class.

use super::{ClassStyle, SIZE, StyleClass, escaped};

/// The document for the points of a layer.
pub(super) fn document(style: &ClassStyle) -> String {
    let column = escaped(&style.column);
    let classes = || style.classes.iter().enumerate();
    let categories: String = classes()
        .map(|(index, class)| category(index, class))
        .collect();
    let symbols: String = classes()
        .map(|(index, class)| symbol(index, class))
        .collect();
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

fn category(index: usize, class: &StyleClass) -> String {
    let (value, label) = (escaped(&class.value), escaped(&class.label));
    format!(
        r#"<category value="{value}" label="{label}" symbol="{index}" type="string" render="true"/>
"#
    )
}

fn symbol(index: usize, class: &StyleClass) -> String {
    let [red, green, blue] = class.colour;
    format!(
        r#"<symbol type="marker" name="{index}" alpha="1"><layer class="SimpleMarker" enabled="1" locked="0" pass="0"><Option type="Map">
<Option name="name" type="QString" value="circle"/>
<Option name="color" type="QString" value="{red},{green},{blue},255"/>
<Option name="size" type="QString" value="{SIZE}"/>
<Option name="size_unit" type="QString" value="Pixel"/>
</Option></layer></symbol>
"#
    )
}
