//! What every story needs: a running service on either engine, and somebody to call it.

pub mod bench;
pub mod browser;
pub mod call;
pub mod day;
pub mod furniture;
pub mod house;
pub mod labels;
mod midnight;
pub mod neighbour;
pub mod old_records;
pub mod oracle;
pub mod pages;
pub mod printer;
pub mod queue;
pub mod real_printer;
pub mod recall;
pub mod wiretap;

pub use call::{Answer, Caller};
pub use house::{Engine, House};
pub use neighbour::Neighbour;
pub use printer::Printer;
pub use wiretap::Wiretap;

/// Runs a story on SQLite and on PostgreSQL, each under its own test name.
#[macro_export]
macro_rules! on_both_engines {
    ($($(#[$about:meta])* $name:ident)+) => {
        mod sqlite {
            $($(#[$about])* #[test] fn $name() { super::$name($crate::Engine::Sqlite) })+
        }
        mod postgres {
            $($(#[$about])* #[test] fn $name() { super::$name($crate::Engine::Postgres) })+
        }
    };
}
