//! Fitting against the warning.

use proptest::prelude::*;
use sillmark::barrier::{
    Fitting, FittingError, FittingMissing, InTime, twelve_hour_citation, twelve_hours,
};
use sillmark::quantity::unit::{Time, hour, minute, second};

fn minutes(number: f64) -> Time {
    Time::new::<minute>(number)
}

/// 12 planks of 5 min and 3 posts of 10 min: two parties take 6 × 5 + 2 × 10 = 50 min.
fn fitting() -> Fitting {
    Fitting {
        planks: 12,
        time_a_plank: Some(minutes(5.0)),
        posts: 3,
        time_a_post: Some(minutes(10.0)),
        parties: 2,
        warning: Some(minutes(120.0)),
        twelve_hour_rule: false,
    }
}

#[test]
fn a_party_fits_whole_pieces() {
    assert_eq!(fitting().duration().unwrap(), minutes(50.0));
    let alone = Fitting {
        parties: 1,
        ..fitting()
    };
    assert_eq!(alone.duration().unwrap(), minutes(90.0));
    let many = Fitting {
        parties: 100,
        ..fitting()
    };
    assert_eq!(many.duration().unwrap(), minutes(15.0));
}

#[test]
fn the_warning_is_enough_or_too_short_by_so_much() {
    let spare = minutes(70.0);
    assert_eq!(fitting().in_time().unwrap(), InTime::Enough { spare });
    let late = Fitting {
        warning: Some(minutes(45.0)),
        ..fitting()
    };
    let by = minutes(5.0);
    assert_eq!(late.in_time().unwrap(), InTime::TooShort { by });
    let just = Fitting {
        warning: Some(minutes(50.0)),
        ..fitting()
    };
    let spare = minutes(0.0);
    assert_eq!(just.in_time().unwrap(), InTime::Enough { spare });
}

#[test]
fn the_twelve_hour_rule_asks_for_more_than_the_fitting() {
    let ruled = Fitting {
        twelve_hour_rule: true,
        ..fitting()
    };
    let by = Time::new::<hour>(10.0);
    assert_eq!(ruled.in_time().unwrap(), InTime::TwelveHourRule { by });
    let long = Fitting {
        warning: Some(twelve_hours()),
        ..ruled
    };
    assert!(matches!(long.in_time().unwrap(), InTime::Enough { .. }));
    // What is too short by the clock is said first.
    let short = Fitting {
        warning: Some(minutes(1.0)),
        ..ruled
    };
    assert!(matches!(short.in_time().unwrap(), InTime::TooShort { .. }));
    assert!(
        twelve_hour_citation()
            .to_string()
            .ends_with("(from memory)")
    );
}

#[test]
fn what_is_missing_is_named_and_nothing_is_assumed() {
    let cases = [
        (
            Fitting {
                time_a_plank: None,
                ..fitting()
            },
            FittingMissing::TimeAPlank,
        ),
        (
            Fitting {
                time_a_post: None,
                ..fitting()
            },
            FittingMissing::TimeAPost,
        ),
        (
            Fitting {
                parties: 0,
                ..fitting()
            },
            FittingMissing::Parties,
        ),
        (
            Fitting {
                warning: None,
                ..fitting()
            },
            FittingMissing::WarningTime,
        ),
    ];
    for (case, what) in cases {
        assert_eq!(case.in_time().unwrap(), InTime::NotStated { what });
    }
    assert_eq!(
        cases[0].0.duration().unwrap_err(),
        FittingError::NotStated(FittingMissing::TimeAPlank)
    );
}

#[test]
fn pieces_that_are_not_there_need_no_time() {
    let planks_only = Fitting {
        posts: 0,
        time_a_post: None,
        ..fitting()
    };
    assert_eq!(planks_only.duration().unwrap(), minutes(30.0));
}

proptest! {
    #[test]
    fn any_numbers(
        counts in any::<(u32, u32, u32)>(),
        times in any::<(Option<f64>, Option<f64>, Option<f64>)>(),
        twelve_hour_rule: bool,
    ) {
        let time = |seconds: Option<f64>| seconds.map(Time::new::<second>);
        let fitting = Fitting {
            planks: counts.0,
            time_a_plank: time(times.0),
            posts: counts.1,
            time_a_post: time(times.1),
            parties: counts.2,
            warning: time(times.2),
            twelve_hour_rule,
        };
        match fitting.in_time() {
            Ok(InTime::Enough { spare }) => prop_assert!(spare.value >= 0.0),
            Ok(InTime::TooShort { by } | InTime::TwelveHourRule { by }) => {
                prop_assert!(by.value > 0.0);
            }
            Ok(InTime::NotStated { .. }) => {}
            Err(error) => prop_assert!(error.to_string().contains("; accepted: ")),
        }
    }

    #[test]
    fn more_parties_are_never_slower(planks in 0_u32..200, posts in 0_u32..50, parties in 1_u32..20) {
        let with = |parties| {
            Fitting { planks, posts, parties, ..fitting() }.duration().unwrap()
        };
        prop_assert!(with(parties + 1) <= with(parties));
    }
}
