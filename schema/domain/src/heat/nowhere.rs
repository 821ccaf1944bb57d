//! A cook that met no table at all, of this place or of any other: nothing shows that it was cooked.

use super::judgement::{Answer, Judgement};
use super::rules::HeatRules;
use super::says::CookSays;
use super::table::{HeatTable, HoldStep};
use crate::rows::{Finding, Gravity, Rows};

/// The judgement of a cook that met none of the tables that were made for it, with what would do.
///
/// Where every one of them says too little, and somebody has read one of them, that is no question of which
/// place's figure holds here: the cook is asked. Where none was made for it, or nobody has read the one that
/// was, every table that there is has to say so: food that none of them calls cooked is not.
pub(super) fn none_met(
    judged: Judgement,
    missed: Vec<(&[&HeatTable], Judgement)>,
    rules: &HeatRules,
    rows: &Rows,
    floor: impl Fn(&HeatTable) -> Judgement,
) -> Judgement {
    let read = |tables: &[&HeatTable]| tables.iter().all(|table| rows.is_confirmed(table.row()));
    let is_short = |(_, judged): &(Vec<&HeatTable>, Judgement)| judged.answer == Answer::Short;
    let own = missed.into_iter();
    let own: Vec<_> = own.map(|(tables, of)| (tables.to_vec(), of)).collect();
    let some_read = own.iter().any(|(tables, _)| read(tables));
    let all = match some_read {
        true => own,
        false => {
            let every = rules.lethality.iter().map(|of| &of.table);
            let every = every.map(|table| (vec![table], floor(table)));
            own.into_iter().chain(every).collect()
        }
    };
    if !all.iter().all(is_short) {
        return judged;
    }
    let read = all.iter().filter(|(tables, _)| read(tables));
    // The one that it came nearest to; where no time would have done, the first.
    let nearest = read.min_by_key(|(_, of)| (of.missing.is_none(), of.missing));
    let Some((tables, _)) = nearest else {
        return judged;
    };
    let hottest = tables.iter().filter_map(|table| table.steps().last());
    let hottest = hottest.max_by_key(|step| step.at_least.temperature());
    let Some(HoldStep { at_least, hold }) = hottest.copied() else {
        return judged;
    };
    let says = match hold.is_zero() {
        true => CookSays::NoneMetAtOnce { at_least },
        false => CookSays::NoneMet { at_least, hold },
    };
    let met = tables.iter().map(|table| table.row().clone());
    Judgement {
        answer: Answer::Short,
        ..judged.with([Finding::new(Gravity::Refuse, says, met)])
    }
}
