//! A site stated in a line.

use insta::assert_snapshot;
use serde_json::Value;

use super::scratch::Scratch;

const QUICK: [&str; 9] = [
    "site",
    "--at",
    "-74.0,40.0",
    "--threshold",
    "8.1 ft NAVD88",
    "--opening",
    "door=36 in",
    "--zones",
    "zones.geojson",
];

#[test]
fn its_answer() {
    assert_snapshot!(Scratch::new().answer(&QUICK), @"
    Site at -74.0,40.0: of 1 opening, 1 needs a barrier.

     Flood zone    AE                        zones, feature Z1
     Flood level   9.00 ft NAVD88 ± 0.58 ft  1 % annual chance, level of the zone
     Design level  9.00 ft NAVD88            flood level + 0.00 ft, rule none
     Ground        not known                 no terrain model was given

     Opening  Verdict    Width     Sill    Water  Protect to  Barrier  Planks
     door     protect  36.0 in  8.10 ft  0.90 ft     0.90 ft  1.00 ft       2

    Why
    - door: the sill lies 0.90 ft below the design level
      2 planks of at most 39.0 in, one span, the mount still to be measured
      nearest to its limit: the lowest plank in bending, 1 % of what is allowed
      heaviest piece 8.8 lb, one person; leaks about 2.40 gal/h through the seals
      chance that the assessed flood passes its top: 36.8 %

    Behind the barriers
    - a pump has to carry 2.40 gal/h

    Still to settle
    - door: measure the reveal (a post needs 3.0 in) or the face (a post needs 4.0 in): that decides
      the mount and the length of the planks
    - door: have the kit's maker state how its planks, lighter than the water that they displace,
      are held down
    - door: have the planks checked by an engineer: local buckling of the walls, lateral-torsional
      buckling and shear buckling of the webs
    - door: have the end posts checked by an engineer: bending between fixings and the lips of the
      pocket
    - door: state what the loads are still without: breaking waves (nothing is stated about waves),
      flowing water (no velocity is stated) and debris (nothing is stated about debris)
    - state how much more than the inflow a pump should carry ([inside] pump_margin): until then
      nothing is added
    - have the pump chosen by its maker's curve, for the height and the pipes that it works against
    - state how long a plank takes to fit ([fitting] time_a_plank): until then nobody knows whether
      all is up before the water

    Know before you act
    - The ± of the flood level is two standard deviations of rounding, mapping and measurement; it
      and the chance over the top do not cover the flood study itself, which can be wrong by more
    - The ground at the place is not known, so nothing that depends on it was checked: whether a
      sill lies below ground, and how much water stands on the wall below a sill (no terrain model
      was given)
    - The use of the building is not stated; for a dwelling other rules hold than for a shop or
      a hospital
    - No freeboard is added: the design level is the bare flood level, with no margin for waves,
      debris or error of the map. Choose a rule with --rule; sillmark catalog rules lists them
    - Heights, pieces and strengths are those of the invented demonstration kit; give the real one
      with --kit
    - The checks hold still water and, where stated, flow, waves, soil and debris; ice is in none of
      them. The force and moment at the sill, in the trail and the JSON, are of still water alone
    - Barriers across openings are for floods of short duration: walls, floors and drains let water
      in with time
    - A barrier keeps the water off the floor, not from under it: saturated ground lifts a floor
      slab, and a tight building can float. A licensed engineer has to check floor and building
      against it (at the lowest sill, 0.90 ft below the design level: 56.2 psf)
    - A sill or threshold that was not surveyed to the stated datum can be wrong by more than the
      freeboard; have a licensed surveyor measure it before anything is cut
    - A flood map shows one computed flood, not the next one: higher water is possible in any year
    - Local code, the authority and a licensed engineer decide; this is a screening, not a design
    ");
}

#[test]
fn it_says_what_the_file_says() {
    let scratch = Scratch::new();
    let numbers = |mut result: Value| {
        let report = result.as_object_mut().unwrap();
        for name in ["site", "trail"] {
            report.remove(name);
        }
        result
    };
    let options = [
        "--rule",
        "us-nfip-floodproofing",
        "--occupancy",
        "commercial",
    ];
    let quick = scratch.json(&[&QUICK[..], &options].concat());
    assert_eq!(numbers(quick), numbers(scratch.site_json()));
}

#[test]
fn a_name_may_hold_an_equals_sign() {
    let scratch = Scratch::new();
    let mut arguments = QUICK;
    arguments[6] = "door = front=36 in";
    assert_eq!(
        scratch.json(&arguments)["openings"][0]["id"],
        "door = front"
    );
}
