//! The files that an answer was read from, with their checksums.

use std::fs::File;
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};

use sha2::{Digest as _, Sha256};
use sillmark::report::InputFile;

use super::arguments::SiteOptions;
use super::brought::Brought;
use super::failure::Failure;
use super::inputs;

/// Every file that the run reads, in the order of the options, last the grids that datums were
/// converted by; of a layer in several files all of them, of a folder every file in it. What a
/// service gave is named by its address.
pub(super) fn read_files(
    options: &SiteOptions,
    brought: &Brought,
    grids: &[PathBuf],
) -> Result<Vec<InputFile>, Failure> {
    let mut files = Vec::new();
    let own = own(options).into_iter();
    let maps = inputs::named_files(&brought.maps);
    let grids = grids.iter().map(|path| ("vertical grid", path.clone()));
    for (role, path) in own.chain(maps).chain(grids) {
        for path in parts(&path).map_err(|error| unreadable(&path, &error))? {
            let read = match brought.origin(&path) {
                None => checksum(&path).map(|(bytes, sha256)| InputFile {
                    role: role.to_owned(),
                    path: path.display().to_string(),
                    bytes,
                    sha256,
                }),
                // The file that stands for an answer has the time in it.
                Some(origin) => path.metadata().map(|facts| InputFile {
                    role: format!("{role} (its features or edition, whenever they were fetched)"),
                    path: origin.told.clone(),
                    bytes: facts.len(),
                    sha256: origin.content.clone(),
                }),
            };
            files.push(read.map_err(|error| unreadable(&path, &error))?);
        }
    }
    Ok(files)
}

fn unreadable(path: &Path, error: &io::Error) -> Failure {
    Failure::other(format!("{}: cannot be read: {error}", path.display()))
}

/// The paths that the options name.
pub(super) fn named(options: &SiteOptions) -> Vec<PathBuf> {
    let own = own(options).into_iter().map(|(_, path)| path);
    own.chain(inputs::files(&options.maps)).collect()
}

/// The files beside the maps, each with what it is read for.
fn own(options: &SiteOptions) -> Vec<(&'static str, PathBuf)> {
    let own = [("site", &options.file), ("kit", &options.method.kit)];
    let own = own.into_iter();
    own.filter_map(|(role, path)| Some((role, path.clone()?)))
        .collect()
}

/// The files that one path stands for: those in a folder, or the file itself with those beside
/// it that its format reads as well.
fn parts(path: &Path) -> io::Result<Vec<PathBuf>> {
    if path.is_dir() {
        let mut files = files_in(path)?;
        files.sort();
        return Ok(files);
    }
    let mut files = vec![path.to_owned()];
    let beside = beside(path);
    if !beside.is_empty() {
        let folder = path.parent().filter(|folder| *folder != Path::new(""));
        let mut others = files_in(folder.unwrap_or(Path::new(".")))?;
        others.retain(|other| other.file_stem() == path.file_stem());
        for ending in beside {
            let own = others.iter().find(|other| ends_with(other, ending));
            let own = own.and_then(|own| own.file_name());
            files.extend(own.map(|name| path.with_file_name(name)));
        }
    }
    Ok(files)
}

/// Endings of what belongs to a file: attributes, places and systems of a shapefile, the system
/// of an ASCII grid, the place of an image.
fn beside(path: &Path) -> &'static [&'static str] {
    let is = |endings: &[&str]| endings.iter().any(|ending| ends_with(path, ending));
    if is(&["shp"]) {
        &["shx", "dbf", "prj", "cpg"]
    } else if is(&["asc"]) {
        &["prj"]
    } else if is(&["tif", "tiff"]) {
        &["tfw"]
    } else {
        &[]
    }
}

fn ends_with(path: &Path, ending: &str) -> bool {
    path.extension()
        .is_some_and(|own| own.eq_ignore_ascii_case(ending))
}

fn files_in(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let entries = std::fs::read_dir(folder)?;
    let paths = entries.map(|entry| entry.map(|entry| entry.path()));
    let mut files = paths.collect::<io::Result<Vec<_>>>()?;
    files.retain(|file| file.is_file());
    Ok(files)
}

/// Length and SHA-256 of a file, read once from start to end.
fn checksum(path: &Path) -> io::Result<(u64, String)> {
    let mut file = File::open(path)?;
    let mut hasher = Sha256::new();
    let mut block = vec![0; 1 << 18];
    let mut bytes = 0;
    loop {
        let read = file.read(&mut block)?;
        if read == 0 {
            break;
        }
        hasher.update(&block[..read]);
        bytes += read as u64;
    }
    Ok((bytes, hex::encode(hasher.finalize())))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_checksum_is_that_of_the_standard() {
        // NIST, Examples with Intermediate Values, SHA-256: "abc".
        let mut file = tempfile::NamedTempFile::new().unwrap();
        io::Write::write_all(&mut file, b"abc").unwrap();
        let (bytes, sha256) = checksum(file.path()).unwrap();
        assert_eq!(bytes, 3);
        assert_eq!(
            sha256,
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
        );
    }

    #[test]
    fn what_belongs_to_a_file_is_found_whatever_its_case() {
        let folder = tempfile::tempdir().unwrap();
        for name in [
            "A.SHP", "A.DBF", "A.prj", "A.txt", "B.dbf", "dem.asc", "dem.prj",
        ] {
            std::fs::write(folder.path().join(name), name).unwrap();
        }
        let names = |name: &str| {
            let parts = parts(&folder.path().join(name)).unwrap();
            let names = parts.iter().filter_map(|part| part.file_name()?.to_str());
            names.map(str::to_owned).collect::<Vec<_>>()
        };
        assert_eq!(names("A.SHP"), ["A.SHP", "A.DBF", "A.prj"]);
        assert_eq!(names("dem.asc"), ["dem.asc", "dem.prj"]);
        assert_eq!(names("B.dbf"), ["B.dbf"]);
    }
}
