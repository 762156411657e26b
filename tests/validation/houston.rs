//! Water-surface rasters of Houston and depth rasters of Muncy, cell by cell.

use sillmark::level::{RasterRemark, depth_level, surface_level};
use sillmark::quantity::{AnnualChance, LengthUnit, VerticalDatum};
use sillmark::site::Location;
use sillmark::terrain::{Dem, DemStatement, DepthRaster};

use crate::support::open_data;

const POINTS: usize = 1000;

fn feet() -> DemStatement {
    DemStatement {
        unit: Some(LengthUnit::Foot),
        datum: Some(VerticalDatum::Navd88),
        crs: None,
    }
}

/// Feet: what the source is to return, and at the wet/dry edge its own cell.
const TOLERANCE: f64 = 1e-3;

#[test]
fn at_a_thousand_wet_cells_the_surface_is_the_raster() {
    for (file, percent) in [
        ("10pct", 10.0),
        ("2pct", 2.0),
        ("1pct", 1.0),
        ("02pct", 0.2),
    ] {
        let relative = format!("houston/wse_{file}_clipped_resampled.tif");
        let Some(path) = open_data(&relative) else {
            return;
        };
        let Some(lines) = crate::peer::lines("wet_cells.py", &path, POINTS) else {
            return;
        };
        assert_eq!(lines.len(), POINTS);
        let chance = AnnualChance::new(percent / 100.0).unwrap();
        let surface = Dem::open_surface(&path, &feet()).unwrap();
        let mut at_edge = 0;
        for line in lines {
            let fields: Vec<_> = line.split(';').collect();
            let number = |index: usize| fields[index].parse::<f64>().unwrap();
            let location = Location::from_degrees(number(0), number(1)).unwrap();
            let answer = surface_level(&surface, chance, location, None, None).unwrap();
            let level = answer.candidate.unwrap().elevation.height();
            let theirs = if fields[2] == "void" {
                at_edge += 1;
                assert!(
                    matches!(
                        answer.remarks.as_slice(),
                        [RasterRemark::AtWetDryEdge { .. }]
                    ),
                    "{line}"
                );
                number(3)
            } else {
                assert_eq!(answer.remarks, [], "{line}");
                number(2)
            };
            let mine = LengthUnit::Foot.read(level);
            assert!((mine - theirs).abs() < TOLERANCE, "{line}: {mine}");
        }
        assert!((5..500).contains(&at_edge), "{at_edge}");
    }
}

#[test]
fn depths_stand_on_the_ground_of_their_terrain() {
    let depths = open_data("muncy/depth_01pct_projected_clipped.tif");
    let ground = open_data("muncy/Muncy_dem_resampled.tif");
    let (Some(path), Some(ground)) = (depths, ground) else {
        return;
    };
    let Some(lines) = crate::peer::lines("wet_cells.py", &path, POINTS) else {
        return;
    };
    let depths = DepthRaster::open(&path, &feet()).unwrap();
    let terrain = Dem::open(&ground, &feet()).unwrap();
    let (mut compared, mut of_nothing) = (0, 0);
    for line in lines {
        let fields: Vec<_> = line.split(';').collect();
        let number = |index: usize| fields[index].parse::<f64>().unwrap();
        let location = Location::from_degrees(number(0), number(1)).unwrap();
        let ground = terrain.ground_at(location).unwrap();
        let chance = AnnualChance::ONE_PERCENT;
        let answer = depth_level(&depths, chance, location, &ground, None, None).unwrap();
        let theirs = number(if fields[2] == "void" { 3 } else { 2 });
        let level = answer.candidate.unwrap().elevation;
        let mine = level.above(ground.unwrap().elevation).unwrap();
        let mine = LengthUnit::Foot.read(mine);
        assert!((mine - theirs).abs() < TOLERANCE, "{line}: {mine}");
        compared += 1;
        let nothing = |remark: &RasterRemark| matches!(remark, RasterRemark::DepthOfNothing { .. });
        of_nothing += usize::from(answer.remarks.iter().any(nothing));
    }
    // 7638 of its 532 904 wet cells have a depth of exactly 0.
    assert!(compared == POINTS && of_nothing > 0, "{of_nothing}");
}

#[test]
fn wet_cells_below_the_ground_are_said() {
    let surface = open_data("houston/wse_1pct_clipped_resampled.tif");
    let ground = open_data("houston/ned19_n29x75_w095x50_tx_houstoncity_2008_clipped_feet.tif");
    let (Some(path), Some(ground)) = (surface, ground) else {
        return;
    };
    let Some(lines) = crate::peer::lines("wet_cells.py", &path, POINTS) else {
        return;
    };
    let surface = Dem::open_surface(&path, &feet()).unwrap();
    let terrain = Dem::open(&ground, &feet()).unwrap();
    let mut said = 0;
    for line in lines {
        let fields: Vec<_> = line.split(';').collect();
        let number = |index: usize| fields[index].parse::<f64>().unwrap();
        let location = Location::from_degrees(number(0), number(1)).unwrap();
        let ground = terrain.ground_at(location).unwrap().unwrap();
        let chance = AnnualChance::ONE_PERCENT;
        let answer = surface_level(&surface, chance, location, Some(&ground), None).unwrap();
        let level = answer.candidate.unwrap().elevation;
        let above = ground.elevation.above(level).unwrap().value > 0.0;
        let remarks = answer.remarks.iter();
        let is_said = remarks
            .filter(|remark| matches!(remark, RasterRemark::GroundAboveWater { .. }))
            .count();
        assert_eq!(is_said, usize::from(above), "{line}");
        said += is_said;
    }
    // 4.7 % of its wet cells lie above their water on this terrain (numpy).
    assert!((20..90).contains(&said), "{said}");
}
