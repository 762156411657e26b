//! Where buildings stand, for what is asked of services.

use std::path::Path;

use sillmark::collect::Places;
use sillmark::crs::Projector;
use sillmark::portfolio::{BLOCK_BYTES, Columns, Mapping, ToPlace, row_place};

use super::arguments::TableOptions;
use super::failure::{Failure, note};
use super::tables::{is_stdin, open_table, stated_crs, table_crs, table_name};

/// The places of a table's rows. Rows without one are left out, and counted on stderr: what is
/// made of the table afterwards says what is wrong with each.
pub(super) fn places_of_table(path: &Path, options: &TableOptions) -> Result<Places, Failure> {
    if is_stdin(path) {
        return Err(Failure::input(
            "a table on stdin can be read only once, and a service is asked for what lies around \
             its places; accepted: a file, or the maps of `sillmark collect`",
        ));
    }
    let mut reader = open_table(path, options)?;
    let name = table_name(path);
    let mapping = Mapping::read(&options.map).map_err(Failure::input)?;
    let columns = Columns::find_places(&name, reader.columns(), &mapping, reader.has_points());
    let mut columns = columns.map_err(Failure::input)?;
    let stated = stated_crs(options)?;
    let crs = table_crs(stated.as_ref(), &reader, &mut columns, &name)?;
    let projector = crs
        .map(Projector::new)
        .transpose()
        .map_err(Failure::input)?;
    let to_place = projector.as_ref().map(|projector| {
        let to_place = move |x, y| projector.location(x, y);
        Box::new(to_place) as Box<ToPlace<'_>>
    });
    let mut places = Places::default();
    let mut without = 0_u64;
    while let Some(block) = reader.next_block(BLOCK_BYTES).map_err(Failure::input)? {
        let mut records = block.records();
        while let Some(record) = records.next() {
            let place = record.map(|record| row_place(&record, &columns, to_place.as_deref()));
            match place {
                Ok(Ok(place)) => places.add(place),
                Ok(Err(_)) | Err(_) => without += 1,
            }
        }
    }
    if without > 0 {
        let rows = if without == 1 { "row has" } else { "rows have" };
        note(&format!(
            "{name}: {without} {rows} no place that could be read"
        ));
    }
    Ok(places)
}
