//! A run that is killed or stopped, and goes on.

use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use insta::assert_snapshot;

use super::parts::places;
use super::{HEADER, ROWS, alder_lock, with_maps};
use crate::scratch::Scratch;

/// Rows of the long runs here: some seconds of one thread.
const MANY: usize = 300_000;

/// Little memory, so that a run has several batches.
const LONG: [&str; 4] = ["--memory", "16 MB", "--threads", "1"];

fn long_table() -> Scratch {
    let scratch = alder_lock();
    // Some rows at fault, and an id that stands twice.
    let bad = "bad,x,47.8,612.9,ft,NAVD88\n";
    let rows = places(MANY);
    let half = rows[rows.len() / 2..].find('\n').unwrap() + rows.len() / 2 + 1;
    let (first, second) = rows.split_at(half);
    scratch.write("t.csv", format!("{HEADER}{bad}{first}{bad}{second}"));
    scratch
}

fn start(scratch: &Scratch, options: &[&str]) -> Child {
    start_with(scratch, "t.csv", options)
}

fn start_with(scratch: &Scratch, table: &str, options: &[&str]) -> Child {
    let _ = std::fs::create_dir(scratch.path("grids"));
    Command::new(env!("CARGO_BIN_EXE_sillmark"))
        .args(with_maps(table, options))
        .current_dir(scratch.folder())
        .env("SILLMARK_GRIDS", "grids")
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

/// Kills a run again and again and goes on; how often it was killed, and how often it had
/// rows by then.
fn killed_until_done(
    scratch: &Scratch,
    output: &str,
    pauses: &[u64],
    options: &[&str],
) -> [usize; 2] {
    let [mut killed, mut with_rows] = [0; 2];
    let mut pauses = pauses.iter();
    let first = [&["-o", output][..], options].concat();
    let again = [&first[..], &["--resume"]].concat();
    let unfinished = scratch.path(&format!("{output}.unfinished/journal.json"));
    loop {
        let mut run = start(scratch, if unfinished.exists() { &again } else { &first });
        let Some(pause) = pauses.next() else {
            let output = run.wait_with_output().unwrap();
            // The id that stands twice.
            assert_eq!(output.status.code(), Some(1));
            let said = String::from_utf8(output.stderr).unwrap();
            assert!(
                said.contains("that of line 2") && said.contains("1 row has the id"),
                "{said}"
            );
            return [killed, with_rows];
        };
        std::thread::sleep(Duration::from_millis(*pause));
        if run.try_wait().unwrap().is_some() {
            return [killed, with_rows];
        }
        run.kill().unwrap();
        run.wait().unwrap();
        killed += 1;
        let journal = std::fs::read_to_string(&unfinished).unwrap_or_default();
        with_rows += usize::from(journal.contains("\"byte\":"));
        assert!(!scratch.path(output).exists() || !unfinished.exists());
    }
}

#[test]
fn killed_ten_times() {
    let scratch = long_table();
    let calm = [&["-o", "calm.csv", "--summary", "calm.json"][..], &LONG].concat();
    // The quicker of two: a machine that is busy during one alone says little of those to come.
    let whole = [0; 2].map(|_| {
        let begun = Instant::now();
        assert_eq!(start(&scratch, &calm).wait().unwrap().code(), Some(1));
        u64::try_from(begun.elapsed().as_millis()).unwrap()
    });
    let whole = whole[0].min(whole[1]);
    // Each run has to begin again what the last note does not hold.
    let pauses = [4, 16, 9, 22, 13, 18, 6, 25, 11, 20].map(|share| 100 + whole * share / 40);
    let options = [&["--summary", "killed.json"][..], &LONG].concat();
    let [killed, with_rows] = killed_until_done(&scratch, "killed.csv", &pauses, &options);
    println!("{killed} times, {with_rows} with rows, in runs of {whole} ms");
    assert!(
        killed >= 3 && with_rows >= 1,
        "{killed} times, {with_rows} with rows, in runs of {whole} ms"
    );
    assert!(scratch.read("killed.csv") == scratch.read("calm.csv"));
    assert_eq!(
        scratch.read("killed.csv.rejects.csv"),
        scratch.read("calm.csv.rejects.csv")
    );
    let renamed = scratch
        .read("killed.json")
        .replace("killed.csv", "calm.csv");
    assert_eq!(renamed, scratch.read("calm.json"));
    assert!(!scratch.path("killed.csv.unfinished").exists());
}

/// The same, while all rows are there and another format is written.
#[test]
fn killed_while_it_is_converted() {
    let scratch = long_table();
    let calm = [&["-o", "calm.gpkg", "--rank", "height"][..], &LONG].concat();
    assert_eq!(start(&scratch, &calm).wait().unwrap().code(), Some(1));
    let options = [&["-o", "o.gpkg", "--rank", "height"][..], &LONG].concat();
    let mut run = start(&scratch, &options);
    let folder = scratch.path("o.gpkg.unfinished");
    let begun = Instant::now();
    while !folder.join("ranked.csv").exists() && begun.elapsed() < Duration::from_mins(2) {
        std::thread::sleep(Duration::from_millis(2));
    }
    std::thread::sleep(Duration::from_millis(100));
    run.kill().unwrap();
    run.wait().unwrap();
    assert!(folder.exists() && !scratch.path("o.gpkg").exists());
    let resumed = [&options[..], &["--resume"]].concat();
    assert_eq!(start(&scratch, &resumed).wait().unwrap().code(), Some(1));
    let bytes = |name: &str| std::fs::read(scratch.path(name)).unwrap();
    assert!(bytes("o.gpkg") == bytes("calm.gpkg"));
    let names: Vec<_> = std::fs::read_dir(scratch.folder()).unwrap().collect();
    let left = names.iter().filter(|entry| {
        let name = entry.as_ref().unwrap().file_name();
        let name = name.to_string_lossy();
        name.starts_with('.') || name.ends_with(".unfinished")
    });
    assert_eq!(left.count(), 0, "{names:?}");
}

/// Between the renaming of the result and the removal of the folder.
#[cfg(unix)]
#[test]
fn killed_at_the_very_end() {
    let scratch = alder_lock();
    scratch.write("t.csv", format!("{HEADER}{ROWS}"));
    assert_eq!(
        scratch.run_portfolio("t.csv", &["-o", "calm.csv"]).status,
        0
    );
    let options = ["-o", "o.csv", "--summary", "s.html"];
    // The system kills a program that writes a longer file; the page is one, when all rows are
    // written and nothing else is.
    let killed = Command::new("sh")
        .args(["-c", "ulimit -f 24; exec \"$0\" \"$@\""])
        .arg(env!("CARGO_BIN_EXE_sillmark"))
        .args(with_maps("t.csv", &options))
        .current_dir(scratch.folder())
        .env("SILLMARK_GRIDS", "grids")
        .output()
        .unwrap();
    assert_eq!(killed.status.code(), None, "{killed:?}");
    let folder = scratch.path("o.csv.unfinished");
    assert!(
        scratch
            .read("o.csv.unfinished/journal.json")
            .contains("\"complete\":true")
    );
    std::fs::rename(folder.join("rows.csv"), scratch.path("o.csv")).unwrap();
    let resume = [&options[..], &["--resume"]].concat();
    let outcome = scratch.run_portfolio("t.csv", &resume);
    assert_eq!((outcome.status, outcome.stderr.as_str()), (0, ""));
    assert_eq!(scratch.read("o.csv"), scratch.read("calm.csv"));
    assert!(scratch.path("s.html").exists());
    assert!(!folder.exists());
}

/// Sends the signal of Ctrl-C once there are rows of `o.csv`.
#[cfg(unix)]
fn interrupt(scratch: &Scratch, run: Child) -> Child {
    let rows = scratch.path("o.csv.unfinished/rows.csv");
    let begun = Instant::now();
    let long = || rows.metadata().is_ok_and(|facts| facts.len() > 1 << 18);
    while !long() && begun.elapsed() < Duration::from_mins(1) {
        std::thread::sleep(Duration::from_millis(1));
    }
    let id = run.id().to_string();
    let sent = Command::new("kill").args(["-INT", &id]).status().unwrap();
    assert!(sent.success());
    run
}

/// Tables whose rows are counted and not their bytes.
#[cfg(unix)]
#[test]
fn interrupted_in_other_formats() {
    let scratch = alder_lock();
    scratch.write("table.csv", format!("{HEADER}{}", places(80_000)));
    super::formats::tables(&scratch, Some("OGC:CRS84"));
    for table in ["table.gpkg", "table.parquet"] {
        let calm = scratch.answer(&with_maps(table, &[]));
        let options = [&["-o", "o.csv"][..], &LONG].concat();
        let run = interrupt(&scratch, start_with(&scratch, table, &options));
        assert_eq!(
            run.wait_with_output().unwrap().status.code(),
            Some(2),
            "{table}"
        );
        let resume = [&options[..], &["--resume"]].concat();
        let output = start_with(&scratch, table, &resume)
            .wait_with_output()
            .unwrap();
        assert_eq!(output.status.code(), Some(0), "{output:?}");
        assert!(scratch.read("o.csv") == calm, "{table}");
    }
}

#[cfg(unix)]
#[test]
fn interrupted() {
    let scratch = long_table();
    let options = [&["-o", "o.csv"][..], &LONG].concat();
    let run = interrupt(&scratch, start(&scratch, &options));
    let output = run.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    let said = String::from_utf8(output.stderr).unwrap();
    let rows = said.split_whitespace().nth(2).unwrap().to_owned();
    assert!(rows.parse::<u64>().unwrap() > 1000, "{said}");
    assert_snapshot!(said.replace(&rows, "N"), @"error: stopped; N rows are kept in o.csv.unfinished; the same command with --resume goes on from there");
    assert!(!scratch.path("o.csv").exists());
    // Without --resume it is not begun anew over it.
    assert_snapshot!(scratch.refused(&with_maps("t.csv", &options)), @"error: an unfinished run is there, o.csv.unfinished; accepted: --resume to continue it, or a fresh start after that folder is removed");
    // Nor with other options, nor with another table.
    let other = with_maps("t.csv", &["-o", "o.csv", "--resume", "--units", "si"]);
    assert_snapshot!(scratch.refused(&other), @"error: o.csv.unfinished: an unfinished run is there, and option --units has changed since it began; accepted: the same files and options, or a fresh start after the folder is removed");
    let other = with_maps("t.csv", &["-o", "o.csv", "--resume", "--dem-unit", "m"]);
    assert_snapshot!(scratch.refused(&other), @"error: o.csv.unfinished: an unfinished run is there, and option --dem, one of --dem-..., or --grade-radius has changed since it began; accepted: the same files and options, or a fresh start after the folder is removed");
    let table = scratch.read("t.csv");
    scratch.write("t.csv", format!("{table}more,-87.4,47.7,612.9,ft,NAVD88\n"));
    let resume = with_maps("t.csv", &["-o", "o.csv", "--resume"]);
    assert_snapshot!(scratch.refused(&resume), @"error: o.csv.unfinished: an unfinished run is there, and t.csv has changed since it began; accepted: the same files and options, or a fresh start after the folder is removed");
}

#[test]
fn nothing_to_resume() {
    let scratch = alder_lock();
    scratch.write("t.csv", format!("{HEADER}{ROWS}"));
    let resume = with_maps("t.csv", &["-o", "o.csv", "--resume"]);
    assert_snapshot!(scratch.refused(&resume), @r#"error: option --resume: there is no unfinished run of "o.csv" (it would be in o.csv.unfinished); accepted: the same command without --resume"#);
    let stdin = with_maps("-", &["-o", "o.csv", "--resume"]);
    let output = scratch
        .command(&stdin)
        .write_stdin(HEADER)
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(1));
    assert_snapshot!(String::from_utf8(output.stderr).unwrap(), @"error: option --resume: a table on stdin can be read only once; accepted: a file");
    // A folder that a run left before its first note, or after its last, is in nobody's way.
    std::fs::create_dir(scratch.path("o.csv.unfinished")).unwrap();
    scratch.write("o.csv.unfinished/rows.csv", "half");
    assert_eq!(scratch.run_portfolio("t.csv", &["-o", "o.csv"]).status, 0);
    assert_eq!(scratch.read("o.csv").lines().count(), 5);
}

#[test]
fn two_runs_at_once() {
    let scratch = long_table();
    let options = [&["-o", "o.csv"][..], &LONG].concat();
    let mut first = start(&scratch, &options);
    let journal = scratch.path("o.csv.unfinished/journal.json");
    let begun = Instant::now();
    while !journal.exists() && begun.elapsed() < Duration::from_mins(1) {
        std::thread::sleep(Duration::from_millis(2));
    }
    assert_snapshot!(scratch.refused(&with_maps("t.csv", &options)), @"error: o.csv.unfinished: another run writes there at this moment; accepted: another --output, or a start after that run has ended");
    let resume = [&options[..], &["--resume"]].concat();
    assert_snapshot!(scratch.refused(&with_maps("t.csv", &resume)), @"error: o.csv.unfinished: another run writes there at this moment; accepted: another --output, or a start after that run has ended");
    assert_eq!(first.wait().unwrap().code(), Some(1));
    assert_eq!(scratch.read("o.csv").lines().count(), MANY + 1);
}
