//! What is refused of loads, rooms, people and openings.

use sillmark::site::{Conditions, Site};

/// Each of the lines, written below `head`, gives this message.
pub(super) fn refused(head: &str, cases: &[(&str, &str)]) {
    for (lines, expected) in cases {
        let text = format!("{head}\n{lines}\n");
        let error = Conditions::from_toml("yard.toml", &text)
            .unwrap_err()
            .to_string();
        assert_eq!(error, format!("yard.toml, {expected}"), "{lines}");
    }
}

#[test]
fn loads_that_cannot_be() {
    refused(
        "[loads]",
        &[
            (
                "risk_category = 2",
                "line 2: loads.risk_category \"2\": it is not one of the choices; accepted: I, II, III, IV",
            ),
            (
                "debris = \"some\"",
                "line 2: loads.debris \"some\": it is not one of the choices; accepted: none, normal, special, extreme",
            ),
            (
                "extra_depth = 1",
                "line 2: loads.extra_depth \"1\": it has no unit; accepted: a length with its unit, such as \"36 in\", \"3 ft 4 1/2 in\" or \"0.91 m\"",
            ),
            (
                "extra_depth = \"12 ft\"",
                "line 2: loads.extra_depth \"12 ft\": no rule adds that much to the depth for the load alone; accepted: a depth that is added for the load only, from 0 ft to 9.8 ft (3 m), such as \"1 ft\"",
            ),
            (
                "deflection = \"120\"",
                "line 2: loads.deflection \"120\": it is not a part of the span between 1/10000 and 1/10; accepted: a part of the span, such as \"1/120\" or \"L/120\"",
            ),
            (
                "deflection = \"L/5\"",
                "line 2: loads.deflection \"L/5\": it is not a part of the span between 1/10000 and 1/10; accepted: a part of the span, such as \"1/120\" or \"L/120\"",
            ),
            (
                "combination = \"\"",
                "line 2: loads.combination \"\": it is blank; accepted: a text",
            ),
            (
                "combination = [1.6]",
                "line 2: loads.combination \"[1.6]\": it is not a single value; accepted: the id of a set of load factors, or [loads.combination] with name, source and strength of your own",
            ),
            (
                "\n[loads.combination]\nname = \"Town\"\nsource = \"ordinance 7\"",
                "line 3: combination.strength: it is missing; accepted: a load factor from 0.1 to 10, such as 1.6",
            ),
            (
                "\n[loads.combination]\nname = \"Town\"\nsource = \"ordinance 7\"\nstrength = 16",
                "line 6: combination.strength \"16\": no load factor is that small or that large; accepted: a load factor from 0.1 to 10, such as 1.6",
            ),
            (
                "debris_weight = \"1000 lb\"",
                "line 2: loads.debris_weight: there is no such field here; accepted: risk_category, debris, extra_depth, deflection, combination",
            ),
        ],
    );
}

#[test]
fn rooms_that_cannot_be() {
    refused(
        "[inside]",
        &[
            (
                "floor_area = \"600 ft\"",
                "line 2: inside.floor_area \"600 ft\": \"ft\" is not a unit of area (those are in2, ft2, mm2, cm2, m2); accepted: an area with its unit, such as \"2.16 in2\", \"1400 mm2\" or \"600 ft2\"",
            ),
            (
                "floor_area = \"0 ft2\"",
                "line 2: inside.floor_area \"0 ft2\": no floor, roof or yard is that small or that large; accepted: an area from 1.1 ft2 (0.1 m2) to 10000000 ft2 (929000 m2), such as \"600 ft2\" or \"55 m2\"",
            ),
            (
                "greatest_depth = \"0 in\"",
                "line 2: inside.greatest_depth \"0 in\": no depth of water in a room is that small or that great; accepted: the depth of water inside that must not be passed, from 0.04 in (1 mm) to 32 ft (10 m), such as \"4 in\"",
            ),
            (
                "greatest_depth = \"100 ft\"",
                "line 2: inside.greatest_depth \"100 ft\": no depth of water in a room is that small or that great; accepted: the depth of water inside that must not be passed, from 0.04 in (1 mm) to 32 ft (10 m), such as \"4 in\"",
            ),
            (
                "rain = \"2 in\"",
                "line 2: inside.rain \"2 in\": \"in\" is not a unit of rainfall (those are in/h, mm/h); accepted: a rainfall with its unit, such as \"2 in/h\" or \"50 mm/h\"",
            ),
            (
                "rain = \"200 in/h\"",
                "line 2: inside.rain \"200 in/h\": no rain falls that hard; accepted: a rainfall with its unit, such as \"2 in/h\" or \"50 mm/h\"",
            ),
            (
                "rain_area = \"-5 m2\"",
                "line 2: inside.rain_area \"-5 m2\": it is negative; accepted: an area with its unit, such as \"2.16 in2\", \"1400 mm2\" or \"600 ft2\"",
            ),
            (
                "runoff = \"1.2\"",
                "line 2: inside.runoff \"1.2\": it is not between 0 and 1; accepted: a part between 0 and 1, such as \"0.8\", \"2/3\" or \"80%\"",
            ),
            (
                "pump_margin = 0.9",
                "line 2: inside.pump_margin \"0.9\": it is out of range; accepted: how many times the inflow the pump has to manage, a number from 1 to 10, such as 1.5",
            ),
            (
                "pump_margin = nan",
                "line 2: inside.pump_margin \"nan\": it is out of range; accepted: how many times the inflow the pump has to manage, a number from 1 to 10, such as 1.5",
            ),
            (
                "pump_margin = \"150 %\"",
                "line 2: inside.pump_margin \"150 %\": it is not a number; accepted: how many times the inflow the pump has to manage, a number from 1 to 10, such as 1.5",
            ),
            (
                "depth = \"4 in\"",
                "line 2: inside.depth: there is no such field here; accepted: floor_area, greatest_depth, rain, rain_area, runoff, pump_margin",
            ),
        ],
    );
}

