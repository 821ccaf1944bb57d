//! The words of a label by language, in plain words of our own; what a law fixes comes with its profile.

use chrono::{Datelike, NaiveDate};

/// One language's words.
#[derive(Debug, Clone, Copy)]
#[allow(missing_docs, reason = "each is what it says")]
pub struct Phrases {
    pub language: &'static str,
    pub use_by: &'static str,
    pub made: &'static str,
    pub ingredients: &'static str,
    pub raw: &'static str,
    pub ready_to_eat: &'static str,
    pub caution_raw: &'static str,
    pub frozen: &'static str,
    pub frozen_on: &'static str,
    pub use_within: &'static str,
    pub no_date: &'static str,
    pub received_heading: &'static str,
    pub received: &'static str,
    pub killed: &'static str,
    pub carcass: &'static str,
    pub tag: &'static str,
    pub their_lot: &'static str,
    pub not_released: &'static str,
    pub green: &'static str,
    pub salted: &'static str,
    pub turn: &'static str,
    pub release_at: &'static str,
    pub from_day: &'static str,
    pub column_day: &'static str,
    pub column_who: &'static str,
    pub hold: &'static str,
    pub hold_caution: &'static str,
    pub released_on: &'static str,
    pub by: &'static str,
    contains: &'static str,
    sides: [&'static str; 2],
    cured: [&'static str; 3],
    keep: [&'static str; 4],
    days: [&'static str; 7],
    months: [&'static str; 12],
}

const ENGLISH: Phrases = Phrases {
    language: "en",
    use_by: "USE BY",
    made: "Made",
    ingredients: "Ingredients",
    raw: "RAW",
    ready_to_eat: "READY TO EAT",
    caution_raw: "Raw. Cook through before eating. Wash hands, board and knife.",
    frozen: "FROZEN",
    frozen_on: "Frozen",
    use_within: "USE WITHIN",
    no_date: "NO DATE YET",
    received_heading: "RECEIVED",
    received: "Received",
    killed: "Killed",
    carcass: "Carcass",
    tag: "tag",
    their_lot: "Their lot",
    not_released: "NOT RELEASED",
    green: "Green",
    salted: "Salted",
    turn: "Turn:",
    release_at: "Release at",
    from_day: "from",
    column_day: "Day",
    column_who: "Who",
    hold: "HOLD",
    hold_caution: "Do not use, sell or move.",
    released_on: "Released on",
    by: "By",
    contains: "Contains:",
    sides: ["left", "right"],
    cured: ["Cured with salt", ", sodium nitrite", ", sodium nitrate"],
    keep: [
        "Keep refrigerated",
        "Keep frozen",
        "Keep cool and dry",
        "Keep hot",
    ],
    days: ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"],
    months: [
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
    ],
};

const FRENCH: Phrases = Phrases {
    language: "fr",
    use_by: "À consommer avant",
    made: "Fait le",
    ingredients: "Ingrédients",
    raw: "CRU",
    ready_to_eat: "PRÊT À MANGER",
    caution_raw: "Cru. Bien cuire avant de manger. Laver mains, planche et couteau.",
    frozen: "CONGELÉ",
    frozen_on: "Congelé le",
    use_within: "À CONSOMMER",
    no_date: "PAS ENCORE DE DATE",
    received_heading: "REÇU",
    received: "Reçu le",
    killed: "Abattu le",
    carcass: "Carcasse",
    tag: "boucle",
    their_lot: "Leur lot",
    not_released: "PAS LIBÉRÉ",
    green: "Frais",
    salted: "Salé le",
    turn: "Tourner :",
    release_at: "Libérer à",
    from_day: "dès le",
    column_day: "Jour",
    column_who: "Qui",
    hold: "BLOQUÉ",
    hold_caution: "Ne pas utiliser, vendre ni déplacer.",
    released_on: "Libéré le",
    by: "Par",
    contains: "Contient :",
    sides: ["gauche", "droite"],
    cured: ["Salé au sel", ", nitrite de sodium", ", nitrate de sodium"],
    keep: [
        "Garder au froid",
        "Garder congelé",
        "Garder au frais et au sec",
        "Garder chaud",
    ],
    days: ["lun.", "mar.", "mer.", "jeu.", "ven.", "sam.", "dim."],
    months: [
        "janv.", "févr.", "mars", "avr.", "mai", "juin", "juill.", "août", "sept.", "oct.", "nov.",
        "déc.",
    ],
};

impl Phrases {
    /// The words of a language; English where there are none yet.
    pub fn of(language: &str) -> Phrases {
        match language {
            "fr" => FRENCH,
            _ => ENGLISH,
        }
    }

    /// A date with its weekday, the month in letters: `Fri 26 Jun 2026`.
    pub fn date(&self, date: NaiveDate) -> String {
        let day = self.days[date.weekday().num_days_from_monday() as usize];
        format!(
            "{day} {} {} {}",
            date.day(),
            self.months[date.month0() as usize],
            date.year()
        )
    }

    /// A date for the small label of the same season, where the year goes without saying: `Fri 26 Jun`.
    pub fn day_label(&self, date: NaiveDate) -> String {
        let day = self.days[date.weekday().num_days_from_monday() as usize];
        format!(
            "{day} {} {}",
            date.day(),
            self.months[date.month0() as usize]
        )
    }

    /// A date without its weekday, where the first language has told it: `26 juin 2026`.
    pub fn short_date(&self, date: NaiveDate) -> String {
        format!(
            "{} {} {}",
            date.day(),
            self.months[date.month0() as usize],
            date.year()
        )
    }

    /// A day of a month that is near: `26 Jun`.
    pub fn day_of_month(&self, date: NaiveDate) -> String {
        format!("{} {}", date.day(), self.months[date.month0() as usize])
    }

    /// A number with the language's own decimal sign.
    pub fn number(&self, text: &str) -> String {
        match self.language {
            "fr" => text.replace('.', ","),
            _ => text.to_owned(),
        }
    }

    /// Which side of a carcass, from the record's word.
    pub fn side(&self, side: &str) -> &'static str {
        match side {
            "left" => self.sides[0],
            "right" => self.sides[1],
            _ => "",
        }
    }

    /// What is in it, by names; nothing where there are none.
    pub fn contains(&self, names: &[String]) -> String {
        match names.is_empty() {
            true => String::new(),
            false => format!("{} {}", self.contains, names.join(", ")),
        }
    }

    /// How it was cured.
    pub fn cured(&self, nitrite: bool, nitrate: bool) -> String {
        let [salt, with_nitrite, with_nitrate] = self.cured;
        let mut text = salt.to_owned();
        if nitrite {
            text += with_nitrite;
        }
        if nitrate {
            text += with_nitrate;
        }
        text
    }

    /// How long a frozen pack has once it is thawed.
    pub fn once_thawed(&self, days: i32) -> String {
        let days = days.max(1);
        match (self.language, days) {
            ("fr", 1) => "1 JOUR APRÈS DÉGEL".into(),
            ("fr", _) => format!("{days} JOURS APRÈS DÉGEL"),
            (_, 1) => "1 DAY ONCE THAWED".into(),
            _ => format!("{days} DAYS ONCE THAWED"),
        }
    }

    /// How a pack is kept.
    pub fn storage(&self, state: &str) -> &'static str {
        match state {
            "frozen" => self.keep[1],
            "ambient" => self.keep[2],
            "hot" => self.keep[3],
            _ => self.keep[0],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_are_read_at_a_glance() {
        let date = "2026-06-26".parse().unwrap();
        assert_eq!(Phrases::of("en").date(date), "Fri 26 Jun 2026");
        assert_eq!(Phrases::of("fr").date(date), "ven. 26 juin 2026");
    }
}
