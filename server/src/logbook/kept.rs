//! What makes a log due, and how long it is kept, in a reader's words.

use super::says::LogWords;
use domain::duties::keeping::{Keeping, KeepingSpan, Unit};
use domain::log::Due;
use domain::says::{Arg, Says};
use words::{Speech, capital};

/// What makes a log due here: each reason a sentence, then how long it is kept. One sentence where nothing does.
pub fn told_due(due: &[Due<'_>], speech: &Speech) -> Vec<String> {
    let mut told: Vec<String> = Vec::new();
    for one in due {
        let says = Says::from(LogWords::Due {
            record: Arg::from(one.record),
            on: Arg::from(one.on),
            row: one.row.to_string(),
        });
        told.push(capital(&speech.say(&says)));
        for kept in &one.kept {
            let says = speech.say(&kept_says(kept));
            if !told.contains(&says) {
                told.push(says);
            }
        }
    }
    if told.is_empty() {
        told.push(speech.say(&LogWords::NotDue.into()));
    }
    told
}

fn kept_says(kept: &Keeping) -> Says {
    let row = kept.row.to_string();
    match (&kept.span, kept.or_shelf_life) {
        (Some(span), true) => LogWords::KeptLonger {
            span: long(span),
            row,
        },
        (Some(span), false) => LogWords::KeptSpan {
            span: long(span),
            row,
        },
        (None, _) => LogWords::KeptFood { row },
    }
    .into()
}

fn long(span: &KeepingSpan) -> Arg {
    let number = span.number.whole();
    Arg::from(Says::from(match span.unit {
        Unit::Hours => LogWords::SpanHours { number },
        Unit::Days => LogWords::SpanDays { number },
        Unit::Months => LogWords::SpanMonths { number },
        Unit::Years => LogWords::SpanYears { number },
    }))
}
