//! From one vertical datum to another, by grids or by a stated offset, and never by a guess.
//!
//! 1. The same datum on both sides: nothing is done.
//! 2. An offset that the user states between the two, with its source, wins; where grids are
//!    here as well and differ from it, the difference is told.
//! 3. Else the operations of the EPSG Dataset that PROJ knows between the two, the most
//!    accurate first: the first that covers the place and whose grids are here and have a
//!    value there. PROJ's "ballpark" operations, which shift by nothing, are not among them.
//! 4. Else an error that names the missing files, or says where the conversion holds.
//!
//! Tidal datums differ from gauge to gauge and take step 2 or an error.

mod conversion;
mod error;
mod folders;
mod grid_status;
mod plan;
mod proj_operations;
mod systems;

use std::cell::RefCell;
use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::rc::Rc;

pub use conversion::Conversion;
pub use error::{DatumError, NeededGrid};
pub use folders::GRIDS_VARIABLE;
pub use grid_status::{COMMON_DATUM_PAIRS, GridStatus, UseArea};
pub(super) use proj_operations::{Bounds, certain_areas};

use crate::quantity::{Elevation, Length, VerticalDatum, unit::meter};
use crate::site::{Location, StatedOffset};
use plan::{METRES_UP, Outcome, Plan};
use proj_operations::{Axis, Context, Operation};

/// What conversions may use.
#[derive(Clone, Debug, Default)]
pub struct DatumSettings {
    /// Folders of grids; where there is none, those of the environment: `SILLMARK_GRIDS`, else
    /// PROJ's own `PROJ_USER_WRITABLE_DIRECTORY`, `PROJ_DATA` and `PROJ_LIB`.
    pub grid_folders: Vec<PathBuf>,
    /// Whether PROJ may fetch grids by itself.
    pub network: bool,
    /// Offsets that the user states.
    pub stated_offsets: Vec<StatedOffset>,
}

/// Converts elevations between vertical datums.
///
/// It carries PROJ's state, search path included, so that two of them in one process do not
/// disturb each other. Neither `Send` nor `Sync`: one for each thread.
#[derive(Debug)]
pub struct Datums {
    context: Rc<Context>,
    folders: Vec<PathBuf>,
    stated_offsets: Vec<StatedOffset>,
    plans: RefCell<HashMap<Ends, Rc<Plan>>>,
    read: RefCell<Vec<PathBuf>>,
}

/// What a conversion leads from and to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
struct Ends {
    from: Origin,
    to: VerticalDatum,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
enum Origin {
    Datum(VerticalDatum),
    /// The ellipsoid of a geographic system with three axes, by its EPSG code.
    Ellipsoid(u32),
}

impl Datums {
    /// Takes the settings, and looks whether the folders they name are there.
    ///
    /// # Errors
    /// [`DatumError::Folder`], [`DatumError::NoNetwork`], [`DatumError::TwoOffsets`].
    pub fn new(settings: DatumSettings) -> Result<Self, DatumError> {
        let folders = folders::grid_folders(&settings.grid_folders)?;
        let paths: Vec<&Path> = folders.iter().map(PathBuf::as_path).collect();
        let context = Context::new(&paths).ok_or(DatumError::NoDatabase)?;
        if settings.network && !context.enable_network() {
            return Err(DatumError::NoNetwork);
        }
        refuse_two_offsets(&settings.stated_offsets)?;
        let folders = if folders.is_empty() {
            vec![PathBuf::from(context.user_folder())]
        } else {
            folders
        };
        Ok(Self {
            context,
            folders,
            stated_offsets: settings.stated_offsets,
            plans: RefCell::default(),
            read: RefCell::default(),
        })
    }

    /// Where grids are looked for, in this order.
    #[must_use]
    pub fn folders(&self) -> &[PathBuf] {
        &self.folders
    }

    /// The grid files that conversions so far were read from, each once, in the order in which
    /// they were needed.
    #[must_use]
    pub fn grids_read(&self) -> Vec<PathBuf> {
        self.read.borrow().clone()
    }

