//! The report of an incident on paper: its clock, its lots, what was counted, decided and disposed of, whom to call,
//! what was sold, the notices, the picture, and room to sign.

use super::facts::{IncidentFacts, LotFacts, SumsFacts, in_language};
use super::notice::notices;
use super::picture::{local, picture};
use super::says::ReportSays;
use super::tables;
use crate::pictures::family_on_paper;
use domain::grams::Grams;
use domain::incident::Hazard;
use domain::says::{Arg, Says};
use labels::report::{Document, Line, Paper, Part, Report, Sort, document, text};
use labels::{Length, PdfError, Weight};
use store::chain::Anchor;
use words::{Heat, Language, Mass, Speech, capital};

/// The file, in a language.
///
/// # Errors
/// The PDF library was not content.
pub fn paper(facts: &IncidentFacts, language: Language) -> Result<Vec<u8>, PdfError> {
    let speech = Speech {
        language,
        mass: if facts.kitchen.pounds {
            Mass::Pounds
        } else {
            Mass::Metric
        },
        // No degree stands in a report.
        heat: Heat::Celsius,
        today: None,
        place: None,
        on_label: false,
    };
    let writer = Writer { facts, speech };
    let parts = writer.parts();
    let laid = Document {
        title: facts.number.clone(),
        heading: writer.title(),
        paper: writer.paper(),
        parts,
    };
    document(&laid, |page, of| {
        let (page, of) = (Arg::from(page), Arg::from(of));
        writer.say(ReportSays::PageOf { page, of })
    })
}

/// Facts, for one reader.
pub(super) struct Writer<'a> {
    pub facts: &'a IncidentFacts,
    pub speech: Speech,
}

/// A line without a label.
pub(super) fn plain(text: impl Into<String>) -> Line {
    Line {
        label: None,
        text: text.into(),
        sort: Sort::Plain,
    }
}

/// A line that is to be seen.
pub(super) fn mark(text: impl Into<String>) -> Line {
    Line {
        sort: Sort::Mark,
        ..plain(text)
    }
}

