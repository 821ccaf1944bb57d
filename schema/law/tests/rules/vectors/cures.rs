//! Vectors of curing salts: arithmetic, bases, limits, brine, scales, names, claims.

use super::Input;
use chrono::NaiveDate;
use domain::cure::{
    Alkali, Assessed, Basis, ClaimFacts, Class, Counts, Cure, CureLevel, Dose, Method, Mix,
    Potassium, Recipe, Salometer, ScaleClass, Strength, assess, assess_residual, brine_percent,
    ceiling, least_load, names, plan, read_salometer, uncured,
};
use domain::grams::Grams;
use domain::law::Law;
use domain::measure::Percent;
use domain::refusal::Refusal;
use domain::rows::{Finding, Gravity};
use domain::words::Profile;
use law::Shipped;
use rust_decimal::Decimal;

pub fn run(task: &str, input: &Input, shipped: &Shipped) -> String {
    match task {
        "ppm" => ppm(input),
        "dose" => dose(input),
        "convert" => convert(input, shipped),
        "factor" => factor(input, shipped),
        "pair" => pair(input, shipped),
        "assess" => shown_or_refused(assessed(input, shipped), input),
        "plan" => planned(input, shipped),
        "residual" => residual(input, shipped),
        "ceiling" => highest(input, shipped),
        "brine" => brine(input, shipped),
        "brine-percent" => {
            let percent = brine_percent(input.get("salt"), input.get("water"));
            round(percent.number(), input)
        }
        "least-load" => load(input, shipped),
        "names" => named(input, shipped),
        "uncured" => claim(input, shipped),
        _ => panic!("no task {task}"),
    }
}

fn place(input: &Input) -> Profile {
    Profile::parse(input.maybe("place").unwrap_or("us")).unwrap()
}

fn law<'a>(input: &Input, shipped: &'a Shipped) -> &'a Law {
    shipped.laws.of(place(input))
}

fn word<T>(input: &Input, key: &str, parse: impl Fn(&str) -> Option<T>) -> T {
    let text = input.text(key);
    parse(text).unwrap_or_else(|| panic!("{key}={text} is no word"))
}

fn method(input: &Input) -> Method {
    word(input, "method", Method::parse)
}

fn day(input: &Input) -> NaiveDate {
    input.maybe("day").unwrap_or("2026-01-15").parse().unwrap()
}

/// To the decimals that the source prints.
fn round(number: Decimal, input: &Input) -> String {
    let decimals = input.try_get("decimals").unwrap_or(2);
    number.round_dp(decimals).normalize().to_string()
}

fn number(input: &Input, key: &str) -> Decimal {
    input.try_get(key).unwrap_or_default()
}

/// Ounces and pounds, or any one unit: `nitrite` as such, or `cure` of `strength` per cent.
fn mix(input: &Input) -> Mix {
    let flesh = (Decimal::ONE_HUNDRED - number(input, "skin")) / Decimal::ONE_HUNDRED;
    Mix {
        meat: number(input, "meat") * flesh,
        water: number(input, "water"),
        pickle: number(input, "pickle"),
        taken: Percent::new(number(input, "taken")),
    }
}

fn ppm(input: &Input) -> String {
    let nitrite = match input.maybe("cure") {
        Some(_) => {
            let strength = Percent::new(input.get::<Decimal>("strength"));
            input.get::<Decimal>("cure") * strength.fraction()
        }
        None => input.get("nitrite"),
    };
    // Sixteen ounces make a pound.
    let per = input.try_get("ounces-per-pound").unwrap_or(Decimal::ONE);
    let found = mix(input).ppm(method(input), nitrite / per);
    found.map_or_else(refused, |ppm| round(ppm, input))
}

fn dose(input: &Input) -> String {
    let strength = input.try_get("strength").unwrap_or(Decimal::ONE_HUNDRED);
    let nitrite = mix(input).dose(method(input), input.get("target"));
    nitrite.map_or_else(refused, |dose| {
        round(dose / Percent::new(strength).fraction(), input)
    })
}

fn convert(input: &Input, shipped: &Shipped) -> String {
    let level = CureLevel::ingoing(
        input.get::<Decimal>("ppm"),
        word(input, "from", Basis::parse),
    );
    level
        .on(
            word(input, "to", Basis::parse),
            &law(input, shipped).cures.masses,
        )
        .map_or_else(refused, |level| round(level.ppm, input))
}

fn factor(input: &Input, shipped: &Shipped) -> String {
    let masses = &law(input, shipped).cures.masses;
    let (from, to) = (
        word(input, "from", Basis::parse),
        word(input, "to", Basis::parse),
    );
    round(masses.factor(from, to), input)
}

