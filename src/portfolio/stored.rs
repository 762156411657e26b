//! Readings of many places, packed while the rows wait for their turn.

use std::collections::HashMap;
use std::sync::Arc;

use smallvec::SmallVec;

use crate::assess::{Method, Readings, Sources};
use crate::hazard::{Zone, ZonesHere};
use crate::level::{GradeReach, MapLevels};
use crate::quantity::{Elevation, Length, unit::meter};
use crate::table::RecordFault;
use crate::terrain::{Gap, Grade, Ground, Terrain};

/// The readings of a place that holds nothing unusual, in 40 bytes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Packed {
    ground: f64,
    lowest: f64,
    highest: f64,
    zone: u32,
    samples: u16,
    without_value: u16,
    layer: u16,
    raster_of_ground: u16,
    raster_of_grade: u16,
    flags: u8,
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

/// What a place has that few places have.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Unusual {
    /// Several zones meet there, or other maps speak.
    Maps {
        zones: Vec<(u16, u32)>,
        levels: Box<MapLevels>,
    },
    /// It cannot be read.
    Fault(Box<RecordFault>),
}

impl Packed {
    /// No zone, no terrain.
    pub(super) const NOTHING: Self = Self {
        ground: f64::NAN,
        lowest: f64::NAN,
        highest: f64::NAN,
        zone: NO_ZONE,
        samples: 0,
        without_value: 0,
        layer: 0,
        flags: 0,
        raster_of_ground: 0,
        raster_of_grade: 0,
    };

    /// A place that cannot be read.
    pub(super) fn refused(fault: RecordFault) -> (Self, Option<Unusual>) {
        let packed = Self {
            flags: flag::UNUSUAL,
            ..Self::NOTHING
        };
        (packed, Some(Unusual::Fault(Box::new(fault))))
    }

    /// Packs readings; the second part is there where they do not fit.
    pub(super) fn of(readings: Readings<'_>, sources: &Sources) -> (Self, Option<Unusual>) {
        let mut packed = Self::NOTHING;
        let raster = |source: &Arc<str>| raster_number(source, &sources.terrain);
        match &readings.ground {
            None => {}
            Some(Err(Gap::Void)) => packed.flags |= flag::VOID,
            Some(Err(Gap::Outside)) => packed.flags |= flag::OUTSIDE,
            Some(Ok(ground)) => {
                packed.flags |= flag::GROUND;
                packed.set(flag::NO_DATA_NEARBY, ground.no_data_nearby);
                packed.set(flag::AT_RIM, ground.at_rim);
                packed.ground = metres(ground.elevation);
                packed.raster_of_ground = raster(&ground.source);
            }
        }
        if let Some((grade, _)) = &readings.grade {
            packed.flags |= flag::GRADE;
            packed.lowest = metres(grade.lowest);
            packed.highest = metres(grade.highest);
            // More samples than that are told as that many: the number is in no result.
            packed.samples = u16::try_from(grade.samples).unwrap_or(u16::MAX);
            packed.without_value = u16::try_from(grade.without_value).unwrap_or(u16::MAX);
            packed.raster_of_grade = raster(&grade.source);
        }
        packed.set(flag::ON_EDGE, readings.zones.on_edge);
        let mut zones = readings.zones.zones.iter();
        let numbers: SmallVec<[(u16, u32); 2]> = zones
            .by_ref()
            .filter_map(|zone| number(zone, sources))
            .collect();
        match (numbers.as_slice(), readings.levels.is_empty()) {
            ([], true) => (packed, None),
            ([(layer, zone)], true) => {
                (packed.layer, packed.zone) = (*layer, *zone);
                (packed, None)
            }
            (several, _) => {
                packed.flags |= flag::UNUSUAL;
                let unusual = Unusual::Maps {
                    zones: several.to_vec(),
                    levels: Box::new(readings.levels),
                };
                (packed, Some(unusual))
            }
        }
    }

    /// The readings again, of the place at `position` of its chunk.
    pub(super) fn readings<'maps>(
        self,
        position: u32,
        unusual: &mut HashMap<u32, Unusual>,
        sources: &'maps Sources,
        method: &Method,
    ) -> Result<Readings<'maps>, RecordFault> {
        let terrain = &sources.terrain;
        let has = |flag| self.flags & flag != 0;
        let ground = if has(flag::GROUND) {
            ground(self, terrain).map(Ok)
        } else if has(flag::VOID) {
            Some(Err(Gap::Void))
        } else {
            has(flag::OUTSIDE).then_some(Err(Gap::Outside))
        };
        let unusual = match has(flag::UNUSUAL) {
            true => unusual.remove(&position),
            false => None,
        };
        let (zones, levels) = match unusual {
            Some(Unusual::Fault(fault)) => return Err(*fault),
            Some(Unusual::Maps { zones, levels }) => (zones.into(), *levels),
            None if self.zone == NO_ZONE => (SmallVec::new(), MapLevels::default()),
            None => (
                smallvec::smallvec![(self.layer, self.zone)],
                MapLevels::default(),
            ),
        };
        Ok(Readings {
            zones: here(&zones, has(flag::ON_EDGE), sources),
            ground,
            grade: if has(flag::GRADE) {
                grade(self, terrain).map(|grade| (grade, GradeReach::Radius(method.grade_radius)))
            } else {
                None
            },
            levels,
        })
    }

    fn set(&mut self, flag: u8, whether: bool) {
        if whether {
            self.flags |= flag;
        }
    }
}

fn metres(elevation: Elevation) -> f64 {
    elevation.height().get::<meter>()
}

/// Which of the terrain's rasters answered.
fn raster_number(source: &Arc<str>, terrain: &Terrain) -> u16 {
    let mut dems = terrain.dems().iter();
    let position = dems.position(|dem| Arc::ptr_eq(dem.source(), source));
    position
        .and_then(|number| u16::try_from(number).ok())
        .unwrap_or_default()
}

/// Layer and number of a zone.
fn number(zone: &Zone, sources: &Sources) -> Option<(u16, u32)> {
    let layers = sources.zones.iter().enumerate();
    let mut found =
        layers.filter_map(|(layer, map)| Some((u16::try_from(layer).ok()?, map.number_of(zone)?)));
    found.next()
}

fn here<'maps>(
    zones: &SmallVec<[(u16, u32); 2]>,
    on_edge: bool,
    sources: &'maps Sources,
) -> ZonesHere<'maps> {
    let of = |(layer, number): &(u16, u32)| sources.zones.get(usize::from(*layer))?.zone(*number);
    ZonesHere {
        zones: zones.iter().filter_map(of).collect(),
        on_edge,
    }
}

fn ground(packed: Packed, terrain: &Terrain) -> Option<Ground> {
    let dem = terrain.dems().get(usize::from(packed.raster_of_ground))?;
    Some(Ground {
        elevation: Elevation::new(Length::new::<meter>(packed.ground), dem.datum()),
        no_data_nearby: packed.flags & flag::NO_DATA_NEARBY != 0,
        at_rim: packed.flags & flag::AT_RIM != 0,
        source: dem.source().clone(),
    })
}

fn grade(packed: Packed, terrain: &Terrain) -> Option<Grade> {
    let dem = terrain.dems().get(usize::from(packed.raster_of_grade))?;
    let elevation = |metres| Elevation::new(Length::new::<meter>(metres), dem.datum());
    Some(Grade {
        lowest: elevation(packed.lowest),
        highest: elevation(packed.highest),
        samples: usize::from(packed.samples),
        without_value: usize::from(packed.without_value),
        source: dem.source().clone(),
    })
}
