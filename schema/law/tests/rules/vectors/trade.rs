//! What the trade expects: tables that sum, yields, costs, and the cure room.
//!
//! Kilograms are written as kilograms. Published sheets in pounds run as they are printed, a pound
//! as a kilogram: the sums and percents are the same. Where a task needs real pounds it says `lb`.

use super::Input;
use chrono::NaiveDate;
use domain::cost::{By, JointPart, Money, joint_cost};
use domain::cure_room::{
    Forecast, Piece, PieceStage, PieceWeighing, SaltTime, Signed, Span, alarms, due, forecast,
    likely_tag, loss, plan, release, salt_span,
};
use domain::grams::Grams;
use domain::measure::Percent;
use domain::refusal::Refusal;
use domain::rows::Bound;
use domain::words::Species;
use domain::yields::{Cooked, CutOut, Verdict, cut_out, of_step};
use law::Shipped;
use rust_decimal::{Decimal, RoundingStrategy};

pub fn run(task: &str, input: &Input, shipped: &Shipped) -> String {
    let came_out = match task {
        "sum" => Ok(printed_sum(input, shipped)),
        "percents" => Ok(sum_of_percents(input, shipped)),
        "printed-percent" => Ok(printed_percent(input, shipped)),
        "template" => Ok(template(input, shipped)),
        "cut-out" => cut(input, shipped),
        "step" => step(input, shipped),
        "joint-cost" => joint(input),
        "difference" => {
            Ok((input.get::<Decimal>("from") - input.get::<Decimal>("less")).to_string())
        }
        "loss" => Ok(shown(
            loss(kg(input.text("green")), kg(input.text("now"))).number(),
            1,
        )),
        "curve-loss" => {
            let curve = shipped.trade.cure_room.curve(input.text("curve")).unwrap();
            Ok(shown(curve.loss_on(input.get("day")).number(), 1))
        }
        "curve-day" => {
            let curve = shipped.trade.cure_room.curve(input.text("curve")).unwrap();
            let day = curve.day_of(Percent::new(input.get::<Decimal>("loss")));
            Ok(day.map_or("never".into(), |day| day.ceil().to_string()))
        }
        "target" => Ok(target(input, shipped)),
        "ceiling" => {
            let fat = Percent::new(input.get::<Decimal>("fat"));
            let ceiling = shipped.trade.cure_room.loss_ceiling(fat);
            ceiling.map(|most| shown(most.unwrap().0.number(), 1))
        }
        "hanging" => Ok(hanging(input, shipped)),
        "alarm" => Ok(alarm(input, shipped)),
        "tag" => Ok(tag(input, shipped)),
        "release" => Ok(released(input, shipped)),
        "forecast" => Ok(forecast_of(input, shipped)),
        "salt" => salt(input, shipped),
        "plan" => planned(input, shipped),
        "due" => Ok(due_of(input, shipped)),
        _ => panic!("no task {task}"),
    };
    came_out.unwrap_or_else(|refusal: Refusal| format!("refused: {}", refusal.field.unwrap()))
}

fn number(text: &str) -> Decimal {
    text.trim()
        .parse()
        .unwrap_or_else(|_| panic!("{text} is no number"))
}

fn numbers(text: &str) -> Vec<Decimal> {
    text.split(',').map(number).collect()
}

fn kg(text: &str) -> Grams {
    let milligrams = number(text) * Decimal::from(1_000_000);
    Grams::from_milligrams(milligrams.normalize().to_string().parse().unwrap())
}

fn shown(number: Decimal, places: u32) -> String {
    let rounded = number.round_dp_with_strategy(places, RoundingStrategy::MidpointAwayFromZero);
    format!("{rounded:.*}", places as usize)
}

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap_or_else(|_| panic!("{text} is no day"))
}

/// Do the parts of a published table come to its printed total? Many do not: each is summed before use.
fn printed_sum(input: &Input, shipped: &Shipped) -> String {
    let worked: Decimal = numbers(input.text("parts")).iter().sum();
    let printed: Decimal = input.get("printed");
    let apart = match printed.is_zero() {
        true => Decimal::ONE_HUNDRED,
        false => (worked - printed).abs() * Decimal::ONE_HUNDRED / printed.abs(),
    };
    table(worked, apart, shipped.trade.yields.sum_within.as_ref())
}

