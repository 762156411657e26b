//! Into how many spans a leg is divided, and how its planks fare.

use super::DesignRules;
use super::water::CaseLoad;
use crate::barrier::limit::exceeds;
use crate::barrier::{
    Basis, Check, DesignError, Kit, Leg, LoadCase, PlankLoad, PlankStack, PostFit, divide,
    governing, plank_checks,
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
    /// Those that govern, in every case.
    pub(super) heaviest: Vec<HeaviestPlank>,
    /// The longest bearing length that the planks pass over, up to the kit's longest piece.
    pub(super) reach: Option<Length>,
}

/// A plank that no other of its stack is loaded more than.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct HeaviestPlank {
    case: LoadCase,
    /// From the sill up, the lowest being 1.
    number: u32,
    pub(super) load: PlankLoad,
}

/// More spans than this are no barrier of planks.
const MOST_SPANS: u32 = 200;

impl<'a> Planks<'a> {
    pub(super) fn of(
        kit: &'a Kit,
        stack: PlankStack,
        loads: &'a [CaseLoad],
        rules: &'a DesignRules,
    ) -> Result<Self, DesignError> {
        let plank = &kit.plank;
        let heaviest = loads
            .iter()
            .flat_map(|load| heaviest_planks(load, plank.cover, stack.count));
        let mut planks = Self {
            kit,
            stack,
            loads,
            basis: Basis::of(
                &plank.material,
                &rules.combination,
                rules.zone,
                &rules.deflection,
            )?,
            rules,
            heaviest: heaviest.collect(),
            reach: None,
        };
        planks.reach = planks.longest_bearing(plank.longest)?;
        Ok(planks)
    }

    /// Divides a leg into the fewest spans, `least` or more, whose planks pass every check
    /// and are no longer than the kit's longest; one more where practice asks for a post.
    ///
    /// Where no number of spans will do, the fewest are taken of which no plank is too long,
    /// with their failing checks. `None` where the posts leave no clear width.
    pub(super) fn plan(
        &self,
        length: Length,
        ends: [PostFit; 2],
        between: Option<PostFit>,
        least: u32,
    ) -> Result<Option<PlannedLeg>, DesignError> {
        let Some(whole) = divide(length, ends, between, 1) else {
            return Ok(None);
        };
        let mut reasons = self.wanting(&whole)?;
        let spans = |spans| divide(length, ends, between, spans);
        let divided = || (2..=MOST_SPANS).map_while(spans);
        let fits = |leg: &Leg| {
            let reaches = self
                .reach
                .is_some_and(|reach| leg.longest_bearing() <= reach);
            reaches && !self.is_too_long(leg)
        };
        let planned = if reasons.is_empty() {
            whole
        } else {
            let holding = self.reach.and_then(|_| divided().find(fits));
            holding
                .or_else(|| {
                    (1..=MOST_SPANS)
                        .map_while(spans)
                        .find(|leg| !self.is_too_long(leg))
                })
                .or_else(|| divided().last())
                .unwrap_or(whole)
        };
        let leg = if planned.spans.len() >= least as usize {
            planned
        } else {
            let Some(closer) = spans(least) else {
                return Ok(None);
            };
            reasons.push("posts farther apart would not hold");
            closer
        };
        if leg.spans.len() == 1 {
            reasons.clear();
        }
        Ok(Some(PlannedLeg {
            checks: self.checks(leg.longest_bearing())?,
            leg,
            divided_because: reasons,
        }))
    }

    /// Whether the kit has no plank that is long enough.
    pub(super) fn is_too_long(&self, leg: &Leg) -> bool {
        exceeds(leg.longest_cut(), self.kit.plank.longest)
    }

    /// Whether common practice asks for a post in a leg.
    pub(super) fn practice_asks(&self, leg: Length) -> bool {
        let practice = &self.rules.practice;
        practice.asks_for_a_post(leg, self.stack.height)
    }

    /// Why one span is not enough.
    fn wanting(&self, whole: &Leg) -> Result<Vec<&'static str>, DesignError> {
        let checks = self.checks(whole.longest_bearing())?;
        let mut wanting = Vec::new();
        for (what, reason) in [
            ("bending", "planks would break in bending"),
            ("shear", "planks would fail in shear"),
            ("deflection", "planks would bend too far"),
        ] {
            let mut of_kind = checks.iter().filter(|check| check.what == what);
            if of_kind.any(|check| !check.holds()) {
                wanting.push(reason);
            }
        }
        if self.is_too_long(whole) {
            wanting.push("no plank of the kit is that long");
        }
        if self.practice_asks(whole.length) {
            wanting.push("common practice asks for a post in a barrier so wide and so high");
        }
        Ok(wanting)
    }

    /// The governing bending, shear and deflection among the planks, in each case.
    pub(super) fn checks(&self, bearing: Length) -> Result<Vec<Check>, DesignError> {
        let mut found = Vec::new();
        for load in self.loads {
            let mut by_plank = Vec::new();
            for plank in self.heaviest.iter().filter(|plank| plank.case == load.case) {
                by_plank.push(plank_checks(
                    &self.kit.plank,
                    &format!("plank {}", plank.number),
                    bearing,
                    plank.load,
                    &self.basis,
                    plank.case,
                )?);
            }
            for kind in 0..3 {
                let kind = by_plank.iter().map(|checks| &checks[kind]);
                found.extend(governing(kind).cloned());
            }
        }
        Ok(found)
    }
}

/// The plank under the greatest water, and the one under the greatest water among those that
/// debris strikes. All planks are alike, so that these govern.
pub(super) fn heaviest_planks(load: &CaseLoad, cover: Length, count: u32) -> Vec<HeaviestPlank> {
    let strips: Vec<HeaviestPlank> = (0..count)
        .map(|below| {
            let from = cover * f64::from(below);
            HeaviestPlank {
                case: load.case,
                number: below + 1,
                load: load.on_plank(from, from + cover),
            }
        })
        .collect();
    let heavier = |one: &&HeaviestPlank, other: &&HeaviestPlank| {
        // Of two alike the lower one is named.
        let by_water = one.load.water.value.total_cmp(&other.load.water.value);
        by_water.then(other.number.cmp(&one.number))
    };
    let heaviest = strips.iter().max_by(heavier);
    let struck = strips.iter().filter(|plank| plank.load.blow.is_some());
    let heaviest_struck = struck.max_by(heavier);
    let mut chosen: Vec<HeaviestPlank> = heaviest.into_iter().copied().collect();
    chosen.extend(heaviest_struck.filter(|found| heaviest != Some(*found)));
    chosen
}
