//! The net weight as it is printed: in ounces and pounds, read back and compared (`us` 4.3); in grams and
//! kilograms to so many figures (`confirmed X-CA-12`).

use super::says::StatementSays;
use super::{StatementRules, Wording};
use crate::grams::Grams;
use crate::rows::{Bound, Finding, RowId, Rows};
use rust_decimal::{Decimal, RoundingStrategy};

/// How the net weight is printed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NetRules {
    /// The words before it: `Net Wt.`.
    pub title: Wording,
    /// Other words that will do.
    pub other_titles: Vec<String>,
    /// The row that lets one unit be enough; a second in brackets is still good.
    pub one_unit: RowId,
    /// The row by which a pack that was weighed by itself gives pounds and decimals.
    pub by_weight: RowId,
    /// Decimals of a pound on it.
    pub decimals: u32,
}

/// How the net weight is printed in grams and kilograms.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MetricNet {
    /// The row by which it is in kilograms from a thousand grams on.
    pub kilograms: RowId,
    /// How many figures it has.
    pub figures: Bound,
}

impl MetricNet {
    /// As much of the weight as so many figures tell. Rounded down: never more than is in it.
    pub fn told(&self, grams: Grams) -> Grams {
        let milligrams = grams.milligrams();
        let digits = milligrams.unsigned_abs().checked_ilog10().unwrap_or(0) + 1;
        let last = 10_i64.pow(digits.saturating_sub(self.figures.whole()));
        Grams::from_milligrams(milligrams / last * last)
    }
}

const OUNCES_IN_POUND: i64 = 16;

/// Milligrams in a pound, exactly.
const POUND_MG: Decimal = Decimal::from_parts(453_592_370, 0, 0, false, 3);

impl NetRules {
    /// The weight of a pack in the words and the units of the place: packs that all weigh the same are in
    /// ounces under a pound, what was weighed by itself is in pounds and decimals. What is too light for a
    /// hundredth of a pound is in ounces as well. Rounded down: never more than is in it.
    pub fn text_of(&self, grams: Grams, weighed: bool) -> String {
        let title = self.title.in_language("en");
        let down = |number: Decimal, places: u32| {
            number.round_dp_with_strategy(places, RoundingStrategy::ToZero)
        };
        let weight = Decimal::from(grams.milligrams());
        let (pounds, ounces) = (
            weight / POUND_MG,
            weight / POUND_MG * Decimal::from(OUNCES_IN_POUND),
        );
        let light = down(pounds, self.decimals).is_zero();
        if light || !weighed && pounds < Decimal::ONE {
            // A tenth of an ounce is 3 g: less than an ounce has a decimal more.
            let places = if ounces < Decimal::ONE { 2 } else { 1 };
            return format!("{title} {}\u{a0}oz", down(ounces, places).normalize());
        }
        let (pounds, places) = (down(pounds, self.decimals), self.decimals as usize);
        format!("{title} {pounds:.places$}\u{a0}lb")
    }
}

/// Checks a printed net weight against the weight: the words before it, and every form that it gives.
///
/// Ounces, pounds, both, grams, and one of them in brackets are all good; a second form is never asked for.
/// A form in pounds or ounces is never more than the pack holds, and no form is a whole unit of its last
/// figure away from it.
pub fn check_net_weight(
    rules: &StatementRules,
    rows: &Rows,
    text: &str,
    grams: Grams,
) -> Option<Finding> {
    let law = rules.net.as_ref()?;
    let titles = std::iter::once(law.title.in_language("en"))
        .chain(law.other_titles.iter().map(String::as_str));
    let mut rests = titles.filter_map(|title| text.trim().strip_prefix(title));
    let Some(rest) = rests.next() else {
        let says = StatementSays::NetTitle {
            title: law.title.in_language("en").to_owned(),
        };
        return Some(Finding::against(rows, &law.title.row, says));
    };
    let forms = rest
        .split(['(', ')'])
        .filter(|form| !form.trim().is_empty());
    let read: Vec<Option<Form>> = forms.map(Form::read).collect();
    let agrees = |form: &Option<Form>| form.as_ref().is_some_and(|form| form.is_of(grams));
    (read.is_empty() || !read.iter().all(agrees)).then(|| {
        let says = StatementSays::NetWrong {
            text: text.to_owned(),
            grams,
        };
        Finding::against(rows, &law.title.row, says)
    })
}

/// A weight as it was read, in milligrams.
struct Form {
    weight: Decimal,
    /// One of its last figure.
    unit: Decimal,
    metric: bool,
}

impl Form {
    /// `1 lb. 8 oz.`, `1½ lb.`, `1.5 lbs.`, `24 oz.` or `680 g`.
    fn read(form: &str) -> Option<Form> {
        let form = form
            .replace('½', ".5")
            .replace('¼', ".25")
            .replace('¾', ".75")
            .replace(',', ".");
        let mut words = form.split_whitespace();
        let mut read: Option<Form> = None;
        while let Some(number) = words.next() {
            let number: Decimal = number.parse().ok()?;
            let of_unit = words.next()?.trim_end_matches('.').to_lowercase();
            let (one, metric) = match of_unit.as_str() {
                "oz" => (POUND_MG / Decimal::from(OUNCES_IN_POUND), false),
                "lb" | "lbs" => (POUND_MG, false),
                "g" => (Decimal::ONE_THOUSAND, true),
                "kg" => (Decimal::from(1_000_000), true),
                _ => return None,
            };
            let before = read.map_or(Decimal::ZERO, |form| form.weight);
            read = Some(Form {
                weight: before + number * one,
                unit: Decimal::new(1, number.scale()) * one,
                metric,
            });
        }
        read
    }

    fn is_of(&self, grams: Grams) -> bool {
        let less = Decimal::from(grams.milligrams()) - self.weight;
        // The weight itself is whole milligrams.
        let most = if self.metric { self.unit } else { Decimal::ONE };
        less < self.unit && -less < most
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(milligrams: i64, weighed: bool, expected: &str) {
        let rules = NetRules {
            title: Wording {
                row: RowId::new("us-4.3"),
                mandated: Vec::new(),
                text: [("en".to_owned(), "Net Wt.".to_owned())].into(),
            },
            other_titles: Vec::new(),
            one_unit: RowId::new("us-4.3"),
            by_weight: RowId::new("us-4.3"),
            decimals: 2,
        };
        let text = rules.text_of(Grams::from_milligrams(milligrams), weighed);
        assert_eq!(text.replace('\u{a0}', " "), expected);
        let law = StatementRules {
            net: Some(rules),
            ..StatementRules::default()
        };
        let found = check_net_weight(
            &law,
            &Rows::default(),
            &text,
            Grams::from_milligrams(milligrams),
        );
        assert_eq!(found, None, "{text}");
    }

    #[test]
    fn equal_packs_are_in_ounces_and_weighed_ones_in_pounds() {
        check(250_000, false, "Net Wt. 8.8 oz");
        check(250_000, true, "Net Wt. 0.55 lb");
        check(340_200, false, "Net Wt. 12 oz");
        check(680_400, false, "Net Wt. 1.50 lb");
        check(1_125_000, true, "Net Wt. 2.48 lb");
    }

    #[test]
    fn nothing_weighs_nothing() {
        check(4_000, true, "Net Wt. 0.14 oz");
        check(4_000, false, "Net Wt. 0.14 oz");
        check(4_600, true, "Net Wt. 0.01 lb");
    }
}
