//! The files of `sillmark barrier`: kit, conditions, result.

use insta::assert_snapshot;

use super::scratch::{Scratch, demonstration_kit, without_tables};

const DOOR: [&str; 5] = ["barrier", "--width", "36 in", "--depth", "2 ft"];

fn kit(text: impl AsRef<[u8]>) -> String {
    let scratch = Scratch::new();
    scratch.write("kit.toml", text);
    scratch.refused(&[&DOOR[..], &["--kit", "kit.toml"]].concat())
}

fn conditions(text: impl AsRef<[u8]>) -> String {
    let scratch = Scratch::new();
    scratch.write("yard.toml", text);
    scratch.refused(&[&DOOR[..], &["--conditions", "yard.toml"]].concat())
}

#[test]
fn files_that_are_missing() {
    let missing = |option| Scratch::new().refused(&[&DOOR[..], &[option, "nowhere.toml"]].concat());
    assert_snapshot!(missing("--kit"), @"error: nowhere.toml: cannot be read: No such file or directory (os error 2); accepted: a kit file (TOML in UTF-8)");
    assert_snapshot!(missing("--conditions"), @"error: nowhere.toml: cannot be read: No such file or directory (os error 2); accepted: a conditions file (TOML in UTF-8)");
}

#[test]
fn files_that_are_something_else() {
    assert_snapshot!(kit([0xff, 0xfe]), @"error: kit.toml, line 1: it is not UTF-8 text; accepted: a kit file (TOML in UTF-8)");
    assert_snapshot!(conditions(vec![b'a'; 3 << 20]), @"error: yard.toml: is longer than a mebibyte; accepted: a conditions file (TOML in UTF-8)");
    let folder = Scratch::new().refused(&[&DOOR[..], &["--conditions", "grids"]].concat());
    assert!(
        folder.starts_with("error: grids: cannot be read: "),
        "{folder}"
    );
}

