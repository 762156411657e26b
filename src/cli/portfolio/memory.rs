//! How much memory a run may use.

use sillmark::statement::{Place, Stated};

use crate::cli::failure::Failure;

/// The memory of `--memory` in its parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Memory {
    /// For rows under way, bytes.
    pub(super) batch: usize,
    /// For decoded terrain, bytes, of all threads together.
    pub(super) tiles: usize,
}

/// Less does not hold a block of rows and a few tiles for each thread.
const LEAST: usize = 16 << 20;

const ACCEPTED: &str = "a size of at least 16 MB, such as \"256 MB\" or \"2 GB\"";

impl Memory {
    pub(super) fn read(text: &str) -> Result<Self, Failure> {
        let stated = Stated::new("size", text, Place::Option("option --memory".into()));
        let refused = |problem: &str| Failure::input(stated.refuse(problem, ACCEPTED));
        let text = text.trim();
        let split = text
            .find(|letter: char| !letter.is_ascii_digit())
            .unwrap_or(text.len());
        let (number, unit) = text.split_at(split);
        let number: usize = number
            .parse()
            .map_err(|_| refused("it is not a whole number"))?;
        let unit = match unit.trim().to_ascii_uppercase().as_str() {
            "MB" | "MIB" | "M" => 1 << 20,
            "GB" | "GIB" | "G" => 1 << 30,
            "" => return Err(refused("it has no unit")),
            _ => return Err(refused("its unit is not known")),
        };
        let bytes = number
            .checked_mul(unit)
            .ok_or_else(|| refused("it is too large"))?;
        if bytes < LEAST {
            return Err(refused("it is too small"));
        }
        Ok(Self {
            batch: bytes / 4 * 3,
            tiles: bytes / 4,
        })
    }
}
