//! One link of "why this date?", as it is answered.

use super::{BecauseRead, FindingRead};
use domain::dates::{Because, Rule};
use domain::rows::{Finding, Gravity, RowId, Rows, SourceSays};
use words::Speech;

/// A link, for a reader.
pub fn because_read(because: &Because, rows: &Rows, speech: &Speech) -> BecauseRead {
    let (rule, source) = match &because.rule {
        Rule::House(says) => (
            speech.say(says),
            speech.say(&SourceSays::ProductList.into()),
        ),
        Rule::Practice(says) => (speech.say(says), speech.say(&SourceSays::Practice.into())),
        Rule::Rows(ids) => {
            let names: Vec<&str> = ids.iter().map(RowId::as_str).collect();
            (names.join(", "), speech.arg(&rows.sources(ids)))
        }
        Rule::Kept { rule, source } => (rule.clone(), source.clone()),
    };
    BecauseRead {
        says: speech.say(&because.says),
        key: because.says.key().to_owned(),
        rule,
        source,
    }
}

/// A finding, for a reader.
pub fn finding_read(finding: &Finding, rows: &Rows, speech: &Speech) -> FindingRead {
    FindingRead {
        gravity: match finding.gravity {
            Gravity::Note => "note",
            Gravity::Warn => "warn",
            Gravity::Refuse => "refuse",
        }
        .to_owned(),
        says: speech.say(&finding.says),
        key: finding.says.key().to_owned(),
        rows: finding.rows.iter().map(ToString::to_string).collect(),
        source: speech.arg(&rows.sources(&finding.rows)),
    }
}
