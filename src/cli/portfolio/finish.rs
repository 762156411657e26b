//! The end of a run: result, rejected rows and summaries under their final names.

use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::thread::JoinHandle;

use sillmark::crs::CrsDefinition;
use sillmark::portfolio::summary::Summary;
use sillmark::portfolio::{Plan, Repeated, Unfinished, coordinate_names};
use sillmark::quantity::UnitSystem;
use sillmark::report::{portfolio as report, verdict_style};
use sillmark::table::{OutColumn, Points, TableFormat, convert, sort_ranked};
use sillmark::verdict::{Caution, CautionTexts};

use super::beside::RejectsFile;
use super::facts::{MapNames, cautions, run_facts};
use crate::cli::arguments::{PortfolioOptions, Ranking};
use crate::cli::failure::{Failure, note};
use crate::cli::output::Target;
use crate::cli::tables::{table_format, table_name};

/// What is to be written at the end, checked before the run begins.
pub(super) struct Finish<'a> {
    options: &'a PortfolioOptions,
    format: TableFormat,
    /// What summaries call the maps; known when they are on the disk.
    pub(super) names: MapNames,
}

/// A form that a summary is written in.
#[derive(Clone, Copy)]
enum Form {
    Text,
    Json,
    Page,
}

impl<'a> Finish<'a> {
    pub(super) fn plan(options: &'a PortfolioOptions) -> Result<Self, Failure> {
        let asked = options
            .to
            .as_deref()
            .map(|name| table_format("--to", name))
            .transpose()?;
        let format = match (asked, &options.output) {
            (Some(format), _) => format,
            (None, Some(path)) => TableFormat::from_path(path).map_err(Failure::input)?,
            (None, None) => TableFormat::Csv,
        };
        if options.output.is_none() && format != TableFormat::Csv {
            return Err(Failure::input(
                "option --to: only CSV is written to stdout; accepted: csv, or --output PATH",
            ));
        }
        for path in &options.summary {
            form(path)?;
        }
        Ok(Self {
            options,
            format,
            names: MapNames::default(),
        })
    }

    /// Writes everything and removes the work folder.
    pub(super) fn finish(
        &self,
        work: Unfinished,
        path: &Path,
        columns: &[OutColumn],
        plan: &Plan,
        repeated: Search,
    ) -> Result<(), Failure> {
        let rejects = self.keep_rejects(&work, path)?;
        let summary = work.summary().clone();
        self.summaries(&summary, rejects.as_deref(), plan)?;
        self.result(&work, path, columns, plan)?;
        work.remove().map_err(super::failure)?;
        if self.options.rank == Some(Ranking::Chance) && summary.with_chance() == 0 {
            note(
                "no row has a yearly chance at its sill, so that none is ranked; levels of several floods give one (--surface 1%=PATH --surface 0.2%=PATH)",
            );
        }
        tell_rejected(&summary, rejects.as_deref());
        if self.options.summary.is_empty() {
            let texts = CautionTexts::shipped().map_err(Failure::other)?;
            let facts = run_facts(self.options, plan, &self.names, rejects.as_deref());
            Target::Stdout.write(&report::text(&summary, &facts, &texts))?;
        } else {
            tell_cautions(plan)?;
        }
        tell_repeated(repeated, &table_name(&self.options.table))
    }

    /// Puts the rejected rows, where there are some or where they were asked for, under their
    /// own name.
    pub(super) fn keep_rejects(
        &self,
        work: &Unfinished,
        path: &Path,
    ) -> Result<Option<PathBuf>, Failure> {
        let asked = self.options.rejects.clone();
        let rejected = work.summary().rejected() > 0;
        let mut name = path.file_name().unwrap_or_default().to_owned();
        name.push(".rejects.csv");
        let beside_path = path.with_file_name(name);
        let beside = || rejected.then(|| beside_path.clone());
        let Some(target) = asked.or_else(beside) else {
            RejectsFile::remove_stale(&beside_path)?;
            return Ok(None);
        };
        RejectsFile::copy(&work.rejects(), &target).map(Some)
    }

    /// Writes the summaries that were asked for.
    pub(super) fn summaries(
        &self,
        summary: &Summary,
        rejects: Option<&Path>,
        plan: &Plan,
    ) -> Result<(), Failure> {
        let texts = CautionTexts::shipped().map_err(Failure::other)?;
        let facts = run_facts(self.options, plan, &self.names, rejects);
        for path in &self.options.summary {
            let text = match form(path)? {
                Form::Text => report::text(summary, &facts, &texts),
                Form::Json => report::json(summary, &facts, &texts).map_err(Failure::other)?,
                Form::Page => report::page(summary, &facts, &texts).map_err(Failure::other)?,
            };
            Target::open(Some(path), &[])?.write(&text)?;
        }
        Ok(())
    }

