//! Why a deed is not taken: what is wrong, where, and what would be accepted.

use crate::code::LotCode;
use crate::dates::Because;
use crate::messages;
use crate::rows::RowId;
use crate::says::Says;

messages! {
    /// What is said of any refusal.
    RefusalSays in "refusal" {
        NeverIssued "never-issued" { lot: LotCode },
    }
}

/// A deed that the record does not take. Nothing of it is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal {
    /// What sort of refusal it is; the outside turns it into a status.
    pub kind: RefusalKind,
    /// The field at fault, as the caller wrote it: `inputs[0].grams`.
    pub field: Option<String>,
    /// For a tired cook: what is wrong, and what would do.
    pub detail: Says,
    /// For a void: what stands in the way, newest first, each as a deed's place in the record.
    pub in_the_way: Vec<i32>,
    /// The rows of a limit that stands in its way.
    pub rows: Box<[RowId]>,
}

/// The sorts of refusal.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RefusalKind {
    /// A value that cannot be.
    CannotBe,
    /// A well-formed code that was never given out, or a deed that does not exist.
    NeverIssued,
    /// More is asked for than is left.
    NotEnough,
    /// The lot was voided.
    Voided,
    /// Later deeds depend on it.
    InTheWay,
    /// It contradicts what is on record.
    Clash,
    /// A missing pack: it must be counted before anything else.
    Missing,
    /// A cured piece that nobody has released.
    NotReleased,
    /// A cured piece that cannot be released yet.
    NotReady,
    /// A limit of the law or the house. What was done can be recorded all the same, as it happened.
    Limit,
    /// A stop stands on it: a limit was broken when it was made.
    Stopped,
    /// A person holds it.
    Held,
}

impl RefusalKind {
    /// May a deed that was done be recorded all the same, as it happened?
    pub const fn may_be_told(self) -> bool {
        use RefusalKind::*;
        matches!(self, Limit | Stopped | Held | NotReleased)
    }
}

impl Refusal {
    /// A value that cannot be, in the named field.
    pub fn cannot_be(field: impl Into<String>, detail: impl Into<Says>) -> Self {
        Refusal::new(RefusalKind::CannotBe, field, detail)
    }

    /// A refusal about one field.
    pub fn new(kind: RefusalKind, field: impl Into<String>, detail: impl Into<Says>) -> Self {
        Refusal {
            kind,
            field: Some(field.into()),
            detail: detail.into(),
            in_the_way: Vec::new(),
            rows: Box::default(),
        }
    }

    /// A limit that was broken: with the numbers, and its rows.
    pub fn limit(field: impl Into<String>, because: &Because) -> Self {
        Refusal {
            rows: because.rows().into(),
            ..Refusal::new(RefusalKind::Limit, field, because.says.clone())
        }
    }

    /// A code that reads well but was never given out.
    pub fn never_issued(field: impl Into<String>, code: &LotCode) -> Self {
        let detail = RefusalSays::NeverIssued { lot: code.clone() };
        Refusal::new(RefusalKind::NeverIssued, field, detail)
    }

    /// The same refusal, its field within another: `packaging` within `outputs[0].`.
    pub fn within(mut self, outer: &str) -> Self {
        self.field = self.field.map(|field| format!("{outer}{field}"));
        self
    }

    /// The same refusal with the deeds that stand in its way.
    pub fn because_of(mut self, deeds: Vec<i32>) -> Self {
        self.in_the_way = deeds;
        self
    }
}

/// A plan, or the reason why there is none.
pub type Result<T> = std::result::Result<T, Refusal>;
