//! The cautions, those that differ in nothing but the opening told once.

use crate::quantity::UnitSystem;
use crate::verdict::{Caution, CautionTexts, WallWater};

/// A sentence a caution: one that holds for several openings alike names them all.
pub(in crate::report) fn caution_lines(
    cautions: &[Caution],
    texts: &CautionTexts,
    units: UnitSystem,
) -> Vec<String> {
    let mut told: Vec<Caution> = Vec::new();
    for caution in cautions {
        if !told.iter_mut().any(|known| joined(known, caution)) {
            told.push(caution.clone());
        }
    }
    let told = told.iter();
    told.map(|caution| texts.text(caution, units)).collect()
}

/// Adds the opening of `other` to `known`; false where they differ in more than that.
fn joined(known: &mut Caution, other: &Caution) -> bool {
    match (known, other) {
        (Caution::WallBelowSill(known), Caution::WallBelowSill(other)) => {
            let is_alike = WallWater {
                openings: known.openings.clone(),
                ..other.clone()
            } == *known;
            if is_alike {
                known.openings.extend(other.openings.iter().cloned());
            }
            is_alike
        }
        (
            Caution::WallNotStated { openings: known },
            Caution::WallNotStated { openings: other },
        ) => {
            known.extend(other.iter().cloned());
            true
        }
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Length, unit::meter};
    use crate::verdict::GroundSource;

    fn wall(opening: &str, water: f64) -> Caution {
        Caution::WallBelowSill(WallWater {
            openings: vec![opening.to_owned()],
            water: Length::new::<meter>(water),
            limit: Length::new::<meter>(0.9),
            ground: GroundSource::Terrain,
        })
    }

    #[test]
    fn openings_with_the_same_water_share_a_sentence() {
        let not_stated = |opening: &str| Caution::WallNotStated {
            openings: vec![opening.to_owned()],
        };
        let cautions = [
            wall("a", 1.0),
            not_stated("a"),
            wall("b", 1.0),
            not_stated("b"),
            wall("c", 1.2),
            Caution::LocalCode,
        ];
        let texts = CautionTexts::shipped().unwrap();
        let lines = caution_lines(&cautions, &texts, UnitSystem::Si);
        let details = lines.iter().map(|line| line.split_once('('));
        let details: Vec<Option<&str>> = details.map(|parts| Some(parts?.1)).collect();
        assert_eq!(lines.len(), 4, "{lines:?}");
        assert!(
            details[0]
                .unwrap()
                .starts_with("\"a\", \"b\": 1.000 m of water")
        );
        assert!(lines[1].ends_with("(\"a\", \"b\")"));
        assert!(details[2].unwrap().starts_with("\"c\": 1.200 m of water"));
    }
}
