//! The last day as a place words it for a customer.

use super::Writer;
use chrono::NaiveDate;
use domain::statement::{self, DateAsk, DateKind, DateMark, Reader};
use domain::words::Profile;

/// The date in the words and the form of the place; nothing where our own words will do.
pub fn of(writer: &Writer<'_>, day: NaiveDate, language: &str) -> Option<DateMark> {
    let place = writer.kitchen.entry.profile.0;
    if place == Profile::Us || !writer.product.for_sale {
        return None;
    }
    let law = writer.app.law.laws.of(place);
    let ask = DateAsk {
        // Canada keeps "use by" for fresh yeast (canada-eu-uk-2.11); the others ask for it.
        kind: match place {
            Profile::Ca => DateKind::BestBefore,
            _ => DateKind::UseBy,
        },
        day,
        from: day,
        reader: Reader::Customer,
        short: false,
    };
    statement::date_mark(&law.statements, &law.rows, &ask, &[language]).ok()
}
