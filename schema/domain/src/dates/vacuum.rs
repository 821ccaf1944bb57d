//! Packs without air: their own days, the approval that some of them need, and the fish that does not go into them.

use super::making::{Chain, Making};
use super::says::DateSays;
use super::{Because, Vacuum};
use crate::refusal::{Refusal, Result};
use crate::says::Arg;
use crate::words::{Packaging, ProductKind};

impl Making<'_> {
    pub(super) fn vacuum(&self, chain: &mut Chain) -> Result<()> {
        let Some(packaging) = self.packaging else {
            return Ok(());
        };
        let Some(rules) = &self.law.dates.vacuum else {
            chain
                .warnings
                .push(DateSays::NoVacuumRule { packaging }.into());
            return Ok(());
        };
        self.approved_for_vacuum(rules, packaging, chain)?;
        self.no_fish(rules, packaging, chain)?;
        if let Some(limit) = rules.limits.iter().find(|limit| limit.fits(self)) {
            let (day, days) = (self.day, limit.count().days);
            let date = limit.last_day(day);
            let says = DateSays::NoAir { day, days, date };
            chain.cap(date, Because::law(says, &limit.keeps.days.row));
        }
        if let Some(cold) = &rules.cold {
            let degrees = Arg::from(cold.degrees);
            chain.warnings.push(DateSays::NoAirCold { degrees }.into());
        }
        Ok(())
    }

    /// What makes fish poisonous without air grows also in the cold, and nobody smells it: only frozen, or under an
    /// approval.
    fn no_fish(&self, rules: &Vacuum, packaging: Packaging, chain: &mut Chain) -> Result<()> {
        let (true, Some(row), None) = (self.is_unfrozen_fish, &rules.fish, self.approved) else {
            return Ok(());
        };
        let detail = DateSays::NoAirFish {
            product: self.name(),
            packaging,
            source: self.law.rows.source(row),
        };
        self.broke(Because::law(detail, row), chain)
    }

    fn approved_for_vacuum(
        &self,
        rules: &Vacuum,
        packaging: Packaging,
        chain: &mut Chain,
    ) -> Result<()> {
        use ProductKind::*;
        let house_made =
            matches!(self.product.kind, Cured | Cooked | Stock | Rendered) && self.stable.is_none();
        if let (true, Some(row), None) = (house_made, &rules.approval, self.approved) {
            let detail = DateSays::NoAirUnapproved {
                product: self.name(),
                packaging,
                source: self.law.rows.source(row),
            };
            self.broke(Because::law(detail, row), chain)?;
        }
        match (self.approved, &rules.approval, &rules.plan) {
            (Some(number), Some(row), _) => {
                let says = DateSays::NoAirApproved {
                    number: number.to_owned(),
                };
                chain.because.push(Because::law(says, row));
            }
            (None, _, Some(row)) => {
                let source = self.law.rows.source(row);
                chain.warnings.push(DateSays::NoAirPlan { source }.into());
            }
            _ => {}
        }
        Ok(())
    }

    /// What may not be packed so: asked about, and failed where it was done all the same.
    fn broke(&self, because: Because, chain: &mut Chain) -> Result<()> {
        if !self.as_it_happened {
            return Err(Refusal::limit("packaging", &because));
        }
        chain.failed = Some(because);
        Ok(())
    }
}
