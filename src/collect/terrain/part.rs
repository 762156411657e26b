//! One image of a crop: what is said of it, and which blocks it has.

use std::ops::Range;

use super::blocks::Block;
use super::image::{Image, Size, places};
use super::position;
use super::tiff::{Field, Layout, tag};
use super::units::Window;

/// An image of a crop.
pub(super) struct Part {
    pub(super) layout: Layout,
    pub(super) fields: Vec<Field>,
    /// The tags of the places and lengths of its blocks.
    pub(super) places: [u16; 2],
    /// The blocks that it has, by their numbers; all others are not stored.
    pub(super) blocks: Vec<(u64, Bytes)>,
}

/// What a block is made of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Bytes {
    /// These bytes of the served file.
    Served(Range<u64>),
    /// So many bytes of ones only.
    Ones(usize),
}

impl Part {
    /// A window of an image. It begins and ends with whole blocks, or where the image does.
    pub(super) fn of(image: &Image, window: &Window, blocks: &[Block]) -> Self {
        let size = size(window);
        let fields = image.fields.iter().cloned().map(|field| match field.tag {
            tag::IMAGE_WIDTH => long(image.layout, tag::IMAGE_WIDTH, size.columns),
            tag::IMAGE_LENGTH => long(image.layout, tag::IMAGE_LENGTH, size.rows),
            _ => position::within(image.layout, field, window),
        });
        let stored = blocks.iter().filter(|block| !block.bytes.is_empty());
        let stored = stored.map(|block| {
            let bytes = Bytes::Served(block.bytes.clone());
            (number(image, window, block), bytes)
        });
        Self::new(image, size, fields.collect(), stored.collect())
    }

    /// A mask that says which blocks of a window are stored, for a file that has no other way to
    /// say so: its cells are ones, and where it has no block itself they are none (TIFF 6.0,
    /// section 8, `NewSubfileType` 4).
    pub(super) fn mask(image: &Image, window: &Window, blocks: &[Block]) -> Self {
        let layout = image.layout;
        let size = size(window);
        let long = |tag, value| long(layout, tag, value);
        let short = |tag, value| Field::of(tag, tag::SHORT, layout.bytes(value, 2));
        let mut fields = vec![
            long(tag::NEW_SUBFILE_TYPE, tag::MASK),
            long(tag::IMAGE_WIDTH, size.columns),
            long(tag::IMAGE_LENGTH, size.rows),
            short(tag::BITS_PER_SAMPLE, 1),
            short(tag::COMPRESSION, 1),
            short(tag::PHOTOMETRIC_INTERPRETATION, 4),
            short(tag::SAMPLES_PER_PIXEL, 1),
            short(tag::PLANAR_CONFIGURATION, 1),
        ];
        if image.is_tiled {
            fields.push(long(tag::TILE_WIDTH, image.block.columns));
            fields.push(long(tag::TILE_LENGTH, image.block.rows));
        } else {
            fields.push(long(tag::ROWS_PER_STRIP, image.block.rows));
        }
        let stored = blocks.iter().filter(|block| !block.bytes.is_empty());
        let stored = stored.map(|block| {
            let first = block.row * image.block.rows;
            let rows = if image.is_tiled {
                image.block.rows
            } else {
                image.block.rows.min(image.size.rows - first)
            };
            let bytes = image.block.columns.div_ceil(8) * rows;
            let ones = Bytes::Ones(usize::try_from(bytes).unwrap_or(usize::MAX));
            (number(image, window, block), ones)
        });
        Self::new(image, size, fields, stored.collect())
    }

    fn new(image: &Image, size: Size, fields: Vec<Field>, blocks: Vec<(u64, Bytes)>) -> Self {
        let places = places(image.is_tiled);
        let all = size.in_blocks(image.block);
        let kind = if image.layout.offset_bytes() == 8 {
            tag::LONG8
        } else {
            tag::LONG
        };
        let rooms = places.map(|tag| Field::room(tag, kind, all.columns * all.rows));
        Self {
            layout: image.layout,
            fields: fields.into_iter().chain(rooms).collect(),
            places,
            blocks,
        }
    }

    /// The bytes of the served file that it needs.
    pub(super) fn served(&self) -> impl Iterator<Item = &Range<u64>> {
        self.blocks.iter().filter_map(|(_, bytes)| match bytes {
            Bytes::Served(range) => Some(range),
            Bytes::Ones(_) => None,
        })
    }
}

const fn size(window: &Window) -> Size {
    Size {
        columns: window.columns.end - window.columns.start,
        rows: window.rows.end - window.rows.start,
    }
}

/// The number of a block among those of a window.
fn number(image: &Image, window: &Window, block: &Block) -> u64 {
    let across = size(window).in_blocks(image.block).columns;
    let column = block.column - window.columns.start / image.block.columns;
    let row = block.row - window.rows.start / image.block.rows;
    row * across + column
}

fn long(layout: Layout, tag: u16, value: u64) -> Field {
    Field::of(tag, tag::LONG, layout.bytes(value, 4))
}
