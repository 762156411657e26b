//! Files that do not hang together: refused in words, within bounds, and nothing is left behind.

use std::path::PathBuf;
use std::time::{Duration, Instant};

use super::fixture::{collect, usual};
use super::server::{Manner, Server};
use crate::terrain::fixture::place;

/// A TIFF file in classic layout, whose directory is changed here and there.
struct File(Vec<u8>);

impl File {
    fn usual() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let path: PathBuf = usual(folder.path());
        Self(std::fs::read(path).unwrap())
    }

    fn number(&self, at: usize, bytes: usize) -> usize {
        let bytes = self.0[at..at + bytes].iter().rev();
        bytes.fold(0, |number, byte| number << 8 | usize::from(*byte))
    }

    fn put(&mut self, at: usize, bytes: &[u8]) {
        self.0[at..at + bytes.len()].copy_from_slice(bytes);
    }

    fn directory(&self) -> usize {
        self.number(4, 4)
    }

    fn entries(&self) -> usize {
        self.number(self.directory(), 2)
    }

    /// Where the entry of a tag lies.
    fn entry(&self, tag: usize) -> usize {
        let mut entries = (0..self.entries()).map(|number| self.directory() + 2 + 12 * number);
        entries.find(|at| self.number(*at, 2) == tag).unwrap()
    }

    /// With another count or value in the entry of a tag.
    fn with(mut self, tag: usize, within: usize, value: u32) -> Self {
        let at = self.entry(tag) + within;
        self.put(at, &value.to_le_bytes());
        self
    }

    /// With another side, in four bytes.
    fn with_side(mut self, tag: usize, side: u32) -> Self {
        let kind = self.entry(tag) + 2;
        self.put(kind, &4_u16.to_le_bytes());
        self.with(tag, VALUE, side)
    }

    /// What is said of it, within seconds and without anything left behind.
    fn said(self) -> String {
        let crops = tempfile::tempdir().unwrap();
        let server = Server::start(self.0, Manner::Well);
        let start = Instant::now();
        let error = collect(&server, &[place(3500.0, -2600.0)], 400.0, crops.path());
        assert!(start.elapsed() < Duration::from_secs(5));
        assert_eq!(std::fs::read_dir(crops.path()).unwrap().count(), 0);
        server.said(&error.unwrap_err())
    }
}

const COUNT: usize = 4;
const VALUE: usize = 8;

#[test]
fn no_tiff_at_all() {
    for bytes in [
        &b"<html>no such model</html>"[..],
        b"II",
        b"II*\0",
        &[0; 4000],
    ] {
        assert_eq!(
            File(bytes.to_vec()).said(),
            "ADDRESS: it is no TIFF file; accepted: a GeoTIFF of one band"
        );
    }
    let empty = File(b"II*\0\0\0\0\0........".to_vec()).said();
    assert!(empty.starts_with("ADDRESS: it holds no image"), "{empty}");
}

#[test]
fn directories_that_lead_in_a_circle_or_nowhere() {
    let mut file = File::usual();
    let (directory, next) = (file.directory(), file.directory() + 2 + 12 * file.entries());
    file.put(next, &u32::try_from(directory).unwrap().to_le_bytes());
    let said = file.said();
    assert!(
        said.starts_with("ADDRESS: its directories lead in a circle"),
        "{said}"
    );
    let mut file = File::usual();
    file.put(next, &u32::MAX.to_le_bytes());
    let said = file.said();
    assert!(
        said.contains("its directory leads to bytes 4294967295 to"),
        "{said}"
    );
    // A hundred more that each lead to the next.
    let mut file = File::usual();
    let end = u32::try_from(file.0.len()).unwrap();
    file.put(next, &end.to_le_bytes());
    for number in 1..=100 {
        file.0.extend([0, 0]);
        file.0.extend((end + 6 * number).to_le_bytes());
    }
    file.0.extend([0; 6]);
    let said = file.said();
    assert!(
        said.starts_with("ADDRESS: it has more than 100 images"),
        "{said}"
    );
}

#[test]
fn directories_that_are_too_long() {
    let mut file = File::usual();
    let directory = file.directory();
    file.put(directory, &[0xff, 0xff]);
    let said = file.said();
    assert!(said.contains("has 65535 entries, more than 1000"), "{said}");
    // GDAL's mark for no value, as a text of four gigabytes.
    let said = File::usual().with(42113, COUNT, u32::MAX).said();
    let limit = "longer than 16 MiB; accepted: download the file and name it by its path";
    assert!(said.ends_with(limit), "{said}");
    let said = File::usual().with(42113, COUNT, 9_000_000).said();
    assert!(said.contains("its directory leads to bytes"), "{said}");
}

