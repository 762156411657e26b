//! As much of TIFF as is needed to copy blocks of an image without decoding them.
//!
//! The crate `tiff` does not serve here: it writes in the order of bytes of the machine alone,
//! while blocks that stay as they are keep the order of their file, and it reads the places of
//! all blocks of an image where a few are wanted.

mod directory;
mod draft;
mod layout;
pub(crate) mod tag;

pub(crate) use directory::{Directory, Entry, Value, bytes_of_kind, entries, read};
pub(crate) use draft::{Draft, Field};
pub(crate) use layout::{HEADER_BYTES, Layout};
