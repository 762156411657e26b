//! A reader that goes away, and a disk that is full.

use std::process::{Command, Stdio};

use super::scratch::Scratch;

#[cfg(unix)]
#[test]
fn a_closed_pipe_ends_quietly() {
    let scratch = Scratch::new();
    let (reader, writer) = std::io::pipe().unwrap();
    drop(reader);
    let output = Command::new(env!("CARGO_BIN_EXE_sillmark"))
        .args(["site", "site.toml", "--zones", "zones.geojson", "--trail"])
        .current_dir(scratch.folder())
        .stdout(writer)
        .stderr(Stdio::piped())
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(String::from_utf8(output.stderr).unwrap(), "");
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_not_the_users_fault() {
    let full = std::fs::OpenOptions::new()
        .write(true)
        .open("/dev/full")
        .unwrap();
    let output = Command::new(env!("CARGO_BIN_EXE_sillmark"))
        .args(["catalog", "rules"])
        .stdout(full)
        .stderr(Stdio::piped())
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert_eq!(
        String::from_utf8(output.stderr).unwrap(),
        "error: stdout: No space left on device (os error 28)\n"
    );
}
