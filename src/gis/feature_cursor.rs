//! Reading a layer's features one after the other, from any place in it.

use std::path::{Path, PathBuf};

use gdal::spatial_ref::SpatialRef;
use gdal::vector::{LayerAccess, OwnedFeatureIterator};
use gdal_sys::OGRwkbGeometryType;

use super::open::open_vector_as;
use super::{FeatureReader, GisError, Record, completeness, heard};

/// A layer that is read step by step, where [`FeatureReader`] reads it in one go.
///
/// Like that one it says at the end whether all features were read.
pub struct FeatureCursor {
    path: PathBuf,
    format: &'static str,
    layer: String,
    attributes: Vec<String>,
    has_geometry: bool,
    spatial_ref: Option<SpatialRef>,
    counted: u64,
    read: u64,
    features: OwnedFeatureIterator,
}

impl FeatureCursor {
    /// Opens a file of one of [`VECTOR_FORMATS`](super::VECTOR_FORMATS). Without a layer's
    /// name it must have one layer, those called as `beside` not counted.
    ///
    /// # Errors
    /// [`GisError`]: no such file, another format, [`GisError::NoSuchLayer`],
    /// [`GisError::SeveralLayers`].
    pub fn open(
        path: &Path,
        format: &'static str,
        layer: Option<&str>,
        beside: &[&str],
    ) -> Result<Self, GisError> {
        let dataset = open_vector_as(path, format)?;
        completeness::check_files(path, format)?;
        let present = FeatureReader::layers(&dataset);
        let name = match layer {
            Some(name) => name.to_owned(),
            None => only(path, &present, beside)?,
        };
        // It knows how to say which layers there are.
        drop(FeatureReader::new(&dataset, path, &name)?);
        let layer = dataset.into_layer_by_name(&name);
        let layer = layer.map_err(|error| GisError::Read {
            path: path.to_owned(),
            detail: error.to_string(),
        })?;
        let (counted, _) = heard(|| layer.feature_count());
        Ok(Self {
            path: path.to_owned(),
            format,
            attributes: layer.defn().fields().map(|field| field.name()).collect(),
            has_geometry: layer.defn().geometry_type() != OGRwkbGeometryType::wkbNone,
            spatial_ref: layer.spatial_ref(),
            layer: layer.name(),
            counted,
            read: 0,
            features: layer.owned_features(),
        })
    }

    /// The names of the layer's attributes, in its order.
    #[must_use]
    pub fn attributes(&self) -> &[String] {
        &self.attributes
    }

    /// Whether features may have a geometry.
    #[must_use]
    pub const fn has_geometry(&self) -> bool {
        self.has_geometry
    }

    /// The layer's coordinate reference system, where the file states one.
    #[must_use]
    pub const fn spatial_ref(&self) -> Option<&SpatialRef> {
        self.spatial_ref.as_ref()
    }

    /// How many features the layer says it has.
    #[must_use]
    pub const fn counted(&self) -> u64 {
        self.counted
    }

    /// How many features were read.
    #[must_use]
    pub const fn read(&self) -> u64 {
        self.read
    }

    /// Hands the next feature to `visit`; `None` after the last.
    ///
    /// # Errors
    /// [`GisError::Incomplete`] where GDAL reports a failure, or the layer ends before the
    /// features that it says it has.
    pub fn next<T>(&mut self, visit: impl FnOnce(&Record<'_>) -> T) -> Result<Option<T>, GisError> {
        let mut features = &mut self.features;
        let (visited, detail) = heard(|| {
            let feature = Iterator::next(&mut features)?;
            Some(visit(&Record { feature: &feature }))
        });
        let ended_early = visited.is_none() && self.read < self.counted;
        if ended_early || !detail.is_empty() {
            return Err(GisError::Incomplete {
                path: self.path.clone(),
                layer: self.layer.clone(),
                read: self.read,
                counted: self.counted,
                detail,
            });
        }
        self.read += u64::from(visited.is_some());
        Ok(visited)
    }

    /// Goes to the feature that has so many before it, or to the end where there are fewer.
    ///
    /// # Errors
    /// As [`open`](Self::open) and [`next`](Self::next).
    pub fn seek(&mut self, before: u64) -> Result<(), GisError> {
        if before < self.read {
            *self = Self::open(&self.path, self.format, Some(&self.layer), &[])?;
        }
        while self.read < before && self.next(|_| ())?.is_some() {}
        Ok(())
    }
}

fn only(path: &Path, present: &[String], beside: &[&str]) -> Result<String, GisError> {
    let mut layers = present
        .iter()
        .filter(|layer| !beside.contains(&layer.as_str()));
    match (layers.next(), layers.next()) {
        (Some(layer), None) => Ok(layer.clone()),
        _ => Err(GisError::SeveralLayers {
            path: path.to_owned(),
            present: present.to_vec(),
        }),
    }
}
