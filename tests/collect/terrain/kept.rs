//! Parts on the disk: used again while the file is the same, and without the network.

use sillmark::service::Answers;

use super::fixture::{NORTH_UP, assert_window, cache, cells, collect_kept, served, usual, write};
use super::server::{Manner, Server};
use crate::terrain::fixture::place;

#[test]
fn what_is_kept_is_not_fetched_again() {
    let folder = tempfile::tempdir().unwrap();
    let server = served(&usual(folder.path()));
    let answers = || Answers::FetchedAndKept(cache(folder.path()));
    let site = [place(3500.0, -2600.0)];
    let first = collect_kept(&server, answers(), &site, 400.0, folder.path()).unwrap();
    let asked = server.seen().len();
    assert!(asked > 1, "{asked}");
    let second = collect_kept(&server, answers(), &site, 400.0, folder.path()).unwrap();
    // Only whether it has changed is asked.
    assert_eq!(server.seen().len(), asked + 1);
    assert!(server.seen()[asked].contains("if-none-match: "));
    assert_eq!(first.bytes_read, second.bytes_read);
    let (first, second) = (first.file.unwrap(), second.file.unwrap());
    assert_eq!(second.file_name().unwrap(), "dem-2.tif");
    assert_eq!(cells(&first), cells(&second));
}

#[test]
fn offline_the_cache_alone_answers() {
    let folder = tempfile::tempdir().unwrap();
    let whole = usual(folder.path());
    let server = served(&whole);
    let site = [place(3500.0, -2600.0)];
    let offline = || Answers::Kept(cache(folder.path()));
    let nothing = collect_kept(&server, offline(), &site, 400.0, folder.path()).unwrap_err();
    let said = server.said(&nothing);
    assert!(said.starts_with("ADDRESS: no answer is kept: "), "{said}");
    let fetched = Answers::FetchedAndKept(cache(folder.path()));
    let fetched = collect_kept(&server, fetched, &site, 400.0, folder.path()).unwrap();
    let asked = server.seen().len();
    let kept = collect_kept(&server, offline(), &site, 400.0, folder.path()).unwrap();
    assert_eq!(kept.fetched, fetched.fetched);
    assert_window(&whole, &kept.file.unwrap());
    // Of another place nothing was kept.
    let other = [place(500.0, -500.0)];
    let error = collect_kept(&server, offline(), &other, 400.0, folder.path()).unwrap_err();
    assert!(server.said(&error).contains("no answer is kept"));
    assert_eq!(server.seen().len(), asked);
}

#[test]
fn a_file_that_changed_is_fetched_anew() {
    let folder = tempfile::tempdir().unwrap();
    let server = served(&usual(folder.path()));
    let answers = || Answers::FetchedAndKept(cache(folder.path()));
    let site = [place(3500.0, -2600.0)];
    collect_kept(&server, answers(), &site, 400.0, folder.path()).unwrap();
    let other = folder.path().join("other.tif");
    // As long as the first one: not deflated, and no cell the same.
    let options = [
        "TILED=YES",
        "BLOCKXSIZE=64",
        "BLOCKYSIZE=64",
        "COMPRESS=DEFLATE",
    ];
    let written = write(&other, &options, NORTH_UP, Some(-9999.0), |column, row| {
        (column * 3 + row) as f32
    });
    written.close().unwrap();
    server.replace(std::fs::read(&other).unwrap());
    let again = collect_kept(&server, answers(), &site, 400.0, folder.path()).unwrap();
    assert_window(&other, &again.file.unwrap());
    // Offline, too, no part of the first file is put among those of the second.
    let offline = Answers::Kept(cache(folder.path()));
    let kept = collect_kept(&server, offline, &site, 400.0, folder.path()).unwrap();
    assert_window(&other, &kept.file.unwrap());
}

#[test]
fn a_file_that_is_not_known_again_is_fetched_each_time() {
    for manner in [Manner::Nameless, Manner::Weak] {
        let folder = tempfile::tempdir().unwrap();
        let server = Server::start(std::fs::read(usual(folder.path())).unwrap(), manner);
        let answers = || Answers::FetchedAndKept(cache(folder.path()));
        let site = [place(3500.0, -2600.0)];
        collect_kept(&server, answers(), &site, 400.0, folder.path()).unwrap();
        let asked = server.seen().len();
        collect_kept(&server, answers(), &site, 400.0, folder.path()).unwrap();
        assert_eq!(server.seen().len(), 2 * asked, "{manner:?}");
    }
}

#[test]
fn what_is_damaged_on_the_disk_is_fetched_again() {
    let folder = tempfile::tempdir().unwrap();
    let whole = usual(folder.path());
    let server = served(&whole);
    let answers = || Answers::FetchedAndKept(cache(folder.path()));
    let site = [place(3500.0, -2600.0)];
    collect_kept(&server, answers(), &site, 400.0, folder.path()).unwrap();
    for entry in std::fs::read_dir(folder.path().join("answers")).unwrap() {
        let path = entry.unwrap().path();
        let mut bytes = std::fs::read(&path).unwrap();
        let last = bytes.len() - 1;
        bytes[last] ^= 1;
        std::fs::write(&path, bytes).unwrap();
    }
    let again = collect_kept(&server, answers(), &site, 400.0, folder.path()).unwrap();
    assert_window(&whole, &again.file.unwrap());
}
