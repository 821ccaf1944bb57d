//! The record for a spreadsheet: a file for each noun, in the words of the kitchen's first language, weights in grams,
//! times by the kitchen's clock. Derived from the tables, and not read back.

use super::says::SheetSays::{self, *};
use super::{Trouble, cannot, paper_file};
use crate::ids::shown_id;
use crate::logbook::cells::{File, MARK};
use crate::read::names::Names;
use chrono::{NaiveDate, NaiveDateTime};
use domain::incident::Hazard;
use domain::words::{Allergen, Being, DeedKind, PaperKind, Species, State};
use rust_decimal::Decimal;
use std::fs;
use std::io::{BufWriter, Write};
use std::path::Path;
use store::Conn;
use store::papers::{self, Which};
use store::sheets::{self, Keyed};
use words::Speech;

/// A line of a sheet as it is written.
struct Line<'a> {
    file: File,
    names: &'a Names,
    speech: &'a Speech,
}

impl Line<'_> {
    fn text(&mut self, text: &str) -> &mut Self {
        self.file.text(text);
        self
    }

    fn maybe(&mut self, text: Option<&str>) -> &mut Self {
        self.text(text.unwrap_or_default())
    }

    fn grams(&mut self, milligrams: i64) -> &mut Self {
        self.file.number(Decimal::new(milligrams, 3));
        self
    }

    fn count(&mut self, count: impl Into<i64>) -> &mut Self {
        self.file.number(Decimal::from(count.into()));
        self
    }

    fn day(&mut self, day: Option<NaiveDate>) -> &mut Self {
        match day {
            Some(day) => self.file.bare(&day.to_string()),
            None => self.file.nothing(),
        }
        self
    }

    fn moment(&mut self, at: Option<NaiveDateTime>) -> &mut Self {
        match at {
            Some(at) => self.file.moment(at.and_utc(), self.names.zone()),
            None => self.file.nothing(),
        }
        self
    }

    fn yes(&mut self, is: bool) -> &mut Self {
        let yes = is.then(|| self.speech.say(&Yes.into()));
        self.maybe(yes.as_deref())
    }

    fn id(&mut self, uid: &[u8]) -> &mut Self {
        self.text(&shown_id(uid))
    }

    /// The word of a vocabulary in the kitchen's language; as it is kept where it is none.
    fn word(&mut self, kept: &str, says: Option<domain::says::Says>) -> &mut Self {
        let says = says.map_or_else(|| kept.to_owned(), |says| self.speech.say(&says));
        self.text(&says)
    }

    fn deed(&mut self, kind: &str) -> &mut Self {
        self.word(kind, DeedKind::parse(kind).map(DeedKind::says))
    }

    fn place(&mut self, key: Option<i32>) -> &mut Self {
        let name = key.map(|key| self.names.place_of_key(key));
        self.maybe(name.as_deref())
    }

    /// Words of a vocabulary, parted by blanks.
    fn words(
        &mut self,
        kept: &str,
        says: impl Fn(&str) -> Option<domain::says::Says>,
    ) -> &mut Self {
        let all: Vec<String> = kept
            .split_whitespace()
            .map(|word| says(word).map_or_else(|| word.to_owned(), |says| self.speech.say(&says)))
            .collect();
        self.text(&all.join(", "))
    }
}

