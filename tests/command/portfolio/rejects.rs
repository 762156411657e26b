//! Rows that give no answer: each with line, field, value, what is wrong, what is accepted.

use insta::assert_snapshot;

use super::{Answers, HEADER, KIT_NOTE, ROWS, alder_lock, with_maps};

const OF_OPENINGS: &str = "id,longitude,latitude,threshold,threshold_unit,vertical_datum,\
    threshold_above_ground,opening,width,wall,occupancy\n";

/// One good row, then every kind of bad one.
const BAD: &str = "\
good,-87.498762,47.799353,612.9,ft,NAVD88,,door,36 in,,
,-87.498762,47.799353,612.9,ft,NAVD88,,,,,
a,-87.498762,nan,612.9,ft,NAVD88,,,,,
b,inf,47.799353,612.9,ft,NAVD88,,,,,
c,-87.498762,,612.9,ft,NAVD88,,,,,
d,-87.498762,95,612.9,ft,NAVD88,,,,,
e,-87.498762,47.799353,612.9,fathom,NAVD88,,,,,
f,-87.498762,47.799353,612.9,,NAVD88,,,,,
g,-87.498762,47.799353,612.9,ft,XYZ,,,,,
h,-87.498762,47.799353,612.9,ft,MLLW,,,,,
i,-87.498762,47.799353,612.9,ft,,,,,,
j,-87.498762,47.799353,,ft,NAVD88,,,,,
k,-87.498762,47.799353,-9999,ft,NAVD88,,,,,
l,-87.498762,47.799353,612.9 ft,ft,NAVD88,,,,,
m,-87.498762,47.799353,\"612,9\",ft,NAVD88,,,,,
n,-87.498762,47.799353,1e400,ft,NAVD88,,,,,
o,-87.498762,47.799353,,ft,,200,,,,
p,-87.498762,47.799353,612.9,ft,NAVD88,,,36,,
q,-87.498762,47.799353,612.9,ft,NAVD88,,,0 in,,
r,-87.498762,47.799353,612.9,ft,NAVD88,,,500 ft,,
s,-87.498762,47.799353,612.9,ft,NAVD88,,,36 in,mud,
t,-87.498762,47.799353,612.9,ft,NAVD88,,,36 in,,shop
u,-87.498762,47.799353,612.9,ft
v,-87.498762,47.799353,612.9,ft,NAVD88,,,,,,more
last,-87.498762,47.799353,,ft,,1,,,,
";

