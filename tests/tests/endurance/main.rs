//! The record against the power, the process list, many writers and chance.

mod contention;
mod held;
mod kill;
mod kill_copies;
mod kitchen;
mod power;
mod random_kitchens;
mod random_proof;
mod random_recalls;
mod replay;
mod seeds;