impl Writer<'_> {
    pub fn say(&self, says: ReportSays) -> String {
        self.speech.say(&Says::from(says))
    }

    /// With a capital, at the head of a column or a cell.
    pub fn head(&self, says: ReportSays) -> String {
        capital(&self.say(says))
    }

    pub fn grams(&self, grams: Grams) -> String {
        self.speech.grams(grams)
    }

    pub fn moment(&self, at: &str) -> String {
        self.speech.moment(local(at))
    }

    /// A figure under its name; nothing where it is none.
    pub fn figure(&self, says: ReportSays, grams: Grams) -> Option<Line> {
        (grams != Grams::ZERO).then(|| Line {
            label: Some(self.head(says)),
            text: self.grams(grams),
            sort: Sort::Plain,
        })
    }

    pub fn labelled(&self, says: ReportSays, text: &str) -> Option<Line> {
        (!text.is_empty()).then(|| Line {
            label: Some(self.head(says)),
            text: text.to_owned(),
            sort: Sort::Plain,
        })
    }

    pub fn title(&self) -> String {
        let number = self.facts.number.clone();
        match self.facts.drill {
            true => self.say(ReportSays::DrillTitle { number }),
            false => self.say(ReportSays::Title { number }),
        }
    }

    /// What became of a weight since the call.
    pub fn sums(&self, sums: &SumsFacts) -> Vec<Line> {
        let figures = [
            (ReportSays::SumBook, sums.book_grams),
            (ReportSays::SumMissing, sums.missing_grams),
            (ReportSays::SumSurplus, sums.surplus_grams),
            (ReportSays::SumBack, sums.back_grams),
            (ReportSays::SumDestroyed, sums.destroyed_grams),
            (ReportSays::SumReturned, sums.returned_grams),
            (ReportSays::SumGone, sums.gone_grams),
            (ReportSays::SumLeft, sums.left_grams),
        ];
        let figures = figures.into_iter();
        figures
            .filter_map(|(says, grams)| self.figure(says, grams.0))
            .collect()
    }

    /// Does what was disposed of agree with the count?
    pub fn agreement(&self, lot: &LotFacts) -> Option<Line> {
        let packs = lot.uncounted();
        if packs > 0 {
            return Some(mark(self.say(ReportSays::NotCounted { packs })));
        }
        if lot.packs.is_empty() {
            return None;
        }
        let weight = lot.sums.left_grams.0;
        Some(match weight {
            Grams::ZERO => plain(self.say(ReportSays::Agrees)),
            _ => mark(self.say(ReportSays::StillThere { weight })),
        })
    }

    pub fn table(
        &self,
        heading: ReportSays,
        columns: Vec<(ReportSays, i64)>,
        rows: Vec<Vec<Vec<Line>>>,
        empty: ReportSays,
    ) -> Part {
        let columns = columns.into_iter();
        Part::Table(Report {
            title: self.facts.number.clone(),
            heading: self.head(heading),
            under: Vec::new(),
            code: None,
            paper: self.paper(),
            columns: columns
                .map(|(says, wide)| (self.head(says), wide))
                .collect(),
            rows,
            empty: self.say(empty),
        })
    }

    fn paper(&self) -> Paper {
        match self.facts.kitchen.profile.as_str() {
            "us" | "ca" => Paper::Letter,
            _ => Paper::A4,
        }
    }

    fn parts(&self) -> Vec<Part> {
        let mut parts = vec![self.first()];
        parts.push(tables::lots(self));
        parts.push(tables::differences(self));
        parts.push(tables::disposals(self));
        parts.push(tables::people(self));
        parts.push(tables::sold(self));
        parts.push(tables::outside(self));
        parts.push(tables::decisions(self));
        parts.push(self.notices());
        parts.push(self.drawn());
        parts.push(tables::signatures(self));
        parts
    }

    /// The first sheet: what it is about, its sums, what it rests on, and the clock.
    fn first(&self) -> Part {
        let facts = self.facts;
        let mut under = vec![match &facts.kitchen.address {
            Some(address) => format!("{}, {address}", facts.kitchen.name),
            None => facts.kitchen.name.clone(),
        }];
        let about = facts.about(self.speech.language.tag());
        under.extend((!about.is_empty()).then_some(about));
        let hazard = Hazard::parse(&facts.hazard).unwrap_or(Hazard::Other);
        under.push(self.say(ReportSays::told(
            &facts.told_by,
            local(&facts.told_at),
            hazard,
        )));
        under.extend((!facts.why.is_empty()).then(|| facts.why.clone()));
        let sums = &facts.sums;
        let on_hand = facts
            .lots
            .iter()
            .filter(|lot| lot.sums.book_grams.0 > Grams::ZERO);
        under.push(self.say(ReportSays::Book {
            lots: on_hand.count(),
            packs: facts.to_count,
            weight: sums.book_grams.0,
        }));
        under.push(self.say(ReportSays::Found {
            missing: sums.missing_grams.0,
            surplus: sums.surplus_grams.0,
            back: sums.back_grams.0,
        }));
        under.push(self.say(ReportSays::Ended {
            destroyed: sums.destroyed_grams.0,
            returned: sums.returned_grams.0,
            gone: sums.gone_grams.0,
            left: sums.left_grams.0,
        }));
        if facts.uncounted > 0 {
            under.push(self.say(ReportSays::Open {
                uncounted: facts.uncounted,
                packs: facts.to_count,
            }));
        }
        under.push(self.say(ReportSays::AsOf {
            at: local(&facts.as_of),
        }));
        let digest = facts.scope_digest.clone();
        under.push(self.say(ReportSays::ScopeDigest { digest }));
        let record = facts.record_digest.clone();
        under.extend(record.map(|digest| self.say(ReportSays::RecordDigest { digest })));
        let anchor = facts.anchor.as_deref().and_then(Anchor::parse);
        let line = anchor.as_ref().map(Anchor::in_groups);
        under.extend(line.map(|line| self.say(ReportSays::Anchor { line })));
        Part::Table(Report {
            title: facts.number.clone(),
            heading: self.title(),
            under,
            code: anchor.map(|anchor| anchor.to_string()),
            paper: self.paper(),
            columns: vec![
                (self.head(ReportSays::Clock), 40),
                (self.head(ReportSays::When), 40),
                (self.head(ReportSays::After), 40),
            ],
            rows: tables::clock(self),
            empty: String::new(),
        })
    }

    fn notices(&self) -> Part {
        let rows = notices(self.facts).into_iter().map(|notice| {
            let titled = |lines: Vec<String>| {
                let title = (!lines.is_empty()).then(|| mark(notice.title.clone()));
                title
                    .into_iter()
                    .chain(lines.into_iter().map(plain))
                    .collect()
            };
            vec![
                titled(notice.customers.clone()),
                titled(notice.shelf.clone()),
            ]
        });
        self.table(
            ReportSays::Notices,
            vec![(ReportSays::ToCustomers, 60), (ReportSays::OnShelf, 40)],
            rows.collect(),
            ReportSays::NothingSold,
        )
    }

    fn drawn(&self) -> Part {
        let language = self.speech.language.tag();
        let (corner, high) = Document::room(self.paper());
        let family = picture(self.facts, language);
        let (x, y) = corner;
        let mut sheets = family_on_paper(&family, &self.speech, (x, y + Length::mm(3.0)), high);
        if let Some(first) = sheets.first_mut() {
            let heading = self.head(ReportSays::Picture);
            let size = Length::mm(6.4);
            first.push(text(x, y, size, Weight::Bold, &heading));
        }
        Part::Drawn(sheets)
    }

    /// The name of something in the reader's language.
    pub fn named(&self, names: &super::facts::InEach, otherwise: &str) -> String {
        in_language(names, self.speech.language.tag(), otherwise)
    }
}