    fn result(
        &self,
        work: &Unfinished,
        path: &Path,
        columns: &[OutColumn],
        plan: &Plan,
    ) -> Result<(), Failure> {
        let mut rows = work.rows();
        let mut columns = columns.to_vec();
        if let Some(ranking) = self.options.rank {
            let ranked = rows.with_file_name("ranked.csv");
            let by = match ranking {
                Ranking::Height => "protection_height_m",
                Ranking::Chance => "chance_at_sill",
            };
            sort_ranked(&rows, by, true, plan.batch_bytes, RANK, &ranked)
                .map_err(Failure::other)?;
            columns.insert(
                0,
                OutColumn {
                    name: RANK.to_owned(),
                    kind: sillmark::table::ColumnKind::Whole,
                },
            );
            rows = ranked;
        }
        if self.format != TableFormat::Csv {
            // Within the work folder, so that nothing stays beside the result when the program
            // is killed here.
            let converted = rows.with_file_name("converted");
            let points = points(&columns, plan)?;
            convert(
                &rows,
                &columns,
                points.as_ref(),
                &converted,
                self.format,
                LAYER,
                Some(&verdict_style()),
            )
            .map_err(Failure::other)?;
            rows = converted;
        } else if !rows.exists() {
            // The run was stopped after they had become the result.
            return Ok(());
        }
        std::fs::rename(&rows, path)
            .map_err(|error| Failure::other(format!("{}: {error}", path.display())))
    }
}

/// A search for repeated ids under way.
type Search = JoinHandle<std::io::Result<Repeated>>;

/// The column of ranks.
const RANK: &str = "rank";

/// The system of tables that name no other.
const WGS84: &str = "OGC:CRS84";

/// The layer of the result.
const LAYER: &str = "openings";

/// The points of the result, in the system of the table.
fn points(columns: &[OutColumn], plan: &Plan) -> Result<Option<Points>, Failure> {
    let [x, y] = coordinate_names(plan.columns.degrees)
        .map(|name| columns.iter().position(|column| column.name == name));
    let crs = match &plan.crs {
        Some(crs) => crs.clone(),
        None => {
            CrsDefinition::from_text(WGS84)
                .map_err(Failure::other)?
                .horizontal
        }
    };
    Ok(x.zip(y).map(|(x, y)| Points { x, y, crs }))
}

fn form(path: &Path) -> Result<Form, Failure> {
    let ending = path
        .extension()
        .unwrap_or_default()
        .to_string_lossy()
        .to_ascii_lowercase();
    match ending.as_str() {
        "txt" => Ok(Form::Text),
        "json" => Ok(Form::Json),
        "html" => Ok(Form::Page),
        _ => Err(Failure::input(format!(
            "option --summary: {:?} has no ending that tells its form; accepted: .txt, .json, .html",
            path.display().to_string()
        ))),
    }
}

/// Says which rows have the id of an earlier one: the result holds them all, but whoever
/// joins it by id meets them.
pub(super) fn tell_repeated(search: Search, table: &str) -> Result<(), Failure> {
    let ended = |_| Failure::other("the search for repeated ids ended early");
    let repeated = search.join().map_err(ended)?.map_err(Failure::other)?;
    if repeated.count == 0 {
        return Ok(());
    }
    for (line, before) in &repeated.lines {
        // A closed stderr leaves nobody to tell.
        let _ = writeln!(
            std::io::stderr(),
            "{table}, line {line}: id: it is also that of line {before}"
        );
    }
    let rows = match repeated.count {
        1 => "1 row has".to_owned(),
        count => format!("{count} rows have"),
    };
    Err(Failure::input(format!(
        "{table}: {rows} the id of an earlier row; all rows are in the result; accepted: an id of \
         its own for each row (with its opening, where there is one row an opening)"
    )))
}

/// Says on stderr how many rows are rejected, and where they stand.
pub(super) fn tell_rejected(summary: &Summary, rejects: Option<&Path>) {
    let (rejected, read) = (summary.rejected(), summary.read());
    if rejected > 0
        && let Some(path) = rejects
    {
        note(&format!(
            "{rejected} of {read} rows rejected: {}",
            path.display()
        ));
    }
}

/// Says on stderr what holds for every row, where no summary on the terminal tells it.
pub(super) fn tell_cautions(plan: &Plan) -> Result<(), Failure> {
    let texts = CautionTexts::shipped().map_err(Failure::other)?;
    for caution in cautions(plan) {
        if matches!(caution, Caution::NoFreeboard | Caution::DemonstrationKit) {
            note(&texts.text(&caution, UnitSystem::Si));
        }
    }
    Ok(())
}
