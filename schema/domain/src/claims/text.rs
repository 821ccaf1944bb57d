//! Claims as one text, which the record keeps once for all labels that say the same.

use super::{Claims, MadeOf, OriginClaim};
use crate::words::{Allergen, Species};
use std::fmt::{self, Display, Formatter};

impl Display for Claims {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        if self.beside {
            writeln!(f, "beside")?;
        }
        if self.dated {
            writeln!(f, "dated")?;
        }
        if let Some(name) = &self.name {
            writeln!(f, "name {name}")?;
        }
        if let Some(allergens) = &self.allergens {
            let all: Vec<&str> = allergens.iter().map(|word| word.as_str()).collect();
            writeln!(f, "allergens {}", all.join(" "))?;
        }
        if let Some(may) = &self.may_contain {
            let all: Vec<&str> = may.iter().map(|word| word.as_str()).collect();
            writeln!(f, "may-contain {}", all.join(" "))?;
        }
        if let Some(species) = &self.species {
            let all: Vec<&str> = species.iter().map(|word| word.as_str()).collect();
            writeln!(f, "species {}", all.join(" "))?;
        }
        for line in self.origin.iter().flat_map(|of| of.lines()) {
            writeln!(f, "{line}")?;
        }
        if let Some(made_of) = &self.made_of {
            writeln!(f, "made-of")?;
            for MadeOf { depth, code, name } in made_of {
                writeln!(f, "{depth} {code} {name}")?;
            }
        }
        Ok(())
    }
}

impl Claims {
    /// Reads what was kept.
    pub fn parse(text: &str) -> Option<Claims> {
        let mut claims = Claims::default();
        for line in text.lines() {
            let (word, rest) = line.split_once(' ').unwrap_or((line, ""));
            match word {
                "beside" => claims.beside = true,
                "dated" => claims.dated = true,
                "name" => claims.name = Some(rest.to_owned()),
                "allergens" => {
                    let all = rest.split_whitespace().map(Allergen::parse);
                    claims.allergens = Some(all.collect::<Option<_>>()?);
                }
                "may-contain" => {
                    let all = rest.split_whitespace().map(Allergen::parse);
                    claims.may_contain = Some(all.collect::<Option<_>>()?);
                }
                "species" => {
                    let all = rest.split_whitespace().map(Species::parse);
                    claims.species = Some(all.collect::<Option<_>>()?);
                }
                "origin" => claims.origin = Some(OriginClaim::default()),
                "born" | "reared" | "slaughtered" | "abattoir" => {
                    claims.origin.as_mut()?.take(word, rest)?;
                }
                "made-of" => claims.made_of = Some(Vec::new()),
                depth => {
                    let (code, name) = rest.split_once(' ')?;
                    claims.made_of.as_mut()?.push(MadeOf {
                        depth: depth.parse().ok()?,
                        code: code.to_owned(),
                        name: name.to_owned(),
                    });
                }
            }
        }
        Some(claims)
    }
}
