//! Which parts of an animal a carcass may come as, so that nobody is offered quarters of half a pig.
//!
//! What is quartered and what comes whole is common practice, no source. It only says what is offered first: whatever
//! else somebody brings is one tap further, and is taken as it is told.

use domain::words::{Side, Species};

/// All of them, in the order in which they stand on the page.
pub const ALL: [Side; 7] = [
    Side::Left,
    Side::Right,
    Side::Whole,
    Side::LeftFore,
    Side::LeftHind,
    Side::RightFore,
    Side::RightHind,
];

const FORES: [Side; 2] = [Side::LeftFore, Side::RightFore];
const HINDS: [Side; 2] = [Side::LeftHind, Side::RightHind];

/// The words of a code that say it is a part of an animal, and which.
const NAMED: [(&str, &[Side]); 5] = [
    ("half", &[Side::Left, Side::Right]),
    ("side", &[Side::Left, Side::Right]),
    ("fore", &FORES),
    ("hind", &HINDS),
    ("quarter", ALL.split_at(3).1),
];

/// Is it a part of an animal by its code, like the starter list's half pig?
pub fn is_part(code: &str) -> bool {
    named(code).is_some()
}

fn named(code: &str) -> Option<&'static [Side]> {
    let mut words = code.split('-');
    words
        .find_map(|word| NAMED.iter().find(|(part, _)| *part == word))
        .map(|(_, sides)| *sides)
}

/// What a carcass of that code and species usually comes as.
pub fn usual(code: &str, species: Option<Species>) -> &'static [Side] {
    use Species::*;
    if let Some(sides) = named(code) {
        return sides;
    }
    match species {
        Some(Rabbit) => &[Side::Whole],
        Some(bird) if bird.is_bird() => &[Side::Whole],
        Some(Pig | Boar | Sheep | Goat) => &[Side::Left, Side::Right, Side::Whole],
        _ => &ALL,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_is_quartered_is_offered_in_quarters() {
        let check = |code: &str, species, told: &str| {
            let sides = usual(code, Some(species)).iter();
            let sides: Vec<&str> = sides.map(|side| side.as_str()).collect();
            assert_eq!(sides.join(" "), told, "{code}");
        };
        check("pig-half", Species::Pig, "left right");
        check("pig", Species::Pig, "left right whole");
        check("lamb-carcass", Species::Sheep, "left right whole");
        check("beef-hind", Species::Cattle, "left-hind right-hind");
        check("beef-fore", Species::Cattle, "left-fore right-fore");
        check("ducks-whole", Species::Duck, "whole");
        let quarters = "left-fore left-hind right-fore right-hind";
        check("beef-quarter", Species::Cattle, quarters);
        let all = format!("left right whole {quarters}");
        check("bullock", Species::Cattle, &all);
        assert!(is_part("pig-half") && !is_part("pig-sidelong"));
    }
}