#[test]
fn people_who_cannot_be() {
    refused(
        "[fitting]",
        &[
            (
                "time_a_plank = 2",
                "line 2: fitting.time_a_plank \"2\": it has no unit; accepted: a time with its unit, such as \"12 h\", \"1 h 30 min\" or \"3 days\"",
            ),
            (
                "time_a_plank = \"0 min\"",
                "line 2: fitting.time_a_plank \"0 min\": nobody fits a piece in that time; accepted: the time that one party takes for one piece, from a second to a day, such as \"2 min\"",
            ),
            (
                "time_a_post = \"2 days\"",
                "line 2: fitting.time_a_post \"2 days\": nobody fits a piece in that time; accepted: the time that one party takes for one piece, from a second to a day, such as \"2 min\"",
            ),
            (
                "parties = 0",
                "line 2: fitting.parties \"0\": it is not a number of parties; accepted: a whole number from 1 to 1000",
            ),
            (
                "parties = 1.5",
                "line 2: fitting.parties \"1.5\": it is not a number of parties; accepted: a whole number from 1 to 1000",
            ),
            (
                "lift = \"50 N\"",
                "line 2: fitting.lift \"50 N\": \"N\" is not a unit of mass (those are lb, kg, t); accepted: a mass with its unit, such as \"23 lb\" or \"10.5 kg\"",
            ),
            (
                "lift = \"500 lb\"",
                "line 2: fitting.lift \"500 lb\": it is not what one person lifts; accepted: what one person may lift, from 2.3 lb (1 kg) to 220 lb (100 kg), such as \"50 lb\" or \"25 kg\"",
            ),
            (
                "minutes_per_plank = 2",
                "line 2: fitting.minutes_per_plank: there is no such field here; accepted: time_a_plank, time_a_post, parties, lift",
            ),
        ],
    );
}

#[test]
fn openings_that_cannot_be() {
    for (lines, expected) in [
        (
            "soil = \"mud\"",
            "line 7: opening.soil \"mud\": it is not one of the choices; accepted: clean sand or gravel, sand or gravel with fines, stiff silt or clay, soft clay, clay chunks",
        ),
        (
            "gap = \"0.1 in\"",
            "line 7: opening.gap \"\\\"0.1 in\\\"\": it is not a table; accepted: { length = \"24 in\", height = \"0.1 in\" }",
        ),
        (
            "gap = { length = \"24 in\" }",
            "line 7: gap.height: it is missing; accepted: the height of the gap under the barrier, more than nothing and less than 3.9 in (10 cm), such as \"0.1 in\"",
        ),
        (
            "gap = { length = \"24 in\", height = \"0 in\" }",
            "line 7: gap.height \"0 in\": a gap has a height; accepted: the height of the gap under the barrier, more than nothing and less than 3.9 in (10 cm), such as \"0.1 in\"",
        ),
        (
            "gap = { length = \"24 in\", height = \"10 cm\" }",
            "line 7: gap.height \"10 cm\": it is no gap under a seal, but an opening; accepted: the height of the gap under the barrier, more than nothing and less than 3.9 in (10 cm), such as \"0.1 in\"",
        ),
        (
            "gap = { length = \"0 in\", height = \"1 mm\" }",
            "line 7: gap.length \"0 in\": a gap has a length; accepted: the length of the gap along the sill, such as \"24 in\"",
        ),
        (
            "gap = { length = \"37 in\", height = \"1 mm\" }",
            "line 7: gap.length \"37 in\": it is longer than the barrier; accepted: a length up to the opening's width or, of a run, the sum of its legs",
        ),
        (
            "gap = { length = \"24 in\", width = \"1 mm\" }",
            "line 7: gap.width: there is no such field here; accepted: length, height",
        ),
        (
            "floor = \"concrete\"",
            "line 7: opening.floor \"\\\"concrete\\\"\": it is not a table; accepted: [floor], of one opening [opening.floor], and its fields below it",
        ),
        (
            "[opening.floor]\nstrength = \"25 psi\"",
            "line 8: floor.strength \"25 psi\": it is of concrete, and the material is not stated; accepted: strength with material = \"concrete\"",
        ),
        (
            "[opening.jamb]\nmaterial = \"masonry\"\nstrength = \"10 MPa\"",
            "line 9: jamb.strength \"10 MPa\": masonry has no such value here: no capacity in it is calculated; accepted: strength with material = \"concrete\"",
        ),
    ] {
        let text = format!(
            "name = \"Lock\"\nlocation = {{ longitude = -74.0335, latitude = 40.74 }}\nthreshold = \"8.1 ft NAVD88\"\n[[opening]]\nid = \"door\"\nwidth = \"36 in\"\n{lines}\n"
        );
        let error = Site::from_toml("lock.toml", &text).unwrap_err().to_string();
        assert_eq!(error, format!("lock.toml, {expected}"), "{lines}");
    }
}