#[test]
fn sides_and_blocks_that_cannot_be() {
    for (tag, value) in [
        (256, 0),
        (256, u32::MAX),
        (257, 0),
        (322, 0),
        (323, u32::MAX),
    ] {
        let said = File::usual().with_side(tag, value).said();
        assert!(
            said.starts_with(&format!("ADDRESS: its tag {tag} is no number")),
            "{said}"
        );
    }
    let said = File::usual().with_side(322, 1 << 24).said();
    assert!(
        said.contains("blocks of 16777216 × 64 cells, more than 256 MiB each"),
        "{said}"
    );
    // A billion columns would have more blocks than are told of.
    let said = File::usual().with_side(256, 1 << 30).said();
    assert!(
        said.contains("its tag 324 tells of fewer blocks than the image has"),
        "{said}"
    );
    let said = File::usual().with(324, COUNT, 1 << 30).said();
    assert!(
        said.contains("its tag 324 reaches beyond the end of the file"),
        "{said}"
    );
}

#[test]
fn blocks_that_lie_elsewhere() {
    let file = File::usual();
    let across = 700_usize.div_ceil(64);
    // The block of the place.
    let number = 260 / 64 * across + 350 / 64;
    let (offsets, counts) = (file.entry(324) + VALUE, file.entry(325) + VALUE);
    let (offsets, counts) = (file.number(offsets, 4), file.number(counts, 4));
    // GDAL writes lengths of blocks in two bytes where that is enough.
    let wide = if file.number(file.entry(325) + 2, 2) == 3 {
        2
    } else {
        4
    };
    let at = "its block in column 6 and row 5 of blocks";
    let mut beyond = File(file.0.clone());
    beyond.put(offsets + 4 * number, &u32::MAX.to_le_bytes());
    let said = beyond.said();
    assert!(
        said.contains(&format!("{at} reaches beyond the end of the file")),
        "{said}"
    );
    let mut long = File(file.0.clone());
    long.put(counts + wide * number, &[0xff, 0xff, 0xff, 0xff][..wide]);
    let said = long.said();
    assert!(
        said.contains(&format!("{at} has ")) && said.contains("its cells no more than 16384"),
        "{said}"
    );
    let mut nowhere = File(file.0);
    nowhere.put(offsets + 4 * number, &[0; 4]);
    let said = nowhere.said();
    assert!(
        said.contains(&format!("{at} has a length and no place")),
        "{said}"
    );
}

#[test]
fn what_cannot_be_unpacked_is_told_as_for_a_file() {
    // ZSTD, as libtiff numbers it; this GDAL is built without.
    let said = File::usual().with(259, VALUE, 50_000).said();
    assert!(
        said.starts_with("ADDRESS: its compression is not built in"),
        "{said}"
    );
    assert!(!said.contains("unfinished"), "{said}");
}

#[test]
fn any_byte_may_be_wrong() {
    let file = File::usual();
    let directory = file.directory();
    let header = directory..directory + 2 + 12 * file.entries() + 4;
    let mut chance = 12_345_u64;
    let mut next = |below: usize| {
        // A linear congruential generator (Knuth's MMIX).
        chance = chance
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (chance >> 33) as usize % below
    };
    let folder = tempfile::tempdir().unwrap();
    let site = [place(3500.0, -2600.0)];
    let start = Instant::now();
    let (mut refused, mut read) = (0, 0);
    let server = Server::start(file.0.clone(), Manner::Well);
    for _ in 0..400 {
        let mut changed = file.0.clone();
        for _ in 0..=next(3) {
            let at = if next(8) == 0 {
                next(16)
            } else {
                header.start + next(header.len())
            };
            changed[at] = next(256) as u8;
        }
        server.replace(changed);
        match collect(&server, &site, 100.0, folder.path()) {
            Ok(_) => read += 1,
            Err(error) => {
                refused += 1;
                assert!(server.said(&error).starts_with("ADDRESS: "));
            }
        }
    }
    assert!(refused > 50 && read > 20, "{refused} refused, {read} read");
    assert!(
        start.elapsed() < Duration::from_mins(1),
        "{:?}",
        start.elapsed()
    );
}
