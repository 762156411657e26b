//! Reading a layer's features to the last, or saying that it could not be done.

use std::path::{Path, PathBuf};

use gdal::Dataset;
use gdal::spatial_ref::SpatialRef;
use gdal::vector::{Feature, Layer, LayerAccess};
use geo::{MultiLineString, MultiPolygon, Rect};

use super::geometry::{lines, point, polygons};
use super::value::append_number;
use super::{AttributeValue, Fetched, GeometryProblem, GisError, completeness, heard, stated_date};

/// Reads the features of one layer, all or within a box.
///
/// GDAL's own feature loop ends without an error where the file ends too early or a record
/// cannot be decoded. This one reads to the end and then asks: did GDAL report a failure,
/// are there as many features as the layer says, is each file as long as its header says?
pub struct FeatureReader<'dataset> {
    path: PathBuf,
    driver: String,
    name: String,
    attributes: Vec<String>,
    layer: Layer<'dataset>,
    within: Option<Rect<f64>>,
}

/// One feature while it is being read.
pub struct Record<'feature> {
    pub(super) feature: &'feature Feature<'feature>,
}

impl<'dataset> FeatureReader<'dataset> {
    /// A reader of the layer called `name` of a dataset that was opened from `path`.
    ///
    /// # Errors
    /// [`GisError::NoSuchLayer`] listing the layers there are.
    pub fn new(dataset: &'dataset Dataset, path: &Path, name: &str) -> Result<Self, GisError> {
        let layer = dataset
            .layer_by_name(name)
            .map_err(|_| GisError::NoSuchLayer {
                path: path.to_owned(),
                layer: name.to_owned(),
                present: Self::layers(dataset),
            })?;
        Ok(Self {
            path: path.to_owned(),
            driver: dataset.driver().short_name(),
            name: layer.name(),
            attributes: layer.defn().fields().map(|field| field.name()).collect(),
            layer,
            within: None,
        })
    }

    /// The names of a dataset's layers, in its order.
    #[must_use]
    pub fn layers(dataset: &Dataset) -> Vec<String> {
        dataset.layers().map(|layer| layer.name()).collect()
    }

    /// The layer's name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The names of the layer's attributes, in its order.
    #[must_use]
    pub fn attributes(&self) -> &[String] {
        &self.attributes
    }

    /// The position of an attribute; upper and lower case do not matter.
    #[must_use]
    pub fn attribute(&self, name: &str) -> Option<usize> {
        self.attributes
            .iter()
            .position(|attribute| attribute.eq_ignore_ascii_case(name))
    }

    /// The layer's coordinate reference system, where the file states one (for GeoJSON,
    /// WGS 84 where it states none).
    #[must_use]
    pub fn spatial_ref(&self) -> Option<SpatialRef> {
        self.layer.spatial_ref()
    }

    /// What the layer says of its date, in words; `None` where it says nothing.
    #[must_use]
    pub fn stated_date(&self) -> Option<String> {
        stated_date(&self.layer)
    }

    /// Where and when the layer was fetched, where it came from a service.
    #[must_use]
    pub fn fetched(&self) -> Option<Fetched> {
        Fetched::of(&self.layer)
    }

    /// The box around all coordinates of the layer; `None` where it has none, or where the
    /// file states one that is not finite.
    #[must_use]
    pub fn extent(&self) -> Option<Rect<f64>> {
        let extent = self.layer.get_extent().ok()?;
        let (lowest, highest) = ((extent.MinX, extent.MinY), (extent.MaxX, extent.MaxY));
        let finite = [lowest.0, lowest.1, highest.0, highest.1]
            .iter()
            .all(|side| side.is_finite());
        finite.then(|| Rect::new(lowest, highest))
    }

    /// Restricts reading to features whose box meets `area`, in the layer's coordinates.
    #[must_use]
    pub fn within(mut self, area: Rect<f64>) -> Self {
        self.within = Some(area);
        self
    }

