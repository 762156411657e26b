//! Sorting more rows than memory holds, and numbering them.

mod merge;
mod run;

use std::fs::File;
use std::io::{BufWriter, Write};
use std::path::Path;

use self::merge::Runs;
use self::run::Gathered;
use super::block::Record;
use super::landing::Landing;
use super::{RecordFault, TableError, TableFormat, TableReader, csv_text};

/// Writes the rows of a CSV file in the order of a numeric column, with their ranks (1, 2, …)
/// in a new first column.
///
/// Rows without a number come last and have no rank; rows with equal numbers keep their order.
/// About `memory_bytes` of rows are held at a time: sorted runs go to temporary files beside
/// the target and are merged. The target appears whole or not at all.
///
/// # Errors
/// [`TableError`]: no such column, a column of the rank's name, a value that is neither empty
/// nor a finite number, a record that cannot be read, no space.
///
/// ```
/// use sillmark::table::sort_ranked;
/// let folder = tempfile::tempdir()?;
/// let (work, ranked) = (folder.path().join("work.csv"), folder.path().join("ranked.csv"));
/// std::fs::write(&work, "id,depth_m\na,0.5\nb,\nc,1.25\n")?;
/// sort_ranked(&work, "depth_m", true, 1 << 20, "rank", &ranked)?;
/// assert_eq!(
///     std::fs::read_to_string(&ranked)?,
///     "rank,id,depth_m\n1,c,1.25\n2,a,0.5\n,b,\n"
/// );
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn sort_ranked(
    work: &Path,
    by: &str,
    descending: bool,
    memory_bytes: usize,
    rank: &str,
    target: &Path,
) -> Result<(), TableError> {
    let landing = Landing::new(work, target)?;
    let mut reader = TableReader::open(work, TableFormat::Csv, None)?;
    let refused = |subject: String, found: &str| {
        let accepted = format!("its columns are {}", reader.columns().join(", "));
        TableError::refused(work, subject, found, accepted)
    };
    let column = reader
        .column(by)
        .ok_or_else(|| refused(format!("column {by:?}"), "there is none"))?;
    if reader.column(rank).is_some() {
        return Err(refused(format!("column {rank:?}"), "there is one already"));
    }
    let header = header(rank, reader.columns());

    let failed = TableError::system(target, "writing");
    let folder = landing.folder();
    let mut gathered = Gathered::new(memory_bytes);
    let mut runs = Runs::new(folder, memory_bytes);
    while let Some(block) = reader.next_block((memory_bytes / 8).clamp(4096, 1 << 20))? {
        let mut records = block.records();
        while let Some(record) = records.next() {
            let record = record.map_err(|fault| TableError::row(work, fault))?;
            let key = key(&record, column, by, descending)
                .map_err(|fault| TableError::row(work, fault))?;
            if gathered.is_full_with(record.raw()) {
                let run = gathered.store(folder).map_err(&failed)?;
                runs.push(run).map_err(&failed)?;
            }
            gathered.push(key, record.raw());
        }
    }

    let file = File::create(landing.path()).map_err(&failed)?;
    let mut ranked = Ranked {
        file: BufWriter::new(file),
        rank: 0,
    };
    ranked.file.write_all(&header).map_err(&failed)?;
    let mut write = |key: u64, row: &[u8]| ranked.write(key, row);
    if runs.is_empty() {
        gathered.each(&mut write).map_err(&failed)?;
    } else {
        let run = gathered.store(folder).map_err(&failed)?;
        runs.push(run).map_err(&failed)?;
        drop(gathered);
        runs.each(&mut write).map_err(&failed)?;
    }
    ranked.file.flush().map_err(&failed)?;
    landing.land()
}

/// The key of rows without a number: greater than that of any number.
const NO_NUMBER: u64 = u64::MAX;

/// A key that sorts as the row shall, smallest first.
fn key(
    record: &Record<'_>,
    column: usize,
    name: &str,
    descending: bool,
) -> Result<u64, RecordFault> {
    let text = record.get(column);
    if text.is_empty() {
        return Ok(NO_NUMBER);
    }
    let number = text.parse().ok().filter(|number: &f64| number.is_finite());
    let number = number.ok_or_else(|| RecordFault {
        line: record.line(),
        field: name.to_owned(),
        value: text.to_owned(),
        problem: "it is not a finite number".to_owned(),
        accepted: "a number such as 2.75, or nothing".to_owned(),
    })?;
    // The sum makes of the two zeros one. The bits of a number sort as an integer does, once
    // the sign is turned for positive and everything for negative ones.
    let bits = (number + 0.0).to_bits();
    let ascending = if bits >> 63 == 0 {
        bits | (1 << 63)
    } else {
        !bits
    };
    Ok(if descending { !ascending } else { ascending })
}

fn header(rank: &str, columns: &[String]) -> Vec<u8> {
    let mut line = Vec::new();
    csv_text(&mut line, rank);
    for column in columns {
        line.push(b',');
        csv_text(&mut line, column);
    }
    line.push(b'\n');
    line
}

/// The output, row by row.
struct Ranked {
    file: BufWriter<File>,
    rank: u64,
}

impl Ranked {
    fn write(&mut self, key: u64, row: &[u8]) -> std::io::Result<()> {
        if key != NO_NUMBER {
            self.rank += 1;
            let mut digits = itoa::Buffer::new();
            self.file.write_all(digits.format(self.rank).as_bytes())?;
        }
        self.file.write_all(b",")?;
        self.file.write_all(row)?;
        // The last row of a file may have no end.
        if row.ends_with(b"\n") {
            Ok(())
        } else {
            self.file.write_all(b"\n")
        }
    }
}
