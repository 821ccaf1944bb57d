//! A deed of packing as written without any checks: one statement for each
//! table, many rows in each, all in one commit.

use diesel::connection::SimpleConnection;
use gambrel::app::App;
use gambrel::deeds::step;
use gambrel::wire::asked::StepAsked;
use std::fmt::Write;
use store::packs::PackChoice;
use store::reasons::{self, ReasonRow};
use store::{Conn, deeds, lots, packs};

/// Keys start here, far above those that the service gives out.
const FIRST: i32 = 1_000_000_000;

/// What is written again and again.
pub struct Like {
    deed: deeds::DeedRow,
    answer: String,
    lot: lots::LotRow,
    pack: packs::PackRow,
    reasons: Vec<ReasonRow>,
    source: i32,
    source_pack: i32,
    source_seq: i32,
    count: usize,
    packs_a_lot: usize,
    next: i32,
}

impl Like {
    /// The rows of a deed that the service takes now, to be written again as drawn from `source`.
    pub fn the_deed(app: &App, asked: &StepAsked, source: &str) -> Like {
        step::take(&gambrel::caller::Caller::new(app), asked).expect("it is taken");
        let read = |conn: &mut Conn| {
            let deed = deeds::by_uid(conn, asked.id.0.as_bytes())?.expect("it was taken");
            let made = lots::of_deed(conn, deed.id)?;
            let packs = packs::of_lot(conn, made[0].id, &PackChoice::All)?;
            let code = domain::code::LotCode::read(source).expect("a code");
            let source = lots::by_code(conn, &code)?.expect("it was received");
            Ok::<Like, store::Error>(Like {
                answer: deeds::answer(conn, deed.id)?,
                source_pack: packs::of_lot(conn, source.id, &PackChoice::All)?[0].id,
                source_seq: source.seq,
                source: source.id,
                count: made.len(),
                packs_a_lot: packs.len(),
                lot: made[0].clone(),
                pack: packs[0].clone(),
                reasons: reasons::of_lot(conn, made[0].id)?,
                deed,
                next: FIRST,
            })
        };
        app.store.look(read).expect("the record is there")
    }

    /// Writes them under fresh keys.
    pub fn write(&mut self, app: &App) {
        let statements = self.statements(matches!(app.store.address(), store::Address::Sqlite(_)));
        let run = |tx: &mut store::Tx<'_>| {
            for statement in &statements {
                match tx.conn {
                    Conn::Sqlite(conn) => conn.batch_execute(statement)?,
                    Conn::Pg(conn) => conn.batch_execute(statement)?,
                }
            }
            Ok::<(), store::Error>(())
        };
        app.store.write(run).expect("the rows are taken");
    }

    fn statements(&mut self, sqlite: bool) -> Vec<String> {
        let Like { lot, pack, .. } = &*self;
        let deed = self.next;
        let uid = format!("{deed:032x}");
        let uid = if sqlite {
            format!("X'{uid}'")
        } else {
            format!("'\\x{uid}'")
        };
        let (at, day, request, answer) = (
            self.deed.at,
            self.deed.day,
            &self.deed.request,
            &self.answer,
        );
        let place = pack.place_id;
        let use_by = pack.use_by.map_or("NULL".into(), |day| format!("'{day}'"));
        let animal = lot.animal_id.map_or("NULL".into(), |key| key.to_string());
        let (mut lot_rows, mut pack_rows) = (String::new(), String::new());
        let mut reason_rows = Vec::new();
        let [later, packaging] = [&lot.later, &lot.packaging].map(|text| quoted(text.as_deref()));
        for nth in 0..self.count as i32 {
            let id = deed + nth;
            let sep = if nth == 0 { "" } else { "," };
            write!(
                lot_rows,
                "{sep}({id},'BYHAND{id}',{deed},{},'{}',{},{},'{}',{animal},'{}','{}',NULL,{place},'{}',{use_by},NULL,\
                 FALSE,1,{},0,0,0,0,0,0,0,0,0,0,{later},{packaging},FALSE)",
                lot.version_id, lot.made_at, lot.made_mg, lot.pack_count, lot.origin, lot.allergens, lot.species,
                lot.born_state, lot.on_hand_mg
            )
            .expect("a string takes it");
            for reason in &self.reasons {
                reason_rows.push(format!(
                    "({},{deed},{id},{})",
                    deed + reason_rows.len() as i32,
                    columns(reason)
                ));
            }
            for number in 1..=self.packs_a_lot as i32 {
                let key = deed + nth * self.packs_a_lot as i32 + number;
                let sep = if pack_rows.is_empty() { "" } else { "," };
                write!(
                    pack_rows,
                    "{sep}({key},{id},{number},{mg},{mg},'on-hand',{place},'{}',{use_by},NULL,FALSE,FALSE)",
                    pack.state, mg = pack.made_mg
                )
                .expect("a string takes it");
            }
        }
        let (source, source_pack, seq) = (self.source, self.source_pack, self.source_seq);
        let all = lot.made_mg * self.count as i64;
        self.next += 1_000;
        self.source_seq += 1;
        let reason_rows = reason_rows.join(",");
        vec![
            format!(
                "INSERT INTO deeds VALUES ({deed},{uid},'pack','{at}',NULL,'{at}','{day}',FALSE,'Cook',{place},NULL,'{request}')"
            ),
            format!("INSERT INTO steps VALUES ({deed},0,{all})"),
            format!("INSERT INTO lots VALUES {lot_rows}"),
            format!("INSERT INTO packs VALUES {pack_rows}"),
            format!(
                "INSERT INTO pack_events VALUES ({deed},{deed},{source},{source_pack},{seq},'used',{all},FALSE,NULL,NULL,'{day}')"
            ),
            format!(
                "UPDATE lots SET seq = seq + 1, on_hand_mg = on_hand_mg - {all}, used_mg = used_mg + {all} WHERE id = {source}"
            ),
            format!(
                "UPDATE packs SET left_mg = left_mg - {all}, being = 'open' WHERE id = {source_pack}"
            ),
            format!("INSERT INTO reasons VALUES {reason_rows}"),
            format!("INSERT INTO answers VALUES ({deed},'{answer}')"),
        ]
    }
}

/// A text as SQL.
fn quoted(text: Option<&str>) -> String {
    text.map_or("NULL".into(), |text| {
        format!("'{}'", text.replace('\'', "''"))
    })
}

/// What a reason says, as SQL, after its keys.
fn columns(reason: &ReasonRow) -> String {
    let ReasonRow {
        topic,
        says,
        rule,
        source,
        said,
        basis,
        ..
    } = reason;
    let told = [topic, says, rule, source].map(|text| quoted(Some(text)));
    let kept = [said, basis].map(|text| quoted(text.as_deref()));
    format!("{},{}", told.join(","), kept.join(","))
}
