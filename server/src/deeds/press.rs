//! Labels that are asked for become rows of the record: for a printer, or for a document.

use super::facts::Facts;
use super::incident;
use super::order::Order;
use super::perform::known_deed;
use super::says::PrintDeedSays;
use crate::app::App;
use crate::error::{Error, Problem, Result};
use crate::label_facts::{self, Prepared, Wanted, nothing_to_label};
use crate::lists::List;
use crate::printing::capabilities::Capabilities;
use crate::printing::client::Failure;
use crate::printing::kept::apart;
use crate::printing::seen::labels_for;
use crate::printing::{before, reprint, words};
use crate::problems::TitleSays;
use crate::read::LoadedFamily;
use crate::wrong_labels;
use actix_web::http::StatusCode;
use domain::grams::Grams;
use domain::lot::LotId;
use domain::print::ordinal;
use domain::says::{Arg, Says};
use std::collections::BTreeMap;
use store::family::Extent;
use store::lots::{self, LotRow};
use store::packs::{self, PackRow};
use store::prints::{self, Print, PrintRow};
use store::{entries, kept};

/// The printer as its list entry has it, and as it answered just now.
pub(super) struct PrinterCheck {
    /// What people call it.
    pub name: String,
    /// The labels that it is for, if its entry names any.
    pub templates: Vec<String>,
    /// What it answered.
    pub answer: std::result::Result<Capabilities, Failure>,
}

fn wanted_lots(facts: &mut Facts<'_, '_>, order: Order<'_>) -> Result<Vec<LotRow>> {
    let codes: Vec<String> = match (order.step, order.lot) {
        (Some(step), _) => {
            let deed = known_deed(facts.tx, step, Some("step"))?;
            let made = lots::of_deed(facts.tx.conn, deed.id)?;
            made.into_iter().map(|lot| lot.code).collect()
        }
        (None, Some(lot)) => {
            let code = facts.named(&lot.0, "lot")?.code;
            // 404 for one never given out.
            vec![crate::read::row(facts.tx.conn, &code, "lot")?.code]
        }
        (None, None) => Vec::new(),
    };
    // Locked, so that two who ask for the same pack are one after the other.
    let codes: Vec<&str> = codes.iter().map(String::as_str).collect();
    Ok(lots::lock(facts.tx, &codes)?)
}

/// Makes rows of what is asked.
pub(super) struct Press<'a> {
    order: Order<'a>,
    /// None where no printer of ours prints it.
    looked: Option<&'a PrinterCheck>,
    onto: entries::EntryRow,
    dpi: u16,
    most: usize,
    /// What is to be told.
    pub warnings: Vec<Says>,
}

impl<'a> Press<'a> {
    /// Labels for a printer.
    ///
    /// # Errors
    /// 409 where it prints dots that no label is laid out for.
    pub fn open(
        facts: &mut Facts<'_, '_>,
        order: Order<'a>,
        looked: &'a PrinterCheck,
    ) -> Result<Self> {
        let code = order.printer.unwrap_or_default();
        let printer = entries::get(facts.tx.conn, List::Printers.as_str(), code)?;
        let printer =
            printer.ok_or_else(|| crate::lists::entry::no_such_entry(List::Printers, code))?;
        let mut warnings = Vec::new();
        let dpi = match &looked.answer {
            Ok(capabilities) => {
                warnings.extend(words::trouble(&looked.name, capabilities).map(Says::from));
                match capabilities.dpi() {
                    None if capabilities.resolutions.is_empty() => 203,
                    None => {
                        let dots = capabilities.resolutions.iter().map(|dots| Arg::from(*dots));
                        let detail = PrintDeedSays::Dots {
                            printer: looked.name.clone(),
                            dots: Arg::All(dots.collect()),
                        };
                        return Err(Error::clash("printer", detail));
                    }
                    Some(dpi) => dpi,
                }
            }
            Err(failure) => {
                warnings.push(words::no_answer(&looked.name, failure).into());
                last_dpi(facts, printer.id)?.unwrap_or(203)
            }
        };
        Ok(Press {
            order,
            looked: Some(looked),
            onto: printer,
            dpi,
            most: super::print::MOST,
            warnings,
        })
    }

