//! The posts that hold the planks.

use super::base_plate::{AnchorPattern, BasePlate};
use super::section::{Section, SectionTable};
use super::wall_anchors::WallAnchors;
use super::{check, field};
use crate::barrier::{Material, Upright};
use crate::quantity::unit::LinearMassDensity;
use crate::quantity::{Length, parse_length, parse_mass_per_length};
use crate::site::Mount;
use crate::statement::{StatementError, Table};

/// The posts of a kit, by where they stand; `None` for one that it does not have.
#[derive(Clone, Debug, PartialEq)]
pub struct Posts {
    /// Fixed to the reveal, within the opening.
    pub inside: Option<Post>,
    /// Fixed to the face of the wall, beside the opening.
    pub outside: Option<Post>,
    /// Stands free between two planks.
    pub intermediate: Option<Post>,
    /// Stands free where the barrier turns.
    pub corner: Option<Post>,
}

/// One kind of post: upright, with a pocket that the ends of the planks stand in.
#[derive(Clone, Debug, PartialEq)]
pub struct Post {
    /// The section, about the axis along the wall that the water bends it about.
    pub section: Section,
    /// What it is made of; its softened strength where its foot is welded.
    pub material: Material,
    /// Its extent along the wall.
    pub width: Length,
    /// Its extent in the direction of the water.
    pub depth: Length,
    /// How far a pocket reaches into the post: from its mouth to its bottom.
    pub pocket: Length,
    /// Gap that is left between the plank's end and the bottom of the pocket.
    pub clearance: Length,
    /// Mass of each length of it.
    pub mass_per_length: LinearMassDensity,
    /// The plate at its foot; `None` where it has none.
    pub base_plate: Option<BasePlate>,
    /// The anchors of its base plate.
    pub anchors: Option<AnchorPattern>,
    /// The anchors that hold it to a wall along its height, of a post that stands at one.
    pub wall_anchors: Option<WallAnchors>,
    /// The room it needs: an inside post, the least depth of the reveal; an outside post, the
    /// least width of sound wall face beside the opening.
    pub needs: Option<Length>,
}

impl Posts {
    /// Reads them; they hold planks of a thickness.
    pub(super) fn read(
        root: &Table<'_, '_>,
        own: &[Material],
        plank_thickness: Length,
    ) -> Result<Self, StatementError> {
        let post = |key| {
            root.table(key)?
                .map(|table| Post::read(&table, own, plank_thickness))
                .transpose()
        };
        let posts = Self {
            inside: post("inside_post")?,
            outside: post("outside_post")?,
            intermediate: post("intermediate_post")?,
            corner: post("corner_post")?,
        };
        if posts.inside.is_none() && posts.outside.is_none() {
            return Err(root.missing(
                "inside_post",
                "[inside_post] or [outside_post]: without either no plank can end at a wall",
            ));
        }
        Ok(posts)
    }

    /// The post that stands free in a place, if the kit has it.
    #[must_use]
    pub const fn standing(&self, place: Upright) -> Option<&Post> {
        match place {
            Upright::Intermediate => self.intermediate.as_ref(),
            Upright::Corner => self.corner.as_ref(),
        }
    }

    /// The posts that the kit has, each with the name of its table.
    pub fn all(&self) -> impl Iterator<Item = (&'static str, &Post)> {
        [
            ("inside_post", &self.inside),
            ("outside_post", &self.outside),
            ("intermediate_post", &self.intermediate),
            ("corner_post", &self.corner),
        ]
        .into_iter()
        .filter_map(|(name, post)| post.as_ref().map(|post| (name, post)))
    }
}

impl Post {
    fn read(
        table: &Table<'_, '_>,
        own: &[Material],
        plank_thickness: Length,
    ) -> Result<Self, StatementError> {
        let mut known = vec![
            "width",
            "depth",
            "pocket",
            "clearance",
            "mass_per_length",
            "needs",
            "base_plate",
            "anchors",
            "wall_anchors",
        ];
        known.extend(SectionTable::KEYS);
        table.allow(&known)?;
        let base_plate = table
            .table("base_plate")?
            .map(|plate| BasePlate::read(&plate))
            .transpose()?;
        if base_plate.is_some() && table.whole("welded").is_none() {
            return Err(table.missing(
                "welded",
                "true if the post is welded to its base plate, which softens aluminium, or false",
            ));
        }
        let depth = field::dimension(
            table,
            "depth",
            "the post's extent in the direction of the water",
        )?;
        let parts = SectionTable::read(table, own, depth)?;
        let post = Self {
            section: parts.section,
            material: parts.material,
            width: field::dimension(table, "width", "the post's extent along the wall")?,
            depth,
            pocket: field::dimension(table, "pocket", "how far a pocket reaches into the post")?,
            clearance: field::length(
                table,
                "clearance",
                "the gap between the plank's end and the bottom of the pocket",
            )?,
            mass_per_length: field::positive(
                table,
                "mass_per_length",
                "a mass per length such as \"8 lb/ft\" or \"12 kg/m\"",
                parse_mass_per_length,
            )?,
            base_plate,
            anchors: table
                .table("anchors")?
                .map(|anchors| AnchorPattern::read(&anchors))
                .transpose()?,
            wall_anchors: table
                .table("wall_anchors")?
                .map(|anchors| WallAnchors::read(&anchors))
                .transpose()?,
            needs: field::optional_positive(
                table,
                "needs",
                "the room it needs, a length such as \"3 in\"",
                parse_length,
            )?,
        };
        check::post(&post, plank_thickness).map_err(|fault| fault.at(table))?;
        Ok(post)
    }

    /// The room that it needs: for an inside mount of the reveal's depth, for an outside mount
    /// of the wall's face. Where the kit does not say, what the post itself takes.
    #[must_use]
    pub fn least_room(&self, mount: Mount) -> Length {
        self.needs.unwrap_or(match mount {
            Mount::Inside => self.depth,
            Mount::Outside => self.width,
        })
    }

    /// How far the plank reaches into the pocket: what holds its end.
    #[must_use]
    pub fn engagement(&self) -> Length {
        self.pocket - self.clearance
    }
}
