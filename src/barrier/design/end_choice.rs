//! Which end posts a barrier has, and how they meet its planks.

use super::ends::Ends;
use super::task::BarrierTask;
use crate::barrier::{Kit, MountChoice, MountNeeds, Post, PostFit, choose_mount};
use crate::quantity::Length;
use crate::site::Mount;

/// How the ends meet the wall, and the post that layout and loads are worked out with.
pub(super) struct EndChoice<'a> {
    /// `None` until somebody has measured on site.
    pub(super) ends: Option<Ends>,
    /// What the choice of the mount came to; `None` for a run, which has none.
    pub(super) mount: Option<MountChoice>,
    /// The post; that of the wider mount where the mount is not known. `None` where the kit
    /// has none that could stand there.
    pub(super) post: Option<&'a Post>,
    pub(super) fit: PostFit,
}

impl<'a> EndChoice<'a> {
    pub(super) fn of(task: &BarrierTask, kit: &'a Kit) -> Self {
        if task.run.corners() > 0 {
            let post = kit.posts.inside.as_ref();
            return Self {
                ends: Some(Ends::AgainstWall),
                mount: None,
                post,
                fit: fit(post, Mount::Inside),
            };
        }
        let (inside, outside) = (kit.posts.inside.as_ref(), kit.posts.outside.as_ref());
        let mount = choose_mount(
            task.place,
            MountNeeds {
                reveal: inside.map(|post| post.least_room(Mount::Inside)),
                face: outside.map(|post| post.least_room(Mount::Outside)),
            },
        );
        let chosen = match (&mount, task.place.asked) {
            (MountChoice::Fits(fits), _) => *fits,
            (_, Some(asked)) => asked,
            // On the face planks are longer than in the reveal.
            (MountChoice::MeasureOnSite { missing }, None)
                if missing.iter().all(|(field, _)| *field == "reveal") =>
            {
                Mount::Inside
            }
            _ if outside.is_some() => Mount::Outside,
            _ => Mount::Inside,
        };
        let post = match chosen {
            Mount::Inside => inside,
            Mount::Outside => outside,
        };
        Self {
            ends: match mount {
                MountChoice::Fits(fits) => Some(Ends::Mounted(fits)),
                MountChoice::MeasureOnSite { .. } | MountChoice::Nothing { .. } => None,
            },
            mount: Some(mount),
            post,
            fit: fit(post, chosen),
        }
    }
}

/// How an end post meets the planks: in the reveal it takes a part of the opening's width, on
/// the face it does not.
fn fit(post: Option<&Post>, mount: Mount) -> PostFit {
    post.map_or_else(PostFit::default, |post| PostFit {
        taken: match mount {
            Mount::Inside => post.width,
            Mount::Outside => Length::default(),
        },
        engagement: post.engagement(),
    })
}
