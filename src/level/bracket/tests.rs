//! Rivers drawn for one decision each. Coordinates are metres of UTM zone 18 around a point on
//! its central meridian, so that east and north there are those of the plane.

use geo::{Coord, LineString, MultiLineString};
use proptest::prelude::*;

use super::{Bracketed, LineRefusal, Position, bracket};
use crate::crs::{CrsDefinition, Projector};
use crate::hazard::{LayerOrigin, LevelLine, LevelLineMap, LineKind};
use crate::quantity::{AnnualChance, Elevation, Length, LengthUnit, VerticalDatum, unit::foot};
use crate::site::Location;

/// A line for a test: its name, watercourse, level in feet and vertices.
struct Drawn(
    &'static str,
    Option<&'static str>,
    Option<f64>,
    Vec<(f64, f64)>,
);

fn map_on(kind: LineKind, drawn: &[Drawn], datum: impl Fn(usize) -> VerticalDatum) -> LevelLineMap {
    let projector = Projector::new(CrsDefinition::from_text("EPSG:32618").unwrap().horizontal);
    let projector = projector.unwrap();
    let origin = projector.project(place(0.0, 0.0)).unwrap();
    let features = drawn.iter().enumerate().map(|(index, drawn)| {
        let Drawn(name, watercourse, level, vertices) = drawn;
        let height = |level: f64| Length::new::<foot>(level);
        let line = LevelLine {
            kind,
            layer: "river".to_owned(),
            feature: (*name).to_owned(),
            label: None,
            watercourse: watercourse.map(str::to_owned),
            station: None,
            level: level.map(|level| Elevation::new(height(level), datum(index))),
            unit: Some(LengthUnit::Foot),
            annual_chance: AnnualChance::ONE_PERCENT,
            fetched: None,
            remarks: Vec::new(),
        };
        let vertices = vertices
            .iter()
            .map(|(x, y)| origin + Coord { x: *x, y: *y });
        (
            line,
            Some(MultiLineString::new(vec![LineString(vertices.collect())])),
        )
    });
    LevelLineMap::new(kind, projector, LayerOrigin::default(), features.collect())
}

fn contours(drawn: &[Drawn]) -> LevelLineMap {
    map_on(LineKind::LevelLines, drawn, |_| VerticalDatum::Navd88)
}

fn sections(drawn: &[Drawn]) -> LevelLineMap {
    map_on(LineKind::CrossSections, drawn, |_| VerticalDatum::Navd88)
}

/// The place so many metres from the origin, near enough: a degree of latitude is 111 035 m
/// at 40 degrees and one of longitude 85 394 m on the WGS 84 ellipsoid. The scale of the
/// central meridian, 0.9996, is in the coordinates of the lines only.
fn place(east: f64, north: f64) -> Location {
    Location::from_degrees(-75.0 + east / 85_394.0, 40.0 + north / 111_035.0).unwrap()
}

/// A line across the river at `east`, between two norths.
fn across(name: &'static str, level: f64, east: f64) -> Drawn {
    Drawn(name, None, Some(level), vec![(east, -100.0), (east, 100.0)])
}

fn of(watercourse: &'static str, Drawn(name, _, level, vertices): Drawn) -> Drawn {
    Drawn(name, Some(watercourse), level, vertices)
}

fn found(map: &LevelLineMap, east: f64, north: f64) -> Bracketed<'_> {
    bracket(map, place(east, north)).unwrap().unwrap()
}

fn feet(found: &Bracketed<'_>) -> f64 {
    found.elevation.height().get::<foot>()
}

fn assert_feet(map: &LevelLineMap, east: f64, north: f64, expected: f64) {
    let found = found(map, east, north);
    let level = feet(&found);
    assert!((level - expected).abs() < 0.01, "{level}: {}", found.how());
}

#[test]
fn halfway_between_108_and_109() {
    // Worked example: FEMA, Guide to Flood Insurance Rate Maps, May 1988, p. 29: halfway
    // between the lines 108 and 109 the level is 108.5.
    let map = contours(&[across("a", 108.0, -200.0), across("b", 109.0, 200.0)]);
    let found = found(&map, 0.0, 0.0);
    assert!((feet(&found) - 108.5).abs() < 1e-3, "{}", feet(&found));
    let Position::Between {
        upstream,
        downstream,
    } = &found.position
    else {
        panic!("{:?}", found.position)
    };
    assert_eq!(upstream.line.feature, "b");
    assert_eq!(downstream.line.feature, "a");
    assert!(found.remarks.is_empty(), "{:?}", found.remarks);
    assert_eq!(found.reference(), "river, feature b; river, feature a");
    // Rounding to whole feet, 1/√12, and 1/√12 of the foot between: √(1/6) ft.
    assert!((found.sd.get::<foot>() - 0.408_25).abs() < 1e-4);
}

