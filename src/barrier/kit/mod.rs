//! A barrier system: the dimensions, the strength and the mass of its parts.

mod base_plate;
mod brace;
mod check;
mod field;
mod plank;
mod post;
mod profile;
mod seal;
mod section;
mod section_sums;
mod wall_anchors;

pub use base_plate::{AnchorPattern, BasePlate};
pub use brace::Brace;
pub use plank::Plank;
pub use post::{Post, Posts};
pub use seal::Seal;
pub use section::{Section, SectionClass, StatedBending};
pub use section_sums::{ProfileError, Rectangle, SectionSums, section_sums};
pub use wall_anchors::WallAnchors;

use super::Material;
use crate::quantity::{Length, parse_length};
use crate::statement::{Citation, Confidence, Document, StatementError, Table};

/// One barrier system: horizontal planks, one on the other, between posts.
#[derive(Clone, Debug, PartialEq)]
pub struct Kit {
    /// Short name without spaces.
    pub id: String,
    /// Name for people.
    pub name: String,
    /// Where the dimensions come from.
    pub citation: Citation,
    /// The plank.
    pub plank: Plank,
    /// The posts that hold the planks.
    pub posts: Posts,
    /// A strut from a post to the ground on the dry side.
    pub brace: Option<Brace>,
    /// How tight the seals are; `None` where nobody says.
    pub seal: Option<Seal>,
    /// The greatest height that the maker builds, if there is one.
    pub greatest_height: Option<Length>,
}

/// The kit that is used where the user names none.
const DEMONSTRATION: &str = include_str!("../../../data/kits/demonstration.toml");

/// The same idea in metric sections and European alloys.
const DEMONSTRATION_SI: &str = include_str!("../../../data/kits/demonstration-si.toml");

impl Kit {
    /// The invented kit of the demonstration.
    ///
    /// # Errors
    /// [`StatementError`] if our own data file is broken; a test reads it.
    pub fn demonstration() -> Result<Self, StatementError> {
        Self::from_toml("data/kits/demonstration.toml", DEMONSTRATION)
    }

    /// The kits that ship with the project, all of them invented.
    ///
    /// # Errors
    /// [`StatementError`] if one of our own data files is broken; a test reads them.
    pub fn shipped() -> Result<Vec<Self>, StatementError> {
        Ok(vec![
            Self::demonstration()?,
            Self::from_toml("data/kits/demonstration-si.toml", DEMONSTRATION_SI)?,
        ])
    }

    /// Whether its dimensions are made up, so that nobody can buy it.
    #[must_use]
    pub fn is_invented(&self) -> bool {
        self.citation.confidence == Confidence::Invented
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
        root.allow(&[
            "id",
            "name",
            "source",
            "confidence",
            "greatest_height",
            "material",
            "plank",
            "inside_post",
            "outside_post",
            "intermediate_post",
            "corner_post",
            "brace",
            "seal",
        ])?;
        let own = Material::read_own(&root)?;
        let plank = root
            .table("plank")?
            .ok_or_else(|| root.missing("plank", "[plank] with cover_height"))?;
        let plank = Plank::read(&plank, &own)?;
        Ok(Self {
            id: root.required("id", "a short name")?.name()?,
            name: root.required("name", "a name for people")?.name()?,
            citation: Citation::read(&root)?,
            posts: Posts::read(&root, &own, plank.thickness)?,
            brace: root
                .table("brace")?
                .map(|brace| Brace::read(&brace))
                .transpose()?,
            seal: root
                .table("seal")?
                .map(|seal| Seal::read(&seal))
                .transpose()?,
            greatest_height: greatest_height(&root, plank.cover)?,
            plank,
        })
    }
}

/// The maker's greatest height, which is at least one plank's.
fn greatest_height(root: &Table<'_, '_>, cover: Length) -> Result<Option<Length>, StatementError> {
    let Some(stated) = root.optional("greatest_height")? else {
        return Ok(None);
    };
    let height = stated.read(parse_length)?;
    if height < cover {
        return Err(stated.refuse("it is below one plank", "at least plank.cover_height"));
    }
    Ok(Some(height))
}
