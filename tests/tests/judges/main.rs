//! Judges that nobody here wrote, over what the service answers.

mod break_down;
mod browser;
mod counter_flows;
mod flows;
mod flows_bench;
mod flows_recall;
mod outside;
