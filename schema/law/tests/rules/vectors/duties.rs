//! Vectors of names, approvals, batches and records.

use super::Input;
use domain::duties::{
    DutyRules, approvals, banned, beef, cured_pork, deadline, dry_cured, fields, fsma, identity,
    keeping, meat_protein, mince, names, origin_words, sale, step_records, tenderised,
};
use domain::grams::Grams;
use domain::law::Law;
use domain::measure::{Percent, Temperature};
use domain::refusal::Refusal;
use domain::rows::{Finding, Gravity, RowId, Rows};
use domain::words::{Profile, Species};
use law::Shipped;
use rust_decimal::Decimal;

pub fn run(task: &str, input: &Input, shipped: &Shipped) -> String {
    let place = word(input, "place", Profile::parse);
    let Law { rows, duties, .. } = shipped.laws.of(place);
    match task {
        "identity" => identity(input, duties, rows),
        "name" | "place-name" | "parts" | "approval" | "needs" => words(task, input, duties, rows),
        "pff" | "qualifier" | "full-name" | "dry-cured" | "brine" | "bacon" | "patty" => {
            pork(task, input, duties, rows)
        }
        "beef" | "beef-label" => batches(task, input, duties, rows),
        "mince" | "mince-making" | "meat" | "collagen" | "sale" | "meat-protein" | "solid-cut"
        | "tenderised" => meat(task, input, duties, rows),
        _ => records(task, input, duties),
    }
}

fn word<T>(input: &Input, key: &str, parse: fn(&str) -> Option<T>) -> T {
    let text = input.text(key);
    parse(text).unwrap_or_else(|| panic!("{key}={text} is not one of our words"))
}

fn yes(input: &Input, key: &str) -> bool {
    match input.maybe(key) {
        None | Some("no") => false,
        Some("yes") => true,
        Some(other) => panic!("{key}={other} is neither yes nor no"),
    }
}

fn percent(input: &Input, key: &str) -> Percent {
    Percent::new(input.get::<Decimal>(key))
}

fn grams(input: &Input, key: &str) -> Grams {
    let milligrams = input.get::<Decimal>(key) * Decimal::ONE_THOUSAND;
    Grams::from_milligrams(milligrams.try_into().unwrap())
}

/// Each finding as its gravity and its rows.
fn found(findings: impl IntoIterator<Item = Finding>) -> String {
    let all: Vec<String> = findings
        .into_iter()
        .map(|finding| {
            let gravity = match finding.gravity {
                Gravity::Note => "note",
                Gravity::Warn => "warn",
                Gravity::Refuse => "refuse",
            };
            let rows: Vec<&str> = finding.rows.iter().map(RowId::as_str).collect();
            format!("{gravity} {}", rows.join("+"))
        })
        .collect();
    match all.is_empty() {
        true => "ok".to_owned(),
        false => all.join(", "),
    }
}

fn cannot(refusal: Refusal) -> String {
    format!("cannot be: {}", refusal.field.unwrap_or_default())
}

fn found_or_cannot<I: IntoIterator<Item = Finding>>(result: Result<I, Refusal>) -> String {
    result.map_or_else(cannot, found)
}

fn list(text: &str) -> Vec<&str> {
    text.split(',')
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .collect()
}

fn identity(input: &Input, duties: &DutyRules, rows: &Rows) -> String {
    let maybe = |key: &str| input.try_get::<Decimal>(key).map(Percent::new);
    let parts = input.maybe("parts").map(list).unwrap_or_default();
    let food = identity::FoodOfThatName {
        name: input.text("name"),
        raw: yes(input, "raw"),
        of: input.maybe("of").and_then(identity::MeatOf::parse),
        species: { input.maybe("species").map(list).unwrap_or_default() }
            .into_iter()
            .map(|of| Species::parse(of).expect("an animal"))
            .collect(),
        parts: { input.maybe("cuts").map(list).unwrap_or_default() }
            .into_iter()
            .map(names::Part::parse)
            .collect(),
        is_open: yes(input, "open"),
        organs: maybe("liver")
            .map(|percent| ("pork liver".to_owned(), percent))
            .into_iter()
            .collect(),
        no_recipe: yes(input, "no_recipe"),
        fat_in: yes(input, "fat_in"),
        fat: maybe("fat"),
        water: maybe("water"),
        water_left: maybe("water_left"),
        meat: maybe("meat"),
        weight: maybe("weight"),
        ingredients: parts
            .into_iter()
            .map(|part| (part != "?").then(|| part.to_owned()))
            .collect(),
        nitrite: yes(input, "nitrite"),
    };
    let mut all = identity::check_identity(&duties.identities, rows, &food);
    all.retain(|finding| finding.gravity > Gravity::Note);
    found(all)
}

