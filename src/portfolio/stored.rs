//! Readings of many places, packed while the rows wait for their turn.

use std::collections::HashMap;
use std::sync::Arc;

use smallvec::SmallVec;

use crate::assess::{Method, Readings, Sources};
use crate::hazard::{Zone, ZoneClass, ZonesHere};
use crate::level::{GradeReach, MapLevels};
use crate::quantity::{Elevation, Length, unit::meter};
use crate::table::RecordFault;
use crate::terrain::{Gap, Grade, Ground, Terrain};

/// The readings of a place that has nothing unusual, in 32 bytes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Packed {
    ground: f64,
    lowest: f64,
    highest: f64,
    zone: u32,
    layer: u8,
    flags: u8,
    raster_of_ground: u8,
    raster_of_grade: u8,
}

const NO_ZONE: u32 = u32::MAX;

/// What the flags of [`Packed`] say.
mod flag {
    pub(super) const ON_EDGE: u8 = 1;
    pub(super) const GROUND: u8 = 2;
    pub(super) const VOID: u8 = 4;
    pub(super) const OUTSIDE: u8 = 8;
    pub(super) const NO_DATA_NEARBY: u8 = 16;
    pub(super) const AT_RIM: u8 = 32;
    pub(super) const GRADE: u8 = 64;
    pub(super) const UNUSUAL: u8 = 128;
}

/// What few places have.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Unusual {
    /// Several zones meet there, the level is counted from the ground, or other maps speak:
    /// kept as it was read.
    Read(Box<Kept>),
    /// The place cannot be read.
    Fault(Box<RecordFault>),
}

/// Readings with their zones by layer and number, which mean the same on every thread.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Kept {
    zones: SmallVec<[(u16, u32); 2]>,
    on_edge: bool,
    ground: Option<Result<Ground, Gap>>,
    grade: Option<(Grade, GradeReach)>,
    levels: MapLevels,
}

impl Packed {
    /// No zone, no terrain.
    pub(super) const NOTHING: Self = Self {
        ground: f64::NAN,
        lowest: f64::NAN,
        highest: f64::NAN,
        zone: NO_ZONE,
        layer: 0,
        flags: 0,
        raster_of_ground: 0,
        raster_of_grade: 0,
    };

    const UNUSUAL: Self = Self {
        flags: flag::UNUSUAL,
        ..Self::NOTHING
    };

    /// A place that cannot be read.
    pub(super) fn refused(fault: RecordFault) -> (Self, Option<Unusual>) {
        (Self::UNUSUAL, Some(Unusual::Fault(Box::new(fault))))
    }

    /// Packs readings; the second part is there where they do not fit.
    pub(super) fn of(readings: Readings<'_>, sources: &Sources) -> (Self, Option<Unusual>) {
        if let Some(packed) = Self::plain(&readings, sources) {
            return (packed, None);
        }
        let zones = readings.zones.zones.iter();
        let kept = Kept {
            zones: zones.filter_map(|zone| number(zone, sources)).collect(),
            on_edge: readings.zones.on_edge,
            ground: readings.ground,
            grade: readings.grade,
            levels: readings.levels,
        };
        (Self::UNUSUAL, Some(Unusual::Read(Box::new(kept))))
    }

    /// `None` where something is unusual.
    fn plain(readings: &Readings<'_>, sources: &Sources) -> Option<Self> {
        let mut packed = Self::NOTHING;
        match readings.zones.zones.as_slice() {
            [] => {}
            // Its level is counted from the highest ground, with how that was found.
            [zone] if zone.class == ZoneClass::SheetFlow => return None,
            [zone] => {
                let (layer, number) = number(zone, sources)?;
                (packed.layer, packed.zone) = (layer.try_into().ok()?, number);
            }
            _ => return None,
        }
        if !readings.levels.is_empty() {
            return None;
        }
        packed.set(flag::ON_EDGE, readings.zones.on_edge);
        let raster = |source: &Arc<str>| -> Option<u8> {
            sources.terrain.raster_number(source)?.try_into().ok()
        };
        match &readings.ground {
            None => {}
            Some(Err(Gap::Void)) => packed.flags |= flag::VOID,
            Some(Err(Gap::Outside)) => packed.flags |= flag::OUTSIDE,
            Some(Ok(ground)) => {
                packed.flags |= flag::GROUND;
                packed.set(flag::NO_DATA_NEARBY, ground.no_data_nearby);
                packed.set(flag::AT_RIM, ground.at_rim);
                packed.ground = metres(ground.elevation);
                packed.raster_of_ground = raster(&ground.source)?;
            }
        }
        match &readings.grade {
            None => {}
            Some((grade, GradeReach::Radius(_))) => {
                packed.flags |= flag::GRADE;
                packed.lowest = metres(grade.lowest);
                packed.highest = metres(grade.highest);
                packed.raster_of_grade = raster(&grade.source)?;
            }
            Some((_, GradeReach::Outline)) => return None,
        }
        Some(packed)
    }

