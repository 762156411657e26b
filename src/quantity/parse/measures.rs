//! The measures of structures and of water: their units and the bounds beyond which a number
//! is a slip of the unit.
//!
//! Customary units are built from the exact foot, pound and US gallon (231 in³, NIST SP 811,
//! appendix B.8). The bounds are wide on purpose, common practice without a source: they catch
//! a wrong unit, they do not judge a design.

use super::measure::{Measure, Unit};
use crate::quantity::size::{
    FOOT, GALLON, HOUR, INCH, LITRE, MINUTE, POUND_FORCE, POUND_MASS, POUND_PER_SQUARE_INCH,
};

pub(super) const FORCE: Measure = Measure {
    noun: "a force",
    of: "force",
    accepted: "a force with its unit, such as \"1200 lb\", \"500 N\" or \"5 kN\"",
    units: &[
        (&["lb", "lbf", "lbs"], POUND_FORCE),
        (&["kip", "kips"], 1000.0 * POUND_FORCE),
        (&["N"], 1.0),
        (&["kN"], 1e3),
    ],
    least: 0.0,
    greatest: 1e8,
    absurd: "no part of a barrier carries that much",
};

pub(super) const MOMENT: Measure = Measure {
    noun: "a moment",
    of: "moment",
    accepted: "a moment with its unit, such as \"1500 ft-lb\" or \"2 kN·m\"",
    units: &[
        (&["ft-lb", "lb-ft"], POUND_FORCE * FOOT),
        (&["in-lb", "lb-in"], POUND_FORCE * INCH),
        (&["ft-kip", "kip-ft"], 1000.0 * POUND_FORCE * FOOT),
        (&["in-kip", "kip-in"], 1000.0 * POUND_FORCE * INCH),
        (&["N·m"], 1.0),
        (&["kN·m"], 1e3),
    ],
    least: 0.0,
    greatest: 1e8,
    absurd: "no part of a barrier carries that much",
};

pub(super) const LINE_LOAD: Measure = Measure {
    noun: "a force on each unit of width",
    of: "force per width",
    accepted: "a force per width with its unit, such as \"281 lb/ft\" or \"4.1 kN/m\"",
    units: &[
        (&["lb/ft", "plf", "lbf/ft"], POUND_FORCE / FOOT),
        (&["lb/in", "lbf/in"], POUND_FORCE / INCH),
        (&["kip/ft", "klf"], 1000.0 * POUND_FORCE / FOOT),
        (&["N/m"], 1.0),
        (&["kN/m"], 1e3),
    ],
    least: 0.0,
    greatest: 1e8,
    absurd: "no flood presses that hard",
};

pub(super) const MOMENT_PER_LENGTH: Measure = Measure {
    noun: "a moment on each unit of width",
    of: "moment per width",
    accepted: "a moment per width with its unit, such as \"281 ft-lb/ft\" or \"1.25 kN·m/m\"",
    units: &[
        (&["ft-lb/ft", "lb-ft/ft"], POUND_FORCE),
        (&["in-lb/in", "lb-in/in"], POUND_FORCE),
        (&["in-lb/ft", "lb-in/ft"], POUND_FORCE * INCH / FOOT),
        (&["ft-kip/ft", "kip-ft/ft"], 1000.0 * POUND_FORCE),
        (&["N·m/m"], 1.0),
        (&["kN·m/m"], 1e3),
    ],
    least: 0.0,
    greatest: 1e8,
    absurd: "no flood bends that hard",
};

const STRESS_UNITS: &[Unit] = &[
    (&["psi", "lb/in2"], POUND_PER_SQUARE_INCH),
    (&["ksi", "kip/in2"], 1000.0 * POUND_PER_SQUARE_INCH),
    (&["psf", "lb/ft2"], POUND_FORCE / (FOOT * FOOT)),
    (&["Pa", "N/m2"], 1.0),
    (&["kPa", "kN/m2"], 1e3),
    (&["MPa", "N/mm2"], 1e6),
    (&["GPa", "kN/mm2"], 1e9),
];

pub(super) const STRESS: Measure = Measure {
    noun: "a strength or a modulus",
    of: "stress",
    accepted: "a stress with its unit, such as \"4000 psi\", \"25 ksi\" or \"170 MPa\"",
    units: STRESS_UNITS,
    least: 0.0,
    // Diamond, the stiffest, has some 1,100 GPa.
    greatest: 2e12,
    absurd: "no material is that strong or that stiff",
};

pub(super) const PRESSURE: Measure = Measure {
    noun: "a pressure",
    of: "pressure",
    accepted: "a pressure with its unit, such as \"187 psf\", \"1.3 psi\" or \"9 kPa\"",
    units: STRESS_UNITS,
    least: 0.0,
    // A hundred metres of water.
    greatest: 1e6,
    absurd: "no flood presses that hard",
};

pub(super) const AREA: Measure = Measure {
    noun: "an area",
    of: "area",
    accepted: "an area with its unit, such as \"2.16 in2\", \"1400 mm2\" or \"600 ft2\"",
    units: &[
        (&["in2", "sq in"], INCH * INCH),
        (&["ft2", "sq ft"], FOOT * FOOT),
        (&["mm2"], 1e-6),
        (&["cm2"], 1e-4),
        (&["m2"], 1.0),
    ],
    least: 0.0,
    greatest: 1e6,
    absurd: "no part of a building is that large",
};

