//! Sources as numbered notes below the tables.

use crate::report::outline::Outline;

/// The sources so far, each once.
#[derive(Default)]
pub(super) struct Notes {
    sources: Vec<String>,
}

impl Notes {
    /// The mark of a source, such as `[3]`.
    pub(super) fn mark(&mut self, source: &str) -> String {
        let known = self.sources.iter().position(|known| known == source);
        let position = known.unwrap_or_else(|| {
            self.sources.push(source.to_owned());
            self.sources.len() - 1
        });
        format!("[{}]", position + 1)
    }

    /// The marks of several sources.
    pub(super) fn marks(&mut self, sources: impl IntoIterator<Item = String>) -> String {
        let mut marks: Vec<String> = Vec::new();
        for source in sources {
            let mark = self.mark(&source);
            if !marks.contains(&mark) {
                marks.push(mark);
            }
        }
        marks.join(" ")
    }

    pub(super) fn print(&self, page: &mut Outline) {
        if self.sources.is_empty() {
            return;
        }
        page.heading("Sources");
        for (position, source) in self.sources.iter().enumerate() {
            page.paragraph(source, &format!("[{}] ", position + 1));
        }
    }
}
