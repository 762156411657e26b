//! What a summary has to say about the run that it sums up.

use std::path::Path;

use crate::quantity::{AnnualChance, UnitSystem};
use crate::verdict::Caution;

/// The run: what went in, and by which rule it was judged.
#[derive(Clone, Debug, PartialEq)]
pub struct RunFacts {
    /// The table with the rows: its path.
    pub input: String,
    /// Flood-zone layers.
    pub zones: Vec<String>,
    /// Rasters, lines and sections that give flood levels.
    pub levels: Vec<String>,
    /// Terrain models.
    pub terrain: Vec<String>,
    /// The rule's id, as on the command line.
    pub rule_id: String,
    /// The rule's name for people.
    pub rule_name: String,
    /// Annual chance of the flood that was assessed.
    pub event: AnnualChance,
    /// The day of the run, as it is to be printed.
    pub date: String,
    /// Units of text and page; JSON is in metres.
    pub units: UnitSystem,
    /// Version of the program, such as `0.1.0`.
    pub version: String,
    /// Where the rejected rows stand, if there are some.
    pub rejects_file: Option<String>,
    /// Cautions that hold for every row of this run.
    pub cautions: Vec<Caution>,
    /// Further options that are worth repeating: name and value.
    pub options: Vec<(String, String)>,
}

impl RunFacts {
    /// The table without its folders, for sentences and titles.
    pub(super) fn table(&self) -> String {
        let name = Path::new(&self.input).file_name();
        name.map_or_else(
            || self.input.clone(),
            |name| name.to_string_lossy().into_owned(),
        )
    }

    /// What went in and how it was judged, for a list: name and value. A source that was not
    /// given is said to be missing.
    pub(super) fn list(&self) -> Vec<(String, String)> {
        let files = |files: &[String]| {
            if files.is_empty() {
                "none given".to_owned()
            } else {
                files.join(", ")
            }
        };
        let mut list: Vec<(String, String)> = [
            ("Table", self.input.clone()),
            ("Flood zones", files(&self.zones)),
            ("Flood levels", files(&self.levels)),
            ("Terrain", files(&self.terrain)),
            ("Rule", self.rule_name.clone()),
            ("Flood", format!("{} annual chance", self.event)),
            ("Date", self.date.clone()),
            ("Made by", format!("sillmark {}", self.version)),
        ]
        .map(|(name, value)| (name.to_owned(), value))
        .into();
        if let Some(file) = &self.rejects_file {
            list.push(("Rejected rows".to_owned(), file.clone()));
        }
        list.extend(self.options.iter().cloned());
        list
    }
}
