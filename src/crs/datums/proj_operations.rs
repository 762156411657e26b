//! PROJ's operations between two systems, one by one.
//!
//! `proj` and `gdal` give one transformation that picks among PROJ's operations by itself,
//! and passes a height through unshifted where none of them covers the place. Here the
//! operations are listed, with the grids, area and accuracy of each, and run singly: one that
//! lacks its grid or does not cover the place fails. Neither crate has a safe call for it.
//!
//! A [`Context`] carries its own search path, so nothing here is process-wide: neither the
//! `proj` crate nor GDAL sees the grid folders.

#![allow(unsafe_code)]

use std::ffi::{CStr, CString, OsStr, c_char, c_int};
use std::ops::ControlFlow;
use std::path::Path;
use std::ptr::{self, NonNull};
use std::rc::Rc;

use proj_sys as sys;

/// PROJ's own name for the database that is built into the library. A `proj.db` of another
/// version that lies beside grids (as distributions install them) must not be read instead.
const EMBEDDED_DATABASE: &CStr = c"__embedded_proj_db__";

/// Operations are looked for in the EPSG Dataset alone, as [`Projector`](super::super::Projector)
/// does.
const AUTHORITY: &CStr = c"EPSG";

/// PROJ's state of one user: search path, database, errors. Neither `Send` nor `Sync`.
#[derive(Debug)]
pub(super) struct Context {
    raw: NonNull<sys::PJ_CONTEXT>,
}

/// Degrees of the box in which an operation is meant to be used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::crs) struct Bounds {
    pub(super) west: f64,
    pub(super) south: f64,
    pub(super) east: f64,
    pub(super) north: f64,
}

/// A file that an operation reads.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct GridFile {
    pub(super) name: String,
    /// Where PROJ found it.
    pub(super) path: Option<String>,
    /// Where PROJ's project offers it; `None` where it does not.
    pub(super) address: Option<String>,
}

/// The axis of a vertical system.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Axis {
    pub(super) metres_per_unit: f64,
    pub(super) is_depth: bool,
}

/// One operation; longitude and latitude in degrees, heights in the units of its systems.
#[derive(Debug)]
pub(super) struct Operation {
    raw: NonNull<sys::PJ>,
    // Behind `raw`, which `drop` destroys first.
    context: Rc<Context>,
    pub(super) name: String,
    /// Metres, as the EPSG Dataset states it; summed over the steps.
    pub(super) accuracy: Option<f64>,
    pub(super) bounds: Option<Bounds>,
    pub(super) area: String,
    pub(super) grids: Vec<GridFile>,
}

impl Context {
    /// A context that looks for grids in `folders` only, or where PROJ looks by itself where
    /// there are none.
    pub(super) fn new(folders: &[&Path]) -> Option<Rc<Self>> {
        let context = Self::plain(folders)?;
        // SAFETY: the context lives; null stands for PROJ's own database.
        let database = |name| unsafe {
            sys::proj_context_set_database_path(context.raw(), name, ptr::null(), ptr::null())
        };
        if database(EMBEDDED_DATABASE.as_ptr()) == 0 && database(ptr::null()) == 0 {
            return None;
        }
        Some(Rc::new(context))
    }

    /// As [`new`](Self::new), with whatever database PROJ finds by itself.
    fn plain(folders: &[&Path]) -> Option<Self> {
        let folders: Vec<CString> = folders
            .iter()
            .filter_map(|folder| CString::new(folder.as_os_str().as_encoded_bytes()).ok())
            .collect();
        let pointers: Vec<*const c_char> = folders.iter().map(|folder| folder.as_ptr()).collect();
        // SAFETY: takes no argument; the result is checked for null.
        let raw = NonNull::new(unsafe { sys::proj_context_create() })?;
        let context = Self { raw };
        let count = c_int::try_from(pointers.len()).ok()?;
        // SAFETY: the context lives; the pointers are `count` zero-terminated texts that
        // PROJ copies. Errors are read from results, never from the log, which would go to
        // stderr.
        unsafe {
            sys::proj_log_level(context.raw(), sys::PJ_LOG_LEVEL_PJ_LOG_NONE);
            if count > 0 {
                sys::proj_context_set_search_paths(context.raw(), count, pointers.as_ptr());
            }
            sys::proj_context_set_enable_network(context.raw(), 0);
        }
        Some(context)
    }

