//! How services are asked.

use std::path::PathBuf;

use clap::Args;

#[derive(Args, Clone, Debug, Default)]
pub(crate) struct ServiceOptions {
    /// Folder in which answers of services are kept. Without it they are kept in
    /// sillmark/services in the user's cache folder.
    #[arg(long, value_name = "FOLDER", help_heading = "Services")]
    pub(crate) cache: Option<PathBuf>,

    /// Ask no service: read what is kept alone.
    #[arg(long, help_heading = "Services")]
    pub(crate) offline: bool,
}
