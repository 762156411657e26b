//! The input: its format, its columns, its coordinates.

use sillmark::assess::Detail;
use sillmark::crs::HorizontalCrs;
use sillmark::portfolio::{
    BLOCK_BYTES, Columns, Coordinates, Mapping, Plan, Role, SameIds, StatedForAll, id_hash,
};
use sillmark::quantity::UnitSystem;
use sillmark::statement::{Place, Stated};
use sillmark::table::{Position, TableFormat, TableReader};

use super::open::Opener;
use crate::cli::arguments::PortfolioOptions;
use crate::cli::failure::Failure;
use crate::cli::method::{OfSite, method};

/// Opens the table.
pub(super) fn open(options: &PortfolioOptions) -> Result<TableReader, Failure> {
    let format = options
        .from
        .as_deref()
        .map(|name| format("--from", name))
        .transpose()?;
    let path = &options.table;
    if path.as_os_str() == "-" {
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

pub(super) fn format(option: &str, name: &str) -> Result<TableFormat, Failure> {
    let place = Place::Option(format!("option {option}").into());
    let stated = Stated::new("format", name, place);
    TableFormat::from_name(name).ok_or_else(|| {
        let names = TableFormat::ALL.map(TableFormat::name).join(", ");
        Failure::input(stated.refuse("there is no such format", names))
    })
}

/// What the run does.
pub(super) fn plan(
    options: &PortfolioOptions,
    reader: &TableReader,
    opener: &Opener<'_>,
) -> Result<Plan, Failure> {
    let mapping = Mapping::read(&options.map).map_err(Failure::input)?;
    let for_all = StatedForAll {
        unit: options.threshold_unit,
        datum: options.threshold_datum,
    };
    let name = super::name(options);
    let columns = Columns::find(
        &name,
        reader.columns(),
        &mapping,
        reader.has_points(),
        for_all,
    );
    let mut columns = columns.map_err(Failure::input)?;
    let crs = crs(opener, reader, &mut columns, &name)?;
    let units = options.units.map(UnitSystem::from);
    let method = method(
        &options.method,
        &options.maps.dem,
        &OfSite::default(),
        units.unwrap_or(UnitSystem::Si),
        Detail::Figures,
    )?;
    Ok(Plan {
        crs,
        columns,
        method,
        units,
        terrain_datum: opener.terrain_datum,
        threads: opener.threads,
        batch_bytes: opener.memory.batch,
    })
}

/// The system of the coordinates; `None` for WGS 84. That of a table's points is theirs, and
/// that of columns x and y where nothing else is stated; columns longitude and latitude are not
/// in it.
fn crs(
    opener: &Opener<'_>,
    reader: &TableReader,
    columns: &mut Columns,
    name: &str,
) -> Result<Option<HorizontalCrs>, Failure> {
    let stated = opener.crs.as_ref().map(|crs| &crs.horizontal);
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

/// Goes to where an unfinished run stopped; the ids before it count as well.
pub(super) fn skip_to(
    reader: &mut TableReader,
    position: Position,
    columns: &Columns,
    ids: &mut SameIds,
) -> Result<(), Failure> {
    while let Some(block) = reader.next_block(BLOCK_BYTES).map_err(Failure::input)? {
        let mut found = Vec::new();
        let mut records = block.records();
        while let Some(record) = records.next() {
            let Ok(record) = record else { continue };
            let text = |role| columns.at(role).map_or("", |column| record.get(column));
            if !text(Role::Id).is_empty() {
                found.push((id_hash(text(Role::Id), text(Role::Opening)), record.line()));
            }
        }
        ids.add(&found).map_err(Failure::other)?;
        if block.end() == position {
            return Ok(());
        }
    }
    Err(Failure::input(
        "option --resume: the table ends before the place where the unfinished run stopped; \
         accepted: the table as it was then",
    ))
}
