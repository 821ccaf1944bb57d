//! Why a deed is not taken: what is wrong, where, and what would do.

use crate::code::LotCode;
use crate::messages;
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
}

/// The sorts of refusal.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RefusalKind {
    /// A value that cannot be.
    CannotBe,
    /// A well-formed code that was never given out, or a deed that never was.
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
    /// It needs an approval (a variance, a plan number) that is not on file.
    NotApproved,
    /// A cured piece that nobody has released.
    NotReleased,
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
