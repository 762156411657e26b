//! Vertical datums, and the grids that lead from one to another.

use sillmark::crs::{COMMON_DATUM_PAIRS, Datums};
use sillmark::quantity::{UnitSystem, VerticalDatum};

use super::list::List;
use crate::cli::arguments::CatalogOptions;
use crate::cli::failure::Failure;
use crate::cli::inputs;

pub(super) fn list(options: &CatalogOptions) -> Result<String, Failure> {
    let mut list = List::default();
    if let Some((from, to)) = options.pair {
        let datums = inputs::datums(&options.datums, Vec::new())?;
        conversion(&mut list, &datums, from, to)?;
        return Ok(list.0);
    }
    for datum in VerticalDatum::all_named() {
        let code = datum
            .epsg()
            .map_or_else(|| "no EPSG code".to_owned(), |code| format!("EPSG:{code}"));
        list.entry(
            &datum.to_string(),
            &format!("{}, {code}", datum.full_name()),
        );
        if !datum.is_one_surface() {
            list.detail("another surface at each tide gauge: read from files, never compared");
        }
    }
    list.entry(
        "EPSG:n",
        "any other vertical coordinate system of the EPSG Dataset, by its code",
    );
    let datums = inputs::datums(&options.datums, Vec::new())?;
    for (from, to) in COMMON_DATUM_PAIRS {
        conversion(&mut list, &datums, from, to)?;
    }
    Ok(list.0)
}

/// Which grids lead from one datum to another, and which of them are here.
fn conversion(
    list: &mut List,
    datums: &Datums,
    from: VerticalDatum,
    to: VerticalDatum,
) -> Result<(), Failure> {
    let grids = datums.grid_report(from, to).map_err(Failure::input)?;
    let missing = grids.iter().filter(|grid| !grid.is_present()).count();
    list.entry(
        &format!("{from} to {to}"),
        &match (grids.len(), missing) {
            (0, _) => "no grid is needed".to_owned(),
            (all, 0) => format!("grids: {all}, all here"),
            (all, missing) => format!("grids: {all}, of which {missing} are missing"),
        },
    );
    for grid in grids {
        let state = match (&grid.found, &grid.address) {
            (Some(path), _) => format!("here: {}", path.display()),
            (None, Some(address)) => format!("missing; PROJ's project offers it at {address}"),
            (None, None) => "missing".to_owned(),
        };
        let area = grid
            .area
            .filter(|area| !area.name.is_empty())
            .map(|area| format!(", {}", area.name))
            .unwrap_or_default();
        let accuracy = grid
            .accuracy
            .map(|accuracy| format!(", accuracy {}", UnitSystem::Si.height(accuracy)));
        list.detail(&format!(
            "{}: {}{}{area}; {state}",
            grid.file,
            grid.operation,
            accuracy.unwrap_or_default()
        ));
    }
    Ok(())
}
