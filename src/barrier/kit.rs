//! A barrier system: the dimensions of its parts.

use crate::quantity::parse_length;
use crate::quantity::unit::{Length, centimeter, meter};
use crate::statement::{Citation, Document, StatementError};

/// One barrier system.
#[derive(Clone, Debug, PartialEq)]
pub struct Kit {
    /// Short name without spaces.
    pub id: String,
    /// Name for people.
    pub name: String,
    /// Height that one plank adds to the barrier.
    pub plank_cover: Length,
    /// Where the dimensions come from.
    pub citation: Citation,
}

/// The kit that is used where the user names none.
const DEMONSTRATION: &str = include_str!("../../data/kits/demonstration.toml");

impl Kit {
    /// The invented kit of the demonstration.
    ///
    /// # Errors
    /// [`StatementError`] if our own data file is broken; a test reads it.
    pub fn demonstration() -> Result<Self, StatementError> {
        Self::from_toml("data/kits/demonstration.toml", DEMONSTRATION)
    }

    /// Reads a kit file; `file` is the name that messages use.
    ///
    /// # Errors
    /// [`StatementError`] naming file, line and field of what is missing or impossible.
    ///
    /// ```
    /// use sillmark::barrier::Kit;
    /// let text = "id = \"k\"\nname = \"K\"\nsource = \"maker's sheet 3\"\nconfidence = \"stated\"\n[plank]\ncover_height = \"9 m\"";
    /// let error = Kit::from_toml("k.toml", text).unwrap_err();
    /// assert!(error.to_string().starts_with("k.toml, line 6: plank.cover_height \"9 m\": no plank is that high"));
    /// ```
    pub fn from_toml(file: &str, text: &str) -> Result<Self, StatementError> {
        let document = Document::parse(file, text)?;
        let root = document.root();
        root.allow(&["id", "name", "source", "confidence", "plank"])?;
        let plank = root
            .table("plank")?
            .ok_or_else(|| root.missing("plank", "[plank] with cover_height"))?;
        plank.allow(&["cover_height"])?;
        let cover = plank.required(
            "cover_height",
            "the height one plank adds, such as \"6 in\"",
        )?;
        let plank_cover = cover.read(parse_length)?;
        if !(Length::new::<centimeter>(1.0)..=Length::new::<meter>(1.0)).contains(&plank_cover) {
            return Err(cover.refuse(
                "no plank is that high or that low",
                "a length from \"1 cm\" to \"1 m\"",
            ));
        }
        Ok(Self {
            id: root.required("id", "a short name")?.name()?,
            name: root.required("name", "a name for people")?.name()?,
            plank_cover,
            citation: Citation::read(&root)?,
        })
    }
}
