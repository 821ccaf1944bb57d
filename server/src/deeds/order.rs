//! Which labels somebody asks for, of a printer or as a document.

use super::facts::not_too_many;
use super::says::PrintDeedSays;
use crate::error::{Error, Result};
use crate::wire::Line;
use crate::wire::asked::Id;
use crate::wire::prints::{AgainAsked, DocumentAsked, PrintAsked};

/// Which labels are asked for.
#[derive(Debug, Clone, Copy)]
pub(super) struct Order<'a> {
    /// Of which printer.
    pub printer: Option<&'a str>,
    /// Of a lot.
    pub lot: Option<&'a Line>,
    /// Or of all that a deed made.
    pub step: Option<Id>,
    /// Of these packs.
    pub packs: Option<&'a [u32]>,
    /// On this label.
    pub template: Option<&'a Line>,
    /// As one tag for all pieces of the lot.
    pub together: bool,
    /// Why again.
    pub again: Option<&'a AgainAsked>,
}

impl<'a> Order<'a> {
    /// What is asked of a printer.
    pub fn of(asked: &'a PrintAsked) -> Order<'a> {
        Order {
            printer: Some(&asked.printer.0),
            lot: asked.lot.as_ref(),
            step: asked.step,
            packs: asked.packs.as_deref(),
            template: asked.template.as_ref(),
            together: asked.together.unwrap_or(false),
            again: asked.again.as_ref(),
        }
    }

    /// What is asked as a document.
    pub fn of_document(asked: &'a DocumentAsked) -> Order<'a> {
        Order {
            printer: None,
            lot: asked.lot.as_ref(),
            step: asked.step,
            packs: asked.packs.as_deref(),
            template: asked.template.as_ref(),
            together: asked.together.unwrap_or(false),
            again: asked.again.as_ref(),
        }
    }

    /// Refuses what does not go together.
    ///
    /// # Errors
    /// 422.
    pub fn check(&self) -> Result<()> {
        if self.lot.is_some() == self.step.is_some() {
            return Err(Error::cannot_be("lot", PrintDeedSays::LotOrStep));
        }
        if self.step.is_some() && self.packs.is_some() {
            return Err(Error::cannot_be("packs", PrintDeedSays::PacksOfLot));
        }
        not_too_many(self.packs.map_or(0, <[u32]>::len), "packs")?;
        match self.again {
            Some(again) if again.why.0.is_empty() => {
                Err(Error::cannot_be("again.why", PrintDeedSays::WhyAgain))
            }
            _ => Ok(()),
        }
    }
}
