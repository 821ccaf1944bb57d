//! Time zones by name, those of the law's places first: nobody types one.

use super::bench::Pick;
use super::says::SetUpSays;
use super::spoken::Words;
use domain::words::Profile;

/// Zones of one place.
pub struct Zones {
    /// The place.
    pub name: String,
    /// Its zones.
    pub zones: Vec<Pick>,
}

/// Zones that people know by a name besides their city: the zone, and what it is called.
type Named = (&'static str, &'static str);

const UNITED_STATES: [Named; 8] = [
    ("America/New_York", "page-zone-eastern"),
    ("America/Chicago", "page-zone-central"),
    ("America/Denver", "page-zone-mountain"),
    ("America/Phoenix", "page-zone-mountain-standard"),
    ("America/Los_Angeles", "page-zone-pacific"),
    ("America/Anchorage", "page-zone-alaska"),
    ("Pacific/Honolulu", "page-zone-hawaii"),
    ("America/Puerto_Rico", "page-zone-atlantic"),
];

const CANADA: [Named; 7] = [
    ("America/St_Johns", "page-zone-newfoundland"),
    ("America/Halifax", "page-zone-atlantic"),
    ("America/Toronto", "page-zone-eastern"),
    ("America/Winnipeg", "page-zone-central"),
    ("America/Regina", "page-zone-central-standard"),
    ("America/Edmonton", "page-zone-mountain"),
    ("America/Vancouver", "page-zone-pacific"),
];

/// The zones of the European Union's countries, by the city that each is known by.
const EUROPE: [&str; 29] = [
    "Europe/Amsterdam",
    "Europe/Athens",
    "Europe/Berlin",
    "Europe/Bratislava",
    "Europe/Brussels",
    "Europe/Bucharest",
    "Europe/Budapest",
    "Europe/Copenhagen",
    "Europe/Dublin",
    "Europe/Helsinki",
    "Europe/Lisbon",
    "Europe/Ljubljana",
    "Europe/Luxembourg",
    "Europe/Madrid",
    "Europe/Malta",
    "Asia/Nicosia",
    "Europe/Paris",
    "Europe/Prague",
    "Europe/Riga",
    "Europe/Rome",
    "Europe/Sofia",
    "Europe/Stockholm",
    "Europe/Tallinn",
    "Europe/Vienna",
    "Europe/Vilnius",
    "Europe/Warsaw",
    "Europe/Zagreb",
    "Atlantic/Azores",
    "Atlantic/Canary",
];

/// All zones, place by place; at the end every other one by its own name.
pub fn zones(words: &Words, chosen: &str) -> Vec<Zones> {
    let pick = |id: &str, name: String| Pick {
        chosen: id == chosen,
        ..Pick::of(id, name)
    };
    let named = |(id, key): &Named| {
        let zone = SetUpSays::Zone {
            region: words.t(key),
            city: city(id),
        };
        pick(id, words.say(zone))
    };
    let group = |profile: Profile, zones: Vec<Pick>| Zones {
        name: words.headed(profile.says()),
        zones,
    };
    let mut all = vec![
        group(Profile::Us, UNITED_STATES.iter().map(named).collect()),
        group(Profile::Ca, CANADA.iter().map(named).collect()),
        group(
            Profile::Uk,
            vec![pick("Europe/London", city("Europe/London"))],
        ),
        group(
            Profile::Eu,
            EUROPE.iter().map(|id| pick(id, city(id))).collect(),
        ),
    ];
    let is_named = |id: &str| {
        all.iter()
            .flat_map(|of| &of.zones)
            .any(|one| one.code == id)
    };
    let others = chrono_tz::TZ_VARIANTS.iter().map(|zone| zone.name());
    let others = others.filter(|id| !is_named(id));
    let others = others.map(|id| pick(id, id.replace('_', " "))).collect();
    all.push(Zones {
        name: words.t("page-zone-others"),
        zones: others,
    });
    all
}

/// The city of a zone: `America/New_York` is New York.
fn city(id: &str) -> String {
    id.rsplit('/').next().unwrap_or(id).replace('_', " ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_zone_that_is_named_is_one() {
        let named = UNITED_STATES.iter().chain(&CANADA).map(|(id, _)| *id);
        for id in named.chain(EUROPE) {
            assert!(id.parse::<chrono_tz::Tz>().is_ok(), "{id}");
        }
        assert_eq!(city("America/St_Johns"), "St Johns");
    }
}
