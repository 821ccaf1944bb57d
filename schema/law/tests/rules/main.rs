//! The law that is shipped: every published check value, and what must hold for all rules.

mod check_values;
mod confirmed;
mod cures_hold;
mod day_limits;
mod food_words;
mod heat;
mod house;
mod logs;
mod schemas;
mod statements;
mod texts;
mod vectors;
mod warm;
