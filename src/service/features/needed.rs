//! The attributes that a layer is read for.

use crate::service::ServiceError;

/// Lists of names, of each of which a layer must have one; upper and lower case do not matter.
#[derive(Clone, Copy)]
pub(super) struct Needed<'names>(pub(super) &'names [&'names [String]]);

impl Needed<'_> {
    /// The first list of which there is none.
    pub(super) fn lacking(self, there: &[String]) -> Option<String> {
        let has = |name: &String| there.iter().any(|there| there.eq_ignore_ascii_case(name));
        self.0
            .iter()
            .find(|names| !names.iter().any(has))
            .map(|names| names.join(" or "))
    }

    pub(super) fn check(
        self,
        there: &[String],
        address: &str,
        layer: &str,
    ) -> Result<(), ServiceError> {
        match self.lacking(there) {
            None => Ok(()),
            Some(needed) => Err(ServiceError::NoAttribute {
                address: address.to_owned(),
                layer: layer.to_owned(),
                needed,
                attributes: there.to_vec(),
            }),
        }
    }
}
