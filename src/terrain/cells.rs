//! From stored values to metres.

use std::path::PathBuf;

use gdal::Dataset;
use gdal::raster::{GdalDataType, RasterBand};

use super::TerrainError;
use super::no_data::NoData;
use super::window::{self, Window};
use crate::gis::{self, GisError};
use crate::quantity::{LengthUnit, unit::meter};

/// Heights outside these bounds are not on the earth's dry surface: the shore of the Dead
/// Sea lies 430 m below sea level, Mount Everest's summit 8849 m above. A cell beyond them
/// is a mark for no value that the file does not declare.
const LOWEST_METRES: f64 = -500.0;
const HIGHEST_METRES: f64 = 9000.0;

/// The band of a raster and how to read heights from it.
pub(super) struct Cells {
    path: PathBuf,
    dataset: Dataset,
    no_data: NoData,
    masked: bool,
    scale: f64,
    offset: f64,
    metres_per_unit: f64,
}

impl Cells {
    pub(super) fn new(
        path: PathBuf,
        dataset: Dataset,
        unit: LengthUnit,
    ) -> Result<Self, TerrainError> {
        let band = band(&path, &dataset)?;
        if band.band_type() == GdalDataType::Unknown {
            return Err(TerrainError::CellType { path });
        }
        let scale = band.scale().unwrap_or(1.0);
        let offset = band.offset().unwrap_or(0.0);
        if scale == 0.0 || !scale.is_finite() || !offset.is_finite() {
            return Err(TerrainError::Scale {
                path,
                scale,
                offset,
            });
        }
        let no_data = NoData::of_band(&band);
        let masked = band
            .mask_flags()
            .is_ok_and(|flags| flags.is_per_dataset() || flags.is_alpha());
        Ok(Self {
            path,
            dataset,
            no_data,
            masked,
            scale,
            offset,
            metres_per_unit: unit.length(1.0).get::<meter>(),
        })
    }

    /// Heights in metres, row after row; NaN where there is none.
    ///
    /// # Errors
    /// [`GisError::Read`]: a file that is cut short opens well and fails here.
    pub(super) fn heights(&self, window: Window) -> Result<Vec<f64>, TerrainError> {
        let (stored, heard) = gis::heard(|| -> Result<_, TerrainError> {
            let band = band(&self.path, &self.dataset)?;
            let failed = |error: gdal::errors::GdalError| GisError::Read {
                path: self.path.clone(),
                detail: error.to_string(),
            };
            let mut stored = window::read(&band, window).map_err(failed)?;
            if self.masked {
                let mask = band.open_mask_band().map_err(failed)?;
                let mask = window::read(&mask, window).map_err(failed)?;
                for (value, mask) in stored.iter_mut().zip(mask) {
                    if mask == 0.0 {
                        *value = f64::NAN;
                    }
                }
            }
            Ok(stored)
        });
        if !heard.is_empty() {
            return Err(GisError::Read {
                path: self.path.clone(),
                detail: heard,
            }
            .into());
        }
        Ok(stored?
            .into_iter()
            .map(|value| self.height(value))
            .collect())
    }

    fn height(&self, stored: f64) -> f64 {
        if self.no_data.marks(stored) {
            return f64::NAN;
        }
        let metres = (stored * self.scale + self.offset) * self.metres_per_unit;
        if (LOWEST_METRES..=HIGHEST_METRES).contains(&metres) {
            metres
        } else {
            f64::NAN
        }
    }
}

fn band<'dataset>(
    path: &std::path::Path,
    dataset: &'dataset Dataset,
) -> Result<RasterBand<'dataset>, TerrainError> {
    dataset.rasterband(1).map_err(|error| {
        GisError::Read {
            path: path.to_owned(),
            detail: error.to_string(),
        }
        .into()
    })
}
