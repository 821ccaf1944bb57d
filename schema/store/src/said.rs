//! How the record keeps a message: its key and its arguments, each with its kind, as JSON.

use crate::error::{Error, Result};
use chrono::TimeDelta;
use domain::grams::Grams;
use domain::measure::{Printed, Scale};
use domain::says::{Arg, Says, Texts};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// A message, as it is kept.
pub fn write(says: &Says) -> Value {
    let args: Vec<Value> = says
        .args()
        .map(|(name, arg)| json!([name, arg_out(arg)]))
        .collect();
    json!({ "key": says.key(), "args": args })
}

/// A kept message.
///
/// # Errors
/// The record is damaged.
pub fn read(value: &Value) -> Result<Says> {
    said_in(value).ok_or_else(|| Error::Broken(format!("a kept message does not read: {value}")))
}

/// A message, as a column of text keeps it.
pub fn kept(says: &Says) -> String {
    write(says).to_string()
}

/// What a column of text kept. A sentence of the time before messages stands as it was written.
pub fn recalled(text: &str) -> Says {
    let value: Option<Value> = serde_json::from_str(text).ok();
    let says = value.as_ref().and_then(said_in);
    says.unwrap_or_else(|| Says::as_written(text))
}

fn arg_out(arg: &Arg) -> Value {
    let all = |args: &[Arg]| -> Vec<Value> { args.iter().map(arg_out).collect() };
    match arg {
        Arg::Text(text) => json!({ "text": text }),
        Arg::Texts(texts) => {
            json!({ "texts": texts.iter().collect::<BTreeMap<&str, &str>>() })
        }
        Arg::Count(count) => json!({ "count": count }),
        Arg::Number(number) => json!({ "number": number.to_string() }),
        Arg::Tenths(number) => json!({ "tenths": number.to_string() }),
        Arg::Money(amount) => json!({ "money": amount.to_string() }),
        Arg::Grams(grams) => json!({ "milligrams": grams.milligrams() }),
        Arg::Temperature(printed) => json!({ "temperature": degrees_out(printed) }),
        Arg::Celsius(degrees) => json!({ "celsius": degrees.to_string() }),
        Arg::CelsiusApart(degrees) => json!({ "celsius_apart": degrees.to_string() }),
        Arg::Day(day) => json!({ "day": day.to_string() }),
        Arg::Moment(moment) => json!({ "moment": moment.format(MOMENT).to_string() }),
        Arg::Length(length) => json!({ "seconds": length.num_seconds() }),
        Arg::Said(says) => json!({ "said": write(says) }),
        Arg::All(args) => json!({ "all": all(args) }),
        Arg::Any(args) => json!({ "any": all(args) }),
        Arg::Sentences(said) => {
            json!({ "sentences": said.iter().map(write).collect::<Vec<Value>>() })
        }
        Arg::Series(said) => json!({ "series": said.iter().map(write).collect::<Vec<Value>>() }),
    }
}

fn degrees_out(printed: &Printed) -> Value {
    let mut out = serde_json::Map::new();
    for (name, scale) in SCALES {
        if let Some(degrees) = printed.on(scale) {
            out.insert(name.to_owned(), degrees.to_string().into());
        }
    }
    out.into()
}

fn degrees_in(value: &Value) -> Option<Printed> {
    let [celsius, fahrenheit] = SCALES.map(|(name, _)| value.get(name)?.as_str());
    Printed::read(celsius, fahrenheit)
}

const SCALES: [(&str, Scale); 2] = [
    ("celsius", Scale::Celsius),
    ("fahrenheit", Scale::Fahrenheit),
];

const MOMENT: &str = "%Y-%m-%dT%H:%M:%S";

fn said_in(value: &Value) -> Option<Says> {
    let args = value.get("args")?.as_array()?.iter().map(|pair| {
        let name = pair.get(0)?.as_str()?.to_owned();
        Some((name, arg_in(pair.get(1)?)?))
    });
    let key = value.get("key")?.as_str()?.to_owned();
    Some(Says::kept(key, args.collect::<Option<Vec<_>>>()?))
}

fn arg_in(value: &Value) -> Option<Arg> {
    let (kind, value) = value.as_object()?.iter().next()?;
    let text = || value.as_str();
    let number = || text()?.parse().ok();
    let all = || -> Option<Vec<Arg>> { value.as_array()?.iter().map(arg_in).collect() };
    Some(match kind.as_str() {
        "text" => Arg::Text(text()?.to_owned()),
        "texts" => Arg::Texts(Texts::new(serde_json::from_value(value.clone()).ok()?)),
        "count" => Arg::Count(value.as_i64()?),
        "number" => Arg::Number(number()?),
        "tenths" => Arg::Tenths(number()?),
        "money" => Arg::Money(number()?),
        "milligrams" => Arg::Grams(Grams::from_milligrams(value.as_i64()?)),
        "temperature" => Arg::Temperature(degrees_in(value)?),
        "celsius" => Arg::Celsius(number()?),
        "celsius_apart" => Arg::CelsiusApart(number()?),
        "day" => Arg::Day(text()?.parse().ok()?),
        "moment" => Arg::Moment(chrono::NaiveDateTime::parse_from_str(text()?, MOMENT).ok()?),
        "seconds" => Arg::Length(TimeDelta::seconds(value.as_i64()?)),
        "said" => Arg::from(said_in(value)?),
        "all" => Arg::All(all()?),
        "any" => Arg::Any(all()?),
        "sentences" => Arg::Sentences(all_said(value)?),
        "series" => Arg::Series(all_said(value)?),
        _ => return None,
    })
}

fn all_said(value: &Value) -> Option<Vec<Says>> {
    value.as_array()?.iter().map(said_in).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use domain::measure::Temperature;

    #[test]
    fn every_kind_of_argument_is_read_back_as_it_was_kept() {
        let day = chrono::NaiveDate::from_ymd_opt(2026, 6, 26).unwrap();
        let args = vec![
            ("text", Arg::from("a")),
            ("texts", Arg::Texts(Texts::from("lard"))),
            ("count", Arg::Count(-3)),
            ("number", Arg::Number("12.50".parse().unwrap())),
            ("tenths", Arg::Tenths("8.0".parse().unwrap())),
            ("money", Arg::Money("234.00".parse().unwrap())),
            ("grams", Arg::Grams(Grams::from_milligrams(1_125_001))),
            ("read", Arg::from(Temperature::celsius(54))),
            ("printed", Arg::Temperature(Printed::both(68, 155))),
            ("celsius", Arg::Celsius("54.4".parse().unwrap())),
            ("apart", Arg::CelsiusApart("1".parse().unwrap())),
            ("day", Arg::Day(day)),
            ("moment", Arg::Moment(day.and_hms_opt(10, 40, 0).unwrap())),
            ("length", Arg::Length(TimeDelta::minutes(112))),
            ("said", Arg::from(Says::as_written("b"))),
            ("all", Arg::All(vec![Arg::Count(1), Arg::from("c")])),
            ("any", Arg::Any(vec![])),
            ("sentences", Arg::Sentences(vec![Says::as_written("d")])),
            ("series", Arg::Series(vec![Says::as_written("e")])),
        ];
        let says = Says::new("a-key", args);
        let kept = kept(&says);
        assert_eq!(read(&serde_json::from_str(&kept).unwrap()).unwrap(), says);
        assert_eq!(recalled(&kept), says);
        assert_eq!(recalled("It broke."), Says::as_written("It broke."));
        assert!(read(&json!({ "key": "a", "args": [["b", { "unheard": 1 }]] })).is_err());
    }
}
