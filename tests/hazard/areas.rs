//! The compact area against plain `geo`, on random polygons.

use geo::{Contains, Coord, Distance, Euclidean, Line, LineString, LinesIter, MultiPolygon};
use geo::{Point, Polygon};
use serde_json::json;
use sillmark::crs::{CrsDefinition, LocalFrame, Projector};
use sillmark::hazard::{SharedZones, ZoneMap, ZoneStatement, read_zones};
use sillmark::site::Location;

use super::fixture::feature;

/// A generator of numbers from 0 to 1 (xorshift64, Marsaglia 2003), the same in every run.
struct Random(u64);

impl Random {
    fn next(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        f64::from(u32::try_from(self.0 >> 32).unwrap()) / f64::from(u32::MAX)
    }

    fn below(&mut self, count: usize) -> usize {
        let places = u32::try_from(count).unwrap();
        let picked = (self.next() * f64::from(places)).floor();
        (0..count)
            .take_while(|index| f64::from(u32::try_from(*index).unwrap()) <= picked)
            .last()
            .unwrap()
    }

    /// A star of random rays, wound either way; on whole metres where `grid` says so, which
    /// gives level edges and corners at one height.
    fn ring(&mut self, middle: Coord<f64>, size: f64, grid: bool) -> LineString<f64> {
        let corners = 5 + u32::try_from(self.below(30)).unwrap();
        let mut ring: Vec<Coord<f64>> = (0..corners)
            .map(|corner| {
                let angle = std::f64::consts::TAU * f64::from(corner) / f64::from(corners);
                let ray = size * (0.5 + 0.5 * self.next());
                let corner = middle
                    + Coord {
                        x: angle.cos(),
                        y: angle.sin(),
                    } * ray;
                if grid {
                    Coord {
                        x: corner.x.round(),
                        y: corner.y.round(),
                    }
                } else {
                    corner
                }
            })
            .collect();
        ring.push(ring[0]);
        if self.next() < 0.5 {
            ring.reverse();
        }
        LineString(ring)
    }

    fn area(&mut self, grid: bool) -> MultiPolygon<f64> {
        let mut parts = Vec::new();
        for part in 0..=self.below(3) {
            let middle = Coord {
                x: 300.0 * f64::from(u32::try_from(part).unwrap()),
                y: 0.0,
            };
            let holes = (0..self.below(3)).map(|hole| {
                let east = if hole == 0 { -18.0 } else { 18.0 };
                self.ring(middle + Coord { x: east, y: 0.0 }, 14.0, grid)
            });
            let holes = holes.collect();
            parts.push(Polygon::new(self.ring(middle, 120.0, grid), holes));
        }
        // A sliver: a hundred metres long, half a millimetre to half a metre wide.
        let (x, wide) = (-400.0, 0.0005 + 0.5 * self.next().powi(4));
        let sliver = [
            (x, 0.0),
            (x + 100.0, 40.0),
            (x + 100.0, 40.0 + wide),
            (x, wide),
            (x, 0.0),
        ];
        parts.push(Polygon::new(LineString::from(sliver.to_vec()), Vec::new()));
        MultiPolygon(parts)
    }

    /// Anywhere, or on a corner, or on an edge or a little beside.
    fn point(&mut self, area: &MultiPolygon<f64>, grid: bool) -> Coord<f64> {
        let lines: Vec<Line<f64>> = area.lines_iter().collect();
        let line = lines[self.below(lines.len())];
        match self.below(4) {
            0 => line.start,
            1 => {
                let beside = Coord {
                    x: self.next() - 0.5,
                    y: self.next() - 0.5,
                } * 0.006;
                line.start + (line.end - line.start) * self.next() + beside
            }
            _ => {
                let point = Coord {
                    x: 900.0 * self.next() - 450.0,
                    y: 260.0 * self.next() - 130.0,
                };
                if grid {
                    Coord {
                        x: point.x.round(),
                        y: point.y.round(),
                    }
                } else {
                    point
                }
            }
        }
    }
}

