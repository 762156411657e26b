//! `sillmark portfolio`, on the maps of the demonstration.

mod coordinates;
mod files;
mod formats;
mod parts;
mod rejects;
mod resume;
mod spine;
mod summaries;

use std::path::Path;

use super::scratch::{Outcome, Scratch};

/// The maps of the demonstration in a folder of their own.
pub(crate) fn alder_lock() -> Scratch {
    let scratch = Scratch::new();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/alder-lock");
    for name in ["zones.geojson", "terrain.tif"] {
        std::fs::copy(folder.join(name), scratch.path(name)).unwrap();
    }
    scratch
}

/// What every run here reads.
pub(crate) const MAPS: [&str; 6] = [
    "--zones",
    "zones.geojson",
    "--dem",
    "terrain.tif",
    "--rule",
    "us-nfip-floodproofing",
];

/// What is said on stderr of a table with widths, whose barriers are of the invented kit.
pub(crate) const KIT_NOTE: &str = "note: Heights, pieces and strengths are those of the invented \
    demonstration kit; give the real one with --kit\n";

/// The header of the tables here.
pub(crate) const HEADER: &str = "id,longitude,latitude,threshold,threshold_unit,vertical_datum\n";

/// Rows that need different answers: a flooded one, one in the floodway, one that the map does
/// not tell of, one outside of it.
pub(crate) const ROWS: &str = "mill,-87.498762,47.799353,612.9,ft,NAVD88\n\
    weir,-87.5006,47.7993,186.2,m,NAVD88\n\
    gatehouse,-87.49772,47.799358,620.6,ft,NAVD88\n\
    far,-87.4,47.7,612.9,ft,NAVD88\n";

/// The arguments of a run on those maps.
pub(crate) fn with_maps<'a>(table: &'a str, options: &[&'a str]) -> Vec<&'a str> {
    [&["portfolio", table][..], &MAPS, options].concat()
}

/// The records of a CSV text by the names of their columns.
pub(crate) struct Answers {
    header: csv::StringRecord,
    rows: Vec<csv::StringRecord>,
}

impl Answers {
    pub(crate) fn read(text: &str) -> Self {
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        let header = reader.headers().unwrap().clone();
        let rows = reader.records().map(Result::unwrap).collect();
        Self { header, rows }
    }

    pub(crate) fn len(&self) -> usize {
        self.rows.len()
    }

    pub(crate) fn get(&self, row: usize, column: &str) -> &str {
        let position = self.header.iter().position(|name| name == column);
        &self.rows[row][position.expect(column)]
    }

    pub(crate) fn column(&self, name: &str) -> Vec<&str> {
        (0..self.len()).map(|row| self.get(row, name)).collect()
    }
}

impl Scratch {
    /// The result on stdout of a run on the demonstration's maps that says nothing else.
    pub(crate) fn portfolio(&self, table: &str, options: &[&str]) -> Answers {
        Answers::read(&self.answer(&with_maps(table, options)))
    }

    /// A run on the demonstration's maps.
    pub(crate) fn run_portfolio(&self, table: &str, options: &[&str]) -> Outcome {
        self.run(&with_maps(table, options))
    }
}
