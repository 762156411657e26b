//! Is a file as long as its own header says?
//!
//! A download that broke off opens in GDAL, and a spatial filter then reads happily from the
//! part that is there. The headers of these formats state their length:
//!
//! * shapefile `.shp` and `.shx`: length in 16-bit words, big-endian, at byte 24; `.dbf`:
//!   records at byte 4 (32 bits), length of header at 8 and of a record at 10 (16 bits each),
//!   little-endian — ESRI Shapefile Technical Description, July 1998, pages 4 and 23–25;
//! * `GeoPackage`: an `SQLite` database; size of a page at byte 16 (16 bits, 1 for 65536), pages
//!   at byte 28 (32 bits), big-endian, valid where bytes 24 and 92 agree — `SQLite`
//!   database file format, section 1.3.

use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::{Path, PathBuf};

use super::GisError;

/// Checks the file of `path`, and those beside it that belong to it.
pub(super) fn check_files(path: &Path, driver: &str) -> Result<(), GisError> {
    match driver {
        "ESRI Shapefile" if path.is_file() => check_shapefile(path),
        "GPKG" => check_database(path),
        "OpenFileGDB" if path.is_dir() => check_geodatabase(path),
        _ => Ok(()),
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

fn check_database(path: &Path) -> Result<(), GisError> {
    // A write-ahead log may hold pages that the main file does not have yet.
    let mut log = path.as_os_str().to_owned();
    log.push("-wal");
    let (header, actual) = start_of(path)?;
    if header.get(24..28) != header.get(92..96) || Path::new(&log).exists() {
        return Ok(());
    }
    let size = match header.get(16..18).map(big_endian) {
        Some(1) => 65536,
        Some(size) => u64::from(size),
        None => return Ok(()),
    };
    let pages = header.get(28..32).map_or(0, big_endian);
    check_length(path, size * u64::from(pages), actual)
}

/// Checks every table of a file geodatabase.
///
/// The format is not published; that a table's header states the file's length at byte 24
/// (64 bits, little-endian) is what GDAL's driver writes and what the files at hand show. A
/// header that states none (zero) is not held against the file.
fn check_geodatabase(folder: &Path) -> Result<(), GisError> {
    let unreadable = |error: std::io::Error| GisError::Missing {
        path: folder.to_owned(),
        reason: error.to_string(),
        accepted: "the whole layer, with every file that belongs to it".to_owned(),
    };
    for entry in std::fs::read_dir(folder).map_err(unreadable)? {
        let part = entry.map_err(unreadable)?.path();
        if part
            .extension()
            .is_some_and(|extension| extension == "gdbtable")
        {
            let (header, actual) = start_of(&part)?;
            let stated = header.get(24..32).and_then(|bytes| bytes.try_into().ok());
            let stated = stated.map_or(0, u64::from_le_bytes);
            check_length(&part, stated, actual)?;
        }
    }
    Ok(())
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