/// A layer of one zone in metres of UTM zone 18.
fn map(area: &MultiPolygon<f64>) -> ZoneMap {
    let ring = |ring: &LineString<f64>| ring.0.iter().map(|at| [at.x, at.y]).collect::<Vec<_>>();
    let parts: Vec<Vec<_>> = area
        .iter()
        .map(|part| {
            std::iter::once(part.exterior())
                .chain(part.interiors())
                .map(ring)
                .collect()
        })
        .collect();
    let geometry = json!({"type": "MultiPolygon", "coordinates": parts});
    let collection = json!({
        "type": "FeatureCollection",
        "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32618"}},
        "features": [feature(&json!({"FLD_ZONE": "AE"}), &geometry)],
    });
    let scratch = tempfile::tempdir().unwrap();
    let path = crate::support::write(scratch.path(), "zones.geojson", &collection.to_string());
    read_zones(&path, None, &ZoneStatement::default(), None).unwrap()
}

fn moved(area: &MultiPolygon<f64>, by: Coord<f64>) -> MultiPolygon<f64> {
    use geo::MapCoords;
    area.map_coords(|corner| corner + by)
}

#[test]
fn inside_and_on_the_edge_as_geo_and_the_nearest_edge_say() {
    let utm = CrsDefinition::from_text("EPSG:32618").unwrap().horizontal;
    let projector = Projector::new(utm).unwrap();
    let place = Location::from_degrees(-74.9, 40.7).unwrap();
    let frame = LocalFrame::new(&projector, place).unwrap();
    let mut random = Random(20_260_509);
    let (mut inside, mut on_edge, mut outside) = (0, 0, 0);
    for case in 0..400 {
        let grid = case % 2 == 0;
        let area = random.area(grid);
        let point = random.point(&area, grid);
        let area = moved(&area, frame.origin() - point);
        let nearest = area
            .lines_iter()
            .map(|edge| {
                let edge = Line::new(frame.metres(edge.start), frame.metres(edge.end));
                Euclidean.distance(&Point::new(0.0, 0.0), &edge)
            })
            .fold(f64::INFINITY, f64::min);
        if (nearest - 0.001).abs() < 1e-8 {
            continue;
        }
        let is_near = nearest < 0.001;
        let map = map(&area);
        let here = map.at(place).unwrap();
        assert_eq!(here.on_edge, is_near, "case {case}: {nearest} m");
        let holds = is_near || area.contains(&Point::from(frame.origin()));
        assert_eq!(
            here.zones.len(),
            usize::from(holds),
            "case {case}: {nearest} m"
        );
        match (holds, is_near) {
            (_, true) => on_edge += 1,
            (true, false) => inside += 1,
            (false, false) => outside += 1,
        }
    }
    assert!(
        inside > 50 && on_edge > 50 && outside > 50,
        "{inside} {on_edge} {outside}"
    );
}

#[test]
fn a_point_of_the_plane_as_geo_says() {
    let mut random = Random(7);
    let mut found = [0, 0];
    for case in 0..60 {
        let area = moved(
            &random.area(true),
            Coord {
                x: 500_000.0,
                y: 4_500_000.0,
            },
        );
        let map = map(&area);
        let (_, compact) = map.zones().next().unwrap();
        let wound = compact.to_multi_polygon();
        assert_eq!(
            (wound.0.len(), compact.part_count()),
            (area.0.len(), area.0.len())
        );
        for _ in 0..200 {
            let point = Coord {
                x: 500_000.0 + (900.0 * random.next() - 450.0).round(),
                y: 4_500_000.0 + (260.0 * random.next() - 130.0).round(),
            };
            let there = Point::from(point);
            if area
                .lines_iter()
                .any(|edge| Euclidean.distance(&there, &edge) < 1e-7)
            {
                continue;
            }
            let expected = area.contains(&there);
            assert_eq!(
                map.holding(point).count(),
                usize::from(expected),
                "{case} {point:?}"
            );
            assert_eq!(wound.contains(&there), expected);
            let parts = (0..compact.part_count()).filter(|part| compact.part_holds(*part, point));
            assert_eq!(parts.count(), usize::from(expected));
            found[usize::from(expected)] += 1;
        }
    }
    assert!(found[0] > 1000 && found[1] > 1000, "{found:?}");
}

