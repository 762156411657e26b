//! Vertical datums: the surfaces that heights are counted from.

use std::fmt;
use std::str::FromStr;

/// The surface that an elevation is counted from.
///
/// Two elevations can be compared only where both name the same surface. The tidal
/// datums ([`MeanSeaLevel`](Self::MeanSeaLevel) to [`LocalTidal`](Self::LocalTidal)) mean
/// another surface at each tide gauge, so they can be read from a file and printed, but
/// never compared: see [`VerticalDatum::is_one_surface`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum VerticalDatum {
    /// North American Vertical Datum of 1988.
    Navd88,
    /// National Geodetic Vertical Datum of 1929 (United States).
    Ngvd29,
    /// Ordnance Datum Newlyn (Great Britain).
    Odn,
    /// Normaal Amsterdams Peil (Netherlands).
    Nap,
    /// Nivellement général de la France, IGN69.
    NgfIgn69,
    /// Deutsches Haupthöhennetz 2016.
    Dhhn2016,
    /// Earth Gravitational Model 1996 geoid.
    Egm96,
    /// Earth Gravitational Model 2008 geoid.
    Egm2008,
    /// Puerto Rico Vertical Datum of 2002.
    Prvd02,
    /// Virgin Islands Vertical Datum of 2009.
    Vivd09,
    /// Northern Marianas Vertical Datum of 2003.
    Nmvd03,
    /// Guam Vertical Datum of 2004.
    Guvd04,
    /// American Samoa Vertical Datum of 2002.
    Asvd02,
    /// Mean sea level of an unnamed gauge and epoch.
    MeanSeaLevel,
    /// Mean lower low water of an unnamed gauge.
    MeanLowerLowWater,
    /// Mean low water of an unnamed gauge.
    MeanLowWater,
    /// A tidal datum that the source calls local and does not name.
    LocalTidal,
    /// Any other vertical coordinate system of the EPSG Dataset.
    Epsg(u32),
}

use VerticalDatum as Datum;

/// One line of the table of named datums.
struct Named {
    datum: Datum,
    /// The code printed behind an elevation.
    code: &'static str,
    name: &'static str,
    /// EPSG codes of its vertical coordinate systems, the one in metres first.
    epsg: &'static [u32],
    /// Other spellings, upper case, letters and digits only.
    spellings: &'static [&'static str],
}

/// Codes and names from the EPSG Dataset; spellings as met in flood layers.
const NAMED: [Named; 17] = [
    named(
        Datum::Navd88,
        "NAVD88",
        "North American Vertical Datum of 1988",
        &[5703, 8228, 6360],
        &[
            "NAVD1988",
            "NORTHAMERICANVERTICALDATUMOF1988",
            "NORTHAMERICANVERTICALDATUM1988",
        ],
    ),
    named(
        Datum::Ngvd29,
        "NGVD29",
        "National Geodetic Vertical Datum of 1929",
        &[7968, 7967, 5702],
        &[
            "NGVD1929",
            "NATIONALGEODETICVERTICALDATUMOF1929",
            "NATIONALGEODETICVERTICALDATUM1929",
        ],
    ),
    named(
        Datum::Odn,
        "ODN",
        "Ordnance Datum Newlyn",
        &[5701],
        &["ORDNANCEDATUMNEWLYN", "AOD", "MAOD"],
    ),
    named(
        Datum::Nap,
        "NAP",
        "Normaal Amsterdams Peil",
        &[5709],
        &["NORMAALAMSTERDAMSPEIL"],
    ),
    named(
        Datum::NgfIgn69,
        "NGF-IGN69",
        "Nivellement General de la France - IGN69",
        &[5720],
        &["NGF", "IGN69", "NIVELLEMENTGENERALDELAFRANCEIGN69"],
    ),
    named(
        Datum::Dhhn2016,
        "DHHN2016",
        "Deutsches Haupthoehennetz 2016",
        &[7837],
        &["DEUTSCHESHAUPTHOEHENNETZ2016", "NHN2016"],
    ),
    named(
        Datum::Egm96,
        "EGM96",
        "EGM96 geoid",
        &[5773],
        &["EGM96GEOID", "EGM1996"],
    ),
    named(
        Datum::Egm2008,
        "EGM2008",
        "EGM2008 geoid",
        &[3855],
        &["EGM08", "EGM2008GEOID"],
    ),
    named(
        Datum::Prvd02,
        "PRVD02",
        "Puerto Rico Vertical Datum of 2002",
        &[6641],
        &["PUERTORICOVERTICALDATUMOF2002"],
    ),
    named(
        Datum::Vivd09,
        "VIVD09",
        "Virgin Islands Vertical Datum of 2009",
        &[6642],
        &["VIRGINISLANDSVERTICALDATUMOF2009"],
    ),
    named(
        Datum::Nmvd03,
        "NMVD03",
        "Northern Marianas Vertical Datum of 2003",
        &[6640],
        &["NORTHERNMARIANASVERTICALDATUMOF2003"],
    ),
    named(
        Datum::Guvd04,
        "GUVD04",
        "Guam Vertical Datum of 2004",
        &[6644],
        &["GUVD03", "GUAMVERTICALDATUMOF2004"],
    ),
    named(
        Datum::Asvd02,
        "ASVD02",
        "American Samoa Vertical Datum of 2002",
        &[6643],
        &["AMERICANSAMOAVERTICALDATUMOF2002"],
    ),
    named(
        Datum::MeanSeaLevel,
        "MSL",
        "mean sea level (gauge not named)",
        &[5714],
        &["MEANSEALEVEL"],
    ),
    named(
        Datum::MeanLowerLowWater,
        "MLLW",
        "mean lower low water (gauge not named)",
        &[],
        &["MEANLOWERLOWWATER"],
    ),
    named(
        Datum::MeanLowWater,
        "MLW",
        "mean low water (gauge not named)",
        &[],
        &["MEANLOWWATER"],
    ),
    named(
        Datum::LocalTidal,
        "LOCAL TIDAL DATUM",
        "a local tidal datum",
        &[],
        &["LTD"],
    ),
];

