//! Tags by their names (TIFF 6.0; `GeoTIFF` 1.1, OGC 19-008r4; those of GDAL as it documents
//! them).

pub(crate) const NEW_SUBFILE_TYPE: u16 = 254;
pub(crate) const IMAGE_WIDTH: u16 = 256;
pub(crate) const IMAGE_LENGTH: u16 = 257;
pub(crate) const BITS_PER_SAMPLE: u16 = 258;
pub(crate) const COMPRESSION: u16 = 259;
pub(crate) const PHOTOMETRIC_INTERPRETATION: u16 = 262;
pub(crate) const STRIP_OFFSETS: u16 = 273;
pub(crate) const SAMPLES_PER_PIXEL: u16 = 277;
pub(crate) const ROWS_PER_STRIP: u16 = 278;
pub(crate) const STRIP_BYTE_COUNTS: u16 = 279;
pub(crate) const PLANAR_CONFIGURATION: u16 = 284;
pub(crate) const TILE_WIDTH: u16 = 322;
pub(crate) const TILE_LENGTH: u16 = 323;
pub(crate) const TILE_OFFSETS: u16 = 324;
pub(crate) const TILE_BYTE_COUNTS: u16 = 325;
pub(crate) const MODEL_TIEPOINT: u16 = 33922;
pub(crate) const MODEL_TRANSFORMATION: u16 = 34264;
pub(crate) const GDAL_METADATA: u16 = 42112;

/// `NewSubfileType` of a smaller copy, and of a mask (TIFF 6.0, section 8).
pub(crate) const REDUCED: u64 = 1;
pub(crate) const MASK: u64 = 4;

/// Types of values.
pub(crate) const ASCII: u16 = 2;
pub(crate) const SHORT: u16 = 3;
pub(crate) const LONG: u16 = 4;
pub(crate) const DOUBLE: u16 = 12;
pub(crate) const IFD: u16 = 13;
pub(crate) const LONG8: u16 = 16;
pub(crate) const IFD8: u16 = 18;

/// Tags that lead elsewhere in the file, to what is not copied: free space, JPEG of the old kind,
/// further directories (TIFF 6.0, sections 8 and 22; its supplement 1; EXIF 2.3).
pub(crate) const LEADING_ELSEWHERE: [u16; 11] = [
    288, 289, 330, 513, 519, 520, 521, 34665, 34853, 40965, 50740,
];
