//! What a page names as the beginning of a recall: a lot, an animal, a farm's animals of some days, or what a product, a
//! place or a person had to do with over some days.

use crate::error::{Error, Result};
use crate::wire::scalars::day;
use crate::wire::scope::StartAsked;
use crate::wire::{Code, Day, InstantOrDay, Line};
use chrono::{Days, NaiveDate};

/// What a page names.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Named {
    /// A lot, by its code.
    Lot(String),
    /// An animal, by its id.
    Animal(String),
    /// The animals of a farm, by its code, killed on some days.
    Farm(String, Window),
    /// What was made of a product, by its code.
    Product(String, Window),
    /// What was at a place, by its code.
    Place(String, Window),
    /// What a person did, by their name.
    By(String, Window),
}

/// The first day and the last, both in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Window {
    /// The first day.
    pub first: NaiveDate,
    /// The last day.
    pub last: NaiveDate,
}

impl Window {
    /// Two days as a page asks for them; none while one is missing.
    ///
    /// # Errors
    /// 422 for what is no day.
    pub fn read(first: Option<&str>, last: Option<&str>) -> Result<Option<Window>> {
        let one = |text: Option<&str>, field: &str| {
            text.map(str::trim)
                .filter(|text| !text.is_empty())
                .map(|text| day(text).map_err(|says| Error::cannot_be(field, says)))
                .transpose()
        };
        let days = one(first, "from")?.zip(one(last, "last")?);
        Ok(days.map(|(first, last)| Window { first, last }))
    }

    /// The day after the last.
    fn end(self) -> NaiveDate {
        self.last
            .checked_add_days(Days::new(1))
            .unwrap_or(NaiveDate::MAX)
    }
}

impl Named {
    /// What is asked over some days: its field, its code, and the days.
    pub fn over(&self) -> Option<(&'static str, &str, Window)> {
        match self {
            Named::Lot(_) | Named::Animal(_) => None,
            Named::Farm(code, days) => Some(("farm", code.as_str(), *days)),
            Named::Product(code, days) => Some(("product", code.as_str(), *days)),
            Named::Place(code, days) => Some(("place", code.as_str(), *days)),
            Named::By(name, days) => Some(("by", name.as_str(), *days)),
        }
    }

    /// As it stands in the query of a page.
    pub fn query(&self) -> String {
        let over = |what: &str, code: &str, days: &Window| {
            let code: String = form_urlencoded::byte_serialize(code.as_bytes()).collect();
            format!("{what}={code}&from={}&last={}", days.first, days.last)
        };
        match self {
            Named::Lot(code) => format!("lot={code}"),
            Named::Animal(id) => format!("animal={id}"),
            Named::Farm(code, days) => over("farm", code, days),
            Named::Product(code, days) => over("product", code, days),
            Named::Place(code, days) => over("place", code, days),
            Named::By(name, days) => over("by", name, days),
        }
    }

    /// As a scope is asked for it.
    pub(super) fn start(&self) -> StartAsked {
        let line = |text: &String| Some(Line(text.clone()));
        let code = |text: &String| Some(Code(text.clone()));
        let over = |days: &Window, start: StartAsked| StartAsked {
            from: Some(InstantOrDay::Day(Day(days.first))),
            until: Some(InstantOrDay::Day(Day(days.end()))),
            ..start
        };
        let none = StartAsked::default();
        match self {
            Named::Lot(code) => StartAsked {
                lot: line(code),
                ..none
            },
            Named::Animal(id) => StartAsked {
                animal: line(id),
                ..none
            },
            Named::Farm(farm, days) => StartAsked {
                farm: line(farm),
                killed_from: Some(Day(days.first)),
                killed_until: Some(Day(days.end())),
                ..none
            },
            Named::Product(product, days) => over(
                days,
                StartAsked {
                    product: code(product),
                    ..none
                },
            ),
            Named::Place(place, days) => over(
                days,
                StartAsked {
                    place: code(place),
                    ..none
                },
            ),
            Named::By(name, days) => over(
                days,
                StartAsked {
                    by: line(name),
                    ..none
                },
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_day_is_in() {
        let days = Window::read(Some("2026-06-08"), Some("2026-06-09"));
        let days = days.ok().flatten().expect("two days");
        let start = Named::Farm("BRC".into(), days).start();
        assert_eq!(
            start.killed_until.map(|day| day.0.to_string()).as_deref(),
            Some("2026-06-10")
        );
        assert_eq!(
            Named::By("Jory Abend".into(), days).query(),
            "by=Jory+Abend&from=2026-06-08&last=2026-06-09"
        );
    }

    #[test]
    fn one_day_alone_is_no_window() {
        assert!(matches!(Window::read(Some("2026-06-08"), None), Ok(None)));
        assert!(Window::read(Some("June"), Some("2026-06-09")).is_err());
    }
}
