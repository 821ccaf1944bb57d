//! Stories of a kitchen, over HTTP and at the command line.

mod adoptions;
mod bad_input;
mod cartons;
mod clock;
mod cold;
mod command_line;
mod conditions;
mod confirmations;
mod corrections;
mod cure_room;
mod deeds;
mod heat;
mod label_words;
mod labels;
mod law;
mod log;
mod old_records;
mod outside;
mod people;
mod refused;
mod scenario;
mod statement_counts;
mod statements;
mod stops;
mod tls;
mod wrong_labels;
