//! The demonstration scenario, whole.

use std::path::Path;

use insta::assert_snapshot;
use serde_json::Value;

use super::scratch::Scratch;

/// The scenario's files in a folder of their own.
fn alder_lock() -> Scratch {
    let scratch = Scratch::new();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/alder-lock");
    for name in ["site.toml", "zones.geojson", "terrain.tif"] {
        std::fs::copy(folder.join(name), scratch.path(name)).unwrap();
    }
    scratch
}

const RUN: [&str; 6] = [
    "site",
    "site.toml",
    "--zones",
    "zones.geojson",
    "--dem",
    "terrain.tif",
];

#[test]
fn in_feet() {
    assert_snapshot!(alder_lock().answer(&RUN), @r#"
    Alder Lock Mill: of 10 openings, 5 need a barrier, 2 need a licensed engineer, 2 are unresolved,
    1 needs none by this map and rule.

     Flood zone    AE                          flood_zones, feature ALDER_2
     Flood level   614.00 ft NAVD88 ± 0.58 ft  1 % annual chance, level of the zone
     Design level  615.00 ft NAVD88            flood level + 1.00 ft, rule us-nfip-floodproofing
     Ground        611.93 ft NAVD88            terrain.tif

     Opening         Verdict        Width       Sill    Water  Protect to  Barrier  Planks
     front door      protect      36.0 in  612.90 ft  1.10 ft     2.10 ft  2.50 ft       5
     yard door       protect      64.0 in  613.23 ft  0.77 ft     1.77 ft  2.00 ft       4
     goods bay       protect     168.0 in  612.60 ft  1.40 ft     2.40 ft  2.50 ft       5
     lock steps      protect     204.0 in  612.70 ft  1.30 ft     2.30 ft  2.50 ft       5
     wheel house     protect     186.0 in  612.00 ft  2.00 ft     3.00 ft  3.00 ft       6
     cart shed       engineer    108.0 in  612.50 ft  1.50 ft     2.50 ft  2.50 ft       5
     coal hatch      engineer     30.0 in  610.40 ft  3.60 ft     4.60 ft  5.00 ft      10
     hoist door      above        47.2 in  619.00 ft  0.00 ft     0.00 ft  0.00 ft       0
     boiler vent     unresolved   14.0 in          ?        ?           ?        ?       ?
     gatehouse door  unresolved   32.0 in  620.60 ft        ?           ?        ?       ?

    Why
    - front door: the sill lies 2.10 ft below the design level
      5 planks of 35.0 in, one span, end posts in the reveal
      nearest to its limit: the lowest plank in bending, 5 % of what is allowed
      heaviest piece 7.9 lb, one person; leaks about 3.60 gal/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - yard door: the sill lies 1.77 ft below the design level
      4 planks of at most 67.0 in, one span, the mount still to be measured
      nearest to its limit: how far the lowest plank bends, 18 % of what is allowed
      heaviest piece 15.1 lb, one person; leaks about 4.43 gal/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - goods bay: the sill lies 2.40 ft below the design level
      10 planks of 84.8 in, 2 spans, end posts on the face of the wall
      1 intermediate post (without it, planks would bend too far)
      nearest to its limit: the intermediate post in bending, 63 % of what is allowed
      heaviest piece 19.1 lb, one person; leaks about 9.40 gal/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - lock steps: the sill lies 2.30 ft below the design level
      5 planks of 106.5 in and 10 planks of 46.8 in, 3 spans, end posts with their backs to the wall
      2 corner posts
      nearest to its limit: how far the lowest plank of leg 2 bends, 85 % of what is allowed
      heaviest piece 24.0 lb, one person; leaks about 10.8 gal/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - wheel house: the sill lies 3.00 ft below the design level
      12 planks of 91.8 in, 2 spans, end posts in the reveal
      1 intermediate post (without it, planks would break in bending and bend too far), braced on
      the dry side
      nearest to its limit: how far the lowest plank bends, 65 % of what is allowed
      heaviest piece 20.6 lb, one person; leaks about 10.7 gal/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - cart shed: 2.50 ft of water above the sill is more than the 2.00 ft that the wall (unsupported
      panel) takes without a licensed design; the sill lies 2.50 ft below the design level
      5 planks of at most 111.0 in, one span, the mount still to be measured
      nearest to its limit: how far the lowest plank bends, 95 % of what is allowed
      heaviest piece 25.0 lb, one person; leaks about 7.00 gal/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - coal hatch: 4.60 ft of water above the sill is more than the 3.00 ft that the wall
      (unreinforced masonry) takes without a licensed design; the sill lies 1.60 ft below the lowest
      ground near it: soil and groundwater press as well; a barrier of 5.00 ft is higher than the
      4.00 ft that the kit's maker allows; the sill lies 4.60 ft below the design level
      10 planks of at most 33.0 in, one span, the mount still to be measured
      nearest to its limit: the lowest plank in bending, 8 % of what is allowed
      heaviest piece 9.7 lb, one person; how much water gets through the seals is not known
      chance that the assessed flood passes its top: less than 0.1 %
    - hoist door: the sill lies 4.00 ft above the design level
    - boiler vent: unresolved, because the sill has not been measured
    - gatehouse door: unresolved, because zone "D" says that the flood hazard is not known there;
      that is not the same as dry
      where this opening stands:
         Flood zone   D                 flood_zones, feature ALDER_6
         Flood level  not known         no source has a level
         Ground       626.77 ft NAVD88  terrain.tif

    Behind the barriers
    - a pump has to carry at least 7.38 gal/min, 1.5 times the 4.92 gal/min that get in; not in it:
      the water through the seals
    - without a pump the water inside reaches the stated depth after 7 h 36 min or sooner
    - fitting takes 1 h 14 min, done 16 h 46 min before the water

    Still to settle
    - front door, lock steps: state what the anchors of the end posts ([jamb]) are set in and how
      they are fixed: until then only their load is known, not what they hold
    - every barrier: have the kit's maker state how its planks, lighter than the water that they
      displace, are held down
    - every barrier: have the planks checked by an engineer: local buckling of the walls,
      lateral-torsional buckling and shear buckling of the webs
    - every barrier: have the end posts checked by an engineer: bending between fixings and the lips
      of the pocket
    - yard door, cart shed, coal hatch: measure the reveal (a post needs 3.0 in) or the face (a post
      needs 4.0 in): that decides the mount and the length of the planks
    - goods bay, wheel house: have the intermediate posts checked by an engineer: local buckling
      of the walls; lateral-torsional buckling; shear buckling of the webs; the base plate and its
      joint with the post, and the lips of the pocket
    - lock steps: have the corner posts checked by an engineer: bending about a diagonal; local
      buckling of the walls; lateral-torsional buckling; shear buckling of the webs; the base plate
      and its joint with the post, and the lips of the pocket
    - wheel house: state what the anchors of the braces ([floor]) and the end posts ([jamb]) are set
      in and how they are fixed: until then only their load is known, not what they hold
    - coal hatch: have the kit's maker state the leakage at 4.60 ft of water: the stated one is
      for 3.00 ft
    - coal hatch: state what the loads are still without: saturated soil (no soil is stated)
    - state the part of the rain that runs off ([inside] runoff): until then all of it is taken to
      run to the pump
    - have the pump chosen by its maker's curve, for the height and the pipes that it works against

    Know before you act
    - The ± of the flood level is two standard deviations of rounding, mapping and measurement; it
      and the chance over the top do not cover the flood study itself, which can be wrong by more
    - Heights, pieces and strengths are those of the invented demonstration kit; give the real one
      with --kit
    - The checks hold still water and, where stated, flow, waves, soil and debris; ice is in none of
      them. The force and moment at the sill, in the trail and the JSON, are of still water alone
    - Barriers across openings are for floods of short duration: walls, floors and drains let water
      in with time
    - A barrier keeps the water off the floor, not from under it: saturated ground lifts a floor
      slab, and a tight building can float. A licensed engineer has to check floor and building
      against it (at the lowest sill, 4.60 ft below the design level: 287.0 psf)
    - A sill or threshold that was not surveyed to the stated datum can be wrong by more than the
      freeboard; have a licensed surveyor measure it before anything is cut
    - A flood map shows one computed flood, not the next one: higher water is possible in any year
    - Local code, the authority and a licensed engineer decide; this is a screening, not a design
    "#);
}

#[test]
fn in_metres() {
    assert_snapshot!(alder_lock().answer(&[&RUN[..], &["--units", "si"]].concat()), @r#"
    Alder Lock Mill: of 10 openings, 5 need a barrier, 2 need a licensed engineer, 2 are unresolved,
    1 needs none by this map and rule.

     Flood zone    AE                          flood_zones, feature ALDER_2
     Flood level   187.147 m NAVD88 ± 0.176 m  1 % annual chance, level of the zone
     Design level  187.452 m NAVD88            flood level + 0.305 m, rule us-nfip-floodproofing
     Ground        186.515 m NAVD88            terrain.tif

     Opening         Verdict       Width       Sill    Water  Protect to  Barrier  Planks
     front door      protect     0.914 m  186.812 m  0.335 m     0.640 m  0.762 m       5
     yard door       protect     1.626 m  186.914 m  0.234 m     0.538 m  0.610 m       4
     goods bay       protect     4.267 m  186.720 m  0.427 m     0.732 m  0.762 m       5
     lock steps      protect     5.182 m  186.751 m  0.396 m     0.701 m  0.762 m       5
     wheel house     protect     4.724 m  186.538 m  0.610 m     0.914 m  0.914 m       6
     cart shed       engineer    2.743 m  186.690 m  0.457 m     0.762 m  0.762 m       5
     coal hatch      engineer    0.762 m  186.050 m  1.097 m     1.402 m  1.524 m      10
     hoist door      above       1.200 m  188.671 m  0.000 m     0.000 m  0.000 m       0
     boiler vent     unresolved  0.356 m          ?        ?           ?        ?       ?
     gatehouse door  unresolved  0.813 m  189.159 m        ?           ?        ?       ?

    Why
    - front door: the sill lies 0.640 m below the design level
      5 planks of 0.889 m, one span, end posts in the reveal
      nearest to its limit: the lowest plank in bending, 5 % of what is allowed
      heaviest piece 3.6 kg, one person; leaks about 13.6 L/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - yard door: the sill lies 0.538 m below the design level
      4 planks of at most 1.702 m, one span, the mount still to be measured
      nearest to its limit: how far the lowest plank bends, 18 % of what is allowed
      heaviest piece 6.8 kg, one person; leaks about 16.8 L/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - goods bay: the sill lies 0.732 m below the design level
      10 planks of 2.153 m, 2 spans, end posts on the face of the wall
      1 intermediate post (without it, planks would bend too far)
      nearest to its limit: the intermediate post in bending, 63 % of what is allowed
      heaviest piece 8.6 kg, one person; leaks about 35.6 L/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - lock steps: the sill lies 0.701 m below the design level
      5 planks of 2.705 m and 10 planks of 1.187 m, 3 spans, end posts with their backs to the wall
      2 corner posts
      nearest to its limit: how far the lowest plank of leg 2 bends, 85 % of what is allowed
      heaviest piece 10.9 kg, one person; leaks about 40.9 L/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - wheel house: the sill lies 0.914 m below the design level
      12 planks of 2.330 m, 2 spans, end posts in the reveal
      1 intermediate post (without it, planks would break in bending and bend too far), braced on
      the dry side
      nearest to its limit: how far the lowest plank bends, 65 % of what is allowed
      heaviest piece 9.4 kg, one person; leaks about 40.7 L/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - cart shed: 0.762 m of water above the sill is more than the 0.610 m that the wall (unsupported
      panel) takes without a licensed design; the sill lies 0.762 m below the design level
      5 planks of at most 2.819 m, one span, the mount still to be measured
      nearest to its limit: how far the lowest plank bends, 95 % of what is allowed
      heaviest piece 11.3 kg, one person; leaks about 26.5 L/h through the seals
      chance that the assessed flood passes its top: less than 0.1 %
    - coal hatch: 1.402 m of water above the sill is more than the 0.914 m that the wall
      (unreinforced masonry) takes without a licensed design; the sill lies 0.488 m below the lowest
      ground near it: soil and groundwater press as well; a barrier of 1.524 m is higher than the
      1.219 m that the kit's maker allows; the sill lies 1.402 m below the design level
      10 planks of at most 0.838 m, one span, the mount still to be measured
      nearest to its limit: the lowest plank in bending, 8 % of what is allowed
      heaviest piece 4.4 kg, one person; how much water gets through the seals is not known
      chance that the assessed flood passes its top: less than 0.1 %
    - hoist door: the sill lies 1.219 m above the design level
    - boiler vent: unresolved, because the sill has not been measured
    - gatehouse door: unresolved, because zone "D" says that the flood hazard is not known there;
      that is not the same as dry
      where this opening stands:
         Flood zone   D                 flood_zones, feature ALDER_6
         Flood level  not known         no source has a level
         Ground       191.040 m NAVD88  terrain.tif

    Behind the barriers
    - a pump has to carry at least 0.466 L/s, 1.5 times the 0.311 L/s that get in; not in it: the
      water through the seals
    - without a pump the water inside reaches the stated depth after 7 h 36 min or sooner
    - fitting takes 1 h 14 min, done 16 h 46 min before the water

    Still to settle
    - front door, lock steps: state what the anchors of the end posts ([jamb]) are set in and how
      they are fixed: until then only their load is known, not what they hold
    - every barrier: have the kit's maker state how its planks, lighter than the water that they
      displace, are held down
    - every barrier: have the planks checked by an engineer: local buckling of the walls,
      lateral-torsional buckling and shear buckling of the webs
    - every barrier: have the end posts checked by an engineer: bending between fixings and the lips
      of the pocket
    - yard door, cart shed, coal hatch: measure the reveal (a post needs 0.076 m) or the face (a
      post needs 0.102 m): that decides the mount and the length of the planks
    - goods bay, wheel house: have the intermediate posts checked by an engineer: local buckling
      of the walls; lateral-torsional buckling; shear buckling of the webs; the base plate and its
      joint with the post, and the lips of the pocket
    - lock steps: have the corner posts checked by an engineer: bending about a diagonal; local
      buckling of the walls; lateral-torsional buckling; shear buckling of the webs; the base plate
      and its joint with the post, and the lips of the pocket
    - wheel house: state what the anchors of the braces ([floor]) and the end posts ([jamb]) are set
      in and how they are fixed: until then only their load is known, not what they hold
    - coal hatch: have the kit's maker state the leakage at 1.402 m of water: the stated one is
      for 0.914 m
    - coal hatch: state what the loads are still without: saturated soil (no soil is stated)
    - state the part of the rain that runs off ([inside] runoff): until then all of it is taken to
      run to the pump
    - have the pump chosen by its maker's curve, for the height and the pipes that it works against

    Know before you act
    - The ± of the flood level is two standard deviations of rounding, mapping and measurement; it
      and the chance over the top do not cover the flood study itself, which can be wrong by more
    - Heights, pieces and strengths are those of the invented demonstration kit; give the real one
      with --kit
    - The checks hold still water and, where stated, flow, waves, soil and debris; ice is in none of
      them. The force and moment at the sill, in the trail and the JSON, are of still water alone
    - Barriers across openings are for floods of short duration: walls, floors and drains let water
      in with time
    - A barrier keeps the water off the floor, not from under it: saturated ground lifts a floor
      slab, and a tight building can float. A licensed engineer has to check floor and building
      against it (at the lowest sill, 1.402 m below the design level: 13.74 kPa)
    - A sill or threshold that was not surveyed to the stated datum can be wrong by more than the
      freeboard; have a licensed surveyor measure it before anything is cut
    - A flood map shows one computed flood, not the next one: higher water is possible in any year
    - Local code, the authority and a licensed engineer decide; this is a screening, not a design
    "#);
}

#[test]
fn with_its_trail() {
    let text = alder_lock().answer(&[&RUN[..], &["--trail"]].concat());
    let (_, trail) = text.split_once("How each figure came about\n").unwrap();
    let of_the_site_and_first_door: Vec<_> = trail
        .lines()
        .take_while(|line| !line.contains("\"yard door\""))
        .collect();
    assert_snapshot!(of_the_site_and_first_door.join("\n"), @r#"
    - flood zone: AE, the polygon that holds the place [flood_zones, feature ALDER_2]
    - ground: 611.93 ft NAVD88, bilinear between the four nearest cell centres of the terrain
      [terrain.tif]
    - lowest ground near the building: 612.00 ft NAVD88, lowest adjacent grade as stated [site file]
    - highest ground near the building: 613.62 ft NAVD88, highest of 379 points of the terrain
      within 33 ft [terrain.tif]
    - flood level, 1 % annual chance: 614.00 ft NAVD88, level of the zone: level of zone AE; a
      printed level lies within half a unit of its last digit (FEMA course IS-273, step 5); standard
      deviation of that: unit / √12 [flood_zones, feature ALDER_2]
    - standard deviation of the flood level: 0.29 ft, level of zone AE; a printed level lies within
      half a unit of its last digit (FEMA course IS-273, step 5); standard deviation of that: unit
      / √12
    - flood level, other source: 613.93 ft NAVD88, edge of the zone on the terrain: ground along the
      edge of the zone, 63 samples within 110 m (360 ft), the zone moved by 0.0 m to lie best on the
      terrain; standard deviation from their spread; not used, a source with more authority is there
      [edge of zone AE (flood_zones, feature ALDER_2) on terrain.tif; FEMA 265, pages V-3 to V-5]
    - freeboard: 1.00 ft, rule us-nfip-floodproofing: NFIP floodproofing with full rating credit
      [FEMA glossary, floodproofing certificate: full credit at base flood elevation + 1 ft]
    - design level: 615.00 ft NAVD88, flood level + 1.00 ft [rule us-nfip-floodproofing]
    - sill at "front door": 612.90 ft NAVD88, no sill is stated for the opening: the building's
      threshold [site.toml, line 5]
    - depth at "front door": 1.10 ft, flood level − sill, not less than nothing
    - protection height at "front door": 2.10 ft, design level − sill, not less than nothing
    - planks at "front door": 5, whole planks that reach the protection height [Demonstration kit,
      6 in planks (invented)]
    - barrier height at "front door": 2.50 ft, planks × cover height of one plank [invented for the
      demonstration scenario (invented)]
    - pressure at the sill at "front door", water at the design level: 131.0 psf, γ·h, still fresh
      water [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt]
    - force at "front door", water at the design level: 137.6 lb/ft, γ·h²/2, still fresh water [FEMA
      P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt]
    - moment about the sill at "front door", water at the design level: 96.3 ft-lb/ft, γ·h³/6, still
      fresh water [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt]
    - pressure at the sill at "front door", water at the top of the barrier: 156.0 psf, γ·h, still
      fresh water [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt]
    - force at "front door", water at the top of the barrier: 195.0 lb/ft, γ·h²/2, still fresh water
      [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0 pcf salt]
    - moment about the sill at "front door", water at the top of the barrier: 162.5 ft-lb/ft,
      γ·h³/6, still fresh water [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh,
      64.0 pcf salt]
    - standard deviation of the sill at "front door": 0.07 ft, surveyed sill: levelling or satellite
      survey tied to a bench mark; the rounding of the written height comes on top [the class of
      work behind an elevation certificate (common practice, no source)]
    - chance that the assessed event passes the top at "front door": less than 0.1 %, normal
      distribution about the flood level with the standard deviations of level and sill; not the
      flood study itself
    - verdict at "front door": protect, the worst that the opening's reasons ask for
      [data/limits.toml]
    "#);
}

/// The figures of the JSON, without its sentences.
fn figures(result: &Value) -> String {
    let mut result = result.clone();
    for name in ["cautions", "trail", "software"] {
        result.as_object_mut().unwrap().remove(name);
    }
    serde_json::to_string_pretty(&result).unwrap()
}

#[test]
fn as_json() {
    let result = alder_lock().json(&RUN);
    assert_snapshot!("figures", figures(&result));
}

#[test]
fn a_stated_sill_points_to_its_own_line() {
    let result = alder_lock().json(&RUN);
    let reference = |quantity: &str| {
        let steps = result["trail"].as_array().unwrap();
        let step = steps.iter().find(|step| step["quantity"] == quantity);
        step.unwrap()["reference"].as_str().unwrap().to_owned()
    };
    let line = |text: &str| {
        let site = alder_lock().read("site.toml");
        let line = site
            .lines()
            .position(|line| line.starts_with(text))
            .unwrap();
        format!("site.toml, line {}", line + 1)
    };
    assert_eq!(
        reference("sill at \"cart shed\""),
        line("sill = \"612.5 ft")
    );
    assert_eq!(
        reference("sill at \"yard door\""),
        line("sill_above_threshold")
    );
    assert_eq!(reference("sill at \"front door\""), line("threshold"));
}