/// Do its percents come to a hundred? Rounded ones may miss it by a little.
fn sum_of_percents(input: &Input, shipped: &Shipped) -> String {
    let worked: Decimal = numbers(input.text("parts")).iter().sum();
    let apart = (worked - Decimal::ONE_HUNDRED).abs();
    table(worked, apart, shipped.trade.yields.percents_within.as_ref())
}

/// Is a printed percent what the part is of the whole?
fn printed_percent(input: &Input, shipped: &Shipped) -> String {
    let (part, whole): (Decimal, Decimal) = (input.get("part"), input.get("whole"));
    let worked = match whole.is_zero() {
        true => Decimal::ZERO,
        false => part * Decimal::ONE_HUNDRED / whole,
    };
    let apart = (worked - input.get::<Decimal>("printed")).abs();
    table(worked, apart, shipped.trade.yields.percent_within.as_ref())
}

fn table(worked: Decimal, apart: Decimal, within: Option<&Bound>) -> String {
    let off = within.is_some_and(|within| !within.allows(apart));
    format!(
        "{} {}",
        shown(worked, 1),
        if off { "off" } else { "agrees" }
    )
}

fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Usual => "usual",
        Verdict::Low => "low",
        Verdict::High => "high",
        Verdict::NoBand => "no band",
        Verdict::NotWeighed => "not weighed",
    }
}

/// What the percents of a style sum to, and the pieces whose own percent lies outside their band.
fn template(input: &Input, shipped: &Shipped) -> String {
    let species = Species::parse(input.text("species")).unwrap();
    let style = shipped
        .trade
        .yields
        .style(species, input.text("style"))
        .unwrap();
    let sum: Decimal = style
        .pieces
        .iter()
        .map(|piece| piece.expected.number())
        .sum();
    let outside = style.pieces.iter().filter(|piece| {
        Verdict::of(piece.expected.number(), piece.band.as_ref()) != Verdict::Usual
            && piece.band.is_some()
    });
    format!("{}; {} outside", shown(sum, 1), outside.count())
}

fn cut(input: &Input, shipped: &Shipped) -> Result<String, Refusal> {
    let pieces: Vec<(&str, Grams)> = input
        .text("pieces")
        .split(',')
        .map(|piece| piece.trim().split_once(' ').unwrap())
        .map(|(key, grams)| (key, kg(grams)))
        .collect();
    let lines = cut_out(
        &CutOut {
            species: Species::parse(input.text("species")).unwrap(),
            style: input.text("style"),
            hanging: kg(input.text("hanging")),
            pieces: &pieces,
        },
        &shipped.trade.yields,
    )?;
    let told = lines.iter().filter(|line| {
        line.key == "loss" || !matches!(line.verdict, Verdict::Usual | Verdict::NoBand)
    });
    let told: Vec<String> = told
        .map(|line| {
            format!(
                "{} {} {}",
                line.key,
                shown(line.amount, 1),
                word(line.verdict)
            )
        })
        .collect();
    Ok(told.join("; "))
}

fn step(input: &Input, shipped: &Shipped) -> Result<String, Refusal> {
    let places = input.try_get("places").unwrap_or(1);
    let line = of_step(
        &Cooked {
            process: input.text("process"),
            base: kg(input.text("base")),
            output: kg(input.text("output")),
            added: input.maybe("added").map_or(Grams::ZERO, kg),
        },
        &shipped.trade.yields,
    )?;
    Ok(format!(
        "{} {}",
        shown(line.amount, places),
        word(line.verdict)
    ))
}

fn joint(input: &Input) -> Result<String, Refusal> {
    let parts: Vec<JointPart> = input
        .text("parts")
        .split(',')
        .map(|part| part.trim().split_once('x').unwrap())
        .map(|(grams, price)| JointPart {
            grams: kg(grams),
            price_per_kg: number(price),
        })
        .collect();
    let by = match input.text("by") {
        "value" => By::SalesValue,
        "weight" => By::Weight,
        other => panic!("by {other}"),
    };
    let cost = Money::rounded(input.get("cost"))?;
    let shares = joint_cost(cost, &parts, by)?;
    assert_eq!(shares.iter().map(|share| share.cost).sum::<Money>(), cost);
    let told = shares
        .iter()
        .map(|share| match input.maybe("show").unwrap_or("cost") {
            "cost" => share.cost.to_string(),
            "per-kg" => shown(share.per_kg, 2),
            "per-kg-3" => shown(share.per_kg, 3),
            "profit" => shown(share.profit, 1),
            "margin" => shown(share.profit * Decimal::ONE_HUNDRED / share.value, 1),
            other => panic!("show {other}"),
        });
    Ok(told.collect::<Vec<_>>().join(" "))
}

