//! Time zones by name, those of the law's places first: nobody types one.

use super::bench::Pick;
use super::regions::{EUROPE, Region};
use super::says::SetUpSays;
use super::spoken::Words;
use crate::read::seek::fold;
use domain::country;
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

/// All zones, place by place, the reader's own place and country first; at the end every other one by its own name.
pub fn zones(words: &Words, chosen: &str, region: Option<Region>) -> Vec<Zones> {
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
    let group = |profile: Profile, zones: Vec<Pick>| {
        let name = words.headed(profile.says());
        (profile, Zones { name, zones })
    };
    let in_country = |country: &str, id: &str| {
        let region = country::name(country, words.lang()).to_owned();
        let city = city(id);
        pick(id, words.say(SetUpSays::Zone { region, city }))
    };
    let mut europe: Vec<(bool, String, Pick)> = EUROPE
        .iter()
        .map(|(of, id)| {
            let own = region.is_some_and(|region| region.country == *of);
            let name = country::name(of, words.lang());
            (!own, fold(name), in_country(of, id))
        })
        .collect();
    europe.sort_by(|one, other| (one.0, &one.1).cmp(&(other.0, &other.1)));
    let mut places = vec![
        group(Profile::Us, UNITED_STATES.iter().map(named).collect()),
        group(Profile::Ca, CANADA.iter().map(named).collect()),
        group(Profile::Uk, vec![in_country("GB", "Europe/London")]),
        group(
            Profile::Eu,
            europe.into_iter().map(|(_, _, pick)| pick).collect(),
        ),
    ];
    places.sort_by_key(|(profile, _)| region.is_none_or(|region| region.profile != *profile));
    let mut all: Vec<Zones> = places.into_iter().map(|(_, zones)| zones).collect();
    let is_named = |id: &str| {
        all.iter()
            .flat_map(|of| &of.zones)
            .any(|one| one.code == id)
    };
    let others = chrono_tz::TZ_VARIANTS.iter().map(|zone| zone.name());
    let others = others.filter(|id| !is_named(id));
    let others = others.filter_map(|id| Some(pick(id, elsewhere(words, id)?)));
    let mut others: Vec<Pick> = others.collect();
    others.sort_by_cached_key(|one| fold(&one.name));
    let is_there = is_named(chosen) || others.iter().any(|one| one.code == chosen);
    if !is_there && !chosen.is_empty() {
        // One of the old names that a kitchen was set up with stands there as it is.
        others.push(pick(chosen, city(chosen)));
    }
    all.push(Zones {
        name: words.t("page-zone-others"),
        zones: others,
    });
    all
}

/// The parts of the world, as the names of zones begin.
const WORLD: [Named; 10] = [
    ("Africa", "page-zone-africa"),
    ("America", "page-zone-america"),
    ("Antarctica", "page-zone-antarctica"),
    ("Arctic", "page-zone-arctic"),
    ("Asia", "page-zone-asia"),
    ("Atlantic", "page-zone-atlantic-ocean"),
    ("Australia", "page-zone-australia"),
    ("Europe", "page-zone-europe"),
    ("Indian", "page-zone-indian-ocean"),
    ("Pacific", "page-zone-pacific-ocean"),
];

/// A zone by its city: `Buenos Aires (Argentina, America)`. None for the names that are kept for old machines alone.
fn elsewhere(words: &Words, id: &str) -> Option<String> {
    if id == "Etc/UTC" {
        return Some("UTC".to_owned());
    }
    let (part, rest) = id.split_once('/')?;
    let (_, part) = WORLD.iter().find(|(of, _)| *of == part)?;
    let within = rest.rsplit_once('/').map(|(within, _)| within);
    let within = within.map(|within| within.replace('_', " ").replace('/', ", "));
    let all = within.into_iter().chain([words.t(part)]);
    let all: Vec<String> = all.collect();
    Some(format!("{} ({})", city(id), all.join(", ")))
}

/// The city of a zone: `America/New_York` is New York.
fn city(id: &str) -> String {
    id.rsplit('/').next().unwrap_or(id).replace('_', " ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use ::words::Language;

    #[test]
    fn every_zone_that_is_named_is_one() {
        let named = UNITED_STATES.iter().chain(&CANADA).map(|(id, _)| *id);
        for id in named.chain(EUROPE.map(|(_, id)| id)) {
            assert!(id.parse::<chrono_tz::Tz>().is_ok(), "{id}");
        }
        assert_eq!(city("America/St_Johns"), "St Johns");
    }

    #[test]
    fn a_zone_is_called_by_its_city_and_its_own_country_stands_first() {
        let words = |language| Words(::words::Speech::in_language(language));
        let (english, french) = (words(Language::English), words(Language::French));
        let told = |words: &Words, id| elsewhere(words, id).unwrap_or_default();
        assert_eq!(told(&english, "Asia/Tokyo"), "Tokyo (Asia)");
        let far = "America/Argentina/Buenos_Aires";
        assert_eq!(told(&french, far), "Buenos Aires (Argentina, Amérique)");
        assert_eq!(elsewhere(&english, "EST5EDT"), None);
        let canada = Some(Region::of_kitchen(Profile::Ca, None));
        let all = zones(&english, "Canada/Eastern", canada);
        let first = &all[0].zones;
        assert!(first.iter().any(|one| one.name == "Eastern – Toronto"));
        let others = &all[all.len() - 1].zones;
        assert!(others.iter().any(|one| one.chosen));
        let names: Vec<String> = others.iter().map(|one| fold(&one.name)).collect();
        assert!(names[..names.len() - 1].is_sorted());
    }
}
