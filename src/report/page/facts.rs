//! How the answer was worked out, in a list: enough to ask for it again.

use crate::assess::Assessment;
use crate::quantity::UnitSystem;
use crate::risk::Deviation;

/// A name and what stands behind it.
pub(super) struct Fact {
    pub(super) name: &'static str,
    pub(super) value: String,
}

impl Fact {
    pub(super) fn all(assessment: &Assessment<'_>) -> Vec<Self> {
        let (site, method) = (assessment.site, assessment.method);
        let units = method.units;
        let uncertainty = &method.uncertainty;
        let terrain = uncertainty.terrain.as_ref();
        let facts = [
            (
                "Place",
                format!(
                    "longitude {}°, latitude {}°",
                    site.location.longitude(),
                    site.location.latitude()
                ),
            ),
            ("Assessed flood", format!("{} annual chance", method.event)),
            (
                "Freeboard rule",
                format!(
                    "{}: {} ({})",
                    method.rule.id, method.rule.name, method.rule.citation
                ),
            ),
            (
                "Kit",
                format!("{} ({})", method.kit.name, method.kit.citation),
            ),
            (
                "Ground against the walls",
                format!("within {} of a place", units.distance(method.grade_radius)),
            ),
            (
                "Terrain known to",
                terrain.map_or_else(|| "not stated".to_owned(), |sd| deviation(sd, units)),
            ),
            ("Sills known to", deviation(&uncertainty.sill, units)),
            ("Chances over", format!("{} years", method.years)),
        ];
        facts.map(|(name, value)| Self { name, value }).into()
    }
}

/// Two standard deviations, which is what ± stands for, with their source.
fn deviation(of: &Deviation, units: UnitSystem) -> String {
    format!(
        "± {} (two standard deviations: {}; {})",
        units.height(of.sd * 2.0),
        of.name,
        of.citation
    )
}
