//! Sorting with ranks, against a plain sort.

use std::fmt::Write;

use sillmark::table::sort_ranked;

use super::csv;

/// Rows with many equal numbers, gaps, quotes and lines of very different length.
fn rows(count: u64) -> Vec<(Option<f64>, String)> {
    let mut state = 20_060_816_u64;
    (0..count)
        .map(|index| {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1);
            let draw = state >> 33;
            #[allow(clippy::cast_precision_loss)] // below 2⁵²
            let number = (!draw.is_multiple_of(11)).then_some((draw % 400) as f64 / 8.0 - 20.0);
            let note = "n".repeat(usize::try_from(draw % 50).unwrap());
            let text = number.map_or_else(String::new, |number| number.to_string());
            (number, format!("{index},{text},\"{note}\n,\""))
        })
        .collect()
}

fn expected(rows: &[(Option<f64>, String)], descending: bool) -> String {
    let mut sorted: Vec<_> = rows.iter().filter(|row| row.0.is_some()).collect();
    sorted.sort_by(|one, other| {
        let (one, other) = (one.0.unwrap(), other.0.unwrap());
        if descending {
            other.total_cmp(&one)
        } else {
            one.total_cmp(&other)
        }
    });
    let mut text = "rank,id,depth,note\n".to_owned();
    for (index, row) in sorted.iter().enumerate() {
        writeln!(text, "{},{}", index + 1, row.1).unwrap();
    }
    for row in rows.iter().filter(|row| row.0.is_none()) {
        writeln!(text, ",{}", row.1).unwrap();
    }
    text
}

#[test]
fn many_runs_give_what_a_plain_sort_gives() {
    let rows = rows(20_000);
    let lines: Vec<&str> = rows.iter().map(|row| row.1.as_str()).collect();
    let text = lines.join("\n");
    let folder = tempfile::tempdir().unwrap();
    let work = csv(&folder, format!("id,depth,note\n{text}"));
    let target = folder.path().join("ranked.csv");
    // From all in memory to a run every few rows: more than 64 × 64 runs.
    for memory in [64 << 20, 1 << 20, 64 << 10, 600] {
        for descending in [true, false] {
            sort_ranked(&work, "depth", descending, memory, "rank", &target).unwrap();
            let found = std::fs::read_to_string(&target).unwrap();
            assert!(
                found == expected(&rows, descending),
                "{memory} {descending}"
            );
        }
    }
    let left: Vec<_> = std::fs::read_dir(folder.path()).unwrap().collect();
    assert_eq!(left.len(), 2, "{left:?}");
}

#[test]
fn the_two_zeros_are_one_number() {
    let folder = tempfile::tempdir().unwrap();
    let work = csv(&folder, "id,depth\na,0\nb,-0.0\nc,0.0\nd,-1\ne,1\n");
    let target = folder.path().join("ranked.csv");
    sort_ranked(&work, "depth", true, 1 << 20, "rank", &target).unwrap();
    assert_eq!(
        std::fs::read_to_string(target).unwrap(),
        "rank,id,depth\n1,e,1\n2,a,0\n3,b,-0.0\n4,c,0.0\n5,d,-1\n"
    );
}

#[test]
fn what_cannot_be_sorted_is_said_and_nothing_is_left() {
    let folder = tempfile::tempdir().unwrap();
    let work = csv(&folder, "id,depth\na,1\nb,deep\n");
    let target = folder.path().join("ranked.csv");
    let sort = |by, rank| sort_ranked(&work, by, true, 1 << 20, rank, &target).unwrap_err();
    for (by, rank, part) in [
        (
            "depth",
            "rank",
            ", line 3: depth \"deep\": it is not a finite number",
        ),
        (
            "height",
            "rank",
            "column \"height\": there is none; accepted: its columns are id, depth",
        ),
        ("depth", "id", "column \"id\": there is one already"),
    ] {
        let error = sort(by, rank).to_string();
        assert!(error.contains(part), "{error}");
    }
    let error = sort_ranked(&work, "depth", true, 1 << 20, "rank", &work).unwrap_err();
    assert!(
        error
            .to_string()
            .contains("it is the file that is read from"),
        "{error}"
    );
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}
