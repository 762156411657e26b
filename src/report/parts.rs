//! The parts of a load that press on a barrier at the same time.

use crate::barrier::CaseLoad;
use crate::load::{LoadPart, PressureProfile, Resultant};
use crate::quantity::Length;

/// Each part with its force between the sill and the top of a barrier; parts that do not reach
/// it are left out.
pub(super) fn parts(
    load: &CaseLoad,
    height: Length,
) -> impl Iterator<Item = (LoadPart, Resultant)> {
    profiles(load, height).map(|(part, profile)| (part, profile.resultant()))
}

/// Each part with its pressure between the sill and the top of a barrier; parts that do not
/// reach it are left out.
pub(super) fn profiles(
    load: &CaseLoad,
    height: Length,
) -> impl Iterator<Item = (LoadPart, PressureProfile)> {
    let water = &load.water;
    [
        (LoadPart::StillWater, &water.still),
        (LoadPart::Flow, &water.flow),
        (LoadPart::Soil, &water.soil),
        (LoadPart::Wave, &water.wave),
    ]
    .into_iter()
    .map(move |(part, profile)| (part, profile.clipped(Length::default(), height)))
    .filter(|(_, profile)| !profile.is_empty())
}