    /// Labels for a document that a person prints by what means they have.
    pub fn of_document(onto: entries::EntryRow, order: Order<'a>, dpi: u16) -> Self {
        Press {
            order,
            looked: None,
            onto,
            dpi,
            most: label_facts::MOST,
            warnings: Vec::new(),
        }
    }

    /// Every label that is wanted.
    ///
    /// # Errors
    /// 409 where packs were printed before and nobody says why again; whatever the labels refuse.
    pub fn labels(&mut self, facts: &mut Facts<'_, '_>) -> Result<Vec<PrintRow>> {
        let mut rows = Vec::new();
        for lot in wanted_lots(facts, self.order)? {
            rows.extend(self.lot(facts, &lot, rows.len())?);
        }
        match rows.is_empty() {
            true => Err(nothing_to_label(PrintDeedSays::NoLots)),
            false => Ok(rows),
        }
    }

    /// The labels that this printer is for; where its entry names none, those of the sizes that it
    /// has; nothing where it does not say.
    fn among(&self, app: &App) -> Vec<String> {
        let Some(looked) = self.looked else {
            return Vec::new();
        };
        match &looked.answer {
            Ok(capabilities) => labels_for(&looked.templates, capabilities, &app.templates),
            Err(_) if !looked.templates.is_empty() => looked.templates.clone(),
            Err(_) => {
                // Nobody knows yet whether it cuts: a form of a fixed size comes out of every printer.
                let fixed = app.templates.values().filter(|of| of.shortest().is_none());
                fixed.map(|of| of.name().to_owned()).collect()
            }
        }
    }

    fn lot(
        &mut self,
        facts: &mut Facts<'_, '_>,
        lot: &LotRow,
        before: usize,
    ) -> Result<Vec<PrintRow>> {
        let order = self.order;
        let mut packs = order.packs.map(<[u32]>::to_vec);
        if let Some(text) = order.lot
            && let Some(pack) = facts.named(&text.0, "lot")?.pack
        {
            if packs.is_some() {
                return Err(Error::cannot_be("packs", PrintDeedSays::PackNamed));
            }
            packs = Some(vec![pack]);
        }
        if let Some(packs) = &mut packs {
            packs.sort_unstable();
            packs.dedup();
        }
        let template = order.template.map(|template| template.0.clone());
        let wanted = Wanted {
            packs,
            template,
            among: self.among(facts.app),
            dpi: Some(self.dpi),
            all: order.step.is_some(),
            together: order.together,
            window: None,
        };
        let (mut labels, kept) = {
            let id = LotId(lot.id);
            let extent = Extent {
                packs: wanted.packs.as_deref(),
                ..Extent::ANCESTORS
            };
            let reading = LoadedFamily::load(facts.app, facts.tx.conn, &[lot.id], extent)?;
            // Counted before any is drawn: others wait for this transaction.
            let of = reading.family.get(id);
            let labels = before + of.map_or(0, |of| label_facts::count(&of.lot, &wanted));
            if labels > self.most {
                let most = self.most;
                let detail = PrintDeedSays::TooMany { labels, most };
                return Err(Error::cannot_be("packs", detail));
            }
            let labels = label_facts::prepare(facts.app, &reading, id, &wanted)?;
            incident::not_printed(facts, &reading, id, &labels)?;
            let at = facts.moment.at.naive_utc();
            (labels, wrong_labels::Kept::of(facts.tx, &reading, id, at)?)
        };
        let mut earlier_ones = counted(prints::of_lot(facts.tx.conn, lot.id)?)?;
        if order.again.is_none() {
            before::refuse(facts, lot, &labels, &earlier_ones)?;
        }
        let numbers = labels
            .iter()
            .map(|label| i32::try_from(label.pack).unwrap_or(-1));
        let packs = packs::of_lot(
            facts.tx.conn,
            lot.id,
            &packs::PackChoice::Numbers(numbers.collect()),
        )?;
        let packs: BTreeMap<u32, PackRow> = packs
            .into_iter()
            .map(|pack| (pack.number.unsigned_abs(), pack))
            .collect();
        let mut ordinals = Vec::with_capacity(labels.len());
        for label in &mut labels {
            self.refuse_size(label)?;
            let rows = &facts.law().rows;
            for finding in &label.warnings {
                let says = finding.with_sources(rows);
                if !self.warnings.contains(&says) {
                    self.warnings.push(says);
                }
            }
            let earlier = earlier_ones.remove(&label.pack).unwrap_or_default();
            let ordinal = ordinal(earlier.iter().map(|print| print.row.ordinal.unsigned_abs()));
            if ordinal > 0 {
                let frozen = packs[&label.pack].state == domain::words::State::Frozen.as_str();
                let warning = reprint::mark(facts, label, ordinal, &earlier, frozen)?;
                self.warnings.extend(warning.map(Says::from));
            }
            ordinals.push(ordinal);
        }
        self.rows(facts, lot, &labels, &packs, &ordinals, kept)
    }

