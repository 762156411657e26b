//! `sillmark catalog`: what answers rest on, as lists.

use std::fmt::Write as _;

use sillmark::barrier::{Kit, Practice};
use sillmark::crs::{COMMON_DATUM_PAIRS, Datums};
use sillmark::design::{Rule, rules};
use sillmark::hazard::Schema;
use sillmark::level::LevelSource;
use sillmark::load::CombinationSet;
use sillmark::quantity::{UnitSystem, VerticalDatum};
use sillmark::report::{barrier_json_schema, json_schema, paragraph};
use sillmark::risk::deviations;
use sillmark::statement::{Citation, StatementError};
use sillmark::verdict::{CautionTexts, Limits};

use super::arguments::{CatalogList, CatalogOptions};
use super::failure::Failure;
use super::inputs;
use super::output::Target;

const UNITS: UnitSystem = UnitSystem::Us;

/// Columns of a line.
const COLUMNS: usize = 96;

pub(super) fn run(options: &CatalogOptions) -> Result<(), Failure> {
    let list = match options.list {
        CatalogList::Rules => all_rules(),
        CatalogList::Limits => limits(),
        CatalogList::Kits => kits(),
        CatalogList::Datums => return Target::Stdout.write(&datums(options)?),
        CatalogList::Sources => Ok(sources()),
        CatalogList::Uncertainty => uncertainty(),
        CatalogList::Schemas => schemas(),
        CatalogList::Materials => materials(),
        CatalogList::Combinations => combinations(),
        CatalogList::Practice => practice(),
        CatalogList::Cautions => cautions(),
        CatalogList::JsonSchema => {
            return Target::Stdout.write(&json_schema().map_err(Failure::other)?);
        }
        CatalogList::BarrierSchema => {
            return Target::Stdout.write(&barrier_json_schema().map_err(Failure::other)?);
        }
    };
    Target::Stdout.write(&list.map_err(Failure::other)?)
}

/// A list under construction: a line for each entry, its details set in below it.
#[derive(Default)]
struct List(String);

impl List {
    fn entry(&mut self, id: &str, text: &str) {
        if !self.0.is_empty() {
            self.0.push('\n');
        }
        self.lines(&format!("{id}: {text}"), "", "  ");
    }

    fn detail(&mut self, text: &str) {
        self.lines(text, "  ", "    ");
    }

    fn source(&mut self, citation: &Citation) {
        self.detail(&format!(
            "source ({}): {}",
            citation.confidence, citation.source
        ));
    }

    fn lines(&mut self, text: &str, first: &str, further: &str) {
        self.0.push_str(&paragraph(text, first, further, COLUMNS));
    }
}

fn all_rules() -> Result<String, StatementError> {
    let mut list = List::default();
    for rule in rules()? {
        list.entry(&rule.id, &rule.name);
        list.detail(&format!("design level: {}", formula(&rule)));
        list.detail(&format!("applies: {}", rule.applies));
        if let Some(note) = &rule.note {
            list.detail(&format!("note: {note}"));
        }
        list.source(&rule.citation);
    }
    Ok(list.0)
}

fn formula(rule: &Rule) -> String {
    let terms: Vec<String> = rule
        .terms
        .iter()
        .map(|term| {
            let mut text = format!("{} + {}", term.base, UNITS.height(term.add));
            if !term.occupancies.is_empty() {
                let uses: Vec<String> = term.occupancies.iter().map(ToString::to_string).collect();
                let _ = write!(text, " ({})", uses.join(", "));
            }
            if term.optional {
                text.push_str(" (where stated)");
            }
            text
        })
        .collect();
    match terms.as_slice() {
        [only] => only.clone(),
        several => format!("the highest of {}", several.join("; ")),
    }
}

fn limits() -> Result<String, StatementError> {
    let mut list = List::default();
    let limits = Limits::shipped()?;
    for limit in limits.walls() {
        let depth = limit.depth.map_or_else(
            || "none known: an engineer for every depth".to_owned(),
            |depth| UNITS.height(depth),
        );
        list.entry(limit.wall_name(), &depth);
        list.source(&limit.citation);
    }
    list.entry("velocity", &UNITS.velocity(limits.velocity));
    list.source(&limits.velocity_citation);
    Ok(list.0)
}

fn kits() -> Result<String, StatementError> {
    let mut list = List::default();
    for kit in Kit::shipped()? {
        list.entry(&kit.id, &kit.name);
        let plank = &kit.plank;
        list.detail(&format!(
            "plank: {} high, {}, up to {}, {}",
            UNITS.dimension(plank.cover),
            plank.material.name,
            UNITS.height(plank.longest),
            UNITS.mass_per_length(plank.mass_per_length),
        ));
        let posts: Vec<&str> = kit.posts.all().map(|(name, _)| name).collect();
        list.detail(&format!("posts: {}", posts.join(", ").replace('_', " ")));
        if let Some(height) = kit.greatest_height {
            list.detail(&format!("greatest height: {}", UNITS.height(height)));
        }
        list.source(&kit.citation);
    }
    Ok(list.0)
}

