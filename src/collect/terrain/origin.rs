//! What the crop says of where it comes from.

use super::tiff::{Field, tag};

/// Puts items among those of GDAL's metadata, which are text in XML: `<GDALMetadata>` with an
/// `<Item name="…">` each. The last one of a name counts.
pub(super) fn with_items(metadata: Option<&Field>, items: &[(&str, &str)]) -> Field {
    const END: &str = "</GDALMetadata>";
    let text = metadata.and_then(|field| field.value.as_deref());
    let text = String::from_utf8_lossy(text.unwrap_or_default());
    let text = text.trim_end_matches('\0');
    // What is not closed GDAL cannot read, and takes nothing from it.
    let (before, after) = text
        .rfind(END)
        .map_or(("<GDALMetadata>\n", END), |end| text.split_at(end));
    let mut merged = before.to_owned();
    for (name, value) in items {
        merged.push_str("  <Item name=\"");
        merged.push_str(name);
        merged.push_str("\">");
        for letter in value.chars() {
            match letter {
                '&' => merged.push_str("&amp;"),
                '<' => merged.push_str("&lt;"),
                '>' => merged.push_str("&gt;"),
                letter if letter.is_control() => merged.push(' '),
                letter => merged.push(letter),
            }
        }
        merged.push_str("</Item>\n");
    }
    merged.push_str(after);
    merged.push('\0');
    Field::of(tag::GDAL_METADATA, tag::ASCII, merged.into_bytes())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(field: Option<&Field>) -> String {
        let merged = with_items(field, &[("A", "x?a=1&b=<2>")]);
        String::from_utf8(merged.value.unwrap()).unwrap()
    }

    #[test]
    fn items_go_among_those_that_are_there() {
        let item = "  <Item name=\"A\">x?a=1&amp;b=&lt;2&gt;</Item>\n";
        assert_eq!(
            text(None),
            format!("<GDALMetadata>\n{item}</GDALMetadata>\0")
        );
        let there = "<GDALMetadata>\n  <Item name=\"B\">1</Item>\n";
        let whole = format!("{there}</GDALMetadata>\n\0").into_bytes();
        let field = Field::of(tag::GDAL_METADATA, tag::ASCII, whole);
        assert_eq!(
            text(Some(&field)),
            format!("{there}{item}</GDALMetadata>\n\0")
        );
    }

    #[test]
    fn what_is_no_metadata_is_left_out() {
        let field = Field::of(
            tag::GDAL_METADATA,
            tag::ASCII,
            b"<GDALMetadata><Item".to_vec(),
        );
        assert!(text(Some(&field)).starts_with("<GDALMetadata>\n  <Item name=\"A\">"));
    }
}
