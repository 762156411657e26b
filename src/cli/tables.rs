//! Tables that the user names: their format, their coordinates.

use std::path::Path;

use sillmark::crs::{CrsDefinition, HorizontalCrs};
use sillmark::portfolio::{Columns, Coordinates};
use sillmark::statement::{Place, Stated};
use sillmark::table::{TableFormat, TableReader};

use super::arguments::TableOptions;
use super::failure::Failure;

/// Opens a table; - is stdin.
pub(super) fn open_table(path: &Path, options: &TableOptions) -> Result<TableReader, Failure> {
    let format = options
        .from
        .as_deref()
        .map(|name| table_format("--from", name))
        .transpose()?;
    if is_stdin(path) {
        if format.is_some_and(|format| format != TableFormat::Csv) {
            return Err(Failure::input(
                "option --from: only CSV is read from stdin; accepted: csv, or a file",
            ));
        }
        return match options.columns.as_slice() {
            [] => TableReader::from_stdin(),
            names => TableReader::without_header(None, names),
        }
        .map_err(Failure::input);
    }
    let format = match format {
        Some(format) => format,
        None => TableFormat::from_path(path).map_err(Failure::input)?,
    };
    let layer = options.layer.as_deref();
    match (options.columns.as_slice(), format) {
        ([], _) => TableReader::open(path, format, layer),
        (names, TableFormat::Csv) => TableReader::without_header(Some(path), names),
        (_, other) => {
            return Err(Failure::input(format!(
                "option --columns: {} names its columns itself; accepted: a CSV without a header line",
                other.title()
            )));
        }
    }
    .map_err(Failure::input)
}

/// The format of a name.
pub(super) fn table_format(option: &str, name: &str) -> Result<TableFormat, Failure> {
    let place = Place::Option(format!("option {option}").into());
    let stated = Stated::new("format", name, place);
    TableFormat::from_name(name).ok_or_else(|| {
        let names = TableFormat::ALL.map(TableFormat::name).join(", ");
        Failure::input(stated.refuse("there is no such format", names))
    })
}

/// What the table is called in messages.
pub(super) fn table_name(path: &Path) -> String {
    if is_stdin(path) {
        return "standard input".to_owned();
    }
    path.display().to_string()
}

/// Whether a table comes on stdin.
pub(super) fn is_stdin(path: &Path) -> bool {
    path.as_os_str() == "-"
}

/// The system that the user states.
pub(super) fn stated_crs(options: &TableOptions) -> Result<Option<CrsDefinition>, Failure> {
    let crs = options.crs.as_deref().map(|text| {
        CrsDefinition::from_text(text)
            .map_err(|error| Failure::input(format!("option --crs: {error}")))
    });
    crs.transpose()
}

/// The system of the coordinates; `None` for WGS 84. That of a table's points is theirs, and
/// that of columns x and y where nothing else is stated; columns longitude and latitude are not
/// in it.
pub(super) fn table_crs(
    stated: Option<&CrsDefinition>,
    reader: &TableReader,
    columns: &mut Columns,
    name: &str,
) -> Result<Option<HorizontalCrs>, Failure> {
    let stated = stated.map(|crs| &crs.horizontal);
    let of_points = reader.point_crs();
    let found = match (columns.coordinates, columns.degrees) {
        (Coordinates::Point, _) => {
            let found = stated.or(of_points);
            columns.degrees = found.is_none_or(HorizontalCrs::is_geographic);
            found
        }
        (Coordinates::Columns(..), true) => match stated {
            Some(crs) if !crs.is_geographic() && !columns.prefer_plane() => {
                return Err(Failure::input(format!(
                    "{name}: columns longitude, latitude: they are degrees, and option --crs \
                     names {:?}, which is not; accepted: a system of degrees, or --map x=COLUMN \
                     --map y=COLUMN",
                    crs.name()
                )));
            }
            stated => stated,
        },
        (Coordinates::Columns(..), false) => Some(stated.or(of_points).ok_or_else(|| {
            Failure::input(format!(
                "{name}: columns x, y: their coordinate system is not stated; accepted: option \
                 --crs, such as --crs EPSG:26915, or columns longitude and latitude"
            ))
        })?),
    };
    let other = found.filter(|crs| !matches!(crs.definition(), "EPSG:4326" | "OGC:CRS84"));
    Ok(other.cloned())
}
