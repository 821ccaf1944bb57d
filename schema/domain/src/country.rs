//! Countries by their two letters (ISO 3166-1), as a label names them: the members of the European Union, and
//! where else its meat mostly comes from. The names are from memory: short, as they are in common use.

/// The letters, the name in English, the name in French.
const NAMES: [(&str, &str, &str); 38] = [
    ("AT", "Austria", "Autriche"),
    ("AU", "Australia", "Australie"),
    ("BE", "Belgium", "Belgique"),
    ("BG", "Bulgaria", "Bulgarie"),
    ("BR", "Brazil", "Brésil"),
    ("CA", "Canada", "Canada"),
    ("CH", "Switzerland", "Suisse"),
    ("CY", "Cyprus", "Chypre"),
    ("CZ", "Czechia", "Tchéquie"),
    ("DE", "Germany", "Allemagne"),
    ("DK", "Denmark", "Danemark"),
    ("EE", "Estonia", "Estonie"),
    ("ES", "Spain", "Espagne"),
    ("FI", "Finland", "Finlande"),
    ("FR", "France", "France"),
    ("GB", "United Kingdom", "Royaume-Uni"),
    ("GR", "Greece", "Grèce"),
    ("HR", "Croatia", "Croatie"),
    ("HU", "Hungary", "Hongrie"),
    ("IE", "Ireland", "Irlande"),
    ("IS", "Iceland", "Islande"),
    ("IT", "Italy", "Italie"),
    ("LT", "Lithuania", "Lituanie"),
    ("LU", "Luxembourg", "Luxembourg"),
    ("LV", "Latvia", "Lettonie"),
    ("MT", "Malta", "Malte"),
    ("MX", "Mexico", "Mexique"),
    ("NL", "Netherlands", "Pays-Bas"),
    ("NO", "Norway", "Norvège"),
    ("NZ", "New Zealand", "Nouvelle-Zélande"),
    ("PL", "Poland", "Pologne"),
    ("PT", "Portugal", "Portugal"),
    ("RO", "Romania", "Roumanie"),
    ("SE", "Sweden", "Suède"),
    ("SI", "Slovenia", "Slovénie"),
    ("SK", "Slovakia", "Slovaquie"),
    ("US", "United States", "États-Unis"),
    ("UY", "Uruguay", "Uruguay"),
];

/// The name of a country in a language; what we have no name of stands as it was entered.
pub fn name<'a>(country: &'a str, language: &str) -> &'a str {
    let known = NAMES.iter().find(|(letters, _, _)| *letters == country);
    match (known, language) {
        (Some((_, _, french)), "fr") => french,
        (Some((_, english, _)), _) => english,
        (None, _) => country,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_is_named_in_both_languages() {
        assert_eq!(name("DE", "en"), "Germany");
        assert_eq!(name("DE", "fr"), "Allemagne");
        assert_eq!(name("ZZ", "fr"), "ZZ");
        assert!(NAMES.windows(2).all(|pair| pair[0].0 < pair[1].0));
    }
}
