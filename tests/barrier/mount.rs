//! Which mount, from what was measured.

use sillmark::barrier::{MountChoice, MountNeeds, MountPlace, choose_mount};
use sillmark::quantity::Length;
use sillmark::quantity::unit::inch;
use sillmark::site::Mount;

const NEEDED: f64 = 4.0;

fn needs() -> MountNeeds {
    let needed = Some(Length::new::<inch>(NEEDED));
    MountNeeds {
        reveal: needed,
        face: needed,
    }
}

/// `+` is large enough, `-` too small, `?` not measured.
fn measure(sign: char) -> Option<Length> {
    match sign {
        '+' => Some(Length::new::<inch>(NEEDED)),
        '-' => Some(Length::new::<inch>(NEEDED - 0.01)),
        _ => None,
    }
}

/// The choice in a word: `in`, `out`, `measure …` or `nothing …`, with the fields.
fn word(choice: &MountChoice) -> String {
    let list = |fields: Vec<&str>| fields.join("+");
    match choice {
        MountChoice::Fits(Mount::Inside) => "in".to_owned(),
        MountChoice::Fits(Mount::Outside) => "out".to_owned(),
        MountChoice::MeasureOnSite { missing } => {
            format!(
                "measure {}",
                list(missing.iter().map(|(field, _)| *field).collect())
            )
        }
        MountChoice::Nothing { too_small } => {
            format!(
                "nothing {}",
                list(too_small.iter().map(|small| small.field).collect())
            )
        }
    }
}

/// Reveal, face; the choice where nothing, inside or outside is asked for.
const TABLE: [(char, char, [&str; 3]); 9] = [
    ('+', '+', ["in", "in", "out"]),
    ('+', '-', ["in", "in", "nothing face"]),
    ('+', '?', ["in", "in", "measure face"]),
    ('-', '+', ["out", "nothing reveal", "out"]),
    (
        '-',
        '-',
        ["nothing reveal+face", "nothing reveal", "nothing face"],
    ),
    ('-', '?', ["measure face", "nothing reveal", "measure face"]),
    // A face that will do is taken without waiting for the reveal.
    ('?', '+', ["out", "measure reveal", "out"]),
    (
        '?',
        '-',
        ["measure reveal", "measure reveal", "nothing face"],
    ),
    (
        '?',
        '?',
        ["measure reveal+face", "measure reveal", "measure face"],
    ),
];

#[test]
fn every_combination() {
    for (reveal, face, expected) in TABLE {
        let asks = [None, Some(Mount::Inside), Some(Mount::Outside)];
        for (asked, expected) in asks.into_iter().zip(expected) {
            let place = MountPlace {
                reveal: measure(reveal),
                face: measure(face),
                asked,
            };
            let choice = choose_mount(place, needs());
            assert_eq!(word(&choice), expected, "{reveal}{face} {asked:?}");
        }
    }
}

/// A kit that has no post for a mount does not ask to measure for it.
#[test]
fn a_kit_with_one_post() {
    let inside_only = MountNeeds {
        face: None,
        ..needs()
    };
    for (reveal, face, asked, expected) in [
        ('?', '?', None, "measure reveal"),
        ('-', '+', None, "nothing reveal"),
        ('+', '+', Some(Mount::Outside), "nothing "),
        ('?', '?', Some(Mount::Outside), "nothing "),
    ] {
        let place = MountPlace {
            reveal: measure(reveal),
            face: measure(face),
            asked,
        };
        let choice = choose_mount(place, inside_only);
        assert_eq!(word(&choice), expected, "{reveal}{face} {asked:?}");
    }
}

/// 3 in and 76.2 mm are one length, whichever is the larger number in binary.
#[test]
fn rounding_makes_nothing_too_small() {
    for (measured, needed) in [
        ("3 in", "76.2 mm"),
        ("76.2 mm", "3 in"),
        ("0.0762 m", "3 in"),
    ] {
        let length = |text| sillmark::quantity::parse_length(text).unwrap();
        let place = MountPlace {
            reveal: Some(length(measured)),
            ..MountPlace::default()
        };
        let needs = MountNeeds {
            reveal: Some(length(needed)),
            face: None,
        };
        assert_eq!(choose_mount(place, needs), MountChoice::Fits(Mount::Inside));
    }
}