#[test]
fn the_sentence_of_the_trail() {
    let map = sections(&[
        of("Mill Brook", across("A", 108.0, -100.0)),
        of("Mill Brook", across("B", 109.1, 300.0)),
    ]);
    insta::assert_snapshot!(
        found(&map, 0.0, 0.0).how(),
        @"between cross-section B of Mill Brook (109.10 ft, 985 ft away) and cross-section A of Mill Brook (108.00 ft, 328 ft away), in proportion to the distances; standard deviation: rounding of the lines (width / √12, FEMA course IS-273, step 5) and, halfway between two lines, 1/√12 of their difference"
    );
}

#[test]
fn a_place_on_a_line() {
    let map = contours(&[across("a", 108.0, 0.0), across("b", 109.0, 200.0)]);
    let here = found(&map, 0.0, 0.0);
    assert!(matches!(here.position, Position::OnLine(_)));
    assert!((feet(&here) - 108.0).abs() < 1e-9);
    assert!((here.sd.get::<foot>() - 0.288_68).abs() < 1e-4);
}

#[test]
fn where_lines_cross_the_higher_counts() {
    let map = sections(&[
        Drawn("a", None, Some(108.0), vec![(-50.0, -50.0), (50.0, 50.0)]),
        Drawn("b", None, Some(108.4), vec![(-50.0, 50.0), (50.0, -50.0)]),
    ]);
    let here = found(&map, 0.0, 0.0);
    assert!((feet(&here) - 108.4).abs() < 1e-9);
    assert_eq!(
        here.remarks[0].to_string(),
        "cross-section a and cross-section b cross here: the higher level is taken"
    );
}

#[test]
fn a_hidden_line_is_none_of_the_two() {
    // 110 is nearer on the other side than 107, as the crow flies, but 109 hides it.
    let map = contours(&[
        across("108", 108.0, -50.0),
        across("109", 109.0, 100.0),
        across("110", 110.0, 110.0),
        across("107", 107.0, -500.0),
    ]);
    assert_feet(&map, 0.0, 0.0, 108.0 + 1.0 / 3.0);
}

#[test]
fn a_line_that_ends_inside_is_seen_past() {
    // The middle line does not reach the place; its end is still the nearest point of it.
    let map = contours(&[
        across("108", 108.0, -200.0),
        Drawn(
            "109",
            None,
            Some(109.0),
            vec![(100.0, 20.0), (100.0, 100.0)],
        ),
        across("110", 110.0, 200.0),
    ]);
    let here = found(&map, 0.0, -80.0);
    assert!((108.0..109.0).contains(&feet(&here)), "{}", here.how());
    // Behind it the level goes on between it and the next one.
    let there = found(&map, 130.0, -80.0);
    assert!((109.0..=110.0).contains(&feet(&there)), "{}", there.how());
}

#[test]
fn two_pieces_of_one_contour() {
    // Two branches at 621 run together to 620: the water between the 621s is below them.
    let map = contours(&[
        across("621 west", 621.0, -100.0),
        across("621 east", 621.0, 110.0),
        Drawn(
            "620",
            None,
            Some(620.0),
            vec![(20.0, -300.0), (90.0, -300.0)],
        ),
    ]);
    let here = found(&map, -10.0, -60.0);
    assert!((620.5..620.9).contains(&feet(&here)), "{}", here.how());
    // Sections are no contours: two of one level mean level water.
    let flat = sections(&[across("A", 621.0, -100.0), across("B", 621.0, 110.0)]);
    assert_feet(&flat, 0.0, 0.0, 621.0);
    // And so do two contours with nothing else in sight.
    let flat = contours(&[across("A", 621.0, -100.0), across("B", 621.0, 110.0)]);
    assert_feet(&flat, 0.0, 0.0, 621.0);
}

