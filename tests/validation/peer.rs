//! Asking another library, by a script of `tests/peers`.

use std::path::Path;
use std::process::Command;

use crate::support::skip;

/// The lines that a script prints for so many points, always the same ones. `None`, and a
/// word on the terminal, where `SILLMARK_PEER_PYTHON` names no interpreter.
pub(crate) fn lines(script: &str, input: &Path, points: usize) -> Option<Vec<String>> {
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
        .arg(input)
        .args([&points.to_string(), "20060816"])
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{script}: {said}");
    let text = String::from_utf8(output.stdout).unwrap();
    Some(text.lines().map(str::to_owned).collect())
}
