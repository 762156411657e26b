//! What a file says of its own date.

use gdal::Metadata;

/// When an image was made, by its TIFF tag `DateTime` (TIFF 6.0, section 8): `YYYY:MM:DD
/// HH:MM:SS`. Told as a date of the calendar where it is one, else as it stands.
const IMAGE_MADE: &str = "TIFFTAG_DATETIME";

/// When the attribute table of a shapefile was last changed, by the header of its dBASE file.
const TABLE_CHANGED: &str = "DBF_DATE_LAST_UPDATE";

/// What a raster or layer says of its date, in words; `None` where it says nothing. It is the
/// file's own date, not the day on which a map took effect.
pub(crate) fn stated_date(of: &impl Metadata) -> Option<String> {
    let item = |key| {
        let text = of.metadata_item(key, "")?;
        let text = text.trim().to_owned();
        (!text.is_empty()).then_some(text)
    };
    if let Some(made) = item(IMAGE_MADE) {
        return Some(format!("image made {}", day(&made)));
    }
    item(TABLE_CHANGED).map(|changed| format!("table last changed {changed}"))
}

/// `2014-05-01` of `2014:05:01 12:30:00`.
fn day(tag: &str) -> String {
    let date = tag.split_whitespace().next().unwrap_or(tag);
    let parts: Vec<&str> = date.split(':').collect();
    let is_number = |part: &&str| part.bytes().all(|byte| byte.is_ascii_digit());
    match parts.as_slice() {
        [year, month, day]
            if [year, month, day].into_iter().all(is_number)
                && (year.len(), month.len(), day.len()) == (4, 2, 2) =>
        {
            format!("{year}-{month}-{day}")
        }
        _ => tag.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::day;

    #[test]
    fn a_tag_is_told_as_a_day() {
        assert_eq!(day("2014:05:01 12:30:00"), "2014-05-01");
        assert_eq!(day("May 2014"), "May 2014");
        assert_eq!(day("2014:5:1"), "2014:5:1");
    }
}
