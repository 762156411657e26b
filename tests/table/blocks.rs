//! However a file is cut, its records are the same.

use proptest::prelude::*;
use sillmark::table::{TableFormat, TableReader};

use super::{csv, rest_of, rows_in};

/// Texts that are full of what cutting could stumble on.
fn hostile_text() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        Just("a"),
        Just("é"),
        Just(" "),
        Just(","),
        Just(","),
        Just("\""),
        Just("\"\""),
        Just("\n"),
        Just("\n"),
        Just("\r\n"),
        Just("\r"),
        Just("\"x\ny\""),
        Just(",\"p,q\""),
        Just("1,2\n"),
        Just("\u{feff}"),
    ];
    prop::collection::vec(piece, 0..60).prop_map(|pieces| pieces.concat())
}

/// The records by the `csv` crate alone, over the whole text; blank lines left out.
fn parsed_whole(text: &str) -> Vec<Vec<String>> {
    csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .terminator(csv::Terminator::Any(b'\n'))
        .from_reader(text.as_bytes())
        .records()
        .map(|record| {
            record
                .unwrap()
                .iter()
                .map(|value| value.trim().to_owned())
                .collect()
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn every_size_of_block_gives_the_same_records(text in hostile_text()) {
        let folder = tempfile::tempdir().unwrap();
        let path = csv(&folder, format!("a,b\n{text}"));
        let whole = rows_in(&path, TableFormat::Csv, 1 << 20);
        for limit in 1..=text.len() + 1 {
            prop_assert_eq!(&rows_in(&path, TableFormat::Csv, limit), &whole, "limit {}", limit);
        }
        // Where the cutting found nothing to complain of, the parser alone agrees.
        let is_cut = whole.iter().any(|row| {
            row.as_ref().is_err_and(|fault| fault.accepted.contains("every quoted value"))
        });
        if !is_cut {
            let good: Vec<_> = whole.into_iter().flatten().map(|(_, values, _)| values).collect();
            let mut expected = parsed_whole(&format!("a,b\n{text}"));
            expected.remove(0);
            expected.retain(|values| values.len() == 2);
            prop_assert_eq!(good, expected);
        }
    }

    #[test]
    fn reading_goes_on_from_the_start_of_every_block(text in hostile_text(), limit in 1..40_usize) {
        let folder = tempfile::tempdir().unwrap();
        let path = csv(&folder, format!("a,b\r\n{text}"));
        let mut reader = TableReader::open(&path, TableFormat::Csv, None).unwrap();
        let mut starts = Vec::new();
        let whole = rest_of(&mut reader, limit, &mut starts);
        starts.push((whole.len(), reader.position()));
        for (before, start) in starts {
            let text = serde_json::to_string(&start).unwrap();
            reader.seek(serde_json::from_str(&text).unwrap()).unwrap();
            let rest = rest_of(&mut reader, limit + 3, &mut Vec::new());
            prop_assert_eq!(&rest[..], &whole[before..]);
        }
    }
}

#[test]
fn lines_are_those_of_an_editor() {
    let folder = tempfile::tempdir().unwrap();
    let path = csv(&folder, "a,b\n1,x\n\n\r\n2,\"two\nlines\"\r\n   \n3,y");
    for limit in [1, 7, 12, 1000] {
        let lines: Vec<u64> = rows_in(&path, TableFormat::Csv, limit)
            .into_iter()
            .map(|row| row.unwrap().0)
            .collect();
        assert_eq!(lines, [2, 5, 8], "{limit}");
    }
}

#[test]
fn a_place_that_is_none_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let path = csv(&folder, "a,b\n1,2\n3,4\n");
    let mut reader = TableReader::open(&path, TableFormat::Csv, None).unwrap();
    for place in [
        r#"{"text":{"byte":5,"line":2}}"#,
        r#"{"text":{"byte":0,"line":1}}"#,
        r#"{"text":{"byte":99,"line":9}}"#,
        r#"{"row":{"row":1}}"#,
    ] {
        let error = reader
            .seek(serde_json::from_str(place).unwrap())
            .unwrap_err();
        assert!(
            error.to_string().contains("accepted: a place between"),
            "{error}"
        );
    }
}
