//! What a run reads: opened once to find faults, and once more by each thread.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use sillmark::assess::Sources;
use sillmark::crs::{CrsDefinition, HorizontalCrs, Projector};
use sillmark::hazard::{LayerPath, Part, SharedZones, ZoneMap};
use sillmark::portfolio::{Own, ToPlace};
use sillmark::quantity::VerticalDatum;

use super::memory::Memory;
use crate::cli::arguments::{MapOptions, PortfolioOptions};
use crate::cli::brought::{Brought, Origin};
use crate::cli::failure::Failure;
use crate::cli::inputs;
use crate::cli::tables::stated_crs;

/// Opens maps and terrain for each thread.
pub(super) struct Opener<'a> {
    brought: &'a Brought,
    own_files: Vec<PathBuf>,
    /// The table's own coordinate reference system.
    pub(super) crs: Option<CrsDefinition>,
    pub(super) memory: Memory,
    pub(super) threads: usize,
    /// The datum of all terrain, where it has one.
    pub(super) terrain_datum: Option<VerticalDatum>,
}

impl<'a> Opener<'a> {
    pub(super) fn new(options: &PortfolioOptions, brought: &'a Brought) -> Result<Self, Failure> {
        sillmark::gis::start();
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        let mut opener = Self {
            brought,
            own_files: [Some(options.table.clone()), options.method.kit.clone()]
                .into_iter()
                .flatten()
                .collect(),
            crs: stated_crs(&options.reading)?,
            memory: Memory::read(&options.memory)?,
            threads: options.threads.map_or(cores, usize::from),
            terrain_datum: None,
        };
        // What cannot be opened is told before the run begins, by this thread.
        let sources = opener.sources()?;
        let mut datums = sources
            .terrain
            .dems()
            .iter()
            .map(sillmark::terrain::Dem::datum);
        let first = datums.next();
        opener.terrain_datum = first.filter(|first| datums.all(|datum| datum == *first));
        Ok(opener)
    }

    /// What a thread needs for itself.
    pub(super) fn own(
        &self,
        crs: Option<&HorizontalCrs>,
    ) -> Result<Own, Box<dyn std::error::Error + Send + Sync>> {
        let sources = self.sources().map_err(|failure| failure.message())?;
        let places = match crs {
            None => None,
            Some(crs) => Some(Projector::new(crs.clone())?),
        };
        Ok(Own {
            sources,
            places: places.map(|places| {
                let to_place: Box<ToPlace<'static>> = Box::new(move |x, y| places.location(x, y));
                to_place
            }),
        })
    }

    /// Reads the zone layers, all of them or a part.
    pub(super) fn zones(
        &self,
        part: Option<Part>,
    ) -> Result<Vec<Arc<SharedZones>>, Box<dyn std::error::Error + Send + Sync>> {
        let zones = inputs::zones(&self.brought.maps.zones, part);
        let zones = zones.map_err(|failure| failure.message())?;
        Ok(zones.iter().map(ZoneMap::share).collect())
    }

    /// Whether all zones together would take far more memory than the run may use.
    pub(super) fn zones_are_many(&self) -> bool {
        let paths = self
            .brought
            .maps
            .zones
            .zones
            .iter()
            .map(|text| LayerPath::split(text).path);
        let bytes: u64 = paths
            .filter_map(|path| Some(path.metadata().ok()?.len()))
            .sum();
        let memory = self.memory.batch + self.memory.tiles;
        bytes > MANY * memory as u64
    }

    /// Whether nothing is given that a flood level could be read from.
    pub(super) fn has_no_levels(&self) -> bool {
        let MapOptions {
            zones,
            rasters,
            lines,
            sections,
            ..
        } = &self.brought.maps;
        let given = [
            &zones.zones,
            &rasters.surface,
            &rasters.depth,
            &lines.lines,
            &sections.sections,
        ];
        given.iter().all(|paths| paths.is_empty())
    }

    /// Where a file came from, where a service gave it.
    pub(super) fn origin(&self, path: &Path) -> Option<&Origin> {
        self.brought.origin(path)
    }

    /// Every file that is read.
    pub(super) fn files(&self) -> Vec<PathBuf> {
        let maps = inputs::files(&self.brought.maps);
        self.own_files.iter().cloned().chain(maps).collect()
    }

    fn sources(&self) -> Result<Sources, Failure> {
        let maps = &self.brought.maps;
        let offsets = inputs::datum_offsets(&maps.offsets.datum_offset)?;
        Ok(Sources {
            datums: inputs::datums(&maps.datums, offsets)?,
            // They come when they are read, which one thread does for all.
            zones: Vec::new(),
            levels: inputs::levels(maps, None)?,
            terrain: inputs::terrain(&maps.dem, None)?
                .keeping(self.memory.tiles / self.threads)
                .in_order(),
        })
    }
}

/// Zones whose files take more than so many times the memory for rows and terrain are read
/// batch by batch.
const MANY: u64 = 4;