#[test]
fn every_kind() {
    let scratch = alder_lock();
    scratch.write("t.csv", format!("{OF_OPENINGS}{BAD}"));
    let outcome = scratch.run_portfolio("t.csv", &["--rejects", "bad.csv"]);
    let said = format!("note: 23 of 25 rows rejected: bad.csv\n{KIT_NOTE}");
    assert_eq!(
        (outcome.status, outcome.stderr.as_str()),
        (0, said.as_str())
    );
    let answers = Answers::read(&outcome.stdout);
    assert_eq!(answers.column("id"), ["good", "last"]);
    assert_eq!(
        answers.column("threshold_source"),
        ["stated", "above-ground"]
    );
    assert_snapshot!(scratch.read("bad.csv"), @r#"
line,id,field,value,problem,accepted
3,,id,,it is missing,a name for the row
4,a,latitude,nan,it is not a number,"a number, such as 9.25"
5,b,longitude,inf,it is not a number,"a number, such as 9.25"
6,c,latitude,,it is missing,"a number, such as 9.25"
7,d,"longitude, latitude",-87.498762 95,latitude 95 is not between -90 and 90 degrees,"coordinates of a place in the table's system (option --crs), east first"
8,e,threshold_unit,fathom,it is not a unit of length,"m, cm, mm, ft, in, ftUS"
9,f,threshold_unit,,it is missing,"m, cm, mm, ft, in, ftUS"
10,g,vertical_datum,XYZ,it is not a known vertical datum,"NAVD88, NGVD29, ODN, NAP, NGF-IGN69, DHHN2016, EGM96, EGM2008 or an EPSG code such as EPSG:5703"
11,h,vertical_datum,MLLW,it is another surface at each tide gauge,"NAVD88, NGVD29, ODN, NAP, NGF-IGN69, DHHN2016, EGM96, EGM2008 or an EPSG code such as EPSG:5703"
12,i,vertical_datum,,it is missing,"NAVD88, NGVD29, ODN, NAP, NGF-IGN69, DHHN2016, EGM96, EGM2008 or an EPSG code such as EPSG:5703"
13,j,threshold,,it is missing,"a height, or threshold_above_ground for an estimate"
14,k,threshold,-9999,no dry land lies that high or low,the height of a threshold; an empty value where nobody knows it
15,l,threshold,612.9 ft,it is not a number,"a number, such as 9.25"
16,m,threshold,"612,9",it is not a number,"a number, such as 9.25"
17,n,threshold,1e400,it is not a number,"a number, such as 9.25"
18,o,threshold_above_ground,200,no threshold lies farther than 30 m (98 ft) from the ground,a number between -30 m and 30 m (-98 ft and 98 ft)
19,p,width,36,it has no unit,"a length with its unit, such as ""36 in"", ""3 ft 4 1/2 in"" or ""0.91 m"""
20,q,width,0 in,an opening has a width,"a length with its unit, such as ""36 in"""
21,r,width,500 ft,it is wider than 100 m (328 ft),"the width of one opening, such as ""36 in"""
22,s,wall,mud,it is not one of the choices,"reinforced concrete, reinforced masonry, unreinforced masonry, brick veneer, unsupported panel, frame"
23,t,occupancy,shop,it is not one of the choices,"residential, commercial, critical"
24,,record,"u,-87.498762,47.799353,612.9,ft","it has 5 values, the header names 11 columns","a value for every column, an empty one where it is missing; a value with a comma in quotes"
25,,record,"v,-87.498762,47.799353,612.9,ft,NAVD88,,,,,,more","it has 12 values, the header names 11 columns","a value for every column, an empty one where it is missing; a value with a comma in quotes"
"#);
}

#[test]
fn on_stderr_they_name_the_file() {
    let scratch = alder_lock();
    scratch.write(
        "t.csv",
        format!("{HEADER}{ROWS}bad,x,47.8,612.9,ft,NAVD88\n"),
    );
    let outcome = scratch.run_portfolio("t.csv", &[]);
    assert_eq!((outcome.status, outcome.stdout.lines().count()), (0, 5));
    assert_snapshot!(outcome.stderr, @r#"rejected: t.csv, line 6: longitude "x": it is not a number; accepted: a number, such as 9.25"#);
}

#[test]
fn many_on_stderr_are_told_in_short() {
    let scratch = alder_lock();
    let bad = "bad,x,47.8,612.9,ft,NAVD88\n".repeat(30);
    scratch.write("t.csv", format!("{HEADER}{bad}"));
    let outcome = scratch.run_portfolio("t.csv", &[]);
    let lines: Vec<&str> = outcome.stderr.lines().collect();
    assert_snapshot!(lines[20], @"rejected: 10 more rows (option --rejects names all)");
}

#[test]
fn more_than_allowed() {
    let scratch = alder_lock();
    let bad = "bad,x,47.8,612.9,ft,NAVD88\n";
    scratch.write(
        "t.csv",
        format!("{HEADER}{ROWS}{bad}other,y,47.8,612.9,ft,NAVD88\n"),
    );
    let at_most = |number: &str| {
        let outcome = scratch.run_portfolio("t.csv", &["-o", "o.csv", "--max-rejects", number]);
        (outcome.status, outcome.stderr)
    };
    let said = "note: 2 of 6 rows rejected: o.csv.rejects.csv\n".to_owned();
    assert_eq!(at_most("2"), (0, said));
    std::fs::remove_file(scratch.path("o.csv")).unwrap();
    std::fs::remove_file(scratch.path("o.csv.rejects.csv")).unwrap();
    let (status, said) = at_most("1");
    assert_eq!(status, 1);
    assert_snapshot!(said, @r#"error: t.csv: rows without an answer: 2, more than the 1 of --max-rejects; the last: line 7: longitude "y": it is not a number; accepted: a number, such as 9.25; the rows are in o.csv.rejects.csv; no result was written"#);
    assert!(!scratch.path("o.csv").exists());
    assert!(!scratch.path("o.csv.unfinished").exists());
    assert_eq!(scratch.read("o.csv.rejects.csv").lines().count(), 3);
    let outcome = scratch.run_portfolio("t.csv", &["--max-rejects", "0", "--rejects", "r.csv"]);
    assert_eq!(outcome.status, 1);
    assert_snapshot!(outcome.stderr, @r#"error: t.csv: rows without an answer: 2, more than the 0 of --max-rejects; the last: line 7: longitude "y": it is not a number; accepted: a number, such as 9.25; the rows are in r.csv"#);
    assert_eq!(scratch.read("r.csv").lines().count(), 3);
}

#[test]
fn one_id_twice() {
    let scratch = alder_lock();
    scratch.write(
        "t.csv",
        format!("{HEADER}{ROWS}mill,-87.4,47.7,612.9,ft,NAVD88\n"),
    );
    let outcome = scratch.run_portfolio("t.csv", &["-o", "o.csv"]);
    assert_eq!(outcome.status, 1);
    assert_snapshot!(outcome.stderr, @"
t.csv, line 6: id: it is also that of line 2
error: t.csv: 1 row has the id of an earlier row; all rows are in the result; accepted: an id of its own for each row (with its opening, where there is one row an opening)
");
    assert_eq!(scratch.read("o.csv").lines().count(), 6);
    let streamed = scratch.run_portfolio("t.csv", &[]);
    assert_eq!((streamed.status, streamed.stderr), (1, outcome.stderr));
    assert_eq!(streamed.stdout, scratch.read("o.csv"));
}

#[test]
fn openings_of_one_building_are_different_rows_even_when_rejected() {
    let scratch = alder_lock();
    let rows = "B1,-87.498762,47.799353,612.9,ft,NAVD88,,door,36,,\n\
                B1,-87.498762,47.799353,612.9,ft,NAVD88,,gate,48,,\n";
    scratch.write("t.csv", format!("{OF_OPENINGS}{rows}"));
    let outcome = scratch.run_portfolio("t.csv", &["--rejects", "r.csv"]);
    let said = format!("note: 2 of 2 rows rejected: r.csv\n{KIT_NOTE}");
    assert_eq!(
        (outcome.status, outcome.stderr.as_str()),
        (0, said.as_str())
    );
    assert_eq!(scratch.read("r.csv").lines().count(), 3);
}

#[test]
fn ids_as_they_are() {
    let scratch = alder_lock();
    let place = "-87.498762,47.799353,612.9,ft,NAVD88";
    let ids = [
        "\"a, \"\"b\"\"\"",
        "\"two\nlines\"",
        "=1+1",
        "\u{fc}ber",
        "007",
    ];
    let rows: Vec<String> = ids.iter().map(|id| format!("{id},{place}")).collect();
    // Lines end as Windows ends them, and the last not at all.
    let table = format!("{HEADER}{}", rows.join("\n")).replace('\n', "\r\n");
    scratch.write("t.csv", table.replace("two\r\nlines", "two\nlines"));
    let answers = scratch.portfolio("t.csv", &[]);
    let expected = ["a, \"b\"", "two\nlines", "=1+1", "\u{fc}ber", "007"];
    assert_eq!(answers.column("id"), expected);
    scratch.run_portfolio("t.csv", &["-o", "o.gpkg"]);
    let again = scratch.portfolio(
        "o.gpkg",
        &["--map", "threshold=threshold_m", "--threshold-unit", "m"],
    );
    assert_eq!(again.column("id"), expected);
}

#[test]
fn a_thousand_columns_and_long_cells() {
    let scratch = alder_lock();
    let more: Vec<String> = (0..1000).map(|number| format!("c{number}")).collect();
    let long = "x".repeat(300_000);
    let mut cells = vec!["y"; 1000];
    cells[500] = &long;
    let table = format!(
        "{},{}\nmill,-87.498762,47.799353,612.9,ft,NAVD88,{}\nlong,{long},47.8,612.9,ft,NAVD88,{}\n",
        HEADER.trim_end(),
        more.join(","),
        cells.join(","),
        vec!["y"; 1000].join(","),
    );
    scratch.write("t.csv", table);
    let outcome = scratch.run_portfolio("t.csv", &["--rejects", "r.csv"]);
    let said = "note: 1 of 2 rows rejected: r.csv\n";
    assert_eq!((outcome.status, outcome.stderr.as_str()), (0, said));
    assert_eq!(Answers::read(&outcome.stdout).column("id"), ["mill"]);
    // What is told of a long value is its start.
    assert!(scratch.read("r.csv").len() < 1000);
}

#[test]
fn an_estimate_over_a_void_is_unresolved() {
    let scratch = alder_lock();
    let header = "id,longitude,latitude,threshold_above_ground,threshold_unit\n";
    // In a void of the terrain, and beyond it.
    let rows = "void,-87.498771,47.800132,1,ft\nfar,-87.4,47.7,1,ft\n";
    scratch.write("t.csv", format!("{header}{rows}"));
    let answers = scratch.portfolio("t.csv", &[]);
    assert_eq!(answers.column("verdict"), ["unresolved"; 2]);
    assert_eq!(answers.column("threshold_m"), [""; 2]);
    assert_snapshot!(answers.get(0, "reasons"), @"unresolved, because the sill is estimated as a height above the ground, and no ground is known there");
    assert_snapshot!(answers.get(1, "reasons"), @"unresolved, because no polygon of the flood zones holds the place; that is not the same as dry");
}

#[test]
fn feet_taken_for_metres_are_unresolved() {
    let scratch = alder_lock();
    let header = "id,longitude,latitude,threshold\n";
    scratch.write(
        "t.csv",
        format!("{header}mill,-87.498762,47.799353,612.9\n"),
    );
    let options = ["--threshold-unit", "m", "--threshold-datum", "NAVD88"];
    let answers = scratch.portfolio("t.csv", &options);
    assert_eq!(answers.column("verdict"), ["unresolved"]);
    assert_snapshot!(answers.get(0, "reasons"), @"unresolved, because the sill lies 426.845 m above the ground of the terrain near it: is its unit, its datum or its place wrong?");
}

#[test]
fn inches_and_survey_feet() {
    let scratch = alder_lock();
    let rows =
        "in,-87.498762,47.799353,7354.8,in,NAVD88\nus,-87.498762,47.799353,612.9,ftUS,NAVD88\n";
    scratch.write("t.csv", format!("{HEADER}{rows}"));
    let answers = scratch.portfolio("t.csv", &[]);
    // 612.9 ft are 186.81192 m; 612.9 US survey feet (1200/3937 m) are 186.81229 m.
    assert_eq!(answers.column("threshold_m"), ["186.8119", "186.8123"]);
    assert!(answers.get(0, "reasons").contains(" ft "));
}

#[test]
fn without_zones_or_terrain() {
    let scratch = alder_lock();
    scratch.write("t.csv", format!("{HEADER}{ROWS}"));
    let answers = |options: &[&str]| {
        Answers::read(&scratch.answer(&[&["portfolio", "t.csv"], options].concat()))
    };
    let none = answers(&[]);
    assert_eq!(none.column("verdict"), ["unresolved"; 4]);
    assert_snapshot!(none.get(0, "reasons"), @"unresolved, because no flood zones were given and no other source has a level");
    let no_terrain = answers(&["--zones", "zones.geojson"]);
    assert_eq!(no_terrain.column("ground_m"), [""; 4]);
    assert_eq!(no_terrain.get(0, "flood_level_m"), "187.1472");
    let twice = answers(&[
        "--zones",
        "zones.geojson",
        "--zones",
        "zones.geojson",
        "--dem",
        "terrain.tif",
        "--dem",
        "terrain.tif",
    ]);
    let once = answers(&["--zones", "zones.geojson", "--dem", "terrain.tif"]);
    for column in ["flood_level_m", "ground_m", "verdict"] {
        assert_eq!(twice.column(column), once.column(column));
    }
}

#[test]
fn a_wrong_table_stops_at_once() {
    let scratch = alder_lock();
    let said = |text: &str, options: &[&str]| {
        scratch.write("t.csv", text);
        scratch.refused(&with_maps("t.csv", options))
    };
    assert_snapshot!(said("", &[]), @"error: t.csv: header: the file is empty; accepted: a first line of at most 1048576 bytes with the names of the columns, separated by commas");
    assert_snapshot!(said("name,lat\n1,2\n", &[]), @"error: t.csv: columns: there is no column id; accepted: the columns that exist are name, lat; name one with --map OURS=THEIRS");
    assert_snapshot!(said("id,threshold\n1,2\n", &[]), @"error: t.csv: columns: there is no column longitude and latitude (or x and y with --crs); accepted: the columns that exist are id, threshold; name one with --map OURS=THEIRS");
    assert_snapshot!(said("id,longitude,latitude\n1,2,3\n", &[]), @"error: t.csv: columns: there is no column threshold (or threshold_above_ground, an estimate); accepted: the columns that exist are id, longitude, latitude; name one with --map OURS=THEIRS");
    assert_snapshot!(said("id,longitude,latitude,threshold\n1,2,3,4\n", &[]), @"error: t.csv: columns: there is no column threshold_unit (or option --threshold-unit); accepted: the columns that exist are id, longitude, latitude, threshold; name one with --map OURS=THEIRS");
    assert_snapshot!(said("id,longitude,latitude,threshold\n1,2,3,4\n", &["--threshold-unit", "ft"]), @"error: t.csv: columns: there is no column vertical_datum (or option --threshold-datum); accepted: the columns that exist are id, longitude, latitude, threshold; name one with --map OURS=THEIRS");
    assert_snapshot!(said(HEADER, &["--map", "threshold=ffe"]), @"error: t.csv: columns: there is no column ffe; accepted: the columns that exist are id, longitude, latitude, threshold, threshold_unit, vertical_datum; name one with --map OURS=THEIRS");
    assert_snapshot!(said(HEADER, &["--map", "ffe=threshold"]), @r#"error: option --map: map "ffe=threshold": "ffe" is not a column that is looked for; accepted: one of id, longitude, latitude, x, y, threshold, threshold_unit, vertical_datum, threshold_above_ground, building, opening, width, opening_height, sill_above_threshold, reveal, face, wall, occupancy before the ="#);
    assert_snapshot!(said(HEADER, &["--memory", "1 MB"]), @r#"error: option --memory: size "1 MB": it is too small; accepted: a size of at least 16 MB, such as "256 MB" or "2 GB""#);
    assert_snapshot!(said(HEADER, &["--to", "gpkg"]), @"error: option --to: only CSV is written to stdout; accepted: csv, or --output PATH");
    assert_snapshot!(scratch.refused(&with_maps("none.csv", &[])), @"error: none.csv: opening failed: No such file or directory (os error 2)");
    assert_snapshot!(scratch.refused(&with_maps("t.xls", &[])), @r#"error: t.xls: the format of a table is not known from the ending "xls"; accepted: csv, gpkg, geojson, json, fgb, parquet, geoparquet"#);
}

#[test]
fn a_table_with_a_header_only() {
    let scratch = alder_lock();
    for header in [HEADER, HEADER.trim_end()] {
        scratch.write("t.csv", header);
        assert_eq!(scratch.answer(&with_maps("t.csv", &[])).lines().count(), 1);
        let outcome = scratch.run_portfolio("t.csv", &["-o", "o.gpkg"]);
        assert_eq!((outcome.status, outcome.stderr.as_str()), (0, ""));
        assert!(scratch.path("o.gpkg").exists());
    }
}
