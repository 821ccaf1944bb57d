//! One link in the answer to "why?": what was decided, by which rule, from which source.

use crate::rows::{Finding, RowId, Rows, SourceSays};
use crate::says::{Arg, Says};

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

    /// The rule that it rests on, as it is told: its rows by name.
    pub fn rule(&self) -> Arg {
        match &self.rule {
            Rule::House(says) | Rule::Practice(says) => says.clone().into(),
            Rule::Rows(ids) => {
                let names: Vec<&str> = ids.iter().map(RowId::as_str).collect();
                Arg::Text(names.join(", "))
            }
            Rule::Kept { rule, .. } => Arg::Text(rule.clone()),
        }
    }

    /// Where that rule comes from, as it is told.
    pub fn source(&self, rows: &Rows) -> Arg {
        match &self.rule {
            Rule::House(_) => SourceSays::ProductList.into(),
            Rule::Practice(_) => SourceSays::Practice.into(),
            Rule::Rows(ids) => rows.sources(ids),
            Rule::Kept { source, .. } => Arg::Text(source.clone()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_link_says_its_rule_and_where_that_comes_from() {
        let says = || Says::as_written("five days");
        let (house, rows) = (Because::house(says(), says()), Rows::default());
        assert_eq!(house.rule(), Arg::from(says()));
        assert_eq!(house.source(&rows), Arg::from(SourceSays::ProductList));
        let both = Because {
            says: says(),
            rule: Rule::Rows(vec![RowId::new("us-DT4"), RowId::new("us-DT7")]),
        };
        assert_eq!(both.rule(), Arg::from("us-DT4, us-DT7"));
        assert_eq!(both.source(&rows), rows.sources(both.rows()));
    }
}
