//! The summary in its three forms, against the table.

use serde_json::Value;
use sillmark::report::portfolio::portfolio_summary_schema;

use super::parts::places;
use super::{Answers, HEADER, ROWS, alder_lock};

#[test]
fn counts_add_up_with_the_table() {
    let scratch = alder_lock();
    let bad = "bad,x,47.8,612.9,ft,NAVD88\nworse,-87.4,47.8,,ft,NAVD88\n";
    scratch.write("t.csv", format!("{HEADER}{ROWS}{bad}{}", places(3000)));
    let options = [
        "-o",
        "o.csv",
        "--summary",
        "s.txt",
        "--summary",
        "s.json",
        "--summary",
        "s.html",
    ];
    let outcome = scratch.run_portfolio("t.csv", &options);
    assert_eq!(
        (
            outcome.status,
            outcome.stderr.as_str(),
            outcome.stdout.as_str()
        ),
        (0, "note: 2 of 3006 rows rejected: o.csv.rejects.csv\n", "")
    );
    let summary: Value = serde_json::from_str(&scratch.read("s.json")).unwrap();
    let schema: Value = serde_json::from_str(&portfolio_summary_schema().unwrap()).unwrap();
    let errors: Vec<String> = jsonschema::validator_for(&schema)
        .unwrap()
        .iter_errors(&summary)
        .map(|error| error.to_string())
        .collect();
    assert!(errors.is_empty(), "{errors:?}");
    let answers = Answers::read(&scratch.read("o.csv"));
    assert_eq!(summary["rows_read"], 3006);
    assert_eq!(summary["rows_assessed"], answers.len());
    assert_eq!(summary["rows_rejected"], 2);
    for (word, rows) in summary["verdicts"].as_object().unwrap() {
        let verdicts = answers.column("verdict");
        let counted = verdicts.iter().filter(|found| *found == word).count();
        assert_eq!(*rows, counted, "{word}");
    }
    for zone in summary["zones"].as_array().unwrap() {
        let rows = zone["rows"].as_object().unwrap().values();
        let counted = answers
            .column("zone")
            .iter()
            .filter(|found| zone["code"] == **found)
            .count();
        assert_eq!(
            rows.filter_map(Value::as_u64).sum::<u64>(),
            counted as u64,
            "{zone}"
        );
    }
    assert!(scratch.read("s.html").contains("<svg"));
    assert!(scratch.read("s.txt").contains("Of 3,006 rows of t.csv"));
}

/// Without a file for it the summary of a run with --output is on stdout.
#[test]
fn on_stdout() {
    let scratch = alder_lock();
    scratch.write(
        "t.csv",
        format!("{HEADER}{ROWS}bad,x,47.8,612.9,ft,NAVD88\n"),
    );
    let outcome = scratch.run_portfolio("t.csv", &["-o", "o.csv"]);
    assert!(
        outcome
            .stdout
            .starts_with("Of 5 rows of t.csv, 4 were assessed")
    );
    assert!(outcome.stdout.contains("o.csv.rejects.csv lists them"));
    // Beside rows on stdout it is in the files that are asked for.
    let options = ["--summary", "s.txt", "--rejects", "r.csv"];
    let streamed = scratch.run_portfolio("t.csv", &options);
    assert_eq!(streamed.stdout, scratch.read("o.csv"));
    // Lines are broken elsewhere after another name.
    let words = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let text = words(&outcome.stdout).replace("o.csv.rejects.csv", "r.csv");
    assert_eq!(words(&scratch.read("s.txt")), text);
}
