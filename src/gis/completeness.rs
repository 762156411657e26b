//! Is a shapefile as long as its own headers say?
//!
//! A download that broke off opens in GDAL, and a spatial filter then reads happily from the
//! part that is there: of an index of more than 2²⁰ shapes GDAL takes what there is, without
//! a word. The headers state the length (ESRI Shapefile Technical
//! Description, July 1998, pages 4 and 23 to 25):
//!
//! * `.shp` and `.shx`: in 16-bit words, big-endian, at byte 24;
//! * `.dbf`: records at byte 4 (32 bits), length of the header at byte 8 and of a record at
//!   byte 10 (16 bits each), little-endian.
//!
//! The other formats need no such look: `GeoPackage`'s database and the rows of a file
//! geodatabase fail loudly, a `FlatGeobuf` is asked for its last feature, and `GeoJSON` is
//! read whole when it is opened.

use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::{Path, PathBuf};

use super::GisError;

/// Checks the parts of a shapefile; other formats pass.
pub(super) fn check_files(path: &Path, driver: &str) -> Result<(), GisError> {
    if driver == "ESRI Shapefile" && path.is_file() {
        check_shapefile(path)
    } else {
        Ok(())
    }
}

/// Whether a shapefile has an index beside it (`.qix` or `.sbn`). Nothing ties one to the
/// state of the file: an index left from an older state hides features without an error.
pub(super) fn has_loose_index(path: &Path) -> bool {
    let is_shapefile = path
        .extension()
        .is_some_and(|extension| extension.eq_ignore_ascii_case("shp"));
    let beside = |extension: &&str| path.with_extension(extension).exists();
    // A folder of shapefiles is not looked through: every index in it would count.
    path.is_dir() || (is_shapefile && ["qix", "QIX", "sbn", "SBN"].iter().any(beside))
}

fn check_shapefile(path: &Path) -> Result<(), GisError> {
    let mut shapes = None;
    for extension in ["shp", "shx"] {
        let Some((part, header, actual)) = beside(path, extension)? else {
            continue;
        };
        let stated = header
            .get(24..28)
            .map_or(100, |bytes| 2 * u64::from(big_endian(bytes)));
        check_length(&part, stated.max(100), actual)?;
        if extension == "shx" {
            shapes = Some((part, (stated.max(100) - 100) / 8));
        }
    }
    let Some((table, header, actual)) = beside(path, "dbf")? else {
        return Ok(());
    };
    let field = |range: std::ops::Range<usize>| u64::from(little_endian(header.get(range)));
    let rows = field(4..8);
    check_length(&table, field(8..10) + field(10..12) * rows, actual)?;
    match shapes {
        Some((index, shapes)) if shapes != rows => Err(GisError::UnequalParts {
            table,
            rows,
            index,
            shapes,
        }),
        _ => Ok(()),
    }
}

fn check_length(path: &Path, stated: u64, actual: u64) -> Result<(), GisError> {
    if actual < stated {
        Err(GisError::CutShort {
            path: path.to_owned(),
            stated,
            actual,
        })
    } else {
        Ok(())
    }
}

/// The start and length of the file beside `path` with another extension, in either case.
fn beside(path: &Path, extension: &str) -> Result<Option<(PathBuf, Vec<u8>, u64)>, GisError> {
    [extension.to_owned(), extension.to_ascii_uppercase()]
        .into_iter()
        .map(|extension| path.with_extension(extension))
        .find(|part| part.exists())
        .map(|part| start_of(&part).map(|(header, length)| (part, header, length)))
        .transpose()
}

/// The first 100 bytes of a file, fewer where it has fewer, and its length.
fn start_of(path: &Path) -> Result<(Vec<u8>, u64), GisError> {
    let read = || {
        let mut file = File::open(path)?;
        let length = file.metadata()?.len();
        let mut header = Vec::with_capacity(100);
        file.by_ref().take(100).read_to_end(&mut header)?;
        Ok((header, length))
    };
    read().map_err(|error: std::io::Error| GisError::Missing {
        path: path.to_owned(),
        reason: match error.kind() {
            ErrorKind::UnexpectedEof => "it ends within its header".to_owned(),
            _ => error.to_string(),
        },
        accepted: "the whole layer, with every file that belongs to it".to_owned(),
    })
}

fn big_endian(bytes: &[u8]) -> u32 {
    bytes
        .iter()
        .fold(0, |value, byte| (value << 8) | u32::from(*byte))
}

fn little_endian(bytes: Option<&[u8]>) -> u32 {
    bytes
        .unwrap_or_default()
        .iter()
        .rev()
        .fold(0, |value, byte| (value << 8) | u32::from(*byte))
}