fn materials() -> Result<String, StatementError> {
    let mut list = List::default();
    for material in sillmark::barrier::materials()? {
        list.entry(&material.id, &material.name);
        list.detail(&format!(
            "yield {}, ultimate {}, modulus {}",
            UNITS.stress(material.yield_strength),
            UNITS.stress(material.ultimate_strength),
            UNITS.stress(material.modulus),
        ));
        if let Some(welded) = material.welded {
            list.detail(&format!(
                "beside a weld: yield {}, ultimate {}",
                UNITS.stress(welded.yield_strength),
                UNITS.stress(welded.ultimate_strength),
            ));
        }
        list.source(&material.citation);
    }
    Ok(list.0)
}

fn combinations() -> Result<String, StatementError> {
    let mut list = List::default();
    for set in CombinationSet::shipped()? {
        list.entry(&set.id, &set.name);
        if let Some(note) = &set.note {
            list.detail(&format!("note: {note}"));
        }
        for (zone, factors) in [("coastal", &set.coastal), ("other", &set.other)] {
            if let (Some(factor), Some(citation)) = (factors.allowable, &factors.allowable_citation)
            {
                list.detail(&format!(
                    "{zone} zones, allowable strength: {factor} ({citation})"
                ));
            }
            list.detail(&format!(
                "{zone} zones, factored loads: {} ({})",
                factors.strength, factors.strength_citation
            ));
        }
        list.source(&set.citation);
    }
    Ok(list.0)
}

fn practice() -> Result<String, StatementError> {
    let mut list = List::default();
    let practice = Practice::shipped()?;
    list.entry(
        "intermediate post",
        &format!(
            "where a barrier is wider than {} and higher than {}",
            UNITS.height(practice.wider_than),
            UNITS.height(practice.higher_than)
        ),
    );
    list.source(&practice.citation);
    list.entry(
        "deflection",
        &format!(
            "no more than L/{:.0} where none is stated",
            practice.deflection.parts
        ),
    );
    list.source(&practice.deflection.citation);
    Ok(list.0)
}

fn datums(options: &CatalogOptions) -> Result<String, Failure> {
    let mut list = List::default();
    if let Some((from, to)) = options.pair {
        let datums = inputs::datums(&options.datums, Vec::new())?;
        conversion(&mut list, &datums, from, to)?;
        return Ok(list.0);
    }
    for datum in VerticalDatum::all_named() {
        let code = datum
            .epsg()
            .map_or_else(|| "no EPSG code".to_owned(), |code| format!("EPSG:{code}"));
        list.entry(
            &datum.to_string(),
            &format!("{}, {code}", datum.full_name()),
        );
        if !datum.is_one_surface() {
            list.detail("another surface at each tide gauge: read from files, never compared");
        }
    }
    list.entry(
        "EPSG:n",
        "any other vertical coordinate system of the EPSG Dataset, by its code",
    );
    let datums = inputs::datums(&options.datums, Vec::new())?;
    for (from, to) in COMMON_DATUM_PAIRS {
        conversion(&mut list, &datums, from, to)?;
    }
    Ok(list.0)
}

/// Which grids lead from one datum to another, and which of them are here.
fn conversion(
    list: &mut List,
    datums: &Datums,
    from: VerticalDatum,
    to: VerticalDatum,
) -> Result<(), Failure> {
    let grids = datums.grid_report(from, to).map_err(Failure::input)?;
    let missing = grids.iter().filter(|grid| !grid.is_present()).count();
    list.entry(
        &format!("{from} to {to}"),
        &match (grids.len(), missing) {
            (0, _) => "no grid is needed".to_owned(),
            (all, 0) => format!("grids: {all}, all here"),
            (all, missing) => format!("grids: {all}, of which {missing} are missing"),
        },
    );
    for grid in grids {
        let state = match (&grid.found, &grid.address) {
            (Some(path), _) => format!("here: {}", path.display()),
            (None, Some(address)) => format!("missing; PROJ's project offers it at {address}"),
            (None, None) => "missing".to_owned(),
        };
        let area = grid
            .area
            .filter(|area| !area.name.is_empty())
            .map(|area| format!(", {}", area.name))
            .unwrap_or_default();
        let accuracy = grid
            .accuracy
            .map(|accuracy| format!(", accuracy {}", UnitSystem::Si.height(accuracy)));
        list.detail(&format!(
            "{}: {}{}{area}; {state}",
            grid.file,
            grid.operation,
            accuracy.unwrap_or_default()
        ));
    }
    Ok(())
}

fn sources() -> String {
    let mut list = List::default();
    for (rank, source) in LevelSource::ALL.into_iter().enumerate() {
        list.entry(
            &(rank + 1).to_string(),
            &format!("{} ({})", source.title(), source.code()),
        );
    }
    list.0
}

fn uncertainty() -> Result<String, StatementError> {
    let mut list = List::default();
    for deviation in deviations()? {
        let sd = UnitSystem::Si.height(deviation.sd);
        list.entry(
            &deviation.id,
            &format!("{}, standard deviation {sd}", deviation.name),
        );
        list.detail(&format!("covers: {}", deviation.covers));
        list.source(&deviation.citation);
    }
    Ok(list.0)
}

fn schemas() -> Result<String, StatementError> {
    let mut list = List::default();
    for schema in Schema::shipped()? {
        list.entry(&schema.name, &schema.title);
        list.detail(&format!("source: {}", schema.source));
    }
    Ok(list.0)
}

fn cautions() -> Result<String, StatementError> {
    let mut list = List::default();
    for (code, text, citation) in CautionTexts::shipped()?.all() {
        list.entry(code, text);
        list.source(citation);
    }
    Ok(list.0)
}
