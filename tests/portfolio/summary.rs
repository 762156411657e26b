//! What is counted, and that parts merged in any order equal the whole.

use proptest::prelude::*;
use sillmark::level::LevelSource;
use sillmark::portfolio::summary::{RowFigures, Summary};
use sillmark::quantity::AnnualChance;
use sillmark::quantity::unit::{Length, meter};
use sillmark::site::Location;
use sillmark::verdict::Verdict;

const VERDICTS: [Verdict; 4] = [
    Verdict::Above,
    Verdict::Protect,
    Verdict::Engineer,
    Verdict::Unresolved,
];
const CODES: [&str; 5] = ["survey-sill", "zone-edge", "floodway", "local-code", "x"];

/// A row that owns what it says; `None` for a rejected one.
#[derive(Clone, Debug)]
struct Row {
    id: String,
    place: Option<(f64, f64)>,
    verdict: usize,
    zone: Option<u8>,
    source: Option<usize>,
    height: Option<f64>,
    chance: Option<f64>,
    estimate: bool,
    codes: usize,
    rejected: bool,
}

impl Row {
    fn count(&self, summary: &mut Summary) {
        if self.rejected {
            summary.reject(
                &format!("field {}", self.verdict),
                &format!("problem {:?}", self.zone),
            );
            return;
        }
        let zone = self.zone.map(|zone| format!("Z{zone}"));
        let location = |(longitude, latitude)| Location::from_degrees(longitude, latitude).unwrap();
        summary.add(&RowFigures {
            id: &self.id,
            location: self.place.map(location),
            verdict: VERDICTS[self.verdict],
            zone: zone.as_deref(),
            level_source: self.source.map(|source| LevelSource::ALL[source]),
            protection_height: self.height.map(Length::new::<meter>),
            chance_at_sill: self.chance.and_then(AnnualChance::new),
            threshold_is_estimate: self.estimate,
            reason: Some(CODES[self.codes]),
            cautions: &CODES[..self.codes],
        });
    }
}

fn summed(rows: &[Row]) -> Summary {
    let mut summary = Summary::default();
    for row in rows {
        row.count(&mut summary);
    }
    summary
}

fn merged(one: &Summary, two: &Summary) -> Summary {
    let mut sum = one.clone();
    sum.merge(two);
    sum
}

fn read_back(summary: &Summary) -> Summary {
    serde_json::from_str(&serde_json::to_string(summary).unwrap()).unwrap()
}

/// Few ids and heights, so that ties are frequent; many zones and kinds of problem, so that not
/// all are kept.
fn row() -> impl Strategy<Value = Row> {
    let place = prop_oneof![
        (-180.0..=180.0, -90.0..=90.0),
        (-74.04..-74.0, 40.7..40.75),
        Just((180.0, 90.0)),
        Just((-180.0, -90.0)),
    ];
    let height = prop_oneof![
        (-20..400).prop_map(|step| f64::from(step) / 100.0),
        -1.0..9.0
    ];
    (
        ("[a-c]{1,2}", proptest::option::of(place), 0..4_usize),
        (
            proptest::option::of(any::<u8>()),
            proptest::option::of(0..8_usize),
        ),
        (proptest::option::of(height), proptest::option::of(0.0..1.0)),
        (any::<bool>(), 0..5_usize, prop::bool::weighted(0.3)),
    )
        .prop_map(
            |(
                (id, place, verdict),
                (zone, source),
                (height, chance),
                (estimate, codes, rejected),
            )| Row {
                id,
                place,
                verdict,
                zone,
                source,
                height,
                chance,
                estimate,
                codes,
                rejected,
            },
        )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn parts_make_the_whole(
        rows in proptest::collection::vec(row(), 0..400),
        cuts in (0..400_usize, 0..400_usize),
    ) {
        let cut = |row: usize| row.min(rows.len());
        let (first, second) = (cut(cuts.0.min(cuts.1)), cut(cuts.0.max(cuts.1)));
        let (one, two, three) =
            (summed(&rows[..first]), summed(&rows[first..second]), summed(&rows[second..]));
        let whole = summed(&rows);
        prop_assert_eq!(&merged(&merged(&one, &two), &three), &whole);
        prop_assert_eq!(&merged(&one, &merged(&two, &three)), &whole);
        prop_assert_eq!(&merged(&merged(&three, &one), &two), &whole);
        prop_assert_eq!(&merged(&Summary::default(), &whole), &whole);
        let backward: Vec<Row> = rows.iter().rev().cloned().collect();
        prop_assert_eq!(&summed(&backward), &whole);
    }

    #[test]
    fn a_summary_that_was_written_down_goes_on(
        rows in proptest::collection::vec(row(), 0..200),
        cut in 0..200_usize,
    ) {
        let (before, after) = rows.split_at(cut.min(rows.len()));
        let mut resumed = read_back(&summed(before));
        prop_assert_eq!(&resumed, &summed(before));
        for row in after {
            row.count(&mut resumed);
        }
        prop_assert_eq!(resumed, summed(&rows));
    }

    #[test]
    fn no_row_is_lost(rows in proptest::collection::vec(row(), 0..300)) {
        let summary = summed(&rows);
        let rejected = rows.iter().filter(|row| row.rejected).count() as u64;
        let assessed = rows.len() as u64 - rejected;
        prop_assert_eq!((summary.assessed(), summary.rejected()), (assessed, rejected));
        let zones: u64 = summary.zones().each().map(|(_, rows)| rows.total()).sum();
        prop_assert_eq!(zones + summary.zones().others().total() + summary.without_zone().total(), assessed);
        let kinds: u64 = summary.rejects().each().map(|(_, rows)| rows).sum();
        prop_assert_eq!(kinds + summary.rejects().others(), rejected);
        prop_assert_eq!(summary.level_sources().total() + summary.without_level(), assessed);
        let placed = rows.iter().filter(|row| !row.rejected && row.place.is_some()).count() as u64;
        prop_assert_eq!(summary.lattice().total(), placed);
        let heights = rows.iter().filter(|row| !row.rejected && row.height.is_some()).count() as u64;
        prop_assert_eq!(summary.heights().total(), heights);
    }
}

