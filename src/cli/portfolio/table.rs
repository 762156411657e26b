//! What a run does with its table, and where it goes on.

use sillmark::assess::Detail;
use sillmark::portfolio::{
    BLOCK_BYTES, Columns, Mapping, Plan, Role, SameIds, StatedForAll, id_hash,
};
use sillmark::quantity::UnitSystem;
use sillmark::table::{Position, TableReader};

use super::open::Opener;
use crate::cli::arguments::PortfolioOptions;
use crate::cli::failure::Failure;
use crate::cli::method::{OfSite, method};
use crate::cli::tables::{table_crs, table_name};

/// What the run does.
pub(super) fn plan(
    options: &PortfolioOptions,
    reader: &TableReader,
    opener: &Opener<'_>,
) -> Result<Plan, Failure> {
    let mapping = Mapping::read(&options.reading.map).map_err(Failure::input)?;
    let for_all = StatedForAll {
        unit: options.threshold_unit,
        datum: options.threshold_datum,
    };
    let name = table_name(&options.table);
    let columns = Columns::find(
        &name,
        reader.columns(),
        &mapping,
        reader.has_points(),
        for_all,
    );
    let mut columns = columns.map_err(Failure::input)?;
    let crs = table_crs(opener.crs.as_ref(), reader, &mut columns, &name)?;
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