const fn named(
    datum: Datum,
    code: &'static str,
    name: &'static str,
    epsg: &'static [u32],
    spellings: &'static [&'static str],
) -> Named {
    Named {
        datum,
        code,
        name,
        epsg,
        spellings,
    }
}

/// A name that is not a vertical datum known here.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "{text:?} is not a known vertical datum; accepted: {}",
    VerticalDatum::ACCEPTED
)]
pub struct UnknownDatum {
    /// The name as it was written.
    pub text: String,
}

impl VerticalDatum {
    /// The spellings to offer in a message.
    pub const ACCEPTED: &'static str = "NAVD88, NGVD29, ODN, NAP, NGF-IGN69, DHHN2016, EGM96, EGM2008 or an EPSG code such as EPSG:5703";

    /// The datum of a vertical coordinate system of the EPSG Dataset, whatever its unit:
    /// 5703 (metres), 8228 (feet) and 6360 (US survey feet) are all NAVD88.
    #[must_use]
    pub fn from_epsg(code: u32) -> Self {
        NAMED
            .iter()
            .find(|named| named.epsg.contains(&code))
            .map_or(Self::Epsg(code), |named| named.datum)
    }

    /// The EPSG code of this datum's vertical coordinate system, in metres where the
    /// dataset has one.
    #[must_use]
    pub fn epsg(self) -> Option<u32> {
        match self {
            Self::Epsg(code) => Some(code),
            _ => self.named().and_then(|named| named.epsg.first().copied()),
        }
    }

    /// Whether the datum means one surface wherever it is named. The tidal datums do not:
    /// each gauge has its own.
    #[must_use]
    pub const fn is_one_surface(self) -> bool {
        !matches!(
            self,
            Self::MeanSeaLevel | Self::MeanLowerLowWater | Self::MeanLowWater | Self::LocalTidal
        )
    }

    /// The full name, for lists.
    #[must_use]
    pub fn full_name(self) -> String {
        self.named()
            .map_or_else(|| self.to_string(), |named| named.name.to_owned())
    }

    /// Every datum that has a name here, in the order of the table.
    pub fn all_named() -> impl Iterator<Item = Self> {
        NAMED.iter().map(|named| named.datum)
    }

    fn named(self) -> Option<&'static Named> {
        NAMED.iter().find(|named| named.datum == self)
    }
}

impl fmt::Display for VerticalDatum {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self, self.named()) {
            (_, Some(named)) => formatter.pad(named.code),
            (Self::Epsg(code), None) => formatter.pad(&format!("EPSG:{code}")),
            (other, None) => formatter.pad(&format!("{other:?}")),
        }
    }
}

impl FromStr for VerticalDatum {
    type Err = UnknownDatum;

    /// Reads a datum's name or `EPSG:` code; case, spaces and punctuation do not matter.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let unknown = || UnknownDatum {
            text: text.to_owned(),
        };
        let key: String = text
            .chars()
            .filter(char::is_ascii_alphanumeric)
            .map(|character| character.to_ascii_uppercase())
            .collect();
        if let Some(code) = key.strip_prefix("EPSG") {
            return code.parse().map(Self::from_epsg).map_err(|_| unknown());
        }
        let same = |spelling: &str| {
            spelling
                .chars()
                .filter(char::is_ascii_alphanumeric)
                .eq(key.chars())
        };
        NAMED
            .iter()
            .find(|named| same(named.code) || named.spellings.iter().copied().any(same))
            .map(|named| named.datum)
            .ok_or_else(unknown)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spellings_met_in_flood_layers() {
        for (text, datum) in [
            ("NAVD88", Datum::Navd88),
            ("NAVD 88", Datum::Navd88),
            ("North American Vertical Datum of 1988", Datum::Navd88),
            ("NGVD 29", Datum::Ngvd29),
            ("ngvd29", Datum::Ngvd29),
            ("LOCAL TIDAL DATUM", Datum::LocalTidal),
            ("EPSG:5703", Datum::Navd88),
            ("EPSG:6360", Datum::Navd88),
            ("EPSG:5702", Datum::Ngvd29),
            ("EPSG:5783", Datum::Epsg(5783)),
        ] {
            assert_eq!(text.parse(), Ok(datum), "{text}");
        }
    }

    #[test]
    fn every_code_reads_back_as_its_datum() {
        for datum in VerticalDatum::all_named() {
            assert_eq!(datum.to_string().parse(), Ok(datum));
        }
        assert_eq!(
            "EPSG:5783".parse::<Datum>().map(|datum| datum.to_string()),
            Ok("EPSG:5783".to_owned())
        );
    }

    #[test]
    fn an_unknown_name_is_refused() {
        assert!("NAVD87".parse::<Datum>().is_err());
        assert!("EPSG:".parse::<Datum>().is_err());
        assert!("".parse::<Datum>().is_err());
    }
}