/// Writes all sheets into a folder.
///
/// # Errors
/// In words: the record cannot be read, or a file cannot be written.
pub(super) fn write(conn: &mut Conn, names: &Names, folder: &Path) -> Result<(), Trouble> {
    let speech = &names.speech;
    fs::create_dir(folder).map_err(|error| cannot(folder, &error))?;
    let lots = [
        Lot,
        Product,
        MadeAt,
        MadeBy,
        Deed,
        Person,
        Note,
        Voided,
        Packs,
        UseBy,
        SheetSays::Allergens,
        MayContain,
        SheetSays::Species,
        Made,
        TakenBack,
        Used,
        Sold,
        Served,
        Discarded,
        Shipped,
        Returned,
        Lost,
        Unexplained,
        OnHand,
        Farm,
        KilledOn,
        Carcass,
        Supplier,
        SupplierLot,
    ];
    let to = Sheet {
        names,
        speech,
        folder,
    };
    to.write(conn, "lots", &lots, sheets::lots, |line, row| {
        let (contains, may) = store::lots::contains(&row.allergens);
        let allergen = |word: &str| Allergen::parse(word).map(Allergen::says);
        line.text(&row.code)
            .text(&names.product(&row.product))
            .moment(Some(row.made_at));
        line.deed(&row.made_by)
            .id(&row.uid)
            .text(&row.person)
            .maybe(row.note.as_deref());
        line.yes(row.voided).count(row.pack_count).day(row.use_by);
        line.words(contains, allergen).words(may, allergen);
        line.words(&row.species, |word| {
            domain::words::Species::parse(word).map(Species::says)
        });
        for milligrams in [
            row.made_mg,
            row.taken_back_mg,
            row.used_mg,
            row.sold_mg,
            row.served_mg,
            row.discarded_mg,
            row.shipped_mg,
            row.returned_mg,
            row.lost_mg,
            row.unexplained_mg,
            row.on_hand_mg,
        ] {
            line.grams(milligrams);
        }
        let farm = row.farm.as_deref().map(|code| names.farm(code));
        line.maybe(farm.as_deref())
            .day(row.killed_on)
            .maybe(row.carcass.as_deref());
        line.maybe(row.supplier.as_deref())
            .maybe(row.supplier_lot.as_deref());
    })?;
    let packs = [
        Lot,
        Pack,
        Made,
        Left,
        Is,
        SheetSays::Place,
        SheetSays::State,
        UseBy,
    ];
    to.write(conn, "packs", &packs, sheets::packs, |line, row| {
        line.text(&row.code)
            .count(row.number)
            .grams(row.made_mg)
            .grams(row.left_mg);
        line.word(&row.being, Being::parse(&row.being).map(Being::says));
        line.place(Some(row.place_id));
        line.word(&row.state, State::parse(&row.state).map(State::says))
            .day(row.use_by);
    })?;
    let uses = [Lot, Pack, Used, What, At, Deed];
    to.write(conn, "uses", &uses, sheets::uses, |line, row| {
        line.text(&row.code)
            .count(row.number)
            .grams(row.mg)
            .deed(&row.kind);
        line.moment(Some(row.at)).id(&row.uid);
    })?;
    let animals = [
        Animal,
        Farm,
        SheetSays::Species,
        KilledOn,
        Abattoir,
        Carcass,
        Tag,
        Head,
    ];
    to.write(conn, "animals", &animals, sheets::animals, |line, row| {
        line.id(&row.uid).text(&names.farm(&row.farm));
        line.word(
            &row.species,
            Species::parse(&row.species).map(Species::says),
        );
        line.day(Some(row.killed_on))
            .maybe(row.abattoir.as_deref())
            .maybe(row.carcass.as_deref());
        line.maybe(row.tag.as_deref()).count(row.head);
    })?;
    let deeds = [
        Deed,
        What,
        At,
        RecordedAt,
        Person,
        SheetSays::Place,
        Note,
        VoidedBecause,
    ];
    to.write(conn, "deeds", &deeds, sheets::deeds, |line, row| {
        line.id(&row.uid)
            .deed(&row.kind)
            .moment(Some(row.at))
            .moment(Some(row.recorded_at));
        line.text(&row.person)
            .place(row.place_id)
            .maybe(row.note.as_deref());
        line.maybe(row.voided.as_deref());
    })?;
    let incidents = [
        Recall,
        SheetSays::Hazard,
        Drill,
        ToldBy,
        ToldAt,
        Why,
        ClosedAt,
    ];
    to.write(
        conn,
        "incidents",
        &incidents,
        sheets::incidents,
        |line, row| {
            line.text(&row.number);
            line.word(
                &row.hazard,
                domain::incident::Hazard::parse(&row.hazard).map(Hazard::says),
            );
            line.yes(row.drill)
                .text(&row.told_by)
                .moment(Some(row.told_at))
                .text(&row.why);
            line.moment(row.closed_at);
        },
    )?;
    to.papers(conn)
}

/// Where sheets go.
struct Sheet<'a> {
    names: &'a Names,
    speech: &'a Speech,
    folder: &'a Path,
}

impl Sheet<'_> {
    fn line(&self) -> Line<'_> {
        Line {
            file: File::default(),
            names: self.names,
            speech: self.speech,
        }
    }

    fn head(&self, columns: &[SheetSays]) -> String {
        let mut head = self.line();
        for column in columns {
            let says = self.speech.say(&column.clone().into());
            head.text(&says);
        }
        head.file.end_line();
        format!("{MARK}{}", head.file.out)
    }

    /// Writes one sheet, some rows at a time.
    fn write<R: Keyed>(
        &self,
        conn: &mut Conn,
        name: &str,
        columns: &[SheetSays],
        find: fn(&mut Conn, i32) -> store::Result<Vec<R>>,
        put: impl Fn(&mut Line<'_>, &R),
    ) -> Result<(), Trouble> {
        let path = self.folder.join(format!("{name}.csv"));
        let file = fs::File::create_new(&path).map_err(|error| cannot(&path, &error))?;
        let mut file = BufWriter::new(file);
        let mut some = self.head(columns);
        let mut after = i32::MIN;
        loop {
            file.write_all(some.as_bytes())
                .map_err(|error| cannot(&path, &error))?;
            let rows = find(conn, after)?;
            let Some(last) = rows.last() else { break };
            after = last.key();
            let mut line = self.line();
            for row in &rows {
                put(&mut line, row);
                line.file.end_line();
            }
            some = line.file.out;
        }
        Ok(file.flush().map_err(|error| cannot(&path, &error))?)
    }

    fn papers(&self, conn: &mut Conn) -> Result<(), Trouble> {
        let columns = [
            Paper,
            SheetSays::File,
            Kind,
            Name,
            Belongs,
            What,
            At,
            Person,
            Note,
            Bytes,
            Sha256,
            Voided,
            Thinned,
        ];
        let path = self.folder.join("papers.csv");
        let mut text = self.head(&columns);
        let mut before = None;
        loop {
            let some = papers::find(conn, Which::Newest(before), 500)?;
            let Some(last) = some.last() else { break };
            before = Some(last.row.id);
            let mut line = self.line();
            for paper in &some {
                let row = &paper.row;
                line.id(&paper.uid);
                let file = (!paper.thinned).then(|| format!("papers/{}", paper_file(paper)));
                line.maybe(file.as_deref());
                line.word(&row.kind, PaperKind::parse(&row.kind).map(PaperKind::says));
                line.maybe(row.name.as_deref())
                    .id(&paper.of)
                    .deed(paper.of_kind.as_str());
                line.moment(Some(paper.at))
                    .text(&paper.person)
                    .maybe(paper.note.as_deref());
                line.count(row.bytes)
                    .text(&row.hash)
                    .yes(paper.voided)
                    .yes(paper.thinned);
                line.file.end_line();
            }
            text.push_str(&line.file.out);
        }
        Ok(fs::write(&path, text).map_err(|error| cannot(&path, &error))?)
    }
}