fn protect(id: &str, metres: f64, place: Option<(f64, f64)>) -> Row {
    Row {
        id: id.to_owned(),
        place,
        verdict: 1,
        zone: None,
        source: None,
        height: Some(metres),
        chance: None,
        estimate: false,
        codes: 0,
        rejected: false,
    }
}

#[test]
fn heights_fall_into_tenths_of_a_metre() {
    let heights = [-0.2, 0.0, 0.05, 0.1, 0.3, 0.300_001, 0.7, 3.0, 3.01, 12.0];
    let summary = summed(&heights.map(|height| protect("a", height, None)));
    let filled: Vec<(usize, u64)> = summary
        .heights()
        .each()
        .map(|bin| bin.rows.total())
        .enumerate()
        .filter(|(_, rows)| *rows > 0)
        .collect();
    // 0: nothing; 1: up to 0.1 m; 3: up to 0.3; 4: just above; 7: up to 0.7; 30: up to 3; 31: more.
    assert_eq!(
        filled,
        [(0, 2), (1, 2), (3, 1), (4, 1), (7, 1), (30, 1), (31, 2)]
    );
    let last = summary.heights().each().last().unwrap();
    assert_eq!(
        (last.above, last.up_to),
        (Some(Length::new::<meter>(3.0)), None)
    );
    let half = summary.heights().holding(0.5).unwrap();
    assert_eq!(half.up_to, Some(Length::new::<meter>(0.4)));
}

#[test]
fn the_ranking_holds_the_highest_and_breaks_ties_by_id() {
    let rows: Vec<Row> = (0..50)
        .map(|number| protect(&format!("h{number:02}"), f64::from(number / 10) + 0.5, None))
        .collect();
    let summary = summed(&rows);
    let needs = summary.highest_needs().rows();
    let ids: Vec<&str> = needs.iter().map(|row| row.id.as_str()).collect();
    assert_eq!(ids.len(), 20);
    assert_eq!(
        (ids[0], ids[9], ids[10], ids[19]),
        ("h40", "h49", "h30", "h39")
    );
}

#[test]
fn heights_that_are_no_numbers_are_not_ranked() {
    let summary = summed(&[
        protect("a", f64::NAN, None),
        protect("b", f64::INFINITY, None),
    ]);
    assert_eq!(summary.heights().total(), 0);
    assert!(summary.highest_needs().rows().is_empty());
}

#[test]
fn cells_grow_until_they_are_few_enough() {
    let rows: Vec<Row> = (0..6400)
        .map(|number| {
            protect(
                "a",
                1.0,
                Some((f64::from(number % 80) * 0.01, f64::from(number / 80) * 0.01)),
            )
        })
        .collect();
    let summary = summed(&rows);
    let lattice = summary.lattice();
    // 0.8 by 0.8 degrees in cells of 1/32 degree: 26 by 26 of them; of 1/64 there would be 2,601.
    assert!((lattice.cell_degrees() - 1.0 / 32.0).abs() < 1e-15);
    assert_eq!((lattice.cells().count(), lattice.total()), (26 * 26, 6400));
}

#[test]
fn a_broken_record_is_refused() {
    let text = serde_json::to_string(&summed(&[protect("a", 1.0, Some((5.0, 50.0)))])).unwrap();
    for (right, wrong) in [
        ("\"protect\"", "\"safe\""),
        ("\"fineness\":12", "\"fineness\":13"),
        ("\"fineness\":12", "\"fineness\":-100"),
        ("[5.0,50.0]", "[5.0,950.0]"),
    ] {
        assert!(text.contains(right), "{right} is not in {text}");
        let broken = text.replace(right, wrong);
        assert!(serde_json::from_str::<Summary>(&broken).is_err(), "{wrong}");
    }
}

#[test]
fn written_down_it_stays_small() {
    let mut summary = Summary::default();
    let (long_id, zone_end) = ("i".repeat(300), "z".repeat(60));
    for number in 0_u32..200_000 {
        let spread = |by: u32| f64::from(number.wrapping_mul(by) >> 8) / f64::from(1 << 24);
        let row = Row {
            id: format!("{number}{long_id}"),
            place: Some((
                spread(2_654_435_761) * 40.0 - 120.0,
                spread(2_246_822_519) * 20.0 + 30.0,
            )),
            verdict: (number % 4) as usize,
            zone: None,
            source: Some((number % 8) as usize),
            height: Some(spread(3_266_489_917) * 4.0),
            chance: Some(spread(668_265_263)),
            estimate: true,
            codes: 4,
            rejected: false,
        };
        row.count(&mut summary);
        if number % 1000 == 0 {
            summary.reject(&format!("{number} {zone_end}"), &long_id);
            let zone = format!("{number} {zone_end}");
            summary.add(&RowFigures {
                id: "z",
                location: None,
                verdict: Verdict::Above,
                zone: Some(&zone),
                level_source: None,
                protection_height: None,
                chance_at_sill: None,
                threshold_is_estimate: false,
                reason: None,
                cautions: &[],
            });
        }
    }
    let written = serde_json::to_string(&summary).unwrap();
    assert!(summary.lattice().cells().count() > 500);
    assert!(written.len() < 50_000, "{} bytes", written.len());
    assert_eq!(read_back(&summary), summary);
}
