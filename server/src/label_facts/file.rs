//! Labels without a record: from a file of facts, for whoever designs labels.

mod form;
mod gate;
pub mod show;
pub mod watch;

use super::says::PurposeSays;
use super::templates::{SHIPPED, load, told};
use crate::config::LabelArgs;
use crate::given;
use domain::says::Says;
use form::Form;
use gate::{Gate, as_specimen};
use labels::{Dpi, Facts, PlacedLabel, Template, lay_out};
use std::io::Write;
use std::path::{Path, PathBuf};
use words::Speech;

/// The shipped templates, one a line: name, size, printers in dpi, what it is for.
///
/// # Errors
/// None is left.
pub fn list() -> Result<String, String> {
    let line = |(name, template): (String, Template)| {
        let purpose = Says::from(PurposeSays::from(template.purpose()));
        let (size, purpose) = (template.size(), Speech::default().say(&purpose));
        let printers = [Dpi::D203, Dpi::D300].into_iter();
        let printers = printers.filter(|dpi| template.suits(*dpi));
        let printers: Vec<String> = printers.map(|dpi| dpi.number().to_string()).collect();
        format!("{name:<16} {size:<14} {:<9} {purpose}", printers.join(", "))
    };
    let lines: Vec<String> = load(None)?.known.into_iter().map(line).collect();
    Ok(lines.join("\n"))
}

/// A label to be made from files, as often as is asked.
#[derive(Debug)]
pub struct Job {
    facts: PathBuf,
    template: Source,
    dpi: Dpi,
    outs: Vec<(PathBuf, Form)>,
    gate: Gate,
}

/// A label that was made.
#[derive(Debug)]
pub struct Made {
    /// Each file's name and size.
    pub files: String,
    /// What is to be looked at before it goes on a pack.
    pub warns: Vec<String>,
}

/// Where a template comes from.
#[derive(Debug)]
enum Source {
    Shipped(&'static str, &'static str),
    File(PathBuf),
}

/// What the two files of a job say, or why they cannot be read.
#[derive(Debug, PartialEq, Eq)]
pub struct Texts {
    facts: Result<String, String>,
    template: Result<String, String>,
}

impl Job {
    /// What is asked for on the command line.
    ///
    /// # Errors
    /// In words: no such template, printer, place or form of file.
    pub fn new(args: &LabelArgs, law: law::Shipped) -> Result<Job, String> {
        let (Some(facts), Some(template)) = (&args.facts, &args.template) else {
            return Err("give FACTS.json and --template NAME".into());
        };
        let dpi = args.dpi;
        let outs = args.out.iter();
        Ok(Job {
            facts: facts.clone(),
            template: Source::find(template)?,
            dpi: Dpi::from_number(dpi)
                .ok_or_else(|| format!("{dpi} dpi is not known; 203 or 300"))?,
            outs: outs
                .map(|path| Ok((path.clone(), Form::of(path)?)))
                .collect::<Result<_, String>>()?,
            gate: Gate::new(args, law)?,
        })
    }

    /// Reads both files as they are now.
    pub fn read(&self) -> Texts {
        Texts {
            facts: read(&self.facts),
            template: match &self.template {
                Source::Shipped(_, json) => Ok((*json).to_owned()),
                Source::File(path) => read(path),
            },
        }
    }

    /// Makes the label and writes it in every form asked for, or in none. Tells each file's name
    /// and size.
    ///
    /// # Errors
    /// In words: a file that cannot be read or written, and where and why a template, the facts or
    /// the two together make no label, or none for sale.
    pub fn make(&self, texts: &Texts) -> Result<Made, String> {
        let (label, warns) = self.place(texts)?;
        let drawn = self.outs.iter().map(|(path, form)| {
            let bytes = form.draw(&label)?;
            Ok((path, bytes))
        });
        let drawn: Vec<(&PathBuf, Vec<u8>)> = drawn.collect::<Result<_, String>>()?;
        let mut told = Vec::new();
        for (path, bytes) in drawn {
            write(path, &bytes).map_err(|error| given::cannot_write(path, &error))?;
            told.push(format!("{} {}", path.display(), size(bytes.len())));
        }
        Ok(Made {
            files: told.join(", "),
            warns,
        })
    }

    fn place(&self, texts: &Texts) -> Result<(PlacedLabel, Vec<String>), String> {
        let template = self.template.parse(texts.template.as_deref()?)?;
        let facts: Facts = serde_json::from_str(texts.facts.as_deref()?).map_err(|error| {
            format!("{}: {}", self.facts.display(), law::Bad::json(&error).says)
        })?;
        let mut told = self.gate.ask(&facts, &template);
        let is_specimen = self.gate.is_for_show();
        if !told.forbids.is_empty() && !is_specimen {
            told.forbids.push(
                "Nothing was drawn. To look at it all the same, ask for it with --specimen.".into(),
            );
            return Err(told.forbids.join("\n"));
        }
        let facts = match is_specimen {
            true => as_specimen(&facts, &template),
            false => facts,
        };
        let placed = lay_out(&facts, &template, self.dpi)
            .map_err(|refusal| Speech::default().say(&Says::from(&refusal)))?;
        Ok((placed, told.forbids.into_iter().chain(told.warns).collect()))
    }
}

impl Source {
    fn find(name: &str) -> Result<Source, String> {
        let shipped = SHIPPED.iter().find(|(known, _)| *known == name);
        match shipped {
            Some((name, json)) => Ok(Source::Shipped(name, json)),
            None if name.ends_with(".json") => Ok(Source::File(name.into())),
            None => {
                let names: Vec<&str> = SHIPPED.iter().map(|(name, _)| *name).collect();
                Err(format!(
                    "there is no label {name:?}; labels are {}, or give a .json file",
                    names.join(", ")
                ))
            }
        }
    }

    /// Its name, as people know it.
    fn name(&self) -> String {
        match self {
            Source::Shipped(name, _) => (*name).to_owned(),
            Source::File(path) => path.display().to_string(),
        }
    }

    fn parse(&self, json: &str) -> Result<Template, String> {
        Template::parse(&self.name(), json).map_err(|error| told(&error))
    }
}

/// Writes a file, or to standard output where its name is only a form.
fn write(path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    match form::is_standard_output(path) {
        true => std::io::stdout().write_all(bytes),
        false => std::fs::write(path, bytes),
    }
}

fn read(path: &Path) -> Result<String, String> {
    given::text(path)
}

/// So many bytes, for people.
fn size(bytes: usize) -> String {
    match bytes {
        0..1000 => format!("{bytes} B"),
        _ => format!("{} kB", (bytes + 500) / 1000),
    }
}
