//! The same places asked of another library.

use super::*;

/// Another build of PROJ (pyproj) at 2,000 random places, and for VERTCON a bilinear sum
/// without PROJ.
#[test]
fn the_peer_gives_the_same_millimetre() {
    let Some(folder) = open_data("grids") else {
        return;
    };
    let Some(lines) = peer::lines("datum_points.py", &folder, 2000) else {
        return;
    };
    let datums = datums_in(&folder);
    let mut counts: BTreeMap<String, (u32, u32, f64)> = BTreeMap::new();
    for line in &lines {
        let fields: Vec<&str> = line.split(';').collect();
        let number = |index: usize| fields[index].parse::<f64>().unwrap();
        let at = place(number(1), number(2));
        let length = Length::new::<meter>(number(3));
        let from_ellipsoid = |system, to| datums.from_ellipsoid(length, system, to, at);
        let converted = match fields[0] {
            "NGVD29-NAVD88" => datums.convert(Elevation::new(length, Ngvd29), Navd88, at),
            "ELLIPSOID-ODN" => from_ellipsoid(ETRS89, Odn),
            "ELLIPSOID-NAP" => from_ellipsoid(ETRS89, Nap),
            "ELLIPSOID-NGF" => from_ellipsoid(RGF93_V2B, NgfIgn69),
            other => panic!("{other}"),
        };
        let count = counts.entry(fields[0].to_owned()).or_default();
        match (&converted, fields[4]) {
            (Ok(converted), theirs) if theirs != "refused" => {
                let ours = converted.elevation.height().get::<meter>();
                let mut error = (ours - number(4)).abs();
                if fields[5] != "-" {
                    error = error.max((ours - number(5)).abs());
                }
                assert!(error < 1e-3, "{line}: {ours}");
                count.0 += 1;
                count.2 = count.2.max(error);
            }
            (Err(DatumError::Outside { .. }), "refused") => count.1 += 1,
            _ => panic!("{line}: {converted:?}"),
        }
    }
    for (name, (converted, refused, worst)) in &counts {
        say(&format!(
            "{name}: {converted} converted, {refused} refused, worst {worst:.1e} m"
        ));
    }
    assert!(counts["NGVD29-NAVD88"].0 >= 250 && counts["ELLIPSOID-ODN"].0 >= 250);
}
