//! Blocks of a GeoTIFF that are deflated, read past GDAL.
//!
//! Decoding blocks is a fifth of a large table's time. GDAL says where a block lies and how it
//! is stored; a faster library inflates it, and its cells go to the tile at once and not through
//! GDAL's own memory of blocks. Whatever is stored otherwise, or does not come out as it should,
//! is left to GDAL, which also says what is wrong with it.

use std::cell::RefCell;
use std::fs::File;
use std::io::{ErrorKind, Read, Seek, SeekFrom};
use std::path::Path;

use gdal::raster::{GdalDataType, RasterBand};
use gdal::{Dataset, Metadata};
use libdeflater::Decompressor;

use super::predictor::{ByteOrder, Predictor};
use super::values::Values;
use super::window::Window;

/// The blocks of a band of one of the usual types.
pub(super) struct Deflated {
    file: RefCell<File>,
    kind: GdalDataType,
    cell_bytes: usize,
    /// Columns and rows of a block.
    block: (usize, usize),
    predictor: Predictor,
    order: ByteOrder,
    work: RefCell<Work>,
}

/// What each block needs anew.
struct Work {
    inflate: Decompressor,
    packed: Vec<u8>,
    plain: Vec<u8>,
}

/// Why a window is not read here.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Unread {
    /// GDAL has to read it.
    LeftToGdal,
    /// The file ends within a block.
    CutShort {
        /// Its column and row among the blocks.
        block: (usize, usize),
    },
}

impl Deflated {
    /// `None` where the file is stored otherwise.
    pub(super) fn of(path: &Path, dataset: &Dataset, band: &RasterBand<'_>) -> Option<Self> {
        if dataset.driver().short_name() != "GTiff" || dataset.raster_count() != 1 {
            return None;
        }
        let structure = |name| dataset.metadata_item(name, "IMAGE_STRUCTURE");
        if structure("COMPRESSION").as_deref() != Some("DEFLATE") {
            return None;
        }
        // Numbers of fewer bits than their type.
        if band.metadata_item("NBITS", "IMAGE_STRUCTURE").is_some() {
            return None;
        }
        let kind = band.band_type();
        let cell_bytes = match kind {
            GdalDataType::UInt8 | GdalDataType::Int8 => 1,
            GdalDataType::UInt16 | GdalDataType::Int16 => 2,
            GdalDataType::Float32 => 4,
            GdalDataType::Float64 => 8,
            _ => return None,
        };
        let mut file = File::open(path).ok()?;
        let mut mark = [0; 2];
        file.read_exact(&mut mark).ok()?;
        Some(Self {
            file: RefCell::new(file),
            kind,
            cell_bytes,
            block: band.block_size(),
            predictor: Predictor::from_tag(structure("PREDICTOR").as_deref())?,
            order: ByteOrder::from_mark(mark)?,
            work: RefCell::new(Work {
                inflate: Decompressor::new(),
                packed: Vec::new(),
                plain: Vec::new(),
            }),
        })
    }

    /// The stored values of a window of whole blocks, row after row.
    pub(super) fn read(&self, band: &RasterBand<'_>, window: Window) -> Result<Values, Unread> {
        let cells = window.columns * window.rows;
        let single = || vec![0_f32; cells];
        Ok(match self.kind {
            GdalDataType::UInt8 => {
                Values::Single(self.cells(band, window, single(), |[byte]| byte.into())?)
            }
            GdalDataType::Int8 => Values::Single(self.cells(band, window, single(), |bytes| {
                i8::from_le_bytes(bytes).into()
            })?),
            GdalDataType::UInt16 => {
                Values::Single(self.cells(band, window, single(), |bytes| {
                    u16::from_le_bytes(bytes).into()
                })?)
            }
            GdalDataType::Int16 => Values::Single(self.cells(band, window, single(), |bytes| {
                i16::from_le_bytes(bytes).into()
            })?),
            GdalDataType::Float32 => {
                Values::Single(self.cells(band, window, single(), f32::from_le_bytes)?)
            }
            _ => Values::Double(self.cells(band, window, vec![0.0; cells], f64::from_le_bytes)?),
        })
    }

    fn cells<const BYTES: usize, T>(
        &self,
        band: &RasterBand<'_>,
        window: Window,
        mut cells: Vec<T>,
        value: impl Fn([u8; BYTES]) -> T + Copy,
    ) -> Result<Vec<T>, Unread> {
        let (across, down) = self.block;
        if !window.column.is_multiple_of(across) || !window.row.is_multiple_of(down) {
            return Err(Unread::LeftToGdal);
        }
        let mut work = self.work.borrow_mut();
        let mut line = vec![[0; BYTES]; across];
        for top in (0..window.rows).step_by(down) {
            for left in (0..window.columns).step_by(across) {
                let block = ((window.column + left) / across, (window.row + top) / down);
                let columns = across.min(window.columns - left);
                let rows = down.min(window.rows - top);
                let plain = self.inflate(band, block, rows, &mut work)?;
                let stored = plain.chunks_exact(across * BYTES).take(rows);
                for (row, stored) in stored.enumerate() {
                    self.predictor.undo(stored, self.order, &mut line);
                    let start = (top + row) * window.columns + left;
                    let target = cells.get_mut(start..start + columns);
                    let target = target.ok_or(Unread::LeftToGdal)?;
                    for (cell, bytes) in target.iter_mut().zip(&line) {
                        *cell = value(*bytes);
                    }
                }
            }
        }
        Ok(cells)
    }

    /// The bytes of a block, of which so many rows are wanted.
    fn inflate<'work>(
        &self,
        band: &RasterBand<'_>,
        block: (usize, usize),
        rows: usize,
        work: &'work mut Work,
    ) -> Result<&'work [u8], Unread> {
        let line = self.block.0 * self.cell_bytes;
        let whole = line * self.block.1;
        // The size is only the file's word: no writer packs a block to twice what it holds.
        let (offset, size) = stated(band, block)
            .filter(|(_, size)| *size <= 2 * whole + 1024)
            .ok_or(Unread::LeftToGdal)?;
        work.packed.resize(size, 0);
        work.plain.resize(whole, 0);
        let mut file = self.file.borrow_mut();
        let read = file.seek(SeekFrom::Start(offset));
        let read = read.and_then(|_| file.read_exact(&mut work.packed));
        read.map_err(|error| match error.kind() {
            ErrorKind::UnexpectedEof => Unread::CutShort { block },
            _ => Unread::LeftToGdal,
        })?;
        let inflated = work.inflate.zlib_decompress(&work.packed, &mut work.plain);
        // The last strip of a file has fewer rows.
        let length = inflated
            .ok()
            .filter(|length| *length == whole || *length == line * rows);
        let plain = length.and_then(|length| work.plain.get(..length));
        plain.ok_or(Unread::LeftToGdal)
    }
}

/// Where a block begins in the file and how many bytes it has; `None` where it is not stored.
fn stated(band: &RasterBand<'_>, (column, row): (usize, usize)) -> Option<(u64, usize)> {
    let item = |what| band.metadata_item(&format!("BLOCK_{what}_{column}_{row}"), "TIFF");
    Some((item("OFFSET")?.parse().ok()?, item("SIZE")?.parse().ok()?))
}

#[cfg(test)]
mod tests;