    /// Asks PROJ to fetch grids by itself. Whether it can.
    pub(super) fn enable_network(&self) -> bool {
        // SAFETY: the context lives.
        unsafe { sys::proj_context_set_enable_network(self.raw(), 1) != 0 }
    }

    /// The folder into which PROJ puts what it downloads.
    pub(super) fn user_folder(&self) -> String {
        // SAFETY: the context lives and owns the text, which is copied at once.
        text(unsafe { sys::proj_context_get_user_writable_directory(self.raw(), 0) })
    }

    /// The axis of a vertical system; `None` where the definition is not of one.
    pub(super) fn vertical_axis(&self, definition: &str) -> Option<Axis> {
        let system = self.create(definition)?;
        // SAFETY: the object lives until the end of this function.
        if unsafe { sys::proj_get_type(system.0.as_ptr()) } != sys::PJ_TYPE_PJ_TYPE_VERTICAL_CRS {
            return None;
        }
        // SAFETY: context and object live; the result is checked for null and destroyed by
        // its owner.
        let axes = Object(NonNull::new(unsafe {
            sys::proj_crs_get_coordinate_system(self.raw(), system.0.as_ptr())
        })?);
        let mut direction: *const c_char = ptr::null();
        let mut factor = 0.0;
        // SAFETY: null is allowed for what is not wanted; the text belongs to `axes`, which
        // lives until it is copied.
        let found = unsafe {
            sys::proj_cs_get_axis_info(
                self.raw(),
                axes.0.as_ptr(),
                0,
                ptr::null_mut(),
                ptr::null_mut(),
                &raw mut direction,
                &raw mut factor,
                ptr::null_mut(),
                ptr::null_mut(),
                ptr::null_mut(),
            )
        };
        (found != 0 && factor > 0.0).then(|| Axis {
            metres_per_unit: factor,
            is_depth: text(direction).eq_ignore_ascii_case("down"),
        })
    }

    /// Every operation between two systems that is not a guess, whether its grids are there
    /// or not; none where a definition is not known.
    pub(super) fn operations(self: &Rc<Self>, source: &str, target: &str) -> Vec<Operation> {
        let ignored = sys::PROJ_GRID_AVAILABILITY_USE_PROJ_GRID_AVAILABILITY_IGNORED;
        let mut operations = Vec::new();
        self.list(source, target, ignored, false, |listed| {
            operations.extend(self.describe(&listed));
            ControlFlow::Continue(())
        });
        operations
    }

    /// Hands over the operations between two systems in PROJ's order.
    fn list(
        &self,
        source: &str,
        target: &str,
        grids: sys::PROJ_GRID_AVAILABILITY_USE,
        with_guesses: bool,
        mut visit: impl FnMut(Object) -> ControlFlow<()>,
    ) {
        let (Some(source), Some(target)) = (self.create(source), self.create(target)) else {
            return;
        };
        // SAFETY: context and objects live throughout; every result is checked for null;
        // the factory and the list are destroyed once, after their last use. What is handed
        // over is owned by the object and does not need the list.
        unsafe {
            let factory =
                sys::proj_create_operation_factory_context(self.raw(), AUTHORITY.as_ptr());
            if factory.is_null() {
                return;
            }
            sys::proj_operation_factory_context_set_grid_availability_use(
                self.raw(),
                factory,
                grids,
            );
            sys::proj_operation_factory_context_set_spatial_criterion(
                self.raw(),
                factory,
                sys::PROJ_SPATIAL_CRITERION_PROJ_SPATIAL_CRITERION_PARTIAL_INTERSECTION,
            );
            sys::proj_operation_factory_context_set_allow_ballpark_transformations(
                self.raw(),
                factory,
                c_int::from(with_guesses),
            );
            let list = sys::proj_create_operations(
                self.raw(),
                source.0.as_ptr(),
                target.0.as_ptr(),
                factory,
            );
            if !list.is_null() {
                for index in 0..sys::proj_list_get_count(list) {
                    let found = NonNull::new(sys::proj_list_get(self.raw(), list, index));
                    if found.is_some_and(|raw| visit(Object(raw)).is_break()) {
                        break;
                    }
                }
                sys::proj_list_destroy(list);
            }
            sys::proj_operation_factory_context_destroy(factory);
        }
    }