#[test]
fn threads_share_the_zones_and_answer_alike() {
    fn shared<T: Send + Sync>(_: &T) {}
    let features: Vec<_> = ["X", "AE", "VE"]
        .into_iter()
        .map(|code| super::fixture::zone(code, 0.0, 0.0, 0.1))
        .collect();
    let map = super::fixture::map(&features).unwrap();
    let zones = map.share();
    shared::<std::sync::Arc<SharedZones>>(&zones);
    let place = super::fixture::place(0.05, 0.05);
    let (numbers, on_edge) = map.numbers_at(place).unwrap();
    assert_eq!((numbers.as_slice(), on_edge), ([2, 1, 0].as_slice(), false));
    assert_eq!(map.here(&numbers, on_edge), map.at(place).unwrap());
    let elsewhere = std::thread::spawn(move || zones.map().unwrap().numbers_at(place).unwrap());
    assert_eq!(elsewhere.join().unwrap(), (numbers, on_edge));
}

/// Zones far apart, some so dense that a hundred meet the square in which few of the others do,
/// and twenty over one another.
#[test]
fn a_place_is_answered_alike_whatever_was_asked_before() {
    let step = 0.0002;
    let dense = (0..900).map(|number| {
        let (column, row) = (f64::from(number % 30), f64::from(number / 30));
        super::fixture::zone("AE", step * column, step * row, step)
    });
    let deep = (0..20).map(|_| super::fixture::zone("X", 0.05, 0.0, 0.01));
    let far = (0..9).map(|number| super::fixture::zone("VE", 0.1 * f64::from(number), 0.2, 0.05));
    let features: Vec<_> = dense.chain(deep).chain(far).collect();
    let map = super::fixture::map(&features).unwrap();
    let mut random = Random(5);
    let mut found = 0;
    for case in 0..3000 {
        // Now here, now there, and for some time near the one before.
        let (east, north, reach) = match case / 100 % 4 {
            0 => (0.0, 0.0, 0.006),
            1 => (0.049, -0.001, 0.012),
            2 => (0.0, 0.0, 0.9),
            _ => (0.0, 0.19, 0.9),
        };
        let east = east + reach * random.next();
        let north = north + reach.min(0.07) * random.next();
        let place = super::fixture::place(east, north);
        let here = map.numbers_at(place).unwrap();
        let alone = map.share().map().unwrap();
        assert_eq!(here, alone.numbers_at(place).unwrap(), "{place:?}");
        let point = map.frame(place).unwrap().origin();
        if !here.1 {
            assert_eq!(here.0.len(), map.holding(point).count(), "{place:?}");
        }
        found += usize::from(!here.0.is_empty());
    }
    assert!(found > 1000, "{found}");
}

#[test]
fn what_is_said_of_a_zone_is_made_once() {
    let map = super::fixture::map(&[super::fixture::zone("AE", 0.0, 0.0, 0.1)]).unwrap();
    let (zone, _) = map.zones().next().unwrap();
    assert!(std::sync::Arc::ptr_eq(zone.title(), zone.title()));
    assert!(std::sync::Arc::ptr_eq(zone.record(), zone.record()));
    // A copy may be changed and makes its own.
    let mut copy = zone.clone();
    copy.code = "VE".to_owned();
    assert_eq!((&**zone.title(), &**copy.title()), ("AE", "VE"));
}
