//! What a guest is told, as the API answers it.

use crate::read::ask::{Asked, AskedLine};
use crate::wire::Weight;
use crate::wire::answers::instant;
use domain::ask::{Told, Topic};
use serde::Serialize;
use utoipa::ToSchema;
use words::Speech;

/// The answer to a guest's question. What is not known is never among what is without.
#[derive(Debug, Serialize, ToSchema)]
pub struct AskRead {
    /// The moment for which it was worked out.
    pub now: String,
    /// What was asked about.
    pub about: Vec<TopicRead>,
    /// What has any of it in it.
    pub yes: Vec<AskLineRead>,
    /// What has none of it in it, by the record.
    pub no: Vec<AskLineRead>,
    /// Of what the record does not tell: it is not sold as without.
    pub not_known: Vec<AskLineRead>,
    /// `after` of the next part, if there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<String>,
}

/// What was asked about.
#[derive(Debug, Serialize, ToSchema)]
pub struct TopicRead {
    /// The word, as it is asked.
    pub topic: String,
    /// The same for a reader.
    pub says: String,
}

/// What is on hand of one lot.
#[derive(Debug, Serialize, ToSchema)]
pub struct AskLineRead {
    /// The lot's code.
    pub lot: String,
    /// The product's code.
    pub product: String,
    /// The product's name.
    pub name: String,
    /// The packs there.
    pub packs: Vec<u32>,
    /// How much is in them.
    pub left_grams: Weight,
    /// How many of them may be sold now.
    pub sellable: usize,
    /// By what it is known, or why it is not.
    pub because: Vec<String>,
    /// The key of each of these.
    pub because_keys: Vec<String>,
}

/// The answer in a reader's language.
pub fn ask_read(asked: &Asked<'_>, speech: &Speech) -> AskRead {
    let of = |told: Told| {
        let lines = asked.lines.iter();
        let lines = lines.filter(|line| line.answer.told == told);
        lines.map(|line| line_read(asked, line, speech)).collect()
    };
    let species = &asked.reading.law.statements.species;
    let topic = |topic: &Topic| TopicRead {
        topic: topic.as_str().to_owned(),
        says: speech.say(&topic.says(species)),
    };
    let zone = asked.reading.kitchen().zone;
    AskRead {
        now: instant(asked.reading.now.naive_utc(), zone),
        about: asked.topics.iter().map(topic).collect(),
        yes: of(Told::Yes),
        no: of(Told::No),
        not_known: of(Told::NotKnown),
        next: asked.next.as_ref().map(ToString::to_string),
    }
}

fn line_read(asked: &Asked<'_>, line: &AskedLine, speech: &Speech) -> AskLineRead {
    let lot = asked.lot(line);
    let because = &line.answer.because;
    AskLineRead {
        lot: lot.code.to_string(),
        product: lot.product.code.clone(),
        name: lot.product.name(speech.language.tag()).to_owned(),
        packs: line.packs.clone(),
        left_grams: Weight(line.left),
        sellable: line.sellable,
        because: because.iter().map(|says| speech.say(says)).collect(),
        because_keys: because.iter().map(|says| says.key().to_owned()).collect(),
    }
}