    /// Hands every feature to `visit` and returns how many there were.
    ///
    /// # Errors
    /// What `visit` returns; [`GisError::Incomplete`], [`GisError::CutShort`],
    /// [`GisError::UnequalParts`] or [`GisError::Read`] where not all could be read. What
    /// `visit` gathered before such an error is not the layer and must be dropped.
    pub fn read<E: From<GisError>>(
        mut self,
        mut visit: impl FnMut(&Record<'_>) -> Result<(), E>,
    ) -> Result<u64, E> {
        completeness::check_files(&self.path, &self.driver)?;
        let (counted, _) = heard(|| self.layer.feature_count());
        self.check_last(counted)?;
        let whole = self.within.is_none() || completeness::has_loose_index(&self.path);
        if let Some(area) = self.within.filter(|_| !whole) {
            let (lowest, highest) = (area.min(), area.max());
            self.layer
                .set_spatial_filter_rect(lowest.x, lowest.y, highest.x, highest.y);
        }
        let within = self.within;
        // The look at the last feature may have left the layer at its end.
        self.layer.reset_feature_reading();
        let (outcome, failures) = heard(|| {
            let (mut read, mut visited): (u64, u64) = (0, 0);
            #[allow(clippy::disallowed_methods)] // the checks that it needs follow
            for feature in self.layer.features() {
                read += 1;
                let record = Record { feature: &feature };
                if within.is_none_or(|area| record.meets(area)) {
                    visit(&record)?;
                    visited += 1;
                }
            }
            Ok::<_, E>((read, visited))
        });
        let (read, visited) = outcome?;
        // A count under a spatial filter is no measure: GeoPackage counts boxes rounded to
        // single precision, FlatGeobuf counts by the same loop. There the checks before
        // have shown that the file is whole.
        if !failures.is_empty() || (whole && read < counted) {
            return Err(self.incomplete(read, counted, failures).into());
        }
        Ok(visited)
    }

    /// In the formats that keep features in the order of their numbers, the last one can be
    /// read only where nothing before it is missing.
    fn check_last(&self, counted: u64) -> Result<(), GisError> {
        let in_order = matches!(self.driver.as_str(), "FlatGeobuf" | "ESRI Shapefile");
        let Some(last) = counted.checked_sub(1).filter(|_| in_order) else {
            return Ok(());
        };
        let (found, failures) = heard(|| self.layer.feature(last).is_some());
        // A deleted record of a shapefile is absent and no failure.
        if failures.is_empty() && (found || self.driver == "ESRI Shapefile") {
            Ok(())
        } else {
            Err(GisError::NoLast {
                path: self.path.clone(),
                layer: self.name.clone(),
                counted,
                detail: failures,
            })
        }
    }

    fn incomplete(&self, read: u64, counted: u64, detail: String) -> GisError {
        GisError::Incomplete {
            path: self.path.clone(),
            layer: self.name.clone(),
            read,
            counted,
            detail,
        }
    }
}

impl Record<'_> {
    /// The feature's number in its file.
    #[must_use]
    pub fn number(&self) -> Option<u64> {
        self.feature.fid()
    }

    /// The attribute at `index`.
    #[must_use]
    pub fn value(&self, index: usize) -> AttributeValue {
        // As text first: the numeric calls give 0 for an attribute that is not set, which
        // here would be a flood level of zero.
        let Ok(Some(text)) = self.feature.field_as_string(index) else {
            return AttributeValue::Missing;
        };
        if text.is_empty() {
            return AttributeValue::Missing;
        }
        let number = match self.feature.field(index) {
            Ok(Some(value)) => match value {
                gdal::vector::FieldValue::RealValue(number) => Some(number),
                gdal::vector::FieldValue::IntegerValue(number) => Some(f64::from(number)),
                gdal::vector::FieldValue::Integer64Value(_) => text.parse().ok(),
                _ => None,
            },
            _ => None,
        };
        number.map_or(AttributeValue::Text(text), AttributeValue::Number)
    }

    /// Appends the attribute at `index` as text that loses nothing: numbers with as many
    /// digits as it takes to read the same number again. Nothing where it is missing or not a
    /// number.
    pub fn append(&self, index: usize, text: &mut String) {
        let written = self.feature.field_as_string(index);
        // Empty also where it is not set, which the numeric calls would give as 0.
        let Some(written) = written.ok().flatten().filter(|text| !text.is_empty()) else {
            return;
        };
        match self.feature.field(index) {
            Ok(Some(gdal::vector::FieldValue::RealValue(number))) => append_number(text, number),
            _ => text.push_str(&written),
        }
    }

    /// The feature's point; `None` where it has no geometry or an empty one.
    ///
    /// # Errors
    /// [`GeometryProblem`] for anything but a point.
    pub fn point(&self) -> Result<Option<(f64, f64)>, GeometryProblem> {
        self.geometry().map_or(Ok(None), point)
    }

    /// The feature's areas; `None` where it has no geometry or an empty one.
    ///
    /// # Errors
    /// [`GeometryProblem`] for anything but polygons and multipolygons.
    pub fn polygons(&self) -> Result<Option<MultiPolygon<f64>>, GeometryProblem> {
        self.geometry().map_or(Ok(None), polygons)
    }

    /// The feature's lines; `None` where it has no geometry or an empty one.
    ///
    /// # Errors
    /// [`GeometryProblem`] for anything but line strings and multi line strings.
    pub fn lines(&self) -> Result<Option<MultiLineString<f64>>, GeometryProblem> {
        self.geometry().map_or(Ok(None), lines)
    }

    /// Whether the feature's box meets an area.
    fn meets(&self, area: Rect<f64>) -> bool {
        self.geometry().is_some_and(|geometry| {
            let bounds = geometry.envelope();
            !geometry.is_empty()
                && bounds.MinX <= area.max().x
                && bounds.MaxX >= area.min().x
                && bounds.MinY <= area.max().y
                && bounds.MaxY >= area.min().y
        })
    }

    /// The geometry, where the feature has one.
    fn geometry(&self) -> Option<&gdal::vector::Geometry> {
        // By index and not by `geometry()`, which hands out a null pointer for a feature
        // without one.
        self.feature.geometry_by_index(0).ok()
    }
}