    /// Puts an elevation at a place onto another datum.
    ///
    /// The place is taken as it is for longitude and latitude on the datum's own horizontal
    /// system; the two metres that may lie between (NAD83 and WGS 84) move a shift by a
    /// quarter of a millimetre at most, the steepest slope of VERTCON's grids being 12 cm in a
    /// kilometre (between neighbouring nodes, measured on the grids).
    ///
    /// # Errors
    /// [`DatumError`], never a shift of zero for what is not known.
    ///
    /// ```
    /// use sillmark::crs::{DatumSettings, Datums};
    /// use sillmark::quantity::{VerticalDatum, parse_elevation};
    /// use sillmark::site::Location;
    ///
    /// let datums = Datums::new(DatumSettings::default())?;
    /// let level = parse_elevation("9 ft NAVD88")?;
    /// let hoboken = Location::from_degrees(-74.0335, 40.74)?;
    /// let same = datums.convert(level, VerticalDatum::Navd88, hoboken)?;
    /// assert_eq!(same.elevation, level);
    /// let tidal = parse_elevation("9 ft MLLW")?;
    /// assert!(datums.convert(tidal, VerticalDatum::Navd88, hoboken).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn convert(
        &self,
        elevation: Elevation,
        to: VerticalDatum,
        at: Location,
    ) -> Result<Conversion, DatumError> {
        let from = elevation.datum();
        if from == to {
            return Ok(Conversion::none(elevation));
        }
        match self.stated(elevation, to) {
            None => self.by_grids(elevation.height(), Origin::Datum(from), to, at),
            Some(mut stated) => {
                let grids = self.by_grids(elevation.height(), Origin::Datum(from), to, at);
                stated.grid_differs = grids.ok().and_then(|grids| beyond(&stated, &grids));
                Ok(stated)
            }
        }
    }

    /// Puts a height above the ellipsoid, as satellite positioning gives it, onto a datum.
    /// `system` is the EPSG code of the geographic system with three axes that it was
    /// measured in: 4937 for ETRS89, 6319 for NAD83(2011), 4979 for WGS 84.
    ///
    /// # Errors
    /// As [`convert`](Self::convert).
    pub fn from_ellipsoid(
        &self,
        height: Length,
        system: u32,
        to: VerticalDatum,
        at: Location,
    ) -> Result<Conversion, DatumError> {
        self.by_grids(height, Origin::Ellipsoid(system), to, at)
    }

    /// The grids that conversions between two datums read, the most accurate first, each file
    /// once; none where the conversion reads no grid.
    ///
    /// # Errors
    /// [`DatumError`] where no operation is known between them, at any place.
    ///
    /// ```
    /// use sillmark::{crs::{DatumSettings, Datums}, quantity::VerticalDatum};
    /// let datums = Datums::new(DatumSettings::default())?;
    /// let grids = datums.grid_report(VerticalDatum::Ngvd29, VerticalDatum::Navd88)?;
    /// assert!(grids.iter().any(|grid| grid.file == "us_noaa_vertcone.tif"));
    /// # Ok::<(), sillmark::crs::DatumError>(())
    /// ```
    pub fn grid_report(
        &self,
        from: VerticalDatum,
        to: VerticalDatum,
    ) -> Result<Vec<GridStatus>, DatumError> {
        if from == to {
            return Ok(Vec::new());
        }
        let plan = self.plan(Origin::Datum(from), to)?;
        if plan.operations.is_empty() {
            return Err(DatumError::NoOperation {
                from: from.to_string(),
                to: to.to_string(),
            });
        }
        let mut report: Vec<GridStatus> = Vec::new();
        for operation in &plan.operations {
            for grid in &operation.grids {
                if !report.iter().any(|known| known.file == grid.name) {
                    report.push(GridStatus::new(operation, grid));
                }
            }
        }
        Ok(report)
    }

    fn stated(&self, elevation: Elevation, to: VerticalDatum) -> Option<Conversion> {
        let from = elevation.datum();
        self.stated_offsets.iter().find_map(|offset| {
            let shift = offset.between(from, to)?;
            Some(Conversion {
                elevation: Elevation::new(elevation.height() + shift, to),
                shift,
                standard_deviation: offset.uncertainty(),
                how: format!("by the stated offset from {} to {}", offset.from, offset.to),
                reference: offset.source.clone(),
                grid_differs: None,
            })
        })
    }

