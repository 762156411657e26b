//! The bench of whole runs, small: it still runs, and the values of a portfolio are those of an
//! independent script wherever the maps do not explain a difference.

use std::path::Path;
use std::process::Command;

use crate::support::skip;

#[test]
fn every_difference_from_the_analysts_script_is_explained() {
    let Some(python) = std::env::var_os("SILLMARK_PEER_PYTHON") else {
        skip("bench: SILLMARK_PEER_PYTHON names no interpreter");
        return;
    };
    let work = tempfile::tempdir().unwrap();
    let output = Command::new(python)
        .arg(Path::new(env!("CARGO_MANIFEST_DIR")).join("benches/portfolio/run"))
        .args(["--program", env!("CARGO_BIN_EXE_sillmark"), "--runs", "1"])
        .args(["--side", "600", "--buildings", "20000", "--zones", "200"])
        .arg("--work")
        .arg(work.path())
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    let table = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success(), "{table}{said}");
    assert!(table.contains("20,000 rows, each value"), "{table}");
    assert!(table.contains("not explained: 0\n"), "{table}");
    // Not the agreement of two empty columns: the outer half cell is always met.
    assert!(table.contains(" in the outer half cell\n"), "{table}");
    assert!(table.contains("\nbase "), "{table}");
}
