//! Reading one layer of a vector file: which one, in which coordinates, to its last feature.

use std::path::Path;

use gdal::Dataset;
use geo::Rect;

use super::{HazardError, LayerContent, LayerOrigin, Part};
use crate::crs::{CrsDefinition, CrsError, HorizontalCrs, Projector};
use crate::gis::{self, FeatureReader, Record};

/// Which layer is wanted, and what messages about it say.
pub(super) struct LayerSource<'a> {
    pub(super) path: &'a Path,
    /// The layer that the user names.
    pub(super) layer: Option<&'a str>,
    /// The coordinate reference system that the user states.
    pub(super) crs: Option<&'a str>,
    /// What is read of it; all where it is `None`.
    pub(super) part: Option<Part>,
    pub(super) content: LayerContent,
    /// The schema's name.
    pub(super) schema: &'a str,
    /// Names of attributes: of each list it must have one.
    pub(super) needed: Vec<&'a [String]>,
}

/// Reads a layer, all of it or a part.
///
/// The layer is the named one, or the only one, or the only one with the needed attributes.
/// `prepare` looks at its attributes, `visit` takes each feature and gives back its box. Comes
/// back with the layer's system and where it stands.
pub(super) fn read_layer<Columns>(
    source: &LayerSource<'_>,
    prepare: impl FnOnce(&FeatureReader<'_>) -> Result<Columns, HazardError>,
    mut visit: impl FnMut(&Columns, &str, &Record<'_>) -> Result<Option<Rect<f64>>, HazardError>,
) -> Result<(Projector, LayerOrigin), HazardError> {
    let dataset = gis::open_vector(source.path)?;
    let reader = choose_layer(source, &dataset)?;
    let name = reader.name().to_owned();
    let origin = LayerOrigin {
        path: source.path.to_owned(),
        layer: name.clone(),
        dated: reader.stated_date(),
        fetched: reader.fetched(),
    };
    let crs = crs_of(&reader, &dataset, source)?;
    if let Some(extent) = reader.extent() {
        check_degrees(&crs, extent, source, &name)?;
    }
    let refused = |error| source.refused(&name, error);
    let projector = Projector::new(crs).map_err(refused)?;
    let columns = prepare(&reader)?;
    let area = source.part.map(|part| part.area(&projector)).transpose();
    let reader = match area.map_err(refused)?.flatten() {
        None => reader,
        Some(area) => reader.within(area),
    };
    reader.read(|record| {
        if let Some(extent) = visit(&columns, &name, record)? {
            check_degrees(projector.target(), extent, source, &name)?;
        }
        Ok::<(), HazardError>(())
    })?;
    Ok((projector, origin))
}

impl LayerSource<'_> {
    pub(super) fn without_attribute(
        &self,
        reader: &FeatureReader<'_>,
        needed: &str,
    ) -> HazardError {
        HazardError::NoAttribute {
            path: self.path.to_owned(),
            layer: reader.name().to_owned(),
            needed: needed.to_owned(),
            schema: self.schema.to_owned(),
            attributes: reader.attributes().to_vec(),
        }
    }

    fn refused(&self, layer: &str, error: CrsError) -> HazardError {
        HazardError::Crs {
            path: self.path.to_owned(),
            layer: layer.to_owned(),
            content: self.content,
            source: Box::new(error),
        }
    }
}

fn choose_layer<'dataset>(
    source: &LayerSource<'_>,
    dataset: &'dataset Dataset,
) -> Result<FeatureReader<'dataset>, HazardError> {
    let path = source.path;
    let names = FeatureReader::layers(dataset);
    let open = |name: &str| FeatureReader::new(dataset, path, name);
    let lacking = |reader: &FeatureReader<'_>| {
        let lacks = |names: &&&[String]| !names.iter().any(|name| reader.attribute(name).is_some());
        source
            .needed
            .iter()
            .find(lacks)
            .map(|names| names.join(" or "))
    };
    let reader = match (source.layer, names.as_slice()) {
        (Some(layer), _) => open(layer)?,
        (None, []) => {
            return Err(HazardError::NoLayers {
                path: path.to_owned(),
            });
        }
        (None, [only]) => open(only)?,
        (None, several) => {
            let mut fitting = Vec::new();
            for name in several {
                let reader = open(name)?;
                if lacking(&reader).is_none() {
                    fitting.push(reader);
                }
            }
            match (fitting.pop(), fitting.is_empty()) {
                (Some(reader), true) => reader,
                _ => {
                    return Err(HazardError::WhichLayer {
                        path: path.to_owned(),
                        content: source.content,
                        layers: names,
                    });
                }
            }
        }
    };
    match lacking(&reader) {
        None => Ok(reader),
        Some(needed) => Err(source.without_attribute(&reader, &needed)),
    }
}

fn crs_of(
    reader: &FeatureReader<'_>,
    dataset: &Dataset,
    source: &LayerSource<'_>,
) -> Result<HorizontalCrs, HazardError> {
    let (path, content) = (source.path, source.content);
    let layer = reader.name().to_owned();
    let refused = |error| source.refused(&layer, error);
    let stated = source.crs.map(CrsDefinition::from_text);
    let stated = stated.transpose().map_err(refused)?;
    let file = reader.spatial_ref();
    let file = file.map(|file| CrsDefinition::from_spatial_ref(&file));
    match (file, stated) {
        (None, None) => Err(HazardError::NoCrs {
            path: path.to_owned(),
            layer,
            content,
        }),
        (Some(file), None) => Ok(file.map_err(refused)?.horizontal),
        (None | Some(Err(_)), Some(stated)) => Ok(stated.horizontal),
        (Some(Ok(file)), Some(stated)) => {
            let (file, stated) = (file.horizontal, stated.horizontal);
            // For a GeoJSON that names no system GDAL says WGS 84, and does not say that it
            // has supplied it.
            let supplied =
                dataset.driver().short_name() == "GeoJSON" && file.definition() == "EPSG:4326";
            if supplied || file.definition() == stated.definition() || file.name() == stated.name()
            {
                Ok(stated)
            } else {
                Err(HazardError::CrsContradiction {
                    path: path.to_owned(),
                    layer,
                    content,
                    file: file.name().to_owned(),
                    stated: stated.name().to_owned(),
                })
            }
        }
    }
}

/// Degrees beyond a full turn or the poles are not degrees.
fn check_degrees(
    crs: &HorizontalCrs,
    extent: Rect<f64>,
    source: &LayerSource<'_>,
    layer: &str,
) -> Result<(), HazardError> {
    if !crs.is_geographic() {
        return Ok(());
    }
    let (low, high) = (extent.min(), extent.max());
    for (axis, bound, values) in [
        ("longitude", 360.0, [low.x, high.x]),
        ("latitude", 90.0, [low.y, high.y]),
    ] {
        // Rounding may put the pole itself a hair beyond the pole.
        if let Some(value) = values.into_iter().find(|value| value.abs() > bound + 1e-9) {
            return Err(HazardError::NotDegrees {
                path: source.path.to_owned(),
                layer: layer.to_owned(),
                content: source.content,
                axis,
                value,
                bound,
                crs: crs.name().to_owned(),
            });
        }
    }
    Ok(())
}
