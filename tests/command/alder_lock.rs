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
    Alder Lock Mill: of 7 openings, 2 need a barrier, 2 need a licensed engineer, 2 are unresolved,
    1 needs none by this map and rule.

     Flood zone    AE                          flood_zones, feature ALDER_2
     Flood level   614.00 ft NAVD88 ± 0.58 ft  1 % annual chance, level of the zone
     Design level  615.00 ft NAVD88            flood level + 1.00 ft, rule us-nfip-floodproofing
     Ground        611.93 ft NAVD88            terrain.tif

     Opening         Verdict        Width       Sill    Water  Protect to  Barrier  Planks
     front door      protect      36.0 in  612.90 ft  1.10 ft     2.10 ft  2.50 ft       5
     yard door       protect      64.0 in  613.23 ft  0.77 ft     1.77 ft  2.00 ft       4
     cart shed       engineer    108.0 in  612.50 ft  1.50 ft     2.50 ft  2.50 ft       5
     coal hatch      engineer     30.0 in  610.40 ft  3.60 ft     4.60 ft  5.00 ft      10
     hoist door      above        47.2 in  619.00 ft  0.00 ft     0.00 ft  0.00 ft       0
     boiler vent     unresolved   14.0 in          ?        ?           ?        ?       ?
     gatehouse door  unresolved   32.0 in  620.60 ft        ?           ?        ?       ?

    Why
    - front door: the sill lies 2.10 ft below the design level
      still water at the design level: 131.0 psf at the sill, 137.6 lb/ft, 96.3 ft-lb/ft; at the top
      of the barrier: 156.0 psf at the sill, 195.0 lb/ft, 162.5 ft-lb/ft; chance that the assessed
      flood passes the top: less than 0.1 %
    - yard door: the sill lies 1.77 ft below the design level
      still water at the design level: 110.2 psf at the sill, 97.4 lb/ft, 57.3 ft-lb/ft; at the top
      of the barrier: 124.8 psf at the sill, 124.8 lb/ft, 83.2 ft-lb/ft; chance that the assessed
      flood passes the top: less than 0.1 %
    - cart shed: 2.50 ft of water above the sill is more than the 2.00 ft that the wall (unsupported
      panel) takes without a licensed design; the sill lies 2.50 ft below the design level
      still water at the design level: 156.0 psf at the sill, 195.0 lb/ft, 162.5 ft-lb/ft; at
      the top of the barrier: 156.0 psf at the sill, 195.0 lb/ft, 162.5 ft-lb/ft; chance that the
      assessed flood passes the top: less than 0.1 %
    - coal hatch: 4.60 ft of water above the sill is more than the 3.00 ft that the wall
      (unreinforced masonry) takes without a licensed design; the sill lies 1.70 ft below the lowest
      ground near it: soil and groundwater press as well; the sill lies 4.60 ft below the design
      level
      still water at the design level: 287.0 psf at the sill, 660.2 lb/ft, 1012.3 ft-lb/ft; at
      the top of the barrier: 312.0 psf at the sill, 780.0 lb/ft, 1300.0 ft-lb/ft; chance that the
      assessed flood passes the top: less than 0.1 %
    - hoist door: the sill lies 4.00 ft above the design level
    - boiler vent: unresolved, because the sill has not been measured
    - gatehouse door: unresolved, because zone "D" says that the flood hazard is not known there;
      that is not the same as dry
      where this opening stands:
         Flood zone   D                 flood_zones, feature ALDER_6
         Flood level  not known         no source has a level
         Ground       626.77 ft NAVD88  terrain.tif

    Know before you act
    - The ± of the flood level is two standard deviations of rounding, mapping and measurement; it
      and the chance over the top do not cover the flood study itself, which can be wrong by more
    - Barrier heights are for the invented demonstration kit; give the real one with --kit
    - Loads are of still water. Flow, waves, debris and ice add to them
    - Barriers across openings are for floods of short duration: walls, floors and drains let water
      in with time
    - A sill or threshold that was not surveyed to the stated datum can be wrong by more than the
      freeboard; have a licensed surveyor measure it before anything is cut
    - A flood map shows one computed flood, not the next one: higher water is possible in any year
    - Local code, the authority and a licensed engineer decide; this is a screening, not a design
    "#);
}

