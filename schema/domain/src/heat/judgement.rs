//! What comes out of a check of times and temperatures.

use crate::rows::{Finding, Gravity, RowId, Rows};
use crate::says::Says;
use crate::words::words;
use chrono::TimeDelta;

words! {
    /// Enough, too little, or not for a table to say; the better first.
    Answer {
        /// The rule is met.
        Enough = "enough",
        /// A person decides: a reading is missing, or the place has no rule.
        Decide = "decide",
        /// The rule is not met.
        Short = "short",
    }
}

/// An answer with its reasons.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Judgement {
    /// Enough, too little, or for a person to decide.
    pub answer: Answer,
    /// How much time is missing, where more of it would do.
    pub missing: Option<TimeDelta>,
    /// The reasons, with their rows.
    pub findings: Vec<Finding>,
    /// Do the readings leave open whether a confirmed row of the place was kept?
    pub untold: bool,
}

impl Judgement {
    /// It is enough, for this reason.
    pub fn enough(finding: Finding) -> Judgement {
        Judgement {
            answer: Answer::Enough,
            missing: None,
            findings: vec![finding],
            untold: false,
        }
    }

    /// It is too little.
    pub fn short(missing: Option<TimeDelta>, finding: Finding) -> Judgement {
        Judgement {
            answer: Answer::Short,
            missing,
            findings: vec![finding],
            untold: false,
        }
    }

    /// A person decides.
    pub fn decide(finding: Finding) -> Judgement {
        Judgement {
            answer: Answer::Decide,
            missing: None,
            findings: vec![finding],
            untold: false,
        }
    }

    /// A person decides, because the readings leave open whether a row was kept; a confirmed row asks that
    /// they tell.
    pub fn untold(rows: &Rows, row: &RowId, says: impl Into<Says>) -> Judgement {
        Judgement {
            untold: rows.is_confirmed(row),
            ..Judgement::decide(Finding::new(Gravity::Warn, says, [row.clone()]))
        }
    }

    /// Both must hold: the worse answer, the longer wait, all the reasons.
    pub fn and(mut self, other: Judgement) -> Judgement {
        self.answer = self.answer.max(other.answer);
        self.missing = self.missing.max(other.missing);
        self.findings.extend(other.findings);
        self.untold |= other.untold;
        self
    }

    /// The same with one more reason to look; enough becomes a decision.
    pub fn but(mut self, finding: Finding) -> Judgement {
        self.answer = self.answer.max(Answer::Decide);
        self.findings.push(finding);
        self
    }

    /// The same, where what stands against it stops nobody: it is another place's rule.
    pub fn warned(mut self) -> Judgement {
        for finding in &mut self.findings {
            finding.gravity = finding.gravity.min(Gravity::Warn);
        }
        self.untold = false;
        self
    }

    /// The same with a word more.
    pub fn with(mut self, findings: impl IntoIterator<Item = Finding>) -> Judgement {
        self.findings.extend(findings);
        self
    }

    /// May the work go on without a person's decision?
    pub fn is_enough(&self) -> bool {
        self.answer == Answer::Enough
    }

    /// Does a confirmed row stand against it?
    pub fn refuses(&self) -> bool {
        self.answer == Answer::Short && self.findings.iter().any(Finding::refuses)
    }

    /// Does it stand in the way: by a row that was read, broken, or perhaps broken?
    pub fn shuts(&self) -> bool {
        self.refuses() || self.untold
    }

    /// The gravest of the reasons.
    pub fn gravity(&self) -> Gravity {
        self.findings
            .iter()
            .map(|finding| finding.gravity)
            .max()
            .unwrap_or(Gravity::Note)
    }
}