fn target(input: &Input, shipped: &Shipped) -> String {
    let target = shipped
        .trade
        .cure_room
        .target(input.text("product"))
        .unwrap();
    let rule = target.rule();
    let mut told = vec![rule.loss.map_or("no loss".into(), |loss| loss.to_string())];
    told.extend(rule.days.map(|days| format!("{days} days")));
    told.extend(rule.signature.then(|| "signed".to_owned()));
    told.join(", ")
}

/// A piece of a product that is shipped, with what the line changes of its rule.
fn piece(input: &Input, shipped: &Shipped) -> Piece {
    let rules = &shipped.trade.cure_room;
    let target = rules
        .target(input.text("product"))
        .expect("a product that is shipped");
    let mut piece = Piece::hung(
        input.maybe("tag").unwrap_or("A"),
        kg(input.text("green")),
        day(input.text("in_salt")),
    );
    piece.product = target.key.clone();
    piece.curve = target
        .curve
        .as_ref()
        .and_then(|curve| rules.curve(curve))
        .cloned();
    piece.rule = target.rule();
    for weighing in input
        .maybe("weighed")
        .into_iter()
        .flat_map(|all| all.split(','))
    {
        let (on, grams) = weighing.trim().split_once(' ').unwrap();
        piece.weighings.push(PieceWeighing {
            day: day(on),
            grams: kg(grams),
        });
    }
    if let Some(loss) = input.try_get::<Decimal>("loss") {
        piece.rule.loss = Some(Percent::new(loss));
    }
    if let Some(tolerance) = input.try_get::<Decimal>("tolerance") {
        piece.rule.tolerance = Percent::new(tolerance);
    }
    if let Some(days) = input.try_get("days") {
        piece.rule.days = Some(days);
    }
    piece.rule.water_activity = input.try_get("aw_limit").or(piece.rule.water_activity);
    piece.water_activity = input.try_get("aw");
    let signed = |key: &str| {
        input.maybe(key).map(|on| Signed {
            day: day(on),
            by: "the chef-butcher".into(),
        })
    };
    piece.signed = signed("signed");
    piece.alarm_signed = signed("alarm_signed");
    piece.stage = match input.maybe("stage") {
        None | Some("hanging") => PieceStage::Hanging,
        Some("in salt") => PieceStage::InSalt,
        Some("equalising") => PieceStage::Equalising,
        Some("smoking") => PieceStage::Smoking,
        Some(other) => panic!("stage {other}"),
    };
    piece
}

/// Days, expected loss and expected weight by the curve.
fn hanging(input: &Input, shipped: &Shipped) -> String {
    let piece = piece(input, shipped);
    let on = day(input.text("on"));
    let expected = piece.expected_loss(on).unwrap();
    let left = Decimal::from(piece.green.milligrams()) * (Decimal::ONE - expected.fraction());
    format!(
        "day {}, {} %, {} kg",
        piece.age(on).unwrap(),
        shown(expected.number(), 1),
        shown(left / Decimal::from(1_000_000), 2)
    )
}

fn alarm(input: &Input, shipped: &Shipped) -> String {
    let piece = piece(input, shipped);
    let alarm = alarms(&piece, day(input.text("on")), &shipped.trade.cure_room).pop();
    alarm.map_or("none".into(), |alarm| match alarm.ahead {
        Some(ahead) => format!("{:?} {}", alarm.drying, shown(ahead, 1)),
        None => format!("{:?}", alarm.drying),
    })
}

fn tag(input: &Input, shipped: &Shipped) -> String {
    let read = piece(input, shipped);
    let others: Vec<Piece> = input
        .text("others")
        .split(',')
        .map(|other| {
            let mut words = other.split_whitespace();
            let mut next = || words.next().unwrap();
            let mut piece = Piece {
                tag: next().into(),
                ..read.clone()
            };
            piece.green = kg(next());
            piece.in_salt = day(next());
            piece.weighings.clear();
            piece
        })
        .collect();
    let weighing = PieceWeighing {
        day: day(input.text("on")),
        grams: kg(input.text("scale")),
    };
    let likely = likely_tag(&read, weighing, &others, &shipped.trade.cure_room);
    likely.map_or("nobody".into(), |likely| {
        format!("{}, about {}", likely.tag, likely.expected)
    })
}

