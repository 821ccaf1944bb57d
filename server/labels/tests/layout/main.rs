//! Labels as they are laid out and drawn: what holds whatever the facts, and what outside judges read.

mod areas;
mod codes;
mod codes_judged;
mod common;
mod dots;
mod gallery;
mod heights;
mod judges;
mod placed;
mod promises;
mod refusals;
mod sheets;
mod templates;
