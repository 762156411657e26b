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
mod tiff;
mod units;

pub use error::CollectTerrainError;

use std::path::{Path, PathBuf};

use self::blocks::Block;
use self::contents::Contents;
use self::crop::Crop;
use self::error::Refusals;
use self::image::Image;
use self::pages::Pages;
use self::part::Part;
use self::tiff::tag;
use self::units::{Units, Window};
use crate::gis::{FETCHED_FROM, FETCHED_ON};
use crate::quantity::Length;
use crate::service::{Address, Connection, FileParts, ServiceError};
use crate::site::Location;
use crate::terrain::{Dem, DemStatement};

/// Bytes that are asked for at once.
const MOST_AT_ONCE: u64 = 8 << 20;

/// Bytes of all blocks of one crop.
const MOST_BYTES: u64 = 2 << 30;

/// A part of a served terrain model.
#[derive(Clone, Debug, PartialEq)]
pub struct CollectedTerrain {
    /// The crop; `None` where no place asks for any of it.
    pub file: Option<PathBuf>,
    /// Where no place lies within the file: what it covers instead.
    pub beyond: Option<CollectTerrainError>,
    /// Where it comes from, without keys.
    pub address: String,
    /// When it was fetched, or last confirmed, as HTTP writes a date.
    pub fetched: String,
    /// Bytes that were read of the file, from the server or from the cache.
    pub bytes_read: u64,
    /// Bytes of the whole file.
    pub bytes_total: u64,
}

/// Collects the part of a served GeoTIFF that lies within `margin` of some places, as a file in
/// `folder`, which has to be there. What is read there from a crop is what is read from the whole
/// file, as long as nothing farther away than the margin is asked for.
///
/// How far that is depends on the question: the radius of adjacent grade, and the farthest
/// opening from the building's place; half the side of the square of a page (1 km at most); 1.5 km
/// where the edge of a zone is read on the terrain.
///
/// # Errors
/// [`CollectTerrainError`] with the address: the server gives no parts of files; the file is no
/// GeoTIFF, or damaged; it cannot be used as terrain; the places need too much of it. A place
/// that lies outside the file is no error of its own, since another file may hold it.
pub fn terrain(
    connection: &Connection,
    address: &Address,
    statement: &DemStatement,
    places: &[Location],
    margin: Length,
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
        let asked = served.asked(statement, places, margin, folder)?;
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
            fetched: file.date().to_owned(),
            bytes_read: file.bytes_read(),
            bytes_total: file.length(),
        })
    })
}

/// A served file whose directories were read.
struct Served<'file> {
    file: &'file FileParts<'file>,
    refusals: &'file Refusals,
    pages: Pages<'file>,
    terrain: Image,
    mask: Option<Image>,
}

/// What some places ask for.
struct Asked {
    units: Units,
    beyond: Option<CollectTerrainError>,
    /// Whether a block that is not stored is void by what the file says.
    blank_is_void: bool,
}

impl<'file> Served<'file> {
    async fn read(
        file: &'file FileParts<'file>,
        refusals: &'file Refusals,
    ) -> Result<Self, CollectTerrainError> {
        let mut pages = Pages::new(file, refusals);
        let contents = Contents::read(&mut pages).await?;
        let terrain = Image::read(&mut pages, contents.layout, &contents.terrain).await?;
        let mask = match &contents.mask {
            Some(mask) => Some(Image::read(&mut pages, contents.layout, mask).await?),
            None => None,
        };
        if mask.as_ref().is_some_and(|mask| mask.size != terrain.size) {
            return Err(refusals.damaged("its mask has another size than its image"));
        }
        Ok(Self {
            file,
            refusals,
            pages,
            terrain,
            mask,
        })
    }

    /// Opens a stand-in without blocks as terrain, and asks it for the cells about the places.
    fn asked(
        &self,
        statement: &DemStatement,
        places: &[Location],
        margin: Length,
        folder: &Path,
    ) -> Result<Asked, CollectTerrainError> {
        let Image { layout, size, .. } = self.terrain;
        let whole = Window {
            columns: 0..size.columns,
            rows: 0..size.rows,
        };
        let part = Part::of(&self.terrain, &whole, &[]);
        let stand_in = Crop::begin(layout, &[part], folder, self.refusals)?;
        let refused = |error| self.refusals.terrain(&error, stand_in.path());
        let dem = Dem::open(stand_in.path(), statement).map_err(refused)?;
        let (columns, rows) = dem.size();
        if (columns as u64, rows as u64) != (size.columns, size.rows) {
            return Err(self.refusals.damaged("it has several sizes"));
        }
        let mut units = Units::of(&self.terrain, self.mask.as_ref());
        let (mut beyond, mut reached) = (None, places.is_empty());
        for place in places {
            if !reached {
                let outside = dem.beyond(*place).map_err(refused)?;
                reached = outside.is_none();
                beyond = beyond.or(outside);
            }
            if let Some([columns, rows]) = dem.cells_about(*place, margin).map_err(refused)?
                && !units.want(&columns, &rows)
            {
                return Err(self.refusals.too_much("the places need too many parts of it"));
            }
        }
        Ok(Asked {
            units,
            beyond: beyond.filter(|_| !reached).map(refused),
            blank_is_void: dem.is_void(0, 0).map_err(refused)?,
        })
    }

    /// Writes what is asked for into a file.
    async fn collect(
        &mut self,
        asked: &Asked,
        folder: &Path,
        path: &Path,
    ) -> Result<(), CollectTerrainError> {
        let layout = self.terrain.layout;
        let window = asked.units.window();
        let blocks = blocks::wanted(&mut self.pages, &self.terrain, &asked.units).await?;
        let has_holes = blocks.iter().any(|block| block.bytes.is_empty());
        let mut terrain = Part::of(&self.terrain, &window, &blocks);
        self.say_origin(&mut terrain);
        let mut parts = vec![terrain];
        if let Some(mask) = &self.mask {
            if has_holes && !asked.blank_is_void {
                return Err(self.holes());
            }
            let blocks: Vec<Block> =
                blocks::wanted(&mut self.pages, mask, &asked.units).await?;
            parts.push(Part::of(mask, &window, &blocks));
        } else if !asked.blank_is_void && (has_holes || asked.units.leave_gaps()) {
            parts.push(Part::mask(&self.terrain, &window, &blocks));
        }
        let served: u64 = parts
            .iter()
            .flat_map(Part::served)
            .map(|range| range.end - range.start)
            .sum();
        if served > MOST_BYTES {
            return Err(self.refusals.too_much(format!(
                "the places need {} MiB of it, more than {} MiB",
                served >> 20,
                MOST_BYTES >> 20
            )));
        }
        let mut crop = Crop::begin(layout, &parts, folder, self.refusals)?;
        crop.fill(self.file).await?;
        crop.end(path)
    }

    /// Lets the crop say where it comes from.
    fn say_origin(&self, part: &mut Part) {
        let place = part
            .fields
            .iter()
            .position(|field| field.tag == tag::GDAL_METADATA);
        let there = place.map(|place| part.fields.swap_remove(place));
        let items = [
            (FETCHED_FROM, self.refusals.address.as_str()),
            (FETCHED_ON, self.file.date()),
        ];
        part.fields.push(origin::with_items(there.as_ref(), &items));
    }

    fn holes(&self) -> CollectTerrainError {
        self.refusals.damaged(
            "blocks of it are not stored, and neither a mark for no value nor its mask says what \
             that means",
        )
    }
}
