//! The shell: command line, REST, pages, printing. It parses, asks the pure crates, and answers.
//!
//! Reading order: [`world`] (the only clock), [`config`], [`app`] (what every request shares),
//! [`wire`] (the JSON as it is on the wire), [`body`] and [`error`] (in and out), [`deeds`] (one
//! file per deed, all through [`mod@deeds::perform`]), [`lists`], [`read`], [`label_facts`], [`printing`], [`routes`]
//! (every path, once, with its documentation), [`pages`], [`demo`].

pub mod addresses;
pub mod app;

pub mod archive;
pub mod body;
mod cached;
pub mod caller;
pub mod check;
pub mod clock;
pub mod config;
pub mod copies;
pub mod deeds;
pub mod demo;
pub mod door;
pub mod error;
pub mod given;
pub mod ids;
pub mod keeping;
pub mod label_facts;
pub mod lease;
pub mod lists;
pub mod log;
pub mod log_file;
pub mod logbook;
pub mod metrics;
pub mod named;
pub mod pages;
pub mod photo;
pub mod pictures;
pub mod printing;
pub mod problems;
pub mod profiles;
pub mod pulse;
pub mod read;
pub mod recall;
pub mod rooms;
pub mod routes;
pub mod said;
pub mod serve;
pub mod tls;
pub mod web_address;
pub mod who;
pub mod wire;
pub mod world;
pub mod wrong_labels;