#[test]
fn a_broken_kit() {
    assert_snapshot!(kit("[plank\n"), @r#"error: kit.toml, line 1: text "[plank": unclosed table, expected `]`; accepted: TOML (toml.io), such as: name = "a text""#);
    assert_snapshot!(kit(""), @"error: kit.toml, line 1: plank: it is missing; accepted: [plank] with cover_height");
    let heavy = demonstration_kit().replacen("\"2.7 lb/ft\"", "\"27 lb/ft\"", 1);
    let message = kit(heavy);
    assert!(
        message.contains("plank.mass_per_length \"27 lb/ft\": it does not go with area"),
        "{message}"
    );
}

/// The kit files of before barriers were designed.
#[test]
fn a_kit_of_nothing_but_the_height_of_its_planks() {
    let text = "id = \"k\"\nname = \"K\"\nsource = \"sheet 3\"\nconfidence = \"stated\"\n[plank]\ncover_height = \"6 in\"\n";
    assert_snapshot!(kit(text), @r#"error: kit.toml, line 5: plank.thickness: it is missing; accepted: the plank's extent in the direction of the water, a length such as "6 in" or "150 mm""#);
}

#[test]
fn broken_conditions() {
    assert_snapshot!(conditions("a = [\n"), @r#"error: yard.toml, line 1: text "a = [": unclosed array, expected `]`; accepted: TOML (toml.io), such as: name = "a text""#);
    assert_snapshot!(conditions("\n[lods]\n"), @"error: yard.toml, line 2: lods: there is no such field here; accepted: water, loads, floor, jamb, inside, fitting");
    assert_snapshot!(conditions("[[opening]]\nid = \"x\"\n"), @"error: yard.toml, line 1: opening: there is no such field here; accepted: water, loads, floor, jamb, inside, fitting");
    assert_snapshot!(conditions("water = \"fast\"\n"), @r#"error: yard.toml, line 1: water "\"fast\"": it is not a table; accepted: [water] and its fields below it"#);
}

/// Line, field, value, and what would be accepted.
#[test]
fn wrong_fields_of_the_conditions() {
    for (line, field, value) in [
        ("[water]\nvelocity", "water.velocity", "5"),
        ("[water]\nsalinity", "water.salinity", "brackish"),
        ("[water]\nwarning", "water.warning", "soon"),
        ("[water]\nwall_width", "water.wall_width", "2 km"),
        ("[loads]\nrisk_category", "loads.risk_category", "V"),
        ("[loads]\nextra_depth", "loads.extra_depth", "40 ft"),
        ("[floor]\nmaterial", "floor.material", "sand"),
        ("[jamb]\nedge_dry", "jamb.edge_dry", "near"),
        ("[inside]\nfloor_area", "inside.floor_area", "600"),
        ("[fitting]\nparties", "fitting.parties", "0"),
    ] {
        let message = conditions(format!("{line} = \"{value}\"\n"));
        let begins = format!("error: yard.toml, line 2: {field} {value:?}: ");
        assert!(message.starts_with(&begins), "{message}");
        assert!(message.contains("; accepted: "), "{message}");
    }
    let unknown = conditions("[fitting]\n\npartys = 2\n");
    assert!(
        unknown.starts_with("error: yard.toml, line 3: fitting.partys: "),
        "{unknown}"
    );
}

/// The option wins over the file, as it says.
#[test]
fn an_option_wins_over_the_conditions() {
    let scratch = Scratch::new();
    scratch.write(
        "yard.toml",
        "[water]\nvelocity = \"2 ft/s\"\nsalinity = \"salt\"\n",
    );
    let run = |more: &[&str]| {
        scratch.barrier_json(&[&DOOR[1..], &["--conditions", "yard.toml"], more].concat())
    };
    assert_ne!(run(&[]), run(&["--velocity", "4 ft/s"]));
    scratch.write(
        "yard.toml",
        "[water]\nvelocity = \"4 ft/s\"\nsalinity = \"salt\"\n",
    );
    let (stated, by_option) = (run(&[]), run(&["--velocity", "4 ft/s"]));
    assert_eq!(stated, by_option);
    assert_ne!(stated, run(&["--salinity", "fresh"]));
}

#[test]
fn load_factors_that_there_are_none_of() {
    assert_snapshot!(conditions("[loads]\ncombination = \"nope\"\n"), @r#"error: yard.toml, line 2: loads.combination "nope": there is no such set of load factors; accepted: us-full-water, asce7-16-flood, en1990"#);
}

/// The demonstration kit in a European alloy. Every part is under 1/4 in.
pub(crate) fn european_kit() -> String {
    let alloy = "material = \"EN AW-6060 T66 over 3 up to 25 mm\"\nwall_thickness = \"0.25 in\"";
    demonstration_kit().replace("material = \"6063-T6 (ADM)\"", alloy)
}

#[test]
fn load_factors_for_another_kind_of_material() {
    assert_snapshot!(conditions("[loads]\ncombination = \"en1990\"\n"), @r#"error: yard.toml, line 2: loads.combination "en1990": it does not go with the kit's material "6063-T6 (ADM)"; accepted: a set for safety and resistance factors, such as us-full-water, asce7-16-flood"#);
    let scratch = Scratch::new();
    scratch.write("kit.toml", european_kit());
    scratch.write("yard.toml", "[loads]\ncombination = \"us-full-water\"\n");
    let files = ["--kit", "kit.toml", "--conditions", "yard.toml"];
    let arguments = [&DOOR[..], &files].concat();
    assert_snapshot!(scratch.refused(&arguments), @r#"error: yard.toml, line 2: loads.combination "us-full-water": it does not go with the kit's material "EN AW-6060 T66 over 3 up to 25 mm"; accepted: a set for partial factors, such as en1990"#);
    // Where nothing is stated, the set that goes with the material is taken.
    let result = scratch.barrier_json(&[&DOOR[1..], &["--kit", "kit.toml"]].concat());
    assert_eq!(result["combination"], "en1990");
}

/// `site` says the same, and at the same place.
#[test]
fn load_factors_for_another_kind_of_material_in_a_site_file() {
    let scratch = Scratch::new();
    scratch.site_with(
        "\n[[opening]]",
        "\n[loads]\ncombination = \"en1990\"\n[[opening]]",
    );
    let message = scratch.site_refused();
    assert!(
        message.starts_with("error: site.toml, line 8: loads.combination \"en1990\": "),
        "{message}"
    );
}

#[test]
fn a_result_in_a_file_is_whole_and_no_input() {
    let scratch = Scratch::new();
    scratch.write("kit.toml", demonstration_kit());
    scratch.write("yard.toml", "[water]\nvelocity = \"2 ft/s\"\n");
    let files = [
        "--kit",
        "kit.toml",
        "--conditions",
        "yard.toml",
        "--format",
        "json",
    ];
    let run = [&DOOR[..], &files].concat();
    let printed = scratch.answer(&run);
    assert_eq!(
        scratch.answer(&[&run[..], &["-o", "result.json"]].concat()),
        ""
    );
    assert_eq!(scratch.read("result.json"), printed);
    for input in ["kit.toml", "yard.toml", "./yard.toml"] {
        let before = scratch.read(input);
        let message = scratch.refused(&[&run[..], &["-o", input]].concat());
        let expected = format!(
            "error: option --output: {input:?} is read by this run and would be written over; accepted: the path of another file\n"
        );
        assert_eq!(message, expected);
        assert_eq!(scratch.read(input), before);
    }
    scratch.write("kit.toml", without_tables(&demonstration_kit(), &["plank"]));
    scratch.refused(&[&run[..], &["-o", "result.json"]].concat());
    assert_eq!(scratch.read("result.json"), printed);
}

#[test]
fn every_run_writes_the_same_bytes() {
    let scratch = Scratch::new();
    scratch.write(
        "yard.toml",
        "[water]\nvelocity = \"2 ft/s\"\n[loads]\ndebris = \"special\"\n",
    );
    let run = [
        "barrier",
        "--run",
        "4 ft, 14 ft, 4 ft",
        "--depth",
        "3 ft",
        "--conditions",
        "yard.toml",
    ];
    for format in ["json", "text"] {
        let arguments = [&run[..], &["--trail", "--format", format]].concat();
        let first = scratch.answer(&arguments);
        for _ in 0..5 {
            assert_eq!(scratch.answer(&arguments), first);
        }
    }
}
