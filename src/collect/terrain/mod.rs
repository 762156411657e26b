//! A terrain model by its address: the part of it that lies about some places.
//!
//! 1. The start of the file is read, its directories, and where its blocks (tiles or strips) lie.
//! 2. A file with the same directory and no blocks stands in for it: it is opened as terrain, which
//!    says what is missing or contradicts itself, and which cells the places ask for.
//! 3. The blocks that hold these cells are fetched by ranges of bytes, and written as they are
//!    into a GeoTIFF of its own, with all that the file says of them: no cell is decoded, and
//!    none changes.
//!
//! Outside that crop there is no terrain. Where a rectangle of blocks holds some that no place asks
//! for, and some that the file itself does not store, their cells are void: by the file's own mark
//! for no value, or by its mask, or by a mask that is added. So nothing that was not read is ever
//! taken for ground.
//!
//! A mask or statement in a file *beside* the served one (`.msk`, `.aux.xml`, a world file) is not
//! looked for.

mod blocks;
mod contents;
mod crop;
mod error;
mod image;
mod name;
mod origin;
mod pages;
mod part;
mod position;
mod served;
mod tiff;
mod units;

pub use error::CollectTerrainError;

use std::path::{Path, PathBuf};

use self::error::Refusals;
use self::served::Served;
use crate::gis::{Fetched, in_rfc3339};
use crate::quantity::Length;
use crate::service::{Address, Connection, FileParts, ServiceError};
use crate::site::Location;
use crate::terrain::DemStatement;

/// Bytes that are asked for at once.
const MOST_AT_ONCE: u64 = 8 << 20;

/// Bytes of all blocks of one crop.
const MOST_BYTES: u64 = 2 << 30;

/// Places with their margins, by the size of a cell.
pub type About<'a> = dyn Fn(Length) -> Vec<(Location, Length)> + 'a;

/// A part of a served terrain model.
#[derive(Clone, Debug, PartialEq)]
pub struct CollectedTerrain {
    /// The crop; `None` where no place asks for any of it.
    pub file: Option<PathBuf>,
    /// Where no place lies within the file: what it covers instead.
    pub beyond: Option<CollectTerrainError>,
    /// Where it comes from, without keys.
    pub address: String,
    /// Where it comes from and when it was fetched, or last confirmed.
    pub fetched: Fetched,
    /// What tells this edition of the file from another.
    pub edition: String,
    /// Bytes that were read of the file, from the server or from the cache.
    pub bytes_read: u64,
    /// Bytes of the whole file.
    pub bytes_total: u64,
}

/// Collects the part of a served GeoTIFF that lies about some places, each with a margin of its
/// own, as a file in `folder`, which has to be there. What is read there from a crop is what is
/// read from the whole file, as long as nothing farther away than the margins is asked for.
///
/// `places` is told the size of a cell of the file: along the edge of a zone a finer terrain is
/// asked in more places ([`shore_places`](crate::level::shore_places)).
///
/// ```no_run
/// use sillmark::collect::terrain;
/// use sillmark::quantity::{Length, LengthUnit, VerticalDatum, unit::meter};
/// use sillmark::service::{Address, Answers, Connection, Limits};
/// use sillmark::site::Location;
/// use sillmark::statement::{Place, Stated};
/// use sillmark::terrain::{Dem, DemStatement};
///
/// let stated = "https://example.org/models/n41w075.tif";
/// let address = Address::read(&Stated::new("dem", stated, Place::Option("option --dem".into())))?;
/// let connection = Connection::open(&address, Answers::Fetched, Limits::default())?;
/// let statement = DemStatement {
///     unit: Some(LengthUnit::Metre),
///     datum: Some(VerticalDatum::Navd88),
///     crs: None,
/// };
/// let site = Location::from_degrees(-74.0335, 40.74)?;
/// let about = |_cell| vec![(site, Length::new::<meter>(200.0))];
/// let part = terrain(&connection, &address, &statement, &about, "parts".as_ref())?;
/// if let Some(file) = part.file {
///     let ground = Dem::open(&file, &statement)?.ground_at(site)?;
///     println!("{ground:?}, from {} of {} bytes", part.bytes_read, part.bytes_total);
/// }
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`CollectTerrainError`] with the address: the server gives no parts of files; the file is no
/// GeoTIFF, or damaged; it cannot be used as terrain; the places need too much of it. A place
/// that lies outside the file is no error of its own, since another file may hold it.
pub fn terrain(
    connection: &Connection,
    address: &Address,
    statement: &DemStatement,
    places: &About<'_>,
    folder: &Path,
) -> Result<CollectedTerrain, CollectTerrainError> {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(|error| ServiceError::Client(error.to_string()))?;
    let refusals = Refusals {
        address: address.to_string(),
    };
    runtime.block_on(async {
        let file = FileParts::open(connection, address).await?;
        let mut served = Served::read(&file, &refusals).await?;
        let asked = served.asked(statement, places, folder)?;
        let path = if asked.units.is_empty() {
            None
        } else {
            let path = name::free(folder, address);
            served.collect(&asked, folder, &path).await?;
            Some(path)
        };
        Ok(CollectedTerrain {
            file: path,
            beyond: asked.beyond,
            address: refusals.address.clone(),
            fetched: Fetched {
                from: refusals.address.clone(),
                on: in_rfc3339(file.date()),
                licence: None,
                noted: None,
            },
            edition: file.edition(),
            bytes_read: file.bytes_read(),
            bytes_total: file.length(),
        })
    })
}
