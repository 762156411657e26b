//! The part of flowing water.

use crate::load::case::{LoadPart, Outside, WaterCase, WaterLoad};
use crate::load::reference::common_practice;
use crate::load::{Flow, LoadError, fastest_for_velocity_head};

pub(super) fn add(case: &WaterCase, load: &mut WaterLoad) -> Result<(), LoadError> {
    let Some(velocity) = case.velocity else {
        load.miss(LoadPart::Flow, "no velocity is stated");
        return Ok(());
    };
    let flow = Flow {
        velocity,
        ground: case.ground(),
        surface: load.surface(case),
        salinity: case.salinity,
        head_coefficient: case.head_coefficient,
        wall_width: case.wall_width,
    };
    let found = flow.load()?;
    if found.profile.is_empty() {
        load.leave_out(LoadPart::Flow, "no water flows over the ground at the wall");
        return Ok(());
    }
    if velocity > fastest_for_velocity_head() {
        load.outside.push(match case.wall_width {
            Some(_) => Outside::FasterThanVelocityHead,
            None => Outside::DragWithoutWidth,
        });
    }
    for citation in &found.references {
        load.cite(LoadPart::Flow, citation.clone());
    }
    if load.breaking_wave.is_some() {
        load.cite(
            LoadPart::Flow,
            common_practice("added to breaking waves in full, the safe side"),
        );
    }
    load.flow = found.profile.clone();
    load.flow_method = Some(found);
    Ok(())
}