    fn by_grids(
        &self,
        height: Length,
        origin: Origin,
        to: VerticalDatum,
        at: Location,
    ) -> Result<Conversion, DatumError> {
        let plan = self.plan(origin, to)?;
        let (from, target) = (origin.to_string(), to.to_string());
        let (longitude, latitude) = (at.longitude(), at.latitude());
        match plan.shift(height, at) {
            Outcome::Shifted {
                shift,
                operation,
                better,
            } => {
                self.note_grids(operation);
                let elevation = Elevation::new(height + shift, to);
                Ok(Conversion::by_operation(
                    elevation, shift, operation, &better,
                ))
            }
            Outcome::Missing(files) => Err(DatumError::MissingGrid {
                from,
                to: target,
                longitude,
                latitude,
                files,
                folders: self.folders.clone(),
            }),
            Outcome::Outside(detail) => Err(DatumError::Outside {
                from,
                to: target,
                longitude,
                latitude,
                detail,
            }),
            Outcome::Absurd(shift, files) => Err(DatumError::Absurd {
                from,
                to: target,
                shift,
                files,
            }),
            Outcome::Unknown => Err(DatumError::NoOperation { from, to: target }),
        }
    }

    fn note_grids(&self, operation: &Operation) {
        let mut read = self.read.borrow_mut();
        for path in operation
            .grids
            .iter()
            .filter_map(|grid| grid.path.as_deref())
        {
            if !read.iter().any(|known| known.as_os_str() == path) {
                read.push(PathBuf::from(path));
            }
        }
    }

    /// The operations between two ends, asked for once.
    fn plan(&self, from: Origin, to: VerticalDatum) -> Result<Rc<Plan>, DatumError> {
        let ends = Ends { from, to };
        if let Some(plan) = self.plans.borrow().get(&ends) {
            return Ok(Rc::clone(plan));
        }
        let plan = Rc::new(match from {
            Origin::Datum(from) => {
                let (source, target) = (vertical(from, to, from)?, vertical(from, to, to)?);
                let axes = (self.axis(source)?, self.axis(target)?);
                let definitions = |(left, right)| (compound(left, source), compound(right, target));
                let tiers: Vec<Vec<(String, String)>> = systems::tiers(from, to)
                    .into_iter()
                    .map(|tier| tier.into_iter().map(definitions).collect())
                    .collect();
                Plan::new(&self.context, &tiers, axes, true)
            }
            Origin::Ellipsoid(system) => {
                let target = vertical(to, to, to)?;
                let axes = (METRES_UP, self.axis(target)?);
                let tiers: Vec<Vec<(String, String)>> = systems::horizontal_systems(to)
                    .iter()
                    .map(|&horizontal| {
                        vec![(format!("EPSG:{system}"), compound(horizontal, target))]
                    })
                    .collect();
                Plan::new(&self.context, &tiers, axes, false)
            }
        });
        self.plans.borrow_mut().insert(ends, Rc::clone(&plan));
        Ok(plan)
    }

    fn axis(&self, code: u32) -> Result<Axis, DatumError> {
        self.context
            .vertical_axis(&format!("EPSG:{code}"))
            .ok_or(DatumError::NotVertical { code })
    }
}

impl std::fmt::Display for Origin {
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Datum(datum) => datum.fmt(formatter),
            Self::Ellipsoid(code) => write!(formatter, "the ellipsoid of EPSG:{code}"),
        }
    }
}

/// The EPSG code of one datum of a pair; a tidal one has none that means a single surface.
fn vertical(
    from: VerticalDatum,
    to: VerticalDatum,
    datum: VerticalDatum,
) -> Result<u32, DatumError> {
    datum
        .epsg()
        .filter(|_| datum.is_one_surface())
        .ok_or(DatumError::Tidal {
            from,
            to,
            tidal: datum,
        })
}

fn compound(horizontal: u32, vertical: u32) -> String {
    format!("EPSG:{horizontal}+{vertical}")
}

/// Stated shift less the grids' shift, where it is more than twice their combined standard
/// deviation. An unknown one counts as none, so that the difference is rather told.
fn beyond(stated: &Conversion, grids: &Conversion) -> Option<Length> {
    let metres = |length: Option<Length>| length.map_or(0.0, |length| length.get::<meter>());
    let combined = metres(stated.standard_deviation).hypot(metres(grids.standard_deviation));
    let difference = stated.shift - grids.shift;
    (difference.get::<meter>().abs() > 2.0 * combined).then_some(difference)
}

fn refuse_two_offsets(offsets: &[StatedOffset]) -> Result<(), DatumError> {
    for (index, second) in offsets.iter().enumerate() {
        let earlier = &offsets[..index];
        let same = |first: &&StatedOffset| first.between(second.from, second.to).is_some();
        if let Some(first) = earlier.iter().find(same) {
            return Err(DatumError::TwoOffsets {
                from: second.from,
                to: second.to,
                first: first.source.clone(),
                second: second.source.clone(),
            });
        }
    }
    Ok(())
}