fn released(input: &Input, shipped: &Shipped) -> String {
    let piece = piece(input, shipped);
    let release = release(&piece, day(input.text("on")), &shipped.trade.cure_room);
    let lost = release.loss.map_or("no weighing".into(), |loss| {
        format!("{} %", shown(loss.number(), 1))
    });
    let unmet: Vec<&str> = release
        .unmet
        .iter()
        .map(|unmet| words::Speech::default().say(&unmet.says))
        .map(|says| match says.as_str() {
            says if says.contains("alarm") => "alarm",
            says if says.contains("days so far") => "days",
            says if says.contains("never weighed") => "never weighed",
            says if says.contains("needed: it weighs") => "loss",
            says if says.contains("water activity") => "water activity",
            says if says.contains("signed") => "signature",
            _ => "something else",
        })
        .collect();
    match unmet.is_empty() {
        true => format!("released, day {}, {lost}", release.days),
        false => format!(
            "refused, day {}, {lost}: {}",
            release.days,
            unmet.join(", ")
        ),
    }
}

fn forecast_of(input: &Input, shipped: &Shipped) -> String {
    let piece = piece(input, shipped);
    match forecast(&piece, day(input.text("on")), &shipped.trade.cure_room) {
        Forecast::WeightMet { ready } => format!("enough, from {ready}"),
        Forecast::Between {
            earliest, latest, ..
        } => format!("{earliest} to {latest}"),
        Forecast::NotBefore { earliest, .. } => format!("not before {earliest}"),
        Forecast::Unknown => "unknown".into(),
    }
}

/// The green weight in pounds where the line says `lb`.
fn green(input: &Input) -> Grams {
    match input.maybe("lb") {
        Some(pounds) => kg(&(number(pounds) * Decimal::new(45_359_237, 8))
            .round_dp(6)
            .to_string()),
        None => input.maybe("green").map_or(Grams::ZERO, kg),
    }
}

fn salt(input: &Input, shipped: &Shipped) -> Result<String, Refusal> {
    let rules = &shipped.trade.cure_room;
    let time = match (
        input.try_get("per_pound"),
        input.try_get("per_inch"),
        input.try_get("days"),
    ) {
        (Some(rate), ..) => SaltTime::DaysPerPound(rate),
        (_, Some(rate), _) => SaltTime::DaysPerInch(rate),
        (.., Some(days)) => SaltTime::For(Span::Days(days)),
        _ => rules.method(input.text("method")).unwrap().salt,
    };
    Ok(
        match salt_span(time, green(input), input.try_get("mm"), rules)? {
            Span::Days(days) => format!("{days} days"),
            Span::Months(months) => format!("{months} months"),
        },
    )
}

fn planned(input: &Input, shipped: &Shipped) -> Result<String, Refusal> {
    let rules = &shipped.trade.cure_room;
    let method = rules.method(input.text("method")).unwrap();
    let planned = plan(
        day(input.text("in_salt")),
        green(input),
        input.try_get("mm"),
        method,
        input.try_get("days"),
        rules,
    )?;
    let shown = input.maybe("show");
    let told = planned
        .iter()
        .map(|planned| (format!("{:?}", planned.task), planned.day))
        .filter(|(task, _)| match shown {
            Some(shown) => task == shown,
            None => task != "Weigh" && task != "Turn",
        });
    Ok(told
        .map(|(task, day)| format!("{task} {day}"))
        .collect::<Vec<_>>()
        .join("; "))
}

fn due_of(input: &Input, shipped: &Shipped) -> String {
    let rules = &shipped.trade.cure_room;
    let mut piece = piece(input, shipped);
    let method = rules.method(input.text("method")).unwrap();
    let days = piece.rule.days;
    piece.plan = plan(piece.in_salt, piece.green, None, method, days, rules).unwrap();
    piece.turned = input
        .maybe("turned")
        .into_iter()
        .flat_map(|all| all.split(','))
        .map(day)
        .collect();
    let due = due(&[piece], day(input.text("on")), rules);
    let told: Vec<String> = due
        .iter()
        .map(|due| format!("{:?} since {}", due.task, due.since))
        .collect();
    match told.is_empty() {
        true => "nothing".into(),
        false => told.join("; "),
    }
}
