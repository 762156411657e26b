//! Vertical systems known by their code alone.

use super::*;

/// EPSG 9435 and others go by offsets and slopes without a grid; DHHN92 (5783) to DHHN2016
/// over EVRF2007 is a few centimetres.
#[test]
fn without_a_grid_where_the_dataset_has_none() {
    let datums = no_grids();
    let dhhn92 = VerticalDatum::Epsg(5783);
    let converted = datums
        .convert(metres(3.0, dhhn92), Dhhn2016, place(10.0, 51.0))
        .unwrap();
    assert!(converted.how.contains("without a grid"), "{converted:?}");
    assert!(
        shift(&converted).abs() > 1e-4 && shift(&converted).abs() < 0.05,
        "{converted:?}"
    );
}

/// EPSG 5438: Caspian height = Baltic 1977 height + 28 m; EPSG 5440 the same between
/// systems that count depths. An elevation counts upwards whatever its system does.
#[test]
fn depths_count_downwards() {
    let datums = no_grids();
    let baku = place(50.0, 40.4);
    for (baltic, caspian) in [(5705, 5611), (5612, 5706)] {
        let level = metres(-26.0, VerticalDatum::Epsg(baltic));
        let to = VerticalDatum::Epsg(caspian);
        let converted = datums.convert(level, to, baku).unwrap();
        assert_abs_diff_eq!(height(&converted), 2.0, epsilon = 1e-9);
    }
}
