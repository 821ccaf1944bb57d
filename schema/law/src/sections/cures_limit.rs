//! One limit of curing salts, as the file has it.

use super::cures::word;
use crate::Bad;
use crate::entry::{BoundEntry, Number};
use domain::cure::{Basis, Class, Counts, CureLimit, Method, Potassium, Stage, When};
use domain::rows::Rows;
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::Deserialize;

/// One limit.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct LimitEntry {
    /// The number, in ppm, with its row; the row says from and until which day.
    ppm: BoundEntry,
    /// What it counts: a basis as `sodium-nitrite` or `nitrite-ion`; `both` (nitrite and nitrate by
    /// weight); `ascorbate`.
    counts: String,
    /// What goes in (`ingoing`, the default) or what is left (`residual`).
    #[serde(default = "ingoing")]
    stage: String,
    /// How a potassium salt counts.
    #[serde(default)]
    potassium: PotassiumEntry,
    /// How far off the number still counts as on it, in ppm.
    tolerance: Option<Number>,
    /// The methods it is for; none means all.
    #[serde(default)]
    methods: Vec<String>,
    /// The products it is for; none means all.
    #[serde(default)]
    classes: Vec<String>,
    /// On what else it depends.
    #[serde(default)]
    when: WhenEntry,
    /// Is more than that only doubtful: a warning, whatever its row?
    #[serde(default)]
    doubt: bool,
}

fn ingoing() -> String {
    Stage::Ingoing.to_string()
}

/// How a potassium salt counts against a limit for the sodium salt.
#[derive(Debug, Default, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
enum PotassiumEntry {
    /// By how much of the basis it holds.
    #[default]
    Converted,
    /// By its own weight.
    SameWeight,
    /// By the two figures that the law prints side by side.
    Printed {
        /// For the sodium salt.
        sodium: Number,
        /// For the potassium salt.
        potassium: Number,
    },
}

/// On what else a limit depends.
#[derive(Debug, Default, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum WhenEntry {
    /// On nothing.
    #[default]
    Always,
    /// It is sold as keep refrigerated.
    KeepRefrigerated,
    /// The label calls it cured.
    CalledCured,
    /// It is cooked.
    Heated,
    /// It is not cooked.
    NotHeated,
    /// It is not cooked, and nitrite is added too.
    NotHeatedWithNitrite,
    /// It is not cooked, and no nitrite is added.
    NotHeatedWithoutNitrite,
}

impl LimitEntry {
    /// The limit that it says.
    pub(super) fn limit(&self, rows: &Rows) -> Result<CureLimit, Bad> {
        let counts = match self.counts.as_str() {
            "both" => Counts::Both,
            "ascorbate" => Counts::Ascorbate,
            basis => Counts::Salt(word(basis, Basis::parse(basis))?),
        };
        let (methods, classes) = (self.methods.iter(), self.classes.iter());
        Ok(CureLimit {
            bound: self.ppm.bound(rows)?,
            counts,
            stage: word(&self.stage, Stage::parse(&self.stage))?,
            potassium: match self.potassium {
                PotassiumEntry::Converted => Potassium::Converted,
                PotassiumEntry::SameWeight => Potassium::SameWeight,
                PotassiumEntry::Printed { sodium, potassium } => Potassium::Printed {
                    sodium: sodium.0,
                    potassium: potassium.0,
                },
            },
            tolerance: self.tolerance.map_or(Decimal::ZERO, |Number(ppm)| ppm),
            methods: methods
                .map(|text| word(text, Method::parse(text)))
                .collect::<Result<_, _>>()?,
            classes: classes
                .map(|text| word(text, Class::parse(text)))
                .collect::<Result<_, _>>()?,
            when: match self.when {
                WhenEntry::Always => When::Always,
                WhenEntry::KeepRefrigerated => When::KeepRefrigerated,
                WhenEntry::CalledCured => When::CalledCured,
                WhenEntry::Heated => When::Heated,
                WhenEntry::NotHeated => When::NotHeated,
                WhenEntry::NotHeatedWithNitrite => When::NotHeatedWithNitrite,
                WhenEntry::NotHeatedWithoutNitrite => When::NotHeatedWithoutNitrite,
            },
            doubt: self.doubt,
        })
    }
}
