//! The answers to a table's parts, one after the other, are the answer to the whole.

use std::fmt::Write as _;

use super::{HEADER, KIT_NOTE, ROWS, alder_lock, with_maps};
use crate::scratch::Scratch;

const NAMES: &str = "id,longitude,latitude,threshold,threshold_unit,vertical_datum";

/// Places all over the demonstration's maps and around them, one after the other by a
/// multiplicative generator (Lehmer; the multiplier of Park and Miller, 1988).
pub(super) fn places(count: usize) -> String {
    let mut state = 42_u64;
    let mut random = move || {
        state = state * 48_271 % 2_147_483_647;
        f64::from(u32::try_from(state).unwrap()) / 2_147_483_647.0
    };
    let mut text = String::with_capacity(count * 60);
    for number in 0..count {
        let east = -87.5013 + 0.0042 * random();
        let north = 47.7981 + 0.0024 * random();
        let height = 184.0 + 8.0 * random();
        writeln!(text, "r{number},{east:.6},{north:.6},{height:.3},m,NAVD88").unwrap();
    }
    text
}

fn piped(scratch: &Scratch, input: &str, options: &[&str]) -> Vec<u8> {
    let mut command = scratch.command(&with_maps("-", options));
    let output = command.write_stdin(input.to_owned()).output().unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(["", KIT_NOTE].contains(&said.as_ref()), "{said}");
    assert_eq!(output.status.code(), Some(0));
    output.stdout
}

#[test]
fn stdin_to_stdout() {
    let scratch = alder_lock();
    let table = format!("{HEADER}{ROWS}");
    scratch.write("t.csv", &table);
    let of_file = scratch.answer(&with_maps("t.csv", &[]));
    assert_eq!(
        String::from_utf8(piped(&scratch, &table, &[])).unwrap(),
        of_file
    );
}

#[test]
fn parts_follow_each_other() {
    let scratch = alder_lock();
    let rows = places(1000);
    let lines: Vec<&str> = rows.split_inclusive('\n').collect();
    let whole = piped(&scratch, &format!("{HEADER}{rows}"), &["--no-header"]);
    assert_eq!(whole.iter().filter(|byte| **byte == b'\n').count(), 1000);
    for cuts in [vec![1], vec![999], vec![137, 138, 700], vec![333, 666]] {
        let mut joined = Vec::new();
        let ends = cuts.iter().copied().chain([1000]);
        let starts = [0].into_iter().chain(cuts.iter().copied());
        for (start, end) in starts.zip(ends) {
            let part = lines[start..end].concat();
            let options = ["--no-header", "--columns", NAMES];
            joined.extend(piped(&scratch, &part, &options));
        }
        assert!(joined == whole, "{cuts:?}");
    }
}

#[test]
fn threads_and_memory_change_nothing() {
    let scratch = alder_lock();
    scratch.write("t.csv", format!("{HEADER}{}", places(60_000)));
    let answer = |options: &[&str]| scratch.answer(&with_maps("t.csv", options));
    let expected = answer(&["--threads", "1", "--memory", "16 MB"]);
    assert_eq!(expected.lines().count(), 60_001);
    for options in [
        ["--threads", "2", "--memory", "16 MB"],
        ["--threads", "7", "--memory", "1 GB"],
        ["--threads", "1", "--memory", "1 GB"],
    ] {
        assert!(answer(&options) == expected, "{options:?}");
    }
}

/// Each row anew: the name of an opening is not that of the row before.
#[test]
fn a_row_does_not_depend_on_the_row_before() {
    let scratch = alder_lock();
    let header =
        "id,longitude,latitude,threshold,threshold_unit,vertical_datum,opening,width,wall\n";
    let place = "-87.498762,47.799353,612.9,ft,NAVD88";
    let first = format!("a,{place},goods bay,14 ft,reinforced concrete\n");
    let second = format!("b,{place},,,\n");
    let both = piped(
        &scratch,
        &format!("{header}{first}{second}"),
        &["--no-header"],
    );
    let alone = [
        piped(&scratch, &format!("{header}{first}"), &["--no-header"]),
        piped(&scratch, &format!("{header}{second}"), &["--no-header"]),
    ];
    assert_eq!(both, alone.concat());
}