    fn refuse_size(&self, label: &Prepared) -> Result<()> {
        // Where it does not answer it is asked again when it does.
        let Some(Ok(printer)) = self.looked.map(|looked| &looked.answer) else {
            return Ok(());
        };
        let hundredths = |um: i64| i32::try_from((um + 5) / 10).unwrap_or(i32::MAX);
        let (x, y) = (
            hundredths(label.placed.width.um()),
            hundredths(label.placed.tallest().um()),
        );
        printer.size_for(x, y).map(|_| ()).map_err(|says| {
            Problem::new(
                StatusCode::CONFLICT,
                "size-not-there",
                TitleSays::SizeNotThere,
                says,
            )
            .at("printer")
            .into()
        })
    }

    fn rows(
        &self,
        facts: &mut Facts<'_, '_>,
        lot: &LotRow,
        labels: &[Prepared],
        packs: &BTreeMap<u32, PackRow>,
        ordinals: &[u32],
        mut claims: wrong_labels::Kept,
    ) -> Result<Vec<PrintRow>> {
        let apart = apart(&labels.iter().map(|label| &label.facts).collect::<Vec<_>>());
        let base_id = kept::keep(facts.tx, &apart.base)?;
        let mut forms: BTreeMap<&str, i32> = BTreeMap::new();
        let mut rows = Vec::with_capacity(labels.len());
        for ((label, own), ordinal) in labels.iter().zip(apart.own).zip(ordinals) {
            let form_id = match forms.get(label.form.as_str()) {
                Some(known) => *known,
                None => kept::keep(facts.tx, &label.form)?,
            };
            forms.insert(&label.form, form_id);
            let pack = &packs[&label.pack];
            rows.push(PrintRow {
                id: 0,
                deed_id: facts.deed,
                printer_id: self.onto.id,
                version_id: self.onto.version_id,
                lot_id: lot.id,
                pack_id: pack.id,
                number: pack.number,
                template: label.template.clone(),
                form_id,
                base_id,
                own,
                dpi: i32::from(label.placed.dpi.number()),
                use_by: label.use_by,
                ordinal: i32::try_from(*ordinal).unwrap_or(i32::MAX),
                instead_of: None,
                claims_id: Some(claims.key(facts.tx, label)?),
                net_mg: label.net.map(Grams::milligrams),
            });
        }
        Ok(rows)
    }
}

/// The prints that count, by pack.
fn counted(all: Vec<Print>) -> Result<BTreeMap<u32, Vec<Print>>> {
    let mut counted: BTreeMap<u32, Vec<Print>> = BTreeMap::new();
    for print in all {
        if print.run.known()?.state.counts() {
            counted
                .entry(print.row.number.unsigned_abs())
                .or_default()
                .push(print);
        }
    }
    Ok(counted)
}

/// What the last label for that printer was laid out for, where it cannot be asked.
fn last_dpi(facts: &mut Facts<'_, '_>, printer: i32) -> Result<Option<u16>> {
    let filter = prints::Filter {
        printer: Some(printer),
        ..prints::Filter::default()
    };
    let last = prints::find(facts.tx.conn, filter, 1)?.pop();
    Ok(last.and_then(|last| u16::try_from(last.row.dpi).ok()))
}