fn words(task: &str, input: &Input, duties: &DutyRules, rows: &Rows) -> String {
    match task {
        "name" => {
            let core = input
                .try_get::<Decimal>("core_f")
                .map(Temperature::fahrenheit);
            let fat_added = input
                .maybe("fat_added")
                .map(|fat| (fat, percent(input, "fat_percent")));
            let named = names::FoodToName {
                name: input.text("name"),
                species: input.maybe("species").and_then(Species::parse),
                part: input.maybe("part").and_then(names::Part::parse),
                nitrite: yes(input, "nitrite"),
                salted_to_keep: yes(input, "salted_to_keep"),
                cooked: yes(input, "cooked"),
                core,
                loaf: yes(input, "loaf"),
                heated_for_trichinae_only: yes(input, "heated_for_trichinae_only"),
                shank_bones_out: yes(input, "shank_bones_out"),
                bones_remain: yes(input, "bones_remain"),
                made_there: yes(input, "made_there"),
                dry_cured_standard: yes(input, "dry_cured_standard"),
                packed_in: input.maybe("packed_in"),
                fat_added,
            };
            found(names::check_name(duties, rows, &named))
        }
        "place-name" => {
            let (name, place) = (input.text("name"), input.text("of"));
            let there = yes(input, "made_there");
            found(names::check_place_name(duties, rows, name, place, there))
        }
        "parts" => {
            let from = word(input, "from", banned::BannedFrom::parse);
            let parts = list(input.text("parts"));
            found(banned::check_parts(duties, rows, from, &parts))
        }
        "approval" => {
            let work = word(input, "work", approvals::Work::parse);
            let paper = input.maybe("number").map(|number| approvals::Approval {
                number: number.to_owned(),
                work: word(input, "for", approvals::Work::parse),
                until: input.try_get("until"),
            });
            let day = input.get("day");
            found(approvals::check_approvals(
                duties,
                rows,
                &[work],
                paper.as_slice(),
                day,
            ))
        }
        _ => {
            let work = word(input, "work", approvals::Work::parse);
            let need = approvals::needs_approval(duties, work);
            need.map_or("nothing".into(), |need| need.row.to_string())
        }
    }
}

fn pork(task: &str, input: &Input, duties: &DutyRules, rows: &Rows) -> String {
    let standards = duties.cured_pork.as_ref().expect("there are standards");
    match task {
        "pff" => cured_pork::pff(percent(input, "protein"), percent(input, "fat"))
            .map_or_else(cannot, |pff| pff.number().to_string()),
        "qualifier" => {
            let kind = word(input, "kind", cured_pork::PffKind::parse);
            let qualifier = standards.qualifier(kind, percent(input, "pff"));
            qualifier.expect("there is a line").to_string()
        }
        "full-name" => {
            let with = word(input, "with", cured_pork::Qualifier::parse);
            let added = input.maybe("added").map(|_| percent(input, "added"));
            let name = standards.full_name(input.text("name"), with, added);
            name.unwrap_or_else(cannot)
        }
        "dry-cured" => {
            let maybe = |key: &str| input.try_get::<Decimal>(key);
            let piece = dry_cured::DryCured {
                claim: word(input, "claim", dry_cured::Claim::parse),
                piece: word(input, "piece", dry_cured::Piece::parse),
                fresh: grams(input, "fresh"),
                finished: grams(input, "finished"),
                nitrite: yes(input, "nitrite"),
                salt: maybe("salt").map(Percent::new),
                water: maybe("water").map(Percent::new),
                water_activity: maybe("aw"),
                curing_days: input.try_get("curing_days"),
                whole_days: input.try_get("whole_days"),
                core: maybe("core_f").map(Temperature::fahrenheit),
            };
            found_or_cannot(dry_cured::check_dry_cured(standards, rows, &piece))
        }
        "brine" => dry_cured::brine_of(percent(input, "salt"), percent(input, "water"))
            .map_or_else(cannot, |brine| brine.to_string()),
        "bacon" => {
            let (fresh, ready) = (grams(input, "fresh"), grams(input, "ready"));
            found_or_cannot(cured_pork::check_bacon(standards, rows, fresh, ready))
        }
        _ => {
            let (fat, shank) = (percent(input, "fat"), percent(input, "shank_over"));
            found_or_cannot(cured_pork::check_patty(standards, rows, fat, shank))
        }
    }
}