    /// An operation with longitude before latitude; `None` where it is a guess after all.
    fn describe(self: &Rc<Self>, listed: &Object) -> Option<Operation> {
        let (context, found) = (self.raw(), listed.0.as_ptr());
        let (mut west, mut south, mut east, mut north) = (0.0, 0.0, 0.0, 0.0);
        let mut area: *const c_char = ptr::null();
        // SAFETY: context and object live; the numbers are written before they are read; the
        // texts belong to the object and are copied while it lives; the normalized operation
        // is checked for null and owned by the result.
        unsafe {
            if sys::proj_coordoperation_has_ballpark_transformation(context, found) != 0 {
                return None;
            }
            let accuracy = sys::proj_coordoperation_get_accuracy(context, found);
            let bounded = sys::proj_get_area_of_use(
                context,
                found,
                &raw mut west,
                &raw mut south,
                &raw mut east,
                &raw mut north,
                &raw mut area,
            ) != 0
                && west >= -180.0;
            let raw = NonNull::new(sys::proj_normalize_for_visualization(context, found))?;
            Some(Operation {
                raw,
                context: Rc::clone(self),
                name: text(sys::proj_get_name(found)),
                accuracy: (accuracy >= 0.0).then_some(accuracy),
                bounds: bounded.then_some(Bounds {
                    west,
                    south,
                    east,
                    north,
                }),
                area: text(area),
                grids: self.grids(listed),
            })
        }
    }

    fn grids(&self, operation: &Object) -> Vec<GridFile> {
        let (context, operation) = (self.raw(), operation.0.as_ptr());
        let mut grids = Vec::new();
        // SAFETY: context and object live.
        let count = unsafe { sys::proj_coordoperation_get_grid_used_count(context, operation) };
        for index in 0..count {
            let mut name: *const c_char = ptr::null();
            let mut path: *const c_char = ptr::null();
            let mut address: *const c_char = ptr::null();
            let mut is_available: c_int = 0;
            // SAFETY: null is allowed for what is not wanted; the texts belong to the
            // operation, which lives until they are copied.
            let found = unsafe {
                sys::proj_coordoperation_get_grid_used(
                    context,
                    operation,
                    index,
                    &raw mut name,
                    &raw mut path,
                    ptr::null_mut(),
                    &raw mut address,
                    ptr::null_mut(),
                    ptr::null_mut(),
                    &raw mut is_available,
                )
            };
            if found != 0 {
                let path = (is_available != 0).then(|| text(path));
                grids.push(GridFile {
                    name: text(name),
                    path: path.filter(|path| !is_in_millimetres(path)),
                    address: Some(text(address)).filter(|address| !address.is_empty()),
                });
            }
        }
        grids
    }

    fn create(&self, definition: &str) -> Option<Object> {
        let definition = CString::new(definition).ok()?;
        // SAFETY: the context lives; the text is zero-terminated; the result is checked for
        // null and destroyed by its owner.
        NonNull::new(unsafe { sys::proj_create(self.raw(), definition.as_ptr()) }).map(Object)
    }

    const fn raw(&self) -> *mut sys::PJ_CONTEXT {
        self.raw.as_ptr()
    }
}

/// Boxes within which PROJ's choice among its operations cannot fall on a guess, the largest
/// first. It takes the most accurate operation whose box holds the point, and one that needs
/// no grid cannot fail for want of it; guesses have no accuracy and come last.
///
/// The list is the one that `proj_create_crs_to_crs_from_pj` makes for the same systems.
pub(in crate::crs) fn certain_areas(source: &str, target: &str) -> Vec<Bounds> {
    let Some(context) = Context::plain(&[]).map(Rc::new) else {
        return Vec::new();
    };
    let known = sys::PROJ_GRID_AVAILABILITY_USE_PROJ_GRID_AVAILABILITY_KNOWN_AVAILABLE;
    let mut areas = Vec::new();
    context.list(source, target, known, true, |listed| {
        let Some(operation) = context.describe(&listed) else {
            return ControlFlow::Break(());
        };
        if operation.grids.is_empty() && operation.accuracy.is_some() {
            areas.extend(operation.bounds.map(Bounds::inner));
        }
        ControlFlow::Continue(())
    });
    areas.sort_by(|one, other| other.extent().total_cmp(&one.extent()));
    areas
}

