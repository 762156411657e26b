//! Random members against a library of finite elements.

use std::fmt::Write;
use std::path::Path;

use serde_json::Value;
use sillmark::beam::{Beam, LinearLoad, PointLoad, Response, Supports};
use sillmark::quantity::unit::{
    Force, Length, in_newton_metres, meter, newton, newton_square_metres, newtons_per_metre,
};

use crate::peer;

const MEMBERS: usize = 200;

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn rows(value: &Value) -> impl Iterator<Item = Vec<f64>> {
    let rows = value.as_array().unwrap().iter();
    rows.map(|row| row.as_array().unwrap().iter().map(number).collect())
}

/// The member that the script made.
fn member(given: &Value) -> Beam {
    let metres = Length::new::<meter>;
    let at = metres(number(&given["prop"]));
    let supports = match given["supports"].as_str().unwrap() {
        "simple" => Supports::SimplySupported,
        "cantilever" => Supports::Cantilever,
        "propped" => Supports::Propped { at },
        "pinned and propped" => Supports::PinnedAndPropped { at },
        other => panic!("{other}"),
    };
    let rigidity = newton_square_metres(number(&given["rigidity"]));
    let mut beam = Beam::new(metres(number(&given["length"])), rigidity, supports).with_loads(
        rows(&given["loads"]).map(|row| LinearLoad {
            from: metres(row[0]),
            to: metres(row[1]),
            at_from: newtons_per_metre(row[2]),
            at_to: newtons_per_metre(row[3]),
        }),
    );
    beam.points = rows(&given["points"])
        .map(|row| PointLoad {
            at: metres(row[0]),
            force: Force::new::<newton>(row[1]),
        })
        .collect();
    beam
}

/// What is compared, and by how much the two may differ: half a percent would do for a
/// barrier, yet both are exact but for rounding. The other library has no extreme of the
/// deflection; the script looks for it at places close together.
const COMPARED: [(&str, f64); 9] = [
    ("force of the start", 1e-8),
    ("moment of the start", 1e-8),
    ("force of the other support", 1e-8),
    ("greatest shear", 1e-8),
    ("greatest moment", 1e-8),
    ("greatest deflection", 2e-6),
    ("shear at a station", 1e-8),
    ("moment at a station", 1e-8),
    ("deflection at a station", 1e-8),
];

/// The differences of one member, as shares of its greatest shear, moment and deflection, so
/// that a response near zero does not hide what matters; of stations the greatest.
fn differences(ours: &Response, theirs: &Value) -> [f64; 9] {
    let (shear, moment, deflection) = (
        number(&theirs["greatest_shear"]),
        number(&theirs["greatest_moment"]),
        number(&theirs["greatest_deflection"]),
    );
    let start = ours.start();
    let reactions = [
        start.force.get::<newton>() - number(&theirs["start_force"]),
        in_newton_metres(start.moment) - number(&theirs["start_moment"]),
        ours.other().get::<newton>() - number(&theirs["other"]),
    ];
    let greatest = [
        ours.greatest_shear().value.get::<newton>() - shear,
        in_newton_metres(ours.greatest_moment().value) - moment,
        ours.greatest_deflection().value.get::<meter>() - deflection,
    ];
    let mut stations = [0.0_f64; 3];
    for row in rows(&theirs["stations"]) {
        let x = Length::new::<meter>(row[0]);
        let here = [
            ours.shear_at(x).get::<newton>(),
            in_newton_metres(ours.moment_at(x)),
            ours.deflection_at(x).get::<meter>(),
        ];
        for ((worst, here), there) in stations.iter_mut().zip(here).zip(&row[1..]) {
            *worst = worst.max((here - there).abs());
        }
    }
    let scales = [shear, moment, shear, shear, moment, deflection];
    let stations = std::iter::zip(stations, [shear, moment, deflection]);
    let mut shares = std::iter::zip(reactions.into_iter().chain(greatest), scales)
        .chain(stations)
        .map(|(difference, scale)| difference.abs() / scale);
    std::array::from_fn(|_| shares.next().unwrap())
}

fn quantile(sorted: &[f64], share: f64) -> f64 {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_precision_loss
    )]
    let index = (share * (sorted.len() - 1) as f64).round() as usize;
    sorted[index]
}

#[test]
fn random_members_by_finite_elements() {
    let count = MEMBERS.to_string();
    let Some(lines) = peer::run("beam_responses.py", &[count.as_ref(), peer::SEED.as_ref()]) else {
        return;
    };
    assert_eq!(lines.len(), MEMBERS);
    let found: Vec<_> = lines
        .iter()
        .map(|line| {
            let theirs: Value = serde_json::from_str(line).unwrap();
            assert!(theirs["stations"].as_array().unwrap().len() >= 20, "{line}");
            differences(&member(&theirs).response().unwrap(), &theirs)
        })
        .collect();
    let mut report =
        format!("{MEMBERS} members, share of the greatest     median      90 %     worst\n");
    let mut beyond = Vec::new();
    for (index, (name, accepted)) in COMPARED.iter().enumerate() {
        let mut sorted: Vec<f64> = found.iter().map(|one| one[index]).collect();
        sorted.sort_by(f64::total_cmp);
        write!(report, "{name:36}").unwrap();
        for share in [0.5, 0.9, 1.0] {
            write!(report, "{:>10.1e}", quantile(&sorted, share)).unwrap();
        }
        report.push('\n');
        // Not a number is beyond, too.
        if !sorted.iter().all(|difference| difference < accepted) {
            beyond.push(*name);
        }
    }
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join("beams-peer.txt");
    std::fs::write(path, &report).unwrap();
    assert!(beyond.is_empty(), "{beyond:?}\n{report}");
}
