//! `sillmark barrier` with options that cannot be.

use insta::assert_snapshot;

use super::scratch::Scratch;

/// A door that has an answer.
const DOOR: [&str; 4] = ["--width", "36 in", "--depth", "2 ft"];

fn refused(options: &[&str]) -> String {
    Scratch::new().refused(&[&["barrier"], options].concat())
}

/// Of the door with one option more.
fn with(option: &str, value: &str) -> String {
    refused(&[&DOOR[..], &[option, value]].concat())
}

#[test]
fn the_door_has_an_answer() {
    let page = Scratch::new().answer(&[&["barrier"], &DOOR[..]].concat());
    assert!(page.starts_with("protect"), "{page}");
}

#[test]
fn nothing_stated() {
    assert_snapshot!(refused(&[]), @r#"error: option --depth: depth: it is missing; accepted: the depth of water over the sill, such as --depth "2 ft""#);
    assert_snapshot!(refused(&["--depth", "2 ft"]), @r#"error: option --width: width: it is missing; accepted: the clear width, such as --width "36 in", or --run "4 ft, 9 ft, 4 ft""#);
    assert_snapshot!(refused(&["--run", "4 ft, 4 ft"]), @r#"error: option --depth: depth: it is missing; accepted: the depth of water over the sill, such as --depth "2 ft""#);
}

/// Option and value are named wherever a value cannot be, and what would be accepted.
#[test]
fn a_wrong_value_is_named_with_what_is_accepted() {
    let choices = [
        "--mount",
        "--brace",
        "--wall",
        "--soil",
        "--salinity",
        "--waves",
        "--wave-level",
    ];
    let lengths = [
        "--opening-height",
        "--reveal",
        "--face",
        "--sill-above-ground",
        "--height",
    ];
    for option in choices.into_iter().chain(lengths).chain(["--velocity"]) {
        for value in [
            "wrong",
            "",
            "  ",
            "nan ft",
            "inf m",
            "7",
            "１２ in",
            "Mauer ✗",
        ] {
            let message = with(option, value);
            assert!(
                message.starts_with(&format!("error: option {option}: ")),
                "{message}"
            );
            assert!(message.contains(&format!("{value:?}: ")), "{message}");
            assert!(message.contains("; accepted: "), "{message}");
            assert_eq!(message.lines().count(), 1, "{message}");
        }
    }
    for option in choices {
        assert!(with(option, "wrong").contains("it is not one of the choices"));
    }
}

#[test]
fn choices_are_listed() {
    assert_snapshot!(with("--mount", "wrong"), @r#"error: option --mount: mount "wrong": it is not one of the choices; accepted: inside, outside"#);
    assert_snapshot!(with("--brace", "wrong"), @r#"error: option --brace: brace "wrong": it is not one of the choices; accepted: dry side, water side"#);
    assert_snapshot!(with("--wall", "wrong"), @r#"error: option --wall: wall "wrong": it is not one of the choices; accepted: reinforced concrete, reinforced masonry, unreinforced masonry, brick veneer, unsupported panel, frame"#);
    assert_snapshot!(with("--soil", "wrong"), @r#"error: option --soil: soil "wrong": it is not one of the choices; accepted: clean sand or gravel, sand or gravel with fines, stiff silt or clay, soft clay, clay chunks"#);
    assert_snapshot!(with("--salinity", "wrong"), @r#"error: option --salinity: salinity "wrong": it is not one of the choices; accepted: fresh, salt"#);
    assert_snapshot!(with("--waves", "wrong"), @r#"error: option --waves: waves "wrong": it is not one of the choices; accepted: none, non-breaking, breaking"#);
    assert_snapshot!(with("--wave-level", "wrong"), @r#"error: option --wave-level: wave level "wrong": it is not one of the choices; accepted: stillwater, crest"#);
}

#[test]
fn widths_that_are_none() {
    let wide = |width| refused(&["--depth", "2 ft", "--width", width]);
    assert_snapshot!(wide("0 in"), @r#"error: option --width: width "0 in": an opening has a width; accepted: a length with its unit, such as "36 in""#);
    assert_snapshot!(wide("-36 in"), @r#"error: option --width: width "-36 in": it is negative; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
    assert_snapshot!(wide("101 m"), @r#"error: option --width: width "101 m": it is wider than 100 m (328 ft); accepted: the width of one opening, such as "36 in""#);
    assert_snapshot!(wide("1e300 m"), @r#"error: option --width: width "1e300 m": it is in scientific notation; write it out; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
}

#[test]
fn heights_and_depths_that_are_none() {
    for option in ["--depth", "--height"] {
        let name = &option[2..];
        for (value, problem) in [
            ("0 ft", "it is not more than nothing"),
            ("0.0005 mm", "it is not more than nothing"),
            ("-1 ft", "it is negative"),
            ("99 ft", "no barrier of planks is higher than 30 m (98 ft)"),
            ("100000000000000000 m", "it is absurdly large"),
        ] {
            let other = if option == "--depth" {
                "--height"
            } else {
                "--depth"
            };
            let message = refused(&["--width", "36 in", other, "2 ft", option, value]);
            let begins = format!("error: option {option}: {name} {value:?}: {problem}; accepted: ");
            assert!(message.starts_with(&begins), "{message}");
        }
    }
}

#[test]
fn other_lengths_that_are_none() {
    assert_snapshot!(with("--reveal", "-1 in"), @r#"error: option --reveal: reveal "-1 in": it is negative; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
    assert_snapshot!(with("--face", "-1 in"), @r#"error: option --face: face "-1 in": it is negative; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
    assert_snapshot!(with("--opening-height", "0 ft"), @r#"error: option --opening-height: opening height "0 ft": an opening has a height; accepted: a length with its unit, such as "36 in""#);
    assert_snapshot!(with("--sill-above-ground", "-900 ft"), @r#"error: option --sill-above-ground: sill above ground "-900 ft": no sill lies farther than 30 m (98 ft) from the ground before it; accepted: a length with its unit, negative for below, such as "-2 in""#);
    assert_snapshot!(with("--velocity", "-3 ft/s"), @r#"error: option --velocity: velocity "-3 ft/s": no flood flows at that speed; accepted: a speed with its unit, such as "2 ft/s" or "0.6 m/s""#);
    assert_snapshot!(with("--velocity", "3 ft"), @r#"error: option --velocity: velocity "3 ft": "ft" is not a unit of speed; accepted: a speed with its unit, such as "2 ft/s" or "0.6 m/s""#);
}

#[test]
fn runs_that_are_none() {
    let run = |legs| refused(&["--depth", "2 ft", "--run", legs]);
    assert_snapshot!(run("4 ft"), @r#"error: option --run: run "4 ft": one leg is no run; accepted: two legs or more with right angles between, such as "4 ft, 9 ft, 4 ft""#);
    assert_snapshot!(run(""), @r#"error: option --run: run "": one leg is no run; accepted: two legs or more with right angles between, such as "4 ft, 9 ft, 4 ft""#);
    assert_snapshot!(run("4 ft,,4 ft"), @r#"error: option --run: run "": it is empty; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
    assert_snapshot!(run("4 ft, -9 ft"), @r#"error: option --run: run "-9 ft": it is negative; accepted: a length with its unit, such as "36 in", "3 ft 4 1/2 in" or "0.91 m""#);
    assert_snapshot!(run("4 ft, 0 ft"), @r#"error: option --run: run "0 ft": an opening has a width; accepted: a length with its unit, such as "36 in""#);
}

/// What would change nothing as it is stated is not passed over in silence.
#[test]
fn options_that_say_nothing_without_another() {
    assert_snapshot!(with("--soil", "soft clay"), @r#"error: option --soil: soil "soft clay": nobody says how far the sill lies below the ground, so that it presses nowhere; accepted: --soil with --sill-above-ground, such as --sill-above-ground "-2 ft""#);
    assert_snapshot!(with("--wave-level", "crest"), @r#"error: option --wave-level: wave level "crest": no breaking waves are stated that it could be the level of; accepted: --wave-level with --waves breaking"#);
    let calm = [&DOOR[..], &["--wave-level", "crest", "--waves", "none"]].concat();
    assert!(refused(&calm).contains("no breaking waves are stated"));
}

#[test]
fn a_forgotten_value_and_a_stray_word() {
    assert_snapshot!(refused(&["--width", "--depth", "2 ft"]), @r#"
    error: invalid value '--depth' for '--width <LENGTH>': the value is missing before --depth; accepted: a quantity with its unit, such as "36 in"

    For more information, try '--help'.
    "#);
    assert_snapshot!(refused(&["--width", "36", "in", "--depth", "2 ft"]), @r#"
    error: invalid value 'in' for '[WORD]': it belongs to no option; accepted: options such as --width "36 in" --depth "2 ft"

    For more information, try '--help'.
    "#);
}

#[test]
fn an_option_of_site() {
    let message = with("--zones", "zones.geojson");
    assert!(
        message.contains("unexpected argument '--zones'"),
        "{message}"
    );
}