fn pair(input: &Input, shipped: &Shipped) -> String {
    let rules = &law(input, shipped).cures;
    let sets = rules.pumped_bacon.iter().flat_map(|set| &set.nitrite);
    let row = input.text("row");
    let pairs: Vec<String> = rules
        .limits
        .iter()
        .chain(sets)
        .filter(|limit| limit.bound.row.as_str() == row && matches!(limit.counts, Counts::Salt(_)))
        .filter_map(|limit| match limit.potassium {
            Potassium::Printed { sodium, potassium } => Some(format!("{sodium}/{potassium}")),
            _ => None,
        })
        .collect();
    pairs.join(" ")
}

fn strength(input: &Input) -> Strength {
    let percent = |key| input.try_get::<Decimal>(key).map(Percent::new);
    let alkali = |key| match input.maybe(key) {
        Some(text) => Alkali::parse(text).unwrap(),
        None => Alkali::Sodium,
    };
    Strength {
        nitrite: percent("strength"),
        nitrite_of: alkali("nitrite-of"),
        nitrate: percent("nitrate"),
        nitrate_of: alkali("nitrate-of"),
        salt: percent("cure-salt"),
        weighed: false,
    }
}

fn grams(input: &Input, key: &str) -> Option<Grams> {
    let milligrams = input.try_get::<Decimal>(key)? * Decimal::ONE_THOUSAND;
    Some(Grams::from_milligrams(milligrams.try_into().unwrap()))
}

fn cure(input: &Input) -> Cure {
    let weight = |key| grams(input, key).unwrap_or_default();
    let percent = |key| input.try_get::<Decimal>(key).map(Percent::new);
    let said = |key| input.maybe(key).map(|text| text == "yes");
    let class = word(input, "class", Class::parse);
    Cure {
        water: weight("water"),
        salt: weight("salt"),
        sugar: weight("sugar"),
        ascorbate: weight("ascorbate"),
        erythorbate: weight("erythorbate"),
        salts: grams(input, "cure")
            .map(|cure| (strength(input), cure))
            .into_iter()
            .collect(),
        starter: said("starter").unwrap_or(false),
        skin_on: said("skin-on").unwrap_or(false),
        pickle: grams(input, "pickle"),
        pump: percent("pump"),
        pickup: percent("pickup"),
        scale: grams(input, "scale"),
        keep_refrigerated: said("keep-refrigerated").unwrap_or(true),
        called_cured: said("called-cured").unwrap_or(false),
        heated: said("heated"),
        long_aged: said("long-aged").unwrap_or(false),
        ..Cure::new(method(input), class, weight("meat"), day(input))
    }
}

fn assessed(input: &Input, shipped: &Shipped) -> Result<Assessed, Refusal> {
    assess(&cure(input), place(input), &shipped.laws)
}

fn refused(refusal: Refusal) -> String {
    format!("cannot be: {}", refusal.field.unwrap_or_default())
}

/// `refuse us-N14, us-N15; warn us-N16`, or `pass`. Notes are left out unless they are asked for.
fn verdict(findings: &[Finding], with_notes: bool) -> String {
    let mut words = Vec::new();
    for (gravity, name) in [
        (Gravity::Refuse, "refuse"),
        (Gravity::Warn, "warn"),
        (Gravity::Note, "note"),
    ] {
        let rows: Vec<String> = findings
            .iter()
            .filter(|finding| finding.gravity == gravity)
            .map(|finding| {
                let rows: Vec<String> = finding.rows.iter().map(ToString::to_string).collect();
                match rows.is_empty() {
                    true => "no row".to_owned(),
                    false => rows.join("+"),
                }
            })
            .collect();
        if !rows.is_empty() && (with_notes || gravity > Gravity::Note) {
            words.push(format!("{name} {}", rows.join(", ")));
        }
    }
    match words.is_empty() {
        true => "pass".to_owned(),
        false => words.join("; "),
    }
}

/// What `show` asks for: figures and the verdict.
fn shown_or_refused(found: Result<Assessed, Refusal>, input: &Input) -> String {
    let show = input.maybe("show").unwrap_or("verdict").to_owned();
    let done = match found {
        Ok(done) => done,
        Err(refusal) => return refused(refusal),
    };
    let parts: Vec<String> = show
        .split('+')
        .map(|what| match what {
            "verdict" => verdict(&done.findings, false),
            "notes" => verdict(&done.findings, true),
            "nitrite" => round(done.nitrite_ppm, input),
            "nitrate" => round(done.nitrate_ppm, input),
            "nitrite-ion" => round(done.nitrite_ion_ppm, input),
            "salt" => round(done.salt_percent.number(), input),
            "brine" => round(done.brine_percent.unwrap_or_default().number(), input),
            // The table has plain spaces between a number and its unit.
            "says" => words::Speech::default()
                .say(&done.findings[0].says)
                .replace('\u{a0}', " "),
            _ => panic!("nothing to show by the name {what}"),
        })
        .collect();
    parts.join(" | ")
}

