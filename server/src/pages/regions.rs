//! Which country a reader seems to be in: the region of the language that the browser asks for first. It is proposed,
//! and no more than that.

use domain::words::Profile;

/// A country of which we know the law.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Region {
    /// Its two letters.
    pub country: &'static str,
    /// Whose law holds there.
    pub profile: Profile,
}

/// The countries of the European Union with their time zones, by the city that each is known by; the main one first.
pub const EUROPE: [(&str, &str); 29] = [
    ("AT", "Europe/Vienna"),
    ("BE", "Europe/Brussels"),
    ("BG", "Europe/Sofia"),
    ("CY", "Asia/Nicosia"),
    ("CZ", "Europe/Prague"),
    ("DE", "Europe/Berlin"),
    ("DK", "Europe/Copenhagen"),
    ("EE", "Europe/Tallinn"),
    ("ES", "Europe/Madrid"),
    ("ES", "Atlantic/Canary"),
    ("FI", "Europe/Helsinki"),
    ("FR", "Europe/Paris"),
    ("GR", "Europe/Athens"),
    ("HR", "Europe/Zagreb"),
    ("HU", "Europe/Budapest"),
    ("IE", "Europe/Dublin"),
    ("IT", "Europe/Rome"),
    ("LT", "Europe/Vilnius"),
    ("LU", "Europe/Luxembourg"),
    ("LV", "Europe/Riga"),
    ("MT", "Europe/Malta"),
    ("NL", "Europe/Amsterdam"),
    ("PL", "Europe/Warsaw"),
    ("PT", "Europe/Lisbon"),
    ("PT", "Atlantic/Azores"),
    ("RO", "Europe/Bucharest"),
    ("SE", "Europe/Stockholm"),
    ("SI", "Europe/Ljubljana"),
    ("SK", "Europe/Bratislava"),
];

impl Region {
    /// The region of the language that an `Accept-Language` header wants most: `fr-FR`, or `fr,fr-FR;q=0.8`. None where
    /// that language has no region, or one whose law we do not know.
    pub fn accepted(header: &str) -> Option<Region> {
        let wanted = words::wanted(header);
        let language = |tag: &str| tag.split('-').next().unwrap_or_default().to_lowercase();
        let most = language(wanted.first()?);
        let of_most = wanted.iter().filter(|tag| language(tag) == most);
        let region = of_most
            .filter_map(|tag| tag.split('-').skip(1).find(|part| part.len() == 2))
            .next()?;
        Region::of(&region.to_uppercase())
    }

    /// Where a kitchen is: its country, else that of the law that it works under.
    pub fn of_kitchen(profile: Profile, country: Option<&str>) -> Region {
        let own = country.and_then(Region::of);
        own.filter(|own| own.profile == profile).unwrap_or(Region {
            profile,
            country: match profile {
                Profile::Us => "US",
                Profile::Ca => "CA",
                Profile::Uk => "GB",
                Profile::Eu => "",
            },
        })
    }

    fn of(country: &str) -> Option<Region> {
        let of = |country, profile| Some(Region { country, profile });
        match country {
            "US" => of("US", Profile::Us),
            "CA" => of("CA", Profile::Ca),
            "GB" => of("GB", Profile::Uk),
            other => {
                let known = EUROPE.iter().find(|(of, _)| *of == other);
                known.and_then(|(country, _)| of(country, Profile::Eu))
            }
        }
    }

    /// The zone that its clocks mostly show; none where it has several that are alike usual.
    pub fn zone(self) -> Option<&'static str> {
        match self.profile {
            Profile::Us | Profile::Ca => None,
            Profile::Uk => Some("Europe/London"),
            Profile::Eu => EUROPE
                .iter()
                .find(|(of, _)| *of == self.country)
                .map(|(_, zone)| *zone),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_region_of_the_language_that_is_wanted_most() {
        let of = |header| Region::accepted(header).map(|of| (of.country, of.profile));
        assert_eq!(of("fr-FR,fr;q=0.9,en-US;q=0.8"), Some(("FR", Profile::Eu)));
        assert_eq!(of("fr,fr-FR;q=0.8,en-US;q=0.5"), Some(("FR", Profile::Eu)));
        assert_eq!(of("fr-CA"), Some(("CA", Profile::Ca)));
        assert_eq!(of("en-GB,en;q=0.9"), Some(("GB", Profile::Uk)));
        assert_eq!(of("en-US"), Some(("US", Profile::Us)));
        assert_eq!(of("en;q=0.5, de-AT"), Some(("AT", Profile::Eu)));
        assert_eq!(
            of("fr,en-US;q=0.8"),
            None,
            "nobody says that French of theirs is America's"
        );
        assert_eq!(of("fr-CH"), None, "no law of ours");
        assert_eq!(of("zh-Hans-CN"), None);
        assert_eq!(of("en"), None);
        assert_eq!(of(""), None);
        assert_eq!(
            Region::accepted("fr-FR").and_then(Region::zone),
            Some("Europe/Paris")
        );
        assert_eq!(
            Region::accepted("es-ES").and_then(Region::zone),
            Some("Europe/Madrid")
        );
        assert_eq!(Region::accepted("en-US").and_then(Region::zone), None);
    }
}
