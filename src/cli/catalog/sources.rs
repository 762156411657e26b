//! Sources of a flood level, the highest authority first.

use sillmark::level::LevelSource;

use super::list::List;

pub(super) fn list() -> String {
    let mut list = List::default();
    for (rank, source) in LevelSource::ALL.into_iter().enumerate() {
        list.entry(
            &(rank + 1).to_string(),
            &format!("{} ({})", source.title(), source.code()),
        );
    }
    list.0
}