fn planned(input: &Input, shipped: &Shipped) -> String {
    let percent = |key| Percent::new(number(input, key));
    let dose = match input.try_get::<Decimal>("target") {
        Some(ppm) => {
            let basis = match input.maybe("as") {
                Some(text) => Basis::parse(text).unwrap(),
                None => Basis::SodiumNitrite,
            };
            Dose::Target(CureLevel::ingoing(ppm, basis))
        }
        None => Dose::CuringSalt(Percent::new(input.get::<Decimal>("cure-percent"))),
    };
    let recipe = Recipe {
        salt: percent("salt-percent"),
        sugar: percent("sugar-percent"),
        strength: strength(input),
        dose,
    };
    let planned = plan(&recipe, &cure(input), place(input), &shipped.laws);
    planned.map_or_else(refused, |plan| {
        let water = match plan.water.is_none_left() {
            true => String::new(),
            false => format!(" + {} water", plan.water),
        };
        format!(
            "{} cure + {} salt + {} sugar{water}: {}",
            plan.curing_salt,
            plan.plain_salt,
            plan.sugar,
            verdict(&plan.assessed.findings, false)
        )
    })
}

fn residual(input: &Input, shipped: &Shipped) -> String {
    let level = CureLevel {
        stage: match input.maybe("stage") {
            Some(text) => domain::cure::Stage::parse(text).unwrap(),
            None => domain::cure::Stage::Residual,
        },
        ..CureLevel::residual(input.get::<Decimal>("ppm"), word(input, "as", Basis::parse))
    };
    let class = word(input, "class", Class::parse);
    assess_residual(level, method(input), class, day(input), law(input, shipped))
        .map_or_else(refused, |findings| verdict(&findings, false))
}

fn highest(input: &Input, shipped: &Shipped) -> String {
    let basis = word(input, "as", Basis::parse);
    let class = word(input, "class", Class::parse);
    ceiling(&shipped.laws, basis, method(input), class, day(input)).map_or_else(
        || "none".to_owned(),
        |most| {
            format!(
                "{} {} {}",
                round(most.level.ppm, input),
                most.place,
                most.row
            )
        },
    )
}

fn brine(input: &Input, shipped: &Shipped) -> String {
    let scale = word(input, "scale", Salometer::parse);
    let rules = &law(input, shipped).cures;
    read_salometer(input.get("degrees"), scale, rules).map_or_else(refused, |reading| {
        let warned = match reading.findings.is_empty() {
            true => "",
            false => " (warned)",
        };
        format!(
            "{:.2} % {:.1} g/kg {:.2} lb/gal{warned}",
            reading.percent.number().round_dp(2),
            reading.grams_per_kilogram.round_dp(1),
            reading.pounds_per_gallon.round_dp(2)
        )
    })
}

fn load(input: &Input, shipped: &Shipped) -> String {
    let class = word(input, "class", ScaleClass::parse);
    let division = grams(input, "division").unwrap();
    least_load(&law(input, shipped).cures, class, division)
        .map_or_else(|| "none".to_owned(), |(load, _)| load.to_string())
}

fn named(input: &Input, shipped: &Shipped) -> String {
    let french = input.maybe("language") == Some("fr");
    names(&cure(input), &law(input, shipped).cures).map_or_else(refused, |named| {
        let parts: Vec<String> = named.iter().map(|part| part.name.shown(french)).collect();
        parts.join(", ")
    })
}

fn claim(input: &Input, shipped: &Shipped) -> String {
    let yes = |key| input.maybe(key) == Some("yes");
    let facts = ClaimFacts {
        normally_cured: input.maybe("normally-cured") != Some("no"),
        resembles: input.maybe("resembles") != Some("no"),
        nitrite_used: yes("nitrite"),
        natural: input.maybe("natural").map(str::to_owned),
        salt_and_water: input.try_get("salt").map(|salt| (salt, input.get("water"))),
        fo: input.try_get("fo"),
        ph: input.try_get("ph"),
        aw: input.try_get("aw"),
    };
    let claim = match uncured(&facts, law(input, shipped)) {
        Ok(claim) => claim,
        Err(refusal) => return refused(refusal),
    };
    let words: Vec<String> = claim
        .words
        .iter()
        .map(|words| format!("{} [{}]", words.mandated, words.size.normalize()))
        .collect();
    let words = match words.is_empty() {
        true => "no words".to_owned(),
        false => words.join(" / "),
    };
    format!("{words}: {}", verdict(&claim.findings, false))
}
