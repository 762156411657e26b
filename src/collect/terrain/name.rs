//! What a crop is called.

use std::path::{Path, PathBuf};

use crate::service::Address;

/// A path in a folder that is free, named after the file at the address: reports name a terrain
/// model by its file.
pub(super) fn free(folder: &Path, address: &Address) -> PathBuf {
    let name = of(address);
    let mut path = folder.join(format!("{name}.tif"));
    let mut number = 1;
    while path.exists() {
        number += 1;
        path = folder.join(format!("{name}-{number}.tif"));
    }
    path
}

/// Letters and figures of the last part of the address.
fn of(address: &Address) -> String {
    const LONGEST: usize = 80;
    let segments = address.url().path_segments();
    let last = segments.and_then(|mut segments| segments.rfind(|part| !part.is_empty()));
    let last = last.unwrap_or_default();
    let lower = last.to_ascii_lowercase();
    let endings = [".tiff", ".tif"];
    let ending = endings.iter().find(|ending| lower.ends_with(**ending));
    let stem = &last[..last.len() - ending.map_or(0, |ending| ending.len())];
    let kept = stem.chars().take(LONGEST).map(|letter| {
        if letter.is_ascii_alphanumeric() || matches!(letter, '-' | '_' | '.') {
            letter
        } else {
            '_'
        }
    });
    let name: String = kept.collect();
    let name = name.trim_start_matches('.');
    if name.is_empty() {
        "terrain".to_owned()
    } else {
        name.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statement::{Place, Stated};

    #[test]
    fn a_crop_is_named_after_its_file() {
        let name = |text: &str| {
            let place = Place::Option("option --dem".into());
            of(&Address::read(&Stated::new("dem", text, place)).unwrap())
        };
        assert_eq!(name("https://h/a/n41w075.tif?token=x"), "n41w075");
        assert_eq!(name("https://h/a/B%C3%A4r.TIFF/"), "B_C3_A4r");
        assert_eq!(name("https://h"), "terrain");
        assert_eq!(name("https://h/..%2f..%2fx.tif"), "_2f.._2fx");
    }
}
