//! What a cache holds, read without the program's own reader.

use std::path::Path;

use serde_json::Value;
use sha2::{Digest as _, Sha256};

/// How many entries a cache holds, or which of them is not sound.
pub(super) fn entries(folder: &Path) -> Result<usize, String> {
    let mut count = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let entry = entry.unwrap();
        let name = entry.file_name().into_string().unwrap();
        if name.len() != 64 {
            return Err(format!("{name} is no entry of the cache"));
        }
        let bytes = std::fs::read(entry.path()).unwrap();
        let parts: Vec<&[u8]> = bytes.splitn(2, |byte| *byte == b'\n').collect();
        let &[head, answer] = parts.as_slice() else {
            return Err(format!("{name} has no head"));
        };
        let head: Value = serde_json::from_slice(head).map_err(|error| error.to_string())?;
        let sum = head["sha256"].as_str().unwrap_or_default();
        if bytes_of(sum) != Some(Sha256::digest(answer).to_vec()) {
            return Err(format!("{name}: the checksum does not hold: {head}"));
        }
        count += 1;
    }
    Ok(count)
}

/// What hexadecimal digits say.
fn bytes_of(digits: &str) -> Option<Vec<u8>> {
    let pairs = (0..digits.len())
        .step_by(2)
        .map(|at| digits.get(at..at + 2));
    pairs
        .map(|pair| u8::from_str_radix(pair?, 16).ok())
        .collect()
}
