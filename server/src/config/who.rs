//! Options of the commands about people and tokens.

use super::DatabaseArgs;
use clap::{ArgAction, Args, Subcommand};

/// Which people.
#[derive(Debug, Args)]
pub struct PeopleArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// What to do; all are listed if left out.
    #[command(subcommand)]
    pub command: Option<PeopleCommand>,
}

/// What is done about people.
#[derive(Debug, Subcommand)]
pub enum PeopleCommand {
    /// Adds a person and prints the word that signs them in once.
    Add {
        /// Their name, as deeds will have it.
        name: String,
        /// What they are: cook, counter, manager.
        #[arg(long)]
        role: String,
    },
    /// Prints a new word for somebody who has lost their PIN, and signs them out everywhere.
    Word {
        /// Their name.
        name: String,
    },
}

/// Which token.
#[derive(Debug, Args)]
pub struct TokenArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// What it is called: a deed that names nobody has this name.
    #[arg(long)]
    pub name: String,
    /// What it may do: cook, counter, manager.
    #[arg(long)]
    pub role: String,
    /// When it ends: 2027-01-31T18:00:00-05:00. Never, if left out.
    #[arg(long, value_name = "TIME")]
    pub until: Option<String>,
    /// May deeds that it sends have another's name? A script may, a till need not: --speaks-for-others=false.
    #[arg(long, value_name = "true|false", action = ArgAction::Set, default_value_t = true, num_args = 0..=1,
          require_equals = true, default_missing_value = "true")]
    pub speaks_for_others: bool,
}
