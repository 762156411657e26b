//! Rasters of water as sources, for every flood that one is given for.

use super::{
    LevelError, LevelSource, MapLevels, MapQuestion, RasterAnswer, Silence, depth_level,
    surface_level,
};

/// What every raster says, of whatever flood. A file does not say how well its values are
/// known; the user may, for the source as a whole ([`super::Question::level_sd`]).
pub(super) fn answers(question: &MapQuestion<'_>) -> Result<MapLevels, LevelError> {
    let mut answers = MapLevels::default();
    for surface in &question.maps.surfaces {
        let ground = question.ground.ok();
        let (raster, place) = (&surface.raster, question.location);
        let answer = surface_level(raster, surface.chance, place, ground, None)?;
        add(answer, LevelSource::SurfaceRaster, &mut answers);
    }
    for depths in &question.maps.depths {
        let ground = question.ground.cloned();
        let (raster, place) = (&depths.raster, question.location);
        let answer = depth_level(
            raster,
            depths.chance,
            place,
            &ground,
            None,
            question.terrain_sd,
        )?;
        add(answer, LevelSource::DepthRaster, &mut answers);
    }
    Ok(answers)
}

/// A remark beside a level is told with it; without one it is the reason why there is none.
fn add(answer: RasterAnswer, source: LevelSource, answers: &mut MapLevels) {
    let said = answer.remarks.iter().map(ToString::to_string);
    match answer.candidate {
        Some(candidate) => {
            answers.remarks.extend(said);
            answers.candidates.push(candidate);
        }
        None => answers
            .silent
            .extend(said.map(|why| Silence { source, why })),
    }
}
