//! The sills of openings that stand at the site.

use super::frame::Frame;
use super::{BOTTOM, MARK, RIGHT, ROW, TOP};
use crate::assess::Assessment;
use crate::quantity::{Elevation, UnitSystem};
use crate::report::drawing::sheet::Sheet;

/// Sills from the lowest up, those of one height together.
pub(super) struct Sills(Vec<(Elevation, Vec<String>)>);

/// A quarter of a millimetre, metres: sills that are nearer to each other print alike.
const ALIKE: f64 = 0.000_25;

impl Sills {
    pub(super) fn of(assessment: &Assessment<'_>) -> Self {
        let openings = assessment.openings.iter();
        let here = openings.filter(|opening| opening.place.is_none());
        let mut sills: Vec<(Elevation, &str)> = here
            .filter_map(|opening| Some((opening.sill?, opening.opening.id.as_str())))
            .collect();
        let height = |sill: &(Elevation, &str)| sill.0.height().value;
        sills.sort_by(|one, other| height(one).total_cmp(&height(other)));
        let mut groups: Vec<(Elevation, Vec<String>)> = Vec::new();
        for (sill, id) in sills {
            match groups.last_mut() {
                Some((last, ids)) if (sill.height() - last.height()).value.abs() < ALIKE => {
                    ids.push(id.to_owned());
                }
                _ => groups.push((sill, vec![id.to_owned()])),
            }
        }
        Self(groups)
    }

    pub(super) fn elevations(&self) -> impl Iterator<Item = Elevation> + '_ {
        self.0.iter().map(|(sill, _)| *sill)
    }

    /// Where each sill lies, and what stands beside it; the highest ones together where there
    /// is no room for all. `others` labels stand there already.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // some dozen
    pub(super) fn labels(
        &self,
        frame: &Frame,
        units: UnitSystem,
        others: usize,
    ) -> Vec<(f64, String)> {
        let room = ((BOTTOM - TOP - 6.0) / ROW).floor() as usize;
        let room = (room + 1).saturating_sub(others);
        let told = if self.0.len() <= room {
            self.0.len()
        } else {
            room.saturating_sub(1)
        };
        let (told, rest) = self.0.split_at(told);
        let mut labels: Vec<(f64, String)> = told
            .iter()
            .map(|(sill, ids)| {
                let text = format!("{} {}", units.height(sill.height()), ids.join(", "));
                (frame.height(*sill), text)
            })
            .collect();
        if let (Some((lowest, _)), Some((highest, _))) = (rest.first(), rest.last()) {
            let count: usize = rest.iter().map(|(_, ids)| ids.len()).sum();
            let text = format!("{count} more, to {}", units.height(highest.height()));
            labels.push((frame.height(*lowest), text));
        }
        labels
    }
}

/// A stroke at the site for each sill, and a fine one to the labels.
pub(super) fn draw(sheet: &mut Sheet, frame: &Frame, sills: &Sills) {
    let site = frame.site();
    for sill in sills.elevations() {
        let y = frame.height(sill);
        sheet.line("sill-lead", (site, y), (RIGHT, y));
        sheet.line("sill-mark", (site - MARK, y), (site + MARK, y));
    }
}
