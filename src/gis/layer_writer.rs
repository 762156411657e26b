//! Writing layers, with what GDAL reports on the way made loud.

use std::path::Path;

use gdal::config::{
    clear_thread_local_config_option, get_config_option, set_thread_local_config_option,
};
use gdal::spatial_ref::{AxisMappingStrategy, SpatialRef};
use gdal::vector::{Defn, Feature, FieldDefn, Geometry, Layer, LayerAccess, LayerOptions};
use gdal::{Dataset, DriverManager, Metadata, errors::GdalError};
use gdal_sys::{OGRFieldType, OGRwkbGeometryType};

use geo::{MultiLineString, MultiPolygon};

use super::shape::{multi_line, multi_polygon};
use super::{FeatureReader, Fetched, GisError, heard, messages, open_vector, start};

/// A layer that is to be written.
#[derive(Clone, Copy, Debug)]
pub struct LayerPlan<'plan> {
    /// The format.
    pub format: LayerFormat,
    /// The layer's name.
    pub name: &'plan str,
    /// The names of its attributes with their kinds.
    pub fields: &'plan [(&'plan str, FieldKind)],
    /// What its features are.
    pub shape: LayerShape,
    /// The coordinate reference system of their geometry, by an authority's code or PROJJSON;
    /// `None` for a table without geometry.
    pub crs: Option<&'plan str>,
    /// The service that its features come from; `None` where it is none.
    pub fetched: Option<&'plan Fetched>,
}

/// What the features of a layer are, where they have a geometry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LayerShape {
    /// One point each.
    Points,
    /// One or more lines each.
    Lines,
    /// One or more polygons each.
    Areas,
}

/// What fills a layer with features.
pub type Fill<'fill, E> = Box<dyn FnOnce(&mut LayerDraft<'_>) -> Result<(), E> + 'fill>;

/// A format that layers are written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LayerFormat {
    /// `GeoPackage`, in one transaction, with a spatial index.
    GeoPackage,
    /// `FlatGeobuf`, without a spatial index: with one, features would change their order.
    FlatGeobuf,
}

/// What an attribute holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FieldKind {
    /// Text.
    Text,
    /// A number in double precision.
    Number,
    /// A whole number of 64 bits.
    Whole,
}

/// A layer while it is being written, feature by feature.
pub struct LayerDraft<'layer> {
    path: &'layer Path,
    layer: &'layer Layer<'layer>,
    defn: &'layer Defn,
    feature: Feature<'layer>,
    written: u64,
}