#[test]
fn in_metres() {
    assert_snapshot!(alder_lock().answer(&[&RUN[..], &["--units", "si"]].concat()), @r#"
    Alder Lock Mill: of 7 openings, 2 need a barrier, 2 need a licensed engineer, 2 are unresolved,
    1 needs none by this map and rule.

     Flood zone    AE                          flood_zones, feature ALDER_2
     Flood level   187.147 m NAVD88 ± 0.176 m  1 % annual chance, level of the zone
     Design level  187.452 m NAVD88            flood level + 0.305 m, rule us-nfip-floodproofing
     Ground        186.515 m NAVD88            terrain.tif

     Opening         Verdict       Width       Sill    Water  Protect to  Barrier  Planks
     front door      protect     0.914 m  186.812 m  0.335 m     0.640 m  0.762 m       5
     yard door       protect     1.626 m  186.914 m  0.234 m     0.538 m  0.610 m       4
     cart shed       engineer    2.743 m  186.690 m  0.457 m     0.762 m  0.762 m       5
     coal hatch      engineer    0.762 m  186.050 m  1.097 m     1.402 m  1.524 m      10
     hoist door      above       1.200 m  188.671 m  0.000 m     0.000 m  0.000 m       0
     boiler vent     unresolved  0.356 m          ?        ?           ?        ?       ?
     gatehouse door  unresolved  0.813 m  189.159 m        ?           ?        ?       ?

    Why
    - front door: the sill lies 0.640 m below the design level
      still water at the design level: 6.27 kPa at the sill, 2.008 kN/m, 0.428 kN·m/m; at the top
      of the barrier: 7.47 kPa at the sill, 2.846 kN/m, 0.723 kN·m/m; chance that the assessed flood
      passes the top: less than 0.1 %
    - yard door: the sill lies 0.538 m below the design level
      still water at the design level: 5.28 kPa at the sill, 1.421 kN/m, 0.255 kN·m/m; at the top
      of the barrier: 5.98 kPa at the sill, 1.821 kN/m, 0.370 kN·m/m; chance that the assessed flood
      passes the top: less than 0.1 %
    - cart shed: 0.762 m of water above the sill is more than the 0.610 m that the wall (unsupported
      panel) takes without a licensed design; the sill lies 0.762 m below the design level
      still water at the design level: 7.47 kPa at the sill, 2.846 kN/m, 0.723 kN·m/m; at the top
      of the barrier: 7.47 kPa at the sill, 2.846 kN/m, 0.723 kN·m/m; chance that the assessed flood
      passes the top: less than 0.1 %
    - coal hatch: 1.402 m of water above the sill is more than the 0.914 m that the wall
      (unreinforced masonry) takes without a licensed design; the sill lies 0.518 m below the lowest
      ground near it: soil and groundwater press as well; the sill lies 1.402 m below the design
      level
      still water at the design level: 13.74 kPa at the sill, 9.635 kN/m, 4.503 kN·m/m; at the top
      of the barrier: 14.94 kPa at the sill, 11.383 kN/m, 5.783 kN·m/m; chance that the assessed
      flood passes the top: less than 0.1 %
    - hoist door: the sill lies 1.219 m above the design level
    - boiler vent: unresolved, because the sill has not been measured
    - gatehouse door: unresolved, because zone "D" says that the flood hazard is not known there;
      that is not the same as dry
      where this opening stands:
         Flood zone   D                 flood_zones, feature ALDER_6
         Flood level  not known         no source has a level
         Ground       191.040 m NAVD88  terrain.tif

    Know before you act
    - The ± of the flood level is two standard deviations of rounding, mapping and measurement; it
      and the chance over the top do not cover the flood study itself, which can be wrong by more
    - Barrier heights are for the invented demonstration kit; give the real one with --kit
    - Loads are of still water. Flow, waves, debris and ice add to them
    - Barriers across openings are for floods of short duration: walls, floors and drains let water
      in with time
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
    - lowest ground near the building: 612.10 ft NAVD88, lowest adjacent grade as stated [site file]
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
    - planks at "front door": 5, whole planks that reach the protection height [Demonstration kit, 6
      in planks (invented)]
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
      γ·h³/6, still fresh water [FEMA P-55 (2011) vol. II, notes to Eq. 8.6: 62.4 pcf fresh, 64.0
      pcf salt]
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