    /// The readings again, of the place at `position` of its chunk. How many points the grade
    /// was read from is not kept: only the trail tells it.
    pub(super) fn readings<'maps>(
        self,
        position: u32,
        unusual: &mut HashMap<u32, Unusual>,
        sources: &'maps Sources,
        method: &Method,
    ) -> Result<Readings<'maps>, RecordFault> {
        let has = |flag| self.flags & flag != 0;
        if has(flag::UNUSUAL) {
            return match unusual.remove(&position) {
                Some(Unusual::Read(kept)) => Ok(kept.readings(sources)),
                Some(Unusual::Fault(fault)) => Err(*fault),
                None => Ok(Readings::default()),
            };
        }
        let terrain = &sources.terrain;
        let zone = Some((self.layer.into(), self.zone)).filter(|(_, zone)| *zone != NO_ZONE);
        Ok(Readings {
            zones: here(zone.as_slice(), has(flag::ON_EDGE), sources),
            ground: if has(flag::GROUND) {
                self.ground(terrain).map(Ok)
            } else if has(flag::VOID) {
                Some(Err(Gap::Void))
            } else {
                has(flag::OUTSIDE).then_some(Err(Gap::Outside))
            },
            grade: if has(flag::GRADE) {
                let reach = GradeReach::Radius(method.grade_radius);
                self.grade(terrain).map(|grade| (grade, reach))
            } else {
                None
            },
            levels: MapLevels::default(),
        })
    }

    fn ground(self, terrain: &Terrain) -> Option<Ground> {
        let dem = terrain.dems().get(usize::from(self.raster_of_ground))?;
        Some(Ground {
            elevation: Elevation::new(Length::new::<meter>(self.ground), dem.datum()),
            no_data_nearby: self.flags & flag::NO_DATA_NEARBY != 0,
            at_rim: self.flags & flag::AT_RIM != 0,
            source: Arc::clone(dem.source()),
        })
    }

    fn grade(self, terrain: &Terrain) -> Option<Grade> {
        let dem = terrain.dems().get(usize::from(self.raster_of_grade))?;
        let elevation = |metres| Elevation::new(Length::new::<meter>(metres), dem.datum());
        Some(Grade {
            lowest: elevation(self.lowest),
            highest: elevation(self.highest),
            samples: 0,
            without_value: 0,
            source: Arc::clone(dem.source()),
        })
    }

    fn set(&mut self, flag: u8, whether: bool) {
        if whether {
            self.flags |= flag;
        }
    }
}

impl Kept {
    fn readings(self, sources: &Sources) -> Readings<'_> {
        Readings {
            zones: here(&self.zones, self.on_edge, sources),
            ground: self.ground,
            grade: self.grade,
            levels: self.levels,
        }
    }
}

fn metres(elevation: Elevation) -> f64 {
    elevation.height().get::<meter>()
}

/// Layer and number of a zone.
fn number(zone: &Zone, sources: &Sources) -> Option<(u16, u32)> {
    let mut layers = sources.zones.iter().enumerate();
    layers.find_map(|(layer, map)| Some((layer.try_into().ok()?, map.number_of(zone)?)))
}

fn here<'maps>(zones: &[(u16, u32)], on_edge: bool, sources: &'maps Sources) -> ZonesHere<'maps> {
    let of = |(layer, number): &(u16, u32)| sources.zones.get(usize::from(*layer))?.zone(*number);
    ZonesHere {
        zones: zones.iter().filter_map(of).collect(),
        on_edge,
    }
}