#[test]
fn a_contour_of_another_valley() {
    // 90 is nearer, across a ridge; 99 has to lie between 100 and 90 in one water.
    let map = contours(&[
        across("101", 101.0, -300.0),
        across("100", 100.0, -50.0),
        Drawn("90", None, Some(90.0), vec![(100.0, 10.0), (100.0, 100.0)]),
        Drawn("99", None, Some(99.0), vec![(150.0, -100.0), (150.0, 8.0)]),
    ]);
    assert_feet(&map, 0.0, 0.0, 99.75);
    // With nothing between, ten steps at once are out of step: it is the end of the reach.
    let map = contours(&[
        across("101", 101.0, -300.0),
        across("100", 100.0, -50.0),
        across("90", 90.0, 100.0),
    ]);
    let here = found(&map, 0.0, 0.0);
    assert!(matches!(here.position, Position::BelowLast { .. }));
    assert_feet(&map, 0.0, 0.0, 100.0);
}

#[test]
fn water_does_not_run_both_ways() {
    // Upstream of the last line, 622, and a lower line of elsewhere in sight.
    let map = contours(&[
        across("621", 621.0, -300.0),
        across("622", 622.0, -50.0),
        across("620", 620.0, 900.0),
    ]);
    let here = found(&map, 0.0, 0.0);
    assert!(matches!(here.position, Position::AboveLast { .. }));
    // 250 m between the two, 50 m beyond: a fifth of a foot more, and as much uncertain.
    assert_feet(&map, 0.0, 0.0, 622.2);
    assert!(here.how().contains("flood-level line 620 is not used"));
    assert!((here.sd.get::<foot>() - 0.288_68_f64.hypot(0.2)).abs() < 1e-3);
}

#[test]
fn beyond_the_last_line() {
    let map = contours(&[across("621", 621.0, -300.0), across("622", 622.0, -50.0)]);
    // 500 ft are 152.4 m.
    let up = |metres: f64| bracket(&map, place(-50.0 + metres, 0.0));
    assert!(up(152.0).unwrap().is_some());
    let error = up(200.0).unwrap_err();
    assert_eq!(
        error.to_string(),
        "the place lies 656 ft upstream of the last line, flood-level line 622: levels are not extended farther than 500 ft"
    );
    // Downstream the last level holds, and how far it may be too high is its deviation.
    let down = found(&map, -400.0, 0.0);
    assert!((feet(&down) - 621.0).abs() < 1e-9);
    assert!((down.sd.get::<foot>() - 0.288_68_f64.hypot(0.4)).abs() < 1e-3);
    assert!(down.how().contains("upper bound"), "{}", down.how());
    let error = bracket(&map, place(-500.0, 0.0)).unwrap_err().to_string();
    assert!(error.contains("downstream of the last line"), "{error}");
}

#[test]
fn one_line_or_none() {
    let map = contours(&[across("621", 621.0, -50.0)]);
    let error = bracket(&map, place(0.0, 0.0)).unwrap_err();
    assert!(matches!(error, LineRefusal::OneLine { .. }), "{error}");
    assert_eq!(bracket(&map, place(20_000.0, 0.0)), Ok(None));
    let empty = contours(&[Drawn("x", None, None, vec![(0.0, 0.0), (1.0, 1.0)])]);
    assert_eq!(bracket(&empty, place(0.0, 0.0)), Ok(None));
}

#[test]
fn lines_of_one_watercourse_go_together() {
    // The other river is nearer on the other side, and 30 ft lower or 20 ft higher.
    let with = |level: f64, east: f64| {
        let shape = vec![(east, 20.0), (east, 90.0)];
        sections(&[
            of("Long River", across("B", 701.0, -100.0)),
            of("Long River", across("A", 700.0, 300.0)),
            of("Short River", Drawn("Z", None, Some(level), shape)),
        ])
    };
    for level in [670.0, 720.0] {
        let map = with(level, 120.0);
        assert_feet(&map, 0.0, 0.0, 700.75);
        assert!(
            found(&map, 0.0, 0.0)
                .how()
                .contains("cross-section Z of Short River is not used")
        );
    }
    // As nearest line of all it has none of its river on the other side. Its higher level is
    // a doubt, its lower one is not.
    for (level, doubt) in [(670.0, 0.0), (720.0, 19.25)] {
        let map = with(level, 80.0);
        assert_feet(&map, 0.0, 0.0, 700.75);
        let here = found(&map, 0.0, 0.0);
        assert!(
            here.how().contains("is nearer but not used"),
            "{}",
            here.how()
        );
        let sd = here.sd.get::<foot>();
        // Whole feet; a quarter of the way along one foot: 2√(3/16) of 1/√12.
        let own = 0.288_68_f64.hypot(0.25);
        assert!((sd - own.hypot(doubt * 0.288_68)).abs() < 0.01, "{sd}");
    }
}

