//! What an answer was read from.

use super::Sources;
use crate::gis::Fetched;
use crate::hazard::{LayerContent, LayerOrigin};
use crate::quantity::AnnualChance;
use crate::terrain::Raster;

/// A layer or raster that an answer was read from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MapRead {
    /// What it was read for, such as `flood zones` or `water surface, 1%`.
    pub read_for: String,
    /// The file's name without its folders.
    pub file: String,
    /// The layer's name; `None` for a raster.
    pub layer: Option<String>,
    /// What it says of its own date, in words.
    pub dated: Option<String>,
    /// The service that it was fetched from; `None` where it was none.
    pub fetched: Option<Fetched>,
}

impl Sources {
    /// What an answer is read from, in the order zones, rasters, lines, terrain.
    #[must_use]
    pub fn maps_read(&self) -> Vec<MapRead> {
        let levels = &self.levels;
        let zones = self.zones.iter();
        let lines = levels.lines.iter();
        let terrain = self.terrain.dems().iter();
        let surfaces = levels.surfaces.iter();
        let depths = levels.depths.iter();
        zones
            .map(|map| layer(LayerContent::Zones, map.origin()))
            .chain(
                surfaces
                    .map(|event| raster(of_event("water surface", event.chance), &event.raster)),
            )
            .chain(depths.map(|event| raster(of_event("water depth", event.chance), &event.raster)))
            .chain(lines.map(|map| layer(LayerContent::Lines(map.kind()), map.origin())))
            .chain(terrain.map(|dem| raster("terrain".to_owned(), dem)))
            .collect()
    }
}

fn layer(content: LayerContent, origin: &LayerOrigin) -> MapRead {
    MapRead {
        read_for: content.title().to_owned(),
        file: origin.file_name(),
        layer: Some(origin.layer.clone()),
        dated: origin.dated.clone(),
        fetched: origin.fetched.clone(),
    }
}

fn raster(read_for: String, raster: &Raster) -> MapRead {
    MapRead {
        read_for,
        file: raster.name().to_owned(),
        layer: None,
        dated: raster.dated().map(str::to_owned),
        fetched: raster.fetched().cloned(),
    }
}

fn of_event(what: &str, chance: AnnualChance) -> String {
    format!("{what}, {chance}")
}