/// `name` inside, `!name` outside the Union.
fn batches(task: &str, input: &Input, duties: &DutyRules, rows: &Rows) -> String {
    match task {
        "beef" => {
            // Each piece: born/reared/slaughtered/slaughterhouse/cutting plant/killed/made on.
            let pieces = list(input.text("pieces"));
            let pieces: Vec<beef::BeefPiece> =
                pieces.iter().map(|piece| beef_piece(piece)).collect();
            let stage = word(input, "stage", beef::Stage::parse);
            found(beef::check_beef(duties, rows, stage, &pieces))
        }
        "beef-label" => {
            let wording = duties.origin.as_ref().expect("there is wording");
            let pair = |text| -> (&str, &str) {
                let [country, number] = parts(text);
                (country, number)
            };
            let cut: Vec<_> = list(input.text("cut")).into_iter().map(pair).collect();
            let (country, numbers) = pair(input.text("slaughtered"));
            let numbers: Vec<&str> = numbers.split('+').collect();
            let language = input.maybe("language").unwrap_or("en");
            let label = origin_words::BeefLabel {
                reference: input.text("reference"),
                born: input.text("born"),
                reared: input.text("reared"),
                slaughtered: (country, &numbers),
                cut: &cut,
            };
            let lines = origin_words::beef_lines(wording, &label, language);
            let lacks = lines.iter().find(|(_, line)| line.is_none());
            let told = lines.iter().filter_map(|(_, line)| line.as_deref());
            match lacks {
                Some((field, _)) => format!("cannot be: {field}"),
                None => told.collect::<Vec<_>>().join(" | "),
            }
        }
        _ => panic!("no task {task}"),
    }
}

fn parts<const N: usize>(text: &str) -> [&str; N] {
    let parts: Vec<&str> = text.split('/').collect();
    parts
        .try_into()
        .unwrap_or_else(|_| panic!("{text} has not {N} parts"))
}

fn beef_piece(text: &str) -> beef::BeefPiece<'_> {
    let [
        born,
        reared,
        slaughtered,
        slaughterhouse,
        cutting_plant,
        killed,
        made_on,
    ] = parts(text);
    beef::BeefPiece {
        born,
        reared,
        slaughtered,
        slaughterhouse,
        cutting_plant,
        killed: killed.parse().unwrap(),
        made_on: made_on.parse().unwrap(),
    }
}

fn meat(task: &str, input: &Input, duties: &DutyRules, rows: &Rows) -> String {
    let limits = || duties.mince.as_ref().expect("there are limits");
    match task {
        "mince" => {
            // Each sample: fat/collagen.
            let samples = list(input.text("samples"));
            let samples: Vec<mince::Sample> = samples.iter().map(|text| sample(text)).collect();
            let kind = word(input, "kind", mince::MinceKind::parse);
            found_or_cannot(mince::check_mince(limits(), rows, kind, &samples))
        }
        "mince-making" => {
            let (thawed, again) = (yes(input, "thawed"), yes(input, "frozen_again"));
            let salt = percent(input, "salt");
            found_or_cannot(mince::check_mince_making(
                limits(),
                rows,
                salt,
                thawed,
                again,
            ))
        }
        "meat" => {
            let kind = word(input, "kind", mince::MeatKind::parse);
            found_or_cannot(mince::check_meat(
                limits(),
                kind,
                sample(input.text("sample")),
            ))
        }
        "collagen" => mince::collagen(limits(), percent(input, "hydroxyproline"))
            .map_or_else(cannot, |collagen| collagen.to_string()),
        "sale" => {
            let head = word(input, "head", sale::Head::parse);
            // Given in pounds: 1 lb is 453.59237 g, taken to the milligram below.
            let milligrams = input.get::<Decimal>("lb") * Decimal::new(45_359_237, 2);
            let weight = Grams::from_milligrams(milligrams.trunc().try_into().unwrap());
            found_or_cannot(sale::check_sale(duties, head, weight))
        }
        "meat-protein" => {
            let least = duties.meat_protein.as_ref().expect("there is a rule");
            let (name, cooked) = (input.text("name"), yes(input, "cooked"));
            let protein = percent(input, "protein");
            found_or_cannot(meat_protein::check_meat_protein(
                least, rows, name, cooked, protein,
            ))
        }
        "solid-cut" => {
            let least = duties.meat_protein.as_ref().expect("there is a rule");
            let part = percent(input, "big_pieces");
            meat_protein::is_solid_cut(least, yes(input, "whole"), part)
                .map_or_else(cannot, |solid| {
                    if solid { "solid" } else { "not solid" }.to_owned()
                })
        }
        _ => {
            let wording = duties.tenderised.as_ref().expect("there is wording");
            let lines = tenderised::lines(wording, yes(input, "steak"));
            let lines: Vec<&str> = lines.into_iter().map(|(_, words)| words).collect();
            lines.join(" | ")
        }
    }
}