/// Writes a new file with one layer, filled by `fill`, then whatever `beside` adds to the
/// file. Returns the number of features, which were counted in the finished file.
///
/// # Errors
/// What `fill` returns; [`GisError::NotWritten`] with GDAL's messages. What is at `path` is
/// then not the layer and must be removed.
pub fn write_layer<E: From<GisError>>(
    path: &Path,
    plan: &LayerPlan<'_>,
    fill: impl FnOnce(&mut LayerDraft<'_>) -> Result<(), E>,
    beside: impl FnOnce(&mut Dataset) -> Result<(), GdalError>,
) -> Result<u64, E> {
    let written = write_layers(path, vec![(*plan, Box::new(fill))], beside)?;
    Ok(written.into_iter().sum())
}

/// As [`write_layer`], for several layers in one file, all of the first one's format; a
/// `GeoPackage` takes more than one. Returns the number of features of each.
///
/// # Errors
/// As [`write_layer`].
pub fn write_layers<E: From<GisError>>(
    path: &Path,
    layers: Vec<(LayerPlan<'_>, Fill<'_, E>)>,
    beside: impl FnOnce(&mut Dataset) -> Result<(), GdalError>,
) -> Result<Vec<u64>, E> {
    start();
    let names: Vec<&str> = layers.iter().map(|(plan, _)| plan.name).collect();
    let failed = |detail: String| GisError::NotWritten {
        path: path.to_owned(),
        detail,
    };
    let (outcome, failures) = heard(|| undated(|| write(path, layers, beside)));
    let written = outcome.map_err(|failure| match failure {
        Failure::Caller(error) => error,
        Failure::Gdal(error) if failures.is_empty() => failed(error.to_string()).into(),
        Failure::Gdal(_) => failed(failures.clone()).into(),
    })?;
    if !failures.is_empty() {
        return Err(failed(failures).into());
    }
    let finished = open_vector(path)?;
    for (name, written) in names.into_iter().zip(&written) {
        FeatureReader::new(&finished, path, name)?;
        let (counted, failures) = heard(|| {
            let layer = finished.layer_by_name(name);
            layer.map_or(0, |layer| layer.feature_count())
        });
        // An empty FlatGeobuf does not say how many features it has.
        if counted != *written || !failures.is_empty() {
            let detail = format!("{counted} of {written} features are in the file {failures}");
            return Err(failed(detail.trim_end().to_owned()).into());
        }
    }
    Ok(written)
}

enum Failure<E> {
    Caller(E),
    Gdal(GdalError),
}

impl<E> From<GdalError> for Failure<E> {
    fn from(error: GdalError) -> Self {
        Self::Gdal(error)
    }
}

fn write<E: From<GisError>>(
    path: &Path,
    layers: Vec<(LayerPlan<'_>, Fill<'_, E>)>,
    beside: impl FnOnce(&mut Dataset) -> Result<(), GdalError>,
) -> Result<Vec<u64>, Failure<E>> {
    let format = layers.first().map(|(plan, _)| plan.format);
    let driver = match format {
        Some(LayerFormat::GeoPackage) | None => "GPKG",
        Some(LayerFormat::FlatGeobuf) => "FlatGeobuf",
    };
    let mut dataset = DriverManager::get_driver_by_name(driver)?.create_vector_only(path)?;
    let fill = |dataset: &mut Dataset| -> Result<Vec<u64>, Failure<E>> {
        let layers = layers.into_iter();
        let written = layers.map(|(plan, fill)| write_features(dataset, path, &plan, fill));
        let written = written.collect::<Result<_, _>>()?;
        beside(dataset)?;
        Ok(written)
    };
    let written = if format == Some(LayerFormat::FlatGeobuf) {
        fill(&mut dataset)?
    } else {
        let mut transaction = dataset.start_transaction()?;
        let written = fill(&mut transaction)?;
        transaction.commit()?;
        written
    };
    dataset.close()?;
    Ok(written)
}

fn write_features<E: From<GisError>>(
    dataset: &mut Dataset,
    path: &Path,
    plan: &LayerPlan<'_>,
    fill: Fill<'_, E>,
) -> Result<u64, Failure<E>> {
    let crs = plan.crs.map(SpatialRef::from_definition).transpose()?;
    let crs = crs.map(|mut crs| {
        // Points are x (east) first, whatever the system's authority says.
        crs.set_axis_mapping_strategy(AxisMappingStrategy::TraditionalGisOrder);
        crs
    });
    let identifier = format!("FID={}", free_name("fid", plan.fields));
    let geometry = format!("GEOMETRY_NAME={}", free_name("geom", plan.fields));
    let options: &[&str] = match plan.format {
        LayerFormat::GeoPackage => &[&identifier, &geometry],
        LayerFormat::FlatGeobuf => &["SPATIAL_INDEX=NO"],
    };
    let mut layer = dataset.create_layer(LayerOptions {
        name: plan.name,
        srs: crs.as_ref(),
        ty: if crs.is_some() {
            match plan.shape {
                LayerShape::Points => OGRwkbGeometryType::wkbPoint,
                LayerShape::Lines => OGRwkbGeometryType::wkbMultiLineString,
                LayerShape::Areas => OGRwkbGeometryType::wkbMultiPolygon,
            }
        } else {
            OGRwkbGeometryType::wkbNone
        },
        options: Some(options),
    })?;
    for (key, text) in plan.fetched.into_iter().flat_map(Fetched::items) {
        layer.set_metadata_item(key, text, "")?;
    }
    for (name, kind) in plan.fields {
        let kind = match kind {
            FieldKind::Text => OGRFieldType::OFTString,
            FieldKind::Number => OGRFieldType::OFTReal,
            FieldKind::Whole => OGRFieldType::OFTInteger64,
        };
        FieldDefn::new(name, kind)?.add_to_layer(&layer)?;
    }
    let defn = Defn::from_layer(&layer);
    let mut draft = LayerDraft {
        path,
        layer: &layer,
        defn: &defn,
        feature: Feature::new(&defn)?,
        written: 0,
    };
    fill(&mut draft).map_err(Failure::Caller)?;
    Ok(draft.written)
}

/// A name that no attribute has: a `GeoPackage` does not tell upper from lower case.
fn free_name(wanted: &str, fields: &[(&str, FieldKind)]) -> String {
    let mut name = wanted.to_owned();
    while fields
        .iter()
        .any(|(field, _)| field.eq_ignore_ascii_case(&name))
    {
        name.push('_');
    }
    name
}

/// Runs `work` with one date for all times: the same features shall give the same bytes.
fn undated<T>(work: impl FnOnce() -> T) -> T {
    const DATE: &str = "OGR_CURRENT_DATE";
    if get_config_option(DATE, "").is_ok_and(|date| !date.is_empty()) {
        return work();
    }
    // Where it cannot be set, the file has today's date and is as good.
    let _ = set_thread_local_config_option(DATE, "1970-01-01T00:00:00.000Z");
    let result = work();
    let _ = clear_thread_local_config_option(DATE);
    result
}

impl LayerDraft<'_> {
    /// Sets an attribute of the feature that is being made; those not set are null.
    ///
    /// # Errors
    /// [`GisError::NotWritten`] with what GDAL says.
    pub fn text(&mut self, field: usize, text: &str) -> Result<(), GisError> {
        let set = self.feature.set_field_string(field, text);
        self.told(set)
    }

    /// As [`text`](Self::text), for a number.
    ///
    /// # Errors
    /// As [`text`](Self::text).
    pub fn number(&mut self, field: usize, number: f64) -> Result<(), GisError> {
        let set = self.feature.set_field_double(field, number);
        self.told(set)
    }

    /// As [`text`](Self::text), for a whole number.
    ///
    /// # Errors
    /// As [`text`](Self::text).
    pub fn whole(&mut self, field: usize, number: i64) -> Result<(), GisError> {
        let set = self.feature.set_field_integer64(field, number);
        self.told(set)
    }

    /// Sets the feature's point, x (east) first.
    ///
    /// # Errors
    /// As [`text`](Self::text).
    pub fn point(&mut self, x: f64, y: f64) -> Result<(), GisError> {
        let point = Geometry::empty(OGRwkbGeometryType::wkbPoint);
        let set = point.and_then(|mut point| {
            point.set_point_2d(0, (x, y));
            self.feature.set_geometry(point)
        });
        self.told(set)
    }

    /// Sets the feature's lines.
    ///
    /// # Errors
    /// As [`text`](Self::text).
    pub fn lines(&mut self, lines: &MultiLineString<f64>) -> Result<(), GisError> {
        let set = multi_line(lines).and_then(|shape| self.feature.set_geometry(shape));
        self.told(set)
    }

    /// Sets the feature's polygons.
    ///
    /// # Errors
    /// As [`text`](Self::text).
    pub fn areas(&mut self, areas: &MultiPolygon<f64>) -> Result<(), GisError> {
        let set = multi_polygon(areas).and_then(|shape| self.feature.set_geometry(shape));
        self.told(set)
    }

    /// Writes the feature and begins the next.
    ///
    /// # Errors
    /// As [`text`](Self::text).
    pub fn end_feature(&mut self) -> Result<(), GisError> {
        let written = Feature::new(self.defn)
            .and_then(|next| std::mem::replace(&mut self.feature, next).create(self.layer));
        self.written += 1;
        self.told(written)
    }

    /// An error with GDAL's own messages, which say more than the number that it returns.
    fn told(&self, outcome: Result<(), GdalError>) -> Result<(), GisError> {
        outcome.map_err(|error| {
            let heard = messages::failures();
            GisError::NotWritten {
                path: self.path.to_owned(),
                detail: if heard.is_empty() {
                    error.to_string()
                } else {
                    heard
                },
            }
        })
    }
}
