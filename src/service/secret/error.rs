//! Errors without secrets: what they tell may come from a server, which may repeat what it was
//! sent.

use super::Secrets;
use crate::service::ServiceError;

impl ServiceError {
    /// The same without secrets.
    pub(in crate::service) fn without(mut self, secrets: &Secrets) -> Self {
        for text in self.texts() {
            *text = secrets.blotted(text);
        }
        self
    }

    fn texts(&mut self) -> Vec<&mut String> {
        match self {
            Self::Broken {
                address, problem, ..
            }
            | Self::Led { address, problem }
            | Self::CannotKeep { address, problem }
            | Self::Unfit { address, problem }
            | Self::NotWhole {
                address, problem, ..
            } => vec![address, problem],
            Self::Refused {
                address,
                status,
                told,
            } => vec![address, status, told],
            Self::Busy {
                address, status, ..
            }
            | Self::NoParts { address, status } => vec![address, status],
            Self::TooLarge { address, .. }
            | Self::Spent { address, .. }
            | Self::NotKept { address }
            | Self::Changed { address }
            | Self::NoLayers { address }
            | Self::SameName { address, .. } => vec![address],
            Self::NoLayer {
                address, layers, ..
            }
            | Self::Group {
                address, layers, ..
            }
            | Self::WhichLayer { address, layers } => with(address, layers),
            Self::NoAttribute {
                address,
                attributes,
                ..
            } => with(address, attributes),
            Self::Client(problem) => vec![problem],
        }
    }
}

fn with<'a>(address: &'a mut String, names: &'a mut [String]) -> Vec<&'a mut String> {
    std::iter::once(address).chain(names).collect()
}