const VOLUME_UNITS: &[Unit] = &[
    (&["in3"], INCH * INCH * INCH),
    (&["ft3"], FOOT * FOOT * FOOT),
    (&["mm3"], 1e-9),
    (&["cm3"], 1e-6),
    (&["m3"], 1.0),
    (&["L", "litre", "litres", "liter", "liters"], LITRE),
    (&["gal", "gallon", "gallons"], GALLON),
];

pub(super) const VOLUME: Measure = Measure {
    noun: "a volume",
    of: "volume",
    accepted: "a volume with its unit, such as \"40 gal\", \"150 L\" or \"2 m3\"",
    units: VOLUME_UNITS,
    least: 0.0,
    greatest: 1e7,
    absurd: "no building holds that much",
};

pub(super) const SECTION_MODULUS: Measure = Measure {
    noun: "a section modulus",
    of: "section modulus",
    accepted: "a section modulus with its unit, such as \"1.49 in3\" or \"24.4 cm3\"",
    // Without the litre and the gallon.
    units: VOLUME_UNITS.split_at(5).0,
    least: 0.0,
    greatest: 1.0,
    absurd: "no section is that large",
};

pub(super) const SECOND_MOMENT: Measure = Measure {
    noun: "a second moment of area",
    of: "second moment of area",
    accepted: "a second moment of area with its unit, such as \"1.49 in4\" or \"61.9 cm4\"",
    units: &[
        (&["in4"], INCH * INCH * INCH * INCH),
        (&["ft4"], FOOT * FOOT * FOOT * FOOT),
        (&["mm4"], 1e-12),
        (&["cm4"], 1e-8),
        (&["m4"], 1.0),
    ],
    least: 0.0,
    greatest: 1.0,
    absurd: "no section is that large",
};

pub(super) const MASS: Measure = Measure {
    noun: "a mass",
    of: "mass",
    accepted: "a mass with its unit, such as \"23 lb\" or \"10.5 kg\"",
    units: &[
        (&["lb", "lbs"], POUND_MASS),
        (&["kg"], 1.0),
        (&["t"], 1000.0),
    ],
    least: 0.0,
    greatest: 1e7,
    absurd: "nothing that floods move is that heavy",
};

pub(super) const MASS_PER_LENGTH: Measure = Measure {
    noun: "a mass per length",
    of: "mass per length",
    accepted: "a mass per length with its unit, such as \"2.7 lb/ft\" or \"4 kg/m\"",
    units: &[
        (&["lb/ft"], POUND_MASS / FOOT),
        (&["lb/in"], POUND_MASS / INCH),
        (&["kg/m"], 1.0),
    ],
    least: 0.0,
    greatest: 1e4,
    absurd: "nobody could set it up",
};

pub(super) const DENSITY: Measure = Measure {
    noun: "a density",
    of: "density",
    accepted: "a density with its unit, such as \"2700 kg/m3\" or \"0.098 lb/in3\"",
    units: &[
        (&["kg/m3"], 1.0),
        (&["lb/in3"], POUND_MASS / (INCH * INCH * INCH)),
        (&["lb/ft3"], POUND_MASS / (FOOT * FOOT * FOOT)),
    ],
    least: 1.0,
    // Osmium, the densest, has some 22,600 kg/m³.
    greatest: 23_000.0,
    absurd: "no solid is that light or that heavy",
};

pub(super) const FLOW: Measure = Measure {
    noun: "a flow of water",
    of: "flow",
    accepted: "a flow with its unit, such as \"50 gal/min\" or \"3 L/s\"",
    units: &[
        (&["gal/min", "gpm"], GALLON / MINUTE),
        (&["gal/h", "gph"], GALLON / HOUR),
        (&["ft3/s", "cfs"], FOOT * FOOT * FOOT),
        (&["L/s"], LITRE),
        (&["L/min"], LITRE / MINUTE),
        (&["L/h"], LITRE / HOUR),
        (&["m3/h"], 1.0 / HOUR),
        (&["m3/s"], 1.0),
    ],
    least: 0.0,
    greatest: 1000.0,
    absurd: "that is a river, not a leak or a pump",
};

pub(super) const FLOW_PER_LENGTH: Measure = Measure {
    noun: "a leakage per length of seal",
    of: "flow per length",
    accepted: "a flow per length with its unit, such as \"0.5 gal/h/ft\" or \"6 L/h/m\"",
    units: &[
        (&["gal/h/ft"], GALLON / HOUR / FOOT),
        (&["gal/min/ft", "gpm/ft"], GALLON / MINUTE / FOOT),
        (&["L/h/m"], LITRE / HOUR),
        (&["L/min/m"], LITRE / MINUTE),
        (&["L/s/m"], LITRE),
        (&["m2/s", "m3/s/m"], 1.0),
    ],
    least: 0.0,
    greatest: 1.0,
    absurd: "that is no seal any more",
};

pub(super) const RAIN: Measure = Measure {
    noun: "a rainfall",
    of: "rainfall",
    accepted: "a rainfall with its unit, such as \"2 in/h\" or \"50 mm/h\"",
    units: &[
        (&["in/h", "in/hr"], INCH / HOUR),
        (&["mm/h", "mm/hr"], 1e-3 / HOUR),
    ],
    least: 0.0,
    // The hardest rains on record fell at a few hundred millimetres an hour (from memory).
    greatest: 2.0 / HOUR,
    absurd: "no rain falls that hard",
};
