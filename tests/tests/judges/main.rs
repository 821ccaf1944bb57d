//! Judges that nobody here wrote, over what the service answers.

mod asleep;
mod break_down;
mod browser;
mod counter_flows;
mod each_way;
mod every_page;
mod examples;
mod flows;
mod flows_bench;
mod flows_led;
mod flows_make;
mod flows_papers;
mod flows_places;
mod flows_recall;
mod outside;
mod set_up;
mod waiting_flows;
