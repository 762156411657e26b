//! The same case stated in feet and in metres: the same verdict and the same figures.

use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};
use serde_json::Value;

use super::figures::{FOOT, INCH, differences};
use super::scratch::Scratch;

/// One case as numbers, in inches and feet a second.
#[derive(Clone, Debug)]
struct Case {
    width: f64,
    depth: f64,
    more_height: f64,
    reveal: f64,
    sill_above_ground: f64,
    velocity: f64,
    waves: &'static str,
}

/// Writes a length and a speed in one of the two systems.
#[derive(Clone, Copy)]
struct Written {
    length: fn(f64) -> String,
    speed: fn(f64) -> String,
}

const CUSTOMARY: Written = Written {
    length: |inches| format!("{inches} in"),
    speed: |feet| format!("{feet} ft/s"),
};

const METRIC: Written = Written {
    length: |inches| format!("{} m", inches * INCH),
    speed: |feet| format!("{} m/s", feet * FOOT),
};

/// Eighths of an inch, as people measure.
fn eighths(range: std::ops::Range<u32>) -> impl Strategy<Value = f64> {
    range.prop_map(|eighths| f64::from(eighths) / 8.0)
}

fn case() -> impl Strategy<Value = Case> {
    let waves = prop::sample::select(vec!["none", "non-breaking", "breaking"]);
    let lengths = (
        eighths(80..2400),
        eighths(16..400),
        eighths(0..96),
        eighths(0..64),
    );
    let rest = (-24_i32..24, 0_u32..120, waves);
    (lengths, rest).prop_map(
        |((width, depth, more_height, reveal), (above, tenths, waves))| Case {
            width,
            depth,
            more_height,
            reveal,
            sill_above_ground: f64::from(above),
            velocity: f64::from(tenths) / 10.0,
            waves,
        },
    )
}

impl Case {
    /// In both systems the sentences are in feet.
    fn by_barrier(&self, scratch: &Scratch, written: Written) -> Value {
        let length = written.length;
        scratch.write("yard.toml", self.conditions(written));
        scratch.barrier_json(&[
            "--width",
            &length(self.width),
            "--depth",
            &length(self.depth),
            "--height",
            &length(self.depth + self.more_height),
            "--reveal",
            &length(self.reveal),
            "--sill-above-ground",
            &length(self.sill_above_ground),
            "--conditions",
            "yard.toml",
            "--units",
            "us",
        ])
    }

    fn by_site(&self, scratch: &Scratch, written: Written) -> Value {
        let length = written.length;
        let threshold = 120.0;
        let text = format!(
            "name = \"House\"\nlocation = {{ longitude = -74.0, latitude = 40.0 }}\n\
             threshold = \"{} NAVD88\"\nlowest_adjacent_grade = \"{} NAVD88\"\n\
             [[flood_level]]\nevent = \"1%\"\nlevel = \"{} NAVD88\"\nsource = \"study\"\n\
             {}[[opening]]\nid = \"it\"\nwidth = \"{}\"\nreveal = \"{}\"\n",
            length(threshold),
            length(threshold - self.sill_above_ground),
            length(threshold + self.depth),
            self.conditions(written),
            length(self.width),
            length(self.reveal),
        );
        scratch.write("house.toml", text);
        scratch.json(&["site", "house.toml", "--units", "us"])
    }

    fn conditions(&self, written: Written) -> String {
        format!(
            "[water]\nvelocity = \"{}\"\nwaves = \"{}\"\n\
             [loads]\nrisk_category = \"II\"\ndebris = \"normal\"\nextra_depth = \"{}\"\n",
            (written.speed)(self.velocity),
            self.waves,
            (written.length)(6.0),
        )
    }
}

#[test]
fn both_commands_give_the_same_figures_in_both_systems() {
    let scratch = Scratch::new();
    let config = Config {
        cases: 20,
        failure_persistence: None,
        ..Config::default()
    };
    let mut runner = TestRunner::new_with_rng(
        config,
        prop::test_runner::TestRng::deterministic_rng(prop::test_runner::RngAlgorithm::ChaCha),
    );
    let mut verdicts = Vec::new();
    runner
        .run(&case(), |case| {
            let barrier = [CUSTOMARY, METRIC].map(|written| case.by_barrier(&scratch, written));
            let site = [CUSTOMARY, METRIC].map(|written| case.by_site(&scratch, written));
            let of_barrier = differences(&barrier[0], &barrier[1], "");
            prop_assert!(of_barrier.is_empty(), "{}", of_barrier.join("\n"));
            let of_site = differences(&site[0], &site[1], "");
            prop_assert!(of_site.is_empty(), "{}", of_site.join("\n"));
            prop_assert_eq!(&barrier[0]["reasons"], &barrier[1]["reasons"]);
            Ok(())
        })
        .unwrap();
    let door = Case {
        width: 36.0,
        depth: 24.0,
        more_height: 0.0,
        reveal: 6.0,
        sill_above_ground: 0.0,
        velocity: 2.0,
        waves: "none",
    };
    for written in [CUSTOMARY, METRIC] {
        verdicts.push(door.by_barrier(&scratch, written)["verdict"].clone());
    }
    assert_eq!(verdicts, ["protect", "protect"]);
}
