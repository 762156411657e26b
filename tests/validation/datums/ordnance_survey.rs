//! The Ordnance Survey's own test points.

use super::*;

/// Ordnance Survey, OSTN15/OSGM15 test files: 40 points, ETRS89 to ODN, printed to the
/// millimetre. Nine of them, on islands, lie outside the area for which the dataset gives
/// OSGM15 as a way to ODN (EPSG 7711: 49.93 to 58.71 N, 7.06 W to 1.80 E); the grid file has
/// values there too, but they lead to the islands' own datums (flags other than 1).
#[test]
fn ordnance_survey_test_points() {
    let Some(datums) = datums() else { return };
    let read = |name: &str| {
        let path = open_data(&format!(
            "grids/checks/OSTN15_OSGM15_Test{name}_ETRStoOSGB.txt"
        ));
        fs::read_to_string(path.unwrap()).unwrap()
    };
    let (input, output) = (read("Input"), read("Output"));
    let (mut held, mut refused, mut worst) = (0, Vec::new(), 0.0_f64);
    for (input, output) in input.lines().zip(output.lines()).skip(1) {
        let input: Vec<&str> = input.split(',').collect();
        let output: Vec<&str> = output.split(',').collect();
        assert_eq!(input[0], output[0]);
        let number = |text: &str| text.trim().parse::<f64>().unwrap();
        let at = place(number(input[2]), number(input[1]));
        let ellipsoidal = Length::new::<meter>(number(input[3]));
        match datums.from_ellipsoid(ellipsoidal, ETRS89, Odn, at) {
            Ok(converted) => {
                let error = (height(&converted) - number(output[3])).abs();
                worst = worst.max(error);
                assert!(error <= 0.003, "{}: {error}", input[0]);
                held += 1;
            }
            Err(DatumError::Outside { .. }) => refused.push(input[0].to_owned()),
            Err(other) => panic!("{}: {other}", input[0]),
        }
    }
    say(&format!(
        "Ordnance Survey: {held} points, worst {worst:.4} m, refused {refused:?}"
    ));
    assert_eq!(held, 31);
    assert_eq!(
        refused,
        [
            "TP01", "TP31", "TP32", "TP35", "TP36", "TP37", "TP38", "TP39", "TP40"
        ]
    );
}