impl Drop for Context {
    fn drop(&mut self) {
        // SAFETY: made by `new`, destroyed once; operations hold the context alive.
        unsafe { sys::proj_context_destroy(self.raw()) };
    }
}

impl Bounds {
    /// Whether all corners of another box lie within.
    pub(super) fn hold(self, other: Self) -> bool {
        self.contain(other.west, other.south) && self.contain(other.east, other.north)
    }

    /// A little less, for what PROJ's own sums round.
    fn inner(self) -> Self {
        const LESS: f64 = 1e-6;
        Self {
            west: self.west + LESS,
            south: self.south + LESS,
            east: self.east - LESS,
            north: self.north - LESS,
        }
    }

    fn extent(self) -> f64 {
        (self.east - self.west).rem_euclid(360.0) * (self.north - self.south)
    }

    pub(in crate::crs) fn contain(&self, longitude: f64, latitude: f64) -> bool {
        let across = self.west > self.east; // the antimeridian
        let (after, before) = (longitude >= self.west, longitude <= self.east);
        let between = if across {
            after || before
        } else {
            after && before
        };
        between && (self.south..=self.north).contains(&latitude)
    }
}

impl Operation {
    /// The height that comes out for a height at a place.
    ///
    /// # Errors
    /// What PROJ says: no grid, outside its grid, a hole in it.
    pub(super) fn run(&self, longitude: f64, latitude: f64, height: f64) -> Result<f64, String> {
        let place = sys::PJ_COORD {
            xyzt: sys::PJ_XYZT {
                x: longitude,
                y: latitude,
                z: height,
                t: f64::INFINITY, // no epoch
            },
        };
        // SAFETY: the operation and its context live; every field of the coordinate is
        // written, and all members of the union are plain numbers.
        unsafe {
            sys::proj_errno_reset(self.raw.as_ptr());
            let out = sys::proj_trans(self.raw.as_ptr(), sys::PJ_DIRECTION_PJ_FWD, place);
            let error = sys::proj_errno(self.raw.as_ptr());
            let height = out.xyzt.z;
            if error == 0 && height.is_finite() && out.xyzt.x.is_finite() {
                Ok(height)
            } else {
                // The text belongs to the context and is copied at once.
                let context = self.context.raw();
                Err(text(sys::proj_context_errno_string(context, error)))
            }
        }
    }
}

impl Drop for Operation {
    fn drop(&mut self) {
        // SAFETY: made by `describe`, destroyed once, before its context.
        unsafe { sys::proj_destroy(self.raw.as_ptr()) };
    }
}

/// An object of PROJ that is destroyed when it goes.
struct Object(NonNull<sys::PJ>);

impl Drop for Object {
    fn drop(&mut self) {
        // SAFETY: owned by this value alone and destroyed once, before its context, which
        // the function that holds it borrows.
        unsafe { sys::proj_destroy(self.0.as_ptr()) };
    }
}

/// Whether a grid is one of VERTCON's old files, which are in millimetres.
///
/// PROJ 9.6 takes `vertconc.gtx` where `us_noaa_vertconc.tif` is missing, and reads it as
/// metres: a shift of 128.8 m at the example of EPSG method 9658. So such a file does not
/// count as found.
fn is_in_millimetres(path: &str) -> bool {
    let path = Path::new(path);
    let part = |part: Option<&OsStr>| part.map(OsStr::to_ascii_lowercase).unwrap_or_default();
    let old = ["vertconw", "vertconc", "vertcone"];
    part(path.extension()) == "gtx" && old.iter().any(|old| part(path.file_stem()) == *old)
}

/// A copy of a text of PROJ; empty for null.
fn text(pointer: *const c_char) -> String {
    if pointer.is_null() {
        return String::new();
    }
    // SAFETY: not null; every caller passes a zero-terminated text whose owner lives.
    unsafe { CStr::from_ptr(pointer) }
        .to_string_lossy()
        .into_owned()
}
