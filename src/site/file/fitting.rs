//! `[fitting]`.

use super::super::FittingStatement;
use super::fields::{Bounds, read, within};
use crate::quantity::{parse_duration, parse_mass};
use crate::statement::{StatementError, Table, Unreadable};

/// In seconds.
const TIME: Bounds = Bounds {
    range: 1.0..=86_400.0,
    problem: "nobody fits a piece in that time",
    accepted: "the time that one party takes for one piece, from a second to a day, such as \"2 min\"",
};

const LIFT: Bounds = Bounds {
    range: 1.0..=100.0,
    problem: "it is not what one person lifts",
    accepted: "what one person may lift, from 2.3 lb (1 kg) to 220 lb (100 kg), such as \"50 lb\" or \"25 kg\"",
};

const MOST_PARTIES: u32 = 1000;

pub(in super::super) fn fitting(root: &Table<'_, '_>) -> Result<FittingStatement, StatementError> {
    let Some(table) = root.table("fitting")? else {
        return Ok(FittingStatement::default());
    };
    table.allow(&["time_a_plank", "time_a_post", "parties", "lift"])?;
    Ok(FittingStatement {
        time_a_plank: within(&table, "time_a_plank", &TIME, parse_duration)?,
        time_a_post: within(&table, "time_a_post", &TIME, parse_duration)?,
        parties: read(&table, "parties", parties)?,
        lift: within(&table, "lift", &LIFT, parse_mass)?,
    })
}

fn parties(text: &str) -> Result<u32, Unreadable> {
    text.trim()
        .parse()
        .ok()
        .filter(|parties| (1..=MOST_PARTIES).contains(parties))
        .ok_or_else(|| Unreadable {
            problem: "it is not a number of parties".to_owned(),
            accepted: format!("a whole number from 1 to {MOST_PARTIES}"),
        })
}
