//! Files that cannot be written or read, and files that are not to be written over.

use std::process::{Command, Stdio};

use insta::assert_snapshot;

use super::parts::places;
use super::{HEADER, ROWS, alder_lock, with_maps};
use crate::scratch::Scratch;
use crate::support::skip;

fn small() -> Scratch {
    let scratch = alder_lock();
    scratch.write("t.csv", format!("{HEADER}{ROWS}"));
    scratch
}

/// What is said, and that nothing was written.
fn refused(scratch: &Scratch, options: &[&str]) -> String {
    let said = scratch.refused(&with_maps("t.csv", options));
    assert!(!scratch.path("o.csv").exists());
    assert!(!scratch.path("o.csv.unfinished").exists());
    said
}

#[test]
fn folders_that_do_not_exist() {
    let scratch = small();
    assert_snapshot!(refused(&scratch, &["-o", "none/o.csv"]), @r#"error: option --output: "none/o.csv" lies in a folder that does not exist; accepted: the path of a file in a folder that exists and can be written to"#);
    assert_snapshot!(refused(&scratch, &["-o", "o.csv", "--rejects", "none/r.csv"]), @r#"error: option --rejects: "none/r.csv" lies in a folder that does not exist; accepted: the path of a file in a folder that exists and can be written to"#);
    assert_snapshot!(refused(&scratch, &["--rejects", "none/r.csv"]), @r#"error: option --rejects: "none/r.csv" lies in a folder that does not exist; accepted: the path of a file in a folder that exists and can be written to"#);
    assert_snapshot!(refused(&scratch, &["-o", "o.csv", "--summary", "none/s.txt"]), @r#"error: option --summary: "none/s.txt" lies in a folder that does not exist; accepted: the path of a file in a folder that exists and can be written to"#);
    assert_snapshot!(refused(&scratch, &["-o", "o.csv", "--summary", "s.doc"]), @r#"error: option --summary: "s.doc" has no ending that tells its form; accepted: .txt, .json, .html"#);
    assert_snapshot!(refused(&scratch, &["-o", "o.xls"]), @r#"error: o.xls: the format of a table is not known from the ending "xls"; accepted: csv, gpkg, geojson, json, fgb, parquet, geoparquet"#);
}

#[test]
fn what_is_read_is_not_written() {
    let scratch = small();
    let table = scratch.read("t.csv");
    assert_snapshot!(refused(&scratch, &["-o", "t.csv"]), @r#"error: option --output: "t.csv" is read by this run and would be written over; accepted: the path of another file"#);
    assert_snapshot!(refused(&scratch, &["-o", "o.csv", "--rejects", "t.csv"]), @r#"error: option --rejects: "t.csv" is read by this run and would be written over; accepted: the path of another file"#);
    assert_snapshot!(refused(&scratch, &["--rejects", "./t.csv"]), @r#"error: option --rejects: "./t.csv" is read by this run and would be written over; accepted: the path of another file"#);
    std::fs::copy(scratch.path("zones.geojson"), scratch.path("z.json")).unwrap();
    let zones = [
        "portfolio",
        "t.csv",
        "--zones",
        "z.json",
        "--summary",
        "z.json",
    ];
    assert_snapshot!(scratch.refused(&zones), @r#"error: option --summary: "z.json" is read by this run and would be written over; accepted: the path of another file"#);
    assert_snapshot!(refused(&scratch, &["-o", "o.csv", "--rejects", "./o.csv"]), @r#"error: option --rejects: "./o.csv" is also written by option --output; accepted: the path of another file"#);
    assert_eq!(scratch.read("t.csv"), table);
}

#[test]
fn a_result_is_replaced_only_at_the_end() {
    let scratch = small();
    scratch.write("o.csv", "before");
    std::fs::write(scratch.path("terrain.tif"), "no raster").unwrap();
    let outcome = scratch.run_portfolio("t.csv", &["-o", "o.csv"]);
    assert_eq!(outcome.status, 1);
    assert_snapshot!(outcome.stderr, @"error: terrain.tif: cannot be opened: `terrain.tif' not recognized as being in a supported file format; accepted: a file of one of the formats GeoTIFF, Arc/Info ASCII grid");
    assert_eq!(scratch.read("o.csv"), "before");
    let other = small();
    other.write("o.csv", "before");
    assert_eq!(other.run_portfolio("t.csv", &["-o", "o.csv"]).status, 0);
    assert_eq!(other.read("o.csv").lines().count(), 5);
}

#[test]
fn maps_that_are_cut() {
    let scratch = alder_lock();
    scratch.write("t.csv", format!("{HEADER}{}", places(5000)));
    let whole = std::fs::read(scratch.path("terrain.tif")).unwrap();
    scratch.write("terrain.tif", &whole[..whole.len() / 2]);
    // Which tile is found first depends on the threads.
    let outcome = scratch.run_portfolio("t.csv", &["-o", "o.csv", "--threads", "1"]);
    assert_eq!(outcome.status, 1);
    assert_snapshot!(outcome.stderr, @"error: terrain.tif: reading failed: it ends within its block in column 4 and row 2 of blocks: the file is damaged or cut short; accepted: a whole file");
    assert!(!scratch.path("o.csv").exists() && !scratch.path("o.csv.unfinished").exists());
    scratch.write("terrain.tif", whole);
    let whole = scratch.read("zones.geojson");
    scratch.write("zones.geojson", &whole[..whole.len() / 2]);
    let outcome = scratch.run_portfolio("t.csv", &["-o", "p.csv"]);
    assert_eq!(outcome.status, 1);
    assert_snapshot!(outcome.stderr, @"error: zones.geojson: cannot be opened: At line 7, character 372: Unterminated object; Failed to read GeoJSON data; accepted: a file of one of the formats shapefile, GeoPackage, GeoJSON, FlatGeobuf, file geodatabase");
    assert!(!scratch.path("p.csv").exists() && !scratch.path("p.csv.unfinished").exists());
}

/// A small file system in memory at `disk`, until it is dropped.
struct SmallDisk<'a>(&'a Scratch);

impl<'a> SmallDisk<'a> {
    fn mount(scratch: &'a Scratch, options: &str) -> Option<Self> {
        std::fs::create_dir(scratch.path("disk")).unwrap();
        let mounted = Command::new("mount")
            .args(["-t", "tmpfs", "-o", options, "tmpfs"])
            .arg(scratch.path("disk"))
            .output();
        if mounted.is_ok_and(|output| output.status.success()) {
            return Some(Self(scratch));
        }
        if std::env::var_os("CI").is_none() {
            skip("a full disk: no right to mount a small one");
        }
        None
    }
}

impl Drop for SmallDisk<'_> {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.0.path("disk")).status();
    }
}

#[test]
fn a_full_disk_while_rows_are_written() {
    let scratch = alder_lock();
    scratch.write("t.csv", format!("{HEADER}{}", places(40_000)));
    let Some(_disk) = SmallDisk::mount(&scratch, "size=3m") else {
        return;
    };
    let outcome = scratch.run_portfolio("t.csv", &["-o", "disk/o.csv", "--memory", "16 MB"]);
    assert_eq!(outcome.status, 2);
    assert!(!scratch.path("disk/o.csv").exists());
    println!("{}", outcome.stderr);
    assert!(
        outcome
            .stderr
            .contains("disk/o.csv.unfinished/rows.csv: writing failed: No space left on device"),
        "{}",
        outcome.stderr
    );
    // With room it goes on.
    let grown = Command::new("mount")
        .args(["-o", "remount,size=64m"])
        .arg(scratch.path("disk"))
        .status();
    assert!(grown.unwrap().success());
    let resume = ["-o", "disk/o.csv", "--resume"];
    let resumed = scratch.run_portfolio("t.csv", &resume);
    assert_eq!((resumed.status, resumed.stderr.as_str()), (0, ""));
    assert!(scratch.read("disk/o.csv") == scratch.answer(&with_maps("t.csv", &[])));
}

#[test]
fn a_full_disk_while_it_is_converted() {
    let scratch = alder_lock();
    scratch.write("t.csv", format!("{HEADER}{}", places(10_000)));
    scratch.run_portfolio("t.csv", &["-o", "rows.csv"]);
    let rows = scratch.path("rows.csv").metadata().unwrap().len();
    let Some(_disk) = SmallDisk::mount(&scratch, &format!("size={}", rows + (1 << 20))) else {
        return;
    };
    let outcome = scratch.run_portfolio("t.csv", &["-o", "disk/o.gpkg"]);
    assert_eq!(outcome.status, 2);
    // What the library says in between depends on where the room ended.
    let (start, end) = (
        "error: disk/o.gpkg.unfinished/converted: cannot be written: ",
        "; all rows are kept in disk/o.gpkg.unfinished; the same command with --resume goes on \
         from there\n",
    );
    let said = &outcome.stderr;
    assert!(said.starts_with(start) && said.ends_with(end), "{said}");
    assert!(!scratch.path("disk/o.gpkg").exists());
}

#[test]
fn a_folder_that_cannot_be_written_to() {
    let scratch = small();
    let Some(_disk) = SmallDisk::mount(&scratch, "size=1m,ro") else {
        return;
    };
    assert_snapshot!(refused(&scratch, &["-o", "disk/o.csv"]), @r#"error: option --output: "disk/o.csv" lies in a folder that you may not write to; accepted: the path of a file in a folder that exists and can be written to"#);
}

#[cfg(unix)]
#[test]
fn a_reader_that_goes_away() {
    let scratch = alder_lock();
    scratch.write("t.csv", format!("{HEADER}{}", places(20_000)));
    let (reader, writer) = std::io::pipe().unwrap();
    drop(reader);
    let output = Command::new(env!("CARGO_BIN_EXE_sillmark"))
        .args(with_maps("t.csv", &[]))
        .current_dir(scratch.folder())
        .stdout(writer)
        .stderr(Stdio::piped())
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(String::from_utf8(output.stderr).unwrap(), "");
    // Later, in the midst of the rows.
    let mut child = Command::new(env!("CARGO_BIN_EXE_sillmark"))
        .args(with_maps("t.csv", &["--memory", "16 MB"]))
        .current_dir(scratch.folder())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut first = [0; 2];
    let mut stdout = child.stdout.take().unwrap();
    std::io::Read::read_exact(&mut stdout, &mut first).unwrap();
    drop(stdout);
    let output = child.wait_with_output().unwrap();
    assert_eq!(&first, b"id");
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(String::from_utf8(output.stderr).unwrap(), "");
}
