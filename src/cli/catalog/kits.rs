//! Barrier systems that ship with the project.

use sillmark::barrier::Kit;
use sillmark::statement::StatementError;

use super::list::{List, UNITS};

pub(super) fn list() -> Result<String, StatementError> {
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
