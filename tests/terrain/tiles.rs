//! A batch of places reads each tile once, in every thread, and a broken file is heard there.

use std::path::Path;

use sillmark::quantity::{Length, unit::meter};
use sillmark::site::Location;
use sillmark::terrain::{Dem, Terrain, TerrainError, TileKey};

use super::fixture::{metres_navd88, place, raster};
use super::layout::{Layout, Random};

/// 8 × 6 tiles of 64 cells of one metre.
fn tiled(folder: &Path) -> std::path::PathBuf {
    let layout = Layout {
        kind: "Float32",
        options: &[
            "TILED=YES",
            "BLOCKXSIZE=64",
            "BLOCKYSIZE=64",
            "COMPRESS=DEFLATE",
        ],
        columns: 512,
        rows: 384,
        transform: [580_000.0, 1.0, 0.0, 4_510_000.0, 0.0, -1.0],
        crs: "EPSG:26918",
        scale: 1.0,
        offset: 0.0,
    };
    let cells: Vec<f64> = (0..512 * 384).map(|index| f64::from(index % 97)).collect();
    layout.write(folder, &cells)
}

fn open(path: &Path) -> Terrain {
    Terrain::new(vec![Dem::open(path, &metres_navd88()).unwrap()])
}

/// Places all over the raster, in the order of their tiles.
fn in_order(terrain: &Terrain, count: usize) -> Vec<Location> {
    let mut random = Random::new(1);
    let mut places: Vec<Location> = (0..count)
        .map(|_| place(512.0 * random.next(), -384.0 * random.next()))
        .collect();
    places.sort_by_key(|place| terrain.tile_at(*place).unwrap());
    places
}

const RADIUS: f64 = 8.0;

fn ask(terrain: &Terrain, places: &[Location]) -> Vec<f64> {
    let radius = Length::new::<meter>(RADIUS);
    let lowest = places.iter().map(|place| {
        let around = terrain.around(*place, radius).unwrap();
        around.grade.unwrap().lowest.height().get::<meter>()
    });
    lowest.collect()
}

#[test]
fn each_tile_is_decoded_once_in_a_batch() {
    let scratch = tempfile::tempdir().unwrap();
    let path = tiled(scratch.path());
    let terrain = open(&path);
    let places = in_order(&terrain, 3000);
    assert_eq!(terrain.tiles_decoded(), 0, "an order reads nothing");
    ask(&terrain, &places);
    assert_eq!(terrain.tiles_decoded(), 48);
}

#[test]
fn less_memory_reads_more_and_says_the_same() {
    let scratch = tempfile::tempdir().unwrap();
    let path = tiled(scratch.path());
    let terrain = open(&path);
    let places = in_order(&terrain, 600);
    let expected = ask(&terrain, &places);
    // A tile is 16 KiB; nothing at all still keeps the one that is read.
    for bytes in [0, 16 << 10, 40 << 10, 200 << 10] {
        let frugal = open(&path).keeping(bytes);
        assert_eq!(ask(&frugal, &places), expected);
        assert!(frugal.tiles_decoded() > 48, "{bytes}");
    }
    // Twelve tiles of 48, eight side by side: two rows of them are as good as all.
    let frugal = open(&path).keeping(192 << 10).in_order();
    ask(&frugal, &in_order(&frugal, 600));
    assert!(
        frugal.tiles_decoded() < 48 + 8,
        "{}",
        frugal.tiles_decoded()
    );
}

#[test]
fn what_was_used_last_is_kept() {
    let scratch = tempfile::tempdir().unwrap();
    let terrain = open(&tiled(scratch.path())).keeping(2 * (16 << 10));
    // Three tiles of one row, none of them on a border.
    let [one, two, three] = [30.0, 94.0, 158.0].map(|east| place(east, -30.0));
    for place in [one, two, one, three, one] {
        terrain.ground_at(place).unwrap().unwrap();
    }
    assert_eq!(terrain.tiles_decoded(), 3, "the second was given up");
    terrain.ground_at(two).unwrap().unwrap();
    assert_eq!(terrain.tiles_decoded(), 4);
}

