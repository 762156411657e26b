//! Freeboard rules.

use std::fmt::Write as _;

use sillmark::design::{Rule, rules};
use sillmark::statement::StatementError;

use super::list::{List, UNITS};

pub(super) fn list() -> Result<String, StatementError> {
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
