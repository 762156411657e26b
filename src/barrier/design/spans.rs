//! Into how many spans a leg is divided, and how its planks fare.

use super::DesignRules;
use super::water::CaseLoad;
use crate::barrier::{
    Basis, Check, DesignError, Kit, Leg, PlankLoad, PlankStack, PostFit, divide, governing,
    plank_checks,
};
use crate::quantity::Length;

/// A leg with the checks of its planks.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedLeg {
    /// How it is divided.
    pub leg: Leg,
    /// The governing check of each kind in each load case.
    pub checks: Vec<Check>,
    /// Why it has more than one span; empty where it has one.
    pub divided_because: Vec<&'static str>,
}

/// What every leg of a barrier has in common.
pub(super) struct Planks<'a> {
    pub(super) kit: &'a Kit,
    pub(super) stack: PlankStack,
    pub(super) loads: &'a [CaseLoad],
    pub(super) basis: Basis,
    pub(super) rules: &'a DesignRules,
}

/// More spans than this are no barrier of planks.
const MOST_SPANS: u32 = 200;

impl Planks<'_> {
    /// Divides a leg into the fewest spans, `least` or more, whose planks pass every check
    /// and are no longer than the kit's longest; one more where practice asks for a post.
    ///
    /// Where no number of spans will do, the last that leaves clear width is given with its
    /// failing checks; `None` where the posts do not even leave clear width for one span.
    pub(super) fn plan(
        &self,
        length: Length,
        ends: [PostFit; 2],
        between: Option<PostFit>,
        least: u32,
    ) -> Result<Option<PlannedLeg>, DesignError> {
        let mut reasons: Vec<&'static str> = Vec::new();
        let mut last = None;
        for spans in least.max(1)..=MOST_SPANS {
            let Some(leg) = divide(length, ends, between, spans) else {
                break;
            };
            let checks = self.checks(leg.longest_bearing())?;
            let wanting = self.wanting(&leg, &checks, spans);
            let planned = PlannedLeg {
                leg,
                checks,
                divided_because: reasons.clone(),
            };
            if wanting.is_empty() {
                return Ok(Some(planned));
            }
            for reason in wanting {
                if !reasons.contains(&reason) {
                    reasons.push(reason);
                }
            }
            last = Some(planned);
        }
        Ok(last)
    }

    /// Why so many spans are not enough.
    fn wanting(&self, leg: &Leg, checks: &[Check], spans: u32) -> Vec<&'static str> {
        let mut wanting = Vec::new();
        let fails = |what| {
            checks
                .iter()
                .any(|check| check.what == what && !check.holds())
        };
        for (what, reason) in [
            ("bending", "planks would break in bending"),
            ("shear", "planks would fail in shear"),
            ("deflection", "planks would bend too far"),
        ] {
            if fails(what) {
                wanting.push(reason);
            }
        }
        if leg.longest_cut() > self.kit.plank.longest {
            wanting.push("no plank of the kit is that long");
        }
        let practice = &self.rules.practice;
        if spans == 1 && practice.asks_for_a_post(leg.length, self.stack.height) {
            wanting.push("common practice asks for a post in a barrier so wide and so high");
        }
        wanting
    }

    /// The governing bending, shear and deflection among the planks, in each case.
    ///
    /// All planks are alike, so those under the greatest load govern: that of the water, and
    /// that of the water on a plank that debris can strike.
    pub(super) fn checks(&self, bearing: Length) -> Result<Vec<Check>, DesignError> {
        let mut found = Vec::new();
        for load in self.loads {
            let mut by_plank = Vec::new();
            for (number, strip) in self.heaviest(load) {
                by_plank.push(plank_checks(
                    &self.kit.plank,
                    &format!("plank {number}"),
                    bearing,
                    strip,
                    &self.basis,
                    load.case,
                )?);
            }
            for kind in 0..3 {
                let kind = by_plank.iter().map(|checks| &checks[kind]);
                found.extend(governing(kind).cloned());
            }
        }
        Ok(found)
    }

    /// The plank under the greatest water and the one under the greatest water among those
    /// that debris strikes, each with its number from the sill up.
    fn heaviest(&self, load: &CaseLoad) -> Vec<(u32, PlankLoad)> {
        let cover = self.kit.plank.cover;
        let strips: Vec<(u32, PlankLoad)> = (0..self.stack.count)
            .map(|below| {
                let from = cover * f64::from(below);
                (below + 1, load.on_plank(from, from + cover))
            })
            .collect();
        let heavier = |one: &&(u32, PlankLoad), other: &&(u32, PlankLoad)| {
            // Of two alike the lower one is named.
            let by_water = one.1.water.value.total_cmp(&other.1.water.value);
            by_water.then(other.0.cmp(&one.0))
        };
        let heaviest = strips.iter().max_by(heavier);
        let struck = strips.iter().filter(|(_, strip)| strip.blow.is_some());
        let heaviest_struck = struck.max_by(heavier);
        let mut chosen: Vec<(u32, PlankLoad)> = heaviest.into_iter().copied().collect();
        chosen.extend(heaviest_struck.filter(|found| heaviest != Some(*found)));
        chosen
    }
}
