//! Which of the layers that a service lists may be meant.

use super::service::Listed;
use crate::service::ServiceError;

/// The layers of a service, by its address as it is shown.
pub(super) struct Choice<'told> {
    pub(super) all: &'told [Listed],
    pub(super) address: &'told str,
}

impl<'told> Choice<'told> {
    /// The one in the path or the one that is named, which must be the same; without either all
    /// that hold features.
    pub(super) fn meant(
        &self,
        in_path: Option<&str>,
        name: Option<&str>,
    ) -> Result<Vec<&'told Listed>, ServiceError> {
        let in_path = in_path.map(|text| self.called(text)).transpose()?;
        let named = name.map(|text| self.called(text)).transpose()?;
        match (in_path, named) {
            (Some(one), Some(other)) if one.id != other.id => Err(self.unknown(&other.name)),
            (Some(one), _) | (None, Some(one)) => {
                self.check(one)?;
                Ok(vec![one])
            }
            (None, None) => Ok(self.with_features().collect()),
        }
    }

    fn with_features(&self) -> impl Iterator<Item = &'told Listed> {
        self.all.iter().filter(|listed| listed.holds_features())
    }

    /// The layer of a name; of a number where none has the name.
    fn called(&self, name: &str) -> Result<&'told Listed, ServiceError> {
        let number: Option<i64> = name.parse().ok();
        let exact = |listed: &Listed| listed.name == name;
        let alike = |listed: &Listed| listed.name.eq_ignore_ascii_case(name);
        let numbered = |listed: &Listed| Some(listed.id) == number;
        let ways: [&dyn Fn(&Listed) -> bool; 3] = [&exact, &alike, &numbered];
        for fits in ways {
            let fitting: Vec<&Listed> = self.with_features().filter(|one| fits(one)).collect();
            match fitting.as_slice() {
                // A group may have the name of one of its layers.
                [] => {
                    if let Some(other) = self.all.iter().find(|one| fits(one)) {
                        return Ok(other);
                    }
                }
                [only] => return Ok(only),
                several => {
                    return Err(ServiceError::SameName {
                        address: self.address.to_owned(),
                        layer: name.to_owned(),
                        numbers: several.iter().map(|one| format!("#{}", one.id)).collect(),
                    });
                }
            }
        }
        Err(self.unknown(name))
    }

    fn check(&self, listed: &Listed) -> Result<(), ServiceError> {
        if listed.holds_features() {
            return Ok(());
        }
        if !listed.is_group() {
            return Err(self.unknown(&listed.name));
        }
        let parts = self.all.iter().filter(|one| one.is_part_of(listed));
        Err(ServiceError::Group {
            address: self.address.to_owned(),
            layer: listed.name.clone(),
            layers: parts.map(Listed::told).collect(),
        })
    }

    fn unknown(&self, name: &str) -> ServiceError {
        ServiceError::NoLayer {
            address: self.address.to_owned(),
            layer: name.to_owned(),
            layers: self.with_features().map(Listed::told).collect(),
        }
    }
}
