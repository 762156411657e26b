//! A transformation of PROJ's, and the refusal of its guesses.

use std::cell::{Cell, OnceCell};

use geo::Coord;
use proj::Proj;

use super::HorizontalCrs;
use super::datums::{Bounds, certain_areas};
use super::lattice::Lattice;

/// From WGS 84 longitude and latitude to the axes of another system in the order of its
/// authority, with what is known of it.
pub(super) struct Operation {
    pub(super) proj: Proj,
    pub(super) lattice: Lattice,
    /// The place that was transformed last, in degrees, and its coordinates: ground, the
    /// ground around and zones are asked at one place after the other.
    pub(super) last: Cell<Option<[Coord<f64>; 2]>>,
    target: String,
    /// Whether PROJ chooses among several operations at each point.
    is_choice: bool,
    asked: Cell<u32>,
    /// Where the choice cannot fall on a guess.
    certain: OnceCell<Vec<Bounds>>,
}

/// WGS 84 in the order longitude, latitude.
pub(super) const LONGITUDE_LATITUDE: &str = "OGC:CRS84";

/// PROJ looks for operations in the EPSG Dataset alone: among those of every authority the
/// search between two datums takes six times as long (107 ms against 16 ms from WGS 84 to
/// NAD83), and ends with the same operation.
const EPSG_ONLY: &str = "AUTHORITY=EPSG";

/// PROJ's word, in the description of an operation, for a step that ignores the datum.
///
/// PROJ can be told to leave such operations out, but then takes one far outside its area in
/// their place (the parameters of Britain in New Jersey), and says nothing.
const GUESS: &str = "Ballpark";

/// PROJ's description of several operations before the first is used.
const CHOICE: &str = "unavailable until proj_trans is called";

/// So many points are asked for one by one, at a microsecond each, before PROJ is asked for
/// the areas of its operations, which takes as long as to find them.
const ONE_BY_ONE: u32 = 256;

impl Operation {
    /// # Errors
    /// What PROJ says, where it knows no transformation or would guess everywhere.
    pub(super) fn new(target: &HorizontalCrs) -> Result<Self, String> {
        let target = target.definition();
        #[allow(clippy::disallowed_methods)] // this is the one constructor
        let create = Proj::new;
        let proj = create(LONGITUDE_LATITUDE)
            .and_then(|source| {
                source.create_crs_to_crs_from_pj(&create(target)?, None, Some(vec![EPSG_ONLY]))
            })
            .map_err(|error| error.to_string())?;
        // A single operation is described before its first use; of several, PROJ chooses
        // at each point.
        let description = proj.proj_info().description.unwrap_or_default();
        if description.contains(GUESS) {
            return Err("its datum is not known, PROJ would ignore it".to_owned());
        }
        Ok(Self {
            proj,
            lattice: Lattice::default(),
            last: Cell::new(None),
            target: target.to_owned(),
            is_choice: description.is_empty() || description == CHOICE,
            asked: Cell::new(0),
            certain: OnceCell::new(),
        })
    }

    /// Whether PROJ ignored the datum at the point that was transformed last.
    pub(super) fn has_guessed(&self, longitude: f64, latitude: f64) -> bool {
        if !self.is_choice {
            return false;
        }
        let asked = self.asked.get();
        if asked >= ONE_BY_ONE {
            let certain = self
                .certain
                .get_or_init(|| certain_areas(LONGITUDE_LATITUDE, &self.target));
            if certain.iter().any(|area| area.contain(longitude, latitude)) {
                return false;
            }
        } else {
            self.asked.set(asked + 1);
        }
        // The description is that of the operation just used.
        let description = self.proj.proj_info().description;
        description.is_none_or(|description| description.contains(GUESS))
    }
}
