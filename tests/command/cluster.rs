//! `examples/cluster`: the parts of a table on another engine against one run.

use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::scratch::{Outcome, Scratch};
use super::support::skip;

const ALDER_LOCK: &str = "examples/alder-lock";

fn project(relative: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(relative)
}

/// The interpreter that has the engine. Where no Java is, nothing can be asked of it, in CI
/// neither.
fn python() -> Option<std::ffi::OsString> {
    let java = Command::new("java").arg("-version").output();
    if !java.is_ok_and(|output| output.status.success()) {
        let _ = std::io::stderr().write_all(b"skipped: cluster: no java on the PATH\n");
        return None;
    }
    let python = std::env::var_os("SILLMARK_SPARK_PYTHON");
    if python.is_none() {
        skip("cluster: SILLMARK_SPARK_PYTHON names no interpreter");
    }
    python
}

/// Runs the example in four parts, with two of them at a time.
fn on_the_engine(scratch: &Scratch, table: &Path, options: &[&str]) -> Option<Outcome> {
    let output = Command::new(python()?)
        .arg("-B") // no compiled files beside the script
        .arg(project("examples/cluster/run.py"))
        .arg(table)
        .args(["out", "--parts", "4", "--master", "local[2]"])
        .args(["--binary", env!("CARGO_BIN_EXE_sillmark")])
        .args(["--rejects", "rejects.csv", "--"])
        .args(options)
        .current_dir(scratch.folder())
        .output()
        .unwrap();
    Some(Outcome {
        status: output.status.code().expect("not killed"),
        stdout: String::from_utf8(output.stdout).unwrap(),
        stderr: String::from_utf8(output.stderr).unwrap(),
    })
}

/// The parts one behind the other, and how many hold rows.
fn parts(scratch: &Scratch) -> (String, usize) {
    let names = std::fs::read_dir(scratch.path("out")).unwrap();
    let mut paths: Vec<_> = names.map(|entry| entry.unwrap().path()).collect();
    paths.retain(|path| {
        path.file_name()
            .unwrap()
            .as_encoded_bytes()
            .starts_with(b"part-")
    });
    paths.sort();
    let texts: Vec<_> = paths
        .iter()
        .map(|path| std::fs::read_to_string(path).unwrap())
        .collect();
    let filled = texts.iter().filter(|text| !text.is_empty()).count();
    (texts.concat(), filled)
}

fn maps() -> [String; 4] {
    let path = |name| project(ALDER_LOCK).join(name).display().to_string();
    [
        "--zones".to_owned(),
        path("zones.geojson"),
        "--dem".to_owned(),
        path("terrain.tif"),
    ]
}

/// Both runs of a table, which have to agree in every byte of answers and rejects.
fn agree(scratch: &Scratch, table: &Path, more: &[&str]) -> Option<String> {
    let maps = maps();
    let options: Vec<&str> = maps
        .iter()
        .map(String::as_str)
        .chain(more.iter().copied())
        .collect();
    let table_text = table.display().to_string();
    let command = [
        &["portfolio", &table_text, "--rejects", "alone.csv"],
        &options[..],
    ]
    .concat();
    let alone = scratch.command(&command).output().unwrap();
    assert!(alone.status.success());
    let alone = String::from_utf8(alone.stdout).unwrap();

    let outcome = on_the_engine(scratch, table, &options)?;
    assert_eq!(outcome.status, 0, "{}", outcome.stderr);
    let (together, filled) = parts(scratch);
    assert_eq!(filled, 4);
    assert_eq!(together, alone);
    Some(alone)
}

#[test]
fn four_parts_give_what_one_run_gives() {
    let scratch = Scratch::new();
    let table = project(ALDER_LOCK).join("buildings.csv");
    let Some(alone) = agree(&scratch, &table, &["--rule", "us-nfip-floodproofing"]) else {
        return;
    };
    for verdict in ["above", "protect", "engineer", "unresolved"] {
        assert!(alone.contains(&format!(",{verdict},")), "{verdict}");
    }
    let rejects = scratch.read("rejects.csv");
    assert_eq!(rejects, scratch.read("alone.csv"));
    assert!(
        rejects.contains("\n40,Lock Chapel,threshold,to be surveyed,"),
        "{rejects}"
    );
}

#[test]
fn parquet_goes_the_same_way() {
    let scratch = Scratch::new();
    let table = project(ALDER_LOCK)
        .join("buildings.csv")
        .display()
        .to_string();
    let maps = maps();
    let maps: Vec<&str> = maps.iter().map(String::as_str).collect();
    let make = [&["portfolio", &table, "-o", "made.parquet"], &maps[..]].concat();
    assert!(scratch.command(&make).output().unwrap().status.success());
    let more = ["--map", "threshold=threshold_m", "--threshold-unit", "m"];
    agree(&scratch, &scratch.path("made.parquet"), &more);
}

#[test]
fn a_filter_that_fails_fails_the_job_with_its_words() {
    let scratch = Scratch::new();
    let table = project(ALDER_LOCK).join("buildings.csv");
    let options = ["--zones", "zones.geojson", "--rule", "of thumb"];
    let Some(outcome) = on_the_engine(&scratch, &table, &options) else {
        return;
    };
    assert_eq!(outcome.status, 1, "{}", outcome.stderr);
    assert!(
        outcome.stderr.contains("the filter ended with 1: error: "),
        "{}",
        outcome.stderr
    );
    assert!(outcome.stderr.contains("of thumb"), "{}", outcome.stderr);
    assert!(!scratch.path("out/_SUCCESS").exists());
    assert!(!scratch.path("rejects.csv").exists());
}
