//! From the cells of a file to metres.

use std::path::{Path, PathBuf};

use gdal::Dataset;
use gdal::raster::{GdalDataType, RasterBand};

use super::TerrainError;
use super::deflated::{Deflated, Unread};
use super::no_data::NoData;
use super::tiling::Tiling;
use super::values::{Precision, Values};
use super::window::{self, Window};
use crate::gis::{self, GisError};
use crate::quantity::{LengthUnit, unit::meter};

/// Heights outside these bounds are not on the earth's dry surface: the shore of the Dead
/// Sea lies 430 m below sea level, Mount Everest's summit 8849 m above. A cell beyond them
/// is a mark for no value that the file does not declare.
const LOWEST_METRES: f64 = -500.0;
const HIGHEST_METRES: f64 = 9000.0;

/// The band of a raster, and which of its values are heights.
pub(super) struct Cells {
    path: PathBuf,
    dataset: Dataset,
    deflated: Option<Deflated>,
    precision: Precision,
    block: (usize, usize),
    no_data: NoData,
    masked: bool,
    scale: Scale,
}

/// How a stored value is read in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Scale {
    factor: f64,
    offset: f64,
    metres_per_unit: f64,
}

impl Scale {
    /// NaN for NaN.
    #[inline]
    pub(super) fn metres(self, stored: f64) -> f64 {
        (stored * self.factor + self.offset) * self.metres_per_unit
    }
}

impl Cells {
    pub(super) fn new(
        path: PathBuf,
        dataset: Dataset,
        unit: LengthUnit,
    ) -> Result<Self, TerrainError> {
        let band = band(&path, &dataset)?;
        let kind = band.band_type();
        if kind == GdalDataType::Unknown {
            return Err(TerrainError::CellType { path });
        }
        let factor = band.scale().unwrap_or(1.0);
        let offset = band.offset().unwrap_or(0.0);
        if factor == 0.0 || !factor.is_finite() || !offset.is_finite() {
            return Err(TerrainError::Scale {
                path,
                scale: factor,
                offset,
            });
        }
        let no_data = NoData::of_band(&band);
        let block = band.block_size();
        let masked = band
            .mask_flags()
            .is_ok_and(|flags| flags.is_per_dataset() || flags.is_alpha());
        let deflated = Deflated::of(&path, &dataset, &band);
        Ok(Self {
            path,
            dataset,
            deflated,
            precision: Precision::of(kind),
            block,
            no_data,
            masked,
            scale: Scale {
                factor,
                offset,
                metres_per_unit: unit.length(1.0).get::<meter>(),
            },
        })
    }

    pub(super) const fn scale(&self) -> Scale {
        self.scale
    }

    /// Bytes of one cell in memory.
    pub(super) const fn bytes_per_cell(&self) -> usize {
        self.precision.bytes()
    }

    /// The tiles that the file's blocks suggest.
    pub(super) fn tiling(&self) -> Tiling {
        Tiling::new(self.dataset.raster_size(), self.block, self.precision)
    }

    /// The stored values of a window; NaN where there is no height.
    ///
    /// # Errors
    /// [`GisError::Read`]: a file that is cut short opens well and fails here.
    pub(super) fn read(&self, window: Window) -> Result<Values, TerrainError> {
        let (read, heard) = gis::heard(|| -> Result<_, TerrainError> {
            let band = band(&self.path, &self.dataset)?;
            let values = self.stored(&band, window)?;
            let mask = if self.masked {
                let mask = band.open_mask_band();
                let mask = mask.and_then(|mask| window::read::<f32>(&mask, window));
                Some(mask.map_err(|error| self.failed(error.to_string()))?)
            } else {
                None
            };
            Ok((values, mask))
        });
        if !heard.is_empty() {
            return Err(self.failed(heard));
        }
        let (mut values, mask) = read?;
        match mask {
            // Most tiles have no voids, which two numbers tell.
            None if self.are_heights(&values) => {}
            None => values.retain(|_, stored| self.is_height(stored)),
            Some(mask) => values.retain(|index, stored| {
                mask.get(index).is_some_and(|mask| *mask != 0.0) && self.is_height(stored)
            }),
        }
        Ok(values)
    }

    /// The stored values of a window, past GDAL where that can be.
    fn stored(&self, band: &RasterBand<'_>, window: Window) -> Result<Values, TerrainError> {
        let deflated = self.deflated.as_ref();
        let read = deflated.map_or(Err(Unread::LeftToGdal), |blocks| blocks.read(band, window));
        read.or_else(|unread| match unread {
            Unread::CutShort { block } => Err(self.failed(format!(
                "it ends within its block in column {} and row {} of blocks",
                block.0 + 1,
                block.1 + 1
            ))),
            Unread::LeftToGdal => match self.precision {
                Precision::Single => window::read(band, window).map(Values::Single),
                Precision::Double => window::read(band, window).map(Values::Double),
            }
            .map_err(|error| self.failed(error.to_string())),
        })
    }

    fn failed(&self, detail: String) -> TerrainError {
        GisError::Read {
            path: self.path.clone(),
            detail,
        }
        .into()
    }

    /// Whether all values are heights; `false` where each has to be looked at.
    fn are_heights(&self, values: &Values) -> bool {
        values.range().is_some_and(|(low, high)| {
            let within = self.is_height(low) && self.is_height(high);
            within && !self.no_data.may_mark_within(low, high)
        })
    }

    #[inline]
    fn is_height(&self, stored: f64) -> bool {
        !self.no_data.marks(stored)
            && (LOWEST_METRES..=HIGHEST_METRES).contains(&self.scale.metres(stored))
    }
}

fn band<'dataset>(
    path: &Path,
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
