//! Services that agencies have documented, as data.

use crate::statement::{Choice, Document, StatementError};

/// A service by its public documentation; its address has not been checked from here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KnownService {
    /// A short name.
    pub id: String,
    /// What it serves.
    pub title: String,
    /// How it is asked.
    pub kind: ServiceKind,
    /// The option that takes the address.
    pub option: String,
    /// The address; what is in braces is to be filled in.
    pub address: String,
    /// The schema that its zones are read by.
    pub schema: Option<String>,
    /// What has to be stated beside it.
    pub stated: Option<String>,
    /// The licence, as the publisher states it.
    pub licence: String,
    /// Where the address is documented.
    pub source: String,
    /// The day on which the documentation was read.
    pub dated: String,
}

/// How a service is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ServiceKind {
    /// OGC API – Features (OGC 17-069, 18-058).
    OgcFeatures,
    /// `GeoServices` REST.
    GeoServices,
    /// A cloud-optimised `GeoTIFF`, by parts.
    Cog,
}

impl Choice for ServiceKind {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("ogc-features", Self::OgcFeatures),
        ("geoservices", Self::GeoServices),
        ("cog", Self::Cog),
    ];
}

impl ServiceKind {
    /// The kind in words.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::OgcFeatures => "OGC API – Features",
            Self::GeoServices => "GeoServices REST",
            Self::Cog => "cloud-optimised GeoTIFF, read by parts",
        }
    }
}

const KNOWN: &str = include_str!("../../data/services.toml");

/// The services of `data/services.toml`.
///
/// ```
/// let services = sillmark::service::known_services()?;
/// assert!(services.iter().any(|service| service.option == "--zones"));
/// # Ok::<(), sillmark::statement::StatementError>(())
/// ```
///
/// # Errors
/// [`StatementError`] where the embedded file is damaged, which a test rules out.
pub fn known_services() -> Result<Vec<KnownService>, StatementError> {
    let document = Document::parse("data/services.toml", KNOWN)?;
    let root = document.root();
    root.allow(&["service"])?;
    let services = root.tables("service")?.into_iter().map(|table| {
        table.allow(&[
            "id", "title", "kind", "option", "address", "schema", "stated", "licence", "source",
            "dated",
        ])?;
        let text = |key, accepted: &str| {
            let stated = table.required(key, accepted)?;
            Ok::<_, StatementError>(stated.text().to_owned())
        };
        let optional = |key| {
            let stated = table.optional(key)?;
            Ok::<_, StatementError>(stated.map(|stated| stated.text().to_owned()))
        };
        Ok(KnownService {
            id: text("id", "a short name")?,
            title: text("title", "what it serves")?,
            kind: table.required("kind", "how it is asked")?.choose()?,
            option: text("option", "the option that takes the address")?,
            address: text("address", "http or https")?,
            schema: optional("schema")?,
            stated: optional("stated")?,
            licence: text("licence", "as the publisher states it")?,
            source: text("source", "where the address is documented")?,
            dated: text("dated", "the day on which that was read")?,
        })
    });
    services.collect()
}
