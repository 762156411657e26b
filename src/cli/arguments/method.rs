//! How buildings are assessed.

use std::path::PathBuf;

use clap::Args;

#[derive(Args, Debug)]
pub(crate) struct MethodOptions {
    /// Flood to assess, by its annual chance.
    #[arg(
        long,
        value_name = "CHANCE",
        default_value = "1%",
        help_heading = "Method"
    )]
    pub(crate) chance: String,

    /// Years over which chances are shown, where levels of several floods are known.
    #[arg(long, value_name = "NUMBER", default_value_t = 30, value_parser = clap::value_parser!(u32).range(1..=1000), help_heading = "Method")]
    pub(crate) years: u32,

    /// Freeboard rule, by its id in `sillmark catalog rules`. Without it the rule of the site
    /// file counts, and without that one `none`.
    #[arg(long, value_name = "ID", help_heading = "Method")]
    pub(crate) rule: Option<String>,

    /// Kit file (TOML) with the dimensions of the barrier system. Without it the invented
    /// demonstration kit is used, and the answer says so.
    #[arg(long, value_name = "PATH", help_heading = "Method")]
    pub(crate) kit: Option<PathBuf>,
}
