//! Zones and lines of services, as files.

use std::path::Path;

use sillmark::collect::{ArrivedLayer, CollectError, Places, WrittenLayer, write_layers};
use sillmark::hazard::{LayerContent, LevelLineMap, LineKind, LineRole, LineSchema, Part, Schema};
use sillmark::quantity::Length;
use sillmark::service::{Address, LayerAddress, features_blocking};
use sillmark::statement::{Place, Stated};

use super::Origin;
use super::access::{self, Access};
use crate::cli::arguments::MapOptions;
use crate::cli::failure::{Failure, note, say_on_terminal};
use crate::cli::inputs;

/// Brings the layers of services around some places into a folder.
pub(super) struct Layers<'a> {
    access: &'a Access,
    places: &'a Places,
    folder: &'a Path,
    origins: Vec<Origin>,
}

impl<'a> Layers<'a> {
    pub(super) const fn new(access: &'a Access, places: &'a Places, folder: &'a Path) -> Self {
        Self {
            access,
            places,
            folder,
            origins: Vec::new(),
        }
    }

    /// Puts a file of features in the place of each address.
    pub(super) fn bring(mut self, maps: &mut MapOptions) -> Result<Vec<Origin>, Failure> {
        let schema = inputs::schema(&maps.zones.zones_schema)?;
        for text in &mut maps.zones.zones {
            self.layer(text, Wanted::zones(&schema))?;
        }
        let kinds = [
            (LineKind::LevelLines, &maps.lines.lines_level),
            (LineKind::CrossSections, &maps.sections.sections_level),
        ];
        let [lines, sections] = kinds.map(|(kind, level)| level_names(kind, level.as_deref()));
        let (lines, sections) = (lines?, sections?);
        for text in &mut maps.lines.lines {
            self.layer(text, Wanted::lines(LineKind::LevelLines, &lines))?;
        }
        for text in &mut maps.sections.sections {
            self.layer(text, Wanted::lines(LineKind::CrossSections, &sections))?;
        }
        Ok(self.origins)
    }

    fn layer(&mut self, text: &mut String, wanted: Wanted<'_>) -> Result<(), Failure> {
        if !Address::is_meant(text) {
            return Ok(());
        }
        let arrived = wanted.ask(text, self.access, self.places)?;
        let number = self.origins.len() + 1;
        // A folder each, so that the file has a name that can be shown.
        let folder = self.folder.join(number.to_string());
        std::fs::create_dir(&folder).map_err(Failure::other)?;
        let path = folder.join("collected.gpkg");
        for layer in write_layers(vec![arrived], &path).map_err(failure)? {
            tell(&layer);
            self.origins.push(Origin {
                path: path.clone(),
                from: format!("{}#{}", layer.fetched.from, layer.name),
                told: format!("{}, layer {}", layer.fetched, layer.name),
                content: layer.content,
            });
        }
        *text = path.display().to_string();
        Ok(())
    }
}

/// A layer that is to be asked for, and what of it.
pub(in crate::cli) struct Wanted<'a> {
    pub(in crate::cli) read_for: LayerContent,
    /// Names of attributes: of each list the layer must have one.
    needed: Vec<&'a [String]>,
    margin: Length,
}

impl<'a> Wanted<'a> {
    pub(in crate::cli) fn zones(schema: &'a Schema) -> Self {
        Self {
            read_for: LayerContent::Zones,
            needed: schema.needed().map(|role| schema.names(role)).collect(),
            margin: Part::reach(),
        }
    }

    pub(in crate::cli) fn lines(kind: LineKind, level_names: &'a [String]) -> Self {
        Self {
            read_for: LayerContent::Lines(kind),
            needed: vec![level_names],
            margin: LevelLineMap::search_limit(),
        }
    }

    /// Asks a service for what an answer at any of the places may need.
    pub(in crate::cli) fn ask(
        self,
        text: &str,
        access: &Access,
        places: &Places,
    ) -> Result<ArrivedLayer<'a>, Failure> {
        let option = Place::Option(format!("option {}", self.read_for.option()).into());
        let stated = Stated::new("address", text, option);
        let address = LayerAddress::read(&stated).map_err(Failure::input)?;
        let connection = access.to(&address.address)?;
        let boxes = places.boxes(self.margin);
        say_on_terminal(&format!("asking {} ...", address.address));
        let served = features_blocking(&connection, &address, &boxes, &self.needed);
        Ok(ArrivedLayer {
            read_for: self.read_for,
            needed: self.needed,
            boxes,
            served: served.map_err(access::failure)?,
        })
    }
}

/// The names that the level of a line may have.
pub(in crate::cli) fn level_names(
    kind: LineKind,
    stated: Option<&str>,
) -> Result<Vec<String>, Failure> {
    if let Some(name) = stated {
        return Ok(vec![name.to_owned()]);
    }
    let schema = LineSchema::nfhl(kind).map_err(Failure::other)?;
    Ok(schema.names(LineRole::Level).to_vec())
}

/// What was noticed on the way, said on stderr.
pub(in crate::cli) fn tell(layer: &WrittenLayer) {
    if let Some(noted) = &layer.fetched.noted {
        note(&format!(
            "{}: layer {:?}: {noted}",
            layer.fetched.from, layer.name
        ));
    }
}

/// Whose fault it is that nothing was brought.
pub(in crate::cli) fn failure(error: CollectError) -> Failure {
    match error {
        CollectError::Service(error) => access::failure(error),
        CollectError::File(_) => Failure::other(error),
        CollectError::Crs { .. } | CollectError::Elsewhere { .. } | CollectError::Shape { .. } => {
            Failure::input(error)
        }
    }
}
