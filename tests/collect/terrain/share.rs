//! How much of a large file one site reads.

use std::fs::File;
use std::io::{BufWriter, Write as _};

use sillmark::terrain::Dem;

use super::fixture::{collect, metres_navd88, served};
use crate::terrain::fixture::place;

/// Columns and rows of 75 MB in single precision, in tiles of 256 cells a side.
const SIZE: (u32, u32) = (4096, 4608);
const TILE: u32 = 256;

/// A plane that rises by a centimetre for each metre eastwards and two for each southwards.
fn height(column: u32, row: u32) -> f32 {
    0.01 * column as f32 + 0.02 * row as f32
}

/// A TIFF file of the plane, written byte by byte: cells of a metre in UTM zone 18 north.
fn write(path: &std::path::Path) {
    let mut file = BufWriter::new(File::create(path).unwrap());
    let tiles = (SIZE.0 / TILE) * (SIZE.1 / TILE);
    let keys: [u16; 16] = [1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 1, 3072, 0, 1, 26918];
    let scale = [1.0_f64, 1.0, 0.0];
    let tie = [0.0_f64, 0.0, 0.0, 580_000.0, 4_510_000.0, 0.0];
    let entries: u32 = 14;
    let start = 8 + 2 + 12 * entries + 4;
    let (counts, keys_at) = (start + 4 * tiles, start + 8 * tiles);
    let (scale_at, tie_at) = (keys_at + 32, keys_at + 32 + 24);
    let first = (tie_at + 48).next_multiple_of(1024);
    file.write_all(b"II\x2a\0\x08\0\0\0").unwrap();
    file.write_all(&u16::to_le_bytes(14)).unwrap();
    let table: [(u16, u16, u32, u32); 14] = [
        (256, 4, 1, SIZE.0),
        (257, 4, 1, SIZE.1),
        (258, 3, 1, 32),
        (259, 3, 1, 1),
        (262, 3, 1, 1),
        (277, 3, 1, 1),
        (322, 4, 1, TILE),
        (323, 4, 1, TILE),
        (324, 4, tiles, start),
        (325, 4, tiles, counts),
        (339, 3, 1, 3),
        (33550, 12, 3, scale_at),
        (33922, 12, 6, tie_at),
        (34735, 3, 16, keys_at),
    ];
    for (tag, kind, count, value) in table {
        file.write_all(&tag.to_le_bytes()).unwrap();
        file.write_all(&kind.to_le_bytes()).unwrap();
        file.write_all(&count.to_le_bytes()).unwrap();
        file.write_all(&value.to_le_bytes()).unwrap();
    }
    file.write_all(&[0; 4]).unwrap();
    let bytes = TILE * TILE * 4;
    for tile in 0..tiles {
        file.write_all(&(first + tile * bytes).to_le_bytes())
            .unwrap();
    }
    for _ in 0..tiles {
        file.write_all(&bytes.to_le_bytes()).unwrap();
    }
    for key in keys {
        file.write_all(&key.to_le_bytes()).unwrap();
    }
    for number in scale.iter().chain(&tie) {
        file.write_all(&number.to_le_bytes()).unwrap();
    }
    file.write_all(&vec![0; (first - tie_at - 48) as usize])
        .unwrap();
    for tile in 0..tiles {
        let (left, top) = (tile % (SIZE.0 / TILE) * TILE, tile / (SIZE.0 / TILE) * TILE);
        for row in top..top + TILE {
            for column in left..left + TILE {
                file.write_all(&height(column, row).to_le_bytes()).unwrap();
            }
        }
    }
    file.into_inner().unwrap();
}

#[test]
fn a_site_reads_less_than_a_twentieth_of_75_mb() {
    let folder = tempfile::tempdir().unwrap();
    let whole = folder.path().join("whole.tif");
    write(&whole);
    let server = served(&whole);
    let site = place(2000.0, -2300.0);
    // The square of a page, and what is read about a place for its grade.
    let collected = collect(&server, &[site], 160.0, folder.path()).unwrap();
    assert!(collected.bytes_total > 75_000_000);
    let share = collected.bytes_read as f64 / collected.bytes_total as f64;
    assert!(share < 0.05, "{share}");
    // The server says the same.
    let asked: u64 = server.seen().iter().map(|request| asked(request)).sum();
    assert_eq!(asked, collected.bytes_read);
    // And what was read is the plane, to the precision of its numbers.
    let dem = Dem::open(&collected.file.unwrap(), &metres_navd88()).unwrap();
    let ground = dem.ground_at(site).unwrap().unwrap().elevation;
    let metres = ground.height().get::<sillmark::quantity::unit::meter>();
    let expected = 0.01 * (2000.0 - 0.5) + 0.02 * (2300.0 - 0.5);
    assert!((metres - expected).abs() < 1e-4, "{metres}, not {expected}");
}

fn asked(request: &str) -> u64 {
    let range = request
        .lines()
        .find_map(|line| line.strip_prefix("range: bytes="));
    let (first, last) = range.unwrap().split_once('-').unwrap();
    last.parse::<u64>().unwrap() + 1 - first.parse::<u64>().unwrap()
}
