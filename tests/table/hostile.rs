//! Files that are not as they should be.

use sillmark::table::{LONGEST_RECORD, RecordFault, TableFormat, TableReader};

use super::{Row, csv, rows_in};

fn read(bytes: impl AsRef<[u8]>) -> Vec<Result<Row, RecordFault>> {
    let folder = tempfile::tempdir().unwrap();
    rows_in(&csv(&folder, bytes), TableFormat::Csv, 1 << 16)
}

fn values(rows: &[Result<Row, RecordFault>]) -> Vec<Vec<&str>> {
    let good = rows.iter().filter_map(|row| row.as_ref().ok());
    good.map(|row| row.1.iter().map(String::as_str).collect())
        .collect()
}

fn header_error(bytes: impl AsRef<[u8]>) -> String {
    let folder = tempfile::tempdir().unwrap();
    let path = csv(&folder, bytes);
    let Err(error) = TableReader::open(&path, TableFormat::Csv, None) else {
        panic!("the header was taken");
    };
    let text = error.to_string();
    text.strip_prefix(&format!("{}: ", path.display()))
        .unwrap()
        .to_owned()
}

#[test]
fn quotes_marks_and_line_ends_of_all_kinds_are_read() {
    let rows = read("\u{feff}id , note\r\n1,\"a, \"\"b\"\"\"\r\n 2 ,\"two\r\nlines\"\r\n3,");
    assert_eq!(
        values(&rows),
        [
            vec!["1", "a, \"b\""],
            vec!["2", "two\r\nlines"],
            vec!["3", ""]
        ]
    );
    assert!(rows.iter().all(Result::is_ok));
}

#[test]
fn a_header_that_does_not_tell_the_columns_apart_is_refused() {
    assert_eq!(
        header_error("id,sill,id, sill\n"),
        "header: more than one column is named \"id\", \"sill\"; accepted: every name once"
    );
    assert_eq!(
        header_error("id,,x,\n1,2,3,4\n"),
        "header: column 2, 4 has no name; accepted: a name for every column"
    );
    for (text, part) in [
        (&b""[..], "the file is empty"),
        (b"\n1,2\n", "the first line is empty"),
        (b"id;x;y\n", "separated by semicolons"),
        (b"id\tx\ty\n", "separated by tabs"),
        (b"id,x\r1,2\r", "carriage return alone"),
        (b"i\xe9,x\n", "not UTF-8"),
        (b"\xff\xfei\0d\0,\0x\0\n\0", "not UTF-8"),
        (b"i\0d\0,\0x\0\n\0", "zero byte"),
        (b"\"id,x\n1,2\n", "its quote is not closed"),
    ] {
        let error = header_error(text);
        assert!(error.contains(part), "{error}");
    }
    assert!(header_error(vec![b'x'; 3 << 20]).contains("too long"));
}

#[test]
fn a_record_at_fault_is_named_and_the_rest_is_read() {
    let rows = read(b"id,note\n1,a\n2\n3,b,c\n4,\xff\n5,z\0z\n6,ok\n");
    assert_eq!(values(&rows), [["1", "a"], ["6", "ok"]]);
    let faults: Vec<_> = rows.iter().filter_map(|row| row.as_ref().err()).collect();
    let told: Vec<_> = faults
        .iter()
        .map(|fault| {
            (
                fault.line,
                fault.field.as_str(),
                fault.value.as_str(),
                fault.problem.as_str(),
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            (
                3,
                "record",
                "2",
                "it has 1 value, the header names 2 columns"
            ),
            (
                4,
                "record",
                "3,b,c",
                "it has 3 values, the header names 2 columns"
            ),
            (5, "note", "\u{fffd}", "it is not UTF-8"),
            (6, "note", "z\0z", "it holds a zero byte"),
        ]
    );
    assert_eq!(
        faults[0].clone().in_file("rows.csv").to_string(),
        "rows.csv, line 3: record \"2\": it has 1 value, the header names 2 columns; accepted: \
         a value for every column, an empty one where it is missing; a value with a comma in quotes"
    );
}

#[test]
fn an_unclosed_quote_costs_its_line_only() {
    let rows = read("id,note\n1,a\n2,\"open\n3,b\n4,c\n");
    assert_eq!(values(&rows), [["1", "a"], ["3", "b"], ["4", "c"]]);
    let fault = rows[1].as_ref().unwrap_err();
    assert_eq!((fault.line, fault.value.as_str()), (3, "2,\"open"));
    assert_eq!(
        fault.problem,
        "its quote is not closed by the end of the file"
    );
}

#[test]
fn a_value_of_ten_megabytes_is_a_fault_and_not_held() {
    for quote in ["", "\""] {
        let long = "x".repeat(10 << 20);
        let folder = tempfile::tempdir().unwrap();
        let path = csv(
            &folder,
            format!("id,note\n1,a\n2,{quote}{long}{quote}\n3,b\n"),
        );
        for limit in [1, 1 << 16, 64 << 20] {
            let mut reader = TableReader::open(&path, TableFormat::Csv, None).unwrap();
            let mut most = 0;
            while let Some(block) = reader.next_block(limit).unwrap() {
                most = most.max(block.bytes());
            }
            assert!(most <= LONGEST_RECORD, "{most}");
            let rows = rows_in(&path, TableFormat::Csv, limit);
            assert_eq!(values(&rows), [["1", "a"], ["3", "b"]]);
            let fault = rows[1].as_ref().unwrap_err();
            assert_eq!(fault.line, 3);
            assert!(fault.problem.contains("too long"), "{fault}");
            assert!(fault.value.len() < 200);
        }
    }
}

#[test]
fn what_is_no_file_of_the_format_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let missing = folder.path().join("none");
    for format in TableFormat::ALL {
        let error = TableReader::open(&missing, format, None).err().unwrap();
        assert!(error.to_string().contains("none: "), "{error}");
        if format != TableFormat::Csv {
            let other = csv(&folder, "a,b\n1,2\n");
            let error = TableReader::open(&other, format, None).err().unwrap();
            assert!(error.to_string().contains("accepted: a"), "{error}");
        }
    }
    let path = csv(&folder, "a,b\n");
    let error = TableReader::open(&path, TableFormat::Csv, Some("x"))
        .err()
        .unwrap();
    assert!(error.to_string().contains("CSV has no layers"), "{error}");
}
