//! Pages in a real browser: `tests/browser/check.mjs` says what it looks at.

use std::path::{Path, PathBuf};
use std::process::Command;

use super::support::skip;

/// Opens pages in a browser and asserts that it finds nothing wrong with them.
pub(crate) fn opens(pages: &[PathBuf]) {
    let Some(modules) = std::env::var_os("SILLMARK_BROWSER_MODULES") else {
        skip("browser: SILLMARK_BROWSER_MODULES names no folder");
        return;
    };
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/browser/check.mjs");
    let output = Command::new("node")
        .arg(script)
        .args(pages)
        .env("SILLMARK_BROWSER_MODULES", modules)
        .output()
        .unwrap();
    let told = String::from_utf8(output.stdout).unwrap();
    let failed = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{told}{failed}");
    assert_eq!(told.trim(), format!("{{\"checked\":{}}}", pages.len()));
}
