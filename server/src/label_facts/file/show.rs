//! What whoever designs a label begins with: a shipped template, how such a file is written, what such a label
//! says, and the facts of a real pack of a running kitchen.

use super::super::templates::{SAMPLES, SHIPPED};
use clap::Args;
use labels::Template;
use std::time::Duration;

/// What is printed beside a label, for whoever designs one.
#[derive(Debug, Default, Args)]
pub struct DesignArgs {
    /// Print a shipped template: a start for one of your own.
    #[arg(long, value_name = "NAME", exclusive = true)]
    pub show: Option<String>,
    /// Print the JSON Schema of a template's file.
    #[arg(long, exclusive = true)]
    pub schema: bool,
    /// Print what a label on a shipped template usually says: facts to begin with.
    #[arg(long, value_name = "NAME", exclusive = true)]
    pub sample: Option<String>,
    /// Print the facts of a real pack of a running kitchen, at this address: --from http://… --token … --pack CODE/NUMBER
    #[arg(long, value_name = "URL", requires = "pack", conflicts_with = "facts")]
    pub from: Option<String>,
    /// The token to ask it with.
    #[arg(
        long,
        env = "GAMBREL_TOKEN",
        value_name = "TOKEN",
        hide_env_values = true
    )]
    pub token: Option<String>,
    /// Whose facts: a lot's code, with the number of the pack behind a slash.
    #[arg(long, value_name = "CODE/NUMBER", requires = "from")]
    pub pack: Option<String>,
}

/// How long a kitchen has for its answer.
const PATIENCE: Duration = Duration::from_secs(20);

/// What is to be printed, where something is asked for beside a label.
///
/// # Errors
/// In words: no such template, or the kitchen does not answer.
pub fn asked(args: &DesignArgs) -> Result<Option<String>, String> {
    if args.schema {
        let schema = serde_json::to_string_pretty(&Template::schema());
        return schema.map(Some).map_err(|error| error.to_string());
    }
    if let Some(name) = &args.show {
        return named(SHIPPED, name).map(Some);
    }
    if let Some(name) = &args.sample {
        return named(SAMPLES, name).map(Some);
    }
    match (&args.from, &args.pack) {
        (Some(url), Some(pack)) => pulled(url, args.token.as_deref(), pack).map(Some),
        _ => Ok(None),
    }
}

fn named(all: &[(&str, &str)], name: &str) -> Result<String, String> {
    let found = all.iter().find(|(known, _)| *known == name);
    found.map(|(_, text)| (*text).to_owned()).ok_or_else(|| {
        let names: Vec<&str> = all.iter().map(|(known, _)| *known).collect();
        format!(
            "there is no label {name:?}; labels are {}",
            names.join(", ")
        )
    })
}

/// The facts of a pack, as a running kitchen has them.
fn pulled(url: &str, token: Option<&str>, pack: &str) -> Result<String, String> {
    let (lot, number) = pack.split_once('/').unwrap_or((pack, "1"));
    let plain = |text: &str| text.chars().all(|c| c.is_ascii_alphanumeric() || c == '-');
    if lot.is_empty() || !plain(lot) || !number.chars().all(|c| c.is_ascii_digit()) {
        return Err(format!(
            "{pack:?} is no pack: give CODE/NUMBER, such as BRC26159A006/12"
        ));
    }
    let base = url.trim_end_matches('/');
    let address = format!("{base}/api/lots/{lot}/label-facts.json?packs={number}");
    let agent: ureq::Agent = ureq::Agent::config_builder()
        .timeout_global(Some(PATIENCE))
        .http_status_as_error(false)
        .build()
        .into();
    let mut request = agent.get(&address);
    if let Some(token) = token {
        request = request.header("Authorization", format!("Bearer {token}"));
    }
    let mut answer = request
        .call()
        .map_err(|error| format!("{base} does not answer: {error}"))?;
    let text = answer
        .body_mut()
        .read_to_string()
        .map_err(|error| format!("{base} does not answer: {error}"))?;
    let told: serde_json::Value = serde_json::from_str(&text).map_err(|_| {
        format!(
            "{base} is no kitchen of ours: it answered {}",
            answer.status()
        )
    })?;
    match answer.status().is_success() {
        true => serde_json::to_string_pretty(&told).map_err(|error| error.to_string()),
        false => Err(told["detail"]
            .as_str()
            .or_else(|| told["title"].as_str())
            .unwrap_or(answer.status().as_str())
            .to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_shipped_template_has_facts_that_fit_it() {
        for (name, json) in SHIPPED {
            let template = Template::parse(name, json).unwrap();
            let facts = named(SAMPLES, name).unwrap();
            let facts: labels::Facts = serde_json::from_str(&facts).unwrap();
            let label = labels::lay_out(&facts, &template, labels::Dpi::D203);
            assert!(label.is_ok(), "{name}: {:?}", label.err());
        }
        assert!(named(SAMPLES, "poster").unwrap_err().contains("roll-us"));
    }
}
