//! A served file: what is asked of it, and what is collected.

use std::path::Path;

use super::blocks::{self, Block};
use super::contents::Contents;
use super::crop::Crop;
use super::error::Refusals;
use super::image::Image;
use super::pages::Pages;
use super::part::Part;
use super::tiff::tag;
use super::units::{Units, Window};
use super::{About, CollectTerrainError, MOST_BYTES, origin};
use crate::gis::{CELL_METRES, FETCHED_FROM, FETCHED_ON, in_rfc3339};
use crate::quantity::{Length, unit::meter};
use crate::service::FileParts;
use crate::terrain::{Dem, DemStatement};

/// A served file whose directories were read.
pub(super) struct Served<'file> {
    file: &'file FileParts<'file>,
    refusals: &'file Refusals,
    pages: Pages<'file>,
    terrain: Image,
    mask: Option<Image>,
}

/// What some places ask for.
pub(super) struct Asked {
    pub(super) units: Units,
    /// Where no place lies within the file: what it covers instead.
    pub(super) beyond: Option<CollectTerrainError>,
    /// Whether a block that is not stored is void by what the file says.
    blank_is_void: bool,
    cell_size: Length,
}

impl<'file> Served<'file> {
    pub(super) async fn read(
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
    pub(super) fn asked(
        &self,
        statement: &DemStatement,
        places: &About<'_>,
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
        let images = [Some(&self.terrain), self.mask.as_ref()];
        let blocks: Vec<_> = images
            .into_iter()
            .flatten()
            .map(|image| image.block)
            .collect();
        let mut units = Units::of(size, &blocks);
        let places = places(dem.cell_size());
        let (mut beyond, mut reached) = (None, places.is_empty());
        for (place, margin) in places {
            if !reached {
                let outside = dem.beyond(place).map_err(refused)?;
                reached = outside.is_none();
                beyond = beyond.or(outside);
            }
            if let Some([columns, rows]) = dem.cells_about(place, margin).map_err(refused)?
                && !units.want(&columns, &rows)
            {
                return Err(self
                    .refusals
                    .too_much("the places need too many parts of it"));
            }
        }
        Ok(Asked {
            units,
            beyond: beyond.filter(|_| !reached).map(refused),
            blank_is_void: dem.is_void(0, 0).map_err(refused)?,
            cell_size: dem.cell_size(),
        })
    }

    /// Writes what is asked for into a file.
    pub(super) async fn collect(
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
        self.say_origin(&mut terrain, asked.cell_size);
        let mut parts = vec![terrain];
        if let Some(mask) = &self.mask {
            if has_holes && !asked.blank_is_void {
                return Err(self.holes());
            }
            let blocks: Vec<Block> = blocks::wanted(&mut self.pages, mask, &asked.units).await?;
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
    fn say_origin(&self, part: &mut Part, cell_size: Length) {
        let place = part
            .fields
            .iter()
            .position(|field| field.tag == tag::GDAL_METADATA);
        let there = place.map(|place| part.fields.swap_remove(place));
        let cell_size = cell_size.get::<meter>().to_string();
        let on = in_rfc3339(self.file.date());
        let items = [
            (CELL_METRES, cell_size.as_str()),
            (FETCHED_FROM, self.refusals.address.as_str()),
            (FETCHED_ON, on.as_str()),
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
