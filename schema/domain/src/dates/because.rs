//! One link in the answer to "why?": what was decided, by which rule, from which source.

use crate::rows::{Finding, RowId};
use crate::says::Says;

/// What a link rests on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Rule {
    /// The kitchen's own product list, and what of it.
    House(Says),
    /// Rows of the law or of the trade.
    Rows(Vec<RowId>),
    /// Common practice without a source, and which.
    Practice(Says),
    /// As an older version kept it: the rule's name and its source, in words.
    Kept {
        /// The rule's name.
        rule: String,
        /// Where it comes from.
        source: String,
    },
}

/// One link of the chain.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Because {
    /// What was decided.
    pub says: Says,
    /// By which rule.
    pub rule: Rule,
}

impl Because {
    /// A link that the kitchen's own product list gives.
    pub fn house(says: impl Into<Says>, rule: impl Into<Says>) -> Because {
        Because {
            says: says.into(),
            rule: Rule::House(rule.into()),
        }
    }

    /// A link that a row of the law gives.
    pub fn law(says: impl Into<Says>, row: &RowId) -> Because {
        Because {
            says: says.into(),
            rule: Rule::Rows(vec![row.clone()]),
        }
    }

    /// What a check found.
    pub fn finding(finding: &Finding) -> Because {
        Because {
            says: finding.says.clone(),
            rule: Rule::Rows(finding.rows.clone()),
        }
    }

    /// The rows that it rests on, where it rests on any.
    pub fn rows(&self) -> &[RowId] {
        match &self.rule {
            Rule::Rows(rows) => rows,
            Rule::House(_) | Rule::Practice(_) | Rule::Kept { .. } => &[],
        }
    }
}