#[test]
fn places_outside_come_last_and_rasters_have_numbers() {
    let scratch = tempfile::tempdir().unwrap();
    let mut coarse = raster(4, &[50.0_f32; 12]);
    coarse.transform = [580_000.0, 300.0, 0.0, 4_510_000.0, 0.0, -300.0];
    let coarse = coarse.write(scratch.path(), "coarse.tif");
    let fine = Dem::open(&tiled(scratch.path()), &metres_navd88()).unwrap();
    let coarse = Dem::open(&coarse, &metres_navd88()).unwrap();
    let terrain = Terrain::new(vec![coarse, fine]);
    let key = |east, north| terrain.tile_at(place(east, north)).unwrap();
    let in_fine = [key(10.0, -10.0), key(500.0, -380.0)];
    assert!(in_fine[0] < in_fine[1] && in_fine[1] < key(600.0, -10.0));
    let tile = |key: TileKey| TileKey::tile_of(key.packed());
    assert_eq!(tile(key(10.0, -10.0)), tile(key(50.0, -50.0)));
    assert!(
        key(50.0, -10.0) < key(60.0, -10.0),
        "near the border the later tile"
    );
    assert_eq!(
        tile(key(600.0, -10.0)),
        tile(key(1000.0, -500.0)),
        "one tile of the coarse raster"
    );
    assert_eq!(key(5000.0, -10.0), TileKey::OUTSIDE);
    assert!(TileKey::OUTSIDE > key(600.0, -10.0));

    let ground = terrain.ground_at(place(600.0, -10.0)).unwrap().unwrap();
    assert_eq!(terrain.raster_number(&ground.source), Some(1));
    assert_eq!(
        terrain.source(1).map(|source| &**source),
        Some("coarse.tif")
    );
    assert_eq!(terrain.source(2), None);
    // The same name, but of no raster here.
    assert_eq!(terrain.raster_number(&"coarse.tif".into()), None);
}

#[test]
fn threads_that_open_one_raster_each_for_themselves_agree() {
    let scratch = tempfile::tempdir().unwrap();
    let path = tiled(scratch.path());
    let terrain = open(&path);
    let places = in_order(&terrain, 800);
    let expected = ask(&terrain, &places);
    std::thread::scope(|scope| {
        let workers: Vec<_> = (0..4)
            .map(|_| {
                scope.spawn(|| {
                    let terrain = open(&path);
                    (ask(&terrain, &places), terrain.tiles_decoded())
                })
            })
            .collect();
        for worker in workers {
            assert_eq!(worker.join().unwrap(), (expected.clone(), 48));
        }
    });
}

#[test]
fn a_raster_that_is_cut_short_fails_in_every_thread_every_time() {
    let scratch = tempfile::tempdir().unwrap();
    let path = raster(300, &vec![12.5_f32; 300 * 300]).write(scratch.path(), "dem.tif");
    let bytes = std::fs::read(&path).unwrap();
    std::fs::write(&path, &bytes[..bytes.len() / 2]).unwrap();
    let (whole, broken) = (place(1500.0, -10.0), place(1500.0, -2990.0));
    std::thread::scope(|scope| {
        for _ in 0..4 {
            scope.spawn(|| {
                let dem = Dem::open(&path, &metres_navd88()).unwrap();
                for _ in 0..3 {
                    let error = dem.ground_at(broken).unwrap_err();
                    assert!(matches!(error, TerrainError::Gis(_)), "{error}");
                    assert!(error.to_string().contains("dem.tif"), "{error}");
                }
                // Strips of 300 cells make one band of 256 rows here: it reaches into the
                // part that is missing.
                assert!(dem.ground_at(whole).is_err());
            });
        }
    });
}
