//! The way to services, and where their answers are kept.

use std::env;
use std::path::PathBuf;

use sillmark::service::{Address, Answers, Cache, Connection, Limits, ServiceError};

use crate::cli::arguments::ServiceOptions;
use crate::cli::failure::Failure;

/// How this run comes to answers of services.
pub(in crate::cli) struct Access(Answers);

impl Access {
    /// By the options: kept in the named folder, or in the user's own.
    pub(in crate::cli) fn new(options: &ServiceOptions) -> Result<Self, Failure> {
        if let Some(address) = options
            .cache
            .as_ref()
            .map(|folder| folder.to_string_lossy())
            && Address::is_meant(&address)
        {
            return Err(Failure::input(
                "option --cache: it is an address; accepted: a folder on this machine",
            ));
        }
        let folder = options.cache.clone().or_else(own_folder);
        let Some(folder) = folder else {
            if options.offline {
                return Err(Failure::input(
                    "option --offline: no folder of kept answers is known; accepted: --cache FOLDER beside it",
                ));
            }
            return Ok(Self(Answers::Fetched));
        };
        let cache = Cache::open(&folder).map_err(|error| {
            Failure::input(format!(
                "option --cache: {:?}: answers cannot be kept there: {error}; accepted: a folder that you may write to",
                folder.display().to_string()
            ))
        })?;
        Ok(Self(if options.offline {
            Answers::Kept(cache)
        } else {
            Answers::FetchedAndKept(cache)
        }))
    }

    /// The way to one service.
    pub(in crate::cli) fn to(&self, address: &Address) -> Result<Connection, Failure> {
        Connection::open(address, self.0.clone(), Limits::default()).map_err(failure)
    }
}

/// `sillmark/services` in the user's cache folder, by the XDG Base Directory Specification or
/// by what the system calls it.
fn own_folder() -> Option<PathBuf> {
    let folder = |name| env::var_os(name).map(PathBuf::from);
    let absolute = |path: &PathBuf| path.is_absolute();
    let base = folder("XDG_CACHE_HOME")
        .filter(absolute)
        .or_else(|| folder("LOCALAPPDATA").filter(absolute))
        .or_else(|| Some(folder("HOME").filter(absolute)?.join(".cache")))?;
    Some(base.join("sillmark").join("services"))
}

/// Whose fault it is that a service gives no answer.
pub(in crate::cli) fn failure(error: ServiceError) -> Failure {
    match error {
        ServiceError::Broken { .. }
        | ServiceError::Busy { .. }
        | ServiceError::Spent { .. }
        | ServiceError::CannotKeep { .. }
        | ServiceError::Client(_) => Failure::other(error),
        _ => Failure::input(error),
    }
}
