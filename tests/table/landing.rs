//! A target appears whole or not at all.

use sillmark::table::{TableFormat, convert};

use super::csv;
use super::formats::{WORK, columns, points};

#[test]
fn a_bad_row_leaves_the_target_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let points = points("EPSG:4326");
    for (bad, part) in [
        (
            "a,1,2,deep,3\n",
            "line 6: depth_m \"deep\": it is not a finite number",
        ),
        (
            "a,1,2,nan,3\n",
            "line 6: depth_m \"nan\": it is not a finite number",
        ),
        (
            "a,1,2,3,2.5\n",
            "line 6: planks \"2.5\": it is not a whole number",
        ),
        ("a,1,,3,2\n", "line 6: y \"\": it is not a finite number"),
        ("a,1,2\n", "line 6: record \"a,1,2\": it has 3 values"),
    ] {
        let work = csv(&folder, format!("{WORK}{bad}"));
        for format in TableFormat::ALL.into_iter().skip(1) {
            let target = folder
                .path()
                .join("out")
                .with_extension(format.endings()[0]);
            std::fs::write(&target, "before").unwrap();
            let outcome = convert(&work, &columns(), Some(&points), &target, format, "a", None);
            let error = outcome.unwrap_err().to_string();
            assert!(error.contains(part), "{format:?}: {error}");
            assert_eq!(std::fs::read_to_string(&target).unwrap(), "before");
            std::fs::remove_file(target).unwrap();
        }
    }
    let left: Vec<_> = std::fs::read_dir(folder.path()).unwrap().collect();
    assert_eq!(left.len(), 1, "{left:?}");
}

#[test]
fn the_input_a_folder_and_another_header_are_refused() {
    let folder = tempfile::tempdir().unwrap();
    let work = csv(&folder, WORK);
    let to = |target: &std::path::Path| {
        let outcome = convert(&work, &columns(), None, target, TableFormat::Csv, "a", None);
        outcome.unwrap_err().to_string()
    };
    assert!(to(&work).contains("it is the file that is read from"));
    assert!(to(folder.path()).contains("it is a folder"));
    assert!(to(&folder.path().join("no/such/out.csv")).contains("writing beside it failed"));
    let fewer = &columns()[..3];
    let target = folder.path().join("out.csv");
    let outcome = convert(&work, fewer, None, &target, TableFormat::Csv, "a", None);
    let error = outcome.unwrap_err().to_string();
    assert!(
        error.ends_with("header: id,x,y,depth_m,planks; accepted: id,x,y"),
        "{error}"
    );
    assert!(!target.exists());
}
