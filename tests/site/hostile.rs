//! No site file makes the reader panic.

use proptest::prelude::*;
use sillmark::anchor::{
    AnchorGroup, Anchorage, Demand, ShearCase, ShearDemand, Side, TensionDemand,
};
use sillmark::quantity::unit::{Force, Length, kilonewton, meter};
use sillmark::site::{AnchorSetting, Conditions, QuickForm, Site};

const EXAMPLE: &str = include_str!("../../examples/alder-lock/site.toml");
const EVERY_FIELD: &str = include_str!("every_field.toml");

fn read(text: &str) {
    match Site::from_toml("site.toml", text) {
        Ok(site) => {
            assert!(!site.openings.is_empty());
            let own = site
                .openings
                .iter()
                .flat_map(|each| [&each.floor, &each.jamb]);
            for setting in own.chain(all_of(&site.conditions)).flatten() {
                can_be_checked(setting);
            }
        }
        Err(error) => {
            let message = error.to_string();
            assert!(message.starts_with("site.toml, line "), "{message}");
            assert!(message.contains("; accepted: "), "{message}");
        }
    }
}

fn all_of(conditions: &Conditions) -> [&Option<AnchorSetting>; 2] {
    [&conditions.floor, &conditions.jamb]
}

/// No value that the reader takes is refused later, where its line is no longer known.
fn can_be_checked(setting: &AnchorSetting) {
    let Some(fixing) = &setting.fixing else {
        return;
    };
    let (half, force) = (Length::new::<meter>(0.15), Force::new::<kilonewton>(4.0));
    let anchorage = Anchorage {
        base: setting.base.clone(),
        fixing: fixing.clone(),
        diameter: Length::new::<meter>(0.012),
        embedment: setting.embedment,
        steel: setting.steel.clone(),
        bedding: setting.bedding,
        group: AnchorGroup::grid((2, half), (2, half), setting.edges).unwrap(),
        shear_case: ShearCase::FrontRow,
    };
    let demand = Demand {
        tension: Some(TensionDemand::on_row(Side::YMinus, force, 2)),
        shear: Some(ShearDemand::even(Side::YPlus, force, 4)),
    };
    assert!(anchorage.check(&demand).is_ok(), "{setting:?}");
}

/// `text` with a piece of it replaced.
fn with_piece(
    text: &str,
    ends: &(prop::sample::Index, prop::sample::Index),
    short: bool,
    new: &str,
) -> String {
    let places: Vec<usize> = (0..=text.len())
        .filter(|at| text.is_char_boundary(*at))
        .collect();
    let first = ends.0.index(places.len());
    let reach = if short { 8 } else { places.len() };
    let second = (first + ends.1.index(reach)).min(places.len() - 1);
    format!("{}{new}{}", &text[..places[first]], &text[places[second]..])
}

/// What is put in the place of a piece of the file.
fn replacement() -> impl Strategy<Value = String> {
    prop_oneof![
        Just(String::new()),
        any::<String>(),
        prop::sample::select(vec![
            "\"",
            "'''",
            "[",
            "]]",
            "{",
            "}",
            "=",
            "\n",
            "#",
            "nan",
            "-inf",
            "1e999",
            "0x10",
            "2026-01-01",
            "true",
            "[[opening]]",
            "\"unknown\"",
            "\\u0000",
            "\u{feff}",
            "-0.0",
        ])
        .prop_map(str::to_owned),
    ]
}

/// Quantities of every kind, sizes from nothing to far too much.
fn values() -> impl Strategy<Value = String> {
    let units = vec![
        "", "in", "mm", "ft", "in2", "mm2", "m2", "psi", "MPa", "ksi", "lb", "kN", "kg", "min",
        "h", "in/h", "ft/s", "%",
    ];
    let number = prop_oneof![
        Just(0.0),
        -10.0..10.0_f64,
        (-6.0..9.0_f64).prop_map(|power| 10_f64.powf(power)),
    ];
    (number, prop::sample::select(units)).prop_map(|(number, unit)| format!("\"{number} {unit}\""))
}

proptest! {
    #[test]
    fn any_text(text in any::<String>()) {
        read(&text);
    }

    #[test]
    fn a_piece_of_the_example_replaced(
        ends in any::<(prop::sample::Index, prop::sample::Index)>(),
        short in any::<bool>(),
        new in replacement(),
    ) {
        read(&with_piece(EXAMPLE, &ends, short, &new));
        read(&with_piece(EVERY_FIELD, &ends, short, &new));
    }

    #[test]
    fn a_value_of_every_field_replaced(
        line in any::<prop::sample::Index>(),
        new in prop_oneof![replacement(), values()],
    ) {
        let lines: Vec<&str> = EVERY_FIELD.lines().collect();
        let fields: Vec<usize> = (0..lines.len()).filter(|at| lines[*at].contains(" = ")).collect();
        let at = fields[line.index(fields.len())];
        let key = lines[at].split_once(" = ").unwrap().0;
        let replaced = format!("{key} = {new}");
        let mut lines = lines;
        lines[at] = &replaced;
        read(&lines.join("\n"));
    }

    #[test]
    fn two_lines_changed_places(ends in any::<(prop::sample::Index, prop::sample::Index)>()) {
        for text in [EXAMPLE, EVERY_FIELD] {
            let mut lines: Vec<&str> = text.lines().collect();
            let count = lines.len();
            lines.swap(ends.0.index(count), ends.1.index(count));
            read(&lines.join("\n"));
        }
    }

    #[test]
    fn any_conditions(text in any::<String>()) {
        if let Err(error) = Conditions::from_toml("yard.toml", &text) {
            prop_assert!(error.to_string().starts_with("yard.toml, line "));
        }
    }

    #[test]
    fn any_quick_form(at in any::<String>(), threshold in any::<String>(), opening in any::<String>()) {
        let openings = [opening];
        let form = QuickForm { at: &at, threshold: &threshold, openings: &openings, occupancy: None };
        let refused = form.site().map_err(|error| error.to_string());
        prop_assert!(refused.is_ok() || refused.unwrap_err().starts_with("option --"));
    }
}
