//! Opening a CSV file and reading its header.

use std::fs::File;
use std::path::Path;
use std::sync::Arc;

use super::cut::{Cut, MARK, cut};
use super::records::parser;
use super::{Input, LONGEST_RECORD, TextReader};
use crate::table::TableError;
use crate::table::header::column_names;

type Opened = (TextReader, Arc<[String]>);

impl TextReader {
    pub(in crate::table) fn open(
        path: &Path,
        named: Option<&[String]>,
    ) -> Result<Opened, TableError> {
        let failed = TableError::system(path, "opening");
        let file = File::open(path).map_err(&failed)?;
        let facts = file.metadata().map_err(&failed)?;
        if facts.is_dir() {
            let found = "it is a folder";
            return Err(TableError::refused(path, "CSV", found, "a file"));
        }
        // A pipe has no length.
        let bytes = facts.is_file().then_some(facts.len());
        Self::start(path, Input::File(file), bytes, named)
    }

    pub(in crate::table) fn from_stdin(named: Option<&[String]>) -> Result<Opened, TableError> {
        let path = super::stdin_path();
        Self::start(path, Input::Stdin(std::io::stdin()), None, named)
    }

    fn start(
        path: &Path,
        input: Input,
        bytes: Option<u64>,
        named: Option<&[String]>,
    ) -> Result<Opened, TableError> {
        let mut reader = Self {
            path: path.to_owned(),
            input,
            bytes,
            columns: Arc::default(),
            buffer: Vec::new(),
            byte: 0,
            line: 1,
            is_at_end: false,
            first: 0,
        };
        reader.fill(MARK.len())?;
        if reader.buffer.starts_with(MARK) {
            reader.buffer.drain(..MARK.len());
            reader.byte = MARK.len() as u64;
        }
        reader.columns = if let Some(names) = named {
            column_names(path, names.iter().map(String::as_str))?
        } else {
            let header = reader.header()?;
            reader.byte += header.len() as u64;
            reader.line += memchr::memchr_iter(b'\n', &header).count() as u64;
            columns(path, &header)?
        };
        reader.first = reader.byte;
        let columns = Arc::clone(&reader.columns);
        Ok((reader, columns))
    }

    /// Takes the first record from the buffer, as it stands there.
    fn header(&mut self) -> Result<Vec<u8>, TableError> {
        let mut wanted = 1;
        loop {
            self.fill(wanted)?;
            match cut(&self.buffer, 1, self.is_at_end) {
                Cut::Records(length) => {
                    let rest = self.buffer.split_off(length);
                    return Ok(std::mem::replace(&mut self.buffer, rest));
                }
                Cut::Unfinished => wanted = 2 * self.buffer.len().max(MARK.len()),
                Cut::Nothing => return self.no_header("the file is empty"),
                Cut::Fault(problem) => return self.no_header(problem),
            }
        }
    }

    fn no_header(&self, found: &str) -> Result<Vec<u8>, TableError> {
        Err(TableError::refused(
            &self.path,
            "header",
            found,
            format!(
                "a first line of at most {LONGEST_RECORD} bytes with the names of the columns, separated by commas"
            ),
        ))
    }
}

fn columns(path: &Path, header: &[u8]) -> Result<Arc<[String]>, TableError> {
    let refused =
        |found: &str, accepted: &str| Err(TableError::refused(path, "header", found, accepted));
    let line = header.trim_ascii();
    if line.is_empty() {
        let accepted = "the names of the columns in the first line, separated by commas";
        return refused("the first line is empty", accepted);
    }
    let Ok(text) = std::str::from_utf8(line) else {
        return refused("it is not UTF-8", "a file in UTF-8");
    };
    if text.contains('\0') {
        return refused(
            "it holds a zero byte: is the file in UTF-16?",
            "a file in UTF-8",
        );
    }
    let other = [(';', "semicolons"), ('\t', "tabs"), ('|', "bars")];
    if !text.contains(',')
        && let Some((_, name)) = other
            .iter()
            .find(|(separator, _)| text.contains(*separator))
    {
        let found = format!("its values are separated by {name}");
        return refused(
            &found,
            "values separated by commas, with the decimal point as a point",
        );
    }
    if text.contains('\r') {
        let found = "its lines end with a carriage return alone";
        return refused(found, "lines that end with a line feed, or with both");
    }
    let mut record = csv::StringRecord::new();
    let read = parser(line).read_record(&mut record);
    if !read.unwrap_or(false) {
        return refused(
            "it cannot be parsed",
            "names of columns, separated by commas",
        );
    }
    column_names(path, record.iter())
}