fn sample(text: &str) -> mince::Sample {
    let [fat, collagen] = parts(text);
    let percent = |text: &str| Percent::new(text.parse::<Decimal>().unwrap());
    mince::Sample {
        fat: percent(fat),
        collagen: percent(collagen),
    }
}

fn records(task: &str, input: &Input, duties: &DutyRules) -> String {
    let record = || word(input, "record", keeping::Record::parse);
    match task {
        "keep-until" => {
            let eaten = input.try_get("eaten_by");
            let kept = keeping::keep_until(duties, record(), input.get("from"), eaten);
            match kept {
                Ok(Some(kept)) => kept.until.to_string(),
                Ok(None) => "no rule".to_owned(),
                Err(refusal) => cannot(refusal),
            }
        }
        "may-drop" => {
            let eaten = input.try_get("eaten_by");
            let on = input.get("on");
            let may = keeping::may_drop(duties, record(), input.get("from"), eaten, on);
            may.map_or_else(cannot, |may| {
                if may { "may drop" } else { "keep" }.to_owned()
            })
        }
        "fields" => {
            let names = fields::fields(duties, record());
            let names: Vec<&str> = names.iter().map(|field| field.field.as_str()).collect();
            names.join(",")
        }
        "asked" => {
            let on = word(input, "on", step_records::Occasion::parse);
            let asked = step_records::records(duties, on);
            let asked: Vec<&str> = asked.iter().map(|asks| asks.record.as_str()).collect();
            match asked.is_empty() {
                true => "nothing".to_owned(),
                false => asked.join(","),
            }
        }
        "listed-food" => {
            let reach = duties.fsma.as_ref().expect("there is a rule");
            let purchase = fsma::Purchase {
                average_sales: input.get("sales"),
                listed: input.maybe("listed") != Some("no"),
                inspected: yes(input, "inspected"),
                after_kill_step: yes(input, "after_kill_step"),
                seller: word(input, "seller", fsma::Seller::parse),
                becomes: word(input, "becomes", fsma::Use::parse),
            };
            match fsma::keep(reach, &purchase) {
                Err(refusal) => cannot(refusal),
                Ok(keep) if keep.records.is_empty() => format!("out by {}", keep.rows[0]),
                Ok(keep) => {
                    let names: Vec<&str> = keep.records.iter().map(|it| it.as_str()).collect();
                    let and = if keep.kill_step_record {
                        " and the kill step"
                    } else {
                        ""
                    };
                    format!("{}{and}", names.join(","))
                }
            }
        }
        "enforced" => {
            let reach = duties.fsma.as_ref().expect("there is a rule");
            reach.enforced_from.0.to_string()
        }
        "due" => {
            let what = word(input, "what", deadline::Due::parse);
            let due = deadline::due(duties, what, input.get("since"));
            due.map_or("no time set".into(), |(by, _)| {
                by.format("%Y-%m-%dT%H:%M").to_string()
            })
        }
        _ => panic!("no task {task}"),
    }
}
