//! Asking another library, by a script of `tests/peers`.

use std::ffi::OsStr;
use std::path::Path;
use std::process::Command;

use crate::support::skip;

/// The lines that a script prints for so many points, always the same ones.
pub(crate) fn lines(script: &str, input: &Path, points: usize) -> Option<Vec<String>> {
    let points = points.to_string();
    let arguments = [input.as_os_str(), points.as_ref(), SEED.as_ref()];
    run(script, &arguments)
}

/// What random points start from.
pub(crate) const SEED: &str = "20060816";

/// The lines that a script prints. `None`, and a word on the terminal, where
/// `SILLMARK_PEER_PYTHON` names no interpreter.
pub(crate) fn run(script: &str, arguments: &[&OsStr]) -> Option<Vec<String>> {
    let Some(python) = std::env::var_os("SILLMARK_PEER_PYTHON") else {
        skip(&format!(
            "{script}: SILLMARK_PEER_PYTHON names no interpreter"
        ));
        return None;
    };
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/peers");
    let output = Command::new(python)
        .arg("-B") // no compiled files beside the scripts
        .arg(folder.join(script))
        .args(arguments)
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{script}: {said}");
    let text = String::from_utf8(output.stdout).unwrap();
    Some(text.lines().map(str::to_owned).collect())
}
