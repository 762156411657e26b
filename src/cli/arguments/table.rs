//! How a table is read.

use clap::Args;

#[derive(Args, Debug)]
#[allow(clippy::doc_markdown)] // the comments are the help, which would show the backticks
pub(crate) struct TableOptions {
    /// Format of the table where its name does not tell: csv, gpkg, geojson, fgb, parquet.
    #[arg(long, value_name = "FORMAT", help_heading = "Table")]
    pub(crate) from: Option<String>,

    /// Layer of a file with several.
    #[arg(long, value_name = "NAME", help_heading = "Table")]
    pub(crate) layer: Option<String>,

    /// A column of yours that is called otherwise: threshold=first_floor. Repeat for more.
    #[arg(long, value_name = "OURS=THEIRS", help_heading = "Table")]
    pub(crate) map: Vec<String>,

    /// Names of the columns of a CSV without a header line: id,longitude,latitude,threshold.
    #[arg(
        long,
        value_name = "NAMES",
        value_delimiter = ',',
        help_heading = "Table"
    )]
    pub(crate) columns: Vec<String>,

    /// Coordinate system of the table, such as EPSG:26915. Without it longitude and latitude
    /// are WGS 84.
    #[arg(long, value_name = "CRS", help_heading = "Table")]
    pub(crate) crs: Option<String>,
}