#[test]
fn another_watercourse_refines_within_the_own_range() {
    let map = sections(&[
        of("Long River", across("A", 700.0, -100.0)),
        of("Long River", across("B", 701.0, 400.0)),
        of(
            "Short River",
            Drawn("Z", None, Some(700.4), vec![(100.0, -90.0), (100.0, 90.0)]),
        ),
    ]);
    let here = found(&map, 0.0, 0.0);
    assert!((feet(&here) - 700.2).abs() < 0.01, "{}", here.how());
    assert!(here.how().contains("between two watercourses"));
}

#[test]
fn another_watercourse_alone_raises_and_never_lowers() {
    let with = |level: f64| {
        sections(&[
            of("Long River", across("A", 701.0, -300.0)),
            of("Long River", across("B", 700.0, -100.0)),
            of("Short River", across("Z", level, 100.0)),
        ])
    };
    assert_feet(&with(700.6), 0.0, 0.0, 700.3);
    assert_feet(&with(690.0), 0.0, 0.0, 700.0);
}

#[test]
fn levels_that_do_not_fall_along_the_water_are_remarked() {
    let map = sections(&[
        of("Mill Brook", across("A", 610.4, -200.0)),
        of("Mill Brook", across("B", 610.8, -50.0)),
        of("Mill Brook", across("C", 610.5, 100.0)),
    ]);
    let here = found(&map, 0.0, 0.0);
    assert!((feet(&here) - 610.7).abs() < 0.01, "{}", here.how());
    assert_eq!(
        here.remarks[0].to_string(),
        "levels do not fall along the water at cross-section B of Mill Brook"
    );
}

#[test]
fn a_line_without_a_level_between() {
    let map = sections(&[
        across("A", 610.0, -100.0),
        Drawn(
            "confluence",
            None,
            None,
            vec![(50.0, -100.0), (50.0, 100.0)],
        ),
        across("C", 611.0, 100.0),
    ]);
    assert_eq!(
        found(&map, 0.0, 0.0).remarks[0].to_string(),
        "cross-section confluence lies between and has no level"
    );
}

#[test]
fn two_datums_are_refused() {
    let drawn = [across("A", 610.0, -100.0), across("B", 611.0, 100.0)];
    let map = map_on(LineKind::CrossSections, &drawn, |index| {
        [VerticalDatum::Navd88, VerticalDatum::Ngvd29][index]
    });
    let error = bracket(&map, place(0.0, 0.0)).unwrap_err();
    assert!(matches!(error, LineRefusal::Datums(_)), "{error}");
    let map = map_on(LineKind::CrossSections, &drawn, |_| {
        VerticalDatum::LocalTidal
    });
    assert!(bracket(&map, place(0.0, 0.0)).is_err());
}

proptest! {
    /// Between two lines, however they lie, the level is between theirs.
    #[test]
    fn the_level_lies_between_the_two(
        east in -150.0..150.0_f64,
        north in -150.0..150.0_f64,
        levels in prop::collection::vec(600.0..640.0_f64, 5),
        slants in prop::collection::vec(-80.0..80.0_f64, 5),
        is_contour in any::<bool>(),
    ) {
        let drawn: Vec<_> = (0_u8..).zip(levels.iter().zip(&slants)).map(|(index, (level, slant))| {
            let at = -200.0 + 100.0 * f64::from(index);
            Drawn("x", None, Some(*level), vec![(at, -100.0), (at + slant, 100.0)])
        }).collect();
        let map = if is_contour { contours(&drawn) } else { sections(&drawn) };
        if let Ok(Some(found)) = bracket(&map, place(east, north))
            && let Position::Between { upstream, downstream } = &found.position
        {
            let level = feet(&found);
            let high = upstream.level.height().get::<foot>();
            let low = downstream.level.height().get::<foot>();
            prop_assert!(low - 1e-6 <= level && level <= high + 1e-6, "{}", found.how());
            prop_assert!(found.sd.value >= 0.0 && found.sd.value.is_finite());
        }
    }

    /// A small step between two parallel lines changes the level by a small step.
    #[test]
    fn the_level_is_continuous_between_parallel_lines(
        east in -199.0..199.0_f64,
        north in -90.0..90.0_f64,
        step in -0.5..0.5_f64,
        fall in 0.1..5.0_f64,
    ) {
        let map = contours(&[across("a", 600.0, -200.0), across("b", 600.0 + fall, 200.0)]);
        let before = feet(&found(&map, east, north));
        let after = feet(&found(&map, east + step, north));
        prop_assert!((after - before - fall * step / 400.0).abs() < 1e-5 * fall);
    }
}
