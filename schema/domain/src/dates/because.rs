//! One link in the answer to "why?": what was decided, by which rule, from which source.

use crate::rows::{Finding, RowId, Rows};

/// One link of the chain.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Because {
    /// In words for a cook.
    pub says: String,
    /// The rule's name: a row of the facts, or a few words.
    pub rule: String,
    /// Where the rule comes from.
    pub source: String,
}

impl Because {
    /// A link that the kitchen's own product list gives.
    pub fn house(says: impl Into<String>, rule: impl Into<String>) -> Because {
        Because {
            says: says.into(),
            rule: rule.into(),
            source: "the kitchen's product list".into(),
        }
    }

    /// A link that a row of the law gives.
    pub fn law(says: impl Into<String>, row: &RowId, rows: &Rows) -> Because {
        Because {
            says: says.into(),
            rule: row.to_string(),
            source: rows.source(row),
        }
    }

    /// What a check found.
    pub fn finding(finding: &Finding, rows: &Rows) -> Because {
        let names: Vec<&str> = finding.rows.iter().map(RowId::as_str).collect();
        let sources: Vec<String> = finding.rows.iter().map(|row| rows.source(row)).collect();
        Because {
            says: finding.says.clone(),
            rule: names.join(", "),
            source: sources.join("; "),
        }
    }
}
